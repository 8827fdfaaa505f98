"""How stiff board and neck are along the grain: as measured, else as published for their woods, else the usual value,
which is then pointed out.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from gramil import names as n
from gramil.description.instrument import Instrument
from gramil.description.normal_row import Normal
from gramil.description.shop.tables import Shop
from gramil.description.wood.own_woods import wood_of
from gramil.graph import Origin
from gramil.quantities import MPa
from gramil.reference import Ref
from gramil.sources import cited
from gramil.wood.species import Published


@dataclass(frozen=True)
class _Usual:
    """The value used for a wood whose stiffness no source gives: MPa, and for what kind of wood it is usual.

    `stiffness` refers to the base value, `known` to whether it is more than the usual one.
    """

    modulus: float
    of: str
    stiffness: Ref[float]
    known: Ref[bool]


USUAL = {
    "board": _Usual(12_000.0, "hard board woods", n.board_modulus, n.board_modulus_known),
    "neck": _Usual(10_000.0, "usual neck woods", n.neck_modulus, n.neck_modulus_known),
}
"""By the part: common practice."""


def _rows(part: str) -> tuple[Normal, Normal]:
    keys, usual = (f"{part}.modulus",), USUAL[part]
    return (
        Normal(usual.stiffness, MPa, f"stiffness of the {part}'s wood along the grain", keys),
        Normal(usual.known, bool, "whether that was measured, or a source gives it for the wood", keys),
    )


STIFFNESS_ROWS: tuple[Normal, ...] = tuple(row for part in USUAL for row in _rows(part))
"""Base values of the stiffness of board and neck."""


def stiffness_values(instrument: Instrument, shop: Shop) -> Mapping[str, float | bool]:
    """The values of `STIFFNESS_ROWS` by name."""
    values: dict[str, float | bool] = {}
    for part, usual in USUAL.items():
        measured, figure = _measured(part, instrument), _figure(part, instrument, shop)
        of_wood = usual.modulus if figure is None else figure.value
        values[usual.stiffness.address] = of_wood if measured is None else measured
        values[usual.known.address] = measured is not None or figure is not None
    return values


def stiffness_origin(name: str, instrument: Instrument, shop: Shop) -> Origin:
    """Where one of these values comes from, if the description does not give it."""
    part = name.partition("_")[0]
    wood, figure = _wood(part, instrument), _figure(part, instrument, shop)
    if figure is not None:
        return Origin(f"{wood}: {cited(figure.source)} ({figure.flag}{f'; {figure.note}' if figure.note else ''})")
    known = wood_of(wood, shop) is not None
    why = f"no source gives it for {wood}" if known else f"{wood} is not a known wood"
    return Origin(f"{why}: common practice, {USUAL[part].of}")


def _measured(part: str, instrument: Instrument) -> float | None:
    return instrument.board.modulus if part == "board" else instrument.neck.modulus


def _wood(part: str, instrument: Instrument) -> str:
    return instrument.board.wood if part == "board" else instrument.carve.wood


def _figure(part: str, instrument: Instrument, shop: Shop) -> Published | None:
    wood = wood_of(_wood(part, instrument), shop)
    return wood.modulus if wood else None
