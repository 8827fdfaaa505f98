"""The verdict on a ledge for a binding, the board's and the body's alike: how far the binding stands proud of it."""

import math

from gramil.findings.finding import Finding, Severity
from gramil.quantities import Mm


def standing_proud(names: tuple[str, str, str], proud: Mm, least: Mm, most: Mm) -> Finding:
    """A finding from how far the strips stand proud; `names` are the finding's, the figure's address and the pair's."""
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
        "limit_binding_proud_least" if short else "limit_binding_proud_most",
        f"How far binding and purfling stand proud with the nearest pair on hand, {pair}.",
        "Another bearing, or binding of another thickness." if severity != "fine" else "",
    )
