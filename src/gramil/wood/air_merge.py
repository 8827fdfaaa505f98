"""Two runs of readings of one place as one, and as a plain CSV that reads back the same.

Both runs rise in time already: they are laid into one another a column at a time, so that nothing is held twice.
"""

from collections.abc import Iterator

import numpy as np
from numpy.typing import NDArray

from gramil.decimals import fixed
from gramil.physics.arrays import FloatArray
from gramil.wood.air import AirHistory


def merged(before: AirHistory, later: AirHistory) -> AirHistory:
    """Both, in time; where both have a reading of one moment, the later run's stands."""
    times = later.times + before.seconds(later.origin)
    kept = ~_among(before.times, times)
    new = _places(before.times[kept], times)

    def column(earlier: FloatArray, own: FloatArray) -> FloatArray:
        whole = np.empty(new.size)
        whole[new], whole[~new] = own, earlier[kept]
        return whole

    times = column(before.times, times)
    origin = before.moment(times[0])
    times -= times[0]
    return AirHistory(
        origin, times, column(before.temperature, later.temperature), column(before.humidity, later.humidity)
    )


def _among(times: FloatArray, others: FloatArray) -> NDArray[np.bool_]:
    """Which of some times are among others; both rise."""
    at = np.minimum(np.searchsorted(others, times), others.size - 1)
    return np.equal(others[at], times)


def _places(kept: FloatArray, times: FloatArray) -> NDArray[np.bool_]:
    """For each reading of both runs in time: whether it is one of `times`."""
    own = np.zeros(kept.size + times.size, bool)
    own[np.searchsorted(kept, times) + np.arange(times.size)] = True
    return own


def air_lines(history: AirHistory) -> Iterator[str]:
    """Lines of a CSV with units in its names, times to the second; temperature and humidity to 0.01."""
    yield "time,temperature C,relative humidity %\n"
    for seconds, celsius, percent in zip(history.times, history.temperature, history.humidity, strict=True):
        yield f"{history.moment(seconds):%Y-%m-%d %H:%M:%S},{fixed(celsius, 2)},{fixed(percent, 2)}\n"
