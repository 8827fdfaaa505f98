"""What is said of a solved top, row by row: the same for the command, the page and the bench."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Any

from gramil import names as n
from gramil.decimals import signed
from gramil.formatter import Formatter, shown
from gramil.graph import Figures
from gramil.measure import LengthUnit
from gramil.physics.plates.nodal_lines import Belly
from gramil.reference import Ref
from gramil.top.modes import ModePicture
from gramil.top.pushing import PushCompared
from gramil.top.shaving import Shaving

NOT_SAID = (
    "Not judged: what the rim gives, the glue's own give, the grain's run-out, and what a player would hear.",
    "Left out: the strings' pull along a top that has moved (some 1 % less turn), the head and the neck's own give.",
)
"""What the answer does not hold, wherever it is shown."""


@dataclass(frozen=True)
class TopRow:
    """One figure of a solved top: what it is, by reference, how far off mesh and model may be, and a range."""

    what: str
    figure: Ref[Any]
    within: Ref[Any] | None = None
    least: Ref[Any] | None = None
    most: Ref[Any] | None = None


PULLED = (
    TopRow(
        "the bridge turns toward the neck", n.pulled_turn, n.pulled_turn_within, n.pulled_turn_least, n.pulled_turn_most
    ),
    TopRow("the top sinks ahead of it", n.pulled_sink, n.pulled_sink_within),
    TopRow("at this distance along the body", n.pulled_sink_x),
    TopRow("and rises behind it", n.pulled_rise, n.pulled_rise_within),
    TopRow("at this distance along the body", n.pulled_rise_x),
    TopRow("the top lifts under the saddle (negative: sinks)", n.pulled_lift),
    TopRow("that adds to the action at fret 12", n.pulled_action),
    TopRow("largest strain along the top's grain", n.pulled_strain_top),
    TopRow("largest strain along a brace", n.pulled_strain_brace),
    TopRow("in the brace", n.pulled_strained_brace),
    TopRow("turn if the rim holds and does not clamp", n.pulled_turn_supported),
    TopRow("turn in the driest air of the year", n.pulled_turn_dry),
    TopRow("turn in the dampest", n.pulled_turn_damp),
    TopRow(
        "turn after years, by a range of practice",
        n.pulled_turn_crept_least,
        None,
        n.pulled_turn_crept_least,
        n.pulled_turn_crept_most,
    ),
)
"""What the pull does."""
WITH_AIR = (
    TopRow("first mode if the rim does not clamp", n.mode_first_supported),
    TopRow("top and air of the box, the lower", n.mode_air_lower),
    TopRow("top and air of the box, the upper", n.mode_air_upper),
)
"""What is known of the modes besides lists."""


def row_text(row: TopRow, formatter: Formatter) -> str:
    """A row's figure with how far off it may be, and its range."""
    if row.least is not None and row.least == row.figure:
        return f"{formatter.text(row.least)} to {formatter.text(row.most or row.least)}"
    text = formatter.text(row.figure)
    if row.within is not None:
        text += f" ± {formatter.text(row.within)}"
    if row.least is not None and row.most is not None:
        text += f"; {formatter.text(row.least)} to {formatter.text(row.most)} by the wood"
    return text


def woods_in_words(figures: Figures) -> tuple[str, ...]:
    """What was taken for what, of the woods; and how far handbook figures spread."""
    known = [figures[each] for each in (n.fitted_top, n.fitted_braces, n.timber_bridge, n.timber_bridge_plate)]
    parts = ("top", "braces", "bridge", "bridge plate")
    told = [f"{part}: {line}" for part, each in zip(parts, known, strict=True) for line in each.told]
    spread = f"{100 * figures[n.pulled_spread]:.0f} %"
    measured = all(each.measured for each in known[:2])
    line = f"top and braces were measured: within {spread}" if measured else (
        f"a handbook's stiffness is off by {spread} for a piece: the bands hold until it is tapped or pushed"
    )  # fmt: skip
    return (line, *told)


def rise_that_follows(own: Figures, other: Figures) -> float:
    """What `heights.body_rise` comes to, mm: the other's, and what the two tops' own parts differ; never under 0.

    Rim, neck block and neck give the most of it and are not solved: they are taken to give as the other's do.
    """
    apart = own[n.pulled_action] - other[n.pulled_action]
    found = float(other[n.heights_body_rise] + apart)
    return 0.0 if found < 0.0 else found  # not max(): what is not known stays so


def rise_in_words(own: Figures, other: Figures, unit: LengthUnit) -> tuple[str, ...]:
    """The rise in words, with the key to write if the maker wants it; nothing if it is not known."""
    rise = rise_that_follows(own, other)
    if math.isnan(rise):
        return ()
    kept, taken, apart = (
        _finely(each, unit) for each in (own[n.heights_body_rise], other[n.heights_body_rise],
                                         own[n.pulled_action] - other[n.pulled_action])
    )  # fmt: skip
    written = f"{rise:.2f} mm" if unit == "mm" else f"{rise / 25.4:.4f} in"
    return (
        f"{other[n.instrument_name]} is set for {taken} of rise; by their tops alone this one's differs by {apart}",
        f'if that was right there, and rim and neck are alike, write here under [heights]: body_rise = "{written}"',
        f"nothing is changed by itself: it is {kept} now",
    )


BEFORE_GLUING = "width within 2 %, place within a tenth of the largest: the sign and the size, not the last digit"
"""How sure the figures are of what a brace's width and place do."""


def wider_and_aside(each: Shaving) -> tuple[str, str, str, str]:
    """What 1 mm more width, and 1 mm toward the tail, do to the bridge's turn and the first mode."""
    turns = (f"{signed(math.degrees(value), 3)}°" for value in (each.wider_turn, each.aside_turn))
    modes = (f"{signed(value, 2)} Hz" for value in (each.wider_first, each.aside_first))
    wider, aside = zip(turns, modes, strict=True)
    return (*wider, *aside)


def pushes_in_words(figures: Figures, formatter: Formatter) -> tuple[str, ...]:
    """Each push on the strung guitar beside the solved one, and what it says of the top's stiffness."""
    return tuple(line for each in figures[n.push_list] for line in _push(each, formatter.first))


def _push(each: PushCompared, unit: LengthUnit) -> Iterator[str]:
    given, solved, off, least, most = (
        _finely(value, unit) for value in (each.given, each.solved, each.solved_within, each.least, each.most)
    )
    yield f"{each.name}: the saddle gave {given}; solved {solved} ± {off}, {least} to {most} by the wood"
    yield f"so it is {each.factor:.2f} ± {each.factor_within:.2f} times as stiff as solved, with what rim and glue give"
    if not each.least <= each.given <= each.most:
        yield "no wood explains that alone: look at how the rim was held, at glue lines, and at braces as described"
    turn, turn_off = (f"{math.degrees(value):.2f}°" for value in (each.turn, each.turn_within))
    yield f"if all of it is so, the bridge turns {turn} ± {turn_off} under the strings, at once"


def _finely(value: float, unit: LengthUnit) -> str:
    """A length as a dial gauge tells it."""
    return f"{value:.3f} mm" if unit == "mm" else f"{value / 25.4:.4f} in"


def picture_words(picture: ModePicture, formatter: Formatter) -> str:
    """A mode in words: the parts that move as one, where each moves most, and which way."""
    parts = [_belly(each, formatter) for each in picture.bellies]
    count = "one part moves" if len(parts) == 1 else f"{len(parts)} parts move"
    lines = {0: "no line at rest", 1: "one line at rest"}.get(len(picture.lines), f"{len(picture.lines)} lines at rest")
    return f"{count}, {lines}: {'; '.join(parts)}"


MIDDLE = 8.0
"""A place this near to the centreline, in mm, is said to be on it."""


def _belly(belly: Belly, formatter: Formatter) -> str:
    along, across = (shown(round(each), "mm", formatter.first) for each in (belly.x, abs(belly.y)))
    side = (
        "on the centreline" if abs(belly.y) < MIDDLE else f"{across} toward the {'treble' if belly.y > 0 else 'bass'}"
    )
    way = "up" if belly.share > 0 else "down"
    return f"{way} {abs(belly.share):.0%} at {along} along, {side}"


def shaving_rows(figures: Figures) -> Sequence[Any]:
    """The braces by how much a shaving of each turns the bridge, the most first; then the top's thickness."""
    found = sorted(figures[n.shaving_list], key=lambda each: -abs(each.turn))
    return (*found, *figures[n.shaving_thickness])
