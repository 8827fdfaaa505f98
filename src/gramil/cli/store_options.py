"""What most commands share: a store in place of files, and the moment that they speak of."""

from collections.abc import Callable
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING, Any, TypeVar

import click

from gramil.cli.moments import typed_moment
from gramil.cli.which_shop import store_meant
from gramil.faults import MakersFault
from gramil.store.moments import FIRST_YEAR, LAST_YEAR

if TYPE_CHECKING:
    from gramil.store.opening import Store
    from gramil.store.writing import Hand

FAR_AHEAD = 200
"""Days ahead of the clock, and of what was noted last, from which a moment is taken for a slip."""
F = TypeVar("F", bound=Callable[..., Any])
store_file: Callable[[F], F] = click.option(
    "--store", type=click.Path(path_type=Path), callback=store_meant, help="The shop's store, instead of files."
)
moment: Callable[[F], F] = click.option(
    "--at", metavar="ISO", help="The moment, such as 2026-12-01T09:00; now if not given."
)


def refuse_two_shops(shop: Path | None, store: Path | None) -> None:
    """Raises UsageError if both a shop and a store are named."""
    if store is not None and shop is not None:
        raise click.UsageError("--store holds a shop already: leave --shop out")


def moment_of(at: str | None) -> datetime:
    """The moment asked for, or now, with the offset of this machine's clock. Raises MakersFault for another form."""
    if at is None:
        return datetime.now().astimezone()
    try:
        return by_the_clock(typed_moment(at))
    except ValueError:
        raise MakersFault.of(
            f'"{at}" is not a moment between {FIRST_YEAR} and {LAST_YEAR}',
            remedy="write it like 2026-12-01T09:00",
            where="--at",
        ) from None


def ask_moment(now: datetime, last: str, as_read: bool) -> None:
    """Raises MakersFault for a moment far ahead of the clock and of what was noted last (ISO 8601, or empty), unless it
    is to be taken as it is.
    """
    known = [datetime.now().astimezone(), *([by_the_clock(datetime.fromisoformat(last))] if last else [])]
    ahead = (now - max(known)).days
    if ahead > FAR_AHEAD and not as_read:
        remedy = "is the year right? Nothing was written: write it anew, or take it as it is with --as-read"
        raise MakersFault.of(f"{now:%Y-%m-%d} is {ahead} days ahead", remedy=remedy, where="--at")


def ask_order(against: str, as_read: bool) -> None:
    """Raises MakersFault with what speaks against a moment, if anything does and it is not to be taken as it is."""
    if against and not as_read:
        remedy = "is the day right? Nothing was written: write it anew, or take it as it is with --as-read"
        raise MakersFault.of(against, remedy=remedy, where="--at")


def hand_asked_for(store: "Store", at: str | None, as_read: bool) -> "Hand":
    """The hand that writes at the moment asked for. Raises MakersFault where `ask_moment` does."""
    from gramil.store.writing import Hand, changes

    now = moment_of(at)
    ask_moment(now, next((each.at for each in changes(store, 1)), ""), as_read)
    return Hand(now)


def by_the_clock(moment: datetime) -> datetime:
    """A moment with the offset of this machine's clock; some systems do not know it before 1970."""
    try:
        return moment.astimezone()
    except (OSError, OverflowError):
        return moment.replace(tzinfo=moment.tzinfo or datetime.now().astimezone().tzinfo)
