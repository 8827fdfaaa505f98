"""Which way a logger's file runs, settled over the whole of it before anything else is read off its times."""

import numpy as np

from gramil.faults import Fault, MakersFault
from gramil.physics.arrays import FloatArray

_ASTRAY = 0.25
"""Share of the steps that may go against the others, before a file is taken to run neither way."""


def newest_first(seconds: FloatArray, file: str | None) -> bool:
    """Whether times in the order of a file's rows run backward as a whole.

    A clock that is put back, or rows that were read out twice, make a few steps go against the others. Raises
    MakersFault where so many do that the rows run neither way; the same rows in the reverse order raise it as well.
    """
    steps = np.diff(seconds)
    on, back = int(np.count_nonzero(steps > 0)), int(np.count_nonzero(steps < 0))
    if min(on, back) > _ASTRAY * (on + back):
        what = f"the times run to and fro: {on} steps go on, and {back} go back"
        raise MakersFault([Fault(None, "time", what, "", "put the rows in the order in which they were read", file)])
    return back > on
