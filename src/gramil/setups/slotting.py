"""Set-ups for the fret slots: the main kerf, and deepening its ends after arching."""

from gramil import names as n
from gramil.description.records import Saw
from gramil.quantities import Count, Mm, PerFret, PerMm
from gramil.reference import Text, says
from gramil.setups.lines import stuff
from gramil.setups.setup import BigFigure, Setup, skipped

OWNS = ("setup_",)


def setup_slot(
    saw_main: Saw,
    slots_bottom: str,
    slots_cut: str,
    stop_thinnest_fret: Count,
    station_middle_fret: Count,
    station_fanned: bool,
    board_curvature_nut: PerMm,
) -> Setup:
    """Cut the main kerfs: which saw, how deep, and from where that depth is set.

    Method: face down the blade stands the depth above the table; from above the stop is on the face, or the teeth
    stop over a cradle's floor at template and stock less the depth.
    Source: common practice.
    """
    middle = n.fret_position[station_middle_fret]
    return Setup(
        "slot",
        "Cut the slots",
        4,
        (
            BigFigure(
                n.slot_depth_setting,
                _set_from(saw_main, slots_cut),
                says("± {}", n.limit_tolerance_height),
                "depth gauge in a test cut",
            ),
            *_cradle(saw_main),
            BigFigure(
                n.saw_kerf,
                says("Kerf in a test cut, for a tang of {}", n.wire_tang_thickness),
                says("± {}", n.limit_tolerance_fit),
                "feeler gauges",
            ),
            BigFigure(
                n.slot_left_least[stop_thinnest_fret],
                says("Left under the slot in the end, least at fret {}", n.stop_thinnest_fret),
                says("{} or more", n.limit_under_slot),
                "calipers less depth gauge",
            ),
            BigFigure(
                middle,
                says("Zero line to fret {}'s slot", n.station_middle_fret),
                says("± {}", n.limit_slot_position),
                "calipers",
            ),
        ),
        (
            *_saw_steps(saw_main, slots_cut, station_fanned),
            _bottom_step(slots_bottom, slots_cut, flat=not board_curvature_nut),
        ),
        says(
            "Slot an offcut of the same thickness: the depth reads {}, and a scrap of the wire pressed "
            "in seats its crown all along. Wrong wire, wrong blade or wrong stop shows here.",
            n.slot_depth_setting,
        ),
        (_saw_by(saw_main),),
        (
            _saw_line(saw_main, station_fanned),
            says("wire {}: tang {} thick, {} deep", n.wire_name, n.wire_tang_thickness, n.wire_tang_depth),
        ),
        n.drawing_setup_slot,
        (n.slot_depth_setting, n.saw_kerf, middle),
        on=stuff("board"),
        instead=() if _face_down(saw_main) else ("slotting saw",),
    )


def _face_down(saw: Saw) -> bool:
    return saw.cuts == "face down"


def _set_from(saw: Saw, cut: str) -> str:
    if _face_down(saw):
        return "Blade above the surface that the face lies on"
    if saw.rides_arch and cut == "after arching":
        return "Stop above the teeth; it rides on the arched face"
    return "Teeth below the flat face" if cut == "before arching" else "Teeth below the crest"


def _cradle(saw: Saw) -> tuple[BigFigure, ...]:
    if saw.cuts != "from above" or saw.rides_arch:
        return ()
    return (
        BigFigure(
            n.stop_over_cradle,
            "Or over a cradle: teeth above its floor",
            says("± {}", n.limit_tolerance_height),
            "gauge block",
        ),
    )


def _saw_steps(saw: Saw, cut: str, fanned: bool) -> tuple[str, ...]:
    if not saw.cuts:
        return ("No saw in the shop's list makes this cut: list one, or choose another bottom or order.",)
    along = "from nut to tail, one line at a time" if fanned else "from nut to tail, one notch at a time"
    if _face_down(saw):
        return (
            "The frets fan, so no template serves: carry each line over both edges to the back, which is up, and turn "
            "the board in a sled until the line lies along the blade."
            if fanned
            else "The template rides on the blank's back, face down on the table: see that the pin still reaches it.",
            "Raise the blade to the figure, measured from the surface that the face lies on.",
            f"Cut {along}, pushed right through.",
        )
    riding = saw.rides_arch and cut == "after arching"
    return (
        "Set the stop on the blade and try it in the offcut."
        if riding
        else "Set the stop against the face, or over the cradle.",
        f"Cut {along}, until the stop bears along the whole slot.",
    )


def _bottom_step(bottom: str, cut: str, flat: bool) -> Text:
    if flat:
        kept = "; what is still to come off the face is in the figure" if cut == "before arching" else ""
        return f"The bottom is straight, as the face is{kept}."
    if bottom == "straight":
        kept = (
            "the crest that is still to come off is in the figure"
            if cut == "before arching"
            else "measured at the crest"
        )
        return f"The bottom stays straight: under an arched face it is deeper than needed at the crest; {kept}."
    if cut == "before arching":
        return says(
            "This is a pilot: a saw riding the arch deepens the ends to {} once the board is arched.", n.slot_need
        )
    return says("The bottom follows the arch: {} below the face everywhere.", n.slot_need)


def _saw_line(saw: Saw, fanned: bool) -> Text:
    """The saw as the shop describes it; where frets fan, without how it cuts by a template."""
    if not saw.cuts:
        return "no saw"
    if fanned and _face_down(saw):
        return says("{}: kerf {}, as measured", n.saw_main.name, n.saw_main.kerf)
    return says("{}: {}; kerf {}, as measured", n.saw_main.name, n.saw_main.what, n.saw_main.kerf)


def _saw_by(saw: Saw) -> str:
    if _face_down(saw):
        return "slotting saw"
    return "hand saw" if saw.rides_arch else "saw from above"


def setup_deepen(
    slots_bottom: str,
    slots_cut: str,
    saw_deepening: Saw,
    stop_deepest_fret: Count,
    slot_kerf_at_end: PerFret[Mm],
    slot_to_deepen: PerFret[Mm],
    limit_tolerance_height: Mm,
) -> Setup:
    """Deepen a pilot's ends with a saw whose stop rides on the arch.

    Method: needed for a bottom that follows the arch and was cut before arching, and for slots cut too shallow.
    Source: common practice.
    """
    title, pilot = "Deepen the slots after arching", slots_bottom == "follows the arch" and slots_cut != "after arching"
    if not pilot and slot_to_deepen[stop_deepest_fret] > limit_tolerance_height:
        return _deepen_shallow(stop_deepest_fret)
    if slots_bottom == "straight":
        return skipped("deepen", title, 9, "a straight bottom is deep enough at its ends once the board is arched")
    if slots_cut == "after arching":
        return skipped("deepen", title, 9, "the main kerf is cut after arching, to its full depth")
    fret = stop_deepest_fret
    return Setup(
        "deepen",
        title,
        9,
        (
            BigFigure(
                n.slot_need,
                "Stop above the teeth; it rides on the arch",
                says("± {}", n.limit_tolerance_height),
                "depth gauge in a test cut",
            ),
            BigFigure(
                n.slot_to_deepen[fret],
                says("Most still to take, at the ends of fret {}", n.stop_deepest_fret),
                says("± {}", n.limit_tolerance_height),
                "depth gauge",
            ),
            BigFigure(
                n.slot_kerf_at_end[fret],
                says("Pilot there now, {} or more", n.limit_pilot_least),
                says("± {}", n.limit_tolerance_height),
                "depth gauge",
            ),
        ),
        (
            _deepening_step(saw_deepening),
            "Work from each end toward the crest until the stop bears all along.",
            "Clear the dust from every slot: packed dust holds a fret up.",
            *(
                ("At some ends the pilot has gone: knife the line over the arch first.",)
                if slot_kerf_at_end[fret] <= 0
                else ()
            ),
        ),
        says("Depth gauge at both ends and at the crest of the first slot: {} or more at each.", n.slot_need),
        ("hand saw",),
        (
            says(
                "{}: {}; kerf {}, the main kerf is {}",
                n.saw_deepening.name,
                n.saw_deepening.what,
                n.saw_deepening.kerf,
                n.saw_kerf,
            ),
        )
        if saw_deepening.cuts
        else ("no saw in the shop's list rides on the arch",),
        n.drawing_setup_deepen,
        (n.slot_need, n.slot_kerf_at_end[fret]),
        on=stuff("board", "board binding"),
    )


def _deepen_shallow(fret: Count) -> Setup:
    """The sheet for kerfs that came out shallower than they were to be, whichever way they are cut."""
    return Setup(
        "deepen",
        "Deepen the slots: they are too shallow",
        8,
        (
            BigFigure(
                n.slot_to_deepen[fret],
                "Still to take off the bottom",
                says("± {}", n.limit_tolerance_height),
                "depth gauge",
            ),
            BigFigure(n.slot_need, "The wire needs, at the ends, under the finished face", "or more", "depth gauge"),
            BigFigure(n.slot_kerf_at_end[fret], "It has there now, at the least", "", "depth gauge"),
        ),
        (
            "Set the blade or the stop deeper by the first figure, and prove it in an offcut that was cut as the board "
            "was.",
            "Run every slot again, in the kerf that is there.",
            "If the board is arched by now, the slots' ends decide: knife the line over the arch where a kerf is lost.",
            "Measure the depth from the face again, and write it down with the cutting of the slots.",
        ),
        "Depth gauge at both ends of the first slot, and a scrap of the wire pressed in: its crown seats all along.",
        ("saw in the old kerf",),
        (says("wire {}: tang {} thick, {} deep", n.wire_name, n.wire_tang_thickness, n.wire_tang_depth),),
        n.drawing_setup_deepen,
        (n.slot_need,),
        on=stuff("board", "board binding"),
    )


def _deepening_step(saw: Saw) -> Text:
    if not saw.cuts:
        return "No saw in the shop's list has a stop that rides on the arch: make one, or cut a straight bottom."
    return says("Take {}; its stop rides on the arched face, not on a straightedge.", n.saw_deepening.name)
