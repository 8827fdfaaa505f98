"""Going on anyway: the stress in wood that is glued at one moisture and later would change its size.

Strain, stress with its range, a verdict on it against a published strength, the bow of a glued strip, and the radius of
a braced plate in other air. Stress is an elastic estimate reduced by two factors that are assumed, not measured: how
far the frame yields, and how much creep relaxes. A plate held completely would crack far more often than plates
do; the factors account for the difference.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

import numpy as np

from gramil.decimals import fixed
from gramil.physics.layered_beam import Layers, free_strain_curvature, sagitta, stacked
from gramil.wood.movement import COEFFICIENT_RANGE, outside
from gramil.wood.species import Direction, Published, Species

HELD = (0.5, 0.85)
"""Which share of the free strain is held: from braces that may bend, to bending blocked. Assumed."""
CREEP = (0.3, 0.6)
"""Share of the stress that creep leaves. Assumed."""

STRIP = (0.65, 1.25)
"""What a whole plate's dome changes by, as a share of what one strip of it would: tops solved as plates, free all round
(tests hold the rule to it). Glued to its sides a plate changes less."""

Judgement = Literal["holds", "likely to hold", "may crack", "cracks", "pressed", "not judged"]


@dataclass(frozen=True)
class HeldWood:
    """A change of moisture in restrained wood: moistures %, free strain (growth positive), stress MPa (tension
    positive), as a range.

    missing names the figures that no source gives; stress is None then. extrapolated: outside 6 to 14 % moisture.
    """

    species: Species
    direction: Direction
    moisture: float
    later: float
    strain: float | None
    stress: tuple[float, float] | None
    coefficient: Published | None
    modulus: Published | None
    missing: tuple[str, ...]
    extrapolated: bool


@dataclass(frozen=True)
class Verdict:
    """What happens, in words, with the figures and the assumptions."""

    judgement: Judgement
    why: str
    assumptions: tuple[str, ...]


@dataclass(frozen=True)
class StripLayer:
    """One layer of a glued strip: width and thickness mm, modulus along the strip MPa, and its free strain."""

    width: float
    thickness: float
    modulus: float
    free_strain: float


@dataclass(frozen=True)
class Plate:
    """A plate seen across its grain, with braces that run that way too: thickness mm, how it is sawn, and its braces.

    direction is that of the wood across the plate: radial if quartersawn. Each brace is brace_width wide and
    brace_height high (mm), spacing apart (mm), of brace wood along its grain, on the hollow side; radius (mm) is that
    of the dome when glued, 0 for flat.
    """

    species: Species
    direction: Direction
    thickness: float
    brace: Species
    brace_width: float
    brace_height: float
    spacing: float
    radius: float = 0.0


def held(species: Species, direction: Direction, moisture: float, later: float) -> HeldWood:
    """The stress in wood glued down at `moisture` (%) when it comes to `later`.

    Formula: strain C dM; stress -f k E C dM across the grain, f of HELD, k of CREEP (both ends of both make the range).
    """
    coefficient, modulus = species.movement(direction), species.modulus_across(direction)
    missing = tuple(
        name
        for name, figure in ((f"{direction} movement", coefficient), (f"{direction} modulus", modulus))
        if figure is None
    )
    strain = None if coefficient is None else coefficient.value * (later - moisture)
    stress = None if strain is None or modulus is None else _stress(strain, modulus.value)
    beyond = outside(moisture, later)
    return HeldWood(species, direction, moisture, later, strain, stress, coefficient, modulus, missing, beyond)


def verdict(state: HeldWood) -> Verdict:
    """Judge the stress across the grain by the wood's published strength; if a source is missing, say so.

    Tension only: restrained swelling compresses, bellies the plate and loads the glue line; it is described, not
    judged.
    """
    words = assumed(state)
    if state.stress is None:
        return Verdict("not judged", f"no source gives its {' or '.join(state.missing)}", words)
    low, high = state.stress
    if low < 0:
        push = f"{fixed(-high, 1)} to {fixed(-low, 1)} MPa"
        why = f"it wants to grow and presses with {push}: the plate bellies, the glue line carries it"
        return Verdict("pressed", why, words)
    strength = state.species.strength_across
    pull = f"{fixed(low, 1)} to {fixed(high, 1)} MPa across the grain"
    if strength is None:
        return Verdict("not judged", f"{pull}, and no source gives its strength across the grain", words)
    how = "by a strength from memory: " if strength.flag == "memory" else ""
    against = f"{how}{pull} against a strength of {strength.value:.1f} MPa ({strength.flag})"
    words += (f"strength: {strength.note or strength.source}; a whole plate has weaker spots than small clear pieces",)
    return Verdict(_judged(low, high, strength), against, words)


def _judged(low: float, high: float, strength: Published) -> Judgement:
    """A strength quoted from memory supports no stronger verdict than that it will probably hold."""
    if high < strength.value:
        return "likely to hold" if strength.flag == "memory" else "holds"
    return "cracks" if low > strength.value else "may crack"


def assumed(state: HeldWood) -> tuple[str, ...]:
    """What the figures rest on, in words."""
    shares = f"{HELD[0]:g} to {HELD[1]:g} of the strain held, {CREEP[0]:g} to {CREEP[1]:g} of the stress left by creep"
    words = [f"{shares} (assumed)"]
    for name, figure, unit in (("movement", state.coefficient, ""), ("modulus", state.modulus, " MPa")):
        if figure is not None:
            words.append(f"{name} {figure.value:.3g}{unit} ({figure.flag}{f': {figure.note}' if figure.note else ''})")
    if state.extrapolated:
        words.append(
            f"moisture outside {COEFFICIENT_RANGE[0]:g} to {COEFFICIENT_RANGE[1]:g} %: movement is extrapolated"
        )
    return tuple(words)


def strip_curvature(layers: Sequence[StripLayer]) -> float:
    """Curvature (1/mm) of a glued strip, first layer at the bottom, ends upward positive.

    Source: equilibrium of a layered beam; for two layers S. Timoshenko, Analysis of bi-metal thermostats, 1925.
    """
    return float(free_strain_curvature(_beam(layers), [layer.free_strain for layer in layers]))


def strip_bow(layers: Sequence[StripLayer], length: float) -> float:
    """Bow (mm) of a glued strip over a length (mm): depth under its chord, ends upward positive."""
    return float(sagitta(strip_curvature(layers), length))


def dome_radius(plate: Plate, moisture: float, later: float, kept: float = 1.0) -> float | None:
    """Radius (mm) of a braced plate, glued at `moisture` (%), when it comes to `later`: infinite when flat, negative
    when it has sunk below flat.

    One strip across the plate's grain, as wide as the braces are apart, bends with its brace. kept is the share of the
    strain that creep leaves: 1 is the elastic answer (STRIP says how near a whole plate comes to it). None where a
    figure of plate or brace is missing. The braces' own length is taken not to change, and the frame around not to hold
    the plate.
    """
    coefficient = plate.species.movement(plate.direction)
    across, along = plate.species.modulus_across(plate.direction), plate.brace.modulus
    if coefficient is None or across is None or along is None:
        return None
    wants = kept * coefficient.value * (later - moisture)
    brace = StripLayer(plate.brace_width, plate.brace_height, along.value, 0.0)
    top = StripLayer(plate.spacing, plate.thickness, across.value, wants)
    glued = 1.0 / plate.radius if plate.radius else 0.0
    curvature = glued - strip_curvature([brace, top])  # a plate above that grows bows the ends down: a rounder dome
    return 1.0 / curvature if curvature != 0.0 else float("inf")


def _stress(strain: float, modulus: float) -> tuple[float, float]:
    """Least and most of -f k E e over the factors; wood that would shrink is in tension."""
    ends = np.multiply.outer(HELD, CREEP).ravel() * -modulus * strain
    return float(ends.min()), float(ends.max())


def _beam(layers: Sequence[StripLayer]) -> Layers:
    return stacked(
        [layer.modulus for layer in layers], [layer.width for layer in layers], [layer.thickness for layer in layers]
    )
