"""The woods that a shop knows: those of the package, and the maker's own by name."""

from collections.abc import Mapping
from dataclasses import replace

from gramil.description.shop.tables import Shop
from gramil.description.wood.tables import WoodTable
from gramil.wood.species import Published, Species, find_species, known_species

FIGURES = (
    "density",
    "modulus",
    "ratio_radial",
    "ratio_tangential",
    "strength_across",
    "movement_radial",
    "movement_tangential",
)
"""The figures that a maker may give."""


def own_woods(shop: Shop) -> Mapping[str, Species]:
    """The maker's own woods by name. Raises MakersFault if one is `like` a wood that is not known."""
    return {row.name: own_wood(row) for row in shop.wood}


def own_wood(row: WoodTable) -> Species:
    """One of the maker's woods: its own figures, and those of the wood that it is like."""
    like = find_species(row.like) if row.like else Species(row.name, "", (), (), row.group or "hardwood")
    given = ((key, getattr(row, key)) for key in FIGURES)
    figures = {key: Published(value, row.source, "measured") for key, value in given if value is not None}
    return replace(like, name=row.name, also=(), group=row.group or like.group, **figures)  # type: ignore[arg-type]  # replace cannot see that every figure is Published


def wood_of(name: str, shop: Shop) -> Species | None:
    """A wood by any of its names, the maker's own first; None for one that is not known."""
    return known_species(name, own_woods(shop))
