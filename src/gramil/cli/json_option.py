"""What every command that tells something shares: `--json`, and whose answer it is."""

from collections.abc import Callable, Iterable
from pathlib import Path
from typing import TYPE_CHECKING, Any, Literal, TypeVar

import click

if TYPE_CHECKING:
    from gramil.answers.answer import Whose

F = TypeVar("F", bound=Callable[..., Any])
json_option: Callable[[F], F] = click.option("--json", "as_json", is_flag=True, help="As JSON, for programs.")


def told(command: str, instruments: Iterable["Whose"], answer: Any) -> None:
    """Write an answer as JSON."""
    from gramil.answers.answer import as_json

    click.echo(as_json(command, tuple(instruments), answer), nl=False)


def whose_by_name(
    names: Iterable[str], store: Path | None, figures: Literal["drawn", "made"] = "made"
) -> tuple["Whose", ...]:
    """The instruments of these names, with the numbers of their latest revisions in the store, if they are from one."""
    from gramil.answers.answer import Whose
    from gramil.shop.instruments import instrument, revision
    from gramil.store.opening import open_store

    if store is None:
        return tuple(Whose(name, None, figures) for name in names)
    with open_store(store, to_read=True) as opened:
        numbers = {name: revision(opened, instrument(opened, name).id).number for name in names}
    return tuple(Whose(name, number, figures) for name, number in numbers.items())
