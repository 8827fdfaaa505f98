"""Instruments and their revisions: each save of a description is kept, with who, when and why.

A description is saved as it is written, even with faults in it: saving never loses work. Any two revisions can be
read again and compared.
"""

from dataclasses import dataclass
from typing import Literal

from gramil.description.problems import did_you_mean, nearest
from gramil.faults import MakersFault
from gramil.store.failures import Conflict
from gramil.store.moments import moment_text
from gramil.store.opening import Store, Value
from gramil.store.rows import insert, record, records, update
from gramil.store.writing import Hand, writing

Standing = Literal["open", "waiting", "done"]
"""Whether an instrument is worked on, put aside, or handed over."""


@dataclass(frozen=True)
class Instrument:
    """An instrument; `customer` is a label, `standing` "open", "waiting" or "done"."""

    id: int
    version: int
    name: str
    customer: str
    standing: str


@dataclass(frozen=True)
class Revision:
    """One save of an instrument's description; `number` counts from 1, `at` is ISO 8601."""

    id: int
    instrument: int
    number: int
    text: str
    who: str
    at: str
    why: str


def add_instrument(store: Store, name: str, text: str, hand: Hand, *, customer: str = "") -> Instrument:
    """A new instrument and its first revision. Raises MakersFault if the name is taken."""
    with writing(store, f"add instrument {name}", hand):
        row = {"version": None, "name": name, "customer": customer, "standing": "open"}
        number = insert(store, "instrument", row)
        _add_revision(store, number, 1, text, hand)
    return instrument(store, name)


def instruments(store: Store, standing: str | None = None) -> list[Instrument]:
    """Every instrument, or those of one standing, sorted by name."""
    if standing is None:
        return records(store, Instrument, "instrument", "ORDER BY name")
    return records(store, Instrument, "instrument", "WHERE standing = ? ORDER BY name", (standing,))


def instrument(store: Store, name: str) -> Instrument:
    """The instrument of that name; small letters find it too where only one can be meant.

    Raises MakersFault if there is none, and names those that there are.
    """
    known = instruments(store)
    alike = [each for each in known if each.name.casefold() == name.strip().casefold()]
    found = next((each for each in known if each.name == name), alike[0] if len(alike) == 1 else None)
    if found is None:
        names = [each.name for each in known]
        has = f"the store has {', '.join(names)}" if known else "the store has none yet"
        raise MakersFault.of(f"there is no such instrument: {name}", has, did_you_mean(nearest(name, names)))
    return found


def update_instrument(store: Store, changed: Instrument, hand: Hand) -> Instrument:
    """Write name, customer and standing; raises Conflict if the store holds another version."""
    with writing(store, f"change instrument {changed.name}", hand):
        row = {"name": changed.name, "customer": changed.customer, "standing": changed.standing}
        update(store, "instrument", changed.id, changed.version, row)
    return instrument(store, changed.name)


def save_revision(store: Store, seen: Instrument, text: str, hand: Hand) -> Instrument:
    """Save a description as the next revision; gives the instrument with its new version.

    `seen` is the instrument as it was when the text was opened. Raises Conflict, with both texts, if somebody saved
    another since. A text equal to the latest revision is not saved again.
    """
    with writing(store, f"save {seen.name}", hand):
        latest = revision(store, seen.id)
        if latest.text == text:
            return instrument(store, seen.name)
        if not store.row("SELECT 1 FROM instrument WHERE id = ? AND version = ?", (seen.id, seen.version)):
            raise Conflict(seen.name, text, latest.text)
        update(store, "instrument", seen.id, seen.version, {"name": seen.name})
        _add_revision(store, seen.id, latest.number + 1, text, hand)
    return instrument(store, seen.name)


def revisions(store: Store, instrument_id: int) -> list[Revision]:
    """Every revision of an instrument, the first save first."""
    return records(store, Revision, "revision", "WHERE instrument = ? ORDER BY number", (instrument_id,))


def revision(store: Store, instrument_id: int, number: int | None = None) -> Revision:
    """One revision, the latest without a number; raises MakersFault where there is none."""
    if number is None:
        return record(
            store, Revision, "revision", "WHERE instrument = ? ORDER BY number DESC LIMIT 1", (instrument_id,)
        )
    found = records(store, Revision, "revision", "WHERE instrument = ? AND number = ?", (instrument_id, number))
    if not found:
        raise MakersFault.of(f"there is no revision {number}", f"the last is {revision(store, instrument_id).number}")
    return found[0]


def _add_revision(store: Store, owner: int, number: int, text: str, hand: Hand) -> None:
    row: dict[str, Value] = {
        "instrument": owner,
        "number": number,
        "text": text,
        "who": hand.who,
        "at": moment_text(hand.now),
        "why": hand.why,
    }
    insert(store, "revision", row)
