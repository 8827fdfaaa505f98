"""Weeks as a printed page each: a column for each day, work to the scale of the clock, cures beside it."""

from collections.abc import Sequence
from datetime import date, datetime, timedelta
from typing import TypedDict

from gramil.prints.pages import safe
from gramil.sheets.page_size import page_size
from gramil.typeset import typeset


class Entry(TypedDict):
    """One block: whose, what, from when to when."""

    whose: str
    what: str
    begins: datetime
    ends: datetime
    cures: datetime | None


class _Day(TypedDict):
    name: str
    blocks: list[dict[str, object]]
    cures: list[str]


def weeks_pdf(entries: Sequence[Entry], title: str, notes: Sequence[str], paper: str = "a4") -> bytes:
    """A page for each week in which there is work. The same input gives the same bytes."""
    weeks = [_week(monday, entries) for monday in _mondays(entries)]
    hours = [_hour(each["begins"]) for each in entries] + [_hour(each["ends"]) for each in entries]
    first, last = int(min(hours, default=8)), int(-(-max(hours, default=17) // 1))
    data = {"page": page_size(paper), "title": safe(title), "notes": [safe(note) for note in notes], "weeks": weeks,
            "first": first, "last": last}  # fmt: skip
    return typeset("weeks.typ", data)


def _mondays(entries: Sequence[Entry]) -> list[date]:
    days = {each["begins"].date() for each in entries}
    return sorted({day - timedelta(days=day.weekday()) for day in days})


def _week(monday: date, entries: Sequence[Entry]) -> dict[str, object]:
    days = [monday + timedelta(days=ahead) for ahead in range(7)]
    worked = [day for day in days if any(each["begins"].date() == day for each in entries)]
    shown = [day for day in days if day.weekday() < 5 or day in worked]
    return {
        "name": f"{monday.day} {monday:%B} to {days[-1].day} {days[-1]:%B %Y}",
        "days": [_day(day, entries) for day in shown],
    }


def _day(day: date, entries: Sequence[Entry]) -> _Day:
    today = [each for each in entries if each["begins"].date() == day]
    cures = sorted(
        (each["cures"], each) for each in entries if each["cures"] and each["cures"].date() == day
    ) if entries else []  # fmt: skip
    return _Day(
        name=f"{day:%A} {day.day}",
        blocks=[
            {
                "begins": _hour(each["begins"]),
                "ends": _hour(each["ends"]),
                "time": f"{each['begins']:%H:%M}",
                "whose": safe(each["whose"]),
                "what": safe(each["what"]),
            }
            for each in today
        ],
        cures=[safe(f"{moment:%H:%M} {each['whose']}: {each['what']}") for moment, each in cures],
    )


def _hour(moment: datetime) -> float:
    return moment.hour + moment.minute / 60
