"""The figures by part that matter where the instrument is cut, in the words of the trade."""

from collections.abc import Iterator
from dataclasses import dataclass

from gramil.drawings.body_at import braces_at
from gramil.drawings.section_at import BETWEEN, Cut, over_board
from gramil.graph import Figures
from gramil.quantities import axes_of

Row = tuple[str, str]
"""What a figure is called here, and its name on the graph."""

SCALE: tuple[Row, ...] = (
    ("Scale, bass string", "scale_bass"),
    ("Scale, treble string", "scale_treble"),
    ("Frets", "scale_frets"),
    ("Body at fret", "scale_join"),
)
BOARD: tuple[Row, ...] = (
    ("From the zero line", "fret_position"),
    ("Width here", "board_width_at_fret"),
    ("Core inside the binding", "core_width_at_fret"),
    ("Thickness at the crest", "thickness_at_crest"),
    ("Thickness, treble edge", "thickness_at_edge_treble"),
    ("Thickness, bass edge", "thickness_at_edge_bass"),
    ("Width at its station", "board_width"),
    ("Thickness at the tail", "board_thickness"),
)
ARCH: tuple[Row, ...] = (
    ("Radius here", "arch_radius_at_fret"),
    ("Fall at the treble edge", "arch_fall_at_edge_treble"),
    ("Arch at the nut", "board_curvature_nut"),
    ("Arch at the end", "board_curvature_end"),
)
SLOT: tuple[Row, ...] = (
    ("Saw set to", "slot_depth_setting"),
    ("Depth at the crest", "slot_kerf_at_crest"),
    ("Depth at its ends", "slot_depth_at_end"),
    ("Left at the crest", "slot_left_at_crest"),
    ("Left at its ends", "slot_left_at_end"),
    ("Wire to cut", "wire_cut"),
    ("0.1 mm here is", "fret_cents_per_tenth"),
    ("Room under the tang", "slots_clearance"),
)
BINDING: tuple[Row, ...] = (
    ("Binding", "binding_thickness"),
    ("Purfling", "binding_purfling"),
    ("In from the edge", "core_inset"),
)
NECK: tuple[Row, ...] = (
    ("Neck under the board", "section_neck_depth"),
    ("Stiffness kept at the slot", "neck_section_slots_keep"),
    ("Wood under rod and bars", "neck_section_under_channel"),
    ("Neck and board at fret 1", "neck_depth_first"),
    ("Neck and board at fret 10", "neck_depth_tenth"),
)
STRINGS: tuple[Row, ...] = (
    ("Treble edge to the string", "string_margin_treble"),
    ("Bass edge to the string", "string_margin_bass"),
    ("Action, treble", "heights_action_treble"),
    ("Action, bass", "heights_action_bass"),
    ("Relief", "heights_relief"),
    ("Gauges", "strings_gauges"),
)
NUT: tuple[Row, ...] = (
    ("Width at the nut", "nut_width"),
    ("Outer strings", "nut_spread"),
    ("Set forward", "nut_set_forward"),
)
BRIDGE: tuple[Row, ...] = (
    ("Saddle from the zero line", "saddle_position"),
    ("Saddle's angle", "saddle_angle"),
    ("Bridge's front from the nut", "bridge_front_from_nut"),
    ("Front from fret 12", "bridge_front_from_octave"),
    ("Outer strings", "bridge_spread"),
    ("Neck angle", "neck_angle_target"),
    ("Saddle over the bridge", "saddle_exposed"),
    ("Bridge's thickness", "bridge_thickness"),
)
BODY: tuple[Row, ...] = (
    ("Top's thickness", "top_thickness"),
    ("Back's thickness", "body_back_thickness"),
    ("Top's radius", "top_radius"),
    ("Back's radius", "body_back_radius"),
    ("Soundhole", "soundhole_diameter"),
    ("Depth of the side at the neck", "body_depth_neck"),
    ("Depth of the side at the tail", "body_depth_tail"),
)


@dataclass(frozen=True)
class Part:
    """A part's figures at the cut: each with its words and address; `open` where it matters here."""

    name: str
    rows: tuple[tuple[str, str], ...]
    open: bool


def parts_at(figures: Figures, cut: Cut) -> tuple[Part, ...]:
    """Every part, those that matter at this cut open, in the order in which the eye meets them."""
    board, at_nut = over_board(figures, cut), cut.fret == 0
    at_slot = cut.fret is not None and cut.fret >= figures["slot_first"]
    neck = board and cut.x <= figures["back_bow_length"]
    groups = (
        ("Scale", SCALE, True),
        ("Nut", NUT, at_nut),
        ("Board", BOARD, board),
        ("Slot", SLOT, at_slot),
        ("Arch", ARCH, board),
        ("Binding", BINDING, board and figures["core_inset"] > 0),
        ("Strings", (*_heights(figures), *STRINGS), True),
        ("Neck", NECK, neck and not at_nut),
        ("Bridge and saddle", BRIDGE, not board),
    )
    parts = (Part(name, tuple(_rows(figures, cut, rows)), is_open) for name, rows, is_open in groups)
    return (*parts, Part("Body", (*_braces(figures, cut), *BODY, *_bindings(figures)), not board))


def _bindings(figures: Figures) -> tuple[Row, ...]:
    """What each bound edge of the body carries."""
    return tuple(
        (f"{edge.name.capitalize()}'s {words}", f"{edge.name}_binding_{key}")
        for edge in figures["channel_edges"]
        for words, key in (("binding", "thickness"), ("binding, high", "height"), ("purfling", "purfling"))
        if getattr(edge, key)
    )


def _braces(figures: Figures, cut: Cut) -> tuple[Row, ...]:
    """How high and how wide each brace is that the cut goes through."""
    return tuple(
        (f"{each.name}, {words}", f'brace_list["{each.name}"].{field}')
        for each in braces_at(figures, cut)
        for words, field in (("high", "height"), ("wide", "width"))
    )


def in_columns(parts: tuple[Part, ...]) -> tuple[tuple[Part, ...], tuple[Part, ...]]:
    """The parts that have rows, for two columns side by side, the first no shorter than the second where it can."""
    shown = [each for each in parts if each.rows]
    heights = [len(each.rows) + 1 if each.open else 1 for each in shown]
    first = next(count for count in range(len(shown) + 1) if 2 * sum(heights[:count]) >= sum(heights))
    return tuple(shown[:first]), tuple(shown[first:])


def _heights(figures: Figures) -> tuple[Row, ...]:
    last = int(figures["strings_count"])
    return tuple((f"String {row} over the crown", f"height_over_crown[{row}]") for row in (1, last))


def _rows(figures: Figures, cut: Cut, rows: tuple[Row, ...]) -> Iterator[tuple[str, str]]:
    for words, name in rows:
        address = address_of(figures, cut, name)
        if address is not None:
            yield words, address


def address_of(figures: Figures, cut: Cut, name: str) -> str | None:
    """A figure's address at the cut: the row of the fret, or read between frets; None where that means nothing."""
    plain, _, row = name.partition("[")
    string = int(row.rstrip("]")) if row else None
    if "fret" not in axes_of(figures.graph.annotation(plain)):
        return name
    if not over_board(figures, cut):
        return None
    address = cut.address(plain, string)
    return None if address.endswith(BETWEEN) and plain.startswith(("slot_", "wire_", "neck_section_slots")) else address
