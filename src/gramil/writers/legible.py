"""A drawing made readable at arm's length although a page shows it small: no letter under seven points.

Words that are too small are written larger. If words then overlap, the later ones are replaced by a number, and what
they say is put in a table beside the drawing; a number or a name of a few letters is set aside itself. Sentences on the
whole drawing go there together, without a number.
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from functools import cache
from math import cos, sin

from gramil.drawings.marks import SMALLEST, Drawing, Mark, Span, Words
from gramil.drawings.picture import Picture, Row
from gramil.measure import LengthUnit
from gramil.writers.clear_of_lines import boxed, clear_of_lines
from gramil.writers.extents import bounds
from gramil.writers.lettering import Lettering, corners, width
from gramil.writers.plain import Plain, has_place, pieces, with_hatches
from gramil.writers.rings import numbered, set_aside
from gramil.writers.slanted import Corners, Upright, hits, upright
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
LOWER, MORE = (0.32, 0.38, SHARES[0], 0.54), 3
"""Shares of the room's height that a lower drawing takes, for a page that would not hold it otherwise, and how many
more words may stand in its table.
"""
MANY = 1000
"""More rows than any table has."""
WORTH, SEEN = 6.0, 0.5
"""How many mm a lower drawing must save, and how large its lines must be beside those of the other: smaller, they are
lost among the words.
"""
WIDEST = 0.4
"""Words wider than this share of the page stand in the table."""


def legible(
    drawing: Drawing, resolve: Resolve, room: tuple[float, float], unit: LengthUnit = "mm", lower: bool = True
) -> Picture:
    """The drawing for a place `room` mm wide and of limited height, as low as its words allow; with `lower` also one
    that is lower, where that takes not many more numbers for words.

    A list on it is left to the page's own tables. Raises KeyError for a mark on a layer that does not exist, or a
    figure that leads nowhere.
    """
    bare = replace(drawing, marks=tuple(each for each in drawing.marks if each.layer != "list" and has_place(each)))
    read = cache(resolve)
    best = _chosen(bare, read, room)
    low = _lower(bare, read, room, best) if lower else None

    def pictured(laid: Laid) -> Picture:
        return Picture(svg_of(drawing, with_hatches(laid[0]), resolve, unit), laid[1], laid[2])

    return replace(pictured(best), low=pictured(low) if low is not None else None)


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


def _lower(drawing: Drawing, resolve: Resolve, room: tuple[float, float], best: Laid) -> Laid | None:
    """The lowest version that has not many more words in the table; None if that is the best one."""
    most = len(best[2]) + MORE
    for share in LOWER:
        within = (room[0], share * room[1])
        if within[1] > best[1] - WORTH:
            continue
        height = (
            SMALLEST * TO_SPARE / _times([each for mark in drawing.marks for each in pieces(mark, resolve)], within)
        )
        if _in_the_table(drawing, resolve, height, room[0]) <= most:
            laid = _lettered(drawing, resolve, within, clear=True, height=height, most=most)
            if laid[1] < best[1] and len(laid[2]) <= most and _as_large(laid) >= SEEN * _as_large(best):
                return laid
    return None


def _as_large(laid: Laid) -> float:
    """How large a drawing's lines are on the page, relative to the drawing."""
    return laid[1] / _size(laid[0])[1]


def _in_the_table(drawing: Drawing, resolve: Resolve, height: float, wide: float) -> int:
    """The least number of words that must go to the table, which is quickly found: letters grow further as they push
    the edge.
    """
    larger = [pieces(mark, resolve) for mark in grown(drawing.marks, height)]
    moved = _sorted_out(larger, _widest(wide, height))[1]
    return sum(len(_letters(larger[at])[0].text) > FEW for at in moved)


def _widest(wide: float, height: float) -> float:
    """Words wider than this go to the table: the page's room is `wide * height / SMALLEST` of the drawing, in mm."""
    return WIDEST * wide * max(height, SMALLEST) / SMALLEST


def _tried(drawing: Drawing, resolve: Resolve, room: tuple[float, float]) -> Iterator[tuple[Laid, float]]:
    """The drawing in each share of the room, until no word stands in the table."""
    for share in SHARES:
        yield (laid := _lettered(drawing, resolve, (room[0], share * room[1]))), share
        if not laid[2]:
            return


def _lettered(
    drawing: Drawing,
    resolve: Resolve,
    room: tuple[float, float],
    clear: bool = False,
    height: float = 0.0,
    most: int = MANY,
) -> Laid:
    """The drawing as large as the room allows, with letters enlarged until readable, and a table for those that do not
    fit; with `clear` none of them over a line. They are `height` tall or taller, in mm of the drawing; past `most`
    rows of the table it is no longer tried.
    """
    for _ in range(ROUNDS):
        groups, key = _keyed(drawing, resolve, height, room[0])
        marks = [mark for group in groups for mark in group]
        marks, key = _cleared(marks, key) if clear else (marks, key)
        times = _times(marks, room)
        # words that were put clear of lines may have pushed the edge out, and all is then shown smaller
        if _least(marks) * times >= SMALLEST or len(key) > most:
            break
        height = SMALLEST * TO_SPARE / times
    return marks, times * _size(marks)[1], key


def _cleared(laid: list[Plain], known: tuple[Row, ...]) -> tuple[list[Plain], tuple[Row, ...]]:
    """The same with no words over a line: those that find no room beside their place go to the table, too."""
    marks, homeless = clear_of_lines(laid)
    taken = [corners(mark, BETWEEN * mark.height) for mark in marks if isinstance(mark, Lettering)]
    lines, key = boxed(mark for mark in marks if not isinstance(mark, Lettering)), list(known)
    for text in sorted(homeless, key=_reading_order):
        if is_remark(text.text):
            key.append(("", text.text))
            continue
        if len(text.text) <= FEW:
            marks += set_aside(text, taken, lines)
            continue
        number = str(sum(bool(row[0]) for row in key) + 1)
        key.append((number, text.text))
        marks += numbered(text, number, taken, lines)
    return marks, tuple(key)


def is_remark(text: str) -> bool:
    """Whether words are a sentence on the whole drawing, which points at nothing on it."""
    return text.endswith(".")


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

    `wide` is the page's room in mm.
    """
    larger = grown(drawing.marks, height)
    groups = [pieces(mark, resolve) for mark in larger]
    kept, moved = _sorted_out(groups, _widest(wide, height))
    drawn = (each for group in groups for each in group if not isinstance(each, Lettering))
    lines = boxed(drawn) if moved else []
    remarks = [at for at, mark in enumerate(drawing.marks) if isinstance(mark, Words) and is_remark(mark.text)]
    said = tuple(("", _letters(groups[at])[0].text) for at in remarks) if set(moved) & set(remarks) else ()
    if said:  # all of them together, so that none is left behind
        groups = [() if at in remarks else group for at, group in enumerate(groups)]
    key: list[Row] = []
    placed = sorted(set(moved) - set(remarks), key=lambda at: _reading_order(_letters(groups[at])[0]))
    for at in placed:
        text, number = _letters(groups[at])[0], len(key) + 1
        if len(text.text) <= FEW:
            apart = [each for each in groups[at] if not isinstance(each, Lettering)]
            groups[at] = (*apart, *set_aside(text, kept, lines))
            continue
        groups[at] = (*_lines(larger[at], str(number), groups[at]), *numbered(text, str(number), kept, lines))
        key.append((str(number), text.text))
    return groups, (*key, *said)


def _letters(group: Sequence[Plain]) -> list[Lettering]:
    return [mark for mark in group if isinstance(mark, Lettering) and mark.text.strip()]


def _sorted_out(groups: Sequence[Sequence[Plain]], widest: float) -> tuple[list[Corners], list[int]]:
    """The boxes of the texts that stay where they are, and the indices of those that cannot."""
    kept: list[tuple[Upright, Corners]] = []
    moved = []
    for at, group in enumerate(groups):
        for text in _letters(group):
            if width(text.text, text.height, text.figure) > widest or hits(_with_space(text), kept):
                moved.append(at)
            else:
                box = corners(text, BETWEEN * text.height)
                kept.append((upright(box), box))
    return [box for _, box in kept], moved


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
