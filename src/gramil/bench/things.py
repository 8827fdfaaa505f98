"""What is drawn on the plan, thing by thing: what it is called, its lines, and the figures that are its own.

Lines are in the plan's coordinates (mm, y up, the face about the centreline, the side view below it).
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from itertools import chain
from typing import Any

from gramil import names as n
from gramil.address import quoted
from gramil.drawings.marks import Circle, Drawing, Line, Mark, Marks, Polyline, mirrored, shifted
from gramil.graph import Figures
from gramil.reference import Ref

Rows = tuple[tuple[str, Ref[Any]], ...]


@dataclass(frozen=True)
class Kind:
    """What stands on a part's card: its first figures, the leading nouns of all its figures, and the parts of the work
    that are done on it.
    """

    first: Rows
    nouns: tuple[str, ...]
    work: tuple[str, ...]


OF_A_SHAPE = frozenset(each.address for each in (n.soundhole_diameter, n.soundhole_along, n.soundhole_across))
"""Sizes of a hole of one shape, which one of another has not."""
KINDS: Mapping[str, Kind] = {
    "head": Kind(
        (
            ("Length from the nut", n.head_reach),
            ("Width", n.head_width),
            ("Thickness", n.head_thickness),
            ("Angle", n.head_angle),
        ),
        ("head_",),
        ("neck",),
    ),
    "nut": Kind(
        (
            ("Width", n.nut_width),
            ("Outer strings", n.nut_spread),
            ("Thickness", n.head_nut_thickness),
            ("Set forward", n.nut_set_forward),
        ),
        ("nut_", "height_over_first"),
        ("nut", "setting up"),
    ),
    "board": Kind(
        (
            ("Thickness", n.board_thickness),
            ("Length", n.board_length),
            ("Width at the tail", n.board_width_at_tail),
            ("Wood left under a slot", n.slot_left_least),
        ),
        (
            "board_",
            "thickness_",
            "arch_",
            "slot_",
            "slots_",
            "wire_",
            "fret_",
            "binding_",
            "blank_",
            "core_",
            "markers_",
        ),
        ("board",),
    ),
    "neck": Kind(
        (
            ("With the board, fret 1", n.neck_depth_first),
            ("With the board, fret 10", n.neck_depth_tenth),
            ("Heel's depth", n.neck_heel_depth),
            ("Neck angle", n.neck_angle_target),
        ),
        ("neck_", "heel_", "carve_", "rod_", "back_bow_", "relief", "plank_"),
        ("neck",),
    ),
    "top": Kind(
        (("Length", n.body_length), ("Width", n.body_width), ("Thickness", n.top_thickness), ("Radius", n.top_radius)),
        ("top_", "body_", "dome_", "swell_", "channel_", "strip_"),
        ("top", "body", "binding"),
    ),
    "rim": Kind(
        (
            ("Depth at the neck", n.body_depth_neck),
            ("Depth at the tail", n.body_depth_tail),
            ("Side's thickness", n.body_wall),
            ("Back's radius", n.body_back_radius),
        ),
        ("side_", "body_back_", "body_depth_", str(n.body_linings), "channel_"),
        ("rim", "back", "linings", "blocks"),
    ),
    "soundhole": Kind(
        (
            ("Diameter", n.soundhole_diameter),
            ("Along the body", n.soundhole_along),
            ("Across", n.soundhole_across),
            ("Centre from the body's edge", n.soundhole_centre),
            ("From the board's end", n.soundhole_from_board),
            ("Area", n.soundhole_area),
        ),
        ("soundhole_", "rosette_", "opening_"),
        ("top",),
    ),
    "bridge": Kind(
        (
            ("Front from the nut", n.bridge_front_from_nut),
            ("Length", n.bridge_length),
            ("Width", n.bridge_width),
            ("Thickness", n.bridge_thickness),
        ),
        ("bridge_", "saddle_", "intonation_"),
        ("bridge", "saddle"),
    ),
    "bridge plate": Kind(
        (
            ("Length", n.plate_length),
            ("Width", n.plate_width),
            ("Thickness", n.bridge_plate_thickness),
            ("Front from the body's edge", n.plate_front),
        ),
        ("plate_", "bridge_plate_"),
        ("braces",),
    ),
    "neck block": Kind(
        (("Along the body", n.body_neck_block), ("Width", n.body_neck_block_width)),
        (str(n.body_neck_block),),
        ("blocks",),
    ),
    "neck's foot": Kind(
        (
            ("Under the top", n.foot_length),
            ("Width", n.body_neck_block_width),
            ("Height", n.foot_height),
            ("Slots for the sides, wide", n.foot_slot_width),
        ),
        ("foot_", str(n.body_neck_block)),
        ("neck",),
    ),
    "tail block": Kind(
        (("Along the body", n.body_tail_block), ("Width", n.body_tail_block_width)),
        (str(n.body_tail_block),),
        ("blocks",),
    ),
}
"""Every part that has a card; a brace has one, too, by its own name."""


@dataclass(frozen=True)
class Thing:
    """Something drawn: its name and its words, its lines, whether it lies hidden, and whether it can be tapped for its
    card.
    """

    name: str
    words: str
    marks: Marks
    hidden: bool = False
    tapped: bool = True

    @property
    def shape(self) -> Mark | None:
        """The closed line in which it is tapped."""
        return next((each for each in self.marks if isinstance(each, Circle) or getattr(each, "closed", False)), None)


def things_on(figures: Figures, side: float) -> tuple[Thing, ...]:
    """Everything on the plan, the large before the small; `side` is how far down the side view lies."""
    face = _of_hand(figures, (*_body(figures), *_neck(figures)))
    below = tuple(
        replace(each, marks=tuple(shifted(mark, 0.0, side) for mark in each.marks)) for each in _side(figures)
    )
    return tuple(each for each in (*below, *face) if each.marks)


def first_figures_of(kind: Kind, figures: Figures) -> tuple[tuple[str, Ref[Any]], ...]:
    """The first figures on a part's card; for a hole, those that its own shape has."""
    return tuple(
        each for each in kind.first if each[1].address not in OF_A_SHAPE or figures[each[1]] == figures[each[1]]
    )


def kind_of(figures: Figures, name: str) -> Kind | None:
    """What stands on the card of a part or a brace; None for anything else."""
    if any(name == each.name for each in figures[n.brace_list]):
        brace = n.brace_list[name]
        first: Rows = (
            ("Length", brace.length),
            ("Width", brace.width),
            ("Height", brace.height),
            ("At its ends", brace.end_height),
        )
        return Kind(first, (f"brace_list[{quoted(name)}]", f"braces[{quoted(name)}]"), ("braces",))
    return KINDS.get(name)


def _body(figures: Figures) -> Iterator[Thing]:
    edge = float(figures[n.body_edge])
    for each in chain(_plate(figures), _under(figures), _on_top(figures)):
        yield replace(each, marks=tuple(shifted(mark, edge, 0.0) for mark in each.marks))


def _plate(figures: Figures) -> Iterator[Thing]:
    outline, binding = figures[n.piece_body_outline], figures[n.piece_binding_lines]
    yield Thing("top", "the body's outline", tuple(each for each in outline if isinstance(each, Polyline)))
    yield Thing("binding", "the binding", binding, tapped=False)
    yield Thing("centreline", "the centreline", tuple(each for each in outline if isinstance(each, Line)), tapped=False)


def _under(figures: Figures) -> Iterator[Thing]:
    blocks = zip(figures[n.body_blocks], figures[n.piece_body_blocks], strict=False)
    yield from (Thing(block.name, f"the {block.name}", (mark,), hidden=True) for block, mark in blocks)
    for brace in figures[n.brace_list]:
        if brace.plate == "top" and brace.length > 0:
            yield Thing(brace.name, brace.name, (Polyline(brace.footprint, "hidden", closed=True),), hidden=True)
    for plate in figures[n.plate_shapes]:
        yield Thing(plate.name, f"the {plate.name}", (Polyline(plate.corners, "hidden", closed=True),), hidden=True)


def _on_top(figures: Figures) -> Iterator[Thing]:
    hole = figures[n.piece_soundhole]
    yield Thing("soundhole", "the soundhole", tuple(each for each in hole if each.layer == "outline"))
    further = figures[n.piece_further_holes]
    edges = (each for each in further if each.layer == "outline")
    for opening, edge in zip(figures[n.opening_further], edges, strict=True):
        yield Thing("soundhole", f"the {opening.name}", (edge,))
    rings = tuple(each for each in (*hole, *further) if each.layer == "markers")
    yield Thing("rosette", "a ring of the rosette", rings, tapped=False)
    bridge = figures[n.piece_bridge_on_body]
    yield Thing("bridge", "the bridge", tuple(each for each in bridge if isinstance(each, Polyline)))
    pins = [each for each in bridge if isinstance(each, Circle)]
    yield from (Thing("pin", f"the hole for pin {row}", (each,), tapped=False) for row, each in enumerate(pins, 1))
    yield Thing("saddle", "the saddle", figures[n.piece_saddle_on_body], tapped=False)


def _neck(figures: Figures) -> Iterator[Thing]:
    head = figures[n.piece_plan_head]
    yield Thing("head", "the head", tuple(each for each in head if isinstance(each, Polyline)))
    posts = [each for each in head if not isinstance(each, Polyline)]
    yield from (Thing("post", f"post {row}", (each,), tapped=False) for row, each in enumerate(posts, 1))
    outline, slots = figures[n.piece_outline], figures[n.piece_slots]
    yield Thing("board", "the board", tuple(each for each in outline if each.layer == "outline"))
    yield Thing("binding", "the binding", tuple(each for each in outline if each.layer == "core"), tapped=False)
    first = int(figures[n.slot_first])
    yield from (Thing("slot", f"fret {fret}", (each,), tapped=False) for fret, each in enumerate(slots, first))
    yield from (Thing("marker", "a marker", (each,), tapped=False) for each in figures[n.piece_markers])
    strings = figures[n.piece_whole_strings]
    yield from (Thing("string", f"string {row}", (each,), tapped=False) for row, each in enumerate(strings, 1))
    yield Thing("nut", "the nut", tuple(each for each in outline if each.layer == "nut"))


def _side(figures: Figures) -> Iterator[Thing]:
    rims = figures[n.piece_plan_rims]
    yield Thing("rim", "the side", tuple(each for each in rims if each.layer == "outline"))
    yield Thing("dome", "a dome", tuple(each for each in rims if each.layer == "hidden"), tapped=False)
    yield Thing("binding", "the binding", tuple(each for each in rims if each.layer == "markers"), tapped=False)
    board = figures[n.piece_plan_board]
    carved = [each for each in figures[n.piece_plan_neck_side] if isinstance(each, Polyline) and each not in board]
    yield Thing("neck", "the neck", tuple(replace(each, closed=True) for each in carved))
    yield Thing("board", "the board", tuple(each for each in board if each.layer == "outline"))
    yield Thing("nut", "the nut", tuple(each for each in board if each.layer == "nut"))
    yield Thing("bridge", "the bridge", figures[n.piece_plan_bridge])
    yield Thing("string", "a string", figures[n.piece_plan_strings], tapped=False)


def _of_hand(figures: Figures, things: tuple[Thing, ...]) -> tuple[Thing, ...]:
    """The things of the face, turned over for a left-handed instrument."""
    if figures[n.instrument_handed] != "left":
        return things
    return tuple(replace(each, marks=mirrored(Drawing("", "", "the face", each.marks)).marks) for each in things)
