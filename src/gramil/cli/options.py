"""What several commands share: their arguments, and the figures of the files that these name."""

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import Any, TypeVar

import click

from gramil.change.whole import figures_of_files
from gramil.graph import Figures
from gramil.measure import LengthUnit
from gramil.show import Shower

F = TypeVar("F", bound=Callable[..., Any])

instrument_file: Callable[[F], F] = click.argument("file", type=click.Path(path_type=Path))
shop_file: Callable[[F], F] = click.option(
    "--shop",
    type=click.Path(path_type=Path),
    help="The shop's description; without it a default shop of common practice stands in.",
)


def shower_of(figures: Figures) -> Shower:
    """Figures as text, in the unit that the description asks for first."""
    first: LengthUnit = figures["instrument_units"]
    return Shower(figures, first)


as_made: Callable[[F], F] = click.option(
    "--made",
    is_flag=True,
    help="Go by what is made: measurements in NAME.made.toml take the place of figures as drawn.",
)


def opened(file: Path, shop: Path | None, made: bool = False) -> tuple[Figures, Shower]:
    """The figures of an instrument in a shop, as drawn or as made, and how to show them.

    Raises MakersFault for what is wrong in a file, and as made where nothing is recorded.
    """
    figures = figures_of_files(file, shop)
    if made:
        from gramil.shop.made_file import made_beside, read_made

        figures = read_made(made_beside(file)).pinned(figures)
    return figures, shower_of(figures)


def drawn_beside(figures: Figures) -> Shower | None:
    """The same figures as drawn, where measurements stand in for some; else nothing."""
    return shower_of(replace(figures, pins={}, known={})) if figures.pins else None
