"""What a week was planned to be, kept, so that it can be held against what was done."""

from collections.abc import Iterable

from gramil.shop.kept_plans import PlannedWork, keep_plan, monday_of
from gramil.store.opening import Store
from gramil.store.writing import Hand


def keep_week(store: Store, planned: Iterable[PlannedWork], hand: Hand) -> None:
    """Keep what is planned for the week of the hand; what was kept for that week before is replaced."""
    keep_plan(store, monday_of(hand.now), tuple(planned), hand)
