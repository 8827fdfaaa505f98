"""A drawing's SVG for use on a page beside others: its layers without ids, its size left to the page."""

import re
from dataclasses import dataclass

from gramil.writers.svg import number

VIEW_BOX = re.compile(r'viewBox="([-\d.]+) ([-\d.]+) ([\d.]+) ([\d.]+)"')
SIZE = re.compile(r'width="[\d.]+mm" height="[\d.]+mm"')
LETTERS = re.compile(r'font-size="([\d.]+)"')
LEAST_LETTERS = 12.0
"""Height in px from which lettering is read without the page being drawn larger."""
TALLEST_STRIP = 450.0
"""Height in px up to which a large drawing is seen whole from top to bottom on a phone."""
DESCRIBED = re.compile(r"<desc>.*?</desc>", re.DOTALL)
INNER = re.compile(r"\b[a-z0-9]+(?:_[a-z0-9]+)+\b")
IDS = re.compile(r'<g id="([a-z]+)" class="layer"')


@dataclass(frozen=True)
class Box:
    """A view box: left, top (y down), width, height, in mm."""

    left: float
    top: float
    wide: float
    tall: float

    def __str__(self) -> str:
        return " ".join(number(each) for each in (self.left, self.top, self.wide, self.tall))


def box_of(svg: str) -> Box:
    """The view box that the writer gave it."""
    found = VIEW_BOX.search(svg)
    assert found is not None, "the writer gives every drawing a view box"
    return Box(*(float(each) for each in found.groups()))


def boxed(svg: str, box: Box, name: str) -> str:
    """The same SVG with another view box, its size left to the page."""
    head, rest = svg.split(">", 1)
    head = re.sub(r'(width|height)="[\d.]+mm" ', "", VIEW_BOX.sub(f'viewBox="{box}"', head))
    return head.replace('class="drawing"', f'class="drawing {name}"') + ">" + rest


def inlined(svg: str) -> str:
    """A drawing made fit for a page with others on it: its layers are named without ids, and its description in words
    is for a reader.
    """
    named = IDS.sub(r'<g data-layer="\1" class="layer"', svg)
    return DESCRIBED.sub(lambda found: in_plain_words(found[0]), named)


def in_plain_words(text: str) -> str:
    """The text with no name of the program's own in it: `slot_left_at_crest[7]` is said as slot left at crest [7]."""
    return INNER.sub(lambda found: found[0].replace("_", " "), text)


@dataclass(frozen=True)
class Sized:
    """A drawing at the size that its smallest lettering needs, and whether it is a strip to be scrolled along."""

    svg: str
    strip: bool


def readable(svg: str) -> Sized:
    """A drawing large enough to read on a page, or fitted to the page's width."""
    box, letters = box_of(svg), [float(each) for each in LETTERS.findall(svg)]
    scale = LEAST_LETTERS / min(letters) if letters else 1.0
    large = f'width="{number(scale * box.wide)}" height="{number(scale * box.tall)}"'
    return Sized(SIZE.sub(large, svg, count=1), scale * box.tall <= TALLEST_STRIP)
