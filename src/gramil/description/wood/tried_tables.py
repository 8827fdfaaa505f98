"""What a maker has tried on a piece of wood, or knows of a finished top: rows of the shop's description."""

from typing import Literal, Self

from pydantic import ConfigDict, model_validator

from gramil.description.fields import PIECE_SIZES, Angle, Length, Number, Words, given, usual
from gramil.description.table import Table
from gramil.description.wood.air_fields import Mass, Moisture, Moment

NOTE = {"gt": 5, "le": 5000}
"""Between which a note of a board or a bar lies, Hz."""


class TappedTable(Table):
    """A piece of wood tapped free, or pushed on two supports: its stiffness is then its own and not a handbook's."""

    model_config = ConfigDict(populate_by_name=True)

    name: Words = given("what is written on the piece")
    wood: Words = given("kind of wood, for what no note tells")
    part: Literal["top", "brace"] = usual("top", "most are tops", "what it is to become")
    instrument: Words | None = usual(None, "none yet", "name of the instrument that it is for", alias="for")
    length: Length = given("length along the grain", **PIECE_SIZES["length"])
    width: Length = given("width", **PIECE_SIZES["width"])
    thickness: Length = given("thickness, the way that it bends", **PIECE_SIZES["thickness"])
    mass: Mass = given("what it weighs")
    moisture: Moisture | None = usual(None, "settled in the air for gluing", "its moisture when it was tried")
    at: Moment | None = usual(None, "not said", "when it was tried")
    along: Number | None = usual(None, "not tapped", "note, Hz, with two lines at rest across the grain", **NOTE)
    across: Number | None = usual(None, "not tapped", "note, Hz, with two lines at rest along the grain", **NOTE)
    twist: Number | None = usual(None, "not tapped", "note, Hz, with a cross at rest", **NOTE)
    span: Length | None = usual(
        None, "not pushed", "between two supports that it lies on, along the grain", gt=0, le=5000
    )
    weight: Mass | None = usual(None, "not pushed", "weight laid on its middle")
    given: Length | None = usual(None, "not pushed", "how far it gives under that", gt=0, le=100)

    @model_validator(mode="after")
    def _tells(self) -> Self:
        notes = [each for each in (self.along, self.across, self.twist) if each is not None]
        push = (self.span, self.weight, self.given)
        if any(each is not None for each in push) and None in push:
            raise ValueError("a push is span, weight and given together")
        if self.span is not None and self.span > self.length:
            raise ValueError("the supports are farther apart than the piece is long")
        if self.part == "brace" and self.along is None and self.span is None:
            raise ValueError("a bar tells its stiffness by its note along the grain, or by a push")
        if self.part == "top" and len(notes) < 2 and self.span is None:
            raise ValueError("a board tells by two notes at least (along or across, and twist), or by a push")
        return self


class PushedTable(Table):
    """A push on a strung guitar: a weight on its saddle, and how far a dial gauge beside it says that it gave."""

    model_config = ConfigDict(populate_by_name=True)

    name: Words = given("what it is called here: Tarn, first week")
    instrument: Words = given("name of the instrument that was pushed", alias="for")
    weight: Mass = given("weight laid on the middle of the saddle, the rim held", gt=0)
    given: Length = given("how far the saddle gave under it, by a dial gauge", gt=0, le=20)
    gauge: Length = usual(0.01, "common practice: a division of a dial gauge", "how far off that may be", ge=0, le=1)
    at: Moment | None = usual(None, "not said", "when it was pushed")


class FinishedTable(Table):
    """A finished top of one's own, to set new ones beside: which instrument it is, and what came of it."""

    name: Words = given("what it is called here: number 12")
    instrument: Words = given("name of the instrument in the store, or of its description's file beside this one")
    turn: Angle | None = usual(None, "not measured", "how far the bridge turned when it was strung")
    first: Number | None = usual(None, "not measured", "the strung top's lowest note of its own, Hz", **NOTE)
    years: Number | None = usual(None, "not said", "years under the strings since", ge=0, le=200)
    words: Words | None = usual(None, "nothing said", "how it aged and how it is liked, in your words")
