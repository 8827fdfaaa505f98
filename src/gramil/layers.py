"""The layers that drawings lie on: how each is inked, what a shop may say of it, and how a colour is written."""

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace

from gramil.quantities import Mm


@dataclass(frozen=True)
class Stroke:
    """How a layer is inked: `weight` in mm, `dashes` in mm (empty: solid), `colour` an index of the DXF standard.

    `own` is the colour that the shop gives the layer, as `read_colour` has it; empty if it gives none.
    """

    weight: float
    dashes: tuple[float, ...] = ()
    colour: int = 7
    own: str = ""


THICK, THIN, HAIRLINE = 0.5, 0.25, 0.13
CHAIN = (12.0, 2.0, 1.0, 2.0)

LAYERS: Mapping[str, Stroke] = {
    "hatch": Stroke(HAIRLINE, (), 9),
    "outline": Stroke(THICK),
    "core": Stroke(THIN, (4.0, 2.0), 8),
    "slots": Stroke(THIN, (), 1),
    "centreline": Stroke(HAIRLINE, CHAIN, 8),
    "nut": Stroke(THICK, (), 3),
    "strings": Stroke(HAIRLINE, (), 5),
    "markers": Stroke(THIN, (), 4),
    "pins": Stroke(THIN, (), 6),
    "cut": Stroke(THIN, (), 1),
    "hidden": Stroke(THIN, (3.0, 1.5), 8),
    "old": Stroke(THIN, (), 9),
    "dimensions": Stroke(HAIRLINE, (), 8),
    "text": Stroke(THIN),
    "list": Stroke(THIN),
}


COLOURS: Mapping[str, int] = {
    "red": 1, "yellow": 2, "green": 3, "cyan": 4, "blue": 5, "magenta": 6, "black": 7, "white": 7,
    "dark grey": 8, "light grey": 9,
}  # fmt: skip
"""Plain words for the first colours of the DXF standard's index. Its seventh is black on white and white on black."""
MOST = 255
"""The last number of that index which is a colour."""
HOW = f"write {', '.join(COLOURS)}, a number of the DXF standard from 1 to {MOST}, or #rrggbb"


@dataclass(frozen=True)
class LayerInk:
    """What a shop says of a layer: its colour as `read_colour` has it, and its weight (0: the usual one)."""

    name: str
    colour: str
    weight: Mm


def read_colour(value: object) -> str:
    """A colour as the number of the DXF standard's index, or as #rrggbb in small letters; raises ValueError."""
    if isinstance(value, int) and not isinstance(value, bool):
        value = str(value)
    text = " ".join(value.lower().split()) if isinstance(value, str) else ""
    if re.fullmatch(r"#[0-9a-f]{6}", text):
        return text
    if re.fullmatch(r"[0-9]{1,3}", text) and 1 <= int(text) <= MOST:
        return str(int(text))
    if text not in COLOURS:
        raise ValueError(HOW)
    return str(COLOURS[text])


def strokes(own: Iterable[LayerInk] = ()) -> Mapping[str, Stroke]:
    """Every layer's stroke, as the shop says of those that it names and as usual for the rest."""
    said = {
        each.name: replace(LAYERS[each.name], own=each.colour, weight=each.weight or LAYERS[each.name].weight)
        for each in own
    }
    return {**LAYERS, **said}
