"""Small drawings for the sheets, much enlarged: the binding's ledge, and wire in its slot."""

from math import cos, isnan, pi, sin

from gramil import names as n
from gramil.drawings.marks import Drawing, Label, Marks, Words
from gramil.drawings.pen import FIGURE, View, level, lines_of_words, upright
from gramil.parts.records import LedgeChoice
from gramil.quantities import Count, Mm, PerFret

OWNS = ("drawing_", "piece_")

LEDGE = 4.0
"""How many times as large as life the ledge is drawn."""
PATTERN, WOOD = 3.0, 9.0
"""Thickness of the pattern, and the width of board that is shown, in mm of the real thing."""
WIRE = 8.0
"""How many times as large as life wire is drawn."""
CROWN = tuple(pi * step / 16 for step in range(17))
"""Turns at which the crown's half ellipse is walked."""


def piece_ledge_board(
    core_inset: Mm, ledge_choice: LedgeChoice, thickness_at_edge_treble: PerFret[Mm], station_middle_fret: Count
) -> Marks:
    """The board's edge with its ledge cut and the binding where it will lie; the pattern above it."""
    thick = float(thickness_at_edge_treble[station_middle_fret])
    view = View((0.0, 0.0), LEDGE, LEDGE)
    return (
        view.box((-WOOD, -thick), (-ledge_choice.ledge, 0.0), "outline", "across the grain"),
        view.box((-ledge_choice.ledge, -thick), (core_inset - ledge_choice.ledge, 0.0), "hidden"),
        view.box((-WOOD, 0.0), (0.0, PATTERN), "outline"),
        Words(view.at(-WOOD, PATTERN + 0.5), "pattern, as the finished outline", 2.2),
    )


def piece_ledge_cutter(
    ledge_choice: LedgeChoice, thickness_at_edge_treble: PerFret[Mm], station_middle_fret: Count
) -> Marks:
    """The cutter below and its bearing above, the bearing on the pattern, the axis as a chain line."""
    thick, low = float(thickness_at_edge_treble[station_middle_fret]), 0.8
    view, axis = View((0.0, 0.0), LEDGE, LEDGE), ledge_choice.bearing / 2
    edge, other = axis - ledge_choice.diameter / 2, axis + ledge_choice.diameter / 2
    middle, clear = -thick / 2, FIGURE / LEDGE
    return (
        view.box((edge, -thick - low), (other, -0.1), "cut"),
        view.box((0.0, 0.1), (ledge_choice.bearing, PATTERN), "cut", "metal"),
        view.line((axis, -thick - 2.0), (axis, middle - clear), "centreline"),
        view.line((axis, middle + clear), (axis, PATTERN + 0.2), "centreline"),
        Label(view.at(edge + 2.0, middle - 0.3), n.ledge_choice.diameter, "cutter ", height=FIGURE),
        Label(view.at(0.3, PATTERN + 1.9), n.ledge_choice.bearing, "bearing ", height=FIGURE),
    )


def piece_ledge_sizes(
    ledge_choice: LedgeChoice, core_inset: Mm, thickness_at_edge_treble: PerFret[Mm], station_middle_fret: Count
) -> Marks:
    """The ledge, the binding that goes on it, and how far that will stand proud."""
    thick, ledge = float(thickness_at_edge_treble[station_middle_fret]), ledge_choice.ledge
    view = View((0.0, 0.0), LEDGE, LEDGE)
    low = view.at(0.0, -thick)[1]
    across = (
        (-ledge, low - 5.0, n.ledge_choice.ledge, "ledge ", 0.0),
        (-ledge, low - 10.0, n.core_inset, "binding ", core_inset - ledge),
    )
    marks: Marks = ()
    for left, y, address, before, right in across:
        marks += level((view.at(left, 0.0)[0], y), (view.at(right, 0.0)[0], y), address, before, "left")
    return (
        *marks,
        Label(
            (view.at(-ledge, 0.0)[0] - 3.0, low - 16.0), n.ledge_choice.proud, "proud ", height=FIGURE, anchor="right"
        ),
    )


def drawing_setup_ledge(
    instrument_name: str,
    core_inset: Mm,
    ledge_choice: LedgeChoice,
    piece_ledge_board: Marks,
    piece_ledge_cutter: Marks,
    piece_ledge_sizes: Marks,
) -> Drawing:
    """Cutter and bearing against the finished outline, at the treble edge by fret 12; words alone without them."""
    title = f"{instrument_name}, ledge for the binding"
    if core_inset == 0:
        return Drawing(
            "setup-ledge",
            title,
            "the end",
            lines_of_words((0.0, 0.0), "No binding on this board: no ledge to cut."),
            scale=0.0,
        )
    if isnan(ledge_choice.diameter):
        words = lines_of_words((0.0, 0.0), "No cutter and bearing in the shop make this ledge.")
        return Drawing("setup-ledge", title, "the end", words, scale=0.0)
    marks = (*piece_ledge_board, *piece_ledge_cutter, *piece_ledge_sizes)
    return Drawing("setup-ledge", title, "the end", marks, scale=LEDGE)


def piece_kerf(saw_kerf: Mm, wire_tang_thickness: Mm) -> Mm:
    """How wide a kerf is drawn: as the saw cuts it; as the tang is thick where no saw in the shop makes the cut."""
    return wire_tang_thickness if isnan(saw_kerf) else saw_kerf


def piece_wire_board(piece_kerf: Mm, slot_depth_at_crest: Mm) -> Marks:
    """The slot, across: its kerf and its depth at the crest."""
    view, half, side, deep = View((0.0, 0.0), WIRE, WIRE), piece_kerf / 2, 1.9, slot_depth_at_crest
    wood = (
        (-side, 0.0),
        (-half, 0.0),
        (-half, -deep),
        (half, -deep),
        (half, 0.0),
        (side, 0.0),
        (side, -deep - 0.5),
        (-side, -deep - 0.5),
    )
    return (
        view.shape(wood, "outline", "along the grain"),
        *level(view.at(-half, -deep - 1.6), view.at(half, -deep - 1.6), n.saw_kerf, "kerf "),
    )


def piece_wire_profile(
    wire_crown_width: Mm,
    wire_crown_height: Mm,
    wire_tang_thickness: Mm,
    wire_tang_depth: Mm,
    wire_bead_thickness: Mm,
) -> Marks:
    """The wire as measured: crown, tang and the beads on it, with their figures."""
    view, half, tang, bead = (
        View((0.0, 0.0), WIRE, WIRE),
        wire_crown_width / 2,
        wire_tang_thickness / 2,
        wire_bead_thickness / 2,
    )
    crown = tuple((-half * cos(turn), wire_crown_height * sin(turn)) for turn in CROWN)
    high, low = -0.3 * wire_tang_depth, -0.55 * wire_tang_depth
    right = (half, 0.0), (tang, 0.0), (tang, high), (bead, (high + low) / 2), (tang, low), (tang, -wire_tang_depth)
    left = tuple((-y, z) for y, z in reversed(right))
    x = view.at(1.9, 0.0)[0] + 2.5
    return (
        view.shape((*crown, *right[1:], *left[:-1]), "outline", "metal"),
        *level(
            (view.at(-half, 0.0)[0], view.at(0.0, wire_crown_height)[1] + 3.0),
            (view.at(half, 0.0)[0], view.at(0.0, wire_crown_height)[1] + 3.0),
            n.wire_crown_width,
        ),
        *upright((x, 0.0), (x, view.at(0.0, wire_crown_height)[1]), n.wire_crown_height),
        *upright((x, view.at(0.0, -wire_tang_depth)[1]), (x, 0.0), n.wire_tang_depth, "tang "),
        Label((x + 1.8, view.at(0.0, -wire_tang_depth)[1] - 3.5), n.wire_tang_thickness, "thick ", height=FIGURE),
        Label((x + 1.8, view.at(0.0, -wire_tang_depth)[1] - 8.0), n.wire_bead_thickness, "beads ", height=FIGURE),
    )


def _nipped(view: View, back: Mm, edge: float, y: float) -> Marks:
    """How far the tang is nipped back; on a board without binding it is not."""
    under = (view.at(-4.0, 0.0)[0], y - 6.0)
    if back <= 0:
        return (Words(under, "the tang runs to the finished edge", 2.2),)
    return (
        *level((view.at(-back, 0.0)[0], y), (view.at(edge, 0.0)[0], y), n.wire_nip_back, side="left"),
        Words(under, "tang nipped back from the finished edge", 2.2),
    )


def piece_wire_end(
    core_inset: Mm, wire_nip_back: Mm, wire_crown_height: Mm, wire_tang_depth: Mm, slot_need: Mm
) -> Marks:
    """The fret's end from the side: the tang nipped back, the crown over the binding and past the finished edge."""
    view, edge, thick = View((-42.0, 0.0), WIRE, WIRE), 0.0, slot_need + 0.5
    tang = (
        (-4.0, 0.0),
        (edge - wire_nip_back, 0.0),
        (edge - wire_nip_back, -wire_tang_depth),
        (-4.0, -wire_tang_depth),
    )
    y = view.at(0.0, -thick)[1] - 4.5
    marks: Marks = (
        view.run(((-4.0, -thick), (edge, -thick), (edge, 0.0)), "outline"),
        view.box((-4.0, 0.0), (edge + 0.6, wire_crown_height), "outline", "metal"),
        view.shape(tang, "outline", "metal"),
        view.run(((-4.0, -slot_need), (edge - core_inset, -slot_need), (edge - core_inset, 0.0)), "hidden"),
        *_nipped(view, wire_nip_back, edge, y),
    )
    if core_inset > 0:
        marks += (view.box((edge - core_inset, -thick), (edge, 0.0), "outline", "bone"),)
    return (
        *marks,
        Words(
            (view.at(-4.0, 0.0)[0], view.at(0.0, wire_crown_height)[1] + 3.0),
            "the fret's end at the finished edge",
            2.2,
        ),
    )


def drawing_setup_wire(
    instrument_name: str, piece_wire_board: Marks, piece_wire_profile: Marks, piece_wire_end: Marks
) -> Drawing:
    """Wire in its slot, across and at its end, eight times as large as life."""
    marks = (*piece_wire_board, *piece_wire_profile, *piece_wire_end)
    return Drawing("setup-wire", f"{instrument_name}, wire in its slot", "the end", marks, scale=WIRE)
