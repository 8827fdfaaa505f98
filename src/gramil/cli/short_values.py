"""What is noted in few strokes: hours as `1.5h`, and bare values of the figures that an operation asks for."""

import re
from collections.abc import Mapping, Sequence

from gramil.faults import MakersFault

MEASURED_SO = "board_thickness=6.38mm or board_thickness=0.251in"
"""How a figure that was measured is written, for a maker of either unit."""
_HOURS = re.compile(r"(?P<hours>\d+(?:\.\d+)?|\.\d+)h(?P<minutes>[0-5]\d)?|(?P<alone>\d+)min")


def hours_in(words: Sequence[str]) -> tuple[float | None, tuple[str, ...]]:
    """The hours among words (`1.5h`, `1h30`, `45min`), and the others. Raises MakersFault if they are said twice."""
    found = [(word, match) for word in words if (match := _HOURS.fullmatch(word.lower()))]
    rest = tuple(word for word in words if word not in {each for each, _ in found})
    if len(found) > 1:
        raise MakersFault.of("the hours are given twice", " and ".join(each for each, _ in found), "write them once")
    return (_hours(found[0][1]) if found else None), rest


def _hours(match: re.Match[str]) -> float:
    if match["alone"]:
        return int(match["alone"]) / 60
    return float(match["hours"]) + int(match["minutes"] or 0) / 60


def with_values(
    written: Mapping[str, str], values: Sequence[str], asked: Sequence[str], operation: str
) -> dict[str, str]:
    """What was written for each figure, with bare values assigned in order to what the operation asks for and is not
    written yet.

    Raises MakersFault if there are more values than that.
    """
    free = [address for address in asked if address not in written]
    if len(values) > len(free):
        asks = f"it asks for {', '.join(free)}" if free else "it asks for no figure"
        remedy = f"name the figure of another: --measured {MEASURED_SO}"
        raise MakersFault.of(f"{values[len(free)]} is a value too many for {operation}", asks, remedy)
    return {**written, **dict(zip(free, values, strict=False))}
