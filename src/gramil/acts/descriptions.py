"""An instrument's description: begun, kept as the next revision, or brought back to an earlier one."""

from dataclasses import replace

from gramil.faults import MakersFault
from gramil.shop.instruments import Instrument, add_instrument, revision, revisions, save_revision
from gramil.store.opening import Store
from gramil.store.writing import Hand


def begin(store: Store, name: str, text: str, hand: Hand) -> Instrument:
    """A new instrument and its first revision. Raises MakersFault if the name is taken."""
    return add_instrument(store, name, text, replace(hand, why=hand.why or "begun"))


def keep(store: Store, seen: Instrument, text: str, hand: Hand) -> Instrument:
    """Keep a changed description as the next revision; gives the instrument with its new version.

    Raises Conflict, with both texts, if somebody kept another since it was `seen`.
    """
    return save_revision(store, seen, text, hand)


def return_to(store: Store, seen: Instrument, number: int, hand: Hand) -> Instrument:
    """Return to an earlier revision: its text is kept as the next one, and those between stay in the record.

    Raises MakersFault if the revision does not exist or is the latest, Conflict if somebody kept another
    since the instrument was `seen`.
    """
    latest = revisions(store, seen.id)[-1]
    if number == latest.number or revision(store, seen.id, number).text == latest.text:
        raise MakersFault.of(f"{seen.name} is as in revision {number} already", remedy="choose another revision")
    text = revision(store, seen.id, number).text
    return save_revision(store, seen, text, replace(hand, why=f"as in revision {number} again"))
