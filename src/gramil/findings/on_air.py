"""Verdicts on wood and air: the air where gluing is done, the board's moisture, and its movement at the owner's."""

import math
from typing import Any

from gramil import names as n
from gramil.description.wood.air_values import PerPercent, WoodState
from gramil.findings.finding import Finding, Findings
from gramil.findings.threshold import at_least, at_most, judged, not_judged, saying
from gramil.parts.records import BlankChoice
from gramil.quantities import Celsius, Mm, MPa, Percent, PerMm
from gramil.reference import Ref, says
from gramil.wood.equilibrium import equilibrium_moisture

OWNS = ("finding_",)

FLAT = 2e-9
"""Curvature, 1/mm, that counts as none: such a dome falls by a quarter of a thousandth of a mm over a metre."""


def finding_gluing_air(
    air_known: bool,
    air_unknown_because: str,
    air_humidity: Percent,
    limit_gluing_humidity_least: Percent,
    limit_gluing_humidity_most: Percent,
) -> Findings:
    """Whether the air where gluing is done lies in the band for gluing, at its last reading."""
    name = "air for gluing"
    if not air_known:
        return (not_judged(name, n.air_humidity, air_unknown_because, "Read the air where you glue, and give it."),)
    dry = saying(
        at_least(n.limit_gluing_humidity_least, limit_gluing_humidity_least),
        "Too dry to glue in.",
        "Put water into the air, or glue elsewhere.",
    )
    damp = saying(
        at_most(n.limit_gluing_humidity_most, limit_gluing_humidity_most),
        "Too damp to glue in.",
        "Dry the air, or glue elsewhere.",
    )
    return (judged(name, n.air_humidity, air_humidity, damp + dry, "Good for gluing."),)


def finding_board_moisture(
    air_known: bool,
    air_unknown_because: str,
    air_pieces: tuple[WoodState, ...],
    air_pieces_unknown: tuple[str, ...],
    air_temperature: Celsius,
    blank_choice: BlankChoice,
    limit_gluing_humidity_least: Percent,
    limit_gluing_humidity_most: Percent,
) -> Findings:
    """Whether the piece that the board comes from has settled within the band for gluing."""
    name = "moisture of the board"
    if not air_known:
        return (not_judged(name, n.air_pieces, air_unknown_because, "Read the air, and say where the piece lay."),)
    piece = next((each for each in air_pieces if each.name == blank_choice.name), None)
    if piece is None:
        why = next((each for each in air_pieces_unknown if each.startswith(blank_choice.name)), "")
        because = f"because {why}" if why else "because the shop does not say where the piece for the board has lain"
        return (not_judged(name, n.blank_choice, because, "List it as a piece, with where it lay."),)
    low, high = (
        float(equilibrium_moisture(air_temperature, humidity))
        for humidity in (limit_gluing_humidity_least, limit_gluing_humidity_most)
    )
    return (_settled(name, piece, low, high),)


def _settled(name: str, piece: WoodState, low: Percent, high: Percent) -> Finding:
    """Against the moisture that the band for gluing leads to."""
    dry = "Drier than wood that has settled in the air for gluing: the board would swell later."
    damp = "Damper than wood that has settled in the air for gluing: the board would shrink later."
    perhaps = "Likely settled; it may still lie outside, since how fast it follows the air is known as a range."
    return judged(
        name,
        n.air_pieces[piece.name].moisture_likely,
        piece.moisture_likely,
        (
            *saying(at_least(None, low), dry),
            *saying(at_most(None, high), damp),
            *saying(at_least(None, low, "note", of=piece.moisture_least), perhaps),
            *saying(at_most(None, high, "note", of=piece.moisture_most), perhaps),
        ),
        "Settled in the air for gluing.",
        piece.when,
    )


def finding_sprout(sprout_least: Mm, sprout_most: Mm, limit_sprout: Mm, board_wood: str) -> Findings:
    """Whether fret ends will stand out of the board in the driest air of its owner's year."""
    if math.isnan(sprout_most):
        return (_no_movement("fret ends in dry air", n.sprout_most, board_wood),)
    sure = "However it is sawn, the fret ends will be felt."
    return (
        judged(
            "fret ends in dry air",
            n.sprout_most,
            sprout_most,
            saying(at_most(n.limit_sprout, limit_sprout, of=sprout_least), sure)
            + saying(at_most(n.limit_sprout, limit_sprout, "note"), "At most, on a flatsawn board."),
            "Fret ends stay within what a hand feels.",
            says(
                "Fret it drier, at {} or less, use quartersawn wood, or tell the owner what air it wants.",
                n.sprout_moisture,
            ),
        ),
    )


def finding_binding_step(swell_step_dry: Mm, core_inset: Mm, limit_binding_step: Mm, board_wood: str) -> Findings:
    """Whether a bound board sinks beside its binding enough to be felt in the driest air of its owner's year."""
    if core_inset == 0:
        return ()
    if math.isnan(swell_step_dry):
        return (_no_movement("step at the binding", n.swell_step_dry, board_wood),)
    return (
        judged(
            "step at the binding",
            n.swell_step_dry,
            swell_step_dry,
            at_most(n.limit_binding_step, limit_binding_step, "note", of=-swell_step_dry),
            "In dry air the board sinks beside its binding, in damp air it rises over it.",
            "Scrape the binding flush with the board settled in the air for gluing, not before.",
        ),
    )


def finding_dome(
    dome_rise_dry: Mm,
    dome_curvature_dry: PerMm,
    dome_curvature_dry_least: PerMm,
    top_movement_radial: PerPercent,
    top_modulus_across: MPa,
    top_brace_modulus: MPa,
    top_wood: str,
    top_brace_wood: str,
    across_unheld: str,
) -> Findings:
    """Whether the top's dome may sink flat, or beyond, in the driest air of its owner's year."""
    name, address = "top's dome in dry air", n.dome_rise_dry
    if across_unheld:
        return (not_judged(name, address, f"because {across_unheld}", "Tell the owner what air it wants."),)
    asked = (
        (top_movement_radial, f"how {top_wood} moves"),
        (top_modulus_across, f"how stiff {top_wood} is across the grain"),
        (top_brace_modulus, f"how stiff {top_brace_wood} is along the grain"),
    )
    if missing := [words for figure, words in asked if math.isnan(figure)]:
        because = f"because no source gives {' and '.join(missing)}"
        remedy = "Name known woods under [top], or give their figures under [[wood]] in the shop."
        return (not_judged(name, address, because, remedy),)
    sure = "Even if creep takes out as much as is likely, it sinks flat or beyond."
    sunk = "At most, with nothing taken out by creep, it sinks flat or beyond."
    return (
        judged(
            name,
            address,
            dome_rise_dry,
            saying(at_least(None, FLAT, of=dome_curvature_dry_least), sure)
            + saying(at_least(None, FLAT, "note", of=dome_curvature_dry), sunk),
            "Some of the dome is left, however it goes.",
            "Make the dome rounder, its braces higher, or tell the owner what air it wants.",
        ),
    )


def _no_movement(name: str, address: Ref[Any], board_wood: str) -> Finding:
    return not_judged(
        name,
        address,
        f"because no source gives how {board_wood} moves",
        "Name a known wood, or give its movement under [[wood]] in the shop.",
    )
