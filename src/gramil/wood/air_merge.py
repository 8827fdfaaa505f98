"""Two runs of readings of one place as one, and as a plain CSV that reads back the same."""

from collections.abc import Iterator

import numpy as np

from gramil.decimals import fixed
from gramil.wood.air import AirHistory


def merged(before: AirHistory, later: AirHistory) -> AirHistory:
    """Both, in time; where both have a reading of one moment, the later run's stands."""
    shift = before.seconds(later.origin)
    times = np.concatenate([later.times + shift, before.times])
    order, first = np.unique(times, return_index=True)
    temperature = np.concatenate([later.temperature, before.temperature])[first]
    humidity = np.concatenate([later.humidity, before.humidity])[first]
    return AirHistory(before.moment(order[0]), order - order[0], temperature, humidity)


def air_lines(history: AirHistory) -> Iterator[str]:
    """Lines of a CSV with units in its names, times to the second; temperature and humidity to 0.01."""
    yield "time,temperature C,relative humidity %\n"
    for seconds, celsius, percent in zip(history.times, history.temperature, history.humidity, strict=True):
        yield f"{history.moment(seconds):%Y-%m-%d %H:%M:%S},{fixed(celsius, 2)},{fixed(percent, 2)}\n"
