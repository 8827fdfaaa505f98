"""The instrument as the maker writes it, as a whole: one class for each table, one field for each key.

A new table is a class in the `tables.py` of its subject and a field of `Instrument`; its plain keys become base values
by themselves (`base.py`), and the page of keys is made from their descriptions (`keys.py`).
"""

from typing import Literal

from pydantic import Field

from gramil.description.board.tables import Binding, Board, Markers, Nut, Scale, Slots, WireChoice
from gramil.description.body.bevel_table import BevelTable
from gramil.description.body.cutaway_table import CutawayTable
from gramil.description.body.opening_tables import OpeningTable, PortTable, Rosette, Soundhole
from gramil.description.body.tables import Body, BraceTable, BridgePlate, EdgeBinding
from gramil.description.fields import given
from gramil.description.instrument_table import InstrumentTable
from gramil.description.neck.carve_table import Carve
from gramil.description.neck.tables import Head, Heights, Neck, Top
from gramil.description.repair.tables import Repair
from gramil.description.strings.tables import MOST_STRINGS, Bridge, Course, Intonation, Saddle, Strings
from gramil.description.table import Table
from gramil.description.work_table import WorkTable


class Instrument(Table):
    """A whole description of an instrument."""

    gramil: Literal[1] = given("version of this form of description: 1")
    instrument: InstrumentTable
    scale: Scale
    nut: Nut
    bridge: Bridge
    board: Board
    binding: Binding = Field(default_factory=Binding)
    slots: Slots = Field(default_factory=Slots)
    wire: WireChoice
    strings: Strings
    course: tuple[Course, ...] = Field(default=(), max_length=MOST_STRINGS)
    markers: Markers = Field(default_factory=Markers)
    neck: Neck = Field(default_factory=Neck)
    carve: Carve = Field(default_factory=Carve)
    heights: Heights = Field(default_factory=Heights)
    intonation: Intonation = Field(default_factory=Intonation)
    saddle: Saddle = Field(default_factory=Saddle)
    head: Head = Field(default_factory=Head)
    top: Top = Field(default_factory=Top)
    body: Body = Field(default_factory=Body)
    cutaway: CutawayTable = Field(default_factory=CutawayTable)
    top_binding: EdgeBinding = Field(default_factory=EdgeBinding)
    back_binding: EdgeBinding = Field(default_factory=EdgeBinding)
    arm_bevel: BevelTable = Field(default_factory=BevelTable)
    rib_bevel: BevelTable = Field(default_factory=BevelTable)
    soundhole: Soundhole = Field(default_factory=Soundhole)
    opening: tuple[OpeningTable, ...] = Field(default=(), max_length=20)
    rosette: tuple[Rosette, ...] = Field(default=(), max_length=50)
    port: tuple[PortTable, ...] = Field(default=(), max_length=10)
    brace: tuple[BraceTable, ...] = Field(default=(), max_length=100)
    bridge_plate: BridgePlate = Field(default_factory=BridgePlate)
    work: WorkTable = Field(default_factory=WorkTable)
    repair: Repair = Field(default_factory=Repair)
