"""What `gramil turn` turns: one number of a description, or the arch of the board by its radius."""

from collections.abc import Callable
from dataclasses import dataclass
from math import inf, isclose
from pathlib import Path

import click

from gramil import names as n
from gramil.change.written_value import written
from gramil.cli.changed import changed_text
from gramil.description.base import base_names, nearest_key
from gramil.description.problems import did_you_mean
from gramil.faults import MakersFault
from gramil.graph import Figures

PLACES = 9
"""Decimals of a value that is tried: a search goes nearer than a maker writes."""
ARCH = {"board.arch": "", "board.arch.nut": "nut", "board.arch.end": "end"}
"""Keys of the arch, which goes into the figures as 1/R, and which end of the board each is the radius at."""


@dataclass(frozen=True)
class TurnedInput:
    """An input: its key, its unit's symbol, its value now (inf for a flat board's radius), and how to set another.

    `text` gives the description with a value put in.
    """

    key: str
    unit: str | None
    value: float
    text: Callable[[float], str]


def turned_input(figures: Figures, key: str, file: Path, read: Callable[[str], Figures]) -> TurnedInput:
    """The input of a key in a file; `read` gives the figures of its text.

    Raises BadParameter for a key that does not exist, or whose value is not a number that can be turned.
    """
    if key in ARCH:
        return _arch(figures, key, file)
    try:
        (name,) = base_names(key)[:1]
        value = figures[name]
    except (KeyError, ValueError):
        instead = did_you_mean(nearest_key(key)) or "see the page of keys"
        raise click.BadParameter(f"no input {key!r}; {instead}", param_hint="INPUT") from None
    if isinstance(value, bool | str) or not isinstance(value, int | float):
        raise click.BadParameter(f"{key} is not a single number, and cannot be turned", param_hint="INPUT")
    unit = figures.unit_at(name)
    found = TurnedInput(
        key, unit, float(value), lambda new: changed_text(file, [f"{key}={written(new, unit, PLACES)}"])
    )
    _refuse_if_otherwise(found, lambda text: read(text)[name])
    return found


def _refuse_if_otherwise(found: TurnedInput, read: Callable[[str], float]) -> None:
    """Refuse an input that is written in another form than the one it is calculated with."""
    try:
        same = isclose(read(found.text(found.value)), found.value, rel_tol=1e-6, abs_tol=1e-6)
    except MakersFault:
        same = False
    if not same:
        words = f"{found.key} cannot be turned; change it in the file, or with shift"
        raise click.BadParameter(words, param_hint="INPUT")


def _arch(figures: Figures, key: str, file: Path) -> TurnedInput:
    """The arch's radius: of a cylinder all along, of a cone at either end."""
    radii = {"nut": _radius(figures[n.board_curvature_nut]), "end": _radius(figures[n.board_curvature_end])}
    end = ARCH[key]
    if not end and radii["nut"] != radii["end"]:
        words = "the board's arch is a cone: turn board.arch.nut or board.arch.end"
        raise click.BadParameter(words, param_hint="INPUT")
    return TurnedInput(key, "mm", radii[end or "nut"], lambda new: _arched(file, end, new, radii))


def _radius(curvature: float) -> float:
    return 1 / curvature if curvature else inf


def _arched(file: Path, end: str, radius: float, radii: dict[str, float]) -> str:
    """The description with a radius in the arch's place; turning one end of a cylinder makes it a cone."""
    if not end:
        return changed_text(file, [f"board.arch={written(radius, 'mm', PLACES)}"])
    try:
        return changed_text(file, [f"board.arch.{end}={written(radius, 'mm', PLACES)}"])
    except MakersFault:
        ends = {name: written(value, "mm", PLACES) for name, value in {**radii, end: radius}.items()}
        pairs = ", ".join(f'{name} = "{value}"' for name, value in ends.items())
        return changed_text(file, [f"board.arch={{ {pairs} }}"])
