"""What several commands share: their arguments, and the figures of the files that these name."""

from collections.abc import Callable
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


def opened(file: Path, shop: Path | None) -> tuple[Figures, Shower]:
    """The figures of an instrument in a shop, and how to show them."""
    figures = figures_of_files(file, shop)
    return figures, shower_of(figures)
