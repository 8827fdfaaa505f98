"""Base values for solving a plate: what top, braces, bridge and bridge plate are made of, with all nine constants.

What no source gives for a wood is taken from another of its kind, in proportion, and every such step is reported.
"""

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from gramil import names as n
from gramil.description.instrument import Instrument
from gramil.description.normal_row import by_name
from gramil.description.shop.limits import LIMITS
from gramil.description.shop.tables import Shop
from gramil.description.wood.own_woods import wood_of
from gramil.description.wood.tried_tables import PushedTable, TappedTable
from gramil.graph import Input, Origin
from gramil.physics.plates.timber import Timber
from gramil.quantities import Gram, Hertz, Mm, Newton, Percent, Ratio
from gramil.sources import cited
from gramil.wood.species import Published, Species

SOFT = Timber(10800.0, 842.0, 464.0, 691.0, 659.0, 32.4, 0.372, 0.467, 448.0)
HARD = Timber(12600.0, 1663.0, 819.0, 1399.0, 794.0, 252.0, 0.424, 0.476, 700.0)
DENSE = Timber(13000.0, 2000.0, 1300.0, 1200.0, 780.0, 400.0, 0.37, 0.43, 830.0)
"""What stands in for figures that no source gives: the Wood Handbook's ratios for Sitka spruce and for sugar maple
(table 5-1, from memory), and a dense hard wood of our own, as bridges are made of."""
TESTED_AT = 12.0
"""The moisture (%) that a handbook's figures of stiffness hold at."""
GRAVITY = 9.80665e-3
"""What a gram weighs, N: the standard acceleration."""
LIKE = {
    "softwood": ("Sitka spruce", SOFT),
    "hardwood": ("sugar maple", HARD),
    "dense hardwood": ("a dense hard wood", DENSE),
}
"""By a wood's group."""


@dataclass(frozen=True)
class TimberKnown:
    """A piece's wood with its constants, as they are at a `moisture`; `spread` is how far its stiffness may be off, a
    share, `measured` whether this piece itself was, and `told` what was taken from elsewhere, in words."""

    timber: Timber
    spread: Ratio
    measured: bool
    told: tuple[str, ...]
    moisture: Percent = TESTED_AT


@dataclass(frozen=True)
class Tried:
    """A piece that was tapped free (notes in Hz, nan for none) or pushed on two supports (span, newtons, mm), with the
    wood that it is like; `moisture` is nan for settled in the air that gluing aims for."""

    name: str
    part: str
    like: TimberKnown
    group: str
    length: Mm
    width: Mm
    thickness: Mm
    mass: Gram
    moisture: Percent
    along: Hertz
    across: Hertz
    twist: Hertz
    span: Mm
    force: Newton
    given: Mm


@dataclass(frozen=True)
class Push:
    """A weight (newtons) on a strung guitar's saddle, how far it gave there, and how far off that may be (mm)."""

    name: str
    force: Newton
    given: Mm
    gauge: Mm


TIMBER_INPUTS: Mapping[str, Input] = by_name(
    {
        n.timber_top: Input(TimberKnown, "the top's wood, as the solved plate takes it"),
        n.timber_braces: Input(TimberKnown, "the braces' wood, as the solved plate takes it"),
        n.timber_bridge: Input(TimberKnown, "the bridge's wood, as the solved plate takes it"),
        n.timber_bridge_plate: Input(TimberKnown, "the bridge plate's wood, as the solved plate takes it"),
        n.timber_back: Input(TimberKnown, "the back's wood, as the solved plate takes it"),
        n.timber_neck: Input(TimberKnown, "the neck's wood, by whose density it weighs"),
        n.timber_board: Input(TimberKnown, "the board's wood, by whose density it weighs"),
        n.timber_tried: Input(tuple[Tried, ...], "pieces for this instrument that were tapped or pushed"),
        n.timber_pushes: Input(tuple[Push, ...], "pushes on the strung guitar, with a dial gauge"),
    }
)
"""What the solved top is made of."""


def timber_values(
    instrument: Instrument, shop: Shop
) -> Mapping[str, TimberKnown | tuple[Tried, ...] | tuple[Push, ...]]:
    """The values of `TIMBER_INPUTS` by name."""
    known = {name: timber_known(word, kind, shop) for name, (word, kind) in _asked(instrument).items()}
    own = (each for each in shop.tapped if each.instrument == instrument.instrument.name)
    pushes = tuple(pushed(each) for each in shop.pushed if each.instrument == instrument.instrument.name)
    return {**known, **by_name({n.timber_tried: tuple(tried(each, shop) for each in own), n.timber_pushes: pushes})}


def pushed(row: PushedTable) -> Push:
    """A row of the shop's description as figures, the weight as a force."""
    return Push(row.name, GRAVITY * row.weight, row.given, row.gauge)


def tried(row: TappedTable, shop: Shop) -> Tried:
    """A row of the shop's description as figures; what was not tried is not a number."""
    wood = wood_of(row.wood, shop)
    group = wood.group if wood else "softwood"
    return Tried(
        row.name, row.part, timber_known(row.wood, group, shop), group, row.length, row.width, row.thickness, row.mass,
        _or_nan(row.moisture), _or_nan(row.along), _or_nan(row.across), _or_nan(row.twist), _or_nan(row.span),
        GRAVITY * _or_nan(row.weight), _or_nan(row.given),
    )  # fmt: skip


def _or_nan(value: float | None) -> float:
    return math.nan if value is None else value


def timber_origin(name: str, instrument: Instrument, shop: Shop) -> Origin:
    """Where one of these values comes from."""
    if name == n.timber_tried.address:
        return Origin("[[tapped]] of the shop")
    if name == n.timber_pushes.address:
        return Origin("[[pushed]] of the shop")
    word, _ = _asked(instrument)[name]
    wood = wood_of(word, shop) if word else None
    if wood is None or wood.modulus is None:
        return Origin(f"no source gives it for {word}: common practice" if word else "not said: common practice")
    return Origin(f"{word}: {cited(wood.modulus.source)} ({wood.modulus.flag})")


def _asked(instrument: Instrument) -> Mapping[str, tuple[str, str]]:
    """The wood's name as written (empty if it is not said), and of which group it is taken if it is not known."""
    return by_name(
        {
            n.timber_top: (instrument.top.wood, "softwood"),
            n.timber_braces: (instrument.top.brace_wood, "softwood"),
            n.timber_bridge: (instrument.bridge.wood or "", "dense hardwood"),
            n.timber_bridge_plate: (instrument.bridge_plate.wood, "hardwood"),
            n.timber_back: (instrument.body.side_wood, "hardwood"),
            n.timber_neck: (instrument.carve.wood, "hardwood"),
            n.timber_board: (instrument.board.wood, "dense hardwood"),
        }
    )


def timber_known(word: str, group: str, shop: Shop) -> TimberKnown:
    """All constants of a wood by its name; `group` is what it is taken for if it is not known."""
    spread = LIMITS["modulus_most"].value - 1.0
    wood = wood_of(word, shop) if word else None
    name, like = LIKE[wood.group if wood else group]
    if wood is None:
        what = f"{word} is not a known wood" if word else "its wood is not said"
        return TimberKnown(like, spread, False, (f"{what}: taken for {name}",))
    timber, lacking = _filled(wood, like)
    told = (f"{wood.name}: {', '.join(lacking)} in proportion, as {name} has",) if lacking else ()
    return TimberKnown(timber, spread, _is_measured(wood), told)


def _is_measured(wood: Species) -> bool:
    return wood.modulus is not None and wood.modulus.flag == "measured"


def _filled(wood: Species, like: Timber) -> tuple[Timber, tuple[str, ...]]:
    """A wood's constants with what is lacking in proportion to its stiffness along; and what that is, in words."""
    along = like.longitudinal if wood.modulus is None else wood.modulus.value
    scaled = _in_proportion(like, along)
    rows = dict(_given(wood, along))
    known = {key: value for key, (_, value) in rows.items() if value is not None}
    lacking = tuple(words for words, value in rows.values() if value is None)
    return replace(scaled, **known), lacking


def _in_proportion(like: Timber, along: float) -> Timber:
    share = along / like.longitudinal
    return replace(
        like,
        longitudinal=along,
        radial=like.radial * share,
        tangential=like.tangential * share,
        shear_lr=like.shear_lr * share,
        shear_lt=like.shear_lt * share,
        shear_rt=like.shear_rt * share,
    )


def _given(wood: Species, along: float) -> Iterator[tuple[str, tuple[str, float | None]]]:
    """Each constant by its field: what it is called, and its value if a source gives it."""

    def of(figure: Published | None, times: float) -> float | None:
        return None if figure is None or math.isnan(figure.value) else figure.value * times

    yield "longitudinal", ("stiffness along", of(wood.modulus, 1.0))
    yield "radial", ("stiffness across, radial", of(wood.ratio_radial, along))
    yield "tangential", ("stiffness across, tangential", of(wood.ratio_tangential, along))
    yield "shear_lr", ("shear", of(wood.shear_longitudinal_radial, along))
    yield "shear_lt", ("shear, tangential", of(wood.shear_longitudinal_tangential, along))
    yield "shear_rt", ("rolling shear", of(wood.shear_radial_tangential, along))
    yield "density", ("density", of(wood.density, 1.0))
