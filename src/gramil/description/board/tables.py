"""The tables for the board: its scale, its nut, the board itself with binding and slots, the wire, and the markers."""

from typing import Annotated, Literal, Self

from pydantic import BeforeValidator, Field, model_validator

from gramil.description.board.scala_scale import MOST_NOTES
from gramil.description.fields import (
    Length,
    Modulus,
    Number,
    Place,
    Radius,
    Whole,
    Words,
    given,
    spread_over_ends,
    usual,
)
from gramil.description.table import Table

Degree = Annotated[Number, Field(gt=0, le=100_000)]


class Scale(Table):
    """Scale and frets. Give `length`, or `bass` and `treble` for a fanned board."""

    length: Length | None = usual(
        None, "or bass and treble", "scale length, measured along the centreline", gt=0, le=2000
    )
    bass: Length | None = usual(None, "with treble", "scale length along the outer bass string", gt=0, le=2000)
    treble: Length | None = usual(None, "with bass", "scale length along the outer treble string", gt=0, le=2000)
    square_at: Number | None = usual(
        None, "7 on a fanned board: common practice", "fret square to the centreline, may be fractional", ge=0, le=60
    )
    frets: Whole = given("how many frets", ge=1, le=60)
    join: Number = given("fret at which the neck meets the body, may be fractional", ge=1, le=60)
    temperament: Words = usual(
        "12-equal", "the usual one", '"N-equal", or the name of a Scala .scl file beside the description'
    )
    degrees: tuple[Degree, ...] | None = usual(
        None,
        "as the temperament says",
        "in place of temperament, list: cents of each degree above the open string; at the last they begin again",
        min_length=1,
        max_length=MOST_NOTES,
    )
    zero_fret: bool = usual(False, "most have none", "whether a fret stands at the zero line")

    @model_validator(mode="after")
    def _one_way(self) -> Self:
        outer = (self.bass, self.treble)
        if self.length is not None and outer != (None, None):
            raise ValueError("give either length, or bass and treble, not both")
        if self.length is None and None in outer:
            raise ValueError("length is missing (or both bass and treble, for a fanned board)")
        if self.degrees is not None and "temperament" in self.model_fields_set:
            raise ValueError("give either temperament or degrees, not both")
        return self

    @property
    def fanned(self) -> bool:
        """Whether the outer strings have their own scales."""
        return self.length is None


class Nut(Table):
    """The nut: widths are square to the centreline."""

    width: Length = given("finished width of the board at the zero line", gt=0, le=200)
    spread: Length = given("outer strings, centre to centre, at the nut", gt=0, le=200)
    spacing: Literal["equal gaps", "equal centres"] = usual(
        "equal gaps", "common practice", "whether the gaps between strings or courses are equal, or their centres"
    )
    pair: Length = usual(
        1.9, "common practice: 1.5 to 2.2 mm", "from string to string within a course, at the nut", gt=0, le=10
    )
    pair_by: Literal["centres", "gap"] = usual(
        "centres", "common practice", "what pair is: from centre to centre, or the gap"
    )
    set_forward: Length = usual(
        0.0, "none", "how far the nut's face stands from the zero line toward fret 1", ge=0, le=10
    )
    behind: Length = usual(
        4.0, "common practice", "with a zero fret: how far behind the zero line the nut's face stands", gt=0, le=30
    )


class Arch(Table):
    """Radius of the playing surface at each end of the board."""

    nut: Radius = given('radius at the zero line, or "flat"')
    end: Radius = given('radius at the tail end, or "flat"')


class Board(Table):
    """The fretboard."""

    wood: Words = given("what it is made of, by the name used in the shop's stock")
    width: Length = given("finished width at its station", gt=0, le=200)
    width_at: Place = given('where that width is: "fret 12", "400 mm", or "fret 12 + 5 mm"')
    thickness: Length = given("finished thickness at the crest at the tail end", gt=0, le=30)
    edge_nut_treble: Length | None = usual(None, "as the middle", "thickness at the nut end's treble edge", gt=0, le=30)
    edge_nut_bass: Length | None = usual(None, "as the middle", "thickness at the nut end's bass edge", gt=0, le=30)
    edge_tail_treble: Length | None = usual(
        None, "as the middle", "thickness at the tail end's treble edge, or give the bass one", gt=0, le=30
    )
    edge_tail_bass: Length | None = usual(
        None, "as the middle", "thickness at the tail end's bass edge, or give the treble one", gt=0, le=30
    )
    beyond_last_fret: Length = given("board left past the last fret, on the centreline", gt=0, le=300)
    arch: Annotated[Arch, BeforeValidator(spread_over_ends)] = given(
        '{ nut = radius, end = radius } for a cone, one radius for a cylinder, or "flat"'
    )
    level_underside: bool = usual(
        False, "most are left", "whether the underside is planed until both edges are equally thick all along"
    )
    modulus: Modulus | None = usual(None, "that of its wood", "stiffness of the board along the grain, measured")


class Binding(Table):
    """Binding along the board's edges; leave the table out for an unbound board."""

    thickness: Length = usual(0.0, "unbound", "thickness of the binding, square to the edge", ge=0, le=20)
    purfling: Length = usual(0.0, "none", "thickness of a line inside the binding", ge=0, le=10)
    tail: bool = usual(False, "most end bare", "whether the tail end is bound too")
    wood: Words | None = usual(
        None, "not said: cautions for wood and for plastic", "what it is made of, by its name in the stock; or plastic"
    )
    material: Literal["wood", "plastic"] | None = usual(
        None,
        "by its name: no known wood and none of the shop's is taken for celluloid",
        "whether it is of wood or plastic, where its name does not say: no iron and no flame comes near plastic",
    )


class Slots(Table):
    """The fret slots."""

    bottom: Literal["straight", "follows the arch"] = usual("straight", "any saw cuts it", "shape of the slot's bottom")
    cut: Literal["before arching", "after arching"] = usual(
        "before arching", "common practice", "when the main kerf is cut"
    )
    clearance: Length = usual(
        0.15, "common practice: 0.1 to 0.25 mm", "room left under the tang when the crown is seated", ge=0, le=2
    )
    crest_loss: Length = usual(
        0.2,
        "common practice: 0.1 to 0.3 mm",
        "wood that arching and levelling still take off the crest after slotting",
        ge=0,
        le=2,
    )
    saw: str = usual("", "the best of the shop's", "name of the shop's saw to cut them with")


class WireChoice(Table):
    """Fret wire: one of the shop's by name, or one measured here."""

    use: Words | None = usual(None, "or measured here", "name of a wire in the shop")
    name: Words | None = usual(None, "needed when measured here", "what to call a wire that is measured here")
    crown_width: Length | None = usual(None, "or use", "width of the crown", gt=0, le=10)
    crown_height: Length | None = usual(None, "or use", "height of the crown over the board", gt=0, le=5)
    tang_thickness: Length | None = usual(None, "or use", "thickness of the tang between its beads", gt=0, le=3)
    bead_thickness: Length | None = usual(None, "or use", "thickness over the beads", gt=0, le=3)
    tang_depth: Length | None = usual(None, "or use", "depth of the tang under the crown", gt=0, le=6)
    on_hand: Length = usual(0.0, "none", "length of it in the shop", ge=0, le=1e6)

    @model_validator(mode="after")
    def _one_way(self) -> Self:
        lacking = [key for key in MEASURED if getattr(self, key) is None]
        if self.use is None and lacking:
            raise ValueError("give use = a wire of the shop, or measure one here: missing " + ", ".join(lacking))
        if self.use is not None and len(lacking) < len(MEASURED):
            raise ValueError("give either use = a wire of the shop, or a wire measured here, not both")
        return self


MEASURED = ("name", "crown_width", "crown_height", "tang_thickness", "bead_thickness", "tang_depth")
"""What a wire that is measured in the description must say."""


class Markers(Table):
    """Position markers on the face and dots on the bass edge."""

    frets: tuple[int, ...] | None = usual(
        None, "3, 5, 7, 9, 12, 15, 17, 19: common practice", "frets that carry a marker", max_length=60
    )
    double: tuple[int, ...] | None = usual(None, "12: common practice", "frets that carry two", max_length=60)
    diameter: Length = usual(6.0, "common practice", "diameter of a marker on the face", gt=0, le=30)
    side_diameter: Length = usual(2.0, "common practice", "diameter of a dot on the edge", gt=0, le=10)
    face: bool = usual(True, "steel strings", "whether the face has markers too; false: dots on the bass edge alone")
