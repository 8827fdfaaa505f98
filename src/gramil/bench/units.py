"""Figures in the maker's unit, or in the one that this browser was swapped to."""

from gramil import names as n
from gramil.bare_numbers import length_unit
from gramil.bench.sessions import Session
from gramil.formatter import Formatter
from gramil.graph import Figures
from gramil.measure import LengthUnit


def formatter_for(session: Session, figures: Figures) -> Formatter:
    """How to show an instrument's figures to this browser."""
    own: LengthUnit = figures[n.instrument_units]
    return Formatter(figures, length_unit(session.unit, own))
