"""Plans kept week by week: what was planned on a Monday, and how much of it was done by the end of that week."""

import json
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta

from gramil.shop.instruments import instruments
from gramil.shop.operations_done import operations_done
from gramil.store.moments import moment_text
from gramil.store.opening import Store
from gramil.store.rows import insert
from gramil.store.writing import Hand, writing

PlannedWork = tuple[str, str]
"""An instrument and an operation."""
_KEY = "plan."


@dataclass(frozen=True)
class KeptWeek:
    """A week by its Monday: what was planned for it, and which of that was done by its Sunday."""

    monday: date
    planned: tuple[PlannedWork, ...]
    done: tuple[PlannedWork, ...]

    @property
    def share(self) -> float:
        """The share of the planned operations that was done; 1 if none was planned."""
        return len(self.done) / len(self.planned) if self.planned else 1.0


def monday_of(moment: datetime) -> date:
    """The Monday of a moment's week."""
    return moment.date() - timedelta(days=moment.weekday())


def keep_plan(store: Store, monday: date, planned: Sequence[PlannedWork], hand: Hand) -> None:
    """Keep a week's plan, in place of one kept for it before."""
    key, text = f"{_KEY}{monday}", json.dumps({"kept": moment_text(hand.now), "work": planned}, ensure_ascii=False)
    with writing(store, f"keep the plan of the week of {monday}", hand):
        store.rows("DELETE FROM setting WHERE key = ?", (key,))
        insert(store, "setting", {"version": None, "key": key, "value": text})


def kept_weeks(store: Store) -> tuple[KeptWeek, ...]:
    """Every week whose plan is kept, the earliest first."""
    rows = store.rows("SELECT key, value FROM setting WHERE key LIKE ? ORDER BY key", (f"{_KEY}%",))
    done = {
        (owner.name, each.operation): each.at
        for owner in instruments(store)
        for each in operations_done(store, owner.id)
    }
    return tuple(
        _week(date.fromisoformat(key.removeprefix(_KEY)), json.loads(text)["work"], done) for key, text in rows
    )


def _week(monday: date, work: list[list[str]], done: dict[PlannedWork, str]) -> KeptWeek:
    planned = tuple((owner, operation) for owner, operation in work)
    ends = str(monday + timedelta(days=7))
    return KeptWeek(monday, planned, tuple(each for each in planned if each in done and done[each][:10] < ends))
