"""The old state as a grey line under the new one, with how far each figure on the drawing moved."""

from collections.abc import Callable
from dataclasses import replace

from gramil.change.shift import SMALL
from gramil.drawings.marks import Drawing, Label, Mark, Span, Words
from gramil.graph import Figures, same
from gramil.show import shown

MOVED = "moved "
"""What stands before an address on a drawing whose label is a difference."""


def overlaid(old: Drawing, new: Drawing, before: Figures, after: Figures) -> Drawing:
    """Both drawings as one: old lines in grey, the new on top, and beside each moved figure how far it moved."""
    under = tuple(replace(mark, layer="old") for mark in old.marks if not isinstance(mark, Words | Label | Span))
    moved = tuple(note for mark in new.marks for note in _notes(mark, before, after))
    return replace(new, title=f"{new.title}, old in grey", marks=under + new.marks + moved)


def _notes(mark: Mark, before: Figures, after: Figures) -> tuple[Label, ...]:
    if not isinstance(mark, Span | Label) or not _differs(mark.address, before, after):
        return ()
    if isinstance(mark, Label):
        return (
            replace(
                mark, at=(mark.at[0], mark.at[1] - 1.7 * mark.height), address=MOVED + mark.address, before="", after=""
            ),
        )
    middle = ((mark.start[0] + mark.end[0]) / 2, min(mark.start[1], mark.end[1]) - abs(mark.offset) - 2 * mark.height)
    return (Label(middle, MOVED + mark.address, height=mark.height, anchor="middle"),)


def _differs(address: str, before: Figures, after: Figures) -> bool:
    """Whether a figure moved by more than folds away."""
    try:
        old, new = before.at(address), after.at(address)
    except KeyError:
        return False
    if isinstance(old, str | bool) or isinstance(new, str | bool):
        return not same(old, new)
    return not abs(float(new) - float(old)) <= SMALL


def differences(resolve: Callable[[str], str], before: Figures, after: Figures) -> Callable[[str], str]:
    """A reader of labels that also reads differences, with their sign, in the new instrument's unit."""

    def read(address: str) -> str:
        if not address.startswith(MOVED):
            return resolve(address)
        plain = address.removeprefix(MOVED)
        old, new = before.at(plain), after.at(plain)
        if isinstance(new, str | bool):
            return f"was {old}"
        moved = float(new) - float(old)
        return ("+" if moved > 0 else "") + shown(moved, after.unit_at(plain), after["instrument_units"])

    return read
