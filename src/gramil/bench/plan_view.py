"""The instrument's pictures as SVG for a page: the plan (face over side), its overlay, and the section.

The plan and its overlay share one view box, so that moving the section line redraws nothing else.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from html import escape
from math import inf

from gramil import names as n
from gramil.bench.section_view import cut_through
from gramil.bench.svg_in_page import Box, box_of, boxed, inlined
from gramil.drawings.marks import Arc, Circle, Drawing, Line, Mark, Marks, Point, Polyline, mirrored
from gramil.drawings.section_at import Cut
from gramil.formatter import Formatter
from gramil.graph import Figures
from gramil.writers.svg import described, number, svg_text

GAP = 16.0
"""Between the face and the side view, in mm."""
CLOSER_ENDS = 14.0
"""Room at both ends of the board in the closer view, in mm."""


@dataclass(frozen=True)
class Plan:
    """The plan as SVG, its box, and how far down (mm, from the face's centreline) the side view's crest lies."""

    svg: str
    box: Box
    side: float
    words: str
    radius: float


def plan_of(figures: Figures, old: Figures | None, formatter: Formatter, closer: bool) -> Plan:
    """Face over side on one x axis, of the whole instrument or, if `closer`, of the board alone; with `old`, its lines
    in grey.
    """
    side = _lowest(_face(figures, closer)) - _highest(_side(figures, closer)) - GAP
    marks = _whole(figures, side, closer)
    under = _left_behind(_whole(old, side, closer), marks) if old is not None else ()
    title = f"{figures[n.instrument_name]}: face above, side below, head to the left"
    drawing = Drawing("whole", title, "the face", (*under, *marks))
    svg = inlined(svg_text(drawing, formatter.text, captioned=False))
    whole = box_of(svg)
    box = _roomy(_closer(figures, whole) if closer else whole, balloon_radius(closer))
    return Plan(boxed(svg, box, "plan-drawing"), box, side, described(drawing, formatter.text), balloon_radius(closer))


def _left_behind(old: Marks, new: Marks) -> Marks:
    """The old lines that no new one covers, for drawing in grey."""
    covered = frozenset(new)
    return tuple(replace(mark, layer="old") for mark in old if mark not in covered)


def _whole(figures: Figures, side: float, closer: bool) -> Marks:
    """Both views in one."""
    return (*_face(figures, closer), *(_moved(mark, 0.0, side) for mark in _side(figures, closer)))


def _face(figures: Figures, closer: bool) -> Marks:
    """The face, turned over for a left-handed instrument."""
    marks = figures[n.piece_whole_board] if closer else figures[n.piece_plan_face]
    drawing = Drawing("whole", "", "the face", (*marks, *(figures[n.piece_strings] if closer else ())))
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


def _closer(figures: Figures, whole: Box) -> Box:
    """The board alone, all of both views over it."""
    left = float(figures[n.board_nut_position]) - CLOSER_ENDS
    wide = float(figures[n.board_tail_position]) + CLOSER_ENDS - left
    return Box(left, whole.top, wide, whole.tall)


def _roomy(box: Box, radius: float) -> Box:
    """The same box with room above the face for two rows of balloons."""
    room = 2 * pitch(radius) + 2.0
    return Box(box.left, box.top - room, box.wide, box.tall + room)


def turned_in(figures: Figures, cut: Cut, plan: Plan, balloons: tuple[tuple[float, str, str], ...]) -> str:
    """The plan's overlay: the section line, the section turned into the face at the cut, and the findings' balloons.

    A balloon is its x, its number and its words.
    """
    box = plan.box
    top, bottom = box.top, box.top + box.tall
    x = number(cut.x)
    line = f'<line class="section-line" x1="{x}" y1="{number(top)}" x2="{x}" y2="{number(bottom)}"/>'
    turned = "".join(_turned(mark, cut) for mark in cut_through(figures, cut))
    places = apart([x for x, _, _ in balloons], pitch(plan.radius))
    marks = "".join(_balloon(at, plan, label, words) for at, (_, label, words) in zip(places, balloons, strict=True))
    return (
        f'<svg class="over" id="over" viewBox="{box}" aria-hidden="true" focusable="false">'
        f'<g class="turned">{turned}</g>{line}{marks}</svg>'
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


def pitch(radius: float) -> float:
    """The distance between two balloons' centres, with room for one a third larger, as drawn on a narrow page."""
    return 2.6 * radius + 1.0


def balloon_radius(closer: bool) -> float:
    """Radius of a finding's balloon on the plan, in mm."""
    return 7.0 if closer else 11.0


def apart(places: Sequence[float], wide: float) -> list[tuple[float, int]]:
    """Each balloon's x and row (0 or 1) so that no two overlap: at its place, or a little past it."""
    ends, found = [-inf, -inf], dict[int, tuple[float, int]]()
    for which in sorted(range(len(places)), key=lambda each: places[each]):
        reached = [max(end + wide, places[which]) for end in ends]
        row = reached.index(min(reached))
        ends[row] = reached[row]
        found[which] = (reached[row], row)
    return [found[which] for which in range(len(places))]


def _balloon(at: tuple[float, int], plan: Plan, label: str, words: str) -> str:
    r, (x, row) = plan.radius, at
    y = plan.box.top + (row + 0.5) * pitch(r)
    return (
        f'<g class="balloon"><title>{escape(words)}</title>'
        f'<circle cx="{number(x)}" cy="{number(y)}" r="{number(r)}"/>'
        f'<text x="{number(x)}" y="{number(y + 0.42 * r)}" text-anchor="middle" font-size="{number(1.2 * r)}">'
        f"{escape(label)}</text></g>"
    )
