"""A drawing split into overlapping pages: which pages there are, what each shows, where their crosses meet.

Pages are named as on a map, rows A, B, C from the top and columns 1, 2, 3 from the left. A page on which nothing
is drawn is left out.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import ceil

from gramil.drawings.marks import Point
from gramil.measure import LengthUnit
from gramil.writers.extents import Box, bounds, touches
from gramil.writers.lettering import Lettering
from gramil.writers.paper import Sheet, sheets
from gramil.writers.plain import Plain
from gramil.writers.proof_square import Proof, proof_square

OVERLAP = 10.0
ROOM, ROOM_ALONE = 3.0, 1.0
"""In mm: how far pages overlap; the blank round what is cut on several pages, and on a single one, which has no
crosses."""
SLIGHT = 0.5
"""How far, in mm, what stands at a drawing's edge may reach past a page that holds all of it."""
CROSS_ROOM = (24.0, 7.0)
"""How far a cross and the names beside it reach from its middle, in mm."""
BESIDE = ("text", "dimensions", "list", "centreline")
"""Layers that stand beside the shape to cut, or run out past it: no page is printed for them."""


@dataclass(frozen=True)
class Tile:
    """One page: its name, place in the grid, and `window`, the part of the drawing that it shows, in mm."""

    name: str
    row: int
    column: int
    window: Box


@dataclass(frozen=True)
class Cross:
    """A registration cross at the same place of the drawing on every page in `joins`."""

    at: Point
    joins: tuple[str, ...]


def named_after(tilings: Sequence["Tiling"]) -> list["Tiling"]:
    """Tilings of the pieces of one drawing, the rows of each named on from those before it: no two pages share a
    name."""
    named, before = [], 0
    for tiling in tilings:
        tiles = tuple(replace(tile, name=_name(tile.row + before, tile.column)) for tile in tiling.tiles)
        named.append(replace(tiling, tiles=tiles))
        before += tiling.grid[1]
    return named


@dataclass(frozen=True)
class Tiling:
    """A drawing on its pages: `grid` is columns by rows; `proof` is None if the first page has no room for it."""

    sheet: Sheet
    grid: tuple[int, int]
    origin: Point
    tiles: tuple[Tile, ...]
    proof: Proof | None

    @property
    def pages(self) -> int:
        """How many pages are printed: one more if the square needs its own."""
        return len(self.tiles) + (self.proof is None)

    @property
    def size(self) -> tuple[float, float]:
        """Width and height of all pages laid together, in mm of the drawing."""
        step = _step(self.sheet)
        return (self.grid[0] * step[0] + OVERLAP, self.grid[1] * step[1] + OVERLAP)

    def crosses(self, tile: Tile) -> tuple[Cross, ...]:
        """The crosses on a page: at each of its corners that another page shares."""
        corners = [(tile.column + i, tile.row + j) for j in (0, 1) for i in (0, 1)]
        found = (Cross(self._node(*corner), self._joined(*corner)) for corner in corners)
        return tuple(cross for cross in found if len(cross.joins) > 1)

    def _node(self, column: int, row: int) -> Point:
        return _node(self.sheet, self.origin, column, row)

    def _joined(self, column: int, row: int) -> tuple[str, ...]:
        near = {(column - i, row - j) for i in (0, 1) for j in (0, 1)}
        return tuple(tile.name for tile in self.tiles if (tile.column, tile.row) in near)


def tiled(
    marks: Sequence[Plain], paper: str, printer_scale: tuple[float, float], unit: LengthUnit = "mm", plan: bool = False
) -> Tiling:
    """The drawing on this paper, turned for the fewest tiles (then to have all on one, for the least paper, lying).

    A `plan` is read, not cut: what its dimensions run over is printed as well.
    """
    sized = [mark for mark in marks if plan and mark.layer == "dimensions" and not isinstance(mark, Lettering)]
    shape = [*shape_of(marks), *sized]
    box = bounds(shape)
    wide, tall = box[2] - box[0] + 2 * ROOM, box[3] - box[1] + 2 * ROOM
    both = [_on_sheet(marks, shape, box, sheet) for sheet in sheets(paper, wide, tall, printer_scale, unit)]
    whole = bounds(marks)

    def first(t: Tiling) -> tuple[float, ...]:
        return len(t.tiles), not _holds(t, whole)

    def then(t: Tiling) -> tuple[float, ...]:
        return t.pages * t.sheet.width * t.sheet.height, t.sheet.height

    least = min(map(first, both))
    alike = [replace(each, proof=proof_on(marks, each)) for each in both if first(each) == least]
    return min(alike, key=then)


def _holds(tiling: Tiling, whole: Box) -> bool:
    """Whether one page has all that stands beside the shape, too; over several, words move to where there is room."""
    wide, tall = tiling.size
    return len(tiling.tiles) == 1 and whole[2] - whole[0] <= wide + SLIGHT and whole[3] - whole[1] <= tall + SLIGHT


def with_a_page_of_lists(tiling: Tiling) -> Tiling:
    """The same with a page more, apart from the others, for lists that found no room beside what they are of."""
    columns, rows = tiling.grid
    page = replace(_tile(tiling.sheet, tiling.origin, rows + 1, 0), name="L")
    return replace(tiling, grid=(columns, rows + 2), tiles=(*tiling.tiles, page))


def in_a_row(sheet: Sheet, columns: int) -> Tiling:
    """So many pages side by side; the upper left corner of what the first shows lies at zero."""
    return Tiling(
        sheet, (columns, 1), (0.0, 0.0), tuple(_tile(sheet, (0.0, 0.0), 0, at) for at in range(columns)), None
    )


def columns_for(wide: float, sheet: Sheet) -> int:
    """How many pages side by side hold so many mm."""
    return _count(wide + 2 * ROOM, _step(sheet)[0]) if wide + 2 * ROOM_ALONE > sheet.window[0] else 1


def round_cross(cross: Cross) -> Box:
    """How far a cross and the names beside it reach."""
    (x, y), (wide, tall) = cross.at, CROSS_ROOM
    return (x - wide, y - tall, x + wide, y + tall)


def shape_of(marks: Sequence[Plain]) -> list[Plain]:
    """What is cut, drilled or followed, without words and dimensions beside it; everything, if there is nothing
    else.
    """
    shape: list[Plain] = [m for m in marks if not isinstance(m, Lettering) and m.layer not in BESIDE]
    return shape or list(marks)


def _on_sheet(marks: Sequence[Plain], shape: Sequence[Plain], box: Box, sheet: Sheet) -> Tiling:
    """The shape on its pages; spare room is put on the sides where words and dimensions are, else right of the shape,
    and over it, or on a single page below it.
    """
    step, room = _step(sheet), _room(box, sheet)
    columns = _count(box[2] - box[0] + 2 * room, step[0])
    rows = _count(box[3] - box[1] + 2 * room, step[1])
    whole = bounds(marks)
    spare = [
        count * each + OVERLAP - (box[side + 2] - box[side] + 2 * room)
        for side, count, each in ((0, columns, step[0]), (1, rows, step[1]))
    ]
    left = _share(spare[0], box[0] - whole[0], whole[2] - box[2])
    above = _share(spare[1], whole[3] - box[3], box[1] - whole[1])
    below = spare[1] - above if rows == columns == 1 else _share(spare[1], box[1] - whole[1], whole[3] - box[3])
    origin = (box[0] - room - left, box[1] - room - below + rows * step[1] + OVERLAP)
    every = [_tile(sheet, origin, row, column) for row in range(rows) for column in range(columns)]
    cells = [_cell(tile, columns, rows) for tile in every]
    kept = tuple(t for t, cell in zip(every, cells, strict=True) if any(touches(mark, cell) for mark in shape))
    kept = kept or (every[0],)
    return Tiling(sheet, (columns, rows), origin, kept, None)


def _share(spare: float, before: float, after: float) -> float:
    """How much of the spare room lies before the shape: what is needed there, if there is room for both sides."""
    wanted = before + after
    return before if wanted <= max(spare, 0.0) else spare * before / wanted


def _room(box: Box, sheet: Sheet) -> float:
    """The blank margin round the drawing: small if one page holds it all."""
    wide, tall = box[2] - box[0] + 2 * ROOM_ALONE, box[3] - box[1] + 2 * ROOM_ALONE
    return ROOM_ALONE if wide <= sheet.window[0] and tall <= sheet.window[1] else ROOM


def _step(sheet: Sheet) -> tuple[float, float]:
    """The distance from one page's window to the next, in true mm."""
    return (sheet.window[0] - OVERLAP, sheet.window[1] - OVERLAP)


def _count(length: float, step: float) -> int:
    return max(1, ceil((length - OVERLAP) / step - 1e-9))


def _node(sheet: Sheet, origin: Point, column: int, row: int) -> Point:
    """The middle of the overlap at a corner of the grid."""
    step = _step(sheet)
    return (origin[0] + OVERLAP / 2 + column * step[0], origin[1] - OVERLAP / 2 - row * step[1])


def _tile(sheet: Sheet, origin: Point, row: int, column: int) -> Tile:
    left, top = (origin[0] + column * _step(sheet)[0], origin[1] - row * _step(sheet)[1])
    return Tile(_name(row, column), row, column, (left, top - sheet.window[1], left + sheet.window[0], top))


def _name(row: int, column: int) -> str:
    return f"{_letters(row)}{column + 1}"


def _letters(row: int) -> str:
    """A to Z, then AA, AB and so on."""
    letters = ""
    row += 1
    while row > 0:
        row, letter = divmod(row - 1, 26)
        letters = chr(ord("A") + letter) + letters
    return letters


def _cell(tile: Tile, columns: int, rows: int) -> Box:
    """The part of its window that belongs to this page alone: up to the middle of each overlap, and to the edge
    elsewhere.
    """
    left, low, right, high = tile.window
    half = OVERLAP / 2
    return (
        left + half * (tile.column > 0),
        low + half * (tile.row < rows - 1),
        right - half * (tile.column < columns - 1),
        high - half * (tile.row > 0),
    )


def proof_on(marks: Sequence[Plain], tiling: Tiling) -> Proof | None:
    """The square on the first page that has room for it, clear of its crosses; the largest on any page goes first."""
    found, sides = [], tiling.sheet.squares
    for page, tile in enumerate(tiling.tiles):
        crosses = [_round(cross.at, OVERLAP / 2) for cross in tiling.crosses(tile)]
        square = proof_square(marks, tile.window, crosses, sides)
        if square is not None:
            found.append(replace(square, page=page))
        if square is not None and square.side == max(sides):
            break
    return max(found, key=lambda square: square.side, default=None)


def _round(at: Point, reach: float) -> Box:
    return (at[0] - reach, at[1] - reach, at[0] + reach, at[1] + reach)
