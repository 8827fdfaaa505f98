"""Figures in the maker's unit, or in the one that this browser was swapped to."""

from gramil import names as n
from gramil.bench.sessions import Session
from gramil.graph import Figures
from gramil.measure import LengthUnit
from gramil.show import Shower


def shower_for(session: Session, figures: Figures) -> Shower:
    """How to show an instrument's figures to this browser."""
    own: LengthUnit = figures[n.instrument_units]
    return Shower(figures, "in" if session.unit == "in" else "mm" if session.unit == "mm" else own)
