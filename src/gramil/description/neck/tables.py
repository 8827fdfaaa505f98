"""The tables for how high the strings lie, the neck and its set, the head, and the top under the bridge."""

from typing import Annotated, Literal, Self

from pydantic import Field, model_validator

from gramil.description.fields import Angle, Length, Modulus, Radius, Whole, Words, usual
from gramil.description.table import Table


class Heights(Table):
    """How high the strings lie, strung, with the relief in; heights are to the strings' undersides."""

    action_bass: Length = usual(
        2.4, "common practice, steel strings: 2.2 to 2.6 mm", "bass string over the crown of fret 12", gt=0, le=20
    )
    action_treble: Length = usual(
        1.8, "common practice, steel strings: 1.6 to 2.0 mm", "treble string over the crown of fret 12", gt=0, le=20
    )
    relief: Length = usual(
        0.15,
        "common practice, steel strings: 0.1 to 0.25 mm",
        "gap half way under a straightedge on fret 1 and the fret at the body",
        ge=0,
        le=3,
    )
    nut_over: Literal["fret 1", "the zero line"] = usual(
        "fret 1",
        "where a shop reads it",
        "whether nut_bass and nut_treble are over the crown of fret 1, or over that crown's height at the zero line",
    )
    nut_bass: Length = usual(0.5, "common practice, over fret 1", "bass string over the crown at the nut", ge=0, le=10)
    nut_treble: Length = usual(
        0.4, "common practice, over fret 1", "treble string over the crown at the nut", ge=0, le=10
    )
    dressing_loss: Length = usual(
        0.05, "common practice", "crown height that levelling and dressing the frets take off", ge=0, le=2
    )
    body_rise: Length = usual(
        1.0,
        "common practice: 0.5 to 1.5 mm; a setting",
        "what the action at fret 12 grows by when the pull turns the body and lifts the top, the neck's bend apart",
        ge=0,
        le=5,
    )

    @model_validator(mode="after")
    def _nut_is_given(self) -> Self:
        if self.nut_over == "the zero line" and not {"nut_bass", "nut_treble"} <= self.model_fields_set:
            raise ValueError("give nut_bass and nut_treble: their usual values are for heights over fret 1")
        return self


class Neck(Table):
    """The neck: its size, what it is made of and reinforced with, and how it was set, if it is set already."""

    depth_at_1: Length = usual(
        21.0, "common practice: 20 to 22 mm", "depth of neck and board together at fret 1", gt=0, le=100
    )
    depth_at_10: Length = usual(
        23.0, "common practice: 22 to 25 mm", "depth of neck and board together at fret 10", gt=0, le=100
    )
    modulus: Modulus | None = usual(
        None, "that of its wood", "stiffness of the neck along the grain, measured; its wood is carve.wood"
    )
    heel_depth: Length = usual(
        95.0, "common practice: 90 to 100 mm", "heel from the board's underside to its cap", gt=0, le=200
    )
    straightedge: Length | None = usual(
        None,
        "the neck is not set yet, or set as it should be",
        "neck set, unstrung, straight: how far a straightedge on the frets passes over the bridge's top at the saddle",
        ge=-50,
        le=50,
    )
    bars: Whole = usual(0, "none", "how many stiff bars are let into the neck under the board", ge=0, le=6)
    bar_width: Length = usual(3.2, "common practice", "width of a bar", gt=0, le=20)
    bar_depth: Length = usual(9.5, "common practice", "depth of a bar", gt=0, le=40)
    bar_modulus: Modulus = usual(120_000.0, "from memory: carbon rod, 110 to 140 GPa", "stiffness of a bar")
    rod: Literal["none", "one way", "two way"] = usual(
        "two way", "common practice, steel strings", "truss rod: none, one that only bends back, or one that does both"
    )
    rod_width: Length = usual(6.0, "common practice", "width of the truss rod's channel", gt=0, le=20)
    rod_depth: Length = usual(9.5, "common practice", "depth of the truss rod's channel under the board", gt=0, le=40)


Along = Annotated[Length, Field(ge=-500, le=500)]
PostPlaces = Annotated[tuple[Annotated[Length, Field(ge=-200, le=500)], ...], Field(min_length=2, max_length=12)]


class Head(Table):
    """The head, and where the strings go from the nut."""

    angle: Angle = usual(
        0.24434609527920614, "common practice: 12 to 15 degrees", "how far the head leans back from the board", ge=0
    )
    thickness: Length = usual(15.0, "common practice", "thickness of the head with its veneer", gt=0, le=60)
    blank: Length = usual(20.0, "common practice", "thickness of the neck's blank where the scarf is cut", gt=0, le=100)
    veneer: Length = usual(2.0, "common practice", "thickness of the veneer on the head's face", ge=0, le=20)
    veneer_wood: Words | None = usual(None, "not said", "what the head's veneer is made of: for its dust and permits")
    nut_thickness: Length = usual(5.0, "common practice", "thickness of the nut, along the strings", gt=0, le=20)
    post_height: Length = usual(
        7.0,
        "common practice",
        "how high over the head's face the string meets its post; below it, in a slotted head, is negative",
        ge=-40,
        le=40,
    )
    tuners: Literal["upright", "across"] = usual(
        "upright", "most steel strings", "posts through the head's face, or rollers across slots, from the head's sides"
    )
    slot_width: Length = usual(16.0, "common practice", "with rollers: width of the two slots in the head", gt=0, le=60)
    posts_x: PostPlaces | None = usual(
        None,
        "half the posts a side: common practice",
        "list: each string's post along the head from the nut's face, treble first",
    )
    posts_y: PostPlaces | None = usual(
        None, "half the posts a side: common practice", "list: each string's post from the centreline, treble positive"
    )
    hole: Length = usual(10.0, "common practice", "diameter of a tuner's hole", gt=0, le=30)
    outline: tuple[tuple[Along, Along], ...] | None = usual(
        None,
        "or file",
        "list of [along from the nut's face, across], smooth, from the nut's treble end; one half or all round",
        min_length=3,
        max_length=300,
    )
    corners: tuple[int, ...] = usual((), "none", "list: which of these, counted from 1, are corners", max_length=200)
    file: Words | None = usual(None, "or outline", "a .dxf or .svg drawing of the outline beside this file")
    layer: str = usual("", "the whole drawing", "layer (or name of a shape) of the drawing that holds the outline")
    length: Length | None = usual(
        None, "as the drawing's units say", "real length of the drawn outline along the centreline", gt=0, le=500
    )

    @model_validator(mode="after")
    def _one_outline(self) -> Self:
        if self.outline is not None and self.file is not None:
            raise ValueError("give one of outline and file: each is the whole outline")
        if self.file is None and (self.length is not None or self.layer):
            raise ValueError("length and layer go with file; points are in true size")
        return self


class Top(Table):
    """The top under the bridge, as far as the neck's set needs it, and what its dome does in other air."""

    radius: Radius = usual(7620.0, "common practice: 25 ft", 'radius of its dome along the centreline, or "flat"')
    thickness: Length = usual(2.8, "common practice, steel strings", "thickness of the top", gt=0, le=10)
    edge_thickness: Length | None = usual(
        None, "as in its middle", "thickness of the top at its rim, where it is worked thinner there", gt=0, le=12
    )
    edge_run: Length = usual(
        60.0,
        "from memory: over the linings and a third of the way in",
        "with edge_thickness: how far in from the outline it is worked thinner to the rim",
        gt=0,
        le=300,
    )
    length: Length | None = usual(
        None,
        "the described body's own; 490 mm without one: common practice",
        "length of the body on the centreline, from the neck's joint to the tail",
        gt=0,
        le=1500,
    )
    rise: Length | None = usual(
        None,
        "from the dome's radius",
        "how far the top stands over its rim at the saddle, if measured",
        ge=-20,
        le=60,
    )
    wood: Words = usual("Sitka spruce", "common practice", "what the top is made of; it is taken to be quartersawn")
    brace_wood: Words = usual(
        "Sitka spruce",
        "common practice",
        "what its braces are taken to be made of, for what its dome does in other air",
    )
    brace_width: Length = usual(
        8.0, "common practice", "width of its braces that run across, where no brace is described", gt=0, le=40
    )
    brace_height: Length = usual(
        12.0, "common practice", "height of its braces that run across, where no brace is described", gt=0, le=60
    )
    brace_spacing: Length = usual(
        90.0, "common practice", "how far its braces are apart, where no brace is described", gt=0, le=600
    )
