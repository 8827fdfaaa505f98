"""The instrument's pictures as SVG for a page: the plan (face over side), what lies over it, and the section.

The plan and what lies over it share one view box, so that a moved section line redraws nothing else.
"""

import re
from collections.abc import Callable
from dataclasses import dataclass, replace
from html import escape

from gramil.drawings.marks import Arc, Circle, Drawing, Line, Mark, Marks, Point, Polyline, mirrored
from gramil.drawings.section_at import BETWEEN, Cut, over_board, section_drawing, section_marks, turned_over, value_at
from gramil.graph import Figures
from gramil.show import Shower, parted, shown
from gramil.writers.svg import described, number, svg_text

GAP = 16.0
"""Between the face and the side view, in mm."""
VIEW_BOX = re.compile(r'viewBox="([-\d.]+) ([-\d.]+) ([\d.]+) ([\d.]+)"')
IDS = re.compile(r'<g id="([a-z]+)" class="layer"')
CLOSER_ENDS = 14.0
"""Room at both ends of the board in the closer view, in mm."""


@dataclass(frozen=True)
class Box:
    """A view box: left, top (y down), width, height, in mm."""

    left: float
    top: float
    wide: float
    tall: float

    def __str__(self) -> str:
        return " ".join(number(each) for each in (self.left, self.top, self.wide, self.tall))


@dataclass(frozen=True)
class Plan:
    """The plan as SVG, its box, and how far down (mm, from the face's centreline) the side view's crest lies."""

    svg: str
    box: Box
    side: float
    words: str
    radius: float


def plan_of(figures: Figures, old: Figures | None, shower: Shower, closer: bool) -> Plan:
    """Face over side on one x axis, of the whole or, `closer`, of the board alone; with `old`, its lines in grey."""
    side = _lowest(_face(figures, closer)) - _highest(_side(figures, closer)) - GAP
    marks = _whole(figures, side, closer)
    under = _left_behind(_whole(old, side, closer), marks) if old is not None else ()
    title = f"{figures['instrument_name']}: face above, side below, head to the left"
    drawing = Drawing("whole", title, "the face", (*under, *marks))
    svg = inlined(svg_text(drawing, shower.text, captioned=False))
    whole = _box(svg)
    box = _roomy(_closer(figures, whole) if closer else whole, balloon_radius(closer))
    return Plan(_boxed(svg, box, "plan-drawing"), box, side, described(drawing, shower.text), balloon_radius(closer))


def _left_behind(old: Marks, new: Marks) -> Marks:
    """The old lines that no new one covers, for drawing in grey."""
    covered = frozenset(new)
    return tuple(replace(mark, layer="old") for mark in old if mark not in covered)


def _whole(figures: Figures, side: float, closer: bool) -> Marks:
    """Both views in one."""
    return (*_face(figures, closer), *(_moved(mark, 0.0, side) for mark in _side(figures, closer)))


def _face(figures: Figures, closer: bool) -> Marks:
    """The face, turned over for a left-handed instrument."""
    marks = figures["piece_whole_board"] if closer else figures["piece_plan_face"]
    drawing = Drawing("whole", "", "the face", (*marks, *(figures["piece_strings"] if closer else ())))
    return mirrored(drawing).marks if figures["instrument_handed"] == "left" else drawing.marks


def _side(figures: Figures, closer: bool) -> Marks:
    """The side, the same for both hands."""
    body = () if closer else (*figures["piece_plan_rims"], *figures["piece_plan_bridge"])
    return (*body, *figures["piece_plan_neck_side"])


def _lowest(marks: Marks) -> float:
    return min(y for mark in marks for _, y in _points(mark))


def _highest(marks: Marks) -> float:
    return max(y for mark in marks for _, y in _points(mark))


def _points(mark: Mark) -> tuple[Point, ...]:
    match mark:
        case Line():
            return (mark.start, mark.end)
        case Polyline():
            return mark.points
        case Circle() | Arc():
            (x, y), r = mark.centre, mark.radius
            return ((x - r, y - r), (x + r, y + r))
        case _:
            return ()


def _moved(mark: Mark, x: float, y: float) -> Mark:
    def to(point: Point) -> Point:
        return (point[0] + x, point[1] + y)

    match mark:
        case Line():
            return replace(mark, start=to(mark.start), end=to(mark.end))
        case Polyline():
            return replace(mark, points=tuple(map(to, mark.points)))
        case Circle() | Arc():
            return replace(mark, centre=to(mark.centre))
        case _:
            return mark


def _box(svg: str) -> Box:
    found = VIEW_BOX.search(svg)
    assert found is not None, "the writer gives every drawing a view box"
    return Box(*(float(each) for each in found.groups()))


def _closer(figures: Figures, whole: Box) -> Box:
    """The board alone, all of both views over it."""
    left = float(figures["board_nut_position"]) - CLOSER_ENDS
    wide = float(figures["board_tail_position"]) + CLOSER_ENDS - left
    return Box(left, whole.top, wide, whole.tall)


def _roomy(box: Box, radius: float) -> Box:
    """The same with room over the face for two rows of balloons."""
    room = 4 * radius + 4.0
    return Box(box.left, box.top - room, box.wide, box.tall + room)


def _boxed(svg: str, box: Box, name: str) -> str:
    """The same with another view box, the size left to the page."""
    head, rest = svg.split(">", 1)
    head = re.sub(r'(width|height)="[\d.]+mm" ', "", VIEW_BOX.sub(f'viewBox="{box}"', head))
    return head.replace('class="drawing"', f'class="drawing {name}"') + ">" + rest


def inlined(svg: str) -> str:
    """A drawing that may stand on a page beside others: its layers are named without ids."""
    return IDS.sub(r'<g data-layer="\1" class="layer"', svg)


def turned_in(figures: Figures, cut: Cut, plan: Plan, balloons: tuple[tuple[float, str, str], ...]) -> str:
    """What lies over the plan: the section line, the section turned into the face at the cut, and findings' balloons.

    A balloon is its x, its number and its words.
    """
    box = plan.box
    top, bottom = box.top, box.top + box.tall
    x = number(cut.x)
    line = f'<line class="section-line" x1="{x}" y1="{number(top)}" x2="{x}" y2="{number(bottom)}"/>'
    turned = "".join(_turned(mark, cut) for mark in _section_of(figures, cut))
    marks = "".join(_balloon(x, plan, label, words, row) for row, (x, label, words) in enumerate(balloons))
    return (
        f'<svg class="over" id="over" viewBox="{box}" aria-hidden="true" focusable="false">'
        f'<g class="turned">{turned}</g>{line}{marks}</svg>'
    )


def _section_of(figures: Figures, cut: Cut) -> Marks:
    marks = section_marks(figures, cut)
    return marks if figures["instrument_handed"] != "left" else turned_over(marks)


def _turned(mark: Mark, cut: Cut) -> str:
    """A mark of the section turned a quarter about the cut: width along the paper's y, height toward the nut."""

    def to(point: Point) -> str:
        return f"{number(cut.x + cut.slant * point[0] - point[1])},{number(-point[0])}"

    match mark:
        case Line():
            return f'<polyline points="{to(mark.start)} {to(mark.end)}"/>'
        case Polyline():
            kind = "polygon" if mark.closed else "polyline"
            return f'<{kind} points="{" ".join(map(to, mark.points))}"/>'
        case Circle():
            x, y = to(mark.centre).split(",")
            return f'<circle cx="{x}" cy="{y}" r="{number(mark.radius)}"/>'
        case _:
            return ""


def balloon_radius(closer: bool) -> float:
    """Radius of a finding's balloon on the plan, in mm."""
    return 6.0 if closer else 9.0


def _balloon(x: float, plan: Plan, label: str, words: str, row: int) -> str:
    r = plan.radius
    y = plan.box.top + r + 1.0 + (row % 2) * (2 * r + 1.0)
    return (
        f'<g class="balloon"><title>{escape(words)}</title>'
        f'<circle cx="{number(x)}" cy="{number(y)}" r="{number(r)}"/>'
        f'<text x="{number(x)}" y="{number(y + 0.42 * r)}" text-anchor="middle" font-size="{number(1.2 * r)}">'
        f"{escape(label)}</text></g>"
    )


def section_svg(figures: Figures, cut: Cut, old: tuple[Figures, Cut] | None, reader: Callable[[str], str]) -> str:
    """The section enlarged, with its figures; the old one in grey under it."""
    drawing = section_drawing(figures, cut)
    if old is not None:
        under = tuple(
            replace(mark, layer="old", hatch="") if isinstance(mark, Polyline) else replace(mark, layer="old")
            for mark in _section_of(*old)
            if not isinstance(mark, Arc)
        )
        drawing = replace(drawing, marks=(*under, *drawing.marks))
    svg = inlined(svg_text(drawing, lambda address: parted(reader(address))[0], captioned=False))
    return _boxed(svg, _box(svg), "section-drawing")


def reader_at(figures: Figures, cut: Cut, shower: Shower) -> Callable[[str], str]:
    """A reader of addresses that also reads those between frets."""

    def read(address: str) -> str:
        if not address.endswith(BETWEEN):
            return shower.text(address)
        unit = figures.unit_at(address.removesuffix(BETWEEN))
        return shown(value_at(figures, address, cut), unit, shower.first, shower.inch_style)

    return read


def section_words(figures: Figures, cut: Cut, reader: Callable[[str], str]) -> str:
    """The section in words."""
    if not over_board(figures, cut):
        return "There is no board here: only the strings are cut."
    return described(section_drawing(figures, cut), reader)
