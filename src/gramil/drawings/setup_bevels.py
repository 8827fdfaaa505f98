"""A bevel's middle cut across, enlarged, for the sheets of its block, its cut and its veneer.

Each lies with its plate on top and the side's face to the left, before and after: what is rasped off is dashed.
"""

from gramil import names as n
from gramil.drawings.bevelled_at import kept_of
from gramil.drawings.marks import Drawing, Label, Marks, Point, Polyline, Span, Words
from gramil.drawings.pen import Hatch, View, level, upright
from gramil.parts.bevel_records import BevelBlock, BevelLaid
from gramil.parts.edge_records import Edge
from gramil.quantities import Mm

OWNS = ("drawing_", "piece_")

LARGE = 2.0
"""How many times as large as life a bevel is drawn."""
INWARD, BELOW = 14.0, 8.0
"""How much of the plate inside the block, and of the side below it, is shown, in mm of the real thing."""
APART = 72.0
"""From what is drawn of the one bevel to the other's side, in mm of the drawing: room for the figures between."""


def piece_bevel_sections(
    bevel_laid: tuple[BevelLaid, ...],
    bevelled_blocks: tuple[BevelBlock, ...],
    channel_edge_top: Edge,
    channel_edge_back: Edge,
    body_wall: Mm,
) -> Marks:
    """Every bevel of the body cut across at its middle."""
    marks: Marks = ()
    across = 0.0
    for laid, block in zip(bevel_laid, bevelled_blocks, strict=True):
        plate = (channel_edge_top if laid.asked.plate == "top" else channel_edge_back).plate
        view = View((across, 0.0), LARGE, LARGE)
        marks += (*_wood(view, laid, block, (plate, body_wall)), *_sizes(view, laid, block, (plate, body_wall)))
        across += LARGE * _reach(laid, block, body_wall) + APART
    return marks


def _reach(laid: BevelLaid, block: BevelBlock, wall: Mm) -> Mm:
    """How far in from the side's face the plate is shown."""
    return max(laid.asked.width, wall + block.width) + INWARD


def _wood(view: View, laid: BevelLaid, block: BevelBlock, thick: tuple[Mm, Mm]) -> Marks:
    """Plate, side and block as they are cut, and the edge as it was; `thick`: plate and side."""
    (plate, wall), width, drop = thick, laid.asked.width, laid.asked.drop
    foot, inside = -plate - block.height, _reach(laid, block, wall)
    outer, inner = (0.0, -drop), (width, 0.0)
    shapes: tuple[tuple[tuple[Point, ...], Hatch], ...] = (
        (((0.0, 0.0), (inside, 0.0), (inside, -plate), (0.0, -plate)), "across the grain"),
        (((0.0, -plate), (wall, -plate), (wall, foot - BELOW), (0.0, foot - BELOW)), "along the grain"),
        (((wall, -plate), (wall + block.width, -plate), (wall + block.width, foot), (wall, foot)), "across the grain"),
    )
    kept = ((kept_of(shape, outer, inner), hatch) for shape, hatch in shapes)
    wood = (view.shape(points, "outline", hatch) for points, hatch in kept if points)
    gone = (view.line(outer, (0.0, 0.0), "hidden"), view.line((0.0, 0.0), inner, "hidden"))
    return (*wood, *gone, *_veneer(view, laid, outer, inner))


def _veneer(view: View, laid: BevelLaid, outer: Point, inner: Point) -> tuple[Polyline, ...]:
    """The veneer on the bevel's face, square to it."""
    if not laid.asked.veneer:
        return ()
    run, rise = inner[0] - outer[0], inner[1] - outer[1]
    out = laid.asked.veneer / float(run * run + rise * rise) ** 0.5
    over = (-rise * out, run * out)
    lifted = tuple((x + over[0], z + over[1]) for x, z in (inner, outer))
    return (view.shape((outer, inner, *lifted), "cut"),)


def _sizes(view: View, laid: BevelLaid, block: BevelBlock, thick: tuple[Mm, Mm]) -> Marks:
    """Where the bevel's lines lie on plate and side, its slope, and its block."""
    (plate, wall), (width, drop) = thick, (laid.asked.width, laid.asked.drop)
    name, at, behind = laid.asked.name, n.bevel_list[laid.asked.name], n.bevelled_blocks[laid.asked.name]
    corner, foot = view.at(0.0, 0.0), view.at(wall + block.width, -plate - block.height)
    left, beside = corner[0] - 5.0, foot[0] + 5.0
    x, y = view.at(_reach(laid, block, wall), -plate)
    return (
        Words((x + 3.0, corner[1] + 3.0), f"{name} bevel, at its middle", 2.5),
        Span(corner, view.at(width, 0.0), 6.0, at.width),
        *upright((left, view.at(0.0, -drop)[1]), (left, corner[1]), at.drop, side="left"),
        *upright((beside, foot[1]), (beside, view.at(0.0, -plate)[1]), behind.height, "block "),
        *level((view.at(wall, 0.0)[0], foot[1] - 5.0), (foot[0], foot[1] - 5.0), behind.width, "block "),
        Label((x + 3.0, y - 3.0), at.slope, "slopes by ", height=2.5),
    )


def drawing_setup_bevels(instrument_name: str, piece_bevel_sections: Marks) -> Drawing:
    """Every bevel cut across, enlarged; no marks on a body that has none."""
    title = f"{instrument_name}, bevels cut across"
    return Drawing("setup-bevels", title, "the end", piece_bevel_sections, scale=LARGE)
