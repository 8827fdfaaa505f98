"""What a draft moves, in the words of the strip over the drawing and of the list behind it."""

from collections.abc import Collection, Mapping
from dataclasses import dataclass, replace
from itertools import groupby

from gramil.change.foreman import Part, foremans_note
from gramil.change.made import Judged, judge
from gramil.change.made_words import lines as made_lines
from gramil.change.shift import Move, moved, shift
from gramil.findings.finding import Finding, InWords, in_words
from gramil.formatter import Formatter, formatter_of
from gramil.graph import Figures, same
from gramil.prints.whole import dimensions_of, findings_of
from gramil.shop.operations import Work


@dataclass(frozen=True)
class MovedRow:
    """The figure of a dimension that moved most: from, to, by how much, and how many more of the dimension moved."""

    name: str
    address: str
    old: str
    new: str
    by: str
    more: int


@dataclass(frozen=True)
class Strip:
    """What a change moves, in short; `figures` counts every single figure, `made` judges the finished work.

    `spoilt` is what of it is no longer right, a word and a line for each.
    """

    figures: int
    came: tuple[InWords, ...]
    went: tuple[Finding, ...]
    made: tuple[Judged, ...]
    spoilt: tuple[tuple[str, str], ...]

    @property
    def words(self) -> str:
        """The strip's sentence."""
        said = f"{self.figures} figures moved" if self.figures != 1 else "1 figure moved"
        spoilt = len(self.spoilt)
        fit = f", {spoilt} parts already cut no longer fit" if spoilt > 1 else ", 1 part already cut no longer fits"
        return said + (fit if spoilt else "")


@dataclass(frozen=True)
class Moved:
    """All that a change moves: the foreman's note, and by part; `papers` are those that are no longer true."""

    strip: Strip
    note: tuple[Part, ...]
    parts: Mapping[str, tuple[MovedRow, ...]]
    folded: int
    papers: tuple[str, ...]


def moved_between(
    old: Figures,
    new: Figures,
    formatter: Formatter,
    made: Mapping[str, Figures] | None = None,
    handed_out: Collection[str] = (),
    work: Work | None = None,
) -> Moved:
    """Everything that moves from one set of figures to another; `made` are the figures by which each operation was
    done.

    `handed_out` are the names of sheets that are given out and still to be used, `work` is what the instrument needs.
    """
    found = shift(old, new, work=work)
    came = findings_in_words(found.came, replace(formatter, figures=new))
    judged = judge(made or {}, new)
    strip = Strip(sum(move.rows for move in found.moves), came, found.went, judged, spoilt_lines(judged, formatter))
    rows = [(move.part, _row(move, formatter)) for move in found.moves]
    shown_rows = [(part, row) for part, row in rows if row.old != row.new]
    parts = {part: tuple(row for _, row in each) for part, each in groupby(shown_rows, lambda pair: pair[0])}
    folded = found.folded + len(rows) - len(shown_rows)
    note = foremans_note(found, old, new, judged, handed_out, formatter)
    return Moved(strip, note, parts, folded, tuple(paper.title for paper in found.papers))


def spoilt_lines(judged: tuple[Judged, ...], formatter: Formatter) -> tuple[tuple[str, str], ...]:
    """For each finished operation that is no longer right, a word and a line."""
    return tuple((each.standing, line) for each, line in made_lines(judged, formatter.first))


def findings_in_words(findings: tuple[Finding, ...], formatter: Formatter) -> tuple[InWords, ...]:
    """Findings with their figures in their words."""
    return tuple(in_words(each, formatter) for each in findings)


Findings = tuple[Finding, ...]


def strip_between(
    old: Figures,
    new: Figures,
    made: Mapping[str, Figures],
    formatter: Formatter | None = None,
    found: tuple[Findings, Findings] | None = None,
) -> Strip:
    """What moves from one set of figures to another, in short; drawings are not compared for it.

    `found` are the findings of both, where they are known.
    """
    touched = set().union(
        *(old.graph.below(name) for name in old.graph.inputs if not same(old.base[name], new.base[name]))
    )
    moves, _ = moved((name for name in dimensions_of(old) if name in touched), old, new)
    before, after = found or (findings_of(old), findings_of(new))
    words, judged = replace(formatter, figures=new) if formatter else formatter_of(new), judge(made, new)
    return Strip(
        sum(move.rows for move in moves),
        findings_in_words(_not_among(after, before), words),
        _not_among(before, after),
        judged,
        spoilt_lines(judged, words),
    )


def _not_among(these: tuple[Finding, ...], those: tuple[Finding, ...]) -> tuple[Finding, ...]:
    """Findings that call for action and whose name and severity are not among the others."""
    known = {(each.name, each.severity) for each in those}
    return tuple(each for each in these if each.severity != "fine" and (each.name, each.severity) not in known)


def _row(move: Move, formatter: Formatter) -> MovedRow:
    old, new = (_text(value, move, formatter) for value in (move.old, move.new))
    by = "" if move.difference != move.difference else _signed(move, formatter)
    return MovedRow(move.name, move.address, old, new, by, move.rows - 1)


def _text(value: float | int | str | bool | None, move: Move, formatter: Formatter) -> str:
    return "none" if value is None else formatter.text_of(move.address, value, move.unit)


def _signed(move: Move, formatter: Formatter) -> str:
    return ("+" if move.difference > 0 else "") + formatter.text_of(move.address, move.difference, move.unit)
