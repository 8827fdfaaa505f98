"""Verdicts on wood and air: the air where gluing is done, the board's moisture, and its movement at the owner's."""

import math
from typing import Any

from gramil import names as n
from gramil.description.air_values import PerPercent, WoodState
from gramil.findings.finding import Finding, Findings, Severity, within
from gramil.parts.records import BlankChoice
from gramil.quantities import Celsius, Mm, MPa, Percent, PerMm
from gramil.reference import Ref, says
from gramil.wood.equilibrium import equilibrium_moisture

OWNS = ("finding_",)


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
        return (_not_judged(name, n.air_humidity, air_unknown_because, "Read the air where you glue, and give it."),)
    dry, wet = air_humidity < limit_gluing_humidity_least, air_humidity > limit_gluing_humidity_most
    says = "Too dry to glue in." if dry else "Too damp to glue in." if wet else "Good for gluing."
    remedy = "Put water into the air, or glue elsewhere." if dry else "Dry the air, or glue elsewhere." if wet else ""
    limit = n.limit_gluing_humidity_most if wet else n.limit_gluing_humidity_least
    return (Finding(name, "caution" if dry or wet else "fine", n.air_humidity, air_humidity, limit, says, remedy),)


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
        return (_not_judged(name, n.air_pieces, air_unknown_because, "Read the air, and say where the piece lay."),)
    piece = next((each for each in air_pieces if each.name == blank_choice.name), None)
    if piece is None:
        why = next((each for each in air_pieces_unknown if each.startswith(blank_choice.name)), "")
        because = f"because {why}" if why else "because the shop does not say where the piece for the board has lain"
        return (_not_judged(name, n.blank_choice, because, "List it as a piece, with where it lay."),)
    low, high = (
        float(equilibrium_moisture(air_temperature, humidity))
        for humidity in (limit_gluing_humidity_least, limit_gluing_humidity_most)
    )
    severity, says = _settled(piece, (low, high))
    address = n.air_pieces[piece.name].moisture_likely
    return (Finding(name, severity, address, piece.moisture_likely, None, says, piece.when),)


def _settled(piece: WoodState, band: tuple[float, float]) -> tuple[Severity, str]:
    """Against the moisture that the band for gluing leads to."""
    if piece.moisture_likely < band[0]:
        return "caution", "Drier than wood that has settled in the air for gluing: the board would swell later."
    if piece.moisture_likely > band[1]:
        return "caution", "Damper than wood that has settled in the air for gluing: the board would shrink later."
    if piece.moisture_least < band[0] or piece.moisture_most > band[1]:
        return (
            "note",
            "Likely settled; it may still lie outside, since how fast it follows the air is known as a range.",
        )
    return "fine", "Settled in the air for gluing."


def finding_sprout(sprout_least: Mm, sprout_most: Mm, limit_sprout: Mm, board_wood: str) -> Findings:
    """Whether fret ends will stand out of the board in the driest air of its owner's year."""
    if math.isnan(sprout_most):
        return (_no_movement("fret ends in dry air", n.sprout_most, board_wood),)
    sure = sprout_least > limit_sprout
    told = "However it is sawn, the fret ends will be felt." if sure else "At most, on a flatsawn board."
    if sprout_most <= limit_sprout:
        told = "Fret ends stay within what a hand feels."
    return (
        Finding(
            "fret ends in dry air",
            within(sprout_most, limit_sprout, math.inf) if sure else _note(sprout_most > limit_sprout),
            n.sprout_most,
            sprout_most,
            n.limit_sprout,
            told,
            says(
                "Fret it drier, at {} or less, use quartersawn wood, or tell the owner what air it wants.",
                n.sprout_moisture,
            )
            if sprout_most > limit_sprout
            else "",
        ),
    )


def finding_binding_step(swell_step_dry: Mm, core_inset: Mm, limit_binding_step: Mm, board_wood: str) -> Findings:
    """Whether a bound board sinks beside its binding enough to be felt in the driest air of its owner's year."""
    if core_inset == 0:
        return ()
    if math.isnan(swell_step_dry):
        return (_no_movement("step at the binding", n.swell_step_dry, board_wood),)
    over = -swell_step_dry > limit_binding_step
    return (
        Finding(
            "step at the binding",
            _note(over),
            n.swell_step_dry,
            swell_step_dry,
            n.limit_binding_step,
            "In dry air the board sinks beside its binding, in damp air it rises over it.",
            "Scrape the binding flush with the board settled in the air for gluing, not before." if over else "",
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
        return (_not_judged(name, address, f"because {across_unheld}", "Tell the owner what air it wants."),)
    asked = (
        (top_movement_radial, f"how {top_wood} moves"),
        (top_modulus_across, f"how stiff {top_wood} is across the grain"),
        (top_brace_modulus, f"how stiff {top_brace_wood} is along the grain"),
    )
    if missing := [words for figure, words in asked if math.isnan(figure)]:
        because = f"because no source gives {' and '.join(missing)}"
        remedy = "Name known woods under [top], or give their figures under [[wood]] in the shop."
        return (_not_judged(name, address, because, remedy),)
    sunk, sure = dome_curvature_dry <= 0, dome_curvature_dry_least <= 0
    told = (
        "At most, with nothing taken out by creep, it sinks flat or beyond."
        if sunk
        else "Some of the dome is left, however it goes."
    )
    if sure:
        told = "Even if creep takes out as much as is likely, it sinks flat or beyond."
    remedy = "Make the dome rounder, its braces higher, or tell the owner what air it wants." if sunk else ""
    return (Finding(name, "caution" if sure else _note(sunk), address, dome_rise_dry, None, told, remedy),)


def _note(over: bool) -> Severity:
    return "note" if over else "fine"


def _no_movement(name: str, address: Ref[Any], board_wood: str) -> Finding:
    return _not_judged(
        name,
        address,
        f"because no source gives how {board_wood} moves",
        "Name a known wood, or give its movement under [[wood]] in the shop.",
    )


def _not_judged(name: str, address: Ref[Any], because: str, remedy: str) -> Finding:
    return Finding(name, "not judged", address, math.nan, None, because, remedy)
