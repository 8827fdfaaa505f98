"""Turning an input until a figure is met: its value within bounds, or why there is none, or several.

The search goes over the same graph that gives every figure; there is no second formula.
"""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

STEPS = 48
"""How many places between the bounds are tried before the crossings are closed in on."""


@dataclass(frozen=True)
class Turned:
    """The values of the input that meet the figure, least first (none, one or more), and what the figure ranges over.

    `lowest` and `highest` are the figure's values among the places tried, for saying what is within reach.
    """

    answers: tuple[float, ...]
    lowest: float
    highest: float
    refused: int


def turn(figure: Callable[[float], float], target: float, low: float, high: float, steps: int = STEPS) -> Turned:
    """Every input between `low` and `high` at which `figure(input)` crosses or touches `target`.

    `steps` places between the bounds are tried to find where it crosses. `figure` may raise ValueError (MakersFault
    is one) or give nan where no instrument is possible; such places are counted in `refused`. A figure that
    jumps over the target without meeting it gives no answer.
    """
    from scipy.optimize import brentq  # loaded where something is turned, not by all that can turn

    places = np.linspace(low, high, steps + 1)
    values = np.array([_tried(figure, place) for place in places]) - target
    known = values[np.isfinite(values)]
    if known.size == 0:
        return Turned((), np.nan, np.nan, len(values))
    scale = max(abs(target), float(np.abs(known).max()), 1e-9)
    answers: list[float] = [float(place) for place, value in zip(places, values, strict=True) if value == 0]
    for left, right, before, after in zip(places, places[1:], values, values[1:], strict=False):
        if before * after < 0:
            root = brentq(lambda x: _tried(figure, x) - target, left, right, xtol=1e-9, rtol=1e-12)
            if abs(_tried(figure, root) - target) <= 1e-6 * scale:
                answers.append(float(root))
    return Turned(
        tuple(sorted(set(answers))),
        float(known.min()) + target,
        float(known.max()) + target,
        int(np.isnan(values).sum()),
    )


def _tried(figure: Callable[[float], float], place: float) -> float:
    try:
        return float(figure(place))
    except ValueError:
        return float("nan")
    except Exception as error:
        from gramil.faults import MakersFault

        if isinstance(error, MakersFault):
            return float("nan")
        raise
