"""Verdicts on a body that is not alike left and right: its tight bends, the room beside the board, block and heel."""

import math

from gramil import names as n
from gramil.findings.finding import Findings
from gramil.findings.threshold import at_least, judged, saying
from gramil.parts.body_records import Bend, BodyBlock
from gramil.quantities import Count, Mm
from gramil.reference import says

OWNS = ("finding_",)


def finding_tight_bend(bend_treble: tuple[Bend, ...], bend_tightest_treble: Mm, limit_bend_radius: Mm) -> Findings:
    """Whether the treble side, as thick as it is, goes round its tightest bend."""
    if math.isnan(bend_tightest_treble):
        return ()
    tightest = min((each for each in bend_treble if each.kind != "corner"), key=lambda each: each.radius)
    return (
        judged(
            "tightest bend of the treble side",
            n.bend_tightest_treble,
            bend_tightest_treble,
            saying(
                at_least(n.limit_bend_radius, limit_bend_radius),
                says(f"At the {tightest.name} a side {{}} thick is likely to crack.", n.body_wall),
                says(
                    f"Scrape it thinner at the {tightest.name}, to {{}} at the most, give the horn a larger radius, or "
                    "mitre it to a point.",
                    n.bend_thin_to,
                ),
            ),
            f"The treble side is bent tightest at the {tightest.name}.",
        ),
    )


def finding_tight_bend_bass(bend_bass: tuple[Bend, ...], bend_tightest_bass: Mm, limit_bend_radius: Mm) -> Findings:
    """Whether the bass side goes round its tightest bend, where the two are not alike."""
    if math.isnan(bend_tightest_bass):
        return ()
    tightest = min((each for each in bend_bass if each.kind != "corner"), key=lambda each: each.radius)
    return (
        judged(
            "tightest bend of the bass side",
            n.bend_tightest_bass,
            bend_tightest_bass,
            at_least(n.limit_bend_radius, limit_bend_radius),
            f"The bass side is bent tightest at the {tightest.name}.",
            "A thinner side there, an easier bend, or a point that is mitred.",
        ),
    )


def finding_beside_board(access_beside_board: Mm) -> Findings:
    """Whether board and heel keep clear of a cutaway's edge."""
    if math.isnan(access_beside_board):
        return ()
    return (
        judged(
            "board beside the cutaway",
            n.access_beside_board,
            access_beside_board,
            saying(at_least(None, 0.0), "The board hangs over the cutaway's edge, and so does the heel under it."),
            "Top that shows between the board's edge and the cutaway.",
            "Start the cutaway farther out: more under cutaway.heel.",
        ),
    )


def finding_block_beside_cutaway(body_blocks: tuple[BodyBlock, ...]) -> Findings:
    """Whether the neck's block is as wide on the treble side as on the other."""
    cut = [each for each in body_blocks if each.treble < each.half_width]
    return tuple(
        judged(
            f"{each.name} beside the cutaway",
            n.body_blocks[each.name].treble,
            each.treble,
            at_least(None, each.half_width, "note"),
            "From the centreline to the treble side the block has no more room than this, and less than to the bass.",
            "Saw it to the mould's line on that side, and keep the neck's joint clear of the thin cheek left there.",
        )
        for each in cut
    )


def finding_frets_reached(access_depth: Mm, access_fret: Count, scale_frets: Count) -> Findings:
    """How many frets the hand reaches past a cutaway."""
    if math.isnan(access_depth):
        return ()
    return (
        judged(
            "frets that the hand reaches",
            n.access_fret,
            access_fret,
            at_least(n.scale_frets, scale_frets, "note"),
            "The highest fret that lies ahead of the cutaway's deepest place.",
            "A deeper cutaway, if the frets beyond are to be played.",
        ),
    )
