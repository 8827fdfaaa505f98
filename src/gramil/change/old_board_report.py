"""What an old board's frets say, in words: its scale and rule, a line for each slot, and what each way would give."""

from collections.abc import Iterator

from gramil.change.old_board import OldBoard, OldSlot
from gramil.decimals import fixed, signed
from gramil.formatter import shown
from gramil.measure import LengthUnit


def old_board_report(found: OldBoard, unit: LengthUnit) -> Iterator[str]:
    """The lines of the report, lengths in a unit: scale and rule, the nut, each slot, and the ways to mend it."""
    yield from _laid_out(found, unit)
    yield _nut(found, unit)
    yield ""
    yield "fret   measured      error      cents now   nut moved   recut"
    for each in found.slots:
        yield _row(each, found, unit)
    yield ""
    yield from _ways(found, unit)


def _laid_out(found: OldBoard, unit: LengthUnit) -> Iterator[str]:
    best, other = found.best, found.other
    scale, within = _mm(best.scale, unit), _mm(2 * best.scale_within, unit)
    yield f"Scale: {scale}, within {within} in 19 of 20. Laid out by {best.rule}."
    leaves = f"{_mm(best.left, unit)} RMS out of place, where {other.rule} leaves {_mm(other.left, unit)}"
    if found.told_apart:
        yield f"Laid over them like that, the slots are {leaves}."
    else:
        yield f"The readings do not tell the rules apart: the slots are {leaves} (scale {_mm(other.scale, unit)})."


def _nut(found: OldBoard, unit: LengthUnit) -> str:
    line = found.best.nut_line
    much, within = _mm(abs(line), unit), _mm(2 * found.best.nut_within, unit)
    if abs(line) <= 2 * found.best.nut_within:
        return f"The nut line of the rule lies where the readings start, within {within}."
    way = "behind it, toward the head: that much was planed off" if line < 0 else "before it, toward the bridge"
    return f"The nut line of the rule lies {much} (within {within}) from where the readings start, {way}."


def _row(each: OldSlot, found: OldBoard, unit: LengthUnit) -> str:
    error = ("+" if round(each.error, 2) > 0 else "") + _mm(each.error, unit)
    again = "   cut anew" if each.fret in found.ways.to_recut else ""
    return (
        f"{each.fret:>4}   {_mm(each.measured, unit):<13} {error:<10} {signed(each.as_found, 1):>9}   "
        f"{signed(each.nut_moved, 1):>9}   {signed(each.recut, 1):>5}{again}"
    )


def _ways(found: OldBoard, unit: LengthUnit) -> Iterator[str]:
    """What each way leaves; the string is taken to be an ideal one, its own compensation comes on top."""
    ways = found.ways
    yield f"As it is, the saddle moved alone: {fixed(ways.as_found, 1)} cents RMS over these frets."
    where = _where(ways.nut_move, unit)
    yield f"Nut {where}, saddle {_mm(ways.scale, unit)} from it: {fixed(ways.nut_moved, 1)} cents."
    if ways.to_recut:
        frets = ", ".join(map(str, ways.to_recut))
        yield f"With the slots of frets {frets} filled and cut anew as well: {fixed(ways.recut, 1)} cents."
    else:
        yield "No slot is worth cutting anew."
    yield "Each string's own compensation comes on top of this, at the saddle and at the nut."


def _where(move: float, unit: LengthUnit) -> str:
    much = _mm(abs(move), unit)
    if move < 0:
        return f"{much} out toward the head (a strip between board and nut)"
    return f"{much} in toward the bridge (a nut that overhangs, or the board's end planed)"


def _mm(value: float, unit: LengthUnit) -> str:
    return shown(value, "mm", unit)
