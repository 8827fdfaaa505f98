"""An old board read from its frets alone: which scale, by which rule, where its nut belongs, and what would mend it.

Nothing of the guitar need be known. Each rule is laid over the readings with a scale and a nut line of its own, by
least squares in which a slot far from the others weighs little; the one that leaves less is the rule, if it leaves so
much less that the readings tell them apart.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Literal

import numpy as np

from gramil.faults import MakersFault
from gramil.physics.arrays import FloatArray, floats
from gramil.physics.compensation import CENTS_PER_UNIT
from gramil.quantities import Cents, Count, Mm

FEWEST = 5
"""Fewer frets do not settle a scale, a nut line and a rule."""
READING, BELIEF = 0.03, 3.0
"""How careful cutting and reading scatter, in mm, and how many readings' weight that has beside those at hand."""
FAR = 2.0
"""A slot that is out by more than this many times the scatter weighs less the further out it is."""
ROUNDS = 30
TOLD_APART = 6.0
"""Twice the log of the odds from which one rule is told from the other: about twenty to one."""
Rule = Literal["twelve equal steps", "the rule of 18"]
RULES: Mapping[Rule, Callable[[FloatArray], FloatArray]] = {
    "twelve equal steps": lambda frets: floats(1 - 2 ** (-frets / 12)),
    "the rule of 18": lambda frets: floats(1 - (17 / 18) ** frets),
}
"""The share of the scale from the nut line to each fret, by the rules that boards were laid out by."""


@dataclass(frozen=True)
class LaidOver:
    """A rule laid over the readings: its scale, where its nut line lies from where was measured, what is left (mm, root
    mean square and slot by slot), and how far scale and nut line may be off (one standard deviation).
    """

    rule: Rule
    scale: Mm
    nut_line: Mm
    left: Mm
    errors: FloatArray
    scale_within: Mm
    nut_within: Mm


@dataclass(frozen=True)
class OldSlot:
    """One slot: where it is, by how much it is out of its rule's place (positive toward the bridge), and how sharp it
    sounds: as found, with the nut where it belongs, and cut anew.
    """

    fret: Count
    measured: Mm
    error: Mm
    as_found: Cents
    nut_moved: Cents
    recut: Cents


@dataclass(frozen=True)
class Ways:
    """What each way leaves, in cents (root mean square over the frets), the saddle placed best for each: `nut_move` is
    how far the nut goes, toward the bridge positive, and `scale` where the saddle then stands from it.
    """

    as_found: Cents
    nut_moved: Cents
    recut: Cents
    nut_move: Mm
    scale: Mm
    to_recut: tuple[Count, ...]


@dataclass(frozen=True)
class OldBoard:
    """An old board as read: the rule that fits best and the other, whether they are told apart, slots, ways to mend."""

    best: LaidOver
    other: LaidOver
    told_apart: bool
    slots: tuple[OldSlot, ...]
    ways: Ways


def read_old_board(frets: FloatArray, measured: FloatArray, most_cents: Cents) -> OldBoard:
    """What fret places (mm from where was measured) say of a board; a reading of fret 0 is where the nut's face stands.

    `most_cents` is what a slot may be out. Raises MakersFault for too few readings, or for ones that do not rise.
    """
    nut = float(measured[frets == 0][0]) if (frets == 0).any() else 0.0
    frets, places = frets[frets > 0], measured[frets > 0]
    _refuse(frets, places, nut)
    fits = sorted((laid_over(rule, frets, places) for rule in RULES), key=lambda each: each.left)
    apart = _odds(fits[1], len(frets)) - _odds(fits[0], len(frets)) > TOLD_APART
    return OldBoard(fits[0], fits[1], apart, *_mended(fits[0], frets, places, nut, most_cents))


def _refuse(frets: FloatArray, places: FloatArray, nut: Mm) -> None:
    if len(frets) < FEWEST:
        what, remedy = f"{len(frets)} frets were read", f"measure {FEWEST} at least, far apart: the last one too"
        raise MakersFault.of(what, "scale, nut and rule are three unknowns", remedy)
    if (np.diff(np.concatenate([[nut], places])) <= 0).any():
        row = int((np.diff(np.concatenate([[nut], places])) <= 0).argmax())
        what = f"fret {frets[row]:g} is read no further from the nut than the one before it"
        raise MakersFault.of(what, remedy="measure every fret from the nut's end, and read that one again")


def laid_over(rule: Rule, frets: FloatArray, places: FloatArray) -> LaidOver:
    """A rule laid over fret places (mm), by least squares that let a slot far out count for little.

    Source: P. J. Huber, "Robust estimation of a location parameter", Annals of Mathematical Statistics 35 (1964).
    """
    columns = np.stack([np.ones_like(frets), RULES[rule](frets)], axis=1)
    weights, found = np.ones_like(frets), floats(np.zeros(2))
    for _ in range(ROUNDS):
        root = np.sqrt(weights)
        found = floats(np.linalg.lstsq(columns * root[:, None], places * root, rcond=None)[0])
        errors = places - columns @ found
        scatter = max(READING, 1.4826 * float(np.median(np.abs(errors))))
        weights = np.minimum(1.0, FAR * scatter / np.maximum(np.abs(errors), 1e-9))
    left = float(np.sqrt((weights * errors**2).mean()))
    free = left * float(np.sqrt(len(frets) / (len(frets) - 2)))
    spread = np.linalg.inv((columns * weights[:, None]).T @ columns) * max(free, READING) ** 2
    within = np.sqrt(np.diag(spread))
    return LaidOver(rule, float(found[1]), float(found[0]), left, floats(errors), float(within[1]), float(within[0]))


def _odds(fit: LaidOver, count: int) -> float:
    """Twice the log of the odds against a rule, up to what is the same for all; careful work scatters a little too."""
    return float((count + BELIEF) * np.log(BELIEF * READING**2 + count * fit.left**2))


def _mended(
    fit: LaidOver, frets: FloatArray, places: FloatArray, nut: Mm, most: Cents
) -> tuple[tuple[OldSlot, ...], Ways]:
    """The slots and the ways to mend them: the saddle alone, the nut as well, and the worst slots cut anew."""
    found, _, _ = _in_tune(frets, places, nut, nut_too=False)
    moved, at, saddle = _in_tune(frets, places, nut, nut_too=True)
    worst = np.abs(moved) > most
    ideal = at + (saddle - at) * (1 - 2 ** (-frets / 12))
    anew, _, _ = _in_tune(frets, np.where(worst, ideal, places), nut, nut_too=True)
    rows = zip(frets, places, fit.errors, found, moved, anew, strict=True)
    slots = tuple(OldSlot(int(row[0]), *map(float, row[1:])) for row in rows)
    again = tuple(int(fret) for fret in frets[worst])
    return slots, Ways(_rms(found), _rms(moved), _rms(anew), at - nut, saddle - at, again)


def _in_tune(frets: FloatArray, places: FloatArray, nut: Mm, *, nut_too: bool) -> tuple[FloatArray, Mm, Mm]:
    """How sharp each fret sounds (cents) with the saddle, and the nut if it may move, where they leave least; and where
    they are. By Newton's steps on the cents themselves, the string taken to be an ideal one.
    """
    at, saddle = nut, nut + (places[-1] - nut) / (1 - 2 ** (-float(frets[-1]) / 12))
    for _ in range(ROUNDS):
        cents = _cents(frets, places, at, saddle)
        along = CENTS_PER_UNIT * (1 / (saddle - at) - 1 / (saddle - places))
        columns = [along] if not nut_too else [along, np.full_like(along, -CENTS_PER_UNIT / (saddle - at))]
        step = np.linalg.lstsq(np.stack(columns, axis=1), -cents, rcond=None)[0]
        saddle += float(step[0])
        at += float(step[1]) if nut_too else 0.0
    return _cents(frets, places, at, saddle), at, saddle


def _cents(frets: FloatArray, places: FloatArray, nut: Mm, saddle: Mm) -> FloatArray:
    return floats(CENTS_PER_UNIT * np.log((saddle - nut) / (saddle - places)) - 100.0 * frets)


def _rms(values: FloatArray) -> float:
    return float(np.sqrt((values**2).mean()))
