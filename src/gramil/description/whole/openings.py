"""A new whole guitar's openings: an oval in place of its round hole, and a port in a side."""

import re

from gramil.description.reading import parse_description
from gramil.description.whole.inserted import with_lines_before
from gramil.description.whole.pen import number, row
from gramil.faults import MakersFault
from gramil.in_shop_units import own_words_in_shop_units
from gramil.measure import read_length

BEFORE = "\n[[brace]]\n"
"""A port's table comes before the first of these."""


def with_oval(text: str, measures: str) -> str:
    """The description with an oval hole of "along, across" in place of its round one; its rings keep their distance.

    Raises MakersFault for measures that cannot be read, or that the body has no room for.
    """
    instrument = parse_description(text, "the new description").instrument
    unit, diameter = instrument.instrument.units, instrument.soundhole.diameter or 0.0
    given = [read_length(each, unit) for each in measures.split(",")]
    if len(given) != 2:
        raise MakersFault.of(
            f"read {measures}",
            "An oval hole has a size along the body and one across it",
            own_words_in_shop_units('Write them in that order: "84 mm, 104 mm"', unit),
            where="soundhole",
        )
    sizes = (
        row("shape", '"oval"', "or round, with a diameter; or D"),
        row("along", number(given[0], unit), "its size along the body"),
        row("across", number(given[1], unit), "and across"),
    )
    found = re.sub(r"(?m)^diameter = .*$", "\n".join(sizes), text, count=1)
    for ring in instrument.rosette:
        gap = row("gap", number(((ring.inner or diameter) - diameter) / 2, unit), "from the hole's edge, all round")
        found = re.sub(r"(?m)^inner = .*$", gap, found, count=1)
    parse_description(found, "the new description")
    return found


def with_port(text: str, measures: str) -> str:
    """The description with a port of "side, place along it, length, height", half way down; or "side, place, diameter".

    Raises MakersFault for measures that cannot be read, or that the body has no room for.
    """
    unit = parse_description(text, "the new description").instrument.instrument.units
    side, *sizes = (each.strip() for each in measures.split(","))
    if len(sizes) not in (2, 3) or side not in ("bass", "treble"):
        raise MakersFault.of(
            f"read {measures}",
            "A port has its side, its place along that from the neck, and a diameter, or a length and a height",
            own_words_in_shop_units('Write them in that order: "bass, 220 mm, 60 mm, 38 mm"', unit),
            where="port",
        )
    place, *size = (number(read_length(each, unit), unit) for each in sizes)
    keys = ("diameter",) if len(size) == 1 else ("along", "across")
    said = {"diameter": "of a round port", "along": "its length along the side", "across": "its height"}
    lines = (
        "",
        "# A port in the side: its place is on the outside of the side laid flat.",
        "[[port]]",
        row("name", '"port"', "stands on its template and sheet"),
        row("side", f'"{side}"', "bass or treble"),
        row("centre", place, "along the side, from its middle at the neck; half way down it"),
        *(row(key, value, said[key]) for key, value in zip(keys, size, strict=True)),
    )
    return with_lines_before(text, BEFORE, lines)
