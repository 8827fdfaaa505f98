"""Wood: a year of readings read and summed up, thirty pieces over that year, and two other ways of doing it."""

import math
from datetime import datetime, timedelta
from functools import partial

import numpy as np
from tests.textbooks.crank_sheet import uptake

from benchmarks.timing import milliseconds, seconds
from gramil.physics.arrays import FloatArray, floats
from gramil.physics.diffusion import Layer, Sheet, course, modes_of
from gramil.physics.diffusion_end import profile_at_end
from gramil.wood.air import AirHistory, summarise
from gramil.wood.air_log import read_air_log
from gramil.wood.moisture import follow, moisture_now
from gramil.wood.piece import Piece
from gramil.wood.species import find_species
from gramil.wood.stays import Kept, Stay

READINGS = 52_560
STEP = 600.0
DAY = 86_400.0
THICKNESS, DIFFUSION = 3.0, 1e-4
"""mm and mm2/s of the sheet on which the ways are compared."""


def run() -> None:
    history = year()
    text = _written(history)
    print(f"a year of ten-minute readings read    {milliseconds(seconds(lambda: read_air_log(text), 3))}")
    print(f"and summed up                         {milliseconds(seconds(lambda: summarise(history, (40.0, 50.0)), 3))}")
    _pieces(history)
    _against_the_series()
    _against_an_explicit_scheme(history)


def _written(history: AirHistory) -> str:
    """A year's readings as a logger writes them."""
    rows = zip(history.times, history.temperature, history.humidity, strict=True)
    lines = [
        f"{history.origin + timedelta(seconds=float(at))},{float(warm)!r},{float(damp)!r}" for at, warm, damp in rows
    ]
    return "\n".join(["time,temperature C,relative humidity %", *lines])


def year() -> AirHistory:
    """A made-up year of ten-minute readings."""
    times = floats(np.arange(READINGS) * STEP)
    season, day = 2 * math.pi * times / (365 * DAY), 2 * math.pi * times / DAY
    return AirHistory(
        datetime(2025, 1, 1),
        times,
        floats(17 - 3 * np.cos(season)),
        floats(45 - 15 * np.cos(season) + 3 * np.sin(day)),
    )


def _pieces(history: AirHistory) -> None:
    spruce = find_species("Sitka spruce")
    pieces = [Piece(spruce, 2.0 + 0.8 * number) for number in range(30)]
    end = history.moment(history.times[-1])
    kept = [Kept((Stay(history, history.origin, end),))] * len(pieces)
    now = seconds(lambda: moisture_now(pieces, kept, end), 3)
    way = seconds(lambda: follow(pieces, kept, end), 2)
    print(f"thirty pieces over it, three paces    {milliseconds(now)}")
    print(f"the same, every reading, one pace     {milliseconds(way)}   {way / now:.1f} times")


def _against_the_series() -> None:
    """Mean after one change of air: 17 points against Crank's 200 terms, at as many times."""
    modes, times = modes_of(Sheet((Layer(THICKNESS, DIFFUSION),))), np.geomspace(60.0, 5 * DAY, 1000)
    when = np.concatenate([[0.0], times])

    def ours() -> FloatArray:
        return course([modes], [0.0], when, np.ones(when.size)).mean[1:, 0]

    def series() -> FloatArray:
        return uptake(DIFFUSION * times / THICKNESS**2)

    apart = float(np.abs(ours() - series()).max())
    one, other = seconds(ours), seconds(series)
    print(f"Crank's series at 1000 times          {milliseconds(other)}")
    print(f"points at the same times              {milliseconds(one)}   {one / other:.2f} times, {apart:.0e} apart")


def _against_an_explicit_scheme(history: AirHistory) -> None:
    """One sheet over thirty days: the end by modes, and a plain explicit scheme with what it misses by."""
    modes, count = modes_of(Sheet((Layer(THICKNESS, DIFFUSION),))), 30 * 144
    drawn, times = history.moisture[:count], history.times[:count]
    end = seconds(lambda: profile_at_end(modes, drawn[0], times, drawn))
    exact = _mean(profile_at_end(modes, drawn[0], times, drawn), modes.stores)
    for points in (11, 21):
        took = seconds(partial(explicit, drawn, points), 1)
        missed = abs(_mean_of_even(explicit(drawn, points)) - exact)
        label = f"explicit scheme of {points} points"
        print(f"{label:<37} {milliseconds(took)}   {took / end:.0f} times, misses by {missed:.1e} % moisture")
    print(f"the same thirty days by modes         {milliseconds(end)}")


def explicit(drawn: FloatArray, points: int) -> FloatArray:
    """Contents at even points after all readings, by steps of the longest stable length that divides a reading."""
    gap = THICKNESS / (points - 1)
    parts = math.ceil(STEP / (0.45 * gap**2 / DIFFUSION))
    number = DIFFUSION * (STEP / parts) / gap**2
    content = np.full(points, drawn[0])
    for before, after in zip(drawn[:-1].tolist(), drawn[1:].tolist(), strict=True):
        for part in range(1, parts + 1):
            content[1:-1] += number * (content[2:] - 2.0 * content[1:-1] + content[:-2])
            content[0] = content[-1] = before + (after - before) * part / parts
    return content


def _mean(profile: FloatArray, stores: FloatArray) -> float:
    return float(stores @ profile / stores.sum())


def _mean_of_even(content: FloatArray) -> float:
    """By Simpson's rule."""
    weights = np.full(content.size, 2.0)
    weights[1::2], weights[0], weights[-1] = 4.0, 1.0, 1.0
    return float(weights @ content / weights.sum())
