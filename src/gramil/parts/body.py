"""The body: where it stands, its outline's measures, the air in it, the plates to join and the mould to build in.

Body coordinates run along from the body's edge at the neck toward the tail, and across from the centreline, treble
positive. The perimeter is that of the outside. Both domes have their apex half way along the body, so that the rim's
depths at neck and tail are as stated. Without a described body the shape's figures are not known, and not listed.
"""

import math
from collections.abc import Iterable

import numpy as np

from gramil.parts.body_records import BodyBlock, Bout, Shell, Zeros
from gramil.parts.opening_records import Opening, Port
from gramil.physics.air_resonance import conductance, helmholtz_frequency, speed_of_sound
from gramil.quantities import Hertz, Mm, Mm3, Ratio
from gramil.shapes.arc import sagitta
from gramil.shapes.dome import Dome
from gramil.shapes.offset import moved_in
from gramil.shapes.outline import Outline
from gramil.shapes.unrolled import UnrolledSide
from gramil.shapes.walled import volume_within

OWNS = ("body_",)

ROOM = 20.0
"""Temperature in degrees Celsius at which the air resonance is given."""


def _only(values: Iterable[float]) -> float:
    """The one value, or nan if there is no body."""
    return next(iter(values), math.nan)


def body_edge(back_bow_length: Mm, body_beyond_join: Mm) -> Mm:
    """Where the body begins, from the zero line.

    Source: common practice.
    """
    return back_bow_length + body_beyond_join


def body_saddle(saddle_position: Mm, body_edge: Mm) -> Mm:
    """From the body's edge to the middle of the saddle's slot, on the centreline: the bridge's place on the top.

    Source: common practice.
    """
    return saddle_position - body_edge


def body_zeros(body_beyond_join: Mm, body_length: Mm, body_saddle: Mm) -> Zeros:
    """Where features' distances are counted from, by what they are held to.

    Method: from the body's edge: the join, the tail, the saddle.
    Source: the maker's own choice, feature by feature.
    """
    return Zeros(-body_beyond_join, body_length, body_saddle)


def body_length(body_outlines: tuple[Outline, ...]) -> Mm:
    """Length of the outline on the centreline.

    Method: from its least to its greatest distance along.
    Source: common practice.
    """
    return _only(each.length for each in body_outlines)


def body_width(body_outlines: tuple[Outline, ...]) -> Mm:
    """Width of the outline at its widest.

    Method: the greatest half-width of the curve on either side, together.
    Source: common practice.
    """
    return _only(each.width for each in body_outlines)


def body_reach_treble(body_outlines: tuple[Outline, ...]) -> Mm:
    """From the centreline to the outermost point on the treble side.

    Method: the greatest half-width of the curve on that side.
    Source: common practice.
    """
    return _only(each.treble_half.widest for each in body_outlines)


def body_reach_bass(body_outlines: tuple[Outline, ...]) -> Mm:
    """From the centreline to the outermost point on the bass side.

    Method: the greatest half-width of the curve on that side.
    Source: common practice.
    """
    return _only(each.bass_half.widest for each in body_outlines)


def body_reach(body_reach_treble: Mm, body_reach_bass: Mm) -> Mm:
    """From the centreline to the outermost point on the side that reaches farther: half the width where both are alike.

    Formula: maximum(body_reach_treble, body_reach_bass)
    Source: common practice.
    """
    return max(body_reach_treble, body_reach_bass)


def body_perimeter(body_outlines: tuple[Outline, ...]) -> Mm:
    """Length once round the outside of the sides.

    Method: the curve's own length, by Gauss points on each of its pieces.
    Source: common practice.
    """
    return _only(each.perimeter for each in body_outlines)


def body_bouts(body_outlines: tuple[Outline, ...]) -> tuple[Bout, ...]:
    """Upper bout, waist and lower bout: where the outline is widest or narrowest, and how tightly it bends there.

    Where the halves are not alike these are the bass side's, with the whole width there.
    Method: places where the curve runs level with the centreline; named in their order from the neck.
    Source: common practice.
    """
    return tuple(bout for outline in body_outlines for bout in _bouts(outline))


def _bouts(outline: Outline) -> Iterable[Bout]:
    stations = outline.bass_half.stations
    usual = ("upper bout", "waist", "lower bout") if len(stations) == 3 else ()
    names = usual or tuple(f"{each.kind} place {row}" for row, each in enumerate(stations, 1))
    for name, station in zip(names, stations, strict=True):
        bend = abs(float(outline.bass_half.curve.curvature(station.along)))
        radius = 1 / bend if bend > 1e-9 else math.inf
        other = station.half_width if outline.alike else float(outline.half_width(station.x))
        yield Bout(name, station.kind, station.x, station.half_width + other, station.along, radius, other)


def body_tightest_bend(body_bouts: tuple[Bout, ...], bend_tightest_treble: Mm, bend_tightest_bass: Mm) -> Mm:
    """Radius of the tightest bend at a bout or the waist; of sides that are not alike, of any of their bends.

    Method: the least radius of the places listed.
    Source: common practice.
    """
    radii = (*(each.radius for each in body_bouts), bend_tightest_treble, bend_tightest_bass)
    return min((each for each in radii if not math.isnan(each)), default=math.nan)


def body_bend_ratio(body_tightest_bend: Mm, body_wall: Mm) -> Ratio:
    """The tightest bend over the thickness of the sides: what decides whether they bend.

    Source: common practice.
    """
    return body_tightest_bend / body_wall


def body_width_share(body_outlines: tuple[Outline, ...], body_saddle: Mm) -> Ratio:
    """Width of the body at the saddle, as a share of its greatest width.

    Method: width between the curves on both sides at the saddle, over the greatest.
    Source: common practice.
    """
    return _only(float(each.width_at(body_saddle)) / each.width for each in body_outlines)


def body_sides(
    body_outlines: tuple[Outline, ...],
    body_depth_neck: Mm,
    body_depth_tail: Mm,
    top_radius: Mm,
    body_back_radius: Mm,
) -> tuple[UnrolledSide, ...]:
    """The side round the outline with the domes of top and back, the bass one where they differ; none without a body.

    Method: domes are spheres with their apex half way along, where a dish leaves the rim's ends alike.
    Source: common practice.
    """
    return tuple(
        UnrolledSide(
            outline,
            body_depth_neck,
            body_depth_tail,
            Dome(1 / top_radius, outline.length / 2),
            Dome(1 / body_back_radius, outline.length / 2),
            "treble" if outline.alike else "bass",
        )
        for outline in body_outlines
    )


def body_shells(body_sides: tuple[UnrolledSide, ...], body_wall: Mm, body_linings: Mm) -> tuple[Shell, ...]:
    """The body's walls: its side, and the outlines inside linings and sides; none without a body.

    Method: the outline moved in square to itself.
    Source: common practice.
    """
    return tuple(
        Shell(
            side,
            moved_in(side.outline, body_wall + body_linings, "body.linings"),
            moved_in(side.outline, body_wall, "body.wall"),
        )
        for side in body_sides
    )


def body_rise_top(body_length: Mm, top_radius: Mm) -> Mm:
    """How far the top's dome stands over its rim plane half way along.

    Formula: top_radius - sqrt(top_radius**2 - (body_length / 2)**2) if isfinite(top_radius) else 0 * body_length
    Source: sagitta
    """
    return float(sagitta(1 / top_radius, body_length / 2))


def body_rise_back(body_length: Mm, body_back_radius: Mm) -> Mm:
    """How far the back's dome stands over its rim plane half way along.

    Formula: body_back_radius - sqrt(body_back_radius**2 - (body_length / 2)**2) if isfinite(body_back_radius)
        else 0 * body_length
    Source: sagitta
    """
    return float(sagitta(1 / body_back_radius, body_length / 2))


def body_deepest(body_depth_neck: Mm, body_depth_tail: Mm, body_rise_top: Mm, body_rise_back: Mm) -> Mm:
    """Depth inside on the centreline half way along, between the plates.

    Source: common practice.
    """
    return (body_depth_neck + body_depth_tail) / 2 + body_rise_top + body_rise_back


def body_air_volume(
    body_sides: tuple[UnrolledSide, ...],
    body_wall: Mm,
    body_blocks: tuple[BodyBlock, ...],
    body_linings_volume: Mm3,
    bevelled_more: Mm3,
) -> Mm3:
    """Air inside the sides between the plates, less blocks and linings, those behind bevels too; braces are left in.

    Method: the domed box over the outline, less a strip along it as thick as the sides, less blocks and linings.
    Source: steiner_inset
    """
    solid = sum(block.volume for block in body_blocks) + body_linings_volume + bevelled_more
    return _only(volume_within(each, body_wall) - solid for each in body_sides)


def body_blocks(
    body_shells: tuple[Shell, ...],
    body_neck_block: Mm,
    body_neck_block_width: Mm,
    body_tail_block: Mm,
    body_tail_block_width: Mm,
    foot_there: bool,
) -> tuple[BodyBlock, ...]:
    """Neck block (or the neck's own foot) and tail block, each as deep as the side at its end; none without a body.

    Method: boxes against the ends of the outline; the sides' thickness is not taken off. Where the halves are not
    alike, the treble side reaches no further than the inside of the side leaves, over the block's inner half.
    Source: common practice.
    """
    return tuple(
        block
        for shell in body_shells
        for block in (
            _block(
                "neck's foot" if foot_there else "neck block",
                (0.0, body_neck_block),
                body_neck_block_width / 2,
                shell.side.depth_start,
                shell,
            ),
            _block(
                "tail block",
                (shell.side.outline.length - body_tail_block, shell.side.outline.length),
                body_tail_block_width / 2,
                shell.side.depth_end,
                shell,
            ),
        )
    )


def _block(name: str, ends: tuple[Mm, Mm], half: Mm, depth: Mm, shell: Shell) -> BodyBlock:
    treble = half
    if not shell.bare.alike:
        middle = (ends[0] + ends[1]) / 2
        inner = ends[1] if ends[0] == 0 else ends[0]
        treble = min(half, float(shell.bare.half_width(np.linspace(inner, middle, 17)).min()))
    return BodyBlock(name, *ends, half, depth, treble)


def body_linings_volume(body_perimeter: Mm, body_linings: Mm, body_linings_height: Mm) -> Mm3:
    """Volume of the linings at both edges, taken as triangles all round.

    Source: common practice.
    """
    return body_perimeter * body_linings * body_linings_height


def body_air_openings(opening_list: tuple[Opening, ...], port_list: tuple[Port, ...]) -> tuple[Mm, ...]:
    """The body's openings, each by its conductance: area over the plug of air in it; holes in the top, then ports.

    Method: one an opening; more of them add.
    Source: kinsler_helmholtz
    """
    holes = (conductance(each.area, each.plug) for each in opening_list)
    return (*holes, *(conductance(each.area, each.plug) for each in port_list))


def body_air_rigid(body_air_openings: tuple[Mm, ...], body_air_volume: Mm3) -> Hertz:
    """Main air resonance if only the air moved: an upper bound.

    Method: c / (2 pi) sqrt(sum of the openings' conductances / volume), dry air at 20 degrees Celsius.
    Source: kinsler_helmholtz
    """
    if not body_air_openings:
        return math.nan
    return helmholtz_frequency(body_air_openings, body_air_volume, speed_of_sound(ROOM))


def body_air_least(body_air_rigid: Hertz, limit_air_share_least: Ratio) -> Hertz:
    """Where the main air resonance is at least to be looked for: plates that give bring it down.

    Source: common practice, from memory.
    """
    return body_air_rigid * limit_air_share_least


def body_air_most(body_air_rigid: Hertz, limit_air_share_most: Ratio) -> Hertz:
    """Where the main air resonance is at most to be looked for.

    Source: common practice, from memory.
    """
    return body_air_rigid * limit_air_share_most


def body_plate_length(body_length: Mm, body_plate_allowance: Mm) -> Mm:
    """Length of a joined plate for top or back, along the grain.

    Source: common practice.
    """
    return body_length + 2 * body_plate_allowance


def body_plate_half_width(body_reach: Mm, body_plate_allowance: Mm) -> Mm:
    """Width of each half of a joined plate; the joint needs an edge shot straight besides.

    Source: common practice.
    """
    return body_reach + body_plate_allowance


def body_plate_width(body_plate_half_width: Mm) -> Mm:
    """Width of a joined plate.

    Source: common practice.
    """
    return 2 * body_plate_half_width


def body_mould_length(body_length: Mm, body_mould_wall: Mm) -> Mm:
    """Length of the mould's boards.

    Source: common practice.
    """
    return body_length + 2 * body_mould_wall


def body_mould_half_width(body_reach: Mm, body_mould_wall: Mm) -> Mm:
    """Width of the boards for one half of the mould, which parts on the centreline.

    Source: common practice.
    """
    return body_reach + body_mould_wall


def body_mould_thickness(side_shallowest: Mm) -> Mm:
    """Thickness of the mould: 20 mm under the shallowest side, so that clamps reach both rims.

    Source: common practice.
    """
    return side_shallowest - 20
