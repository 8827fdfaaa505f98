"""The table for carving the neck: its back's shape, the heel, how the blank is made up, the truss rod's channel."""

from typing import Annotated, Literal, Self

from pydantic import Field, model_validator

from gramil.description.fields import Length, Number, Whole, Words, usual
from gramil.description.table import Table
from gramil.description.work_table import open_pored

Fret = Annotated[Number, Field(ge=0, le=60)]


class Carve(Table):
    """How the neck is carved and out of what. Depths are under [neck], the head under [head]."""

    wood: Words = usual("maple", "common practice", "what the neck is made of, by the name in the shop's stock")
    exponent_at_1: Number = usual(
        2.0, "an ellipse", "how square the back is at fret 1: 2 an ellipse, less sharper, more squarer", ge=1.2, le=6
    )
    exponent_at_10: Number = usual(2.0, "an ellipse", "how square the back is at fret 10", ge=1.2, le=6)
    blend_exponent: Number = usual(3.0, "a squarer back", "a second shape that may be mixed in", ge=1.2, le=6)
    blend_at_1: Number = usual(0.0, "none of it", "the share of the second shape at fret 1, 0 to 1", ge=0, le=1)
    blend_at_10: Number = usual(0.0, "none of it", "the share of the second shape at fret 10", ge=0, le=1)
    facets: Whole = usual(
        5,
        "two sides, two flats, the back: common practice",
        "flats that the back is planed to, an odd number",
        ge=5,
        le=15,
    )
    stations: tuple[Fret, ...] | None = usual(
        None, "1, 5 and 9: common practice", "list: frets at which the back is gauged", min_length=1, max_length=12
    )
    heel: Literal["stacked", "solid", "built on"] = usual(
        "stacked",
        "common practice",
        "whether the heel is glued up of blocks or sawn from one thick piece; built on: of blocks, foot and all, with "
        "slots for the sides",
    )
    heel_length: Length = usual(
        50.0, "common practice", "from the body to where the back begins to turn down to the heel", gt=0, le=200
    )
    heel_cap: Length = usual(22.0, "common practice", "length of the heel's cap, along the centreline", gt=0, le=150)
    heel_width: Length = usual(28.0, "common practice", "width of the heel's cap at the body", gt=0, le=120)
    tenon: Length = usual(18.0, "common practice", "tenon or dovetail past the body's edge; 0 for a butt", ge=0, le=120)
    slots_apart: Length = usual(
        16.0, "from memory: 12 to 20 mm", "wood left between the slots of a heel that is built on", gt=0, le=60
    )
    slot_room: Length = usual(
        0.2, "a setting", "how much wider such a slot is than the side that goes into it", ge=0, le=5
    )
    foot_toe: Length = usual(
        25.0,
        "from memory: 20 to 40 mm",
        "how far such a heel's foot runs on along the back, past its block",
        ge=0,
        le=150,
    )
    foot_toe_height: Length = usual(
        12.0, "from memory: 10 to 15 mm", "how high that toe stands on the back", gt=0, le=60
    )
    scarf: Literal["on the head", "under the board", "one piece"] = usual(
        "on the head", "common practice", "where the scarf's glue line shows, or head and neck from one piece"
    )
    ears: bool = usual(False, "the blank is as wide as the head", "whether ears are glued on where the head is wider")
    rod_access: Literal["head", "soundhole"] = usual("head", "common practice", "where the truss rod is turned")
    rod_length: Length = usual(
        0.0,
        "as long as there is room for",
        "length of the truss rod's channel, its pocket in the head included",
        ge=0,
        le=900,
    )
    rod_clear: Length = usual(
        10.0, "common practice", "solid wood kept at the channel's blind end when its length is not given", ge=0, le=100
    )
    rod_pocket: Length = usual(
        20.0,
        "common practice",
        "how far the channel runs behind the nut, where the rod is turned at the head",
        ge=0,
        le=80,
    )
    rod_pocket_width: Length = usual(12.0, "common practice", "width of that pocket", gt=0, le=30)

    @model_validator(mode="after")
    def _back_and_heel(self) -> Self:
        if self.facets % 2 == 0:
            raise ValueError("facets is an odd number: one flat lies on the back")
        if self.heel_cap >= self.heel_length:
            raise ValueError("heel_cap is to be less than heel_length: the back turns down between them")
        return self

    @property
    def open_pored(self) -> bool:
        """Whether the neck is of a wood whose pores are filled; lists of operations ask it."""
        return open_pored(self.wood)
