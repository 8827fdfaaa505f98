"""The shop's places and their air, its pieces of wood and where they have lain, and the maker's own woods."""

from typing import Literal, Self

from pydantic import ConfigDict, model_validator

from gramil.description.fields import PIECE_SIZES, Length, Modulus, Number, Words, given, usual
from gramil.description.table import Table
from gramil.description.wood.air_fields import Humidity, Mass, Moisture, Moment, Temperature


class AirTable(Table):
    """How the shop's air is used; what is good for gluing stands in the limits."""

    gluing_place: Words | None = usual(None, "the first place", "name of the place where gluing is done")
    finishing_place: Words | None = usual(None, "where gluing is done", "name of the place where finishing is done")
    outlook_days: Number = usual(
        7.0, "common practice", "days before now whose mean the air is taken to keep", gt=0, le=366
    )


class ReadingRow(Table):
    """One reading of air."""

    at: Moment = given("when it was read")
    temperature: Temperature = given("temperature")
    humidity: Humidity = given("relative humidity")


class Outlook(Table):
    """Air that a place is expected to have."""

    temperature: Temperature = given("temperature")
    humidity: Humidity = given("relative humidity")


class PlaceTable(Table):
    """A place where wood lies, with air of its own."""

    name: Words = given("what it is called")
    log: Words | None = usual(None, "none", "data logger's CSV beside this file; `gramil air log` writes it")
    readings: tuple[ReadingRow, ...] = usual(
        (), "none", "readings typed in: { at = ..., temperature = ..., humidity = ... }", max_length=10_000
    )
    room: Number | None = usual(None, "not known", "volume of air in it, m3", gt=0, le=100_000)
    air_changes: tuple[Number, ...] = usual((), "not known", "least and most changes of its air an hour", max_length=2)
    humidifier: Number = usual(0.0, "none", "water that a humidifier puts into its air in an hour, g", ge=0, le=100_000)
    dehumidifier: Number = usual(0.0, "none", "water that a dryer takes out of its air in an hour, g", ge=0, le=100_000)
    air_from: Words | None = usual(None, "not known", "name of the place whose air leaks in")
    outlook: Outlook | None = usual(
        None, "the mean of its last days", "air that it is going to have: { temperature = ..., humidity = ... }"
    )

    @model_validator(mode="after")
    def _one_source(self) -> Self:
        if self.log and self.readings:
            raise ValueError("give either log or readings, not both")
        if self.air_changes and (len(self.air_changes) != 2 or not 0 <= self.air_changes[0] <= self.air_changes[1]):
            raise ValueError("air_changes is a least and a most, such as [0.3, 1]")
        return self


class StayRow(Table):
    """Where a piece lay from one moment to another."""

    model_config = ConfigDict(populate_by_name=True)

    place: Words = given("name of the place")
    begins: Moment = given("when it came there", alias="from")
    ends: Moment | None = usual(None, "until the next, or until now", "when it left", alias="until")


class WeighingRow(Table):
    """The mass of a piece at a moment."""

    at: Moment = given("when it was weighed")
    mass: Mass = given("what it weighed")


class PieceTable(Table):
    """A piece of wood whose moisture matters: what it is, where it has lain, and what it weighed."""

    model_config = ConfigDict(populate_by_name=True)

    name: Words = given("what is written on it; the same as a [[blank]] if it is that piece")
    wood: Words = given("kind of wood, by its trade or botanical name, or one of [[wood]]")
    part: Literal["top", "back", "sides", "brace", "lining", "neck", "board", "bridge", "head", "other"] = usual(
        "other", "", "what it is to become"
    )
    instrument: Words | None = usual(None, "any", "name of the instrument that it is kept for", alias="for")
    thickness: Length = given("thickness, which moisture goes through", **PIECE_SIZES["thickness"])
    width: Length | None = usual(None, "not known", "width", **PIECE_SIZES["width"])
    length: Length | None = usual(None, "not known", "length along the grain", **PIECE_SIZES["length"])
    sawn: Literal["quarter", "flat"] = usual("quarter", "common practice", "how it is sawn: what its width is made of")
    sealed: Literal["none", "one face", "both faces"] = usual("none", "most are bare", "faces that let nothing through")
    open_ends: bool = usual(False, "slower: the safe side", "whether its end grain is bare; needs its length")
    lay: tuple[StayRow, ...] = usual(
        (), "not known", "where it lay: { place = ..., from = ..., until = ... }, one after another", max_length=200
    )
    moisture: Moisture | None = usual(None, "settled in its first place", "its moisture when the first stay began")
    dry_mass: Mass | None = usual(None, "not known", "oven-dry mass")
    balance: Mass = usual(0.1, "a kitchen or letter balance", "how finely it was weighed")
    weighings: tuple[WeighingRow, ...] = usual((), "none", "what it weighed: { at = ..., mass = ... }", max_length=500)

    @model_validator(mode="after")
    def _whole(self) -> Self:
        if self.open_ends and self.length is None:
            raise ValueError("open ends need the piece's length")
        if len(self.weighings) == 1 and self.dry_mass is None and self.moisture is None:
            raise ValueError("a weight says its moisture only with dry_mass, or with its moisture at the beginning")
        return self


class WoodTable(Table):
    """A wood of the maker's own, or own figures for a known one."""

    name: Words = given("what it is called here")
    like: Words | None = usual(None, "none", "a known wood whose other figures hold for it")
    group: Literal["softwood", "hardwood", "dense hardwood"] | None = usual(
        None, "that of `like`", "whose diffusion figures hold for it"
    )
    density: Number | None = usual(None, "that of `like`, or missing", "kg/m3 at 12 % moisture", gt=0, le=1500)
    modulus: Modulus | None = usual(None, "that of `like`, or missing", "stiffness along the grain")
    ratio_radial: Number | None = usual(
        None, "that of `like`, or missing", "stiffness across, radial, over that along", gt=0, le=1
    )
    ratio_tangential: Number | None = usual(
        None, "that of `like`, or missing", "stiffness across, tangential, over that along", gt=0, le=1
    )
    strength_across: Number | None = usual(
        None, "that of `like`, or missing", "strength in tension across the grain, MPa", gt=0, le=30
    )
    movement_radial: Number | None = usual(
        None, "that of `like`, or missing", "radial movement for each 1 % of moisture, as a share", gt=0, le=0.02
    )
    movement_tangential: Number | None = usual(
        None, "that of `like`, or missing", "tangential movement for each 1 % of moisture, as a share", gt=0, le=0.02
    )
    source: Words = usual("measured in this shop", "", "where these figures are from")

    @model_validator(mode="after")
    def _of_a_group(self) -> Self:
        if self.like is None and self.group is None:
            raise ValueError("give like = a known wood, or the group whose diffusion figures hold")
        return self
