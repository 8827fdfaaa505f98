"""The board cut across at fret 12, through the slot, twice as large as life."""

from dataclasses import dataclass

from gramil import names as n
from gramil.drawings.marks import Drawing, Marks, Point, Span
from gramil.drawings.pen import Side, View, face_run, leaning, upright
from gramil.quantities import Count, Mm, PerFret, Ratio
from gramil.shapes.crown import Crown

OWNS = ("drawing_", "piece_")

SCALE = 2.0


@dataclass(frozen=True)
class Across:
    """The board cut across at one fret, crest at z = 0: runs of (y, z) from the bass edge to the treble edge.

    `face` and `bottom` (of the finished slot) run over the core; `binding` is the face from core to finished edge. All
    are of an even board, as it is slotted and arched; finished, they rise by `slope` a mm toward positive y.
    """

    fret: int
    half_width: Mm
    half_core: Mm
    crest: Mm
    face: tuple[Point, ...]
    bottom: tuple[Point, ...]
    binding: tuple[Point, ...]
    slope: Ratio


def piece_slope(
    station_middle_fret: Count,
    lean_at_edge_treble: PerFret[Mm],
    edge_y_treble: PerFret[Mm],
    instrument_handed: str,
) -> Ratio:
    """How much the face rises across at the middle fret, as seen from the tail: to the right positive."""
    side = -1.0 if instrument_handed == "left" else 1.0
    return side * float(lean_at_edge_treble[station_middle_fret] / edge_y_treble[station_middle_fret])


def piece_bottom(
    station_middle_fret: Count,
    arch_surface: Crown,
    fret_position: PerFret[Mm],
    core_width_at_fret: PerFret[Mm],
    slot_depth_at_crest: Mm,
    slots_bottom: str,
) -> tuple[Point, ...]:
    """The finished slot's bottom at the middle fret: level, or as far below the face everywhere."""
    half = float(core_width_at_fret[station_middle_fret]) / 2
    if slots_bottom == "straight":
        return ((-half, -slot_depth_at_crest), (half, -slot_depth_at_crest))
    face = face_run(arch_surface, float(fret_position[station_middle_fret]), -half, half)
    return tuple((y, z - slot_depth_at_crest) for y, z in face)


def piece_across(
    station_middle_fret: Count,
    arch_surface: Crown,
    fret_position: PerFret[Mm],
    board_width_at_fret: PerFret[Mm],
    core_width_at_fret: PerFret[Mm],
    thickness_at_crest: PerFret[Mm],
    piece_bottom: tuple[Point, ...],
    piece_slope: Ratio,
) -> Across:
    """The board's section at the middle fret."""
    fret, x = station_middle_fret, float(fret_position[station_middle_fret])
    half, core = float(board_width_at_fret[fret]) / 2, float(core_width_at_fret[fret]) / 2
    face, binding = face_run(arch_surface, x, -core, core), face_run(arch_surface, x, core, half)
    return Across(fret, half, core, float(thickness_at_crest[fret]), face, piece_bottom, binding, piece_slope)


def piece_section_wood(piece_across: Across, wire_crown_height: Mm) -> Marks:
    """Wood under the slot, the slot itself, the binding on both sides, and the wire's crown over all."""
    cut, view = piece_across, View((0.0, 0.0), SCALE, SCALE)
    face, bottom = leaning(cut.face, cut.slope), leaning(cut.bottom, cut.slope)
    bass, treble = leaning(_over(cut.binding), cut.slope), leaning(cut.binding, cut.slope)
    whole = (*bass, *face, *treble)
    crown = (*whole, *((y, z + wire_crown_height) for y, z in reversed(whole)))
    wood = (*bottom, (cut.half_core, -cut.crest), (-cut.half_core, -cut.crest))
    bound = (
        view.shape(((cut.half_core, -cut.crest), *treble, (cut.half_width, -cut.crest)), "outline", "bone"),
        view.shape(((-cut.half_width, -cut.crest), *bass, (-cut.half_core, -cut.crest)), "outline", "bone"),
    )
    return (
        view.shape(wood, "outline", "across the grain"),
        *(bound if cut.half_width > cut.half_core else ()),
        view.run(face, "outline"),
        view.line(face[0], bottom[0], "outline"),
        view.line(face[-1], bottom[-1], "outline"),
        view.shape(crown, "hidden"),
    )


def _over(points: tuple[Point, ...]) -> tuple[Point, ...]:
    """The same run on the other side of the centreline."""
    return tuple((-y, z) for y, z in reversed(points))


def piece_section_sizes(piece_across: Across, instrument_handed: str) -> Marks:
    """Width, thickness at crest and edges, the slot's depth and what is left under it."""
    cut, view = piece_across, View((0.0, 0.0), SCALE, SCALE)
    fret, bottom = cut.fret, cut.bottom[len(cut.bottom) // 2][1]
    wood = view.at(0.0, (bottom - cut.crest) / 2)[1]
    edges: tuple[Side, Side] = ("left", "right") if instrument_handed == "left" else ("right", "left")
    marks: Marks = (
        Span(
            view.at(-cut.half_width, -cut.crest),
            view.at(cut.half_width, -cut.crest),
            -8.0,
            n.board_width_at_fret[fret],
        ),
        *upright(view.at(-11.0, -cut.crest), view.at(-11.0, bottom), n.slot_left_at_crest[fret], "left "),
        *upright(view.at(-11.0, bottom), view.at(-11.0, 0.0), n.slot_depth_at_crest, "slot "),
        *upright(view.at(9.0, -cut.crest), view.at(9.0, 0.0), n.thickness_at_crest[fret], "crest ", middle=wood),
    )
    figures = (n.thickness_at_edge_treble, n.thickness_at_edge_bass)
    for name, figure, side in zip(("treble", "bass"), figures, edges, strict=True):
        y = (cut.half_width + 2.0) * (1 if side == "right" else -1)
        face = cut.binding[-1][1] + cut.slope * cut.half_width * (1 if side == "right" else -1)
        marks += upright(view.at(y, -cut.crest), view.at(y, face), figure[fret], f"{name} edge ", side)
    return marks


def drawing_section(
    instrument_name: str, piece_section_wood: Marks, piece_section_sizes: Marks, station_middle_fret: Count
) -> Drawing:
    """The board across at fret 12 through its slot, face up, from the tail end: treble to the right if right-handed.

    Used at: slotted, slots_deepened, levelled.
    """
    title = f"{instrument_name}, section through the slot of fret {station_middle_fret}, from the tail"
    return Drawing("section", title, "the end", (*piece_section_wood, *piece_section_sizes), scale=SCALE)
