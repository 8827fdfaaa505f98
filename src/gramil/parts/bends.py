"""How the sides of a body bend that is not alike left and right: hollow, horn or point, waist and bouts of each side.

Distances along are on the outside of the side, from its middle at the neck. A body whose sides are alike has none: its
bouts say all.
"""

import math
from collections.abc import Iterator

from gramil.parts.body_records import Bend
from gramil.quantities import Mm, Ratio
from gramil.shapes.bends import Turn, turns_of
from gramil.shapes.outline import Outline, Side

OWNS = ("bend_",)

USUAL = {
    ("bulge", "hollow", "bulge"): ("upper bout", "waist", "lower bout"),
    ("hollow", "bulge", "hollow", "bulge"): ("hollow", "horn", "waist", "lower bout"),
}
"""Names of the bends of a side as it is, and of one that is cut away, from the neck on."""
AT_BLOCK = 80.0
"""In mm along the side: a corner ahead of every hollow and so near the neck lies on the block, under the heel."""


def bend_treble(body_outlines: tuple[Outline, ...]) -> tuple[Bend, ...]:
    """The treble side's bends and corners, where the sides are not alike.

    Method: of each run of the curve that bends one way, the place of greatest curvature; its middle if that is an arc.
    Source: common practice.
    """
    return tuple(bend for each in body_outlines if not each.alike for bend in _named(each, "treble"))


def bend_bass(body_outlines: tuple[Outline, ...]) -> tuple[Bend, ...]:
    """The bass side's bends and corners, where the sides are not alike.

    Method: of each run of the curve that bends one way, the place of greatest curvature; its middle if that is an arc.
    Source: common practice.
    """
    return tuple(bend for each in body_outlines if not each.alike for bend in _named(each, "bass"))


def _named(outline: Outline, side: Side) -> Iterator[Bend]:
    turns = _past_heel(turns_of(outline.half_of(side).curve))
    corners = [each for each in turns if each.kind == "corner"]
    bends = [each for each in turns if each.kind != "corner"]
    names = USUAL.get(tuple(each.kind for each in bends), tuple(f"{each.kind} {row}" for row, each in _counted(bends)))
    called = dict(zip((each.along for each in bends), names, strict=True))
    called |= {each.along: name for each, name in zip(corners, _corner_names(corners, bends), strict=True)}
    if "point" in called.values():
        called = {at: "upper bout" if name == "horn" else name for at, name in called.items()}
    for each in turns:
        turn = abs(each.turn)
        yield Bend(called[each.along], each.kind, each.along, each.x, each.y, each.radius, turn, math.pi - turn)


def _counted(turns: list[Turn]) -> Iterator[tuple[int, Turn]]:
    return enumerate(turns, 1)


def _past_heel(turns: tuple[Turn, ...]) -> tuple[Turn, ...]:
    """The bends without those ahead of the corner under the heel, if there is one."""
    heel = next((row for row, each in enumerate(turns) if _at_heel(each)), 0)
    return turns if any(each.kind == "hollow" for each in turns[:heel]) else turns[heel:]


def _at_heel(turn: Turn) -> bool:
    return turn.kind == "corner" and turn.along < AT_BLOCK


def _corner_names(corners: list[Turn], bends: list[Turn]) -> Iterator[str]:
    """A corner ahead of every bend lies under the heel; the others are points, numbered if there are several."""
    first = bends[0].along if bends else 0.0
    points = [each for each in corners if each.along > first or not _at_heel(each)]
    for each in corners:
        if each not in points:
            yield "heel corner"
        else:
            yield "point" if len(points) == 1 else f"point {points.index(each) + 1}"


def bend_tightest_treble(bend_treble: tuple[Bend, ...]) -> Mm:
    """Radius of the treble side's tightest bend; not known for sides that are alike.

    Method: the least of its bends; a corner is none.
    Source: common practice.
    """
    return _tightest(bend_treble)


def bend_tightest_bass(bend_bass: tuple[Bend, ...]) -> Mm:
    """Radius of the bass side's tightest bend; not known for sides that are alike.

    Method: the least of its bends; a corner is none.
    Source: common practice.
    """
    return _tightest(bend_bass)


def _tightest(bends: tuple[Bend, ...]) -> Mm:
    return min((each.radius for each in bends if each.kind != "corner"), default=math.nan)


def bend_thin_to(bend_tightest_treble: Mm, bend_tightest_bass: Mm, limit_bend_ratio_least: Ratio) -> Mm:
    """How thin a side has to be at its tightest bend to bend at all; not known for sides that are alike.

    Method: the lesser radius over the least ratio of radius to thickness.
    Source: common practice.
    """
    radii = [each for each in (bend_tightest_treble, bend_tightest_bass) if not math.isnan(each)]
    return min(radii, default=math.nan) / limit_bend_ratio_least
