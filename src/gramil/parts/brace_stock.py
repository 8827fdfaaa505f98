"""The cut list of the braces: sticks to saw, and what the stock yields."""

from collections.abc import Iterator

from gramil.description.records import Blank
from gramil.parts.body_records import Billet, Brace, Stick
from gramil.quantities import Mm
from gramil.wood.wood_words import serves_as

OWNS = ("stick_",)

LONGER, WIDER, HIGHER = 15.0, 0.5, 2.0
"""What a stick is sawn over the finished brace, in mm: length in all, width, and height."""
KERF = 2.0
"""What a saw that rips sticks takes, in mm: common practice."""


def stick_list(brace_list: tuple[Brace, ...]) -> tuple[Stick, ...]:
    """A stick for each brace, over size: grain along it, growth rings upright; longest first within a wood.

    The foot's arch is cut into the brace's height, which is over the plate.
    Method: length + 15 mm, width + 0.5 mm, height + 2 mm; a low brace whose ends follow a strong dome needs more.
    Source: common practice.
    """
    found = [
        Stick(each.name, each.wood, each.length + LONGER, each.width + WIDER, each.bar.tallest + HIGHER)
        for each in brace_list
        if each.length > 0
    ]
    return tuple(sorted(found, key=lambda stick: (stick.wood, -stick.length, stick.name)))


def stick_billets(stick_list: tuple[Stick, ...], shop_blanks: tuple[Blank, ...]) -> tuple[Billet, ...]:
    """Pieces in stock that yield the sticks, with how many each yields.

    Method: each stick, longest first, into the first row it fits; rows are ripped off a piece's width, its thickness
    stands as the brace's height, 2 mm lost to each cut.
    Source: common practice.
    """
    return tuple(_laid_out(stick_list, shop_blanks)[0])


def stick_wanting(stick_list: tuple[Stick, ...], shop_blanks: tuple[Blank, ...]) -> tuple[Stick, ...]:
    """Sticks that no piece in stock yields.

    Method: those left when the rows are full.
    Source: common practice.
    """
    return tuple(_laid_out(stick_list, shop_blanks)[1])


def _laid_out(sticks: tuple[Stick, ...], stock: tuple[Blank, ...]) -> tuple[list[Billet], list[Stick]]:
    waiting = list(sticks)
    billets = []
    for name, piece in _pieces(stock):
        taken, left = _from_piece(piece, waiting)
        if taken:
            billets.append(Billet(name, piece.wood, len(taken), left))
            waiting = [each for each in waiting if each not in taken]
    return billets, waiting


def _pieces(stock: tuple[Blank, ...]) -> Iterator[tuple[str, Blank]]:
    """Every single piece, one for each of several alike; the smallest first, so that large ones are kept."""
    for piece in sorted(stock, key=lambda each: (each.length * each.width, each.name)):
        for number in range(1, piece.count + 1):
            yield (piece.name if piece.count == 1 else f"{piece.name}, no. {number}"), piece


def _from_piece(piece: Blank, waiting: list[Stick]) -> tuple[list[Stick], Mm]:
    """The sticks that a piece yields, and the length of its rows that is left over."""
    rows: list[tuple[Mm, Mm]] = []
    taken: list[Stick] = []
    width = piece.width
    for stick in waiting:
        if not serves_as(piece.wood, stick.wood) or stick.height > piece.thickness or stick.length > piece.length:
            continue
        row = next((row for row, (wide, left) in enumerate(rows) if wide >= stick.width and left >= stick.length), None)
        if row is not None:
            rows[row] = (rows[row][0], rows[row][1] - stick.length - KERF)
        elif width >= stick.width:
            rows.append((stick.width, piece.length - stick.length - KERF))
            width -= stick.width + KERF
        else:
            continue
        taken.append(stick)
    return taken, sum(max(0.0, left) for _, left in rows)
