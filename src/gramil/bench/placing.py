"""Where a figure stands along the instrument, so that a finding can be shown in the drawing."""

from gramil import names as n
from gramil.address import Field, parse_address, quoted
from gramil.bench.plan_layers import middle
from gramil.bench.things import KINDS, Thing
from gramil.drawings.marks import Point
from gramil.graph import Figures
from gramil.quantities import axes_of

PLACES = {
    "head": ("head_",),
    "nut": ("nut_", str(n.action_nut)),
    "saddle": (
        "saddle_",
        "bridge_",
        "intonation_",
        "neck_set_",
        str(n.string_pull),
        str(n.string_breaking),
        str(n.string_reserve),
    ),
    "join": ("neck_", "heel_", str(n.scale_join), "back_bow_", "relief_"),
    "fret 12": ("heights_", "action_", "height_", "crown_"),
    "tail": ("thickness_", "board_", "ledge_", "binding_", "core_", "blank_"),
}
"""Nouns that stand at one place for want of a row."""


def place_of(figures: Figures, address: str) -> float:
    """x along the centreline, mm from the zero line, at which a figure is shown; raises KeyError if it is not an
    address.
    """
    name, steps = parse_address(address)
    axes = axes_of(figures.graph.annotation(name))
    rows = {axis: step for axis, step in zip(axes, steps, strict=False) if not isinstance(step, Field)}
    if "fret" in rows:
        return float(figures[n.fret_position][int(rows["fret"])])
    return _at(figures, next((place for place, nouns in PLACES.items() if name.startswith(nouns)), ""))


def spot_of(figures: Figures, address: str, things: tuple[Thing, ...]) -> Point:
    """Where a figure is shown on the plan (mm, y up): at its fret, or at the middle of the part that it is of."""
    x = place_of(figures, address)
    name, steps = parse_address(address)
    thing = _thing_of(address, things)
    if thing is None or ("fret" in axes_of(figures.graph.annotation(name)) and steps):
        return (x, 0.0)
    return middle(thing)


def _thing_of(address: str, things: tuple[Thing, ...]) -> Thing | None:
    """The part that a figure is of: a brace by its name, else by the figure's leading noun."""
    parts = [each for each in things if each.tapped and each.shape is not None]
    named = next((each for each in parts if f"[{quoted(each.name)}]" in address), None)
    if named is not None:
        return named
    kind = next((name for name, each in KINDS.items() if address.startswith(each.nouns)), "")
    return next((each for each in parts if each.name == kind), None)


def _at(figures: Figures, place: str) -> float:
    match place:
        case "head":
            return float(figures[n.board_nut_position] - figures[n.head_posts_x].mean())
        case "nut":
            return float(figures[n.board_nut_position])
        case "saddle":
            return float(figures[n.saddle_position])
        case "join":
            return float(figures[n.back_bow_length])
        case "tail":
            return float(figures[n.board_tail_position])
        case _:
            return float(figures[n.fret_position][figures[n.action_fret]])
