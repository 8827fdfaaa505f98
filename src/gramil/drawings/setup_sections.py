"""Small drawings for the sheets, cut across the board or seen from its side: slot, deepening, arch, levelling.

Widths are squeezed to the sheet and heights drawn too tall, so that tenths can be seen.
"""

from dataclasses import dataclass

from gramil import names as n
from gramil.description.records import Saw
from gramil.drawings.marks import Drawing, Label, Line, Marks, Point, Polyline, Words
from gramil.drawings.pen import FIGURE, View, box_points, face_run, lines_of_words, pointer, upright
from gramil.drawings.section import Across
from gramil.parts.records import BlockChoice
from gramil.quantities import Mm, PerFret
from gramil.shapes.crown import Crown

OWNS = ("drawing_", "piece_")

TALL = 2.5
"""How many times as large as life heights are drawn."""
WIDE = 54.0
"""Width, in mm, that a board is drawn across."""
MACHINE = 4.0
"""How thick a table, a bed or a rail is drawn, in mm."""


@dataclass(frozen=True)
class Sawn:
    """The board as it is when the main kerf is cut: `face` and `bottom` run across it, `under` is its underside."""

    face: tuple[Point, ...]
    bottom: tuple[Point, ...]
    under: Mm
    finished: tuple[Point, ...]


def piece_sawn(
    piece_across: Across,
    slots_cut: str,
    slots_crest_loss: Mm,
    thickness_before_levelling: Mm,
    slot_depth_at_crest: Mm,
) -> Sawn:
    """The board at the saw: flat and with the crest loss still on it, or arched; the underside not levelled yet."""
    cut, half = piece_across, piece_across.half_width
    if slots_cut == "before arching":
        flat = ((-half, slots_crest_loss), (half, slots_crest_loss))
        level = ((-half, -slot_depth_at_crest), (half, -slot_depth_at_crest))
        return Sawn(flat, level, -thickness_before_levelling, _whole_face(cut))
    return Sawn(_whole_face(cut), cut.bottom, -thickness_before_levelling, ())


def _whole_face(cut: Across) -> tuple[Point, ...]:
    return (*((-y, z) for y, z in reversed(cut.binding)), *cut.face, *cut.binding)


def piece_across_view(piece_across: Across, saw_main: Saw) -> View:
    """Across the board on the sheet, turned over when it lies face down on the saw's table."""
    return View((0.0, 0.0), WIDE / (2 * piece_across.half_width), -TALL if saw_main.cuts == "face down" else TALL)


def piece_slot_across(piece_sawn: Sawn, piece_across_view: View, piece_across: Across) -> Marks:
    """The board in the plane of the blade: wood left under the kerf hatched, the arch to come dashed."""
    view, sawn, half = piece_across_view, piece_sawn, piece_across.half_width
    wood = (*sawn.bottom, (half, sawn.under), (-half, sawn.under))
    marks: Marks = (
        view.shape(wood, "outline", "across the grain"),
        view.run(sawn.face, "outline"),
        view.line(sawn.face[0], sawn.bottom[0], "outline"),
        view.line(sawn.face[-1], sawn.bottom[-1], "outline"),
    )
    if sawn.finished:
        marks += (view.run(sawn.finished, "hidden"),)
    return marks


def piece_slot_along(piece_sawn: Sawn, piece_across_view: View, piece_kerf: Mm, slot_depth_setting: Mm) -> Marks:
    """The same cut seen along the fret: blade in its kerf, depth from the face, kerf."""
    top = piece_sawn.face[len(piece_sawn.face) // 2][1]
    view = View((WIDE / 2 + 22.0, 0.0), TALL, piece_across_view.up)
    half, side, under = piece_kerf / 2, 3.2, piece_sawn.under
    bottom, out = top - slot_depth_setting, top + 3.0
    wood = (
        (-side, top),
        (-half, top),
        (-half, bottom),
        (half, bottom),
        (half, top),
        (side, top),
        (side, under),
        (-side, under),
    )
    blade_low, blade_high = view.at(-half, bottom), view.at(half, out)
    return (
        view.shape(wood, "outline", "along the grain"),
        Polyline(box_points(blade_low, blade_high), "cut", closed=True, hatch="metal"),
        *upright(view.at(side + 0.8, bottom), view.at(side + 0.8, top), n.slot_depth_setting),
        Label((blade_high[0] + 1.5, blade_high[1] - FIGURE / 2), n.saw_kerf, "kerf ", height=FIGURE),
    )


def piece_slot_machine(piece_sawn: Sawn, piece_across_view: View, saw_main: Saw, card_notches_serve: bool) -> Marks:
    """What the board lies on and what rides on it: table below and template above, or bed below and blade above."""
    view, half = piece_across_view, WIDE / 2 + 2.0
    face = view.at(0.0, max(z for _, z in piece_sawn.face))[1]
    back = view.at(0.0, piece_sawn.under)[1]
    if saw_main.cuts == "face down":
        return (
            Polyline(box_points((-half, face - MACHINE), (half, face)), "outline", closed=True, hatch="metal"),
            Words((-half, face - MACHINE - 3.8), "table; the board lies face down", 2.2),
            *_on_the_back(half, back, card_notches_serve),
        )
    return (
        Polyline(box_points((-half, back - MACHINE), (half, back)), "outline", closed=True),
        Words((-half, back - MACHINE - 3.8), "bed; the board lies face up", 2.2),
        Words((-half, face + 3.0), _stop(saw_main), 2.2),
    )


def _on_the_back(half: Mm, back: Mm, template: bool) -> Marks:
    if not template:
        return lines_of_words((-half, back + 2.5), "no template: slots drawn, sawn to the line")
    rail = Polyline(box_points((-half, back), (half, back + MACHINE)), "outline", closed=True)
    return (rail, Words((-half + 2.0, back + 1.0), "template on the blank's back", 2.2))


def _stop(saw: Saw) -> str:
    return "depth stop rides on the arch" if saw.rides_arch else "depth stop over the crest"


def drawing_setup_slot(
    instrument_name: str, piece_slot_across: Marks, piece_slot_along: Marks, piece_slot_machine: Marks
) -> Drawing:
    """The board on the saw: across, in the plane of the blade, and along, with the blade in its kerf."""
    marks = (*piece_slot_machine, *piece_slot_across, *piece_slot_along)
    return Drawing("setup-slot", f"{instrument_name}, slots on the saw", "the end", marks, stretch=TALL, scale=0.0)


def piece_shallow(
    piece_across: Across,
    slots_bottom: str,
    slot_kerf_at_crest: Mm,
    slot_to_deepen: PerFret[Mm],
    limit_tolerance_height: Mm,
) -> tuple[Point, ...]:
    """The bottom of a kerf that was sawn too shallow, across the board; nothing where it is as deep as it was to be."""
    cut = piece_across
    if slot_to_deepen[cut.fret] <= limit_tolerance_height:
        return ()
    if slots_bottom == "straight":
        return ((-cut.half_core, -slot_kerf_at_crest), (cut.half_core, -slot_kerf_at_crest))
    return tuple((y, z - slot_kerf_at_crest) for y, z in cut.face)


def drawing_setup_deepen(
    instrument_name: str,
    piece_across: Across,
    piece_sawn: Sawn,
    slots_bottom: str,
    slots_cut: str,
    piece_shallow: tuple[Point, ...],
) -> Drawing:
    """After arching: the pilot's level bottom, and the finished one that the hand saw makes, riding on the arch."""
    title, view = (
        f"{instrument_name}, slots after arching",
        View((0.0, 0.0), WIDE / (2 * piece_across.half_width), TALL),
    )
    cut, half = piece_across, piece_across.half_width
    wood = (*cut.bottom, (cut.half_core, piece_sawn.under), (-cut.half_core, piece_sawn.under))
    marks: Marks = (
        view.shape(wood, "outline", "across the grain"),
        view.run(_whole_face(cut), "outline"),
        *(view.line((y, piece_sawn.under), (y, cut.binding[-1][1]), "outline") for y in (-half, half)),
    )
    end, top = cut.face[-1], view.at(0.0, 0.0)[1]
    if slots_bottom == "follows the arch" and slots_cut == "before arching":
        x = WIDE / 2 + 2.0
        marks += (
            view.run(piece_sawn.bottom, "hidden"),
            *pointer(
                "pilot, as sawn", (-WIDE / 2 + 14.0, top + 9.0), view.at(-cut.half_core / 2, piece_sawn.bottom[0][1])
            ),
            Words((0.0, top + 4.0), "hand saw, its stop riding on the arch", 2.2),
            *upright((x, view.at(0.0, cut.bottom[-1][1])[1]), (x, view.at(0.0, end[1])[1]), n.slot_need),
            Label(
                (x + 1.8, view.at(0.0, cut.bottom[-1][1])[1] - 5.0),
                n.slot_to_deepen[cut.fret],
                "at the ends, deepen ",
                height=FIGURE,
            ),
        )
    else:
        deep = "sawn to full depth at once: nothing to deepen"
        shallow = "sawn too shallow, dashed: deepen to the full line"
        marks += lines_of_words((-WIDE / 2, top + 4.0), shallow if piece_shallow else deep)
        marks += (view.run(piece_shallow, "hidden"),) if piece_shallow else ()
        marks += upright(
            view.at(half + 2.0, cut.bottom[-1][1]), view.at(half + 2.0, end[1]), n.slot_depth_at_end[cut.fret]
        )
    return Drawing("setup-deepen", title, "the end", marks, stretch=TALL, scale=0.0)


def piece_arch_nut(
    arch_surface: Crown, nut_width: Mm, thickness_before_levelling: Mm, block_at_nut: BlockChoice
) -> Marks:
    """The nut end under its block."""
    view = View((0.0, 0.0), WIDE / nut_width, TALL)
    face = face_run(arch_surface, 0.0, -nut_width / 2, nut_width / 2)
    return _under_block(view, face, thickness_before_levelling, block_at_nut.name, "nut end", "nut")


def piece_arch_end(
    arch_surface: Crown,
    board_tail_position: Mm,
    board_width_at_tail: Mm,
    thickness_before_levelling: Mm,
    block_at_end: BlockChoice,
) -> Marks:
    """The tail end under its block."""
    view = View((0.0, -42.0), WIDE / board_width_at_tail, TALL)
    face = face_run(arch_surface, board_tail_position, -board_width_at_tail / 2, board_width_at_tail / 2)
    return _under_block(view, face, thickness_before_levelling, block_at_end.name, "tail end", "end")


def _under_block(view: View, face: tuple[Point, ...], thick: float, block: str, where: str, card: str) -> Marks:
    board = (*face, (face[-1][0], -thick), (face[0][0], -thick))
    lifted = [(y, z + 0.8) for y, z in face]
    hollow = (*lifted, (face[-1][0], 4.4), (face[0][0], 4.4))
    right, before = view.at(face[-1][0], 0.0)[0] + 2.0, "R " if face[-1][1] < 0.0 else ""
    crest, edge = view.at(0.0, 0.0)[1], view.at(0.0, face[-1][1])[1]
    return (
        view.shape(board, "outline", "across the grain"),
        view.shape(hollow, "outline"),
        Words(view.at(0.0, 2.2), f"block: {block}", 2.2, anchor="middle"),
        Words((view.at(0.0, 0.0)[0], view.at(0.0, -thick)[1] - 4.0), where, 2.4, anchor="middle"),
        Line((right - 1.0, crest), (right + 4.0, crest), "dimensions"),
        *upright((right + 2.0, edge), (right + 2.0, crest), n.card_arches[card].fall, "falls "),
        Label((right + 2.0, crest + 4.0), n.card_arches[card].radius, before, height=FIGURE),
    )


def drawing_setup_arch(instrument_name: str, piece_arch_nut: Marks, piece_arch_end: Marks) -> Drawing:
    """The board across at its two ends, arched, each under the block that comes nearest; both drawn as wide."""
    marks = (*piece_arch_nut, *piece_arch_end)
    return Drawing("setup-arch", f"{instrument_name}, arch", "the end", marks, stretch=TALL, scale=0.0)


LONG = 60.0
"""Length, in mm, that a board is drawn from its side."""


def piece_side_view(board_length: Mm, board_nut_position: Mm) -> View:
    """The board from its side, upside down as it is planed, the nut end to the left."""
    along = LONG / board_length
    return View((-along * board_nut_position, 0.0), along, -TALL)


def drawing_setup_level(
    instrument_name: str,
    piece_side_view: View,
    board_nut_position: Mm,
    board_tail_position: Mm,
    thickness_before_levelling: Mm,
    piece_level_sizes: Marks,
) -> Drawing:
    """The board face down on its two edges, crown hanging free, and the wedge to plane off its underside."""
    view, before = piece_side_view, -thickness_before_levelling
    ends = (board_nut_position, board_tail_position)
    marks: Marks = (
        view.line((ends[0], before), (ends[1], before), "hidden"),
        *(view.line((x, 0.0), (x, before), "hidden") for x in ends),
        *piece_level_sizes,
        *lines_of_words((0.0, -10.0), "face down, carried on both edges", "between two rails; the crown hangs free"),
    )
    title = f"{instrument_name}, levelling the underside"
    stretch = round(TALL / view.across, 1)
    return Drawing("setup-level", title, "the side", marks, stretch=stretch, scale=0.0)


def piece_level_sizes(
    piece_side_view: View,
    piece_level_run: tuple[Point, ...],
    piece_level_edge: tuple[Point, ...],
    board_level_underside: bool,
) -> Marks:
    """The finished board with its edge, its thickness at both ends, and what is planed off at the nut."""
    view, under = piece_side_view, piece_level_run
    board = (*under, (under[-1][0], 0.0), (under[0][0], 0.0))
    left, right = view.at(*under[0]), view.at(*under[-1])
    marks: Marks = (
        view.shape(board, "outline", "along the grain"),
        view.run(under, "nut"),
        view.run(piece_level_edge, "hidden"),
        *upright((left[0] - 3.0, 0.0), (left[0] - 3.0, left[1]), n.thickness_at_crest[0], "crest ", "left"),
        *upright((right[0] + 3.0, 0.0), (right[0] + 3.0, right[1]), n.board_thickness, "crest "),
    )
    if not board_level_underside:
        return (*marks, *lines_of_words((0.0, right[1] + 4.0), "the underside of this board stays flat to the crest"))
    return (
        *marks,
        Words((left[0], right[1] + 8.5), "underside up; plane to the thick line", 2.2),
        Label((left[0], right[1] + 4.0), n.thickness_wedge, "wedge ", height=FIGURE),
    )


def piece_level_run(
    fret_position: PerFret[Mm],
    thickness_at_crest: PerFret[Mm],
    board_tail_position: Mm,
    board_thickness: Mm,
) -> tuple[Point, ...]:
    """The finished underside from the zero line to the tail end, as (x, z) from the crest."""
    frets = zip(fret_position, thickness_at_crest, strict=True)
    return (*((float(x), -float(thick)) for x, thick in frets), (board_tail_position, -board_thickness))


def piece_level_edge(edge_x_treble: PerFret[Mm], arch_fall_at_edge_treble: PerFret[Mm]) -> tuple[Point, ...]:
    """The face's treble edge, as (x, z) from the crest."""
    falls = zip(edge_x_treble, arch_fall_at_edge_treble, strict=True)
    return tuple((float(x), -float(fall)) for x, fall in falls)
