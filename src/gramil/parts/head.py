"""The head: its edge and size, the tuners' holes in it, the scarf's length, and how each string bends over the nut.

Posts are given along the head's face from the nut's face, and from the centreline. The head's face starts behind the
nut, a veneer over the neck's face, and leans back by the head's angle.
"""

import numpy as np

from gramil.description.neck.head_outline import HeadCurve
from gramil.parts.records import Run
from gramil.quantities import Mm, PerFret, PerString, Radians, Ratio
from gramil.shapes.planar import points_inside
from gramil.shapes.polyline import nearest_on_ring
from gramil.shapes.quadrilateral import Quadrilateral

OWNS = ("head_",)

DRAWN_TO = 0.01
"""In mm: how near the chords of the head's edge lie to its curve."""

UNKNOWN = [np.nan, np.nan]
"""The walls of a slot whose place is not known."""


def head_outline(head_curve: HeadCurve) -> Run:
    """The head's edge in straight pieces, along from the nut's face and across; empty where none is described.

    Method: a smooth curve through the points given, broken at corners; where it would bulge between points far apart,
        over the roots of their distances (E. T. Y. Lee, Computer-Aided Design 21, 1989).
    Source: common practice.
    """
    if not head_curve.points:
        return Run()
    line = head_curve.curve.polyline(DRAWN_TO)
    return Run(tuple((float(along), float(across)) for along, across in line))


def head_reach(head_outline: Run, head_posts_x: PerString[Mm], limit_head_beyond: Mm) -> Mm:
    """From the nut's face to the head's end, along its face; without an outline, a usual margin past the last tuner.

    Method: the outline's furthest point, or the furthest post and the margin.
    Source: common practice.
    """
    if head_outline.points:
        return max(along for along, _ in head_outline.points)
    return float(head_posts_x.max()) + limit_head_beyond


def head_width(head_outline: Run, head_posts_y: PerString[Mm], limit_head_beside: Mm) -> Mm:
    """The head at its widest; without an outline, a usual margin outside the tuners.

    Method: twice the outline's furthest point from the centreline, or twice the furthest post and the margin.
    Source: common practice.
    """
    if head_outline.points:
        return 2 * max(abs(across) for _, across in head_outline.points)
    return 2 * (float(abs(head_posts_y).max()) + limit_head_beside)


def head_hole_to_edge(
    head_outline: Run,
    head_posts_x: PerString[Mm],
    head_posts_y: PerString[Mm],
    head_hole: Mm,
    head_tuners: str,
    head_hole_to_face: Mm,
) -> PerString[Mm]:
    """Wood between each tuner's hole and the head's edge; negative outside it, not known without an outline.

    Method: from each post to the nearest place on the edge, less half a hole; of holes in the head's sides, the wood
        toward its nearer face.
    Source: common practice.
    """
    if head_tuners == "across":
        return np.full(len(head_posts_x), head_hole_to_face)
    posts = np.stack((head_posts_x, head_posts_y), axis=-1)
    if not head_outline.points:
        return np.full(len(posts), np.nan)
    ring = np.array(head_outline.points)
    away = np.hypot(*(nearest_on_ring(ring, posts) - posts).T)
    return np.where(points_inside(posts, ring), away, -away) - head_hole / 2


def head_hole_to_face(head_post_height: Mm, head_thickness: Mm, head_hole: Mm, head_tuners: str) -> Mm:
    """Wood between a hole in the head's side and the nearer of its two faces; only where rollers lie across.

    Formula: minimum(-head_post_height, head_thickness + head_post_height) - head_hole / 2
        if head_tuners == "across" else nan
    Source: common practice.
    """
    if head_tuners != "across":
        return float("nan")
    return min(-head_post_height, head_thickness + head_post_height) - head_hole / 2


def head_roller_depth(head_post_height: Mm, head_tuners: str) -> Mm:
    """Middle of a hole in the head's side below the head's face, where rollers lie across: there the string meets it.

    Formula: -head_post_height if head_tuners == "across" else nan
    Source: common practice.
    """
    return -head_post_height if head_tuners == "across" else float("nan")


def head_slots(
    head_tuners: str, head_posts_x: PerString[Mm], head_posts_y: PerString[Mm], head_slot_width: Mm, head_hole: Mm
) -> tuple[Quadrilateral, ...]:
    """The two slots of a head whose rollers lie across: along from the nut's face, and across; none with posts.

    Method: on each side about the mean of its strings' places, past the outermost rollers by a hole.
    Source: common practice.
    """
    sides = [head_posts_y > 0, head_posts_y < 0] if head_tuners == "across" else []
    return tuple(
        _slot(head_posts_x[side], float(head_posts_y[side].mean()), head_slot_width / 2, head_hole)
        for side in sides
        if side.any()
    )


def _slot(along: PerString[Mm], middle: float, half: float, past: float) -> Quadrilateral:
    start, end, low, high = float(along.min()) - past, float(along.max()) + past, middle - half, middle + half
    return Quadrilateral(start, low, start, high, end, high, end, low)


def head_slots_apart(head_slots: tuple[Quadrilateral, ...]) -> Mm:
    """Wood between the two slots; not known without them.

    Method: from the inner edge of the one to that of the other.
    Source: common practice.
    """
    inner = [min(abs(slot.start_lower_y), abs(slot.start_upper_y)) for slot in head_slots]
    return sum(inner) if len(inner) == 2 else float("nan")


def head_holes_apart(head_posts_x: PerString[Mm], head_posts_y: PerString[Mm], head_hole: Mm, head_tuners: str) -> Mm:
    """Least wood between two tuners' holes.

    Method: the least distance between two posts, less a hole; of holes in the head's sides, along one side.
    Source: common practice.
    """
    if head_tuners == "across":
        sides = (np.sort(head_posts_x[head_posts_y > 0]), np.sort(head_posts_x[head_posts_y < 0]))
        return min(float(np.diff(side).min(initial=np.inf)) for side in sides) - head_hole
    across = np.hypot(np.subtract.outer(head_posts_x, head_posts_x), np.subtract.outer(head_posts_y, head_posts_y))
    return float(across[np.triu_indices(len(across), 1)].min()) - head_hole


def head_scarf_length(head_blank: Mm, head_angle: Radians) -> Mm:
    """Length of the scarf's face on a blank of this thickness; without end for a head that does not lean.

    Formula: head_blank / sin(head_angle)
    Source: a right triangle.
    """
    with np.errstate(divide="ignore"):
        return float(np.float64(head_blank) / np.sin(head_angle))


def head_slot_over_face(nut_slot_over_crest: PerString[Mm], thickness_at_crest: PerFret[Mm]) -> PerString[Mm]:
    """Bottom of each nut slot over the neck's own face.

    Formula: nut_slot_over_crest + thickness_at_crest[0]
    Source: common practice.
    """
    return nut_slot_over_crest + thickness_at_crest[0]


def head_run(
    head_posts_x: PerString[Mm], head_nut_thickness: Mm, head_angle: Radians, head_post_height: Mm
) -> PerString[Mm]:
    """From the nut's face back to where each string meets its tuner, level with the board.

    Source: turning the head's face by its angle.
    """
    return (
        head_nut_thickness
        + (head_posts_x - head_nut_thickness) * np.cos(head_angle)
        + head_post_height * np.sin(head_angle)
    )


def head_drop(
    head_slot_over_face: PerString[Mm],
    head_posts_x: PerString[Mm],
    head_nut_thickness: Mm,
    head_angle: Radians,
    head_post_height: Mm,
    head_veneer: Mm,
) -> PerString[Mm]:
    """How far each string falls from its nut slot to its tuner, square to the board.

    Source: turning the head's face by its angle.
    """
    return (
        head_slot_over_face
        - head_veneer
        + (head_posts_x - head_nut_thickness) * np.sin(head_angle)
        - head_post_height * np.cos(head_angle)
    )


def head_break_angle(
    head_drop: PerString[Mm],
    head_run: PerString[Mm],
    head_posts_y: PerString[Mm],
    string_y_nut: PerString[Mm],
    height_slope: PerString[Ratio],
) -> PerString[Radians]:
    """How far each string bends down over the nut, from its line over the board.

    Formula: arctan(head_drop / hypot(head_run, head_posts_y - string_y_nut)) - arctan(height_slope)
    Source: common practice.
    """
    return np.arctan(head_drop / np.hypot(head_run, head_posts_y - string_y_nut)) - np.arctan(height_slope)


def head_sideways_bend(
    head_posts_y: PerString[Mm],
    string_y_nut: PerString[Mm],
    head_run: PerString[Mm],
    string_splay: PerString[Ratio],
) -> PerString[Radians]:
    """How far each string bends sideways at the nut from its line over the board, toward the treble positive.

    Source: common practice.
    """
    return np.arctan((head_posts_y - string_y_nut) / head_run) - np.arctan(string_splay)


def head_post_clear(
    head_posts_x: PerString[Mm], head_posts_y: PerString[Mm], string_y_nut: PerString[Mm], head_tuners: str
) -> PerString[Mm]:
    """How near each string comes to the post of another on its way to its own, from middle to middle.

    Not known where rollers lie across: there strings run past none.
    Method: in plan along the head's face, from each other post to the straight way from nut to own post.
    Source: plane geometry.
    """
    if head_tuners == "across":
        return np.full(len(head_posts_x), np.nan)
    posts = np.stack((head_posts_x, head_posts_y), axis=-1)
    start = np.stack((np.zeros(len(posts)), string_y_nut), axis=-1)
    way, to = posts - start, posts - start[:, None]
    share = np.clip((to * way[:, None]).sum(-1) / (way**2).sum(-1)[:, None], 0.0, 1.0)
    away = np.hypot(*np.moveaxis(to - share[..., None] * way[:, None], -1, 0))
    np.fill_diagonal(away, np.inf)
    return away.min(axis=1)


def head_straight_y(
    string_y_nut: PerString[Mm], string_splay: PerString[Ratio], head_run: PerString[Mm]
) -> PerString[Mm]:
    """Where each tuner would stand from the centreline for its string to run straight over the nut.

    Source: common practice.
    """
    return string_y_nut + string_splay * head_run


def head_entry(
    head_slot_over_face: PerString[Mm],
    head_veneer: Mm,
    head_nut_thickness: Mm,
    head_angle: Radians,
    head_roller_depth: Mm,
) -> PerString[Ratio]:
    """What share of its way from the nut to its roller each string has gone where it passes below the head's face.

    Not known where no rollers lie across: such a string stays over the face.
    Method: heights over the face's plane, at the nut and at the roller, and a straight line between them.
    Source: similar triangles.
    """
    over = (head_slot_over_face - head_veneer) * np.cos(head_angle) - head_nut_thickness * np.sin(head_angle)
    return np.maximum(over, 0.0) / (np.maximum(over, 0.0) + head_roller_depth)


def head_slot_room(
    head_slots: tuple[Quadrilateral, ...],
    head_entry: PerString[Ratio],
    head_posts_y: PerString[Mm],
    string_y_nut: PerString[Mm],
    strings_gauges: PerString[Mm],
) -> PerString[Mm]:
    """Room beside each string in its slot, at the nearer wall; negative: it cuts into the wood there, or lies over it.

    Not known where no rollers lie across.
    Method: the string is straight from nut to roller, so it is nearest a wall where it passes below the face, or at
        the roller.
    Source: common practice.
    """
    if not head_slots:
        return np.full(len(head_posts_y), np.nan)
    side = np.where(head_posts_y > 0, 1.0, -1.0)
    walls = [sorted((slot.start_lower_y, slot.start_upper_y)) for slot in head_slots]
    low, high = np.array([next((w for w in walls if w[0] * s + w[1] * s > 0), UNKNOWN) for s in side]).T
    entry = string_y_nut + (head_posts_y - string_y_nut) * head_entry
    return np.minimum.reduce([room for y in (entry, head_posts_y) for room in (y - low, high - y)]) - strings_gauges / 2


def head_slot_ramp(
    head_slots: tuple[Quadrilateral, ...],
    head_entry: PerString[Ratio],
    head_posts_x: PerString[Mm],
    head_roller_depth: Mm,
    head_slot_over_face: PerString[Mm],
    head_veneer: Mm,
    head_nut_thickness: Mm,
    head_angle: Radians,
) -> PerString[Mm]:
    """How deep each string lies below the head's face at its slot's end toward the nut: the end is ramped so far down.

    Nothing where it still lies over the face there; not known where no rollers lie across.
    Method: the string's way along the head's face and square to it, both straight from nut to roller.
    Source: similar triangles.
    """
    if not head_slots:
        return np.full(len(head_posts_x), np.nan)
    start = min(slot.start_lower_x for slot in head_slots)
    over = (head_slot_over_face - head_veneer) * np.sin(head_angle)
    nut = head_nut_thickness * (1 - np.cos(head_angle)) - over
    share = (start - nut) / (head_posts_x - nut)
    return np.maximum(0.0, head_roller_depth * (share - head_entry) / (1 - head_entry))
