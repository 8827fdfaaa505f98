"""Finished work in words: the verdict on each part, what is lost along with it, and what mends it."""

from collections.abc import Iterable, Iterator
from math import isfinite

from gramil.change.made import Judged
from gramil.change.made_rows import Piece, pieces
from gramil.change.off_rows import NOTHING, Value
from gramil.formatter import shown
from gramil.measure import LengthUnit


def spoilt(judged: Iterable[Judged]) -> tuple[Judged, ...]:
    """What is no longer right, lost work before what can be reworked."""
    found = [each for each in judged if each.standing != "still right"]
    return tuple(sorted(found, key=lambda each: each.standing != "lost"))


def verdict_line(judged: Judged, first: LengthUnit = "mm", *, brief: bool = False) -> str:
    """The verdict on a part, in one line: `too shallow by 1.46 mm (1.50 mm, wanted 2.96 mm): deepen the slots`.

    Where it says by how much, a brief one leaves out what stands in brackets.
    """
    if judged.standing == "still right":
        return "still right"
    if judged.along:
        return f"lost with {judged.piece}"
    return ": ".join(filter(None, (_off(judged, first, brief), _small(judged.remedy).rstrip("."))))


def _off(judged: Judged, first: LengthUnit, brief: bool) -> str:
    """What is off, by how much and where."""
    where = f", {judged.where}" if judged.where else ""
    if judged.should_be == NOTHING:
        return f"not wanted any more{where}"
    if not judged.address:
        return judged.too
    is_now, should_be = values_in_words(judged, first)
    if not judged.too:
        return f"{is_now} {judged.where}".strip() + f", wanted {should_be}"
    by = _by(judged, first)
    return f"{judged.too}{by}{where}" + ("" if brief and by else f" ({is_now}, wanted {should_be})")


def values_in_words(judged: Judged, first: LengthUnit) -> tuple[str, str]:
    """What the value is and what it should be, as text."""
    return _text(judged.is_now, judged, first), _text(judged.should_be, judged, first)


def _by(judged: Judged, first: LengthUnit) -> str:
    if isinstance(judged.is_now, str) or isinstance(judged.should_be, str) or not judged.too:
        return ""
    difference = abs(judged.should_be - judged.is_now)
    return f" by {shown(difference, judged.unit, first)}" if isfinite(difference) else ""


def _text(value: Value, judged: Judged, first: LengthUnit) -> str:
    """A value as text; if nothing says in which way it is off, it is a choice or a number of rows."""
    return shown(value, judged.unit, first) if judged.too else value if isinstance(value, str) else f"{value:g}"


def _small(words: str) -> str:
    return words[:1].lower() + words[1:]


def lines(judged: Iterable[Judged], first: LengthUnit = "mm", room: int | None = None) -> Iterator[tuple[Judged, str]]:
    """What is no longer right, a line for each; what is lost along with a piece is counted in one line.

    Where it fits into `room` letters so, a line leaves out what the figure is and should be, and says by how much it is
    off.
    """
    found = spoilt(judged)
    for each in found:
        if not each.along:
            whole, brief = (f"{each.what}: {verdict_line(each, first, brief=brief)}" for brief in (False, True))
            yield each, brief if room is not None and len(brief) <= room < len(whole) else whole
    for piece in dict.fromkeys(each.piece for each in found if each.along):
        with_it = [each for each in found if each.along and each.piece == piece]
        yield with_it[0], f"with {piece}: {', '.join(each.what for each in with_it)}"


def lost_pieces(judged: Iterable[Judged]) -> tuple[Piece, ...]:
    """The pieces that are lost, each once."""
    lost = {each.piece for each in judged if each.standing == "lost"}
    return tuple(piece for piece in pieces().values() if piece.what in lost)
