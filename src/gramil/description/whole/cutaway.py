"""A new whole guitar's cutaway: its table, from the few measures that are given."""

from math import ceil

from gramil.description.reading import parse_description
from gramil.description.whole.inserted import with_lines_before
from gramil.description.whole.pen import number, row
from gramil.faults import MakersFault
from gramil.in_shop_units import own_words_in_shop_units
from gramil.measure import read_length
from gramil.quantities import Mm

BEFORE = "\n[top_binding]\n"
"""The table follows the body's, and comes before this one."""
BESIDE: Mm = 2.5
"""Top that is to show between the board's edge, at its widest, and the cutaway; common practice, from memory."""

IN_ORDER = 'Write them in that order: "95 mm, 50 mm, 32 mm"; without a radius the horn is pointed'


def with_cutaway(text: str, measures: str) -> str:
    """The description with a cutaway of "depth, horn's width, radius", the radius left out or 0 for a point.

    Raises MakersFault for measures that cannot be read, or that cannot be cut out of the body.
    """
    instrument = parse_description(text, "the new description").instrument
    unit = instrument.instrument.units
    given = [read_length(each, unit) for each in measures.split(",")]
    if len(given) not in (2, 3):
        raise MakersFault.of(
            f"read {measures}",
            "A cutaway has a depth, the width of its horn, and the radius of that",
            own_words_in_shop_units(IN_ORDER, unit),
            where="cutaway",
        )
    depth, horn, radius = (*given, 0.0)[:3]
    heel = max(30.0, ceil(instrument.board.width / 2 + BESIDE))
    lines = (
        "",
        "# A cutaway on the treble side: its hollow's radius follows from these.",
        "[cutaway]",
        row("depth", number(depth, unit), "from the neck end to the hollow's deepest place"),
        row("horn", number(horn, unit), "its width, across from there to the outline"),
        row("radius", number(radius, unit), "of the horn's end; 0: a point"),
        row("heel", number(heel, unit), "from the middle to where it begins"),
    )
    return with_lines_before(text, BEFORE, lines)
