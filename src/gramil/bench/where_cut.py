"""The figures by part that matter where the instrument is cut, in the words of the trade."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from gramil import names as n
from gramil.drawings.body_at import braces_at
from gramil.drawings.section_at import BETWEEN, Cut, over_board
from gramil.graph import Figures
from gramil.parts.edge_records import Edge
from gramil.quantities import axes_of
from gramil.reference import Ref, Rows

Row = tuple[str, Ref[Any]]
"""What a figure is called here, and the figure."""

SCALE: tuple[Row, ...] = (
    ("Scale, bass string", n.scale_bass),
    ("Scale, treble string", n.scale_treble),
    ("Frets", n.scale_frets),
    ("Body at fret", n.scale_join),
)
BOARD: tuple[Row, ...] = (
    ("From the zero line", n.fret_position),
    ("Width here", n.board_width_at_fret),
    ("Core inside the binding", n.core_width_at_fret),
    ("Thickness at the crest", n.thickness_at_crest),
    ("Thickness, treble edge", n.thickness_at_edge_treble),
    ("Thickness, bass edge", n.thickness_at_edge_bass),
    ("Width at its station", n.board_width),
    ("Thickness at the tail", n.board_thickness),
)
ARCH: tuple[Row, ...] = (
    ("Radius here", n.arch_radius_at_fret),
    ("Fall at the treble edge", n.arch_fall_at_edge_treble),
    ("Arch at the nut", n.board_curvature_nut),
    ("Arch at the end", n.board_curvature_end),
)
SLOT: tuple[Row, ...] = (
    ("Saw set to", n.slot_depth_setting),
    ("Depth at the crest", n.slot_kerf_at_crest),
    ("Depth at its ends", n.slot_depth_at_end),
    ("Left at the crest", n.slot_left_at_crest),
    ("Left at its ends", n.slot_left_at_end),
    ("Wire to cut", n.wire_cut),
    ("0.1 mm here is", n.fret_cents_per_tenth),
    ("Room under the tang", n.slots_clearance),
)
BINDING: tuple[Row, ...] = (
    ("Binding", n.binding_thickness),
    ("Purfling", n.binding_purfling),
    ("In from the edge", n.core_inset),
)
NECK: tuple[Row, ...] = (
    ("Neck under the board", n.section_neck_depth),
    ("Stiffness kept at the slot", n.neck_section_slots_keep),
    ("Wood under rod and bars", n.neck_section_under_channel),
    ("Neck and board at fret 1", n.neck_depth_first),
    ("Neck and board at fret 10", n.neck_depth_tenth),
)
STRINGS: tuple[Row, ...] = (
    ("Treble edge to the string", n.string_margin_treble),
    ("Bass edge to the string", n.string_margin_bass),
    ("Action, treble", n.heights_action_treble),
    ("Action, bass", n.heights_action_bass),
    ("Relief", n.heights_relief),
    ("Gauges", n.strings_gauges),
)
NUT: tuple[Row, ...] = (
    ("Width at the nut", n.nut_width),
    ("Outer strings", n.nut_spread),
    ("Set forward", n.nut_set_forward),
)
BRIDGE: tuple[Row, ...] = (
    ("Saddle from the zero line", n.saddle_position),
    ("Saddle's angle", n.saddle_angle),
    ("Bridge's front from the nut", n.bridge_front_from_nut),
    ("Front from fret 12", n.bridge_front_from_octave),
    ("Outer strings", n.bridge_spread),
    ("Neck angle", n.neck_angle_target),
    ("Saddle over the bridge", n.saddle_exposed),
    ("Bridge's thickness", n.bridge_thickness),
)
BODY: tuple[Row, ...] = (
    ("Top's thickness", n.top_thickness),
    ("Back's thickness", n.body_back_thickness),
    ("Top's radius", n.top_radius),
    ("Back's radius", n.body_back_radius),
    ("Soundhole", n.soundhole_wide),
    ("Depth of the side at the neck", n.body_depth_neck),
    ("Depth of the side at the tail", n.body_depth_tail),
)
BINDINGS: Mapping[str, tuple[tuple[str, Callable[[Edge], float], Ref[Any]], ...]] = {
    "top": (
        ("binding", lambda edge: edge.thickness, n.top_binding_thickness),
        ("binding, high", lambda edge: edge.height, n.top_binding_height),
        ("purfling", lambda edge: edge.purfling, n.top_binding_purfling),
    ),
    "back": (
        ("binding", lambda edge: edge.thickness, n.back_binding_thickness),
        ("binding, high", lambda edge: edge.height, n.back_binding_height),
        ("purfling", lambda edge: edge.purfling, n.back_binding_purfling),
    ),
}
"""What each edge of the body may carry: its words, how much of it an edge has, and the figure."""


@dataclass(frozen=True)
class Part:
    """A part's figures at the cut: each with its words and address; `open` where it matters here."""

    name: str
    rows: tuple[tuple[str, str], ...]
    open: bool


def parts_at(figures: Figures, cut: Cut) -> tuple[Part, ...]:
    """Every part, those that matter at this cut open, in the order in which the eye meets them."""
    board, at_nut = over_board(figures, cut), cut.fret == 0
    at_slot = cut.fret is not None and cut.fret >= figures[n.slot_first]
    neck = board and cut.x <= figures[n.back_bow_length]
    groups = (
        ("Scale", SCALE, True),
        ("Nut", NUT, at_nut),
        ("Board", BOARD, board),
        ("Slot", SLOT, at_slot),
        ("Arch", ARCH, board),
        ("Binding", BINDING, board and figures[n.core_inset] > 0),
        ("Strings", (*_heights(figures), *STRINGS), True),
        ("Neck", NECK, neck and not at_nut),
        ("Bridge and saddle", BRIDGE, not board),
    )
    parts = (Part(name, tuple(_rows(figures, cut, rows)), is_open) for name, rows, is_open in groups)
    body = (*_braces(figures, cut), *BODY, *_bindings(figures))
    return (*parts, Part("Body", tuple((words, figure.address) for words, figure in body), not board))


def _bindings(figures: Figures) -> tuple[Row, ...]:
    """What each bound edge of the body carries."""
    bound = {edge.name: edge for edge in figures[n.channel_edges]}
    rows = (
        (edge, f"{name.capitalize()}'s {words}", size, figure)
        for name, sizes in BINDINGS.items()
        if (edge := bound.get(name))
        for words, size, figure in sizes
    )
    return tuple((words, figure) for edge, words, size, figure in rows if size(edge))


def _braces(figures: Figures, cut: Cut) -> tuple[Row, ...]:
    """How high and how wide each brace is that the cut goes through."""
    return tuple(
        row
        for each in braces_at(figures, cut)
        for row in (
            (f"{each.name}, high at most", n.brace_list[each.name].height),
            (f"{each.name}, wide", n.brace_list[each.name].width),
        )
    )


def in_columns(parts: tuple[Part, ...]) -> tuple[tuple[Part, ...], tuple[Part, ...]]:
    """The parts that have rows, for two columns side by side, the first no shorter than the second if possible."""
    shown = [each for each in parts if each.rows]
    heights = [len(each.rows) + 1 if each.open else 1 for each in shown]
    first = next(count for count in range(len(shown) + 1) if 2 * sum(heights[:count]) >= sum(heights))
    return tuple(shown[:first]), tuple(shown[first:])


def _heights(figures: Figures) -> tuple[Row, ...]:
    last = int(figures[n.strings_count])
    return tuple((f"String {row} over the crown", n.height_over_crown[row]) for row in (1, last))


def _rows(figures: Figures, cut: Cut, rows: tuple[Row, ...]) -> Iterator[tuple[str, str]]:
    for words, figure in rows:
        address = address_of(figures, cut, figure)
        if address is not None:
            yield words, address


def address_of(figures: Figures, cut: Cut, figure: Ref[Any]) -> str | None:
    """A figure's address at the cut: the fret's row, or interpolated between frets; None if that has no meaning."""
    plain, _, row = figure.address.partition("[")
    string = int(row.rstrip("]")) if row.rstrip("]").isdigit() else None
    if "fret" not in axes_of(figures.graph.annotation(plain)):
        return figure.address
    if not over_board(figures, cut):
        return None
    address = cut.of(Rows(plain), string).address
    return None if address.endswith(BETWEEN) and plain.startswith(("slot_", "wire_", "neck_section_slots")) else address
