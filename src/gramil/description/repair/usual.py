"""The base value that says whether an instrument is a guitar that came in."""

from gramil import names as n
from gramil.description.instrument import Instrument
from gramil.description.normal_row import Normal, Values

REPAIR_ROWS: tuple[Normal, ...] = (
    Normal(
        n.repair_described,
        bool,
        "whether it is a guitar that came in, of which only what is given is known",
        ("repair.refret", "repair.nut", "repair.saddle", "repair.reset", "repair.bridge"),
        "it is being built",
    ),
)
"""Beside the plain keys of the table."""


def repair_values(instrument: Instrument) -> Values:
    """The value of `REPAIR_ROWS`."""
    return {n.repair_described: instrument.repair.described}
