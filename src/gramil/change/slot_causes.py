"""The likely common cause of the errors of cut slots, named only if the readings show it.

The candidates are a zero off the nut line, a stretched or shrunk scale, the rule of 18, one slip of the index after
which every slot is out by the same amount, and a single slot. The simplest one that explains the readings is taken;
errors that merely scatter have none.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np

from gramil.physics.arrays import FloatArray
from gramil.physics.least_squares import fitted
from gramil.quantities import Count, Mm, Ratio

SCATTER, BELIEF = 0.03, 3.0
"""How far careful cutting and reading scatter, in mm, and how many readings' weight that has beside those at hand."""
A_CAUSE, FEW = 8.0, 24.0
"""What every amount costs, in twice the log of the odds, and what besides, over the number of slots read.

Worked out by trial: of boards with nothing but scatter of 0.01 to 0.15 mm at most 1 in 100 get a cause (3 to 5 in 100
where only three or four slots were read and scatter by 0.15 mm).
"""
WORTH_TELLING = 0.03
"""A cause that puts no slot out by more than this, in mm, is not told."""
NOTHING = "nothing systematic"
ZERO, SCALE = "the zero is off the nut line", "the scale is stretched or shrunk"
ZERO_AND_SCALE = "the zero is off, and the scale is stretched or shrunk"
SLIP, ZERO_AND_SLIP = "the index slipped once", "the zero is off, and the index slipped once"
ONE_SLOT = "one slot is out of its place"
RULE_OF_18 = "cut by the rule of 18"
MOST = 2
"""Amounts of one cause."""
EIGHTEENTH = 17 / 18
"""What the rule of 18 leaves of the string at each fret."""


@dataclass(frozen=True)
class Cause:
    """What explains the errors: `offset` of the zero, `stretch` as a fraction of the length, `slip` from `slip_fret`
    on.

    With `alone` the slip is that of the one slot `slip_fret`. `left` is the root mean square, in mm, of what is not
    explained, and `explained` what it puts each slot out by.
    """

    name: str
    offset: Mm
    stretch: Ratio
    slip: Mm
    slip_fret: Count
    alone: bool
    left: Mm
    explained: FloatArray

    @property
    def by_rule_of_18(self) -> bool:
        """Whether the board was laid out by the rule of 18."""
        return self.name.startswith(RULE_OF_18)


@dataclass(frozen=True)
class _Candidate:
    """A cause to try: a known pattern, columns with an amount each, and how many causes like it there are."""

    name: str
    known: FloatArray
    columns: FloatArray
    roles: tuple[str, ...]
    freedoms: int
    among: int = 1
    fret: int = 0


def likely_cause(frets: FloatArray, wanted: FloatArray, error: FloatArray, scale: Mm = float("nan")) -> Cause:
    """The simplest cause that explains the errors of slots (mm, positive toward the bridge), or that there is none.

    Each is a least-squares fit. `scale` is the scale's length if the slots are to be in twelve equal steps: only
    then is the rule of 18 tried. Source: G. Schwarz, "Estimating the dimension of a model", Annals of Statistics 6
    (1978); the scatter is taken to be that of careful work unless the readings say otherwise.
    """
    candidates = _candidates(frets, wanted, scale)
    amounts, explained = _fits(candidates, error)
    best = int(_scores(candidates, explained, error).argmin())
    return _cause(candidates[best], amounts[best], explained[best], error)


def _candidates(frets: FloatArray, wanted: FloatArray, scale: Mm) -> list[_Candidate]:
    found = [*_of_all(wanted, np.zeros_like(wanted), "", 0), *_of_some(frets)]
    if np.isfinite(scale):
        by_rule = scale * (1 - EIGHTEENTH**frets) - wanted
        found += _of_all(wanted, by_rule, RULE_OF_18, 1)
    return [each for each in found if each.freedoms < max(1, len(frets) - 1)]


def _of_all(wanted: FloatArray, known: FloatArray, name: str, freedoms: int) -> Iterator[_Candidate]:
    """Causes that put every slot out by a smooth amount, in addition to a known pattern."""
    one, none = np.ones_like(wanted), np.zeros((len(wanted), 0))
    with_ = f"{name}, and " if name else ""
    yield _Candidate(name or NOTHING, known, none, (), freedoms)
    yield _Candidate(with_ + ZERO, known, one[:, None], ("offset",), freedoms + 1)
    yield _Candidate(with_ + SCALE, known, wanted[:, None], ("stretch",), freedoms + 1)
    yield _Candidate(
        with_ + ZERO_AND_SCALE, known, np.stack([one, wanted], axis=1), ("offset", "stretch"), freedoms + 2
    )


def _of_some(frets: FloatArray) -> Iterator[_Candidate]:
    """Causes that put out some slots: all from one on, or one alone."""
    count, one, known = len(frets), np.ones_like(frets), np.zeros_like(frets)
    steps, alone = np.tri(count), np.eye(count)
    for row in range(1, count):
        step, fret = steps[:, row], int(frets[row])
        yield _Candidate(SLIP, known, step[:, None], ("slip",), 1, count - 1, fret)
        both = np.stack([one, step], axis=1)
        yield _Candidate(ZERO_AND_SLIP, known, both, ("offset", "slip"), 2, count - 1, fret)
    for row in range(count):
        yield _Candidate(ONE_SLOT, known, alone[:, row, None], ("slip",), 1, count, int(frets[row]))


def _fits(candidates: Sequence[_Candidate], error: FloatArray) -> tuple[FloatArray, FloatArray]:
    """The amounts of every candidate (candidates, 2), and by how much it explains each slot (candidates, slots)."""
    known = np.stack([each.known for each in candidates])
    columns = np.zeros((*known.shape, MOST))
    for row, each in enumerate(candidates):
        columns[row, :, : len(each.roles)] = each.columns
    amounts = fitted(columns, error - known)
    return amounts, known + (columns @ amounts[..., None])[..., 0]


def _scores(candidates: Sequence[_Candidate], explained: FloatArray, error: FloatArray) -> FloatArray:
    """The remainders measured by the assumed scatter, plus a penalty for each amount and for the number of like
    causes.
    """
    count, freedoms = len(error), np.array([each.freedoms for each in candidates])
    left = BELIEF * SCATTER**2 + ((error - explained) ** 2).sum(axis=1)
    among = np.array([each.among for each in candidates])
    paid = freedoms * (np.log(count) + A_CAUSE + FEW / count) + 2 * np.log(among)
    told = (freedoms == 0) | (np.abs(explained).max(axis=1) >= WORTH_TELLING)
    scores: FloatArray = np.where(told, (count + BELIEF) * np.log(left) + paid, np.inf)
    return scores


def _cause(candidate: _Candidate, amounts: FloatArray, explained: FloatArray, error: FloatArray) -> Cause:
    parts = dict(zip(candidate.roles, amounts.tolist(), strict=False))
    return Cause(
        candidate.name,
        parts.get("offset", 0.0),
        parts.get("stretch", 0.0),
        parts.get("slip", 0.0),
        candidate.fret,
        candidate.name == ONE_SLOT,
        float(np.sqrt(((error - explained) ** 2).mean())),
        explained,
    )
