"""Where the frets lie: equal or tempered, square or fanned. Everything is measured from the zero line.

x runs along the centreline from where the zero line crosses it; y runs across, treble positive.
"""

import numpy as np

from gramil.quantities import Cents, CentsPerMm, Mm, PerFret, Radians, Ratio

OWNS = ("scale_", "fret_")


def scale_run_bass(scale_bass: Mm, scale_sideways: Mm) -> Mm:
    """How far the bass side's scale runs along the centreline, zero line to saddle, before any set-back.

    Source: Pythagoras; the scale is measured along the outer string on a fanned board.
    """
    return np.sqrt(scale_bass**2 - scale_sideways**2)


def scale_run_treble(scale_treble: Mm, scale_sideways: Mm) -> Mm:
    """How far the treble side's scale runs along the centreline, zero line to saddle, before any set-back.

    Source: Pythagoras; the scale is measured along the outer string on a fanned board.
    """
    return np.sqrt(scale_treble**2 - scale_sideways**2)


def scale_lead(scale_run_bass: Mm, scale_run_treble: Mm, scale_square_at_cents: Cents) -> Mm:
    """How far toward the tail the zero line's treble end lies from its crossing of the centreline; bass as far back.

    It is what makes the chosen fret square to the centreline. Zero on an ordinary board.
    Source: common practice.
    """
    return (1 - 2 ** (-scale_square_at_cents / 1200)) * (scale_run_bass - scale_run_treble) / 2


def scale_run(scale_run_bass: Mm, scale_run_treble: Mm) -> Mm:
    """Zero line to saddle line on the centreline, before any set-back.

    Source: common practice.
    """
    return (scale_run_bass + scale_run_treble) / 2


def fret_fraction(scale_cents: PerFret[Cents]) -> PerFret[Ratio]:
    """The part of the scale that lies between zero line and fret.

    Source: equal_temperament
    """
    return 1 - 2 ** (-scale_cents / 1200)


def fret_x_bass(fret_fraction: PerFret[Ratio], scale_run_bass: Mm, scale_lead: Mm) -> PerFret[Mm]:
    """Where each fret passes under the bass outer string, along the centreline's direction.

    Source: equal_temperament
    """
    return fret_fraction * scale_run_bass - scale_lead


def fret_x_treble(fret_fraction: PerFret[Ratio], scale_run_treble: Mm, scale_lead: Mm) -> PerFret[Mm]:
    """Where each fret passes under the treble outer string, along the centreline's direction.

    Source: equal_temperament
    """
    return fret_fraction * scale_run_treble + scale_lead


def fret_position(fret_x_bass: PerFret[Mm], fret_x_treble: PerFret[Mm]) -> PerFret[Mm]:
    """Zero line to fret along the centreline: the figure to lay out by. Never add up fret-to-fret distances.

    Source: equal_temperament
    """
    return (fret_x_bass + fret_x_treble) / 2


def fret_step(fret_position: PerFret[Mm]) -> PerFret[Mm]:
    """From the fret before to this one, on the centreline. For checking only: errors of steps add up.

    Formula: diff(fret_position, prepend=0)
    Source: common practice.
    """
    return np.diff(fret_position, prepend=0.0)


def fret_half_spread(fret_fraction: PerFret[Ratio], nut_spread: Mm, bridge_spread: Mm) -> PerFret[Mm]:
    """Centreline to the outer strings' centres where each fret passes under them.

    Source: common practice.
    """
    return (nut_spread + fret_fraction * (bridge_spread - nut_spread)) / 2


def fret_slant(fret_x_bass: PerFret[Mm], fret_x_treble: PerFret[Mm], fret_half_spread: PerFret[Mm]) -> PerFret[Ratio]:
    """How far toward the tail each fret runs for each mm toward the treble; 0 is square to the centreline.

    Source: common practice.
    """
    return (fret_x_treble - fret_x_bass) / (2 * fret_half_spread)


def fret_angle(fret_slant: PerFret[Ratio]) -> PerFret[Radians]:
    """The angle of each fret to a square line, treble end toward the tail positive.

    Source: common practice.
    """
    return np.arctan(fret_slant)


def fret_cents_per_mm(fret_fraction: PerFret[Ratio], scale_run_bass: Mm, scale_run_treble: Mm) -> PerFret[CentsPerMm]:
    """How many cents sharp a slot sounds for each mm that it lies too near the bridge, on the shorter side.

    The slope of 1200 log2 of the sounding length. A tolerance is judged by this.
    Source: common practice; the cent is 1200 log2 of a frequency ratio.
    """
    return 1200 / np.log(2) / (np.minimum(scale_run_bass, scale_run_treble) * (1 - fret_fraction))


def fret_cents_per_tenth(fret_cents_per_mm: PerFret[CentsPerMm]) -> PerFret[Cents]:
    """Cents for each 0.1 mm of error in a slot's place.

    Source: common practice.
    """
    return 0.1 * fret_cents_per_mm
