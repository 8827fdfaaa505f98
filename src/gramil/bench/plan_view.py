"""The instrument's pictures as SVG for a page: the plan (face over side), its overlay, and the section.

The plan and its overlay share one view box, so that moving the section line redraws nothing else.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from html import escape

from gramil import names as n
from gramil.bench.plan_layers import ROW, inner_svg
from gramil.bench.section_view import cut_through
from gramil.bench.svg_in_page import Box, in_plain_words
from gramil.drawings.marks import Arc, Circle, Drawing, Line, Mark, Marks, Point, Polyline, mirrored, shifted, unhatched
from gramil.drawings.section_at import Cut
from gramil.formatter import Formatter
from gramil.graph import Figures
from gramil.writers.extents import bounds
from gramil.writers.svg import MARGIN, described, number

GAP = 16.0
"""Between the face and the side view, in mm."""
CLOSER_ENDS = 14.0
"""Room at both ends of the board in the closer view, in mm."""
BEYOND = 600.0
"""How far the section line runs on past the plan, in mm, for a page that is taller than it."""


@dataclass(frozen=True)
class Plan:
    """The plan as SVG, its box, how far down (mm, from the face's centreline) the side view's crest lies, and the same
    in words.
    """

    svg: str
    box: Box
    side: float
    words: str


def plan_of(figures: Figures, old: Figures | None, formatter: Formatter, closer: bool, sized: bool = False) -> Plan:
    """Face over side on one x axis, of the whole instrument or, if `closer`, of the board alone; with `old`, its lines
    in grey. `sized`: with room for the dimensions round it.
    """
    face, rims = _face(figures, closer), _side(figures, closer)
    side = _down(face, rims)
    marks = _over_one_another(face, rims, side)
    before = _over_one_another(_face(old, closer), _side(old, closer), side) if old is not None else marks
    title = f"{figures[n.instrument_name]}: face above, side below, head to the left"
    now, then = frozenset(marks), frozenset(before)
    gone = tuple(replace(mark, layer="old") for mark in before if mark not in now)
    kinds = {
        "gone": gone,
        "stays": tuple(mark for mark in marks if mark in then),
        "new": tuple(mark for mark in marks if mark not in then),
    }
    drawing = Drawing("whole", title, "the face", (*gone, *marks))
    box = _box_round(figures, drawing.marks, closer, sized)
    words = in_plain_words(described(drawing, formatter.said, formatter.first))
    head = (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="{box}" role="img" class="drawing plan-drawing">'
        f"<title>{escape(title)}</title><desc>{escape(words)}</desc>"
    )
    return Plan(f"{head}{_parted(kinds, formatter)}</svg>", box, side, words)


def box_of_plan(figures: Figures, closer: bool) -> Box:
    """What the plan of a page shows, with room for the dimensions, without the drawing itself."""
    face, rims = _face(figures, closer), _side(figures, closer)
    return _box_round(figures, _over_one_another(face, rims, _down(face, rims)), closer, sized=True)


def _box_round(figures: Figures, marks: Marks, closer: bool, sized: bool) -> Box:
    left, low, right, high = bounds(marks)  # type: ignore[arg-type]  # lines of the plan, no words among them
    whole = Box(left - MARGIN, -high - MARGIN, right - left + 2 * MARGIN, high - low + 2 * MARGIN)
    return _closer(figures, whole) if closer else _roomy(whole) if sized else whole


def _parted(kinds: Mapping[str, Marks], formatter: Formatter) -> str:
    """What went, what stays and what is new, each in its own group, so that a page can flick between them."""
    return "".join(
        f'<g class="{kind}">{inner_svg(marks, formatter.said)}</g>' for kind, marks in kinds.items() if marks
    )


def with_layers(plan: Plan, under: str, over: str) -> str:
    """The plan's SVG with more drawn beneath its lines and over them: a group with links in it, not one image."""
    head, rest = plan.svg.replace('role="img"', 'role="group"', 1).split("</desc>", 1)
    return f"{head}</desc>{under}{rest.removesuffix('</svg>')}{over}</svg>"


def side_down(figures: Figures, closer: bool = False) -> float:
    """How far down the side view's crest lies from the face's centreline, in mm."""
    return _down(_face(figures, closer), _side(figures, closer))


def _down(face: Marks, side: Marks) -> float:
    return _lowest(face) - _highest(side) - GAP


def _over_one_another(face: Marks, side: Marks, down: float) -> Marks:
    """Both views in one, the side so far down."""
    return (*face, *(shifted(mark, 0.0, down) for mark in side))


def _face(figures: Figures, closer: bool) -> Marks:
    """The face, turned over for a left-handed instrument; not hatched, as its lines are tapped and measured."""
    marks = figures[n.piece_whole_board] if closer else figures[n.piece_plan_face]
    bare = map(unhatched, (*marks, *(figures[n.piece_strings] if closer else ())))
    drawing = Drawing("whole", "", "the face", tuple(bare))
    return mirrored(drawing).marks if figures[n.instrument_handed] == "left" else drawing.marks


def _side(figures: Figures, closer: bool) -> Marks:
    """The side, the same for both hands."""
    body = () if closer else (*figures[n.piece_plan_rims], *figures[n.piece_plan_bridge])
    return (*body, *figures[n.piece_plan_neck_side])


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


def _closer(figures: Figures, whole: Box) -> Box:
    """The board alone, all of both views over it."""
    left = float(figures[n.board_nut_position]) - CLOSER_ENDS
    wide = float(figures[n.board_tail_position]) + CLOSER_ENDS - left
    return Box(left, whole.top, wide, whole.tall)


def _roomy(box: Box) -> Box:
    """The same box with room for rows of dimensions over the face and past its tail."""
    return Box(box.left - ROW / 2, box.top - 4 * ROW, box.wide + 2 * ROW, box.tall + 4 * ROW)


def turned_in(figures: Figures, cut: Cut, box: Box) -> str:
    """The plan's overlay: the section line, and the section turned into the face at the cut."""
    top, bottom = box.top - BEYOND, box.top + box.tall + BEYOND
    x = number(cut.x)
    line = f'<line class="section-line" x1="{x}" y1="{number(top)}" x2="{x}" y2="{number(bottom)}"/>'
    turned = "".join(_turned(mark, cut) for mark in cut_through(figures, cut))
    return (
        f'<svg class="over" id="over" viewBox="{box}" aria-hidden="true" focusable="false">'
        f'<g class="turned">{turned}</g>{line}</svg>'
    )


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
