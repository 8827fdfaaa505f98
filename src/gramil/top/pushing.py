"""A push on the strung guitar, by the model and by the dial gauge: how stiff it is, over what it is solved to be."""

import math
from dataclasses import dataclass

import numpy as np

from gramil.description.wood.timbers import Push
from gramil.physics.arrays import FloatArray
from gramil.physics.plates.loads import spread
from gramil.physics.plates.surety import within
from gramil.quantities import Mm, Newton, Radians, Ratio
from gramil.top.braced import Solved

OWNS = ("push_",)
ALONG, ACROSS = 4.0, 15.0
"""Half of what the weight stands on, along and across, about the middle of the saddle, mm."""
WEIGHED = 0.01
"""How far off a weight may be, a share."""


@dataclass(frozen=True)
class PushCompared:
    """What a weight on the saddle gave by the gauge (`given`) and by the model (`solved`, off by `solved_within`, from
    `least` to `most` by what the woods may be); `factor` is how many times as stiff it was as solved, off by
    `factor_within`, and `turn` how far the bridge turns under the strings if all of it is so."""

    name: str
    given: Mm
    solved: Mm
    solved_within: Mm
    least: Mm
    most: Mm
    factor: Ratio
    factor_within: Ratio
    turn: Radians
    turn_within: Radians


def push_list(
    timber_pushes: tuple[Push, ...],
    braced_quick: tuple[Solved, ...],
    braced_final: tuple[Solved, ...],
    pulled_spread: Ratio,
) -> tuple[PushCompared, ...]:
    """Each push on the strung guitar beside the same push on the solved top.

    Method: the weight spread over the middle of the saddle, the top read there; strain is as its load, so that the
    strings' own pull does not matter. Errors of gauge, weight, mesh and model are put together as independent.
    Source: common practice; the rim is held in the model and should be held on the bench.
    """
    return tuple(
        _push_told(push, quick, final, pulled_spread)
        for quick, final in zip(braced_quick, braced_final, strict=False)
        for push in timber_pushes
    )


def _push_told(push: Push, quick: Solved, final: Solved, spread_of_wood: Ratio) -> PushCompared:
    coarse, solved = (push.force * _gives(each) for each in (quick, final))
    off, factor, turn = float(within(coarse, solved)), solved / push.given, final.moved.turn
    own = math.hypot(push.gauge / push.given, WEIGHED)
    share = math.hypot(own, off / solved)
    least, most = solved / (1 + spread_of_wood) - off, solved / (1 - spread_of_wood) + off
    return PushCompared(push.name, push.given, solved, off, least, most, factor, factor * share,
                    turn / factor, turn / factor * share)  # fmt: skip


def _load(top: Solved, force: Newton) -> FloatArray:
    corners = np.array([(-ALONG, -ACROSS), (ALONG, -ACROSS), (ALONG, ACROSS), (-ALONG, ACROSS)])
    return spread(top.whole.mesh, corners + np.array([top.braced.saddle, 0.0]), (0.0, 0.0, -force))


def _gives(top: Solved) -> float:
    """How far the saddle gives under one newton on its middle, mm, the rim held."""
    moves = top.whole.under(_load(top, 1.0))
    (lift,) = top.read_at([(top.braced.saddle, 0.0)]) @ moves[: top.whole.sheet.size]
    return -float(lift)
