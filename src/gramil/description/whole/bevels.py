"""A new whole guitar's bevels: each one's table, from its three measures and, where it is given, its place."""

from gramil.description.reading import parse_description
from gramil.description.whole.cutaway import BEFORE
from gramil.description.whole.inserted import with_lines_before
from gramil.description.whole.pen import number, row
from gramil.faults import MakersFault
from gramil.in_shop_units import own_words_in_shop_units
from gramil.measure import read_length

FOR = {"arm": "# A bevel for the playing arm, on the bass side.", "rib": "# A bevel for the ribs, at the back."}

IN_ORDER = 'Write them in that order: "25 mm, 15 mm, 300 mm"; the place is from where the body is widest, to the tail'


def with_bevel(text: str, name: str, measures: str) -> str:
    """The description with a bevel of "width, drop, length" or "width, drop, length, place", for the arm or the ribs.

    Raises MakersFault for measures that cannot be read, or that the body has no room for.
    """
    unit = parse_description(text, "the new description").instrument.instrument.units
    given = [read_length(each, unit) for each in measures.split(",")]
    if len(given) not in (3, 4):
        raise MakersFault.of(
            f"read {measures}",
            "A bevel has a width on the plate, a drop down the side and a length, and may have a place",
            own_words_in_shop_units(IN_ORDER, unit),
            where=f"{name}_bevel",
        )
    width, drop, length, place = (*given, 0.0)[:4]
    lines = (
        "",
        FOR[name],
        f"[{name}_bevel]",
        row("width", number(width, unit), "in on the plate, at its middle"),
        row("drop", number(drop, unit), "down from the plate's face there"),
        row("length", number(length, unit), "round the body"),
        row("place", number(place, unit), "its middle, from where the body is widest toward the tail"),
    )
    return with_lines_before(text, BEFORE, lines)
