"""Words that a page's edge would cut are moved together to where they stand whole, in the nearest blank room.

Words that belong together (the lines of a list, a card's name and its figures) keep their places to one another, and
words in a frame take it with them. Where a page has no room for all of them, those that stand whole are left, and the
rest is left out: half a word says nothing, and half a list says something else.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import cos, sin

import numpy as np

from gramil.drawings.marks import Point, Polyline
from gramil.writers.blank_room import CELL, blank_rooms
from gramil.writers.extents import Box, Vectors, bounds, box_round, points_on, touches
from gramil.writers.lettering import Lettering
from gramil.writers.plain import Plain
from gramil.writers.proof_square import meet
from gramil.writers.shared_pages import moved
from gramil.writers.tiles import Tile, Tiling, round_cross, shape_of

BESIDE, UNDER = 24.0, 5.0
"""In mm: words no further apart than this, side by side or one under the other, belong together."""
ROOM = 1.0
"""Room round what is moved, in mm."""
LIST, TELLING = 4, 12
"""From how many words on they are a list, and from how many letters on they say by themselves what they are of: these
may stand anywhere; others stay near what they are said of.
"""
SHORT, BY_IT, NEAR, ACROSS = 3, 24.0, 90.0, 3.0
"""So few letters stand for their place; how far they, and how far few words, may be moved, in mm; and how many times
more a step across their line counts than one along it."""


@dataclass(frozen=True)
class _Group:
    """Words that belong together, by their places among the marks, and the box round them."""

    members: tuple[int, ...]
    box: Box


def whole_words(marks: Sequence[Plain], tiling: Tiling) -> tuple[Plain, ...]:
    """The marks with every word whole on a page, or left out."""
    made: dict[int, Plain] = dict(enumerate(marks))
    framed = _framed(made)
    words = _besides(
        {at: mark for at, mark in made.items() if isinstance(mark, Lettering) and mark.text.strip()}, framed
    )
    listed = [*framed, *_listed(words, bounds(shape_of(marks)))]
    groups = [*listed, *_groups(_besides(words, listed))]
    cut = [group for group in groups if not any(_has_room(tile, group.box, tiling) for tile in tiling.tiles)]
    left = sorted(cut, key=lambda group: -len(group.members))
    while left:
        group = left.pop(0)
        members = {at: made[at] for at in group.members}
        by = _shift(group, list(members.values()), [mark for at, mark in made.items() if at not in members], tiling)
        if by is not None:
            made |= {at: moved(mark, by) for at, mark in members.items()}
            continue
        lost = [at for at, mark in members.items() if group in listed or not _held(mark, tiling)]
        if group in listed or len(members) == 1:
            made = {at: mark for at, mark in made.items() if at not in lost}
        else:
            left += [_Group((at,), box_round(members[at])) for at in lost]
    return tuple(made.values())


def _besides(words: dict[int, Lettering], groups: Sequence[_Group]) -> dict[int, Lettering]:
    """The words that are in none of the groups."""
    return {at: mark for at, mark in words.items() if not any(at in group.members for group in groups)}


def _framed(marks: dict[int, Plain]) -> list[_Group]:
    """What is in each frame of a list, and the frame, as one group: its lines as well as its words."""
    frames = [bounds([m]) for m in marks.values() if isinstance(m, Polyline) and m.layer == "list" and m.closed]
    inner = {at: bounds([m]) for at, m in marks.items() if isinstance(m, Lettering) or m.layer == "list"}
    return [_Group(tuple(at for at, box in inner.items() if _within(box, frame)), frame) for frame in frames]


def _within(box: Box, frame: Box) -> bool:
    return frame[0] <= box[0] and frame[1] <= box[1] and box[2] <= frame[2] and box[3] <= frame[3]


def _held(mark: Plain, tiling: Tiling) -> bool:
    box = box_round(mark)
    return any(_holds(tile, box) for tile in tiling.tiles)


def shown_whole(mark: Plain, tile: Tile) -> bool:
    """Whether a page shows a mark: a line as far as it reaches into it, words only where they are whole."""
    return not isinstance(mark, Lettering) or _holds(tile, box_round(mark))


def _listed(words: dict[int, Lettering], shape: Box) -> list[_Group]:
    """The list beside a shape, as one group; none if its lines stand each at the thing that they describe."""
    own = {at: box_round(mark) for at, mark in words.items() if mark.layer == "list"}
    if not own:
        return []
    box = _round(list(own.values()))
    apart = box[0] > shape[2] or box[2] < shape[0] or box[1] > shape[3] or box[3] < shape[1]
    return [_Group(tuple(own), box)] if apart else []


def _groups(words: dict[int, Lettering]) -> Iterator[_Group]:
    """The words by what belongs together: those of one direction that lie side by side or one under the other.

    A number or a name of a few letters stands for the place that it is at, and belongs to no other.
    """
    boxes = {at: box_round(mark) for at, mark in words.items()}
    yield from (_Group((at,), boxes[at]) for at, mark in words.items() if len(mark.text) <= SHORT)
    left = {at: mark for at, mark in words.items() if len(mark.text) > SHORT}
    while left:
        members, reached = list[int](), [next(iter(left))]
        while reached:
            at = reached.pop()
            if (mark := left.pop(at, None)) is not None:
                members.append(at)
                reached += [to for to, other in left.items() if _belong(mark, boxes[at], other, boxes[to])]
        yield _Group(tuple(members), _round([boxes[at] for at in members]))


def _belong(one: Lettering, its_box: Box, other: Lettering, other_box: Box) -> bool:
    if abs(one.angle - other.angle) > 1e-6:
        return False
    apart = [max(other_box[axis] - its_box[axis + 2], its_box[axis] - other_box[axis + 2]) for axis in (0, 1)]
    along, across = (apart[0], apart[1]) if abs(cos(one.angle)) > 0.5 else (apart[1], apart[0])
    return (along <= BESIDE and across < 0.0) or (along <= 0.0 and across <= UNDER)


def _shift(group: _Group, own: Sequence[Plain], others: Sequence[Plain], tiling: Tiling) -> Point | None:
    """How far the words are moved to stand whole in the nearest blank room; None if there is none near enough."""
    first = own[0]
    angle = first.angle if isinstance(first, Lettering) else 0.0
    size = (group.box[2] - group.box[0] + 2 * ROOM, group.box[3] - group.box[1] + 2 * ROOM)
    found = [shift for tile in tiling.tiles for shift in _shifts(group, size, tile, others, tiling)]
    if not found:
        return None
    along = (cos(angle), sin(angle))
    costs = [abs(x * along[0] + y * along[1]) + ACROSS * abs(y * along[0] - x * along[1]) for x, y in found]
    best = int(np.argmin(costs))
    anywhere = len(group.members) >= LIST or all(isinstance(m, Lettering) and len(m.text) >= TELLING for m in own)
    near = BY_IT if all(isinstance(m, Lettering) and len(m.text) <= SHORT for m in own) else NEAR
    return found[best] if anywhere or costs[best] <= near else None


def _shifts(group: _Group, size: Point, tile: Tile, others: Sequence[Plain], tiling: Tiling) -> Iterator[Point]:
    """How far the words would be moved to each blank room of a page."""
    inked = np.concatenate([*_seen_on(tile, others, tiling)])
    for left, top in blank_rooms(inked, tile.window, size, 2 * CELL):
        yield (float(left) + ROOM - group.box[0], float(top) - ROOM - group.box[3])


def _seen_on(tile: Tile, marks: Sequence[Plain], tiling: Tiling) -> Iterator[Vectors]:
    """Points on all that a page shows already: marks, crosses and the square that proves the print."""
    yield points_on((mark for mark in marks if touches(mark, tile.window)), CELL / 2)
    yield from (_filled(round_cross(cross)) for cross in tiling.crosses(tile))
    if tiling.proof is not None and tile is tiling.tiles[tiling.proof.page]:
        (x, y), side = tiling.proof.at, tiling.proof.side
        yield _filled((x, y, x + side, y + side))


def _filled(box: Box) -> Vectors:
    """Points all over a box, near enough together that nothing fits between them."""
    xs, ys = (np.arange(box[axis], box[axis + 2] + CELL, CELL) for axis in (0, 1))
    return np.stack(np.meshgrid(xs, ys), axis=-1).reshape(-1, 2)


def _holds(tile: Tile, box: Box) -> bool:
    return _within(box, tile.window)


def _has_room(tile: Tile, box: Box, tiling: Tiling) -> bool:
    """Whether words stand whole on a page, clear of its crosses and their names."""
    return _holds(tile, box) and not any(meet(box, round_cross(cross)) for cross in tiling.crosses(tile))


def _round(boxes: Sequence[Box]) -> Box:
    lefts, lows, rights, highs = zip(*boxes, strict=True)
    return (min(lefts), min(lows), max(rights), max(highs))
