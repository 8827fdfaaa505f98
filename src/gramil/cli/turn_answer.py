"""What `gramil turn` answers: the input that meets the figure, and what else moves; in words or for programs."""

from collections.abc import Iterator
from dataclasses import dataclass

from gramil.change.shift import shift
from gramil.cli.json_option import write_answer
from gramil.cli.shift import PLAY, brief_report, judged_by
from gramil.formatter import formatter_of, shown
from gramil.graph import Figures
from gramil.shop.made_file import Made


@dataclass(frozen=True)
class Met:
    """An input at the value that meets a figure: its key, its value in `unit` (empty for none), the figure's
    address.
    """

    key: str
    value: float
    unit: str
    address: str

    def shown(self, figures: Figures) -> str:
        """The value as the maker reads it."""
        return shown(self.value, self.unit or None, formatter_of(figures).first)


def met_lines(met: Met, before: Figures, after: Figures, made: Made | None) -> Iterator[str]:
    """The lines of the answer."""
    yield f"{met.key} = {met.shown(after)} gives {met.address} = {formatter_of(after).text(met.address)}"
    yield ""
    yield from brief_report(shift(before, after, PLAY), before, after, made)


def turn_answer(met: Met, before: Figures, after: Figures, made: Made | None) -> None:
    """The answer as JSON."""
    from gramil.answers.answer import whose
    from gramil.answers.changes import Turn, shift_answer

    figure = formatter_of(after).text(met.address)
    moved = shift_answer(shift(before, after, PLAY), before, after, judged_by(made, before, after))
    turn = Turn(met.key, met.value, met.unit, met.shown(after), met.address, figure, moved)
    write_answer("turn", [whose(before), whose(after)], turn)
