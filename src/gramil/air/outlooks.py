"""Outlooks of a place's air, kept in the record: what somebody said would come, and when it was said."""

import json
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime

from gramil.air.places import Place
from gramil.store.moments import moment_text
from gramil.store.opening import Store
from gramil.store.rows import insert
from gramil.store.writing import Hand, writing


@dataclass(frozen=True)
class Spell:
    """Air that holds from a moment until the next spell begins: temperature C, relative humidity %.

    `said` is when somebody said so; None for air that was read, or that is taken to be so.
    """

    begins: datetime
    temperature: float
    humidity: float
    said: datetime | None = None


@dataclass(frozen=True)
class KeptOutlook:
    """An outlook as it was given: when, from which file (empty: typed), and its spells; by the clock on the wall."""

    said: datetime
    file: str
    spells: tuple[Spell, ...]


def put_outlook(store: Store, of: Place, spells: Sequence[Spell], hand: Hand, file: str = "") -> None:
    """Keep an outlook of a place, as one change."""
    rows = [[each.begins.isoformat(), each.temperature, each.humidity] for each in spells]
    first, last = spells[0].begins, spells[-1].begins
    with writing(store, f"outlook of the {of.name}, {first:%Y-%m-%d} to {last:%Y-%m-%d}", hand):
        row = {"version": None, "place": of.id, "at": moment_text(hand.now), "file": file, "spells": json.dumps(rows)}
        insert(store, "outlook", row)


def kept_outlooks(store: Store, place_id: int, now: datetime) -> tuple[KeptOutlook, ...]:
    """The outlooks of a place that were given by `now`, the latest last."""
    rows = store.rows("SELECT at, file, spells FROM outlook WHERE place = ? ORDER BY id", (place_id,))
    found = ((datetime.fromisoformat(at), file, spells) for at, file, spells in rows)
    known = (_kept(at.astimezone(now.tzinfo).replace(tzinfo=None), file, text) for at, file, text in found if at <= now)
    return tuple(sorted(known, key=lambda each: each.said))


def _kept(said: datetime, file: str, text: str) -> KeptOutlook:
    rows = json.loads(text)
    return KeptOutlook(said, file, tuple(Spell(datetime.fromisoformat(row[0]), row[1], row[2], said) for row in rows))
