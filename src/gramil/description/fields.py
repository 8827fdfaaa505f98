"""How one value of a description is read: lengths in the file's unit, radii, stations, dates, string gauges.

Each type here is a plain float, word or record to the type checker; pydantic runs the reader before it checks the
range. The file's unit ("mm" or "in") comes in the validation context as `{"unit": ...}`.
"""

import math
import re
from collections.abc import Mapping
from datetime import date, datetime
from typing import Annotated, Any

from pydantic import BeforeValidator, Field, ValidationInfo

from gramil.bare_numbers import GAUGES, length_unit
from gramil.description.records import Station
from gramil.faults import MakersFault
from gramil.in_shop_units import own_words_in_shop_units
from gramil.layers import COLOURS, MOST, read_colour
from gramil.measure import LengthUnit, MeasureError, read_angle, read_length, read_mass_per_length
from gramil.paper_sizes import HOW, ROLL, SIZES, read_paper
from gramil.physics.materials import materials
from gramil.physics.pitch import read_pitch
from gramil.quantities import Unit

LARGEST = 2000.0
"""The longest length that a description may hold, in mm: a board of 2 m."""
SMALLEST = 0.001
"""The shortest length that a description may hold, in mm: nobody can cut, set or measure less."""
BARE_GAUGE_MOST = 0.1
"""A bare string gauge is in inches; a larger number is more likely millimetres, or thousandths."""


PIECE_SIZES: Mapping[str, Mapping[str, float]] = {
    "length": {"gt": 0, "le": 5000},
    "width": {"gt": 0, "le": 1000},
    "thickness": {"gt": 0, "le": 500},
}
"""The least and the most that a piece of wood may have, in mm, as pydantic has it."""
LOWEST_PITCH, HIGHEST_PITCH = 15.0, 2000.0
"""What an open string may sound, in Hz."""
NO_STRINGS = ("nickel_silver", "structural_steel", "carbon_fibre_pultrusion")
STRING_MATERIALS = tuple(key.replace("_", " ") for key in materials() if key not in NO_STRINGS)
"""The materials that strings and their windings are made of, by their keys in words."""
MOST_MOVED = 12.0
"""The most that a break point may be moved, in mm."""


def given(what: str, **bounds: Any) -> Any:
    """A key without a default; `bounds` are passed to pydantic."""
    return Field(description=what, **bounds)


def usual(value: Any, reason: str, what: str, **bounds: Any) -> Any:
    """A key that may be left out; `reason` says where its default comes from."""
    return Field(default=value, description=what, json_schema_extra={"reason": reason}, **bounds)


def file_unit(info: ValidationInfo) -> LengthUnit:
    """The unit of bare numbers in the file that is being read."""
    return length_unit((info.context or {}).get("unit"))


def length_of(value: object, unit: LengthUnit) -> float:
    """Millimetres from text with a unit, or from a bare number in `unit`; raises ValueError saying what to write."""
    if isinstance(value, bool) or not isinstance(value, str | int | float):
        raise ValueError(own_words_in_shop_units('a length is text with a unit ("25 mm"), or a number', unit))
    if isinstance(value, float) and not math.isfinite(value):
        raise ValueError("a length is a finite number")
    length = float(read_length(value, unit))
    if 0 < abs(length) < SMALLEST:
        raise ValueError(f"a length is 0, or {SMALLEST:g} mm at least")
    return length


def _length(value: object, info: ValidationInfo) -> float:
    return length_of(value, file_unit(info))


def _radius(value: object, info: ValidationInfo) -> float:
    """A radius in mm; "flat" is infinite."""
    if isinstance(value, str) and value.strip().lower() == "flat":
        return math.inf
    radius = length_of(value, file_unit(info))
    if not 0 < radius <= 1e6:
        raise ValueError('a radius is a length more than 0, up to 1 km, or "flat"')
    return radius


def spread_over_ends(value: object) -> object:
    """One radius stands for both ends of the board."""
    return {"nut": value, "end": value} if isinstance(value, str | int | float) else value


_STATION = re.compile(r"fret\s+(?P<fret>\d+(?:\.\d+)?)\s*(?:(?P<sign>[+-])\s*(?P<beyond>.+))?", re.IGNORECASE)


def _station(value: object, info: ValidationInfo) -> Station:
    if isinstance(value, Station):
        return value
    if isinstance(value, str) and (match := _STATION.fullmatch(value.strip())):
        beyond = length_of(match["beyond"], file_unit(info)) if match["beyond"] else 0.0
        return Station(float(match["fret"]), -beyond if match["sign"] == "-" else beyond)
    if isinstance(value, str) and value.strip().lower().startswith("fret"):
        says = 'a station at a fret is written "fret 12" or "fret 12 + 5 mm"'
        raise ValueError(own_words_in_shop_units(says, file_unit(info)))
    return Station(0.0, length_of(value, file_unit(info)))


def _gauge(value: object) -> float:
    """A string's diameter in mm: bare numbers are inches, as strings are sold."""
    if isinstance(value, int | float) and not isinstance(value, bool) and BARE_GAUGE_MOST < value < math.inf:
        thou = f'"{value:g} mm", "{value:g} thou"' if value >= 1 else f'"{value:g} mm"'
        raise ValueError(f"a bare gauge is in inches, and over {BARE_GAUGE_MOST} it is doubtful: write {thou}")
    return length_of(value, GAUGES)


def _modulus(value: object) -> float:
    """A modulus of elasticity in MPa from text such as "12 GPa"."""
    match = re.fullmatch(r"\s*(\d+(?:\.\d+)?)\s*(GPa|MPa)\s*", value) if isinstance(value, str) else None
    if match is None:
        raise ValueError('a modulus is text with its unit, such as "12 GPa" or "12000 MPa"')
    return float(match[1]) * (1000.0 if match[2] == "GPa" else 1.0)


def _pitch(value: object) -> str:
    """A pitch as written, once it is known to be one."""
    if not isinstance(value, str):
        raise ValueError('a pitch is text: "E4", "F#2", "Bb3" or "82.4 Hz"')
    try:
        sounds = read_pitch(value)
    except MakersFault as error:
        raise ValueError(error.faults[0].remedy) from None
    if not LOWEST_PITCH <= sounds <= HIGHEST_PITCH:
        raise ValueError(f"an open string sounds {LOWEST_PITCH:g} to {HIGHEST_PITCH:g} Hz")
    return value.strip()


def _string_material(value: object) -> str:
    """The name of a material, in words."""
    name = value.strip().lower().replace("_", " ") if isinstance(value, str) else ""
    if name not in STRING_MATERIALS:
        raise ValueError("a string is made of " + ", ".join(STRING_MATERIALS))
    return name


def _weight(value: object) -> float:
    """A string's weight in g/m from text such as "0.57 g/m" or "0.0000319 lb/in"; a bare 0 means not given."""
    if not isinstance(value, bool) and value == 0:
        return 0.0
    if not (isinstance(value, str) and re.search("[a-z]", value)):
        raise ValueError(
            'a weight is text with its unit, such as "0.57 g/m" or "0.0000319 lb/in", or 0 for one that is not known'
        )
    try:
        weight = read_mass_per_length(value)
    except MeasureError as error:
        raise ValueError(error.faults[0].remedy) from None
    if not 0.01 <= weight <= 100.0:
        raise ValueError("a string weighs 0.01 to 100 g/m, 0.0000006 to 0.0056 lb/in")
    return weight


def _moves(value: object, info: ValidationInfo) -> tuple[float, ...]:
    """How far break points are moved, in mm: one length for all, one for each string, or "best", which becomes an empty
    list.
    """
    if isinstance(value, str) and value.strip().lower() == "best":
        return ()
    listed = value if isinstance(value, list | tuple) else [value]
    moves = tuple(length_of(each, file_unit(info)) for each in listed)
    if not all(-MOST_MOVED <= each <= MOST_MOVED for each in moves):
        raise ValueError(f"a break point is moved by {MOST_MOVED:g} mm at most")
    return moves


def _angle(value: object) -> float:
    """An angle in radians from degrees."""
    if isinstance(value, bool) or not isinstance(value, str | int | float):
        raise ValueError('an angle is in degrees: 14, or "14 deg"')
    angle = float(read_angle(value))
    if not abs(angle) <= math.pi / 4:
        raise ValueError("an angle here is at most 45 degrees")
    return angle


def _paper(value: object, info: ValidationInfo) -> str:
    """A paper by its name or its two lengths; an empty text means the same as another key's."""
    try:
        return read_paper(value, file_unit(info)) if isinstance(value, str) and value else ""
    except MakersFault:
        raise ValueError(HOW) from None


def _day(value: object) -> object:
    """A date as TOML writes it, with or without quotes."""
    if isinstance(value, str):
        try:
            return date.fromisoformat(value)
        except ValueError:
            raise ValueError("a date is written year-month-day, such as 2026-11-02") from None
    if isinstance(value, datetime):
        return value.date()
    return value


def _share(value: object) -> float:
    """A plain number: text is refused here because pydantic's own words for it are poor."""
    if isinstance(value, bool) or not isinstance(value, int | float) or not math.isfinite(value):
        raise ValueError("a plain number is wanted here")
    return float(value)


Length = Annotated[float, BeforeValidator(_length), Unit("mm")]
"""A length in mm."""
Radius = Annotated[float, BeforeValidator(_radius)]
"""A radius in mm; infinite for "flat"."""
Place = Annotated[Station, BeforeValidator(_station)]
"""A station along the board: "fret 12", "400 mm" from the zero line, or "fret 12 + 5 mm"."""
Gauge = Annotated[float, BeforeValidator(_gauge), Field(ge=0.1, le=5.0), Unit("mm")]
"""A string's diameter in mm."""
Modulus = Annotated[float, BeforeValidator(_modulus), Field(ge=100.0, le=500_000.0), Unit("MPa")]
"""A modulus of elasticity in MPa."""
Angle = Annotated[float, BeforeValidator(_angle), Unit("rad")]
"""An angle in radians, written in degrees."""
Pitch = Annotated[str, BeforeValidator(_pitch)]
"""A pitch as written: a note with its octave, or a frequency."""
StringMaterial = Annotated[str, BeforeValidator(_string_material)]
"""A string's material, in words."""
Weight = Annotated[float, BeforeValidator(_weight), Unit("g/m")]
"""A string's weight in g/m; 0 is not given."""
Moves = Annotated[tuple[float, ...], BeforeValidator(_moves)]
"""How far break points are moved, in mm, one for all or one a string; empty is "best"."""
Frequency = Annotated[float, BeforeValidator(_share), Unit("Hz")]
"""A frequency in Hz, as a bare number."""
Paper = Annotated[str, BeforeValidator(_paper)]
"""A paper that a printer takes, as `paper_sizes` knows it."""
Colour = Annotated[str, BeforeValidator(read_colour)]
"""A colour of a layer, as `layers` knows it."""
Day = Annotated[date, BeforeValidator(_day)]
"""A day of the calendar."""
Number = Annotated[float, BeforeValidator(_share), Unit("")]
"""A plain number, such as a fret that may be fractional."""
Whole = Annotated[int, Unit("count")]
"""A count."""
Words = Annotated[str, Field(min_length=1, max_length=200)]
"""A name or a sentence."""

READERS: Mapping[object, str] = {
    _length: "length",
    _radius: 'length or `"flat"`',
    _station: '`"fret 12"`, `"fret 12 + 5 mm"`, or a length from the zero line',
    _gauge: "diameter",
    _modulus: 'text such as `"12 GPa"`',
    _angle: "angle in degrees",
    _pitch: "note with its octave, or frequency",
    _string_material: "material by its name",
    _weight: 'text such as `"0.57 g/m"` or `"0.0000319 lb/in"`',
    _moves: 'length, list of one a string, or `"best"`',
    _paper: "paper: " + ", ".join(f'`"{name}"`' for name in (*SIZES, ROLL)) + ', `"roll 914 mm"` or `"310 x 440 mm"`',
    read_colour: "colour: " + ", ".join(f'`"{name}"`' for name in COLOURS) + f', 1 to {MOST}, or `"#rrggbb"`',
    _day: "date",
    _share: "number",
    spread_over_ends: '`{ nut = ..., end = ... }`, one length, or `"flat"`',
}
"""What each reader takes, in words, for the page of keys."""
