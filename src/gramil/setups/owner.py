"""What the instrument wants from its owner's air: the last page of the build book."""

import math
from typing import Any

from gramil import names as n
from gramil.description.records import Stuff
from gramil.quantities import Count, Mm, Percent, PerMm
from gramil.reference import Ref, Text, says
from gramil.setups.setup import BigFigure, Setup, Table
from gramil.wood.movement import outside

OWNS = ("setup_",)
TITLE = "What this guitar wants from its owner's air"
SKIN = says(
    "Who is sensitive to wood may be so to a finished one: the neck is of {}, the board of {}. At a rash or a tight "
    "chest "
    "stop playing it, and ask a doctor.",
    n.stuff_list["neck"].wood,
    n.stuff_list["board"].wood,
)
MOISTURES = (n.swell_moisture_dry, n.swell_moisture_made, n.swell_moisture_wet)
"""Those of `swell_moistures`."""


def setup_owner_air(
    sprout_most: Mm,
    core_inset: Mm,
    scale_frets: Count,
    dome_curvature_dry: PerMm,
    dome_curvature_dry_least: PerMm,
    across_unheld: str,
    stuff_list: tuple[Stuff, ...],
    swell_moistures: tuple[Percent, ...],
    top_radius: Mm,
) -> Setup:
    """The air that it was made in, the driest and dampest reckoned with, and what it does in them.

    Where no source gives what that is, its care and who may be sensitive to it are told all the same.

    Method: the movement of the board and of the top's dome between those airs; the rest is care.
    Source: common practice.
    """
    board, dome = not math.isnan(sprout_most), not math.isnan(dome_curvature_dry)
    what = "rise" if math.isinf(top_radius) else "dome"
    carried = tuple(_carried_on(each) for each, found in zip(MOISTURES, swell_moistures, strict=True) if outside(found))
    return Setup(
        "owner-air",
        TITLE,
        900,
        (
            *_airs(dome_curvature_dry, dome_curvature_dry_least, what),
            *(_board_figures(core_inset) if board else ()),
        ),
        (
            "Keep it in its case with something damp in winter, and with a dry bag in a damp summer. Watch a "
            "hygrometer, not the weather.",
            "Sharp fret ends, a sunken top, low strings and a top that pulls in behind the bridge say: too dry. "
            "A bellied top and high strings say: too damp.",
            "Damp it slowly, over a week or more; then judge what is left. Do not dress fret ends before that.",
            "Never a hot car, a radiator, or an outside wall.",
            "What wants a tool or a file is for a repairer, who has these figures from this page.",
        ),
        "Read the hygrometer beside a second one in the same case: of two that disagree by much neither is right.",
        (),
        (says("board of {}", n.board_wood), says("top of {}", n.top_wood)),
        tables=(_widths(scale_frets),) if board else (),
        notes=(
            _board_words(board),
            _dome_words(dome, across_unheld, what),
            *carried,
            SKIN,
            *(says("{}", n.stuff_list[each.name].permit) for each in _protected(stuff_list)),
        ),
    )


def _protected(stuff_list: tuple[Stuff, ...]) -> tuple[Stuff, ...]:
    """The parts whose wood is listed, or may be; one for each wood."""
    found = {each.permit: each for each in reversed(stuff_list) if each.permit}
    return tuple(reversed(found.values()))


def _carried_on(moisture: Ref[Percent]) -> Text:
    return says(
        "Moisture of {} lies outside the range in which wood's movement is published: its figures are carried on.",
        moisture,
    )


def _board_figures(core_inset: Mm) -> tuple[BigFigure, ...]:
    step = BigFigure(n.swell_step_dry, "Board against its binding in the driest air", "", "finger")
    ends = BigFigure(
        n.sprout_most, "Fret ends then stand out of each edge, at most", says("least {}", n.sprout_least), "finger"
    )
    return (ends, step) if core_inset else (ends,)


def _airs(dry: PerMm, dry_least: PerMm, what: str) -> tuple[BigFigure, ...]:
    """The three airs, each with what the top's dome is in it, or the rise of one that was made flat."""
    sunk = ": sunk, a hollow" if dry_least < 0 else ", a hollow" if dry < 0 else ""
    made = says(f"top's {what} {{}} over {{}}", n.dome_rise_made, n.dome_across)
    case = "hygrometer in the case"
    return (
        BigFigure(n.limit_gluing_humidity, "Relative humidity that it was made at", made, case),
        BigFigure(
            n.limit_owner_humidity_least,
            "Driest air reckoned with",
            _dome(n.dome_rise_dry_least, n.dome_rise_dry, dry, what, sunk),
            "hygrometer",
        ),
        BigFigure(
            n.limit_owner_humidity_most,
            "Dampest air reckoned with",
            _dome(n.dome_rise_wet_least, n.dome_rise_wet, dry, what),
            "hygrometer",
        ),
    )


def _dome(least: Ref[Any], most: Ref[Any], curvature: PerMm, what: str, sunk: str = "") -> Text:
    """The least that it changes, then the most; a hollow dome in words, since a minus sign says little to the
    reader.
    """
    if math.isnan(curvature):
        return says(f"top's {what} {{}}", most)
    return says(f"top's {what} {{}}, at most {{}}{sunk}", least, most)


def _board_words(known: bool) -> Text:
    if not known:
        return says("No source gives how {} moves: nothing can be said of fret ends.", n.board_wood)
    return says(
        "The board's wood moves from {} to {} of moisture between these airs; "
        "it was worked at {}. The range is how the board may be sawn.",
        n.swell_moisture_dry,
        n.swell_moisture_wet,
        n.swell_moisture_made,
    )


def _dome_words(known: bool, unheld: str, what: str) -> Text:
    if unheld:
        return says(f"What the top's {what} becomes is not predicted: {{}}.", n.across_unheld)
    if not known:
        return says(
            f"What the top's {what} becomes is not known: no source gives all that it hangs on ({{}}, braces of {{}}).",
            n.top_wood,
            n.top_brace_wood,
        )
    return says(
        ("The dome is told as its rise" if what == "dome" else "The rise is told")
        + " under a straightedge across the top: first what is likely to be left of the "
        "change once the wood has crept, then an upper bound, as if it never did and the sides did not hold it. "
        "Braces are taken as {} wide, {} high and {} apart, of {}.",
        n.dome_brace_width,
        n.dome_brace_height,
        n.dome_brace_spacing,
        n.top_brace_wood,
    )


def _widths(scale_frets: Count) -> Table:
    return Table(
        "Change of the board's width, quartersawn to flatsawn",
        (
            ("dry, least", n.swell_width_dry_least),
            ("dry, most", n.swell_width_dry_most),
            ("damp, least", n.swell_width_wet_least),
            ("damp, most", n.swell_width_wet_most),
        ),
        tuple(sorted({0, scale_frets // 2, scale_frets})),
    )
