"""Wood as answers: what is known of a kind, how it moves, and which pieces serve which needs."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from gramil.now.match import Matching, Served
from gramil.now.needs import Need
from gramil.sources import cited
from gramil.wood.equilibrium import equilibrium_moisture
from gramil.wood.movement import movement
from gramil.wood.species import Flag, Listing, Published, Remark, Species


@dataclass(frozen=True)
class Known:
    """A figure of a wood in `unit`, or `null` if no source gives it; with its source and how it was seen."""

    field: str
    what: str
    value: float | None
    unit: str
    source: str
    flag: Flag | None
    note: str


@dataclass(frozen=True)
class SourceSays:
    """What a source says in words."""

    text: str
    source: str
    flag: Flag


@dataclass(frozen=True)
class Moved:
    """A width that comes to other air: humidity (%), moisture of the wood (%), and by how much it moves in mm, quarter-
    and flatsawn; `null` if that is not known.
    """

    humidity: float
    moisture: float
    quartersawn: float | None
    flatsawn: float | None


@dataclass(frozen=True)
class Wood:
    """A kind of wood: its figures, what is known of its dust and of trade in it, and how a width moves."""

    name: str
    botanical: str
    also: tuple[str, ...]
    uses: tuple[str, ...]
    figures: tuple[Known, ...]
    dust: SourceSays | None
    trade: SourceSays | None
    width: float
    settled_at: float
    moves: tuple[Moved, ...]


@dataclass(frozen=True)
class Kind:
    """A kind of wood in the list of those that are known."""

    name: str
    botanical: str
    uses: tuple[str, ...]


@dataclass(frozen=True)
class Woods:
    """The woods that are known, the shop's own first."""

    woods: tuple[Kind, ...]


@dataclass(frozen=True)
class NeedAnswer:
    """A piece of wood that an instrument needs: finished sizes in mm, and the woods that do."""

    instrument: str
    name: str
    what: str
    woods: tuple[str, ...]
    length: float
    width: float
    thickness: float


@dataclass(frozen=True)
class ServedAnswer:
    """A need, the piece or made part that serves it, how much of the piece is left over as a share of the need, and
    remarks.
    """

    need: NeedAnswer
    piece: str
    wood: str
    made_ahead: bool
    over: float
    remarks: tuple[str, ...]


@dataclass(frozen=True)
class NearAnswer:
    """A part made ahead that would fit an instrument if reworked, and what is off."""

    part: str
    instrument: str
    off: tuple[str, ...]


@dataclass(frozen=True)
class Match:
    """What serves what, what must be bought, made parts that nearly fit, and brace wood that is wanting, in words."""

    served: tuple[ServedAnswer, ...]
    bought: tuple[NeedAnswer, ...]
    near: tuple[NearAnswer, ...]
    wanting: tuple[str, ...]


def wood_answer(
    wood: Species,
    figures: Iterable[tuple[str, str, str, float, Published | None]],
    width: float,
    settled_at: tuple[float, float],
    airs: Iterable[float],
) -> Wood:
    """A wood; `figures` are field, words, unit, the factor to it, and what is known; `settled_at` the temperature
    (C) and humidity (%) in which the width settled, `airs` those that it comes to.
    """
    temperature, humidity = settled_at
    begun = float(equilibrium_moisture(temperature, humidity))
    return Wood(
        wood.name,
        wood.botanical,
        wood.also,
        wood.uses,
        tuple(_known(*each) for each in figures),
        _says(wood.dust),
        _says(wood.trade),
        width,
        begun,
        tuple(_moved(wood, width, begun, each, temperature) for each in airs),
    )


def _known(field: str, what: str, unit: str, factor: float, figure: Published | None) -> Known:
    if figure is None:
        return Known(field, what, None, unit, "", None, "")
    return Known(field, what, figure.value * factor, unit, cited(figure.source), figure.flag, figure.note)


def _says(remark: Remark | Listing | None) -> SourceSays | None:
    return None if remark is None else SourceSays(remark.text, cited(remark.source), remark.flag)


def _moved(wood: Species, width: float, begun: float, humidity: float, temperature: float) -> Moved:
    later = float(equilibrium_moisture(temperature, humidity))
    radial, tangential = (
        None if figure is None else movement(width, figure.value, begun, later).change
        for figure in (wood.movement("radial"), wood.movement("tangential"))
    )
    return Moved(humidity, later, radial, tangential)


def woods_answer(woods: Iterable[Species]) -> Woods:
    """The list of woods."""
    return Woods(tuple(Kind(each.name, each.botanical, each.uses) for each in woods))


def match_answer(found: Matching, wanting: Sequence[str]) -> Match:
    """Which pieces serve which needs."""
    near = (NearAnswer(each.part.name, name, each.off) for name, each in found.near)
    return Match(
        tuple(map(_served, found.served)),
        tuple(map(_need, found.bought)),
        tuple(near),
        tuple(each.strip() for each in wanting),
    )


def _served(each: Served) -> ServedAnswer:
    piece, wood = ("", "") if each.stock is None else (each.stock.name, each.stock.wood)
    if each.fit is not None:
        piece = each.fit.part.name
    return ServedAnswer(
        _need(each.need), piece, wood, each.fit is not None, each.waste / each.need.volume, each.remarks
    )


def _need(each: Need) -> NeedAnswer:
    return NeedAnswer(each.instrument, each.name, each.what, each.woods, each.length, each.width, each.thickness)
