"""What a note of done work says: line by line, and as a record."""

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass

import click

from gramil.answers.noted import MeantAnswer, WorkNoted, meant_answer
from gramil.answers.record import UsedAnswer
from gramil.change.as_made import AsMade, as_made, with_readings
from gramil.change.foreman import in_rows, readings_note
from gramil.change.settled import off
from gramil.cli.settling import settling_lines
from gramil.graph import Figures, Pin
from gramil.prints.papers import Paper
from gramil.sheets.handed_out import sheets_that_differ
from gramil.sheets.own_sheet import figures_for_sheet
from gramil.shop.operations import Work


@dataclass(frozen=True)
class Meant:
    """What readings mean: the figures before and with them, what follows, and the sheets to print again; `given` are
    the names of those that are handed out.
    """

    before: Figures
    after: Figures
    readings: Collection[str]
    found: AsMade
    again: tuple[Paper, ...]
    given: Collection[str]

    def lines(self) -> Iterator[str]:
        """The note, part by part under its heading, and what the readings settle."""
        for part in readings_note(self.found, self.before, self.after, self.again, self.given):
            yield click.style(part.heading.upper(), bold=True)
            yield from (row for line in part.lines for row in in_rows(line))
        yield from settling_lines(self.after, self.readings)

    def told(self) -> MeantAnswer:
        """The same as a record."""
        return meant_answer(self.found, self.before, self.after, self.again, off(self.after, self.readings))


@dataclass(frozen=True)
class DoneWords:
    """An operation done on the instrument of a name, what was done before it, and what was measured; `hangs_on` says on
    which lost work it hangs.
    """

    operation: str
    whole: Work
    name: str
    before: tuple[str, ...]
    meant: Meant | None
    hangs_on: str = ""

    @property
    def missing(self) -> tuple[str, ...]:
        """What should have come before it and is not noted."""
        each = self.whole.operations.get(self.operation)
        return tuple(name for name in each.after if name not in self.before) if each else ()

    @property
    def to_measure(self) -> tuple[str, ...]:
        """What was worth measuring, if nothing was measured."""
        each = self.whole.operations.get(self.operation)
        return tuple(map(str, each.measure)) if each and self.meant is None else ()

    def lines(self) -> Iterator[str]:
        """What is done, what should have come before it, and what the readings mean."""
        if self.hangs_on:
            yield self.hangs_on
        if self.operation in self.whole.operations:
            yield f"{self.name}: {self.whole.operations[self.operation].what}: done."
        elif self.operation in self.whole.left_out:
            yield f"This instrument did not need it: {self.whole.left_out[self.operation]}."
        if self.missing:
            yield f"Not noted as done before it: {', '.join(self.missing)}."
        if self.to_measure:
            yield f"Worth measuring: {', '.join(f'--measured {address}=...' for address in self.to_measure)}"
        if self.meant:
            yield from self.meant.lines()

    def noted(
        self, kept_in: str, changed: bool, used: Sequence[UsedAnswer] = (), left: Sequence[str] = ()
    ) -> WorkNoted:
        """The record of it, once it is noted: where, whether the description is changed, wood used up and left over."""
        known = self.whole.operations.get(self.operation)
        return WorkNoted(
            self.operation,
            known.what if known else "",
            kept_in,
            self.missing,
            self.to_measure,
            self.whole.left_out.get(self.operation, "") if not known else "",
            self.hangs_on,
            self.meant.told() if self.meant else None,
            tuple(used),
            tuple(left),
            changed,
        )


def meaning_of_readings(
    operation: str,
    whole: Work,
    before: Sequence[str],
    figures: Figures,
    pins: Mapping[str, Pin],
    given: Collection[str] = (),
) -> Meant | None:
    """What readings at an operation mean; None if there are none. Raises MakersFault for impossible ones."""
    if not pins:
        return None
    made = with_readings(figures, pins)
    found = as_made(figures, pins, operation, before, figures_for_sheet(operation, made, whole))
    again = sheets_that_differ(figures, made, whole, {*before, operation})
    return Meant(figures, made, tuple(pins), found, tuple(again), given)
