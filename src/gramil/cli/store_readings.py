"""Readings that commands bring into a store: questioned before anything is written, or accepted as read."""

from collections.abc import Callable, Iterator

from gramil import names as n
from gramil.acts.bringing_in import Asks
from gramil.change.in_store import figures_in_store
from gramil.change.questioned import Reading, faults, questions
from gramil.change.questioned_tools import constant_questioned
from gramil.cli.as_read import ANSWER, refuse_doubtful
from gramil.graph import Figures
from gramil.measure import LengthUnit
from gramil.quantities import Mm
from gramil.shop.instruments import Instrument, instruments
from gramil.shop.made_file import Done, Made
from gramil.shop.operations_done import read_measurements
from gramil.store.items import Item
from gramil.store.opening import Store

_OF_THIS_CHANGE = (
    "SELECT address, value, written FROM measurement WHERE instrument = ? AND id IN (SELECT row FROM journal "
    "WHERE of_table = 'measurement' AND did = 'insert' AND change = (SELECT change FROM under_way))"
)


def asks() -> Asks:
    """How a command asks about doubtful readings in files: it refuses them, and says what to write."""
    return Asks(ask_made, asks_rows)


def ask_made(made: Made, figures: Figures) -> None:
    """Raises MakersFault for doubtful measurements in a record of what is made."""
    asked = [each for done in made.done for each in questions(figures, _readings(done, made, figures), done.operation)]
    if asked:
        raise faults(asked, figures[n.instrument_units], ANSWER, made.file)


def _readings(done: Done, made: Made, figures: Figures) -> Iterator[Reading]:
    lines = {each.address: each.line for each in done.measured}
    written = {each.address: each.written for each in done.measured}
    for each in read_measurements(figures, written, made.units):
        yield Reading(each.address, each.value, each.written, lines[each.address])


def ask_constant(store: Store, jig: Item, constant: Mm, written: str, unit: LengthUnit) -> None:
    """Raises MakersFault if a jig's constant, as just measured, is doubtful."""
    if asked := constant_questioned(store, jig, constant, written):
        raise faults(asked, unit, ANSWER)


def asks_rows(file: str) -> Callable[[Store], None]:
    """A function that checks measurements brought in as rows, within their change; it raises MakersFault for doubtful
    ones.
    """

    def ask(store: Store) -> None:
        for owner in instruments(store):
            figures = figures_in_store(store, owner, measured=False)
            refuse_doubtful(figures, _brought_in(store, owner, figures), file=file)

    return ask


def _brought_in(store: Store, owner: Instrument, figures: Figures) -> Iterator[Reading]:
    """Those rows of the change under way whose figures the instrument has."""
    for address, value, written in store.rows(_OF_THIS_CHANGE, (owner.id,)):
        try:
            float(figures.at(address))
        except (KeyError, TypeError, ValueError):
            continue
        yield Reading(address, value, written)
