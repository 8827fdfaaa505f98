"""The foreman's note: what a change means for whoever stands at the bench, always in the same order, on one screen.

What was changed; what moves on the body; what is lost or to be reworked; what can no longer be done, or now can; papers
that are no longer true; and the dimensions that matter most. Each line is a sentence; lines that do not fit are
counted.
"""

import math
from collections.abc import Callable, Collection, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import groupby

from gramil.change.as_made import AsMade, Off, difference_text
from gramil.change.made import Judged
from gramil.change.made_words import lines as made_lines
from gramil.change.shift import SMALL, Carried, Move, Shift, carried
from gramil.description.base import keys_of
from gramil.findings.finding import Finding, in_words
from gramil.formatter import Formatter, formatter_of, shown
from gramil.graph import Figures
from gramil.prints.pages import words_of
from gramil.prints.papers import Paper
from gramil.reference import Ref, name_of

LINES = 6
"""So many lines of a part are told; the rest are counted."""
MATTER = 5
"""So many dimensions are told in words."""
LONGEST = 110
"""Letters of a line; a longer one is cut at a word."""


@dataclass(frozen=True)
class Part:
    """One part of the note: its heading, and its lines, a sentence each."""

    heading: str
    lines: tuple[str, ...]


def foremans_note(
    found: Shift,
    before: Figures,
    after: Figures,
    made: Sequence[Judged] | None = None,
    handed_out: Collection[str] = (),
    like: Formatter | None = None,
) -> tuple[Part, ...]:
    """The note's parts that have anything to say, in order; forty lines at most, headings included.

    `made` judges the finished work, None if there is no record of it; `handed_out` are names of sheets given out.
    Figures are shown in the units of `like`, or in the instruments' own.
    """
    old, new = (replace(like, figures=each) if like else formatter_of(each) for each in (before, after))
    parts = (
        Part("Changed", tuple(_folded(list(_changed(found, old, new))))),
        Part("On the body, toward the tail", tuple(_folded(list(_carried(found.features, new))))),
        Part("Already made", tuple(_folded(list(_made(made or (), new)))) if made is not None else (NO_RECORD,)),
        Part("What can be done", tuple(_folded(list(_verdicts(found.came, found.went, new))))),
        Part("Papers no longer true", tuple(_papers(found.papers, handed_out))),
        Part("Dimensions", tuple(_dimensions(_weighed(found.moves, before), old, new, _moved))),
    )
    return tuple(part for part in parts if part.lines)


def readings_note(
    found: AsMade, before: Figures, after: Figures, again: Sequence[Paper] = (), handed_out: Collection[str] = ()
) -> tuple[Part, ...]:
    """The same note after a measurement: from the figures before it to those after.

    `again` are the sheets that are to be printed again, `handed_out` names of sheets given out.
    """
    old, new = formatter_of(before), formatter_of(after)
    heard = sorted(found.moves, key=lambda move: _HEARD.get(move.unit or "", len(_HEARD)))
    parts = (
        Part("Measured", tuple(_off(each, new) for each in found.off)),
        Part("On the body, toward the tail", tuple(_folded(list(_carried(tuple(carried(before, after, SMALL)), new))))),
        Part("Already made", tuple(_judged(found.judged, new))),
        Part("What can be done", tuple(_folded(list(_verdicts(found.came, found.went, new))))),
        Part("Sheets to print again", tuple(_papers(again, handed_out))),
        Part("What follows, as made", tuple(_dimensions(heard, old, new, _as_drawn)) or (_nothing(found),)),
    )
    return tuple(part for part in parts if part.lines)


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
        yield from map(_short, lines)
        return
    yield from map(_short, lines[:most])
    yield f"And {len(lines) - most} more."


def _short(line: str) -> str:
    return line if len(line) <= LONGEST else line[:LONGEST].rsplit(" ", 1)[0] + " ..."


def _changed(found: Shift, old: Formatter, new: Formatter) -> Iterator[str]:
    """What was changed, by the maker's key; a key that sets several base values is named once."""
    told: dict[str, str] = {}
    for name in found.inputs:
        was, now = old.text(name), new.text(name)
        keys = keys_of(name)
        told.setdefault(keys[-1] if keys else words_of(name, new), f"{was}, now {now}")
    yield from (f"{key}: {values}." for key, values in told.items())


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
    yield from (f"{each.standing.capitalize()}: {line}." for each, line in made_lines(judged, new.first))
    if right:
        yield f"{right} made parts are still right."


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
    for kind, words in (("template", "Templates"), ("sheet", "Sheets"), ("drawing", "Drawings")):
        titles = [paper.title for paper in papers if paper.kind == kind and paper not in given]
        if titles:
            yield _list_of(words, titles)
    if pages := [paper.title for paper in papers if paper.kind == "page of the build book"]:
        yield _list_of("Pages of the build book", pages)


def _list_of(words: str, titles: Sequence[str]) -> str:
    """As many titles as fit in a line and a half, and how many more."""
    told: list[str] = []
    for title in titles:
        if sum(map(len, told)) + 2 * len(told) + len(title) > LONGEST - len(words) and told:
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
    yield from (_short(told(move, old, new)) for move in first)
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
    return shown(move.old, move.unit, old.first) != shown(move.new, move.unit, new.first)


def _moved(move: Move, old: Formatter, new: Formatter) -> str:
    was, now = shown(move.old, move.unit, old.first), shown(move.new, move.unit, new.first)
    return f"{words_of(move.address, new)}: {was}, now {now}."


def _as_drawn(move: Move, old: Formatter, new: Formatter) -> str:
    was, now = shown(move.old, move.unit, old.first), shown(move.new, move.unit, new.first)
    return f"{words_of(move.address, new)}: {now}, as drawn {was}."
