"""Writes `data/completion.json`: every word that a shell may complete, made from the commands and the graph.

Run as `make names`; a test keeps the file true.
"""

import json
from collections.abc import Iterable, Iterator, Mapping
from pathlib import Path
from typing import Any

import click
from pydantic import BaseModel

import gramil
from gramil.cli import COMMANDS
from gramil.cli import gramil as program
from gramil.description.instrument import Instrument
from gramil.description.problems import table_in
from gramil.prints.whole import dimensions_of, drawings_of, figures_of_files, setups_of, whole_graph
from gramil.shop.operations_file import usual_work

DATA = Path(gramil.__file__).parent / "data"
FILE = DATA / "completion.json"
OPTIONS = {"--part": "part", "--set": "set", "--until": "until", "--measured": "measured", "--just": "just"}
"""Options whose values are names, and of which kind."""
ARGUMENTS = {
    ("why", "name"): "figure",
    ("turn", "key"): "key",
    ("done", "operation"): "operation",
    ("sheet", "operation"): "sheet",
    ("show", "drawing"): "drawing",
}
"""The same for arguments; any other is a file's name."""


def table() -> dict[str, Any]:
    """The whole list: commands with their options and arguments, and the words of each kind."""
    context = click.Context(program, info_name="gramil")
    commands = {name: _command(program.get_command(context, name), name, told) for name, (_, told) in COMMANDS.items()}
    return {"options": _options(program), "commands": commands, "words": _words()}


def text() -> str:
    """The file's text."""
    return json.dumps(table(), indent=0, ensure_ascii=False, sort_keys=False) + "\n"


def _command(command: click.Command | None, name: str, told: str) -> dict[str, Any]:
    assert command is not None
    found: dict[str, Any] = {"help": told, "options": _options(command), "takes": list(_takes(command, name))}
    if isinstance(command, click.Group):
        found["commands"] = {
            inner: _command(each, f"{name} {inner}", each.get_short_help_str(80))
            for inner, each in command.commands.items()
        }
    return found


def _options(command: click.Command) -> dict[str, list[str]]:
    """Each option with its help and the kind of its value: empty for none, `file`, `value`, or its choices."""
    found: dict[str, list[str]] = {}
    for each in command.get_params(click.Context(command)):
        if isinstance(each, click.Option):
            told = " ".join((each.help or "").split())
            found |= {name: [told, _kind(each, name)] for name in each.opts if name.startswith("--")}
    return found


def _kind(option: click.Option, name: str) -> str:
    if option.is_flag or option.count:
        return ""
    if isinstance(option.type, click.Choice):
        return "|".join(map(str, option.type.choices))
    return OPTIONS.get(name, "value")


def _takes(command: click.Command, name: str) -> Iterator[str]:
    for each in command.params:
        if isinstance(each, click.Argument):
            choices = "|".join(map(str, each.type.choices)) if isinstance(each.type, click.Choice) else ""
            yield choices or ARGUMENTS.get((name, each.name or ""), "file")


def _words() -> Mapping[str, Mapping[str, str]]:
    """The names of each kind, with what they are where that is short."""
    graph, work = whole_graph(), usual_work()
    figures = [figures_of_files(DATA / "examples" / f"{name}.toml", None) for name in ("tarn", "scree", "mere")]
    names = dimensions_of(figures[0])
    operations = {name: each.what for name, each in work.operations.items()}
    drawings = {each.name: each.title for one in figures for each in drawings_of(one)}
    sheets = {each.name: each.title for one in figures for each in setups_of(one)}
    keys = list(_keys(Instrument))
    measured = sorted({address for each in work.operations.values() for address in each.measure})
    return {
        "figure": dict.fromkeys((*names, *keys), ""),
        "part": dict.fromkeys(sorted({graph.dimensions[name].part.replace("_", " ") for name in names}), ""),
        "key": dict.fromkeys(keys, ""),
        "set": {f"{key}=": "" for key in keys},
        "until": {f"{name}=": "" for name in names},
        "measured": {f"{address}=": "" for address in measured},
        "operation": operations | {name: told for name, told in sheets.items() if name not in operations},
        "sheet": {name: what for name, what in operations.items() if work.operations[name].sheet} | sheets,
        "drawing": drawings,
        "just": drawings | sheets,
    }


def _keys(model: type[BaseModel]) -> Iterator[str]:
    """The keys of an instrument that hold one value, with their tables' names."""
    for name, field in model.model_fields.items():
        inner = table_in(field.annotation)
        if inner is not None and "tuple" not in str(field.annotation):
            yield from (f"{name}.{each.alias or key}" for key, each in _single(inner.model_fields.items()))


def _single(fields: Iterable[tuple[str, Any]]) -> Iterator[tuple[str, Any]]:
    return ((key, each) for key, each in fields if table_in(each.annotation) is None)


if __name__ == "__main__":
    FILE.write_text(text(), encoding="utf-8", newline="\n")
