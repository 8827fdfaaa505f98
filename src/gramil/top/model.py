"""The braced top of an instrument as a plate to be solved: its outline inside the linings, its braces, bridge and load.

The rim is held at the linings' inner line and does not give. Braces are as high along their length as they are cut,
notched where they cross; each string pulls on its own part of the bridge's foot.
"""

import math
from itertools import pairwise

import numpy as np

from gramil.description.wood.timbers import TimberKnown
from gramil.parts.body_records import Brace, Crossing, PlateShape, Shell
from gramil.parts.opening_records import Opening
from gramil.physics.arrays import FloatArray
from gramil.physics.plates.bar import Bar
from gramil.physics.plates.block import Block
from gramil.physics.plates.plate import Field, Plate, spherical
from gramil.physics.plates.plies import Ply
from gramil.physics.plates.surety import FINAL, QUICK
from gramil.quantities import Mm, Newton, PerString
from gramil.shapes.quadrilateral import Quadrilateral
from gramil.top.bars import bar_of, outline_of
from gramil.top.braced import Attempt, Braced, Pull, Solved, attempted

OWNS = ("braced_",)
HOLE_POINTS = 120
"""Points once round a hole in the plate."""
ACROSS = math.pi / 2
"""A bridge's grain, and its plate's, lies across the top's."""


def braced_bars(
    brace_list: tuple[Brace, ...], brace_crossings: tuple[Crossing, ...], fitted_braces: TimberKnown
) -> tuple[Bar, ...]:
    """The top's braces as bars: as high along their length as they are cut, notched where they cross.

    Method: each brace's height over the plate every few mm; a notch takes the wood out from its floor on.
    Source: common practice.
    """
    return tuple(bar_of(each, brace_crossings, fitted_braces) for each in brace_list if each.plate == "top")


def braced_blocks(
    brace_bridge: tuple[Quadrilateral, ...],
    plate_shapes: tuple[PlateShape, ...],
    bridge_thickness: Mm,
    timber_bridge: TimberKnown,
    timber_bridge_plate: TimberKnown,
) -> tuple[Block, ...]:
    """The bridge and the plate under it, each a piece glued flat to the top, its grain across the top's.

    Method: the bridge as a box of its thickness at the saddle; the plate as it is cut.
    Source: common practice.
    """
    bridges = [
        Block("bridge", _ring(each.corners), Ply(timber_bridge.timber, ACROSS, "slab"), bridge_thickness)
        for each in brace_bridge
    ]
    wood = Ply(timber_bridge_plate.timber, ACROSS)
    plates = [Block(each.name, _ring(each.corners), wood, each.thickness, -1) for each in plate_shapes]
    return (*bridges, *plates)


def _ring(corners: tuple[tuple[float, float], ...]) -> FloatArray:
    return np.array(corners, dtype=np.float64)


def braced_pulls(
    brace_bridge: tuple[Quadrilateral, ...],
    string_pull: PerString[Newton],
    bridge_lever: PerString[Mm],
    string_y_bridge: PerString[Mm],
) -> tuple[Pull, ...]:
    """What each string does to the top: its pull in the top's middle, and the couple of its height over that.

    Method: each acts on its own part of the bridge's foot, half way to its neighbours; the outer ones as far outward.
    Source: common practice; statics.
    """
    return tuple(
        Pull(part, (-float(pull), 0.0, 0.0), (0.0, -float(pull * lever)))
        for bridge in brace_bridge
        for pull, lever, part in zip(string_pull, bridge_lever, _parts(bridge, string_y_bridge), strict=True)
    )


def _parts(bridge: Quadrilateral, places: FloatArray) -> list[FloatArray]:
    """The bridge's foot cut between strings at places across, each part a ring (4, 2)."""
    middles = (places[1:] + places[:-1]) / 2
    ends = (2 * places[:1] - middles[:1], middles, 2 * places[-1:] - middles[-1:])
    cuts = np.concatenate(ends)
    start_low, start_high, end_high, end_low = (np.array(corner) for corner in bridge.corners)

    def across(y: float) -> tuple[FloatArray, FloatArray]:
        shares = [(y - low[1]) / (high[1] - low[1]) for low, high in ((start_low, start_high), (end_low, end_high))]
        return start_low + shares[0] * (start_high - start_low), end_low + shares[1] * (end_high - end_low)

    edges = [across(float(np.clip(y, start_low[1], start_high[1]))) for y in cuts]
    return [np.array([one[0], other[0], other[1], one[1]]) for other, one in pairwise(edges)]


def braced_plate(
    body_shells: tuple[Shell, ...],
    top_thickness: Mm,
    top_radius: Mm,
    opening_list: tuple[Opening, ...],
    fitted_top: TimberKnown,
    body_length: Mm,
    graduated_edge: Mm,
    top_edge_run: Mm,
) -> tuple[Plate, ...]:
    """The top itself: inside the linings, less its holes, arched as its dome, clamped round its edge.

    Method: the outline every few mm; the dome a sphere with its apex half way along; worked thinner to its rim, its
    thickness at each place is by how far that is from the outline.
    Source: common practice.
    """
    holes = tuple(np.array(each.parallel(0.0, HOLE_POINTS)) for each in opening_list)
    rise = spherical(top_radius, (body_length / 2, 0.0)) if math.isfinite(top_radius) else None
    ply = Ply(fitted_top.timber)
    return tuple(
        Plate(outline_of(shell), ply, _thick(shell, top_thickness, graduated_edge, top_edge_run), holes, rise)
        for shell in body_shells
    )


def _thick(shell: Shell, middle: Mm, edge: Mm, run: Mm) -> Mm | Field:
    """The plate's thickness, one figure or one for each place: from the outline in it grows to the middle's."""
    if edge == middle:
        return middle
    from scipy.spatial import cKDTree

    outline = shell.side.outline
    rim = cKDTree(outline.point(np.linspace(0.0, outline.perimeter, round(outline.perimeter) + 1)[:-1]))

    def at(points: FloatArray) -> FloatArray:
        inward, _ = rim.query(points)
        return np.asarray(edge + (middle - edge) * np.minimum(inward / run, 1.0), dtype=np.float64)

    return at


def braced_top(
    braced_plate: tuple[Plate, ...],
    braced_bars: tuple[Bar, ...],
    braced_blocks: tuple[Block, ...],
    braced_pulls: tuple[Pull, ...],
    brace_bridge: tuple[Quadrilateral, ...],
    body_saddle: Mm,
) -> tuple[Braced, ...]:
    """The braced top, ready to be solved; none without a body.

    Method: plate, bars, bridge and load put together.
    Source: common practice.
    """
    return tuple(
        Braced("top", plate, braced_bars, braced_blocks, braced_pulls, *_ends(bridge, body_saddle))
        for plate, bridge in zip(braced_plate, brace_bridge, strict=True)
    )


def _ends(bridge: Quadrilateral, saddle: Mm) -> tuple[float, float, float]:
    """Where the bridge's front edge, the saddle and its back edge cross the centreline."""
    (x0, y0), (x1, y1), (x2, y2), (x3, y3) = bridge.corners
    return x0 - y0 * (x1 - x0) / (y1 - y0), saddle, x3 - y3 * (x2 - x3) / (y2 - y3)


def braced_coarse(braced_top: tuple[Braced, ...]) -> tuple[Attempt, ...]:
    """The top on coarse triangles, or why it cannot be solved.

    Method: triangles of 14 mm.
    Source: common practice in such calculations: two meshes.
    """
    return tuple(attempted(each, QUICK) for each in braced_top)


def braced_fine(braced_top: tuple[Braced, ...]) -> tuple[Attempt, ...]:
    """The top on the triangles that answers are given by, or why it cannot be solved.

    Method: triangles of 10 mm; held against solid elements.
    Source: common practice in such calculations.
    """
    return tuple(attempted(each, FINAL) for each in braced_top)


def braced_quick(braced_coarse: tuple[Attempt, ...]) -> tuple[Solved, ...]:
    """The top solved on coarse triangles: a first answer, and what tells how far off the finer one may be.

    Method: the attempt, where it came to something.
    Source: common practice in such calculations.
    """
    return tuple(top for each in braced_coarse for top in each.tops)


def braced_final(braced_fine: tuple[Attempt, ...]) -> tuple[Solved, ...]:
    """The top solved on the triangles that answers are given by.

    Method: the attempt, where it came to something.
    Source: common practice in such calculations.
    """
    return tuple(top for each in braced_fine for top in each.tops)
