"""The foreman's note: what a change means for whoever stands at the bench, always in the same order, on one screen.

What was changed; what moves on the body; what is lost or to be reworked; what can no longer be done, or now can; papers
that are no longer true; and the dimensions that matter most. Each line is a sentence; lines that do not fit are
counted.
"""

import math
import textwrap
from collections.abc import Callable, Collection, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import groupby

from gramil.change.as_made import AsMade, Off, difference_text
from gramil.change.changed_keys import changed_lines
from gramil.change.made import Judged
from gramil.change.made_words import lines as made_lines
from gramil.change.shift import SMALL, Carried, Move, Shift, carried
from gramil.findings.finding import Finding, in_words
from gramil.formatter import Formatter, formatter_of, shown
from gramil.graph import Figures
from gramil.prints.pages import words_of
from gramil.prints.papers import Paper
from gramil.reference import Ref, name_of

LINES = 6
"""How many lines of a part are said at most; the rest are counted."""
MATTER = 5
"""How many dimensions are said in words."""
LONGEST = 110
"""Letters of a row on the screen; a longer line goes on in the next, a list is folded and a name is cut before it."""
MORE = ":  and 99 more."
"""What stands around a list that is folded."""
SCREEN = 40
"""Rows that the note takes at most, headings included."""


@dataclass(frozen=True)
class Part:
    """One part of the note: its heading, and its lines, a sentence each."""

    heading: str
    lines: tuple[str, ...]

    @property
    def rows(self) -> int:
        """How many rows of a screen it takes with its heading."""
        return 1 + sum(len(in_rows(line)) for line in self.lines)


def in_rows(line: str) -> list[str]:
    """A line as it stands on a screen: indented, and what does not fit in a row further in on the next."""
    return textwrap.wrap(f"  {line}", LONGEST + 2, subsequent_indent="      ", break_on_hyphens=False)


def foremans_note(
    found: Shift,
    before: Figures,
    after: Figures,
    made: Sequence[Judged] | None = None,
    handed_out: Collection[str] = (),
    like: Formatter | None = None,
) -> tuple[Part, ...]:
    """The note's parts that have anything to say, in order; a screen at most, headings included.

    `made` judges the finished work, None if there is no record of it; `handed_out` are names of sheets given out.
    Figures are shown in the units of `like`, or in the instruments' own.
    """
    old, new = (replace(like, figures=each) if like else formatter_of(each) for each in (before, after))
    return _on_a_screen(
        ("Changed", list(changed_lines(found.inputs, old, new))),
        ("On the body, toward the tail", list(_carried(found.features, new))),
        ("Already made", list(_made(made, new)) if made is not None else [NO_RECORD]),
        ("What can be done", list(_verdicts(found.came, found.went, new))),
        Part("Papers no longer true", tuple(_papers(found.papers, handed_out))),
        Part("Dimensions", tuple(_dimensions(_weighed(found.moves, before), old, new, _moved))),
    )


def readings_note(
    found: AsMade, before: Figures, after: Figures, again: Sequence[Paper] = (), handed_out: Collection[str] = ()
) -> tuple[Part, ...]:
    """The same note after a measurement: from the figures before it to those after.

    `again` are the sheets that are to be printed again, `handed_out` names of sheets given out.
    """
    old, new = formatter_of(before), formatter_of(after)
    heard = sorted(found.moves, key=lambda move: _HEARD.get(move.unit or "", len(_HEARD)))
    return _on_a_screen(
        Part("Measured", tuple(_off(each, new) for each in found.off)),
        ("On the body, toward the tail", list(_carried(tuple(carried(before, after, SMALL)), new))),
        Part("Already made", tuple(_judged(found.judged, new))),
        ("What can be done", list(_verdicts(found.came, found.went, new))),
        Part("Sheets to print again", tuple(_papers(again, handed_out))),
        Part("What follows, as made", tuple(_dimensions(heard, old, new, _as_drawn)) or (_nothing(found),)),
    )


def _on_a_screen(*parts: Part | tuple[str, list[str]]) -> tuple[Part, ...]:
    """The parts that have anything to say; those given as a heading and lines are folded until all fit on a screen."""
    for most in range(LINES, 0, -1):
        folded = [each if isinstance(each, Part) else Part(each[0], tuple(_folded(each[1], most))) for each in parts]
        told = tuple(each for each in folded if each.lines)
        if sum(each.rows for each in told) <= SCREEN:
            break
    return told


_HEARD = {"cent": 0, "g": 1, "mm": 2}
"""What a maker wants to hear first of what follows a reading."""


def _judged(judged: Sequence[Judged], new: Formatter) -> Iterator[str]:
    """Verdicts on the work that was measured: in full what mends it, and by name what is right."""
    yield from (f"{each.standing.capitalize()}: {line}." for each, line in made_lines(judged, new.first))
    yield from (f"Still right: {each.what}." for each in judged if each.standing == "still right")


def _nothing(found: AsMade) -> str:
    return "What follows moves too little to tell." if found.folded else "Nothing else follows from it."


def _off(off: Off, new: Formatter) -> str:
    """A reading, what was wanted, how far it is off, and what that costs in tune."""
    what, measured = words_of(off.address, new), shown(off.measured, off.unit, new.first)
    if not math.isfinite(off.difference):
        return f"{what}: {measured}; nothing was known of it."
    told = f": {difference_text(off, new.first)}" if abs(off.difference) >= SMALL else ", as it should be"
    return f"{what}: {measured}, wanted {shown(off.wanted, off.unit, new.first)}{told}."


NO_RECORD = "Nothing is known of what is made: there is no record beside the description."


def _folded(lines: list[str], most: int = LINES) -> Iterator[str]:
    """The first lines, and how many more there are; a single further line is shown rather than counted."""
    if len(lines) <= most + 1:
        yield from lines
        return
    yield from lines[:most]
    yield f"And {len(lines) - most} more."


def _named(what: str, values: str) -> str:
    """A figure with its values, in one row: where that is too long, the name is cut at a word and never the values."""
    room = LONGEST - len(values) - 2
    name = what if len(what) <= room else what[: room - 4].rsplit(" ", 1)[0] + " ..."
    return f"{name}: {values}"


def _carried(features: Sequence[Carried], new: Formatter) -> Iterator[str]:
    """Features that move by the same amount with one thing, in one sentence."""
    told: dict[str, list[str]] = {}
    for each in features:
        by = ("+" if each.by > 0 else "") + shown(each.by, "mm", new.first)
        told.setdefault(f"{by}, held to the {each.held_to}", []).append(each.name)
    yield from (_list_of(how, names) for how, names in told.items())


def _made(judged: Sequence[Judged], new: Formatter) -> Iterator[str]:
    """What is lost, then what can be reworked; what is still right is counted."""
    right = sum(each.standing == "still right" for each in judged)
    yield from (f"{each.standing.capitalize()}: {line}." for each, line in made_lines(judged, new.first, LONGEST))
    if right:
        yield f"{right} made parts are still right." if right > 1 else "One made part is still right."


def _verdicts(came: Sequence[Finding], went: Sequence[Finding], new: Formatter) -> Iterator[str]:
    yield from (_verdict(each, new) for each in came)
    yield from (f"No longer: {each.severity}, {each.name}." for each in went)


def _verdict(finding: Finding, new: Formatter) -> str:
    told = in_words(finding, new)
    return f"{told.severity.capitalize()}: {told.name}. {told.remedy or told.says}"


def _papers(papers: Sequence[Paper], handed_out: Collection[str]) -> Iterator[str]:
    """Sheets that were handed out first, each by itself; the rest by kind."""
    given = [paper for paper in papers if paper.kind == "sheet" and paper.name in handed_out]
    yield from _folded([f"Handed out: {paper.title}. Print it again." for paper in given])
    for kind, words in (
        ("template", "Templates"),
        ("cut file", "Files to cut by"),
        ("sheet", "Sheets"),
        ("drawing", "Drawings"),
    ):
        titles = [paper.title for paper in papers if paper.kind == kind and paper not in given]
        if titles:
            yield _list_of(words, titles)
    if pages := [paper.title for paper in papers if paper.kind == "page of the build book"]:
        yield _list_of("Pages of the build book", pages)


def _list_of(words: str, titles: Sequence[str]) -> str:
    """As many titles as fit in a row, and how many more."""
    told: list[str] = []
    for title in titles:
        if sum(map(len, told)) + 2 * len(told) + len(title) > LONGEST - len(words) - len(MORE) and told:
            break
        told.append(title)
    more = f" and {len(titles) - len(told)} more" if len(titles) > len(told) else ""
    return f"{words}: {', '.join(told)}{more}."


MoveLine = Callable[[Move, Formatter, Formatter], str]
"""A dimension that moved, in a sentence."""


def _dimensions(moves: Sequence[Move], old: Formatter, new: Formatter, told: MoveLine) -> Iterator[str]:
    """The first five moves that can be seen, in words; then how many more by part."""
    seen = [move for move in moves if _shows(move, old, new)]
    first = seen[:MATTER]
    yield from (told(move, old, new) for move in first)
    rest = sorted(move.part for move in seen if move not in first)
    if rest:
        counted = ", ".join(f"{part} {len(list(group))}" for part, group in groupby(rest))
        yield f"More, by part: {counted}."


def _weighed(moves: Sequence[Move], before: Figures) -> list[Move]:
    """The moves sorted so that those shown on most papers come first."""
    return sorted(moves, key=lambda move: -_weight(move, before))


def _weight(move: Move, figures: Figures) -> int:
    """How many papers show a dimension: what is looked at most matters most."""
    return len(figures.graph.shown_on.get(name_of(Ref[float](move.address)), ()))


def _shows(move: Move, old: Formatter, new: Formatter) -> bool:
    """Whether a move is a number's and shows in the figures as they are printed."""
    if not isinstance(move.old, float) or not isinstance(move.new, float) or not math.isfinite(move.difference):
        return False
    return old.text_of(move.address, move.old, move.unit) != new.text_of(move.address, move.new, move.unit)


def _moved(move: Move, old: Formatter, new: Formatter) -> str:
    was, now = old.text_of(move.address, move.old, move.unit), new.text_of(move.address, move.new, move.unit)
    return _named(words_of(move.address, new), f"{was}, now {now}.")


def _as_drawn(move: Move, old: Formatter, new: Formatter) -> str:
    was, now = old.text_of(move.address, move.old, move.unit), new.text_of(move.address, move.new, move.unit)
    return _named(words_of(move.address, new), f"{now}, as drawn {was}.")
