"""The moment that a command is about: the clock's, unless another is given. The clock is read only here."""

from collections.abc import Callable
from datetime import datetime
from typing import Any, TypeVar

import click

from gramil.store.moments import FIRST_YEAR, LAST_YEAR

F = TypeVar("F", bound=Callable[..., Any])


def typed_moment(text: str) -> datetime:
    """The moment written in an ISO 8601 text; raises ValueError if it is not one, or the year is far away."""
    moment = datetime.fromisoformat(text)
    if not FIRST_YEAR <= moment.year <= LAST_YEAR:
        raise ValueError(text)
    return moment


def _moment(context: click.Context, parameter: click.Parameter, value: str | None) -> datetime:
    if value is None:
        return datetime.now().replace(microsecond=0)
    try:
        moment = typed_moment(value)
    except ValueError:
        raise click.BadParameter(
            f"{value!r} is not a moment between {FIRST_YEAR} and {LAST_YEAR}; write 2026-01-19T09:00",
            context,
            parameter,
        ) from None
    if moment.tzinfo is not None:
        raise click.BadParameter("leave the zone out: moments are by the shop's own clock", context, parameter)
    return moment


now_option: Callable[[F], F] = click.option(
    "--now", metavar="MOMENT", callback=_moment, help="Speak of this moment, such as 2026-01-19T09:00; else of now."
)
