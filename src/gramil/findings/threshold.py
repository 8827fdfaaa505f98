"""The one place where a figure is compared with its limits: fine, past one of them, or not judged if one is not known.

A verdict gives its name, the figure by reference and value, its bounds, and what it says. Bounds are made by
`at_most`, `at_least` and `between`, may be added to each other, and may have words of their own (`saying`). A figure
that is nan, infinite or missing is never fine and never a stop: it is *not judged, because ...*.
"""

import math
from dataclasses import dataclass, replace
from typing import Any, Literal

from gramil.findings.finding import SEVERITIES, Finding, Severity
from gramil.reference import Ref, Text

Limit = Ref[Any] | None
"""The figure of a limit; None if it is not a figure, such as nothing left."""

Side = Literal["over", "under"]

ROUNDING = 1e-9
"""What is on a limit is inside it: figures that follow from one another meet it to within this."""
UNKNOWN = "because what it hangs on is not known"
"""Why a figure that is not a number is not judged, if nothing more precise is said."""
MEASURE_PIECE = "Measure the piece, and write its length, width and thickness beside it."
TO_KNOW = "Its card, or `gramil why`, shows what it follows from."
"""What is to be done then, where nothing nearer is said."""


@dataclass(frozen=True)
class Bound:
    """A limit on one side: `limit` is its figure, `value` what that is, `past` how grave it is to be past it.

    `of` is what is compared with it, if not the finding's own figure; `says` and `remedy` replace
    the finding's own if it is passed.
    """

    side: Side
    past: Severity
    limit: Limit
    value: float
    of: float | None
    says: Text = ""
    remedy: Text = ""

    def passed_by(self, value: float) -> bool:
        """Whether the figure compared with it lies past it."""
        weighed = value if self.of is None else self.of
        if self.side == "over":
            return weighed > self.value + ROUNDING
        return weighed < self.value - ROUNDING

    @property
    def known(self) -> bool:
        """Whether there is a limit, and a figure to compare with it; an infinite limit counts: nothing passes it."""
        return not math.isnan(self.value) and (self.of is None or math.isfinite(self.of))


Bounds = tuple[Bound, ...]
"""The limits of one figure; the last is the one that a figure within all of them is shown beside."""


def at_most(
    limit: Limit, value: float, past: Severity = "caution", *, stop: float | None = None, of: float | None = None
) -> Bounds:
    """A limit and its value, which a figure should not exceed; above `stop` it is a stop."""
    return _bounds("over", limit, value, past, stop, of)


def at_least(
    limit: Limit, value: float, past: Severity = "caution", *, stop: float | None = None, of: float | None = None
) -> Bounds:
    """A limit and its value, which a figure should reach; below `stop` it is a stop."""
    return _bounds("under", limit, value, past, stop, of)


def _bounds(side: Side, limit: Limit, value: float, past: Severity, stop: float | None, of: float | None) -> Bounds:
    grave = () if stop is None else (Bound(side, "stop", limit, stop, of),)
    return (*grave, Bound(side, past, limit, value, of))


def saying(bounds: Bounds, says: Text = "", remedy: Text = "") -> Bounds:
    """The same bounds, with words of their own for a figure that passes one of them."""
    return tuple(replace(each, says=says, remedy=remedy) for each in bounds)


def between(least: tuple[Limit, float], most: tuple[Limit, float], past: Severity = "caution") -> Bounds:
    """Two limits, each with its value, between which a figure should lie."""
    return at_least(*least, past) + at_most(*most, past)


def judged(name: str, figure: Ref[Any], value: float | None, bounds: Bounds, says: Text, remedy: Text = "") -> Finding:
    """The verdict on a figure by its value; the gravest bound that it passes counts.

    The remedy is given only if something is to be mended, that is, past a bound.
    """
    if value is None or not math.isfinite(value) or not all(bound.known for bound in bounds):
        return not_judged(name, figure)
    passed = [bound for bound in bounds if bound.passed_by(value)]
    if not passed:
        return Finding(name, "fine", figure, value, bounds[-1].limit, says)
    worst = min(passed, key=lambda bound: SEVERITIES.index(bound.past))
    return Finding(name, worst.past, figure, value, worst.limit, worst.says or says, worst.remedy or remedy)


def not_judged(
    name: str, figure: Ref[Any], because: Text = UNKNOWN, remedy: Text = TO_KNOW, value: float = math.nan
) -> Finding:
    """A figure that is not judged, and what would let it be; `because` is a clause that begins with that word.

    `value` is the figure, if that is known and only its limit is not.
    """
    return Finding(name, "not judged", figure, value, None, because, remedy)
