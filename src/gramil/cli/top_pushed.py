"""A push on the strung guitar, typed with `gramil top`: read, set beside the solved one, and written down."""

from collections.abc import Iterator, Mapping
from pathlib import Path

from gramil import names as n
from gramil.bare_numbers import with_unit
from gramil.cli.store_options import moment_of
from gramil.description.reading import parse_shop
from gramil.description.shop.bare import bare_shop
from gramil.formatter import formatter_of
from gramil.graph import Figures
from gramil.store.toml_text import table_text


def with_push(figures: Figures, weight: str, given: str) -> tuple[Figures, Mapping[str, str]]:
    """The figures with this push after the known ones, and its row of the shop.

    Raises MakersFault for a weight or a length that cannot be read.
    """
    from gramil.description.wood.timbers import pushed

    instrument, unit = str(figures[n.instrument_name]), formatter_of(figures).first
    known = figures[n.timber_pushes]
    name = f"{instrument}, push {len(known) + 1}"
    row = {"name": name, "for": instrument, "weight": weight, "given": with_unit(given, "mm", unit)}
    table = table_text("[[pushed]]", list(row.items()))
    read = parse_shop(f"{bare_shop(unit)}\n{table}", "what was typed").shop.pushed[0]
    return figures.with_base({**figures.base, n.timber_pushes.address: (*known, pushed(read))}), row


def kept_push(row: Mapping[str, str], store: Path | None) -> Iterator[str]:
    """The push written down in the store, or its row for the shop's file."""
    if store is None:
        yield "In the shop's file:"
        yield table_text("[[pushed]]", list(row.items())).rstrip()
        return
    from gramil.acts.tools import keep_tool
    from gramil.store.items import Item
    from gramil.store.opening import open_store
    from gramil.store.writing import Hand

    with open_store(store) as record:
        keep_tool(
            record,
            Item("pushed", row["name"], {key: said for key, said in row.items() if key != "name"}),
            Hand(moment_of(None)),
        )
    yield f"{row['name']} is written down in {store.name}."
