"""What was weighed or measured wrongly: put right, or struck, with its checks."""

from datetime import datetime

from gramil.change.as_made import refuse_impossible
from gramil.graph import Figures, Pin
from gramil.quantities import Gram
from gramil.shop import corrections
from gramil.shop.corrections import Measured
from gramil.shop.operations_done import Measurement
from gramil.store.items import Item
from gramil.store.opening import Store


def correct_weighing(
    store: Store, seen: Item, number: int, grams: Gram | None, now: datetime, *, why: str = "", who: str = ""
) -> None:
    """Write a piece's weighing (by its place in the list) anew, or strike it (`grams` None).

    Raises MakersFault where there is no such weighing, Conflict where the piece was changed since it was seen.
    """
    corrections.correct_weighing(store, seen, number, grams, now, why=why, who=who)


def correct_measurement(
    store: Store,
    seen: Measured,
    right: Measurement | None,
    now: datetime,
    *,
    figures: Figures | None = None,
    why: str = "",
    who: str = "",
) -> None:
    """Write a measurement anew where it stands, or strike it (`right` None); `figures` are the instrument's as made.

    Raises MakersFault where it is not there as it was seen, and for a reading with which the instrument cannot be
    worked out.
    """
    if right is not None and figures is not None:
        refuse_impossible(figures, {right.address: Pin(right.value, "")})
    corrections.correct_measurement(store, seen, right, now, why=why, who=who)
