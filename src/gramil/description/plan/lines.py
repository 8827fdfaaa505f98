"""The lines of a drawing as they can be pointed at: numbered, by layer, and which part each is taken for."""

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from gramil.faults import MakersFault
from gramil.quantities import Mm
from gramil.shapes.chains import Drawing, Trace, branches, joined_traces
from gramil.shapes.traced_outline import Reading, read_drawing

PARTS = ("outline", "top braces", "back braces", "hole", "bridge", "head")
"""What a drawing may give."""
WORDS = {
    "head": r"head",
    "bridge": r"bridge(?!.?plate)",
    "hole": r"hole",
    "back braces": r"back.*brac|brac.*back",
    "top braces": r"brac",
    "outline": r"outline|body",
}
"""What a layer is called that holds a part, the more particular first."""
GAP: Mm = 0.1
"""Ends that lie no farther apart meet."""
MOST_LISTED = 12
NO_NAME = "no name"
Taken = Mapping[int, str]
"""The part that each line, by its number, is taken for."""


@dataclass(frozen=True)
class PlanLine:
    """A line of a drawing, by its number from 1: pieces that meet on one layer are one. In the drawing's own units."""

    number: int
    trace: Trace

    @property
    def layer(self) -> str:
        """The layer, or the outermost group or shape, that it is drawn on."""
        return self.trace.layers[0] if self.trace.layers else NO_NAME


@dataclass(frozen=True)
class PlanLines:
    """A drawing's lines, mm a unit (None where it does not say), and whether its y runs down, as an SVG's does."""

    lines: tuple[PlanLine, ...]
    unit: Mm | None
    downward: bool
    file: str

    @property
    def layers(self) -> Mapping[str, tuple[PlanLine, ...]]:
        """Lines by layer, in the file's order."""
        found = dict[str, list[PlanLine]]()
        for each in self.lines:
            found.setdefault(each.layer, []).append(each)
        return {layer: tuple(lines) for layer, lines in found.items()}


def plan_lines(text: str, name: str) -> PlanLines:
    """The lines of a DXF or SVG drawing. Raises MakersFault if it is not a drawing, or has no lines."""
    drawing = read_drawing(text, name, Reading(file=name, where="drawing"))
    if not drawing.traces:
        raise MakersFault.of("the drawing has no lines, arcs or curves", remedy="Save it again with its lines in it")
    lines = tuple(PlanLine(number, trace) for number, trace in enumerate(_joined(drawing), start=1))
    return PlanLines(lines, drawing.unit, name.lower().endswith(".svg"), name)


def _joined(drawing: Drawing) -> Iterator[Trace]:
    """Pieces of one layer that meet end to end made one; where three meet they stay as they are."""
    gap = GAP / (drawing.unit or _unit_guessed(drawing))
    groups = dict[tuple[str, ...], list[Trace]]()
    for each in drawing.traces:
        groups.setdefault(each.layers, []).append(each)
    for traces in groups.values():
        yield from traces if branches(traces, gap, 1) else joined_traces(traces, gap)


def _unit_guessed(drawing: Drawing) -> float:
    """The unit of a drawing that does not say: as if the drawing were a metre long."""
    return 1000.0 / float(np.ptp(np.vstack([each.points for each in drawing.traces]), axis=0).max() or 1.0)


def guessed(lines: PlanLines) -> Taken:
    """What the layers' names say that they hold."""
    return {
        each.number: part
        for each in lines.lines
        if (part := next((part for part, words in WORDS.items() if _called(each, words)), ""))
    }


def _called(line: PlanLine, words: str) -> bool:
    return any(re.search(words, name, re.IGNORECASE) for name in line.trace.layers)


def by_layers(lines: PlanLines, asked: Sequence[tuple[str, str]]) -> Taken:
    """Lines by the layers that are named for each part. Raises MakersFault for an unknown part or layer."""
    found = dict[int, str]()
    for part, layer in asked:
        if part not in PARTS:
            raise MakersFault.of(f"a drawing gives no {part!r}", remedy=f"Write one of {', '.join(PARTS)}")
        here = [each.number for each in lines.lines if layer in (*each.trace.layers, each.layer)]
        if not here:
            raise MakersFault.of(
                f"nothing is drawn on {layer}", f"The drawing has: {', '.join(lines.layers)}", "Name one of these"
            )
        found |= dict.fromkeys(here, part)
    return found


def listed(lines: PlanLines) -> Iterator[str]:
    """A sentence a layer: what is drawn on it."""
    for layer, held in list(lines.layers.items())[:MOST_LISTED]:
        closed = sum(each.trace.is_closed(0.0) for each in held)
        yield f"{layer}: {len(held)} line{'' if len(held) == 1 else 's'}, {closed} of them closed"
    if len(lines.layers) > MOST_LISTED:
        yield f"{len(lines.layers) - MOST_LISTED} more layers"
