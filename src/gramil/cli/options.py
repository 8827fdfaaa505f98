"""What several commands share: their arguments, and the figures of the files that these name."""

from collections.abc import Callable
from dataclasses import replace
from difflib import get_close_matches
from pathlib import Path
from typing import TYPE_CHECKING, Any, TypeVar

import click
import numpy as np

from gramil.cli.which_shop import shop_meant, shop_needed
from gramil.description.reading import read_description, read_shop
from gramil.faults import MakersFault
from gramil.formatter import Formatter, formatter_of
from gramil.graph import Figures
from gramil.paper_sizes import ROLL, SIZES, read_paper
from gramil.prints.whole import figures_of_files
from gramil.quantities import axes_of

if TYPE_CHECKING:
    from gramil.description.shop.tables import Shop
    from gramil.shop.operations import Work

F = TypeVar("F", bound=Callable[..., Any])
LONGEST = 60
"""Letters of a name that does not exist, as far as a message repeats it."""

instrument_file: Callable[[F], F] = click.argument("file", type=click.Path(path_type=Path))
shop_file: Callable[[F], F] = click.option(
    "--shop",
    type=click.Path(path_type=Path),
    callback=shop_meant,
    help="The shop's description. Not named: shop.toml beside the instrument, else one of common practice.",
)

shop_itself: Callable[[F], F] = click.option(
    "--shop",
    type=click.Path(path_type=Path),
    callback=shop_needed,
    help="The shop's description. Not named: shop.toml beside the file, or in this folder.",
)


def file_to_make(name: str, *names: str, ending: str, what: str, required: bool = False) -> Callable[[F], F]:
    """An option that names a file to be made: in a folder that is there, which is known before it takes long to make;
    its ending must be the right one, so that no other kind of file is overwritten.
    """

    def checked(_: click.Context, parameter: click.Parameter, path: Path | None) -> Path | None:
        if path is not None and path.suffix.lower() != ending:
            raise click.BadParameter(f"{str(path)!r} does not end in {ending}, as such a file does", param=parameter)
        if path is not None and not path.parent.is_dir():
            where = f"there is no folder {path.parent}. Name another place, or make that folder"
            raise click.BadParameter(where, param=parameter)
        return path

    kind = click.Path(path_type=Path)
    return click.option(name, *names, type=kind, callback=checked, required=required, help=what)


def paper(name: str, what: str) -> Callable[[F], F]:
    """An option that names a paper: one of the list, a roll, or two lengths."""

    def checked(_: click.Context, parameter: click.Parameter, written: str | None) -> str | None:
        try:
            return read_paper(written) if written is not None else None
        except MakersFault as fault:
            raise click.BadParameter(str(fault), param=parameter) from None

    listed = f"{', '.join(SIZES)}, {ROLL}, a roll of a width (roll 914 mm), or two lengths (310 x 440 mm)"
    return click.option(name, metavar="PAPER", callback=checked, help=f"{what}: {listed}. The shop's own if not given.")


as_made_option: Callable[[F], F] = click.option(
    "--made",
    is_flag=True,
    help="Go by what is made: measurements in NAME.made.toml take the place of figures as drawn.",
)

top_option: Callable[[F], F] = click.option(
    "--top", "with_top", is_flag=True, help="Solve the top under the strings as well; it takes some seconds."
)


def shop_of(shop: Path | None, store: Path | None) -> "Shop":
    """The shop in a file, that of the store, or the usual one."""
    if store is None:
        return read_shop(shop).shop
    from gramil.shop.shop_in_store import shop_description
    from gramil.store.opening import open_store

    with open_store(store, to_read=True) as record:
        return shop_description(record).shop


def with_the_top(figures: Figures, asked: bool = True) -> Figures:
    """The figures with those of the solved top among them, if that is asked for."""
    if not asked:
        return figures
    from gramil.prints.solved import with_top

    return with_top(figures)


def opened(file: Path, shop: Path | None, made: bool = False) -> tuple[Figures, Formatter]:
    """The figures of an instrument in a shop, as drawn or as made, and how to show them.

    Raises MakersFault for what is wrong in a file, and if figures as made are asked for and nothing is recorded.
    """
    figures = figures_of_files(file, shop)
    if made:
        from gramil.change.settled import settled
        from gramil.shop.made_file import made_beside, read_made

        figures = settled(read_made(made_beside(file)).pinned(figures))
    return figures, formatter_of(figures)


def opened_with_work(file: Path, shop: Path | None, made: bool = False) -> tuple[Figures, Formatter, "Work"]:
    """The same, with the work that the instrument needs, by the lists that lie beside the two files."""
    from gramil.prints.own_addresses import checked_work
    from gramil.shop.operations import needed
    from gramil.shop.operations_file import list_beside, lists_beside

    figures, formatter = opened(file, shop, made)
    work = checked_work(lists_beside(shop, file), figures, list_beside(file).name)
    return figures, formatter, needed(work, read_description(file).instrument)


def address_meant(figures: Figures, name: str, hint: str) -> str:
    """The address of a figure that the maker names: as given, or a key path with its dots as underscores.

    Raises BadParameter for the argument `hint`, with the rows that the figure has, or the nearest names.
    """
    for address in (name, name.replace(".", "_")):
        try:
            figures.at(address)
        except KeyError:
            continue
        return address
    stem = name.split("[")[0].replace(".", "_")
    raise click.BadParameter(f"no figure {name[:LONGEST]!r}. {_instead(figures, stem)}", param_hint=hint)


def _instead(figures: Figures, stem: str) -> str:
    """What may be asked for instead of a name or row that does not exist."""
    if stem in figures:
        axes = axes_of(figures.graph.annotation(stem))
        firsts = [1 if axis == "string" else 0 for axis in axes]
        rows = [
            f"{first} to {first + count - 1}" for first, count in zip(firsts, np.shape(figures[stem]), strict=False)
        ]
        return (
            f"{stem} has rows [{', '.join(rows)}]." if rows else f"{stem} itself is there; see `gramil dims --every`."
        )
    near = get_close_matches(stem, figures.graph.order, 3, 0.5)
    return f"Nearest: {', '.join(near)}." if near else "See `gramil dims`."


def drawn_beside(figures: Figures) -> Formatter | None:
    """The same figures as drawn, if measurements replace some of them; else nothing."""
    return formatter_of(replace(figures, pins={}, known={})) if figures.pins else None
