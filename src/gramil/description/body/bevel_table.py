"""The table for a bevel at the body's edge: for the player's arm at the top, for the ribs at the back."""

from typing import Annotated, Literal, Self

from pydantic import Field, model_validator

from gramil.description.fields import Length, Words, usual
from gramil.description.table import Table

MEASURES = ("width", "drop", "length")


class BevelTable(Table):
    """A bevel on the bass side's edge, by three measures; leave the table out for none.

    It lies where the playing arm does: on the bass side, whichever hand plucks. Its two lines leave the edge where it
    begins, are farthest from it in its middle, and run back; between them it is as steep all along.
    """

    width: Length = usual(0.0, "no bevel", "how far in it comes on the plate at its middle, from the side's face", ge=0)
    drop: Length = usual(0.0, "no bevel", "how far down it comes at its middle, from the plate's face", ge=0)
    length: Length = usual(0.0, "no bevel", "its length, round the body's outside", ge=0)
    place: Annotated[Length, Field(ge=-1000, le=1000)] = usual(
        0.0,
        "common practice, from memory",
        "its middle, round the body's outside from where the bass side is widest, toward the tail positive",
    )
    block: Literal["solid", "laminated"] = usual(
        "solid",
        "common practice, from memory",
        "the wood behind it, in the lining's place: sawn from one piece, or bent",
    )
    block_width: Length = usual(
        0.0,
        "0: wide enough for as much to be glued as on the linings",
        "width of that block at its middle, against the side",
        ge=0,
        le=90,
    )
    block_height: Length = usual(
        0.0,
        "0: high enough for as much to be glued as on the linings",
        "its height, from under the plate",
        ge=0,
        le=120,
    )
    layer: Length = usual(2.0, "common practice", "thickness of each layer of a laminated block", gt=0, le=10)
    veneer: Length = usual(
        0.6, "common practice: 0.5 to 0.7 mm", "thickness of the veneer on the bevel; 0 for bare wood", ge=0, le=4
    )
    veneer_wood: Words = usual("maple", "common practice", "what that veneer is made of")
    binding: Literal["stops", "plate", "side", "both"] = usual(
        "stops",
        "common practice, from memory",
        "that edge's binding: it stops at the bevel's ends, or is led along its line on the plate, on the side, or "
        "both",
    )

    @model_validator(mode="after")
    def _together(self) -> Self:
        given = [key for key in MEASURES if getattr(self, key) > 0]
        if given and len(given) < len(MEASURES):
            raise ValueError("give width, drop and length together")
        return self

    @property
    def described(self) -> bool:
        """Whether there is a bevel."""
        return self.width > 0

    @property
    def veneered(self) -> bool:
        """Whether there is a bevel, with veneer on it; lists of operations ask it."""
        return self.described and self.veneer > 0
