"""Kinds of wood: what is known of each, with the source of every figure, and what is not known.

A figure that no source gives is None. Nothing is filled in from a similar wood, and the movement coefficients are the
handbook's own: not for every wood do they follow from its shrinkage table.
"""

from collections.abc import Mapping
from dataclasses import dataclass, fields, replace
from difflib import get_close_matches
from functools import cache, lru_cache
from typing import Literal, cast

from gramil.faults import MakersFault
from gramil.package_data import data_tables
from gramil.wood.movement import coefficient_from_shrinkage

Flag = Literal["read", "transcribed", "memory", "derived", "measured"]
Direction = Literal["radial", "tangential"]
FLAGS: tuple[Flag, ...] = ("read", "transcribed", "memory", "derived", "measured")


@dataclass(frozen=True)
class Published:
    """A figure, the key of its source, and how well it is known: read, transcribed, memory, derived, or measured."""

    value: float
    source: str
    flag: Flag
    note: str = ""


@dataclass(frozen=True)
class Remark:
    """What a source says in words."""

    text: str
    source: str
    flag: Flag


@dataclass(frozen=True)
class Listing:
    """Whether trade in a wood is listed under CITES: in which appendix (empty: in none), and which products it covers.

    `since` is when the listing came into force, `looked_up` when this was last checked: years and months, as 2025-12.
    """

    text: str
    source: str
    flag: Flag
    looked_up: str
    appendix: Literal["", "I", "II", "III"] = ""
    since: str = ""
    note: str = ""


@dataclass(frozen=True)
class Species:
    """One kind of wood; None is missing.

    density kg/m3 at 12 % moisture; modulus MPa along the grain; ratio_* modulus across over along; shear_* shear
    modulus over modulus along; strength_across MPa in tension; shrinkage_* percent green to dry; movement_* share for
    each 1 %. group names the diffusion figures to use.
    """

    name: str
    botanical: str
    also: tuple[str, ...]
    uses: tuple[str, ...]
    group: str
    density: Published | None = None
    modulus: Published | None = None
    ratio_radial: Published | None = None
    ratio_tangential: Published | None = None
    shear_longitudinal_radial: Published | None = None
    shear_longitudinal_tangential: Published | None = None
    shear_radial_tangential: Published | None = None
    strength_across: Published | None = None
    shrinkage_radial: Published | None = None
    shrinkage_tangential: Published | None = None
    shrinkage_volumetric: Published | None = None
    movement_radial: Published | None = None
    movement_tangential: Published | None = None
    dust: Remark | None = None
    trade: Listing | None = None

    def missing(self) -> tuple[str, ...]:
        """Names of the figures and remarks that no source gives."""
        return tuple(field.name for field in fields(self) if getattr(self, field.name) is None)

    def movement(self, direction: Direction) -> Published | None:
        """Movement coefficient: the table's; else calculated from total shrinkage and flagged derived; else None."""
        tabled, shrunk = _in_direction(self, "movement", direction), _in_direction(self, "shrinkage", direction)
        if tabled is not None or shrunk is None:
            return tabled
        note = f"from {shrunk.value:g} % total shrinkage ({shrunk.flag}); no table of movement names this wood"
        return Published(coefficient_from_shrinkage(shrunk.value), shrunk.source, "derived", note)

    def modulus_across(self, direction: Direction) -> Published | None:
        """Modulus across the grain, MPa: ratio times modulus along, flagged derived; None if either is missing."""
        ratio = _in_direction(self, "ratio", direction)
        if ratio is None or self.modulus is None:
            return None
        note = f"{ratio.value:g} ({ratio.flag}) of {self.modulus.value:g} MPa ({self.modulus.flag})"
        return Published(ratio.value * self.modulus.value, ratio.source, "derived", note)


@dataclass(frozen=True)
class PlainName:
    """A name shared by several woods: what holds for its dust, and why the species must be asked for (empty: it need
    not).

    `trade` is what holds for every wood of the name, if that can be said.
    """

    name: str
    ask: str = ""
    dust: Remark | None = None
    trade: Listing | None = None


@dataclass(frozen=True)
class PublishedRange:
    """A figure's slow and fast end, each with its source."""

    slow: Published
    fast: Published


@dataclass(frozen=True)
class Transport:
    """How moisture moves in a group of woods: diffusion across the grain mm2/s, surface coefficient mm/s, and how many
    times faster along the grain than across.
    """

    diffusion: PublishedRange
    surface: PublishedRange
    along: PublishedRange


@cache
def load_species() -> Mapping[str, Species]:
    """Every wood of the bundled file, by its name."""
    woods = [species_from_table(table) for table in _tables("woods").values()]
    return {wood.name: wood for wood in woods}


@cache
def plain_names() -> Mapping[str, PlainName]:
    """Names shared by several woods, such as rosewood, each with what is known of all woods sold under it."""
    tables = _tables("plain_names")
    return {
        name: PlainName(name, **{key: _entry(key, value) for key, value in table.items()})  # type: ignore[arg-type]  # _entry gives each key its own type
        for name, table in tables.items()
    }


def species_from_table(table: Mapping[str, object]) -> Species:
    """A wood from a table of name, botanical, also, uses, group, and figures with value, source and flag.

    Raises MakersFault naming each key that is unknown or ill-formed.
    """
    known = {field.name for field in fields(Species)}
    if strangers := sorted(set(table) - known):
        raise MakersFault.of(
            f"unknown keys for a wood: {', '.join(strangers)}", remedy=f"known: {', '.join(sorted(known))}"
        )
    read = {key: _entry(key, value) for key, value in table.items()}
    try:
        return Species(**read)  # type: ignore[arg-type]  # _entry gives each key its own type
    except TypeError as problem:
        raise MakersFault.of("a wood needs name, botanical, also, uses and group", str(problem)) from problem


def find_species(name: str, own: Mapping[str, Species] | None = None) -> Species:
    """The wood of a name, botanical name or other name, in upper or lower case; the maker's own woods come first.

    Raises MakersFault with the nearest names for a wood that is not known.
    """
    if found := known_species(name, own):
        return found
    index = _index({**load_species(), **(own or {})})
    near = get_close_matches(_plain(name), index, n=3, cutoff=0.5)
    nearest = list(dict.fromkeys(index[match].name for match in near))
    remedy = f"nearest: {', '.join(nearest)}" if nearest else "write its own table of figures, or see the list of woods"
    raise MakersFault.of(f'no wood called "{name}" is known', remedy=remedy)


def known_species(name: str, own: Mapping[str, Species] | None = None) -> Species | None:
    """The wood of a name as `find_species` has it, or None; similar names are not tried."""
    return _index({**load_species(), **(own or {})}).get(_plain(name)) if own else _package_index().get(_plain(name))


@cache
def _package_index() -> Mapping[str, Species]:
    return _index(load_species())


@cache
def transport_of(group: str) -> Transport:
    """Diffusion and surface figures of a group of woods ("softwood", "hardwood", "dense hardwood").

    Raises MakersFault for another group.
    """
    groups = _tables("diffusion")
    if group not in groups:
        raise MakersFault.of(f'no group of woods called "{group}"', remedy=f"known: {', '.join(groups)}")
    across = _range(groups[group], 1e6)
    return Transport(across, _range(_tables("surface"), 1e3), _range(_tables("along"), 1.0))


def dust_of_every_wood() -> Remark:
    """What holds for the dust of any wood."""
    return cast(Remark, _entry("dust", _tables("every_wood")["dust"]))


@cache
def _file() -> Mapping[str, Mapping[str, Mapping[str, object]]]:
    return data_tables("species")


def _tables(name: str) -> Mapping[str, Mapping[str, object]]:
    return _file()[name]


def _range(table: Mapping[str, object], scale: float) -> PublishedRange:
    slow, fast = (cast(Published, _entry(end, table[end])) for end in ("slow", "fast"))
    return PublishedRange(replace(slow, value=slow.value * scale), replace(fast, value=fast.value * scale))


def _entry(key: str, value: object) -> object:
    """A list as a tuple, a table as Published, Remark or Listing, text as it is."""
    if isinstance(value, list):
        return tuple(map(str, value))
    if not isinstance(value, Mapping):
        return value
    kind = Listing if key == "trade" else Remark if "text" in value else Published
    try:
        entry = kind(**value)
    except TypeError as problem:
        raise MakersFault.of(f"{key} is not a figure", str(problem), "write value, source and flag") from problem
    if entry.flag not in FLAGS:
        raise MakersFault.of(f'{key}: flag "{entry.flag}" is unknown', remedy=f"write one of {', '.join(FLAGS)}")
    return entry


def _in_direction(wood: Species, what: str, direction: Direction) -> Published | None:
    return cast("Published | None", getattr(wood, f"{what}_{direction}"))


def _index(woods: Mapping[str, Species]) -> dict[str, Species]:
    """Woods by every plain name they go by; a wood's first name wins over another's second."""
    index = {_plain(other): wood for wood in woods.values() for other in (wood.botanical, *wood.also)}
    return index | {_plain(wood.name): wood for wood in woods.values()}


@lru_cache(maxsize=4096)
def _plain(name: str) -> str:
    return " ".join(name.lower().replace("-", " ").replace("_", " ").split())
