"""What the instrument wants from its owner's air: the last page of the build book."""

import math

from gramil.quantities import Count, Mm
from gramil.setups.setup import BigFigure, Setup, Table, skipped

OWNS = ("setup_",)
TITLE = "What this guitar wants from its owner's air"


def setup_owner_air(sprout_most: Mm, core_inset: Mm, scale_frets: Count) -> Setup:
    """The air that the instrument was made in, the driest and dampest that it is meant for, and what it does in them.

    Method: the board's movement between those airs; the rest is care.
    Source: common practice.
    """
    if math.isnan(sprout_most):
        return skipped("owner-air", TITLE, 900, "No source gives how {board_wood} moves: nothing can be said.")
    step = BigFigure("swell_step_dry", "Board against its binding in the driest air", "", "finger")
    bound = (step,) if core_inset else ()
    return Setup(
        "owner-air",
        TITLE,
        900,
        (
            BigFigure("limit_gluing_humidity", "Relative humidity that it was made for", "", "hygrometer in the case"),
            BigFigure("limit_owner_humidity_least", "Driest air that it is meant for", "", "hygrometer"),
            BigFigure("limit_owner_humidity_most", "Dampest air that it is meant for", "", "hygrometer"),
            BigFigure(
                "sprout_most", "Fret ends then stand out of each edge, at most", "least {sprout_least}", "finger"
            ),
            *bound,
        ),
        (
            "Keep it in its case with something damp in winter, and with a dry bag in a damp summer. Watch a "
            "hygrometer, not the weather.",
            "Sharp fret ends, a sunken top, low strings and a top that pulls in behind the bridge say: too dry. "
            "A bellied top and high strings say: too damp.",
            "Damp it slowly, over a week or more; then judge what is left. Do not dress fret ends before that.",
            "Never a hot car, a radiator, or an outside wall.",
        ),
        "A hygrometer read beside a second one in the same case: two that disagree by much are both wrong.",
        (
            "The board's wood moves from {swell_moisture_dry} to {swell_moisture_wet} of moisture between these airs; "
            "it was worked at {swell_moisture_made}. The range is how the board may be sawn.",
        ),
        ("board of {board_wood}",),
        tables=(
            Table(
                "Change of the board's width, quartersawn to flatsawn",
                (
                    ("dry, least", "swell_width_dry_least"),
                    ("dry, most", "swell_width_dry_most"),
                    ("damp, least", "swell_width_wet_least"),
                    ("damp, most", "swell_width_wet_most"),
                ),
                tuple(sorted({0, scale_frets // 2, scale_frets})),
            ),
        ),
    )
