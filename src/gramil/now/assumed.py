"""What a plan assumes of the air beyond what was measured and said, place by place."""

from collections.abc import Iterator

from gramil.air.air_bands import Limits
from gramil.now.air_now import PlaceNow
from gramil.now.chances import Chance
from gramil.now.open_now import Conditions

A_DAYS_WORK = 13.0
"""Hours for which a day's air is asked to hold where no operation says how long."""


def rests_on(shop: Conditions) -> str:
    """What a plan assumes of the places where gluing and finishing are done; empty if nothing."""
    apart = shop.finishing and shop.air_for("finishing") is not shop.air
    works = ("gluing", "finishing") if apart else ("gluing",)
    return " ".join(told for work in works for told in _of_place(shop, work))


def _of_place(shop: Conditions, work: str) -> Iterator[str]:
    air = shop.air_for(work)
    if air is None:
        yield f"No readings of the air where {work} is done: whatever needs its band is left out."
        return
    limits = shop.bands[work]
    yield from filter(None, (_to_come(air, limits, work), _by_machines(air, limits, work)))


def _to_come(air: PlaceNow, limits: Limits, work: str) -> str:
    if air.old:
        waits = "whatever needs its band waits for a reading, and then for a day of right air by its record"
        return f"The {air.name}'s readings are too old: {waits}."
    said = air.outlook.said
    chance = None if air.record is None else air.record.chance(air.reached(limits), A_DAYS_WORK, foretold=said)
    if said:
        return " ".join(filter(None, (air.outlook.told, _beyond(chance, work))))
    nobody = f"Nobody gave an outlook of the {air.name}"
    if chance is None:
        return f"{nobody}: from tomorrow its air is taken to be as on average in the days before."
    told = f"{chance.open} of {chance.days} days on record were open for {work}"
    return f"{nobody}: {told}, and the same share of the days to come is taken to be."


def _beyond(chance: Chance | None, work: str) -> str:
    """What is taken to come after an outlook: days of which another one will tell whether they hold."""
    if chance is None:
        return ""
    held = f"on {chance.open} of {chance.days} days on record the air held long enough for {work}"
    return f"After that, {held}: the same share of the days to come is taken to, and outlooks to tell which."


def _by_machines(air: PlaceNow, limits: Limits, work: str) -> str:
    """Which machine must run for what a plan counts as open; empty without one."""
    names = [name for name, moves in zip(("humidifier", "dryer"), air.machines, strict=True) if moves]
    if not names:
        return ""
    least, most = air.reached(limits).humidity
    told = f"in a night it brings air of {max(0.0, least):.0f} to {min(100.0, most):.0f} % into the band for {work}"
    return f"The {air.name}'s {' or '.join(names)} counts as running where it must: {told}."
