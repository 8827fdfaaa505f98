"""What is measured on the shop's tools, questioned before it is believed: compared with the value so far."""

from collections.abc import Iterable
from dataclasses import replace

from gramil.air.air_bands import limits_of
from gramil.change.questioned import Question, Reading, question
from gramil.description.shop.tolerances import OF_TOOLS
from gramil.faults import MakersFault
from gramil.quantities import Mm
from gramil.shop.shop_in_store import shop_description
from gramil.shop.tools import kerf, length_figure
from gramil.store.items import Item
from gramil.store.opening import Store


def constant_questioned(store: Store, jig: Item, constant: Mm, written: str) -> tuple[Question, ...]:
    """The question that a jig's constant raises, as just measured; none if it has had no constant so far."""
    try:
        was = length_figure(store, jig, "constant")
    except MakersFault:
        return ()
    return _asked(store, "jig.constant", was, [Reading(jig.name, constant, written)])


def cuts_questioned(store: Store, saw: Item, widths: Iterable[Mm]) -> tuple[Question, ...]:
    """The questions that the widths of test cuts raise, compared with what the saw cut so far."""
    readings = [Reading(f"{saw.name}, cut {number}", width) for number, width in enumerate(widths, 1)]
    return _asked(store, "saw.kerf", kerf(store, saw).used, readings)


def _asked(store: Store, figure: str, was: Mm, readings: Iterable[Reading]) -> tuple[Question, ...]:
    near = OF_TOOLS[figure].near(limits_of(shop_description(store).shop).__getitem__)
    found = (question(each, was, "mm", near) for each in readings)
    return tuple(replace(each, so_far=True) for each in found if each is not None)
