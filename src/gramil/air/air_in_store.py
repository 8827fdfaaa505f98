"""The store's places with their readings, in the form that a description's places have: for open work and verdicts."""

from datetime import datetime, timedelta

from gramil.air.air_of_places import PlaceAir, Places
from gramil.air.outlooks import kept_outlooks
from gramil.air.places import air_history, last_read, places
from gramil.description.reading import ShopDescription
from gramil.faults import Fault
from gramil.store.opening import Store
from gramil.wood.air import Air


def places_in_store(store: Store, described: ShopDescription, now: datetime, days: float = 0.0) -> Places:
    """The store's places with their readings, by the clock on the wall; readings too old to matter are left out.

    The `days` before the last reading are always there.
    """
    numbers = {each.name: each.id for each in places(store)}
    known: dict[str, PlaceAir] = {}
    faults: list[Fault] = []
    last = last_read(store)
    for row in described.shop.place:
        number = numbers[row.name]
        back = max(days, described.shop.air.outlook_days + 1)
        since = _since(described, min(now, last.get(number, now)), now, back)
        history = air_history(store, number, since, by_clock=True)
        if history is None:
            faults.append(Fault(where=f"place {row.name}", what="has no readings", remedy="bring readings in"))
            continue
        changes = (row.air_changes[0], row.air_changes[1]) if row.air_changes else None
        outlook = Air(row.outlook.temperature, row.outlook.humidity) if row.outlook else None
        machines, kept = (row.humidifier, row.dehumidifier), kept_outlooks(store, number, now)
        known[row.name] = PlaceAir(row.name, history, row.room, changes, row.air_from, outlook, machines, kept)
    air = described.shop.air
    return Places(known, tuple(faults), described.shop.glued_in, air.outlook_days, air.finishing_place or "")


def _since(described: ShopDescription, last: datetime, now: datetime, days: float) -> datetime:
    """The earliest moment whose air matters: where a piece's record begins, or `days` back.

    Those days end with the place's last reading: air that was read long ago is old, but not unknown.
    """
    begins = [stay.begins.replace(tzinfo=now.tzinfo) for piece in described.shop.piece for stay in piece.lay]
    return min([last - timedelta(days=days), *begins]).astimezone(now.tzinfo)
