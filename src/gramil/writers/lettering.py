"""Words on a drawing once every figure is known: what is written, how much room it takes, how it may be placed.

The sizes of the shipped typefaces are kept here alone, so that the DXF, the SVG and the PDF put the same words in
the same place.
"""

from dataclasses import dataclass
from math import cos, pi, sin

from gramil.drawings.marks import CAPITAL, Anchor, Point

FIGURE_ADVANCE, WORD_ADVANCE = 0.65, 0.56
"""Width of a character over the size of the type: every one in B612 Mono; a common sentence in B612, rounded up."""
DESCENT = 0.3
"""How far a tail reaches below the line, over the height of a capital."""


@dataclass(frozen=True)
class Lettering:
    """Text ready to be drawn: `height` of a capital in mm, `angle` in radians, `figure` if it is set in figures."""

    at: Point
    text: str
    height: float
    angle: float
    anchor: Anchor
    layer: str
    figure: bool = False


def clean(text: str) -> str:
    """The text on one line, without the characters that no drawing file can hold (controls, lone surrogates)."""
    if text.isprintable():  # which none of those characters is
        return text
    return "".join(
        " " if ord(c) < 32 or 127 <= ord(c) < 160 or ord(c) in (0x2028, 0x2029) else c for c in text if _holds(c)
    )


def _holds(character: str) -> bool:
    code = ord(character)
    return not 0xD800 <= code <= 0xDFFF and code & 0xFFFE != 0xFFFE  # the last two places of each plane are no letters


def type_size(height: float) -> float:
    """Size of the type (the em, in mm) whose capitals are `height` mm tall."""
    return height / CAPITAL


def width(text: str, height: float, figure: bool) -> float:
    """About how wide the text is, in mm: exact for figures, a fair guess for words."""
    return len(text) * type_size(height) * (FIGURE_ADVANCE if figure else WORD_ADVANCE)


def corners(lettering: Lettering, room: float = 0.0) -> tuple[Point, Point, Point, Point]:
    """The four corners of the box that the text fills, in order round it, with `room` mm to spare on each side."""
    wide = width(lettering.text, lettering.height, lettering.figure)
    left = {"left": 0.0, "middle": -wide / 2, "right": -wide}[lettering.anchor] - room
    right, low, high = left + wide + 2 * room, -DESCENT * lettering.height - room, lettering.height + room
    along, up = cos(lettering.angle), sin(lettering.angle)
    x, y = lettering.at
    from_left, from_right = (x + left * along, y + left * up), (x + right * along, y + right * up)
    down, rise = (low * up, low * along), (high * up, high * along)
    return (
        (from_left[0] - down[0], from_left[1] + down[1]),
        (from_right[0] - down[0], from_right[1] + down[1]),
        (from_right[0] - rise[0], from_right[1] + rise[1]),
        (from_left[0] - rise[0], from_left[1] + rise[1]),
    )


def readable(angle: float) -> float:
    """The angle, or its opposite, that is read from below or from the right: above -pi/2, up to pi/2."""
    turned = angle % pi
    return turned if turned <= pi / 2 + 1e-9 else turned - pi
