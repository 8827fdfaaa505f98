"""An instrument changed on the command line: `--set scale.length=650mm`, the file itself left alone."""

from collections.abc import Callable, Iterable
from pathlib import Path

import click

from gramil.description.reading import parse_description, read_shop
from gramil.description.writing import set_key
from gramil.graph import Figures
from gramil.prints.whole import air_of, figures_of
from gramil.text_file import text_of

SET_SO = "scale.length=650mm or scale.length=25.6in"
"""How a key is set, for a maker of either unit."""


def changed_text(file: Path, changes: Iterable[str]) -> str:
    """The text of a description with keys set, each `key=value`. Raises MakersFault for a key that does not exist."""
    text, seen = text_of(file), set[str]()
    for change in changes:
        key, equals, value = change.partition("=")
        if not equals or not key.strip():
            raise click.BadParameter(f"{change!r} is not key=value, such as {SET_SO}", param_hint="--set")
        if key.strip() in seen:
            raise click.BadParameter(f"{key.strip()} is set twice", param_hint="--set")
        seen.add(key.strip())
        text = set_key(text, key.strip(), value.strip())
    return text


def figures_in(file: Path, shop: Path | None) -> Callable[[str], Figures]:
    """A function from a description's text to its figures; `file` is where the text came from. The shop is read
    once.
    """
    read = read_shop(shop)
    air = air_of(read)
    return lambda text: figures_of(parse_description(text, file.name, file.parent), read, air=air)
