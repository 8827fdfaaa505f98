"""What a plan gives put into a description: its parts held to what they follow, at their places on this instrument."""

import math

import numpy as np

from gramil import names as n
from gramil.description.plan.parts import PlanParts, Point
from gramil.description.plan.taking import Taken, soundhole_of, with_parts, with_shapes
from gramil.description.reading import Description, ShopDescription, parse_description, read_shop
from gramil.faults import MakersFault
from gramil.graph import Figures
from gramil.prints.whole import figures_of
from gramil.quantities import Mm

FARTHER: Mm = 3.0
"""The maker is told if a bridge is drawn farther than this from where the scale puts it."""


def taken_into(text: str, parts: PlanParts, shop: ShopDescription, front_at: Mm | None = None) -> Taken:
    """The description with all that a plan gives; `front_at` is where it has the front edge of its bridge.

    Raises MakersFault for a plan that gives nothing, parts without a body, and a description faulty with them.
    """
    if parts.empty:
        raise MakersFault.of("the plan gives nothing yet", remedy="type, draw or point at one part at the least")
    bare = parse_description(with_shapes(text, parts), "the description")
    if not bare.outlines:
        raise MakersFault.of(
            "the description has no body for this to lie on", remedy="give the outline too", where="outline"
        )
    figures = _figures(bare, shop)
    hole = _hole(parts, text, figures)
    found = with_parts(text, parts, lambda held_to: _zero(figures, held_to, hole), _half(bare))
    parse_description(found.text, "the description with the plan in it")
    return Taken(found.text, (*found.told, *_beside(figures, front_at)))


def _figures(described: Description, shop: ShopDescription) -> Figures:
    """The figures by which parts are held to something; where the shop lacks a tool for them, by a usual shop."""
    try:
        return figures_of(described, shop)
    except MakersFault:
        return figures_of(described, read_shop())


def _half(described: Description) -> tuple[Point, ...]:
    """Points close together on one half of the outline."""
    (outline,) = described.outlines
    return tuple((float(x), float(y)) for x, y in outline.half.place(outline.half.sample(0.1, 5.0)))


def _hole(parts: PlanParts, text: str, figures: Figures) -> Mm:
    """The hole's centre along the body: the plan's, or else the description's own; not a number without one."""
    if parts.hole is not None:
        return parts.hole.centre
    own = soundhole_of(text)
    return math.nan if own is None else own.centre + figures[n.body_zeros].of(own.held_to)


def _zero(figures: Figures, held_to: str, hole: Mm) -> Mm:
    """Where along the body lies what a part is held to. Raises MakersFault for a soundhole where there is none."""
    found = hole if held_to == "soundhole" else figures[n.body_zeros].of(held_to)
    if not np.isfinite(found):
        raise MakersFault.of("a brace is held to the soundhole, and there is none", remedy="give the hole too")
    return float(found)


def _beside(figures: Figures, drawn: Mm | None) -> tuple[str, ...]:
    """A sentence where the plan has the bridge's front edge elsewhere than the scale puts it."""
    if drawn is None:
        return ()
    own = figures[n.body_zeros].saddle - figures[n.bridge_front]
    if abs(drawn - own) < FARTHER:
        return ()
    where = "toward the tail" if drawn > own else "toward the neck"
    return (
        f"The plan's bridge lies {abs(drawn - own):.1f} mm farther {where} than this scale and join put it: "
        "see whether both are the plan's",
    )
