"""A drawing's SVG as it stands on a page among others: its layers without ids, its size left to the page."""

import re
from dataclasses import dataclass

from gramil.writers.svg import number

VIEW_BOX = re.compile(r'viewBox="([-\d.]+) ([-\d.]+) ([\d.]+) ([\d.]+)"')
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
    """The same with another view box, the size left to the page."""
    head, rest = svg.split(">", 1)
    head = re.sub(r'(width|height)="[\d.]+mm" ', "", VIEW_BOX.sub(f'viewBox="{box}"', head))
    return head.replace('class="drawing"', f'class="drawing {name}"') + ">" + rest


def inlined(svg: str) -> str:
    """A drawing that may stand on a page beside others: its layers are named without ids."""
    return IDS.sub(r'<g data-layer="\1" class="layer"', svg)
