"""What a week can promise: the work that is done by its end in most draws of hours, lost days and air as they may be.

A plan fills every hour of every day, and counts on as many days of right air as are to be expected. No week does all of
such a plan: a day is lost, a glue-up waits for its air, and what hangs on it waits too.
"""

import random
from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime

from gramil.now.air_spans import Luck
from gramil.now.finishing import Pace, as_it_falls
from gramil.now.hours import Hours
from gramil.now.open_now import Conditions, InstrumentState
from gramil.now.plan import Plan, as_listed, greedy_by
from gramil.now.tasks import Weeks, weeks_of

DRAWS = 40
SURE = 0.5
"""Work is promised that is more often done in time than not. Most of it is surer than that: in a week that begins in
right air some nine in ten promises are kept."""
Work = tuple[str, str]
"""An instrument and an operation, by their names."""


@dataclass(frozen=True)
class Promise:
    """What is promised by a moment, and in what share of the draws each operation was done by then; `hours` are the
    hours of work to be expected in the days drawn.
    """

    work: tuple[Work, ...]
    chances: Mapping[Work, float]
    hours: float


def promised(
    instruments: Sequence[InstrumentState],
    shop: Conditions,
    hours: Hours,
    until: datetime,
    days: int = 14,
    pace: Pace | None = None,
) -> Promise:
    """What can be promised until a moment, within so many days. The same record gives the same answer."""
    chance = random.Random(1)
    counted: Counter[Work] = Counter()
    minutes = 0
    for _ in range(DRAWS):
        luck = Luck(tuple(chance.random() for _ in range(days + 1)))
        weeks = as_it_falls(weeks_of(instruments, shop, hours, days, luck), pace or Pace(), chance)
        plan = greedy_by(as_listed, weeks)
        counted.update(_done(plan, weeks, until))
        minutes += sum(weeks.tasks[place].minutes for place in plan.starts)
    chances = {work: count / DRAWS for work, count in sorted(counted.items())}
    return Promise(tuple(work for work, each in chances.items() if each >= SURE), chances, minutes / DRAWS / 60.0)


def _done(plan: Plan, weeks: Weeks, until: datetime) -> set[Work]:
    """The operations whose last piece of work is over by a moment."""
    over = (until - weeks.start).total_seconds() / 60.0
    return {
        (task.instrument, task.operation.name)
        for place, start in plan.starts.items()
        if (task := weeks.tasks[place]).piece[0] == task.piece[1] and start + task.minutes <= over
    }
