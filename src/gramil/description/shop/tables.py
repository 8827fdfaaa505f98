"""The shop as the maker writes it: what is on hand, its measured sizes, and the limits that this maker overrides."""

import math
from typing import TYPE_CHECKING, Annotated, Any, Literal, Self

from pydantic import ConfigDict, Field, create_model, model_validator

from gramil.description.fields import (
    PIECE_SIZES,
    Angle,
    Colour,
    Day,
    Length,
    Number,
    Paper,
    Radius,
    Whole,
    Words,
    given,
    usual,
)
from gramil.description.shop.limits import LIMITS, Limit
from gramil.description.table import Table
from gramil.description.wood.tables import AirTable, PieceTable, PlaceTable, WoodTable
from gramil.description.wood.tried_tables import FinishedTable, PushedTable, TappedTable
from gramil.layers import LAYERS
from gramil.paper_sizes import for_sheets

if TYPE_CHECKING:
    LayerName = str
else:
    LayerName = Literal[tuple(LAYERS)]


class ShopTable(Table):
    """The shop as a whole, and how it makes templates."""

    name: Words = given("what the shop is called")
    units: Literal["mm", "in"] = given("unit of bare numbers in this file")
    temperature: Literal["C", "F"] = usual(
        "C", "common practice", "unit in which temperatures are shown, and read at the bench where none is typed"
    )
    paper: Paper = usual("a4", "the usual sheet", "paper that templates are printed on")
    sheet_paper: Paper = usual(
        "", "that of the templates, or what a desk printer takes", "paper that sheets and the build book are printed on"
    )
    template_pin: Length = usual(4.0, "common practice", "diameter of the index pin", gt=0, le=30)
    template_thickness: Length = usual(
        6.0, "common practice", "thickness of the index template under the blank", gt=0, le=50
    )
    pin_clearance: Length = usual(
        0.03, "common practice: 0.02 to 0.05 mm", "how much wider than the pin a notch is", ge=0, le=1
    )
    laser_kerf: Length = usual(
        0.15, "common practice", "what the machine that cuts templates burns or mills away", ge=0, le=5
    )
    laser_kerf_in: Literal["the drawing", "the machine"] = usual(
        "the drawing", "common practice", "who allows for that: its drawings, or the machine's own settings"
    )
    router_kerf: Length = usual(
        0.0, "none: parts are cut by hand", "what the machine that cuts parts and moulds mills away", ge=0, le=50
    )
    router_kerf_in: Literal["the drawing", "the machine"] = usual(
        "the machine", "common practice", "who allows for that: its drawings, or the machine's own settings"
    )
    allowance_side: Length = usual(3.0, "common practice", "extra width of a blank on each side", ge=0, le=50)
    allowance_length: Length = usual(10.0, "common practice", "extra length of a blank", ge=0, le=200)

    @property
    def paper_of_sheets(self) -> str:
        """The paper of sheets, labels and lists: the one given, else that of the templates, or what a desk printer
        takes.
        """
        return self.sheet_paper or for_sheets(self.paper, self.units)


class WireTable(Table):
    """Fret wire, measured, not from a packet."""

    name: Words = given("what it is called here")
    crown_width: Length = given("width of the crown", gt=0, le=10)
    crown_height: Length = given("height of the crown over the board", gt=0, le=5)
    tang_thickness: Length = given("thickness of the tang between its beads", gt=0, le=3)
    bead_thickness: Length = given("thickness over the beads", gt=0, le=3)
    tang_depth: Length = given("depth of the tang under the crown", gt=0, le=6)
    on_hand: Length = usual(0.0, "none", "length of it on hand", ge=0, le=1e6)


class SawTable(Table):
    """A saw for fret slots."""

    name: Words = given("what it is called here")
    kerf: Length = given("width of the slot that it cuts, measured in a test cut", gt=0, le=3)
    cuts: Literal["from above", "face down"] = given("whether it works from above, or the board lies on its face")
    rides_arch: bool = usual(False, "most do not", "whether its depth stop follows an arched face (a hand saw)")
    what: Words = usual("saw", "", "what it is")


class CutterTable(Table):
    """A router cutter that a bearing guides."""

    name: Words = given("what it is called here")
    diameter: Length = given("diameter of the cutter", gt=0, le=100)
    bearings: tuple[Annotated[Length, Field(gt=0, le=100)], ...] = given(
        "diameters of the bearings that fit it", min_length=1, max_length=50
    )


class BlockTable(Table):
    """A sanding block, hollow to a radius."""

    name: Words = given("what it is called here")
    radius: Radius = given('radius of its hollow, or "flat"')


class TemplateTable(Table):
    """An index template on hand."""

    name: Words = given("what it is called here")
    scale: Length = given("scale length that it was made for", gt=0, le=2000)
    frets: Whole = given("how many frets it has notches for", ge=1, le=60)
    pin: Length = given("diameter of the pin that its notches fit", gt=0, le=30)


WITHOUT_CONSTANT = ("mould", "side form", "top dish", "back dish", "plate clamp", "go-bars")
"""What jigs are for that hold work and set nothing."""


class JigTable(Table):
    """A jig with its constant: a reference face to the cutter's near side, or a blade to its pin."""

    model_config = ConfigDict(populate_by_name=True)

    name: Words = given("what it is called here")
    purpose: Words = given('operation that it serves: "taper", "slots" or another', alias="for")
    constant: Length = usual(
        0.0,
        "a mould, form or dish has none",
        "its constant; for slots, pin less blade along the board, from nut to tail positive",
        ge=-2000,
        le=2000,
    )
    checked: Day | None = usual(None, "never checked", "day on which the constant was last measured")
    serves: tuple[Words, ...] = usual(
        (), "any, or those of its radius", "list: the instruments for whose outline it was made", max_length=200
    )
    radius: Radius | None = usual(None, "serves any radius", "of a dish, the radius that it was made to")

    @model_validator(mode="after")
    def _has_its_constant(self) -> Self:
        if "constant" not in self.model_fields_set and self.purpose not in WITHOUT_CONSTANT:
            raise ValueError(f"a jig for {self.purpose} has a constant: measure it, and give it here")
        return self


class BlankTable(Table):
    """A piece of wood in stock."""

    name: Words = given("what is written on it")
    wood: Words = given("what it is")
    length: Length = given("length, along the grain", **PIECE_SIZES["length"])
    width: Length = given("width", **PIECE_SIZES["width"])
    thickness: Length = given("thickness", **PIECE_SIZES["thickness"])
    count: Whole = usual(1, "one piece", "how many of them are alike", ge=0, le=10000)


class LayerTable(Table):
    """How a layer stands in the files that a machine cuts by, DXF and SVG; layers that are not named stay as usual."""

    name: LayerName = given("which layer of the drawings")
    colour: Colour = given("its colour, which tells a machine what to do with its lines")
    weight: Length = usual(
        0.0, "the layer's own weight", "how thick its lines are; DXF has the nearest that it knows", ge=0, le=2.11
    )


def _limit_field(limit: Limit) -> Any:
    kind = {"mm": Length, "rad": Angle}.get(limit.unit, Number)
    shown = (
        f"{math.degrees(limit.value):g} degrees" if limit.unit == "rad" else f"{limit.value:g} {limit.unit}".rstrip()
    )
    what = f"{limit.what}; {shown}"
    return (kind | None, usual(None, limit.origin, what, ge=-1 if limit.value < 0 else 0, le=1000))


LimitsTable: type[Table] = create_model(
    "LimitsTable",
    __base__=Table,
    __doc__="Practice limits that this maker overrides.",
    **{name: _limit_field(limit) for name, limit in LIMITS.items()},
)
"""One optional key a limit of `data/limits.toml`."""


class Shop(Table):
    """A whole description of a shop."""

    gramil: Literal[1] = given("version of this form of description: 1")
    shop: ShopTable
    wire: tuple[WireTable, ...] = Field(default=(), max_length=500)
    saw: tuple[SawTable, ...] = Field(default=(), max_length=500)
    cutter: tuple[CutterTable, ...] = Field(default=(), max_length=500)
    block: tuple[BlockTable, ...] = Field(default=(), max_length=500)
    template: tuple[TemplateTable, ...] = Field(default=(), max_length=500)
    jig: tuple[JigTable, ...] = Field(default=(), max_length=500)
    blank: tuple[BlankTable, ...] = Field(default=(), max_length=5000)
    layer: tuple[LayerTable, ...] = Field(default=(), max_length=len(LAYERS))
    air: AirTable = Field(default_factory=AirTable)
    place: tuple[PlaceTable, ...] = Field(default=(), max_length=50)
    wood: tuple[WoodTable, ...] = Field(default=(), max_length=500)
    piece: tuple[PieceTable, ...] = Field(default=(), max_length=5000)
    tapped: tuple[TappedTable, ...] = Field(default=(), max_length=5000)
    pushed: tuple[PushedTable, ...] = Field(default=(), max_length=5000)
    finished: tuple[FinishedTable, ...] = Field(default=(), max_length=500)
    limits: LimitsTable = Field(default_factory=LimitsTable)  # type: ignore[valid-type]  # made above, from data

    @property
    def glued_in(self) -> str:
        """The place where gluing is done: the one named, or else the first; empty if there is none."""
        return self.air.gluing_place or next((each.name for each in self.place), "")
