"""The shop's description out of the store and into it: tools, wires, wood, places and limits as one TOML file.

`shop_text` gives what is on hand as a description like any other, so that every figure follows from the store as it
does from a file. `bring_in_shop` takes a description apart, after all of its checks.
"""

import json
import tomllib
from collections.abc import Iterator, Mapping
from datetime import date, datetime
from typing import Any, get_args

from gramil.air.places import Place, place_logs, places, put_air, put_place
from gramil.bare_numbers import UNSAID
from gramil.description.reading import ShopDescription, parse_shop
from gramil.description.records import piece_of_wood
from gramil.description.shop.tables import Shop
from gramil.faults import Fault, MakersFault
from gramil.shop.stock import Blank, blanks, free_counts, put_blank
from gramil.shop.tools import cuts, kerf, length_figure
from gramil.shop.wire_pressed import pressed
from gramil.store.items import Item, items, length_text, put_item, shop_unit
from gramil.store.opening import Store, reading
from gramil.store.rows import insert
from gramil.store.toml_text import Value as TomlValue
from gramil.store.toml_text import table_text
from gramil.store.writing import Hand, writing
from gramil.wood.air import typed_in

_TABLES = {name: field for name, field in Shop.model_fields.items() if name != "gramil"}
_MANY = tuple(name for name, field in _TABLES.items() if get_args(field.annotation))
_ONCE = tuple(name for name in _TABLES if name not in _MANY)


def shop_text(store: Store, for_instrument: int | None = None) -> str:
    """What is on hand as a shop's description.

    Kerfs are those of the latest test cuts. Blanks are those promised to nobody; with an instrument, those promised to
    it are among them, and the wire pressed into it counts as on hand. A place with readings names its log, as
    `place_logs` gives them.
    """
    with reading(store):
        settings = {key: json.loads(text) for key, text in store.rows("SELECT key, value FROM setting ORDER BY id")}
        tables = [_once(name, settings) for name in _ONCE]
        tables += [table_text(f"[[{item.kind}]]", _item_rows(store, item, for_instrument)) for item in items(store)]
        tables += list(_blanks(store, for_instrument))
        logs = place_logs(store)
        tables += [table_text("[[place]]", _place_rows(each, logs)) for each in places(store)]
    return "\n".join(["gramil = 1\n", *filter(None, tables)])


def shop_description(store: Store, for_instrument: int | None = None) -> ShopDescription:
    """What is on hand, checked as a description is; raises MakersFault with every fault."""
    return parse_shop(shop_text(store, for_instrument), "the store")


def bring_in_shop(store: Store, text: str, file: str, hand: Hand) -> None:
    """Bring all of a shop's description into the store: settings are replaced, all else added; readings by its clock.

    Raises MakersFault, with every fault and nothing brought in, if the description has faults, if the store
    has one of its names already, or if its bare lengths are in another unit than the store's.
    """
    described = parse_shop(text, file)
    data = {
        key: _plain(value) for key, value in tomllib.loads(text.removeprefix("\ufeff").replace("\r\n", "\n")).items()
    }
    with writing(store, f"bring in {file}", hand):
        _refuse(store, described, data)
        for table in _ONCE:
            for key, value in data.get(table, {}).items():
                _set(store, f"{table}.{key}", value)
        for table in _MANY:
            for number, row in enumerate(data.get(table, ())):
                _add(store, table, row, getattr(described.shop, table)[number], hand.now)


def _add(store: Store, table: str, row: Mapping[str, Any], checked: Any, now: datetime) -> None:
    figures = {key: value for key, value in row.items() if key != "name"}
    if table == "blank":
        put_blank(store, Blank(**piece_of_wood(checked), count=checked.count))
    elif table == "place":
        figures.pop("readings", None)
        number = put_place(store, Place(checked.name, figures))
        if checked.readings:
            put_air(
                store, number, typed_in((each.at, each.temperature, each.humidity) for each in checked.readings), now
            )
    else:
        put_item(store, Item(table, checked.name, figures))


def _set(store: Store, key: str, value: Any) -> None:
    """Write one of the shop's settings tables whole, if it has changed."""
    text = json.dumps(value, ensure_ascii=False, allow_nan=False)
    store.rows("DELETE FROM setting WHERE key = ? AND value <> ?", (key, text))
    if not store.row("SELECT 1 FROM setting WHERE key = ?", (key,)):
        insert(store, "setting", {"version": None, "key": key, "value": text})


def _refuse(store: Store, described: ShopDescription, data: Mapping[str, Any]) -> None:
    """Raises MakersFault for every row whose name is taken, and for another unit of bare lengths than the store's."""
    faults = list(_other_unit(store, described))
    taken = {(item.kind, item.name) for item in items(store)}
    taken |= {("blank", each.name) for each in blanks(store)} | {("place", each.name) for each in places(store)}
    for table in _MANY:
        for number, row in enumerate(data.get(table, ())):
            if (table, row["name"]) in taken:
                line = described.lines.get((table, number, "name"))
                what = f"there is a {table} called {row['name']} already"
                remedy = "give one of the two another name, or count them together"
                faults.append(Fault(line, f"{table}[{number + 1}]", what, "", remedy, described.file))
            taken.add((table, row["name"]))
    if faults:
        raise MakersFault(sorted(faults, key=lambda fault: fault.line or 0))


def _other_unit(store: Store, described: ShopDescription) -> Iterator[Fault]:
    unit = described.shop.shop.units
    if store.row("SELECT 1 FROM setting WHERE key = 'shop.units'") and unit != shop_unit(store):
        what = f"bare lengths here are in {unit}, and in the store in {shop_unit(store)}"
        remedy = f'write units = "{shop_unit(store)}" here, and its unit on each length that is in {unit}'
        yield Fault(described.lines.get(("shop", "units")), "shop.units", what, "", remedy, described.file)


def _plain(value: Any) -> Any:
    """A value as JSON holds it: dates and times as their texts."""
    if isinstance(value, date):
        return value.isoformat()
    if isinstance(value, list):
        return [_plain(each) for each in value]
    return {key: _plain(each) for key, each in value.items()} if isinstance(value, dict) else value


def _once(name: str, settings: Mapping[str, TomlValue]) -> str:
    """One of the tables that occur only once; the shop always has a name and a unit."""
    given = {key.partition(".")[2]: value for key, value in settings.items() if key.startswith(f"{name}.")}
    if name == "shop":
        given = {"name": "the shop", "units": UNSAID, **given}
    return table_text(f"[{name}]", given.items()) if given else ""


def _item_rows(store: Store, item: Item, for_instrument: int | None) -> Iterator[tuple[str, TomlValue]]:
    yield "name", item.name
    in_it = 0.0 if item.kind != "wire" or for_instrument is None else pressed(store, for_instrument, item.name)
    for key, value in item.figures.items():
        if key == "on_hand" and in_it:
            yield key, length_text(length_figure(store, item, key) + in_it)
            continue
        measured = key == "kerf" and bool(cuts(store, item.id))
        yield key, length_text(kerf(store, item).used) if measured else value


def _blanks(store: Store, for_instrument: int | None) -> Iterator[str]:
    free = free_counts(store, for_instrument)
    for each in blanks(store):
        if free[each.id] > 0:
            sizes = ((name, length_text(getattr(each, name))) for name in ("length", "width", "thickness"))
            rows: list[tuple[str, TomlValue]] = [
                ("name", each.name),
                ("wood", each.wood),
                *sizes,
                ("count", free[each.id]),
            ]
            yield table_text("[[blank]]", rows)


def _place_rows(each: Place, logs: Mapping[int, str]) -> Iterator[tuple[str, TomlValue]]:
    yield "name", each.name
    yield from each.figures.items() if each.id not in logs else {**each.figures, "log": logs[each.id]}.items()
