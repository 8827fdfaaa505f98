"""An instrument changed on the command line: `--set scale.length=650mm`, the file itself left alone."""

from collections.abc import Iterable
from pathlib import Path

import click

from gramil.change.whole import figures_of
from gramil.cli.reading import text_of
from gramil.description.reading import parse_description, read_shop
from gramil.description.writing import set_key
from gramil.graph import Figures


def changed_text(file: Path, changes: Iterable[str]) -> str:
    """The text of a description with keys set, each `key=value`. Raises MakersFault for a key that is none."""
    text = text_of(file)
    for change in changes:
        key, equals, value = change.partition("=")
        if not equals or not key.strip():
            raise click.BadParameter(f"{change!r} is not key=value, such as scale.length=650mm", param_hint="--set")
        text = set_key(text, key.strip(), value.strip())
    return text


def figures_of_text(text: str, file: Path, shop: Path | None) -> Figures:
    """The figures of a description's text; `file` is where it came from."""
    return figures_of(parse_description(text, file.name, file.parent), read_shop(shop))
