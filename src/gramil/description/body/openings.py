"""Base values of the body's openings: the soundhole's place and sizes, and every hole, ring and port as a record."""

from gramil import names as n
from gramil.description.body.opening_tables import SOUNDHOLE, HoleTable, PortTable, Rosette
from gramil.description.body.records import OpeningAsked, PortAsked, RingAsked
from gramil.description.instrument import Instrument
from gramil.description.normal_row import Normal, Values, known
from gramil.quantities import Mm

_SHAPE = tuple(f"soundhole.{key}" for key in ("aside", "shape", "along", "across", "corner", "lean"))

OPENING_ROWS: tuple[Normal, ...] = (
    Normal(n.soundhole_given, Mm, "the soundhole's centre from what it is held to", ("soundhole.centre",), "none"),
    Normal(n.soundhole_diameter, Mm, "the soundhole's diameter", ("soundhole.diameter",), "none, or it is not round"),
    Normal(n.soundhole_along, Mm, "a soundhole's size along the body", ("soundhole.along",), "none, or it is round"),
    Normal(n.soundhole_across, Mm, "a soundhole's size across", ("soundhole.across",), "none, or it is round"),
    Normal(
        n.openings_asked,
        tuple[OpeningAsked, ...],
        "holes in the top, the soundhole first",
        ("opening", *_SHAPE),
        "none",
    ),
    Normal(n.rosette_asked, tuple[RingAsked, ...], "rings round the holes", ("rosette",), "none"),
    Normal(n.ports_asked, tuple[PortAsked, ...], "ports in the sides", ("port",), "none"),
)
"""Every base value of openings that is not simply one key."""


def opening_values(instrument: Instrument) -> Values:
    """The values of `OPENING_ROWS`."""
    soundhole = instrument.soundhole
    holes = ((SOUNDHOLE, soundhole), *((row.name, row) for row in instrument.opening))
    return {
        n.soundhole_given: known(soundhole.centre),
        n.soundhole_diameter: known(soundhole.diameter),
        n.soundhole_along: known(soundhole.along),
        n.soundhole_across: known(soundhole.across),
        n.openings_asked: tuple(asked for name, row in holes for asked in _hole(name, row)),
        n.rosette_asked: tuple(_ring(row) for row in instrument.rosette),
        n.ports_asked: tuple(_port(row) for row in instrument.port),
    }


def _hole(name: str, row: HoleTable) -> tuple[OpeningAsked, ...]:
    if row.hole is None or row.centre is None:
        return ()
    diameter, along, across = map(known, (row.diameter, row.along, row.across))
    sizes = diameter, along, across, row.hole.corner
    return (OpeningAsked(name, row.held_to, row.centre, row.aside, row.lean, row.shape, *sizes),)


def _ring(row: Rosette) -> RingAsked:
    return RingAsked(row.name, row.round, known(row.inner), known(row.gap), row.width, row.depth)


def _port(row: PortTable) -> PortAsked:
    below, diameter, along, across = map(known, (row.below, row.diameter, row.along, row.across))
    sizes = diameter, along, across
    return PortAsked(row.name, row.side, row.centre, below, row.hole.shape, *sizes, row.patch, row.patch_reach)
