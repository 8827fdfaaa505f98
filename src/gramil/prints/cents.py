"""What the cents map shows: a cell for every string and fret, before any set-back and as filed."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from gramil import names as n
from gramil.decimals import fixed, signed
from gramil.graph import Figures
from gramil.reference import Rows

FULL = 5.0
"""Cents at which a cell is as dark as it gets, and its bar as long: what is often quoted as just heard."""
LONGEST = 8.0
"""Length in mm of the longest bar."""
PANELS = (
    ("before: nut on the zero line, saddle at the scale's end", n.intonation_cents_before, n.intonation_rms_before),
    ("after: nut and saddle as filed", n.intonation_cents_after, n.intonation_rms_after),
)


@dataclass(frozen=True)
class Cell:
    """A note: its figure in words, its error as a fraction of the greatest that the map distinguishes, and whether it
    is sharp.
    """

    text: str
    share: float
    sharp: bool


@dataclass(frozen=True)
class Line:
    """A string: its number and pitch in words, its notes from the first fret, and their mean error in words."""

    string: str
    notes: tuple[Cell, ...]
    mean: str


def cents_lines(figures: Figures, name: Rows, rms: Rows) -> Iterator[Line]:
    """The strings of one panel, treble first."""
    cents: NDArray[np.float64] = figures[name]
    for row, notes in enumerate(cents):
        pitch = f"{row + 1}: {figures[n.strings_frequency][row]:.1f} Hz"
        yield Line(pitch, tuple(map(_cell, map(float, notes[1:]))), _figure(float(figures[rms][row]), fixed))


def cents_printed(figures: Figures) -> tuple[object, ...]:
    """All that the map shows as plain values, bars by their length in mm."""
    lines = [line for _, name, rms in PANELS for line in cents_lines(figures, name, rms)]
    counted = tuple(bool(each) for each in figures[n.intonation_weights])
    return (counted, *((line.string, line.mean, _bars(line)) for line in lines))


def _bars(line: Line) -> tuple[tuple[str, bool, float], ...]:
    return tuple((each.text, each.sharp, each.share * LONGEST) for each in line.notes)


def _cell(cents: float) -> Cell:
    """Its shade and its bar are of the figure as it is written, so that they change when that does, and not before."""
    written = round(cents, 1) if np.isfinite(cents) else 0.0
    return Cell(_figure(cents, signed), min(1.0, abs(written) / FULL), written > 0)


def _figure(value: float, said: Callable[[float, int], str]) -> str:
    """One decimal, `said` with its sign or without; a mark if it is not known."""
    return said(value, 1) if np.isfinite(value) else "?"
