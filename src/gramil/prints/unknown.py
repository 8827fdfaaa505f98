"""Why a figure is not known: the first one upstream that could not be worked out."""

from dataclasses import replace
from typing import Any

import numpy as np

from gramil import names as n
from gramil.findings.finding import Finding
from gramil.findings.threshold import UNKNOWN
from gramil.graph import Figures
from gramil.reason import read_doc
from gramil.reference import name_of

PITCHES = n.strings_frequency.address
NO_TUNING = "because no tuning is given"


def with_reason(finding: Finding, figures: Figures) -> Finding:
    """A finding that is not judged because something it depends on is not known, with what that is in words."""
    if finding.severity == "not judged" and _wants_tuning(finding, figures):
        return replace(finding, says=NO_TUNING)
    if finding.says != UNKNOWN:
        return finding
    root = first_unknown(figures, name_of(finding.figure))
    dimension = figures.graph.dimensions.get(root)
    first = " ".join(read_doc(dimension.what).what.partition(".")[0].split()) if dimension else ""
    return replace(finding, says=f"because this is not known: {first[:1].lower()}{first[1:]}") if first else finding


def _wants_tuning(finding: Finding, figures: Figures) -> bool:
    """Whether it is unknown because pitches are missing: without a pitch, the model calls a string slack."""
    unknown = finding.says == UNKNOWN or "too slack" in str(finding.says)
    return (
        unknown and bool(np.isnan(figures[PITCHES]).any()) and PITCHES in figures.graph.above(name_of(finding.figure))
    )


def first_unknown(figures: Figures, name: str) -> str:
    """The name of the figure that could not be worked out although everything it follows from is known.

    A value that the maker did not give does not count: what is worked out without it may still be known.
    """
    for parameter in figures.graph.parameters(name):
        if parameter in figures.graph.dimensions and _has_unknown(figures[parameter]):
            return first_unknown(figures, parameter)
    return name


def _has_unknown(value: Any) -> bool:
    return isinstance(value, float | np.ndarray) and bool(np.isnan(value).any())
