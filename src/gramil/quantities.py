"""What a figure is measured in and what it runs over: units, and arrays with a row for each fret or string.

The type checker sees plain floats and arrays; the derivation graph reads the annotations and refuses to wire
a length to an angle, or a figure per fret to one per string.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Annotated, Any, TypeVar, get_args, get_origin

import numpy as np
from numpy.typing import NDArray
from typing_extensions import TypeAliasType


@dataclass(frozen=True)
class Unit:
    """The unit of a figure, by its usual symbol; the empty symbol is a pure number."""

    symbol: str


Mm = Annotated[float, Unit("mm")]
Mm2 = Annotated[float, Unit("mm2")]
Mm3 = Annotated[float, Unit("mm3")]
PerMm = Annotated[float, Unit("1/mm")]
PerMm2 = Annotated[float, Unit("1/mm2")]
Radians = Annotated[float, Unit("rad")]
Cents = Annotated[float, Unit("cent")]
CentsPerMm = Annotated[float, Unit("cent/mm")]
Hertz = Annotated[float, Unit("Hz")]
Newton = Annotated[float, Unit("N")]
NewtonM = Annotated[float, Unit("N m")]
NewtonMm = Annotated[float, Unit("N mm")]
NewtonMm2 = Annotated[float, Unit("N mm2")]
MPa = Annotated[float, Unit("MPa")]
GramPerM = Annotated[float, Unit("g/m")]
Gram = Annotated[float, Unit("g")]
Percent = Annotated[float, Unit("%")]
Celsius = Annotated[float, Unit("C")]
Ratio = Annotated[float, Unit("")]
Count = Annotated[int, Unit("count")]

Q = TypeVar("Q")
PerFret = TypeAliasType("PerFret", NDArray[np.float64], type_params=(Q,))
"""One figure a fret: shape (frets + 1,), row = fret number, row 0 the zero line."""
PerString = TypeAliasType("PerString", NDArray[np.float64], type_params=(Q,))
"""One figure a string: shape (strings,), string 1 (at the treble side) first."""
PerStringFret = TypeAliasType("PerStringFret", NDArray[np.float64], type_params=(Q,))
"""One figure a string and fret: shape (strings, frets + 1)."""
Series = TypeAliasType("Series", NDArray[np.float64], type_params=(Q,))
"""A plain run of figures of one unit, of any length."""

AXES: Mapping[Any, tuple[str, ...]] = {
    PerFret: ("fret",),
    PerString: ("string",),
    PerStringFret: ("string", "fret"),
    Series: ("any",),
}


def axes_of(annotation: Any) -> tuple[str, ...]:
    """The axes that a figure runs over: empty for one value, `("string", "fret")` and the like for an array."""
    return AXES.get(get_origin(annotation), ())


def unit_of(annotation: Any) -> Unit | None:
    """The unit in an annotation, or None for records, words and flags."""
    if get_origin(annotation) in AXES:
        (annotation,) = get_args(annotation)
    return next((item for item in getattr(annotation, "__metadata__", ()) if isinstance(item, Unit)), None)
