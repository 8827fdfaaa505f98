"""A drawing made readable at arm's length although a page shows it small: no letter under seven points.

Words that are too small are written larger. If words then overlap, the later ones are replaced by a number, and what
they say is put in a table beside the drawing.
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from math import cos, hypot, pi, sin

from gramil.drawings.marks import SMALLEST, Circle, Drawing, Line, Mark, Point, Span
from gramil.drawings.picture import Picture, Row
from gramil.measure import LengthUnit
from gramil.writers.clear_of_lines import boxed, clear_of_lines, over_a_line
from gramil.writers.extents import Box, bounds
from gramil.writers.lettering import Lettering, corners, width
from gramil.writers.plain import Plain, has_place, pieces, with_hatches
from gramil.writers.proof_square import meet as boxes_meet
from gramil.writers.spans import Resolve
from gramil.writers.stacked import grown
from gramil.writers.svg import MARGIN, svg_of

TO_SPARE = 1.002
"""Letters are made this much larger than they must be, so that rounding takes none under the least size."""
ROUNDS = 12
"""Letters that grow push the drawing's edge out, which makes it smaller: so often, at the most, it is placed anew."""
BETWEEN = 0.1
"""Room round a text, as a share of the height of its capitals."""
SPACE, FEW = 0.8, 3
"""Room before and behind words on their own line, as a share of that height; words of so few letters need none."""
SHARES = (0.45, 0.6, 0.8, 1.0)
"""Shares of the room's height in which a drawing is tried, the least first."""
WIDEST = 0.4
"""Words wider than this share of the page stand in the table."""
RING = (1.0, 1.2, 1.6)
"""Radius of the ring round a number of so many digits, in heights of a capital."""
THIN = 0.1
"""Half the room that a line from a number to its words takes, in mm."""
WAYS = 8
STEPS = (0.0, 1.7, 2.6, 3.5, 5.0, 6.5, 8.0, 10.0, 13.0, 16.0, 20.0, 25.0, 30.0)
"""How far from the words that it stands for a number may stand, in heights of a capital, tried in turn, and how many
ways from there."""

Corners = tuple[Point, Point, Point, Point]


def legible(drawing: Drawing, resolve: Resolve, room: tuple[float, float], unit: LengthUnit = "mm") -> Picture:
    """The drawing for a place `room` mm wide and of limited height, as low as its words allow.

    A list on it is left to the page's own tables. Raises KeyError for a mark on a layer that does not exist, or a
    figure
    that leads nowhere.
    """
    bare = replace(drawing, marks=tuple(each for each in drawing.marks if each.layer != "list" and has_place(each)))
    marks, least, key = _chosen(bare, resolve, room)
    return Picture(svg_of(drawing, with_hatches(marks), resolve, unit), least, key)


Laid = tuple[list[Plain], float, tuple[Row, ...]]
"""Marks, the height in mm that they must have at the least, and the table of what found no place among them."""


def _chosen(drawing: Drawing, resolve: Resolve, room: tuple[float, float]) -> Laid:
    """The version with the fewest words in the table and, of those, the least height."""
    whole = _as_it_is(drawing, resolve, room)
    if whole is not None and whole[1] <= SHARES[0] * room[1]:
        return whole
    best = min(_tried(drawing, resolve, room), key=lambda each: len(each[0][2]))
    clear = _lettered(drawing, resolve, (room[0], best[1] * room[1]), clear=True)
    return whole if whole is not None and clear[2] else clear


def _tried(drawing: Drawing, resolve: Resolve, room: tuple[float, float]) -> Iterator[tuple[Laid, float]]:
    """The drawing in each share of the room, until no word stands in the table."""
    for share in SHARES:
        yield (laid := _lettered(drawing, resolve, (room[0], share * room[1]))), share
        if not laid[2]:
            return


def _lettered(drawing: Drawing, resolve: Resolve, room: tuple[float, float], clear: bool = False) -> Laid:
    """The drawing as large as the room allows, with letters enlarged until readable, and a table for those that do not
    fit; with `clear` none of them over a line.
    """
    height = 0.0
    for _ in range(ROUNDS):
        groups, key = _keyed(drawing, resolve, height, room[0])
        marks = [mark for group in groups for mark in group]
        marks, key = _cleared(marks, key) if clear else (marks, key)
        times = _times(marks, room)
        if _least(marks) * times >= SMALLEST:
            break
        height = SMALLEST * TO_SPARE / times
    return marks, times * _size(marks)[1], key


def _cleared(laid: list[Plain], known: tuple[Row, ...]) -> tuple[list[Plain], tuple[Row, ...]]:
    """The same with no words over a line: those that find no room beside their place go to the table, too."""
    marks, homeless = clear_of_lines(laid)
    taken = [corners(mark, BETWEEN * mark.height) for mark in marks if isinstance(mark, Lettering)]
    lines, key = boxed(mark for mark in marks if not isinstance(mark, Lettering)), list(known)
    for text in sorted(homeless, key=_reading_order):
        key.append((str(len(key) + 1), text.text))
        marks += _numbered(text, key[-1][0], taken, lines)
    return marks, tuple(key)


def _as_it_is(drawing: Drawing, resolve: Resolve, room: tuple[float, float]) -> Laid | None:
    """The drawing as it is, with the height at which its smallest letter is large enough; None if there is no such
    height.
    """
    marks = [piece for mark in drawing.marks for piece in pieces(mark, resolve)]
    times, (wide, tall) = SMALLEST * TO_SPARE / _least(marks), _size(marks)
    if wide * times > room[0] or tall * times > room[1]:
        return None
    return marks, tall * times, ()


def _least(marks: Sequence[Plain]) -> float:
    """Height of the smallest letter; without letters, a size that is always large enough."""
    return min((mark.height for mark in marks if isinstance(mark, Lettering)), default=1e9)


def _size(marks: Sequence[Plain]) -> tuple[float, float]:
    left, low, right, high = bounds(marks)
    return right - left + 2 * MARGIN, high - low + 2 * MARGIN


def _times(marks: Sequence[Plain], room: tuple[float, float]) -> float:
    wide, tall = _size(marks)
    return min(room[0] / wide, room[1] / tall)


def _keyed(
    drawing: Drawing, resolve: Resolve, height: float, wide: float
) -> tuple[list[Sequence[Plain]], tuple[Row, ...]]:
    """The marks with letters at least `height` tall, and the table of words for which there was no room.

    `wide` is the page's room in mm: at this height of letters it is `wide * height / SMALLEST` of the drawing.
    """
    larger = grown(drawing.marks, height)
    groups = [pieces(mark, resolve) for mark in larger]
    widest = WIDEST * wide * max(height, SMALLEST) / SMALLEST
    kept, moved = _sorted_out(groups, widest)
    drawn = (each for group in groups for each in group if not isinstance(each, Lettering))
    lines = boxed(drawn) if moved else []
    key = []
    for number, at in enumerate(sorted(moved, key=lambda at: _reading_order(_letters(groups[at])[0])), 1):
        text = _letters(groups[at])[0]
        groups[at] = (*_lines(larger[at], str(number), groups[at]), *_numbered(text, str(number), kept, lines))
        key.append((str(number), text.text))
    return groups, tuple(key)


def _letters(group: Sequence[Plain]) -> list[Lettering]:
    return [mark for mark in group if isinstance(mark, Lettering) and mark.text.strip()]


def _sorted_out(groups: Sequence[Sequence[Plain]], widest: float) -> tuple[list[Corners], list[int]]:
    """The boxes of the texts that stay where they are, and the indices of those that cannot."""
    kept: list[Corners] = []
    moved = []
    for at, group in enumerate(groups):
        for text in _letters(group):
            box = corners(text, BETWEEN * text.height)
            apart = _with_space(text)
            if width(text.text, text.height, text.figure) > widest or any(meet(apart, other) for other in kept):
                moved.append(at)
            else:
                kept.append(box)
    return kept, moved


def _with_space(text: Lettering) -> Corners:
    """The box round words with the space of a letter before and behind them, so that nothing else stands so near on a
    line; a number or a name of a few letters is told from its neighbour anyhow."""
    if len(text.text) <= FEW:
        return corners(text, BETWEEN * text.height)
    (a, b), (c, d), (e, f), (g, h) = corners(text, BETWEEN * text.height)
    along, up = SPACE * text.height * cos(text.angle), SPACE * text.height * sin(text.angle)
    return (a - along, b - up), (c + along, d + up), (e + along, f + up), (g - along, h - up)


def _reading_order(text: Lettering) -> tuple[float, float]:
    """From the top down, in lines three capitals tall, and from the left."""
    return (-round(text.at[1] / (3 * text.height)), text.at[0])


def _lines(mark: Mark, number: str, group: Sequence[Plain]) -> Sequence[Plain]:
    """The lines of a mark apart from its words: a dimension's lines are extended to the number."""
    if isinstance(mark, Span):
        group = pieces(replace(mark, before=number), lambda _: "")
    return [each for each in group if not isinstance(each, Lettering)]


def _numbered(
    text: Lettering, number: str, taken: list[Corners], lines: Sequence[tuple[Plain, Box]]
) -> Iterator[Plain]:
    """The number as near the middle of the words as there is room, with a line to it if it stands aside.

    Clear of words and lines if it can be, else of words.
    """
    middle, reach = _pointed_at(text, taken), RING[min(len(number), len(RING)) - 1] * text.height
    at = _place(middle, text.height, reach, taken, lines)
    taken.append(_square(at, reach))
    yield Lettering((at[0], at[1] - text.height / 2), number, text.height, 0.0, "middle", text.layer, True)
    yield Circle(at, reach, "dimensions")
    if hypot(at[0] - middle[0], at[1] - middle[1]) > 2 * reach:
        yield Line(_toward(at, middle, reach), middle, "dimensions")


def _pointed_at(text: Lettering, taken: Sequence[Corners]) -> Point:
    """What a number's line leads to: the middle of the words that it stands for or, where others have grown over that,
    one of their ends."""
    low_left, low_right, high_right, high_left = corners(text)
    ends = ((low_left, high_right), (low_left, high_left), (low_right, high_right))
    points = [((one[0] + other[0]) / 2, (one[1] + other[1]) / 2) for one, other in ends]
    free = (at for at in points if not any(meet(_square(at, THIN), other) for other in taken))
    return next(free, points[0])


def _place(
    middle: Point, height: float, reach: float, taken: Sequence[Corners], lines: Sequence[tuple[Plain, Box]]
) -> Point:
    """Where a number stands: the first place clear of words, its line too, and of lines; else the first clear of words,
    else the last."""
    free, at, far = None, middle, STEPS[-1] * height + reach
    taken = [other for other in taken if meet(_square(middle, far), other)]
    lines = [each for each in lines if boxes_meet(each[1], _round(middle, far))]
    for at in _places(middle, height):
        if any(meet(_square(at, reach), other) for other in taken):
            continue
        free = free or at
        led = at == middle or not any(meet(_band(at, middle), other) for other in taken)
        if led and not over_a_line(_round(at, reach), lines):
            return at
    return free or at


def _places(middle: Point, height: float) -> Iterator[Point]:
    yield middle
    for step in STEPS[1:]:
        for part in range(WAYS):
            turn = 2 * pi * part / WAYS
            yield (middle[0] + step * height * cos(turn), middle[1] + step * height * sin(turn))


def _square(at: Point, reach: float) -> Corners:
    (x, y), r = at, reach
    return ((x - r, y - r), (x + r, y - r), (x + r, y + r), (x - r, y + r))


def _round(at: Point, reach: float) -> Box:
    return (at[0] - reach, at[1] - reach, at[0] + reach, at[1] + reach)


def _band(start: Point, end: Point) -> Corners:
    """A narrow band round a line, as a box."""
    far = hypot(end[0] - start[0], end[1] - start[1])
    aside = (-(end[1] - start[1]) / far * THIN, (end[0] - start[0]) / far * THIN)
    return (
        (start[0] - aside[0], start[1] - aside[1]),
        (end[0] - aside[0], end[1] - aside[1]),
        (end[0] + aside[0], end[1] + aside[1]),
        (start[0] + aside[0], start[1] + aside[1]),
    )


def _toward(start: Point, end: Point, by: float) -> Point:
    far = hypot(end[0] - start[0], end[1] - start[1])
    return (start[0] + (end[0] - start[0]) * by / far, start[1] + (end[1] - start[1]) * by / far)


def meet(one: Corners, other: Corners) -> bool:
    """Whether two boxes at any angle overlap by more than an edge: none of their sides separates them."""
    if _far(one, other):
        return False
    return not any(_parts(one, other, box[side], box[side + 1]) for box in (one, other) for side in (0, 1))


def _far(one: Corners, other: Corners) -> bool:
    """Whether the circles round two boxes lie apart, which is soon seen."""
    (a, _, b, _), (c, _, d, _) = one, other
    reach = hypot(b[0] - a[0], b[1] - a[1]) + hypot(d[0] - c[0], d[1] - c[1])
    return hypot(a[0] + b[0] - c[0] - d[0], a[1] + b[1] - c[1] - d[1]) > reach


def _parts(one: Corners, other: Corners, start: Point, end: Point) -> bool:
    """Whether the two boxes lie apart as seen along a side."""
    along = (end[0] - start[0], end[1] - start[1])
    first, second = ([x * along[0] + y * along[1] for x, y in box] for box in (one, other))
    return max(first) <= min(second) or max(second) <= min(first)
