"""What instruments and parts weighed, and when: where an instrument's mass went."""

from dataclasses import dataclass
from datetime import datetime
from typing import Literal

from gramil.quantities import Gram
from gramil.store.moments import moment_text
from gramil.store.opening import Store, Value
from gramil.store.rows import insert, records
from gramil.store.writing import writing

Weighed = Literal["instrument", "part"]


@dataclass(frozen=True)
class Weight:
    """One weighing: of one instrument or part, by number; `what` says which of it ("body, no neck")."""

    instrument: int | None
    part: int | None
    what: str
    grams: Gram
    at: str
    note: str
    id: int


def add_weight(
    store: Store, of: Weighed, number: int, grams: Gram, now: datetime, *, what: str = "", note: str = "", who: str = ""
) -> Weight:
    """Note what an instrument or a part weighs now; raises MakersFault for what there is not."""
    with writing(store, f"weigh {what or of}", now, who):
        row: dict[str, Value] = {of: number, "what": what, "grams": grams, "at": moment_text(now), "note": note}
        added = insert(store, "weight", row)
    return records(store, Weight, "weight", "WHERE id = ?", (added,))[0]


def weights(store: Store, of: Weighed, number: int) -> list[Weight]:
    """Every weighing of one thing, in the order in which they were noted."""
    return records(store, Weight, "weight", f"WHERE {of} = ? ORDER BY id", (number,))
