"""What is written correctly about heights, neck, head and top but impossible: a channel deeper than the neck, and the
like.

The checks are run with those of `checks.py`, each if the tables that it takes by name could be read.
"""

import math
from collections.abc import Callable, Iterator, Sequence

from gramil.description.board.tables import Board, Nut, Scale
from gramil.description.body.tables import Body
from gramil.description.instrument_table import InstrumentTable
from gramil.description.neck.carve_table import Carve
from gramil.description.neck.tables import Head, Heights, Neck, Top
from gramil.description.problems import Problem
from gramil.description.repair.tables import Repair
from gramil.description.strings.tables import Strings
from gramil.description.work_table import WorkTable

FIRST_JOIN = 3.0
"""A neck that meets the body nearer to the nut has no span on which relief could be measured."""


def join_leaves_a_span(scale: Scale) -> Iterator[Problem]:
    """There is a stretch of neck between fret 1 and the body on which relief can be measured."""
    if scale.join < FIRST_JOIN:
        yield Problem(("scale", "join"), f"read {scale.join:g}", f"fret {FIRST_JOIN:g} or further: relief needs a span")


def relief_under_action(heights: Heights) -> Iterator[Problem]:
    """The relief is less than the strings' height over it."""
    least = min(heights.action_bass, heights.action_treble)
    if heights.relief >= least:
        yield Problem(("heights", "relief"), f"read {heights.relief:g} mm", f"less than the action, {least:g} mm")


def neck_is_deeper_than_board(neck: Neck, board: Board) -> Iterator[Problem]:
    """Neck and board together are deeper than the board, at both places where the depth is given."""
    for key in ("depth_at_1", "depth_at_10"):
        depth = getattr(neck, key)
        if depth <= board.thickness:
            yield Problem(("neck", key), f"read {depth:g} mm", f"more than the board alone, {board.thickness:g} mm")


def channels_leave_a_neck(neck: Neck, board: Board, nut: Nut) -> Iterator[Problem]:
    """Rod and bars fit into the neck's wood, in depth and side by side."""
    wood = min(neck.depth_at_1, neck.depth_at_10) - board.thickness
    parts = [("rod", neck.rod != "none", 1), ("bar", neck.bars > 0, neck.bars)]
    for part, there, _ in parts:
        depth = getattr(neck, f"{part}_depth")
        if there and 0 < wood <= depth:
            yield Problem(
                ("neck", f"{part}_depth"), f"read {depth:g} mm", f"less than the neck's wood there, {wood:.2f} mm"
            )
    wide = sum(count * getattr(neck, f"{part}_width") for part, there, count in parts if there)
    if wide >= nut.width:
        yield Problem(
            ("neck", "bar_width"), f"rod and bars are {wide:g} mm wide together", f"less than {nut.width:g} mm"
        )


def a_post_for_each_string(head: Head, strings: Strings) -> Iterator[Problem]:
    """Both lists of posts are given, or neither; one post for each string, all of them past the nut."""
    if (head.posts_x is None) != (head.posts_y is None):
        missing = "posts_x" if head.posts_x is None else "posts_y"
        yield Problem(("head", missing), "is missing", "give posts_x and posts_y together, or neither")
    for key, posts in (("posts_x", head.posts_x), ("posts_y", head.posts_y)):
        if posts is not None and len(posts) != len(strings.gauges):
            yield Problem(("head", key), f"read {len(posts)} posts", f"one a string: {len(strings.gauges)}")
    for row, x in enumerate(head.posts_x or ()):
        if x <= head.nut_thickness:
            yield Problem(("head", "posts_x", row), f"read {x:g} mm", f"past the nut, {head.nut_thickness:g} mm thick")


def top_is_a_dome(top: Top) -> Iterator[Problem]:
    """The dome's radius spans the body."""
    if top.length is not None and math.isfinite(top.radius) and top.radius <= top.length / 2:
        yield Problem(("top", "radius"), f"read {top.radius:g} mm", f"more than half the body, {top.length / 2:g} mm")


def built_one_way(instrument: InstrumentTable, carve: Carve, work: WorkTable) -> Iterator[Problem]:
    """A body built on its neck has its sides let into the heel, and no joint that a closed body is set on by."""
    on_the_neck = instrument.build == "on the neck"
    if on_the_neck and work.neck_joint != "built on":
        yield Problem(
            ("work", "neck_joint"), f'read "{work.neck_joint}"', '"built on", or instrument.build = "neck to body"'
        )
    for path, word in ((("carve", "heel"), carve.heel), (("work", "neck_joint"), work.neck_joint)):
        if not on_the_neck and word == "built on":
            yield Problem(path, 'read "built on"', 'another, or instrument.build = "on the neck"')


def toe_lies_under_the_foot(instrument: InstrumentTable, carve: Carve, body: Body) -> Iterator[Problem]:
    """A foot's toe is lower than the foot, which is as high as the sides at the neck."""
    if instrument.build == "on the neck" and carve.foot_toe_height >= body.depth_neck:
        said = f"read {carve.foot_toe_height:g} mm"
        yield Problem(("carve", "foot_toe_height"), said, f"less than the sides at the neck, {body.depth_neck:g} mm")


def a_neck_built_on_stays(instrument: InstrumentTable, repair: Repair) -> Iterator[Problem]:
    """A neck whose heel holds the sides has no joint to be steamed off."""
    if repair.reset and instrument.build == "on the neck":
        yield Problem(
            ("repair", "reset"),
            "read true: a neck that the body is built on does not come off",
            'leave it false, or write instrument.build = "neck to body", if this one is joined',
        )


NECK_CHECKS: Sequence[Callable[..., Iterator[Problem]]] = (
    join_leaves_a_span,
    relief_under_action,
    neck_is_deeper_than_board,
    channels_leave_a_neck,
    a_post_for_each_string,
    top_is_a_dome,
    built_one_way,
    toe_lies_under_the_foot,
    a_neck_built_on_stays,
)
