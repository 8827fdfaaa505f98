"""`gramil new FILE --shop`: what a shop has, asked in a few lines, with the usual ones offered and marked as such."""

from collections.abc import Callable, Iterator
from dataclasses import replace
from functools import partial

import click

from gramil.bare_numbers import length_unit
from gramil.description.shop.new_shop import JIGS, KINDS, USUAL_PAPER, Jig, NewShop, Piece, new_shop, usual_names
from gramil.faults import MakersFault
from gramil.measure import LengthUnit, MeasureError, read_length

USUAL_SIZES = {"length": "500 mm", "width": "70 mm", "thickness": "8 mm"}
"""Of a piece of wood, in the order of asking: what stands for its other sizes while one is tried."""


def shop_text(name: str | None, units: str | None, usual: bool) -> str:
    """The text of a new shop from what is given and, unless all is usual, what is answered. Raises MakersFault."""
    unit = length_unit((units or "").strip())
    if units is not None and units.strip() not in ("mm", "in"):
        raise MakersFault.of(f'read "{units}"', remedy="mm or in", where="shop.units")
    if usual:
        return new_shop(NewShop(name or "My shop", unit, places=("shop",)))
    name = name or click.prompt("What the shop is called", default="My shop")
    if units is None:
        unit = click.prompt("Millimetres or inches", type=click.Choice(["mm", "in"]), default="mm")
    paper = click.prompt(
        "Paper in the printer", type=click.Choice(["a4", "letter"]), default=USUAL_PAPER[length_unit(unit)]
    )
    kept = {kind: _kept(kind, ask) for kind, ask in KINDS.items()}
    kerfs = dict(_kerfs(kept["saw"], unit))
    jigs, places, stock = tuple(_jigs(unit)), _places(), _stock(unit)
    return new_shop(NewShop(name, unit, paper, kept, kerfs, jigs, places, stock))


def _listed(written: str) -> tuple[str, ...]:
    return tuple(each.strip() for each in written.split(",") if each.strip() and each.strip().lower() != "none")


def _kept(kind: str, ask: str) -> tuple[str, ...]:
    """Which of the usual ones the shop has."""
    usual = usual_names(kind)
    while True:
        names = _listed(click.prompt(f"{ask} (names, or none; these are usual)", default=", ".join(usual)))
        strange = [each for each in names if each not in usual]
        if not strange:
            return names
        click.echo(f"{', '.join(strange)}: none of the usual ones; add your own to the file later.", err=True)


def _fits(shop: NewShop) -> bool:
    """Whether a shop with the latest answer is possible; if not, what is wrong is said, to be asked again."""
    try:
        new_shop(shop)
    except MakersFault as wrong:
        for each in wrong.faults:
            click.echo(str(replace(each, file=None, line=None)), err=True)
        return False
    return True


def _size(ask: str, unit: LengthUnit, within: Callable[[str], NewShop], otherwise: str | None = None) -> str:
    """A length as typed, with its unit, once it can be read and fits `within` a shop; or the one word that may stand in
    its place.
    """
    while True:
        written: str = click.prompt(ask, default=otherwise)
        if written.strip().lower() == otherwise:
            return written.strip().lower()
        try:
            read_length(written, unit)
        except MeasureError as fault:
            click.echo(str(fault), err=True)
            continue
        size = f"{written} {unit}" if written.strip()[-1:].isdigit() else written
        if _fits(within(size)):
            return size


def _with_kerf(saw: str, kerf: str) -> NewShop:
    return NewShop(kerfs={saw: kerf})


def _with_jig(serves: str, constant: str) -> NewShop:
    return NewShop(jigs=(Jig(serves, constant),))


def _with_size(which: str, size: str) -> NewShop:
    length, width, thickness = {**USUAL_SIZES, which: size}.values()
    return NewShop(stock=(Piece("one", "wood", (length, width, thickness)),))


def _kerfs(saws: tuple[str, ...], unit: LengthUnit) -> Iterator[tuple[str, str]]:
    for each in saws:
        ask = f"Kerf of the {each}, from a test cut (or usual)"
        kerf = _size(ask, unit, partial(_with_kerf, each), "usual")
        if kerf != "usual":
            yield each, kerf


def _jigs(unit: LengthUnit) -> Iterator[Jig]:
    for serves, how in JIGS.items():
        if click.confirm(f"Is there a jig for {serves}", default=False):
            constant = _size(f"Its constant ({how})", unit, partial(_with_jig, serves))
            yield _checked(Jig(serves, constant), unit)


def _checked(jig: Jig, unit: LengthUnit) -> Jig:
    """The jig with the day on which it was last measured, if there is one."""
    while True:
        day: str = click.prompt("Day that was last measured (or never)", default="never")
        found = replace(jig, checked="" if day.strip().lower() == "never" else day.strip())
        if _fits(NewShop(units=unit, jigs=(found,))):
            return found


def _places() -> tuple[str, ...]:
    while True:
        places = _listed(click.prompt("Places where wood lies, first where you glue", default="shop"))
        if _fits(NewShop(places=places)):
            return places


def _stock(unit: LengthUnit) -> tuple[Piece, ...]:
    """Pieces of wood, one after another; one that clashes with the others is asked for again."""
    found = list[Piece]()
    while (name := click.prompt("A piece of wood in stock: what is written on it (or none)", default="none")) != "none":
        wood = click.prompt("Its wood")
        length, width, thickness = (_size(f"Its {each}", unit, partial(_with_size, each)) for each in USUAL_SIZES)
        piece = Piece(name, wood, (length, width, thickness))
        if _fits(NewShop(units=unit, stock=(*found, piece))):
            found.append(piece)
    return tuple(found)
