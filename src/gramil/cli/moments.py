"""The moment that a command speaks of: the clock's, unless another is given. Only here is the clock read."""

from collections.abc import Callable
from datetime import datetime
from typing import Any, TypeVar

import click

F = TypeVar("F", bound=Callable[..., Any])


def _moment(context: click.Context, parameter: click.Parameter, value: str | None) -> datetime:
    if value is None:
        return datetime.now().replace(microsecond=0)
    try:
        moment = datetime.fromisoformat(value)
    except ValueError:
        raise click.BadParameter(f"{value!r} is no moment; write 2026-01-19T09:00", context, parameter) from None
    if moment.tzinfo is not None:
        raise click.BadParameter("leave the zone away: moments are by the shop's own clock", context, parameter)
    return moment


now_option: Callable[[F], F] = click.option(
    "--now", metavar="MOMENT", callback=_moment, help="Speak of this moment, such as 2026-01-19T09:00; else of now."
)
