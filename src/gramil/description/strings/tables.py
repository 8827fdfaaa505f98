"""The tables for the strings, for what their intonation may use, and for saddle and bridge."""

from typing import Annotated, Literal, Self

from pydantic import Field, model_validator

from gramil.description.fields import (
    Frequency,
    Gauge,
    Length,
    Moves,
    Number,
    Pitch,
    StringMaterial,
    Weight,
    Whole,
    Words,
    given,
    usual,
)
from gramil.description.table import Table

MOST_STRINGS = 12


class Strings(Table):
    """The strings as they lie, from the treble side.

    Lists have one entry for each string; an entry of 0 means: by the model.
    """

    gauges: tuple[Gauge, ...] = given(
        "diameters from treble to bass: text with a unit, or bare inches, as strings are sold",
        min_length=2,
        max_length=MOST_STRINGS,
    )
    tuning: tuple[Pitch, ...] | None = usual(
        None,
        "E4, B3, G3, D3, A2, E2 for six strings; any other number must say",
        'pitches from treble to bass: "E4", "F#2", "Bb3" or "82.4 Hz"',
        max_length=MOST_STRINGS,
    )
    single: bool = usual(
        False,
        "ten strings or more are taken to stand in pairs: each pair is a course",
        "whether each string stands by itself, where there are ten or more and no courses",
    )
    a4: Frequency = usual(440.0, "ISO 16:1975", "what A4 sounds", ge=380, le=500)
    plain: StringMaterial = usual("music wire", "steel strings", "what plain strings are made of")
    core: StringMaterial | None = usual(None, "as the plain strings", "what the cores of wound strings are made of")
    wrap: StringMaterial | None = usual(
        None, "phosphor bronze; silver plated copper over nylon", "what wound strings are wound with"
    )
    wound: tuple[Whole, ...] | None = usual(
        None,
        "steel strings over 0.020 in: common practice; other materials must say",
        "numbers of the strings that are wound",
        max_length=MOST_STRINGS,
    )
    cores: tuple[Length, ...] | None = usual(
        None, "estimated from the gauge", "diameters of the cores of wound strings", max_length=MOST_STRINGS
    )
    weights: tuple[Weight, ...] | None = usual(
        None, "from gauges and materials", 'weights as the packet has them, "0.57 g/m"', max_length=MOST_STRINGS
    )
    stretch: tuple[Annotated[Number, Field(ge=0, le=5000)], ...] | None = usual(
        None,
        "from the material's modulus",
        "measured stretch stiffness: share of pull gained for each unit of strain",
        max_length=MOST_STRINGS,
    )
    bending: tuple[Length, ...] | None = usual(
        None,
        "a plain string's own, a wound one's core",
        "diameters that resist bending, where a measured stretch goes with another one",
        max_length=MOST_STRINGS,
    )


class Course(Table):
    """A course: one string, or two that are stopped together. Without any, each string is a course by itself."""

    strings: tuple[Whole, ...] = given(
        "numbers of its strings as they lie, counted from the treble side", min_length=1, max_length=2
    )


class Intonation(Table):
    """What may be moved to play in tune, and for which frets."""

    nut: Literal["none", "straight", "per string"] = usual(
        "straight", "a nut's face is one line", "how the nut may be set forward when its best place is sought"
    )
    saddle: Literal["straight", "slanted", "per string"] = usual(
        "per string",
        "break points are filed",
        "what the saddle's break points may be when their best places are sought",
    )
    pair: Literal["two break points", "one break point"] = usual(
        "two break points",
        "they are filed string by string",
        "whether the strings of a pair break each in its own place or both in one, where break points are per string",
    )
    nut_forward: Moves | None = usual(
        None,
        "nut.set_forward for every string",
        'how far each break point at the nut stands toward fret 1, or "best"',
    )
    finger_offset: Length = usual(
        0.0,
        "the finger at the fret: the published model's plain case",
        "how far behind the fret a finger presses",
        ge=0,
        le=20,
    )
    from_fret: Whole = usual(1, "common practice", "first fret that counts", ge=1, le=60)
    to_fret: Whole | None = usual(None, "12: common practice", "last fret that counts", ge=1, le=60)
    file_to: Length = usual(0.1, "a setting", "how finely a break point is filed to its place", gt=0, le=2)

    @model_validator(mode="after")
    def _frets_in_order(self) -> Self:
        if self.to_fret is not None and self.to_fret <= self.from_fret:
            raise ValueError("to_fret comes after from_fret: two frets at least")
        return self


class Saddle(Table):
    """The saddle: its blank, its slot, and where each string breaks over it."""

    exposed: Length = usual(
        3.5, "common practice: 3 to 4 mm", "saddle that shows over the bridge, the mean under the strings", gt=0, le=20
    )
    set_back: Moves = usual(
        (),
        '"best": as found best, to what can be filed',
        'how far each break point stands behind the end of its scale, one or one a string, or "best"',
    )
    thickness: Length = usual(3.0, "common practice: 2.5 to 3.2 mm", "thickness of the saddle", gt=0, le=10)
    slot_depth: Length = usual(6.0, "common practice", "depth of its slot in the bridge", gt=0, le=30)
    beyond: Length = usual(8.0, "common practice", "saddle past the outer strings at each end", ge=0, le=40)


class Bridge(Table):
    """The bridge."""

    spread: Length = given("outer strings, centre to centre, at the saddle", gt=0, le=200)
    spacing: Literal["equal centres", "equal gaps"] = usual(
        "equal centres", "common practice", "whether the centres of strings or courses are equally apart, or their gaps"
    )
    pair: Length = usual(
        2.2, "common practice: 1.5 to 2.2 mm", "from string to string within a course, at the saddle", gt=0, le=10
    )
    pair_by: Literal["centres", "gap"] = usual(
        "centres", "common practice", "what pair is: from centre to centre, or the gap"
    )
    thickness: Length = usual(
        9.0, "common practice, steel strings", "thickness at the saddle, on the centreline", gt=0, le=40
    )
    length: Length = usual(152.0, "common practice", "length across the top, wings included", gt=0, le=400)
    width: Length = usual(33.0, "common practice", "width along the strings, at the saddle", gt=0, le=120)
    front: Length = usual(
        9.0, "common practice", "front edge to the middle of the saddle's slot, on the centreline", gt=0, le=60
    )
    wood: Words | None = usual(None, "not said", "what it is made of: for its dust and permits")
    hold: Literal["pins", "tie block"] = usual("pins", "steel strings", "what holds the strings behind the saddle")
    hold_behind: Length = usual(
        13.0,
        "common practice",
        "middle of the saddle's slot to the line of holes (for pins, or the tie block's), on the centreline",
        gt=0,
        le=60,
    )
    hold_line: Literal["along the bridge", "along the saddle"] = usual(
        "along the bridge", "common practice", "what the line of pins runs alongside"
    )
    hold_spread: Length | None = usual(
        None, "as the strings at the saddle", "outer pins (or holes), centre to centre", gt=0, le=200
    )
    hold_below: Length = usual(
        1.0,
        "common practice: ramped holes",
        "how far under the bridge's top the string leaves for the saddle",
        ge=0,
        le=15,
    )
    rows: Literal["one", "two", "staggered"] = usual(
        "one", "common practice", "rows of pins: two in line with their strings, or staggered by equal steps"
    )
    rows_apart: Length = usual(
        7.0, "common practice", "from the line of pins to a second one behind it, along the centreline", gt=0, le=40
    )
    front_row: Literal["treble string", "bass string"] = usual(
        "treble string", "a choice", "with two rows: which string of a pair has its pin in front"
    )
    pin_diameter: Length = usual(5.3, "common practice", "diameter of a pin's hole", gt=0, le=15)
