"""Intonation: the best places of nut and saddle for six strings, against a plain minimiser at equal accuracy."""

from typing import Any

import numpy as np
from scipy.optimize import minimize

from benchmarks.board import example, fresh
from benchmarks.timing import milliseconds, seconds
from gramil.graph import Figures
from gramil.physics.compensation import best_set_backs, in_groups, set_backs


def run() -> None:
    figures = example("tarn")
    figures["intonation_cents_before"]
    whole = seconds(lambda: fresh(figures)["intonation_rms_all_after"], 5)
    print(f"from the description to cents     {milliseconds(whole)}")
    own, plain = seconds(lambda: _own(figures), 5), seconds(lambda: _plain(figures), 3)
    apart = float(np.abs(_own(figures) - _plain(figures)).max())
    print(f"best nut and saddle, each string  {milliseconds(own)}")
    print(f"the same by a plain minimiser     {milliseconds(plain)}   {plain / own:.0f} times, {apart:.5f} mm apart")


def _own(figures: Figures) -> Any:
    paths, strings = figures["intonation_paths"], figures["intonation_strings"]
    count = len(strings.stretch)
    own = in_groups(np.arange(count))
    found = best_set_backs(paths, strings, own, own, figures["intonation_weights"][1:])
    return np.concatenate([found.nut, found.saddle])


def _plain(figures: Figures) -> Any:
    """All twelve places at once by a quasi-Newton minimiser with slopes of its own, from no set-back."""
    paths, strings = figures["intonation_paths"], figures["intonation_strings"]
    count, weights = len(strings.stretch), figures["intonation_weights"][1:]

    def cost(at: Any) -> float:
        return set_backs(paths, strings, at[:count], at[count:], weights).rms_of_all ** 2

    return minimize(cost, np.zeros(2 * count), method="BFGS", options={"gtol": 1e-9}).x
