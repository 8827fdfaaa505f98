"""The verdict on a ledge for a binding, the board's and the body's alike: how far the binding stands proud of it."""

import math
from typing import Any

from gramil import names as n
from gramil.findings.finding import Finding, Severity
from gramil.quantities import Mm
from gramil.reference import Ref


def standing_proud(names: tuple[str, Ref[Any], str], proud: Mm, least: Mm, most: Mm) -> Finding:
    """A finding from how far the strips stand proud; `names` are the finding's, the figure and the pair's."""
    name, address, pair = names
    short = proud < least
    severity: Severity = "fine"
    if math.isnan(proud) or proud < -1e-9:
        severity = "stop"
    elif proud > most + 1e-9:
        severity = "caution"
    elif short:
        severity = "note"
    return Finding(
        name,
        severity,
        address,
        proud,
        n.limit_binding_proud_least if short else n.limit_binding_proud_most,
        f"How far binding and purfling stand proud with the nearest pair on hand, {pair}.",
        "Another bearing, or binding of another thickness." if severity != "fine" else "",
    )
