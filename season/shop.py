"""The invented shop of a season: the example shop's tools, no pieces and logs, and wood bought as it is asked for."""

import re
from datetime import datetime
from importlib.resources import files

from gramil.acts.wood import keep_wood, reserve
from gramil.change.in_store import figures_in_store
from gramil.graph import Figures
from gramil.now.match import Matching, match
from gramil.now.needs import Need, needs_of
from gramil.now.stock_on_hand import stock_of_store
from gramil.now.wood_on_hand import sticks_for
from gramil.parts.body_records import Stick
from gramil.shop.instruments import Instrument, add_instrument, instruments
from gramil.shop.operations_done import operations_done
from gramil.shop.shop_in_store import bring_in_shop, shop_description
from gramil.shop.stock import Blank, blanks, free_counts, promises
from gramil.store.opening import Store
from gramil.store.writing import Hand

EXAMPLES = files("gramil") / "data" / "examples"


def fill(store: Store, names: tuple[str, ...], now: datetime, *, machines: bool = False) -> None:
    """The shop and its instruments, with nothing done; with a humidifier and a dryer or without."""
    text = (EXAMPLES / "shop.toml").read_text("utf-8")
    text = re.sub(r"\[\[piece\]\].*?(?=\n# |\n\[\[blank|\n\[limits|\Z)", "", text, flags=re.DOTALL)
    text = re.sub(r"^log = .*$|^air_from = .*$", "", text, flags=re.MULTILINE)
    if machines:
        text = text.replace("air_changes = ", "humidifier = 250\ndehumidifier = 250\nair_changes = ", 1)
    bring_in_shop(store, text, "shop.toml", Hand(now))
    for name in names:
        add_instrument(store, name.capitalize(), (EXAMPLES / f"{name}.toml").read_text("utf-8"), Hand(now))


def buy(store: Store, now: datetime) -> int:
    """Buy what no wood on hand serves, promise everything, and give how many pieces were bought."""
    bought = 0
    for need in _matched(store)[0].bought:
        bought += 1
        keep_wood(store, _piece(need, f"bought {now:%Y-%m-%d} {bought}"), Hand(now))
    for owner, sticks in _braces(store):
        for stick in sticks:
            bought += 1
            name = f"billet {now:%Y-%m-%d} {bought}, {owner.name}"
            keep_wood(store, Blank(name, stick.wood, stick.length + 5, stick.width + 5, stick.height + 1), Hand(now))
    found, asked = _matched(store)
    free = {each.name: free_counts(store)[each.id] for each in blanks(store)}
    numbers = {owner.name: owner.id for owner, _, _ in asked}
    sticks_of = sticks_for([(figures, done) for _, figures, done in asked], free)
    reserve(store, found, numbers, Hand(now), sticks=sticks_of)
    return bought


def _piece(need: Need, name: str) -> Blank:
    sizes = (need.length + 5, (need.width + 3) * max(1, len(need.cut)), need.thickness + 1)
    return Blank(name, need.woods[0], *sizes, grain=need.grain)


def _asked(store: Store) -> list[tuple[Instrument, Figures, list[str]]]:
    return [
        (owner, figures_in_store(store, owner), [each.operation for each in operations_done(store, owner.id)])
        for owner in instruments(store, "open")
    ]


def _matched(store: Store) -> tuple[Matching, list[tuple[Instrument, Figures, list[str]]]]:
    asked = _asked(store)
    needs = [need for _, figures, done in asked for need in needs_of(figures, done)]
    names = {owner.id: owner.name for owner, _, _ in asked}
    return match(needs, stock_of_store(store, shop_description(store).shop, names, {}), {}), asked


def _braces(store: Store) -> list[tuple[Instrument, tuple[Stick, ...]]]:
    asked = _asked(store)
    free = {each.name: free_counts(store)[each.id] for each in blanks(store)}
    found = {each.instrument: each.wanting for each in sticks_for([(f, d) for _, f, d in asked], free)}
    return [(owner, found.get(owner.name, ())) for owner, _, _ in asked]


def promised_twice(store: Store) -> list[str]:
    """Wood of which more is promised than there is."""
    given: dict[int, int] = {}
    for each in promises(store):
        if each.blank is not None:
            given[each.blank] = given.get(each.blank, 0) + each.count
    return [each.name for each in blanks(store) if given.get(each.id, 0) > each.count]
