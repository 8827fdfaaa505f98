"""Verdicts on gaps: how near a hole in the top, or a port in a side, comes to what lies round it."""

from typing import Any

from gramil.findings.finding import Findings
from gramil.findings.threshold import at_least, judged
from gramil.parts.opening_records import OpeningGap
from gramil.quantities import Mm
from gramil.reference import Ref, Text


def kept_clear(
    gaps: tuple[OpeningGap, ...], of: Any, limit: tuple[Ref[Any], Mm], says: str, remedy: Text, stop: float | None = 0.0
) -> Findings:
    """One verdict for each gap, which should be at least the limit.

    Less than `stop` is a stop; with None no gap is one. `says` has a place for what comes near, and one for what it
    comes near to.
    """
    return tuple(
        judged(
            f"{each.name} and {each.to}",
            of[each.name].room,
            each.room,
            at_least(*limit, stop=stop),
            says.format(each.name, each.to),
            remedy,
        )
        for each in gaps
    )
