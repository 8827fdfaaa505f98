"""The verdict on a ledge for a binding, the board's and the body's alike: how far the binding stands proud of it."""

from typing import Any

from gramil import names as n
from gramil.findings.finding import Finding
from gramil.findings.threshold import at_least, at_most, judged, not_judged
from gramil.quantities import Mm
from gramil.reference import Ref

OTHER = "Another bearing, or binding of another thickness."


def standing_proud(name: str, figure: Ref[Any], proud: Mm, pair: str, least: Mm, most: Mm) -> Finding:
    """A finding on how far the strips stand proud with the named pair of cutter and bearing."""
    return judged(
        name,
        figure,
        proud,
        at_least(n.limit_binding_proud_least, least, "note", stop=0.0) + at_most(n.limit_binding_proud_most, most),
        f"How far binding and purfling stand proud with the nearest pair on hand, {pair}.",
        OTHER,
    )


def no_cutters(name: str, figure: Ref[Any], inset: Mm) -> Finding:
    """Not judged, because the shop lists nothing to cut a ledge with; `inset` is what is wanted."""
    because = "because the shop lists no bearing-guided cutter"
    return not_judged(name, figure, because, "List the cutters with their bearings.", inset)


def no_pair(name: str, figure: Ref[Any], inset: Mm) -> Finding:
    """A stop: no bearing on hand is smaller than its cutter, so none leaves a ledge; `inset` is what is wanted."""
    says = "No cutter on hand leaves a ledge with any of its bearings: they are as large as it is."
    return Finding(name, "stop", figure, inset, None, says, OTHER)
