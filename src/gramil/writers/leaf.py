"""A page of a drawing as the typesetter gets it: its lines as one picture in millimetres, its words as words."""

from collections.abc import Iterable
from dataclasses import dataclass
from typing import TypedDict


class Word(TypedDict):
    """Words on a page: where their line begins and how wide they are, in mm from its upper left corner, `size` of the
    type in mm, `turn` clockwise in radians, `shade` from 0 (black) to 1."""

    x: float
    y: float
    wide: float
    text: str
    face: str
    weight: str
    size: float
    turn: float
    shade: float


class Leaf(TypedDict):
    """A page, in mm: lines as SVG, what they are in words, and the words; `bookmark` leads to it, if it has one."""

    wide: float
    tall: float
    svg: str
    described: str
    bookmark: str
    words: list[Word]


@dataclass(frozen=True)
class Stroke:
    """A line of SVG, in mm from the page's lower left corner, y up."""

    svg: str


Ink = Stroke | Word
"""What lies on a page."""


def leaf(size: tuple[float, float], inked: Iterable[Ink], described: str, bookmark: str = "") -> Leaf:
    """A page of this width and height in mm; what is inked has its places from the lower left corner."""
    wide, tall = size
    lines: list[str] = []
    words: list[Word] = []
    for each in inked:
        if isinstance(each, Stroke):
            lines.append(each.svg)
        else:
            words.append({**each, "y": tall - each["y"]})
    opening = (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{wide}mm" height="{tall}mm" viewBox="0 0 {wide} {tall}">'
        f'<g transform="matrix(1 0 0 -1 0 {tall})" fill="none" stroke-miterlimit="10">'
    )
    return Leaf(
        wide=wide, tall=tall, svg="\n".join((opening, *lines, "</g></svg>")), described=described, bookmark=bookmark,
        words=words,
    )  # fmt: skip
