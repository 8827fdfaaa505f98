"""What noted work has opened, told at once: its numbers go on from those of the list that was shown last."""

from collections.abc import Iterator
from datetime import datetime

from gramil.cli.last_list import lines_of, not_listed, still_listed
from gramil.cli.now import wrapped
from gramil.now.open_now import open_now
from gramil.now.states import WorkedOut, bench_of_store
from gramil.shop.instruments import Instrument
from gramil.store.opening import Store


def opened_since(store: Store, now: datetime) -> Iterator[str]:
    """The open work that the list does not have, a line each; from now on the list has it too."""
    bench = bench_of_store(store, now, WorkedOut(_no_sheet_is_looked_at))
    fresh = not_listed(store, lines_of(open_now(bench.instruments, bench.shop)))
    for number, each in enumerate(fresh, still_listed(store, fresh)):
        sheet = "   has a sheet" if each.sheet else ""
        yield wrapped(f"  OPEN {number:<2} {each.instrument}: {each.what}   [{each.operation}]{sheet}")


def _no_sheet_is_looked_at(store: Store, owner: Instrument) -> dict[str, str]:
    """Stale sheets close no work, and take long to find."""
    return {}
