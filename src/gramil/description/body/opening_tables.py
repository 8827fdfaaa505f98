"""The tables for what is open in the body: the soundhole, further holes in the top, rings, ports in a side."""

from typing import Annotated, Literal, Self

from pydantic import Field, model_validator

from gramil.description.fields import Angle, Length, Words, given, usual
from gramil.description.table import Table
from gramil.shapes.hole import Hole, Shape, largest_corner

Place = Annotated[Length, Field(ge=-2000, le=2000)]
SOUNDHOLE = "soundhole"
"""What rings go round where they do not say."""
Held = Literal["body", "join", "tail", "saddle"]
HELD = "what it follows: centre is measured from there, toward the tail"


class HoleTable(Table):
    """A hole's place and shape: a circle by its diameter; an oval or a D by its sizes along and across."""

    centre: Place | None = usual(None, "no soundhole", "its centre, from what it is held to")
    diameter: Length | None = usual(None, "no soundhole, or one that is not round", "its diameter", gt=0, le=300)
    held_to: Held = usual("body", "common practice", HELD)
    aside: Place = usual(0.0, "on the centreline", "its centre from the centreline, treble positive")
    shape: Shape = usual("round", "most are", "its shape: an oval is an ellipse, a D is straight toward the neck")
    along: Length | None = usual(None, "as its diameter", "of an oval or a D: its size along the body", gt=0, le=300)
    across: Length | None = usual(None, "as its diameter", "of an oval or a D: its size across", gt=0, le=300)
    corner: Length = usual(6.0, "common practice, from memory", "of a D: radius of its two corners", ge=0, le=100)
    lean: Angle = usual(0.0, "square", "how far it is turned, its treble end toward the tail positive")

    @model_validator(mode="after")
    def _one_shape(self) -> Self:
        sizes = (self.along, self.across)
        if self.shape == "round":
            if any(each is not None for each in sizes):
                raise ValueError('along and across are of an oval or a D: give shape, or for a "round" hole diameter')
        elif self.diameter is not None:
            raise ValueError(f'a hole of shape "{self.shape}" has along and across in place of a diameter')
        elif (self.along is None) != (self.across is None):
            raise ValueError("give along and across together")
        if (self.centre is None) != (not self.described):
            raise ValueError("give centre and diameter together, or centre, along and across")
        self._corner()
        return self

    def _corner(self) -> None:
        if self.shape == "D" and self.along is not None and self.across is not None:
            most = largest_corner(self.along, self.across)
            if self.corner >= most:
                raise ValueError(f"corner is to be less than half of along and of across, {most:g} mm")

    @property
    def described(self) -> bool:
        """Whether there is such a hole; lists of operations ask it."""
        return self.diameter is not None or self.along is not None

    @property
    def hole(self) -> Hole | None:
        """Its curve, or None where there is none."""
        if self.diameter is not None:
            return Hole("round", self.diameter, self.diameter)
        if self.along is None or self.across is None:
            return None
        return Hole(self.shape, self.along, self.across, self.corner if self.shape == "D" else 0.0)


class Soundhole(HoleTable):
    """The soundhole: round by its diameter, or oval or D-shaped; leave the table out for none."""


class OpeningTable(HoleTable):
    """A hole in the top besides the soundhole, a table each."""

    name: Words = given("what it is called")


class Rosette(Table):
    """A ring round the soundhole or another hole in the top, at the same distance from its edge all round."""

    name: Words = given("what it is called")
    round: Words = usual(SOUNDHOLE, "most are", "the hole that it goes round, by its name")
    inner: Length | None = usual(None, "or gap", "its inner diameter, round a circle", gt=0, le=400)
    gap: Length | None = usual(None, "or inner", "from the hole's edge to the ring, round any shape", ge=0, le=100)
    width: Length = given("its width", gt=0, le=60)
    depth: Length = usual(1.5, "common practice", "depth of its channel in the top", gt=0, le=10)

    @model_validator(mode="after")
    def _one_way(self) -> Self:
        if (self.inner is None) == (self.gap is None):
            raise ValueError("give inner, or gap")
        return self


class PortTable(Table):
    """A port in a side, a table each: its place is on the outside of the side laid flat."""

    name: Words = given("what it is called")
    side: Literal["treble", "bass"] = given("side that it is cut in")
    centre: Length = given("its centre, along the side from its middle at the neck", gt=0, le=2000)
    below: Length | None = usual(
        None, "half way down the side", "its centre below the top's edge of the side", gt=0, le=250
    )
    diameter: Length | None = usual(None, "an oval", "its diameter, where it is round", gt=0, le=200)
    along: Length | None = usual(None, "as its diameter", "of an oval: its length along the side", gt=0, le=300)
    across: Length | None = usual(None, "as its diameter", "of an oval: its height", gt=0, le=200)
    patch: Length = usual(
        1.5,
        "common practice, from memory: a veneer or two, their grain across the side's",
        "thickness of the patch glued inside the side round it; 0 for none",
        ge=0,
        le=10,
    )
    patch_reach: Length = usual(
        12.0, "common practice, from memory", "how far the patch reaches past the port all round", ge=0, le=100
    )

    @model_validator(mode="after")
    def _one_shape(self) -> Self:
        if (self.along is None) != (self.across is None):
            raise ValueError("give along and across together")
        if (self.along is None) == (self.diameter is None):
            raise ValueError("give diameter, or along and across")
        return self

    @property
    def hole(self) -> Hole:
        """Its curve on the flat side."""
        if self.along is None or self.across is None:
            return Hole("round", self.diameter or 0.0, self.diameter or 0.0)
        return Hole("oval", self.along, self.across)
