"""What set-ups say of a body that is not alike left and right; for one that is, nothing, or the usual words."""

import math

from gramil import names as n
from gramil.parts.body_records import Bend, SideStation, Stretch
from gramil.reference import EACH, Text, says
from gramil.setups.setup import BigFigure, Table

_RUN = n.downhill_treble[EACH]
RUNS = (("from", _RUN.start), ("to", _RUN.stop), ("plate", _RUN.plate))
_AT = n.treble_side_stations[EACH]
STATIONS = (("from the neck", _AT.along), ("deep", _AT.depth))
BENDS = (("radius", _AT.radius),)


def round_the_horn(stretches: tuple[Stretch, ...]) -> tuple[Table, ...]:
    """The treble side's stretches in the direction in which each is cut downhill."""
    names = tuple(each.name for each in stretches)
    title = "Downhill round the treble side, from the neck; on which plate that is against the cutter's turn too"
    return (Table(title, RUNS, names, "stretch"),) if names else ()


def at_corners(bends: tuple[Bend, ...], step: str) -> tuple[Text, ...]:
    """A step for each corner of the treble side; its hole takes the corner's place from the neck."""
    return tuple(
        says(f"At the {each.name}, {{}} round from the neck on the treble side: {step}", n.bend_treble[each.name].along)
        for each in bends
        if each.kind == "corner"
    )


def treble_sizes(stations: tuple[SideStation, ...]) -> tuple[BigFigure, ...]:
    """The treble side's own lengths, and how thin it has to be where it bends tightest."""
    if not stations:
        return ()
    return (
        BigFigure(
            n.treble_side_length,
            "The treble side, neck to tail",
            says("± {}", n.limit_tolerance_outline),
            "its own template",
        ),
        BigFigure(n.treble_side_length_middle, "The same in the middle of its thickness", "", "worked out"),
        BigFigure(n.bend_thin_to, "At the tightest bend a side bends when no thicker than", "", "calipers"),
    )


def treble_stations(stations: tuple[SideStation, ...]) -> tuple[Table, ...]:
    """Where the treble side's bends and corners are struck on it."""
    names = tuple(each.name for each in stations)
    bends = tuple(each.name for each in stations if not math.isnan(each.radius))
    if not names:
        return ()
    return (
        Table("The treble side's own stations", STATIONS, names, "station"),
        Table("How its bends go", BENDS, bends, "bend"),
    )


def treble_bending(bends: tuple[Bend, ...], too_thick: bool) -> tuple[Text, ...]:
    """In what order the treble side is bent, and where it is in pieces; `too_thick`: for its tightest bend."""
    if not bends:
        return ()
    points = [each for each in bends if each.name.startswith("point")]
    round_horn = "the horn" if any(each.name == "horn" for each in bends) else "the hollow"
    return (
        "The two sides are not alike: strike the treble side by its own template and the table of its stations, and "
        "bend each in its own half of the mould.",
        says(
            f"On the treble side bend {round_horn} first, where it is tightest, thinned beforehand to {{}} or less if "
            "an offcut cracks there; then on toward the tail.",
            n.bend_thin_to,
        )
        if too_thick
        else f"On the treble side bend {round_horn} first, where it is tightest; then on toward the tail.",
        *(
            says(
                f"The treble side is in pieces that meet at the {each.name}, {{}} from the neck, at an angle of {{}}: "
                "bend both with some over, bevel each to half of that, and join them on a block glued in behind.",
                n.bend_treble[each.name].along,
                n.bend_treble[each.name].between,
            )
            for each in points
        ),
    )


def mould_halves(bends: tuple[Bend, ...]) -> tuple[Text, ...]:
    """How the mould's second half is made: from the first, or from its own line."""
    reach = "none that is held in the hand reaches through a whole mould. Drill and dowel the two at neck and tail."
    if not bends:
        return (f"Make the second half from the first with a following cutter, layer by layer: {reach}",)
    return (
        "The halves are not alike: saw the second one to its own printed line, treble side or bass side. "
        f"Work the further layers of each from its first with a following cutter: {reach}",
        "In the hollow and at the horn leave room behind the line for a clamp, and make a caul to either curve.",
    )


def mould_proof(bends: tuple[Bend, ...]) -> Text:
    """What would expose a mould that is wrong."""
    if not bends:
        return says(
            "Turn one half over onto the other: they lie alike everywhere, and the outline measures {} long.",
            n.body_length,
        )
    return says(
        "Put together face up, head to the left, the treble side lies where the plan of the face has it, and the "
        "outline measures {} long and {} wide. A half made from the wrong face shows here.",
        n.body_length,
        n.body_width,
    )
