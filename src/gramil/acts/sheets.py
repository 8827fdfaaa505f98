"""Sheets handed out: noted as they are printed; all that are printed together are one act."""

from collections.abc import Sequence

from gramil.faults import MakersFault
from gramil.sheets.handed_out import kept
from gramil.sheets.sheet import Sheet
from gramil.shop.instruments import Instrument, revision
from gramil.shop.sheets_given import Sheet as Given
from gramil.shop.sheets_given import give_sheet
from gramil.store.opening import Store
from gramil.store.writing import Hand, writing


def hand_out(store: Store, owner: Instrument, sheets: Sequence[Sheet], hand: Hand) -> tuple[Given, ...]:
    """Note that sheets of an instrument's latest revision are handed out; gives the notes.

    Raises MakersFault for a sheet that the instrument does not need.
    """
    for each in sheets:
        if each.setup.closed:
            raise MakersFault.of(
                f"{each.setup.title}: this instrument does not need it", "there is nothing to hand out"
            )
    latest = revision(store, owner.id).number
    papers = {each.setup.name: kept(each) for each in sheets}
    with writing(store, f"hand out {', '.join(papers)}, {owner.name}", hand):
        return tuple(give_sheet(store, owner.id, latest, name, text, hand) for name, text in papers.items())
