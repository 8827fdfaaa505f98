"""Writes the pages that are made from the program itself, so that they cannot drift: `make docs`.

`pages()` gives each page's text; a test holds them against what is committed.
"""

from collections.abc import Iterator, Mapping
from importlib.resources import files
from itertools import groupby
from pathlib import Path
from tempfile import TemporaryDirectory

import click

from gramil.answers.schemas import schema_files
from gramil.api import Guitar, read
from gramil.cli import COMMANDS, gramil
from gramil.description.keys import describe_keys
from gramil.description.writing import new_description
from gramil.graph import Dimension
from gramil.prints.solved import solved_graph
from gramil.prints.whole import NOT_DIMENSIONS
from gramil.quantities import axes_of, unit_of
from gramil.reason import formula_of, read_doc, readable
from gramil.sources import sources

HERE = Path(__file__).parent
EXAMPLES = Path(str(files("gramil") / "data" / "examples"))


def pages() -> Mapping[str, str]:
    """Every made page by file name."""
    return {
        "keys.md": describe_keys(),
        "commands.md": commands_page(),
        "dimensions.md": dimensions_page(),
        "findings.md": findings_page(),
        "sources.md": sources_page(),
        **{f"schemas/{name}": text for name, text in schema_files().items()},
        "board.svg": picture(read(EXAMPLES / "tarn.toml", EXAMPLES / "shop.toml"), "board"),
        **dict(tutorial_pictures()),
    }


def tutorial_pictures() -> Iterator[tuple[str, str]]:
    """What the first tutorial's reader has on the screen and on the bench: the guitar that its first line describes."""
    with TemporaryDirectory() as folder:
        file = Path(folder) / "heron.toml"
        text = new_description({"instrument.name": "Heron", "scale.length": "640 mm"})
        file.write_text(text, encoding="utf-8")
        heron = read(file)
    for name in ("board", "index-template"):
        yield f"tutorials/heron-{name}.svg", picture(heron, name)


def picture(guitar: Guitar, name: str) -> str:
    """A drawing of it, as its file is written."""
    return guitar.drawings[name].svg


def commands_page() -> str:
    context = click.Context(gramil, info_name="gramil")
    parts = ["# Commands\n", "Made from the commands themselves.\n"]
    for name in COMMANDS:
        command = gramil.get_command(context, name)
        assert command is not None
        parts += _command(command, click.Context(command, info_name=name, parent=context))
    return "\n".join(parts)


def _command(command: click.Command, context: click.Context) -> list[str]:
    parts = [f"## {context.command_path}\n", "```text", command.get_help(context), "```\n"]
    if isinstance(command, click.Group):
        for name in command.list_commands(context):
            inner = command.get_command(context, name)
            assert inner is not None
            parts += _command(inner, click.Context(inner, info_name=name, parent=context))
    return parts


def dimensions_page() -> str:
    graph = solved_graph()
    wanted = [each for name, each in graph.dimensions.items() if not name.startswith(NOT_DIMENSIONS)]
    parts = ["# Dimensions\n", "What each dimension is, and the formula that gives it, read from the code.\n"]
    for part, group in groupby(sorted(wanted, key=lambda each: each.part), key=lambda each: each.part):
        parts.append(f"## {part.replace('_', ' ')}\n")
        parts += [line for dimension in group for line in _dimension(dimension)]
    return "\n".join(parts) + "\n"


def _dimension(dimension: Dimension) -> list[str]:
    doc, unit = read_doc(dimension.what), unit_of(dimension.annotation)
    over = f", by {' and '.join(axes_of(dimension.annotation))}" if axes_of(dimension.annotation) else ""
    measured = f" ({unit.symbol or 'ratio'}{over})" if unit else ""
    lines = [f"- **`{dimension.name}`**{measured}: {' '.join(doc.what.split())}"]
    formula = formula_of(dimension.function)
    if formula:
        lines.append(f"  `{readable(formula)}`")
    if doc.method:
        lines.append(f"  How: {doc.method}")
    lines.append(f"  Source: {doc.source}")
    return lines


def findings_page() -> str:
    graph = solved_graph()
    parts = ["# Findings\n", "What is judged. The limits are in [keys](keys.md), each with where it comes from.\n"]
    for name in graph.order:
        if name.startswith("finding_"):
            parts.append(f"- **{name.removeprefix('finding_').replace('_', ' ')}**: {graph.dimensions[name].what}")
    return "\n".join(parts) + "\n"


def sources_page() -> str:
    parts = ["# Sources\n", "Where published figures and formulas come from, and how each was seen.\n"]
    for key, row in sorted(sources().items()):
        told = "; ".join(f"{name} {value}" for name, value in row.items())
        parts.append(f"- **`{key}`**: {told}")
    return "\n".join(parts) + "\n"


if __name__ == "__main__":
    for name, text in pages().items():
        (HERE / name).parent.mkdir(exist_ok=True)
        (HERE / name).write_text(text, encoding="utf-8", newline="\n")
