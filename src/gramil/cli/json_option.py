"""What every command that tells something shares: `--json`, and whose answer it is."""

import io
from collections.abc import Callable, Iterable, Mapping
from contextlib import redirect_stdout
from functools import wraps
from pathlib import Path
from typing import TYPE_CHECKING, Any, Literal, TypeVar

import click

if TYPE_CHECKING:
    from gramil.answers.answer import Whose

F = TypeVar("F", bound=Callable[..., Any])
json_option: Callable[[F], F] = click.option("--json", "as_json", is_flag=True, help="As JSON, for programs.")


def write_answer(command: str, instruments: Iterable["Whose"], answer: Any) -> None:
    """Write an answer as JSON."""
    from gramil.answers.answer import as_json

    click.echo(as_json(command, tuple(instruments), answer), nl=False)


def answers_in_lines(command: click.Command, name: str) -> click.Command:
    """The same command, with `--json` for what it did: the record that it gives back, and every line that it says, as
    one answer to a program.

    It is for commands that do something and say so. A program cannot answer a question: what it would be asked is
    settled beforehand, with --yes or --as-read.
    """
    acts = command.callback
    assert acts is not None

    @wraps(acts)
    def asked(as_json: bool, **given: Any) -> None:
        if not as_json:
            acts(**given)
            return
        from gramil.answers.acts import Acted

        with redirect_stdout(io.StringIO()) as said:
            did = acts(**given)
        write_answer(name, _asked_about(given), Acted(tuple(said.getvalue().splitlines()), did))

    command.callback = asked
    command.params.append(click.Option(["--json", "as_json"], is_flag=True, help="As JSON, for programs."))
    return command


def _asked_about(given: Mapping[str, Any]) -> tuple["Whose", ...]:
    """The instrument that a command was given, by its name in a store or by its file; none if it was given none."""
    from gramil.answers.answer import Whose
    from gramil.description.reading import read_description
    from gramil.faults import MakersFault

    files, store = given.get("file"), given.get("store")
    named = given.get("name") or (files[0] if files and isinstance(files, tuple) else files)
    if named is None:
        return ()
    try:
        if store is not None:
            return whose_by_name((str(named),), store)
        return (Whose(read_description(Path(named)).instrument.instrument.name, None, _as(given)),)
    except MakersFault:  # the name of a place or of a piece, or the number of a line
        return ()


def _as(given: Mapping[str, Any]) -> Literal["drawn", "made"]:
    """Whether the answer is about the instrument as made: it is for noted work, and for a sheet asked for as made."""
    return "made" if given.get("made") or "measured" in given else "drawn"


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
