"""What was weighed or measured wrongly: put right, or struck, with its checks."""

from gramil.change.as_made import refuse_impossible
from gramil.graph import Figures, Pin
from gramil.quantities import Gram
from gramil.shop import corrections
from gramil.shop.corrections import Measured
from gramil.shop.operations_done import Measurement
from gramil.store.items import Item
from gramil.store.opening import Store
from gramil.store.writing import Hand


def correct_weighing(store: Store, seen: Item, number: int, grams: Gram | None, hand: Hand) -> None:
    """Correct a piece's weighing (by its index in the list), or strike it (`grams` None).

    Raises MakersFault if there is no such weighing, Conflict if the piece was changed since it was seen.
    """
    corrections.correct_weighing(store, seen, number, grams, hand)


def correct_measurement(
    store: Store,
    seen: Measured,
    right: Measurement | None,
    hand: Hand,
    *,
    figures: Figures | None = None,
) -> None:
    """Correct a measurement in place, or strike it (`right` None); `figures` are the instrument's as made.

    Raises MakersFault if it is no longer as it was seen, or if the instrument cannot be worked out with the reading.
    """
    if right is not None and figures is not None:
        refuse_impossible(figures, {right.address: Pin(right.value, "")})
    corrections.correct_measurement(store, seen, right, hand)
