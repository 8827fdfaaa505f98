"""The tables for the body: its outline and sides, the braces and the bridge plate.

A body counts as described once its outline is; without an outline, everything here is ignored.
"""

from typing import Literal, Self

from pydantic import model_validator

from gramil.description.body.opening_tables import Place
from gramil.description.fields import Angle, Length, Radius, Words, given, usual
from gramil.description.table import Table
from gramil.description.work_table import open_pored

HeldTo = Literal["body", "join", "tail", "soundhole", "saddle"]
"""What a feature follows: distances along are from there, toward the tail positive."""
START = 'where its first end is: on "linings", at its "point", or against another brace, by name'


class Body(Table):
    """The body's outline, as stations, points or a drawing, and its sides. Left out, there is no body to judge."""

    outline: tuple[tuple[Place, Place], ...] | None = usual(
        None,
        "or points, or file",
        "list of [distance from the neck end along the centreline, half-width there], the shape's smooth curve",
        min_length=3,
        max_length=200,
    )
    points: tuple[tuple[Place, Place], ...] | None = usual(
        None,
        "or outline, or file",
        "list of [along, across] on one half, in order from the neck end, where the curve turns back on itself",
        min_length=3,
        max_length=500,
    )
    corners: tuple[int, ...] = usual(
        (), "none", "list: which of these, counted from 1, are corners of the outline", max_length=200
    )
    treble_points: tuple[tuple[Place, Place], ...] | None = usual(
        None,
        "as the other half",
        "list of [along, across] on the treble half, where it differs: outline or points then give the bass half",
        min_length=3,
        max_length=500,
    )
    treble_corners: tuple[int, ...] = usual(
        (), "none", "list: which points of the treble half, counted from 1, are its corners", max_length=200
    )
    traced_within: Length | None = usual(
        None,
        "not traced",
        "how near these points come to what was photographed or scanned, where they were traced from that",
        gt=0,
        le=20,
    )
    file: Words | None = usual(None, "or outline, or points", "a .dxf or .svg drawing of it beside this file")
    layer: str = usual("", "the whole drawing", "layer (or name of a shape) of the drawing that holds the outline")
    length: Length | None = usual(
        None, "as the drawing's units say", "real length of the drawn outline along the centreline", gt=0, le=1500
    )
    alike: Length = usual(
        0.5, "half a pencil's line", "how far the halves of a drawing may differ and be made alike", ge=0, le=10
    )
    centreline: Place | None = usual(
        None,
        "the halves are made alike",
        "where a drawing's centreline lies, by the drawing's own y: its halves then differ on purpose, and stay as "
        "drawn, the neck to the left and the treble side up",
    )
    beyond_join: Length = usual(
        0.0, "the body starts at the join", "how far past the fret at the join the outline begins", ge=-100, le=100
    )
    depth_neck: Length = usual(90.0, "common practice", "depth of the sides at the neck, without plates", gt=0, le=250)
    depth_tail: Length = usual(105.0, "common practice", "depth of the sides at the tail, without plates", gt=0, le=250)
    back_radius: Radius = usual(4572.0, "common practice: 15 ft", 'radius of the back\'s dome, or "flat"')
    wall: Length = usual(2.1, "common practice: 1.8 to 2.5 mm", "thickness of the sides", gt=0, le=20)
    back_thickness: Length = usual(
        2.6, "common practice: 2.3 to 2.9 mm, steel strings", "thickness of the back", gt=0, le=10
    )
    side_wood: Words = usual("maple", "common practice", "what back and sides are made of")
    linings_wood: Words | None = usual(None, "not said", "what the linings are made of: for their dust and permits")
    block_wood: Words | None = usual(None, "not said", "what the blocks are made of: for their dust and permits")
    linings: Length = usual(6.0, "common practice", "width of the linings, against the sides", ge=0, le=40)
    linings_height: Length = usual(14.0, "common practice", "height of the linings", ge=0, le=60)
    neck_block: Length = usual(32.0, "common practice", "neck block, along the centreline", gt=0, le=200)
    neck_block_width: Length = usual(75.0, "common practice", "neck block, across", gt=0, le=300)
    tail_block: Length = usual(20.0, "common practice", "tail block, along the centreline", gt=0, le=200)
    tail_block_width: Length = usual(80.0, "common practice", "tail block, across", gt=0, le=300)
    clearance: Length = usual(0.5, "common practice", "room between a brace's end and the linings", ge=0, le=20)
    plate_allowance: Length = usual(6.0, "common practice", "plates larger than the outline all round", ge=0, le=50)
    side_allowance: Length = usual(
        15.0, "common practice", "side blanks longer than the side at each end", ge=0, le=100
    )
    side_over: Length = usual(4.0, "common practice", "side blanks deeper than the side at its deepest", ge=0, le=50)
    mould_wall: Length = usual(60.0, "common practice", "wood of the mould outside the outline", gt=0, le=300)

    @model_validator(mode="after")
    def _one_way(self) -> Self:
        ways = [key for key in ("outline", "points", "file") if getattr(self, key) is not None]
        if len(ways) > 1:
            raise ValueError(f"give one of {' and '.join(ways)}: each is the whole outline")
        if self.file is None and (self.length is not None or self.layer):
            raise ValueError("length and layer go with file; stations and points are in true size")
        if self.traced_within is not None and self.points is None:
            raise ValueError("traced_within goes with points")
        self._treble()
        return self

    def _treble(self) -> None:
        if self.treble_points is not None and self.outline is None and self.points is None:
            raise ValueError("treble_points goes with outline or points for the bass half")
        if self.treble_corners and self.treble_points is None:
            raise ValueError("treble_corners goes with treble_points")
        if self.centreline is not None and self.file is None:
            raise ValueError("centreline goes with file")

    @property
    def described(self) -> bool:
        """Whether there is an outline, and so a body to judge; lists of operations ask it as `body.described`."""
        return any(given is not None for given in (self.outline, self.points, self.file))

    @property
    def open_pored(self) -> bool:
        """Whether back and sides are of a wood whose pores are filled; lists of operations ask it."""
        return open_pored(self.side_wood)


class EdgeBinding(Table):
    """Binding round the body's edge at one plate, with the purfling inside it; leave the table out for a bare edge.

    Sizes are those of the strips as they go in. The line under a binding on the side, if any, is part of its height.
    """

    thickness: Length = usual(0.0, "unbound", "thickness of the binding, in from the side's face", ge=0, le=10)
    height: Length = usual(
        6.0, "common practice: 5.5 to 7 mm", "height of the binding, from the plate's face down the side", gt=0, le=40
    )
    purfling: Length = usual(
        0.0, "none", "width of the lines inside the binding together, on the plate's face", ge=0, le=15
    )
    purfling_depth: Length = usual(
        1.6, "common practice: 1.3 to 2 mm", "depth of the purfling's channel in the plate", gt=0, le=10
    )
    wood: Words = usual("maple", "common practice", "what the binding is made of, by its name in the stock; or plastic")
    material: Literal["wood", "plastic"] | None = usual(
        None,
        "by its name: no known wood and none of the shop's is taken for celluloid",
        "whether it is of wood or plastic, where its name does not say: no iron and no flame comes near plastic",
    )


class BraceTable(Table):
    """A brace. Give `line`, or `station` for one across the body; distances along are from what it is held to."""

    name: Words = given("what it is called")
    plate: Literal["top", "back"] = given("plate that it is glued to")
    held_to: HeldTo = usual("body", "common practice", "what it follows when something moves")
    station: Place | None = usual(None, "or line", "where it crosses the centreline, along")
    lean: Angle = usual(
        0.0, "square across", "with station: its angle from square, treble end toward the tail positive"
    )
    line: tuple[tuple[Place, Place], tuple[Place, Place]] | None = usual(
        None, "or station", "list of two [along, across]: points on its middle line, treble positive"
    )
    start: Words = usual("linings", "most run out", START)
    stop: Words = usual("linings", "most run out", START.replace("first", "second"))
    twin: bool = usual(False, "it stands alone", "whether it has a twin, mirrored across the centreline")
    width: Length = given("its width", gt=0, le=60)
    height: Length = given("its height over the plate, where it is highest", gt=0, le=80)
    ends: Literal["tapered", "scalloped", "square", "tucked"] = usual(
        "tapered", "common practice", "how its ends are worked; tucked ones go through the linings to the side"
    )
    end_height: Length = usual(2.5, "common practice", "its height over the plate at the very ends", ge=0, le=80)
    end_length: Length = usual(45.0, "common practice", "length over which an end is worked down", ge=0, le=400)
    wood: Words = usual("spruce", "common practice", "what it is made of, by the name in the shop's stock")
    crosses: tuple[Words, ...] = usual(
        (),
        "none but its twin",
        'names of braces it is notched into; "bridge plate" where it runs over that',
        max_length=20,
    )

    @model_validator(mode="after")
    def _one_line(self) -> Self:
        if (self.station is None) == (self.line is None):
            raise ValueError("give either line, or station")
        if self.line is not None and self.line[0] == self.line[1]:
            raise ValueError("the two points of line are the same")
        if self.station is not None and {self.start, self.stop} != {"linings"}:
            raise ValueError("a brace given by its station runs to the linings at both ends; give line")
        if self.end_height > self.height:
            raise ValueError("end_height is more than height")
        return self


class BridgePlate(Table):
    """The plate under the bridge, held to the saddle; leave the table out for none."""

    ahead: Place | None = usual(None, "no plate", "from the saddle to its front edge, toward the neck")
    behind: Place | None = usual(None, "no plate", "from the saddle to its back edge, toward the tail")
    length_front: Length | None = usual(None, "no plate", "its front edge, across", gt=0, le=500)
    length_back: Length | None = usual(None, "as the front", "its back edge, across", gt=0, le=500)
    lean: Angle | None = usual(None, "as the bridge lies", "its angle from square, treble end toward the tail positive")
    thickness: Length = usual(2.5, "common practice: 2.3 to 3 mm", "its thickness", gt=0, le=10)
    wood: Words = usual("maple", "common practice", "what it is made of")

    @model_validator(mode="after")
    def _together(self) -> Self:
        needed = (self.ahead, self.behind, self.length_front)
        if None in needed and any(each is not None for each in needed):
            raise ValueError("give ahead, behind and length_front together")
        if self.ahead is not None and self.behind is not None and self.ahead + self.behind <= 0:
            raise ValueError("its back edge comes before its front edge")
        return self

    @property
    def described(self) -> bool:
        """Whether there is a bridge plate; lists of operations ask it."""
        return self.ahead is not None
