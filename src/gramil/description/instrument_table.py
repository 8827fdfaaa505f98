"""The table of the instrument as a whole: its name, its unit, its hand, and how it is built."""

from typing import Literal

from gramil.description.fields import Words, given, usual
from gramil.description.table import Table


class InstrumentTable(Table):
    """The instrument as a whole."""

    name: Words = given("what the instrument is called; it stands on every drawing")
    units: Literal["mm", "in"] = given("unit of bare numbers in this file, and of what is shown first")
    handed: Literal["right", "left"] = usual("right", "most are", "which hand plucks the strings")
    build: Literal["neck to body", "on the neck"] = usual(
        "neck to body",
        "common practice, steel strings",
        "the neck is joined to a closed body, or the body is built on the neck, its sides let into the heel",
    )
