"""A new whole guitar with an oval hole and a port: what is written reads back as asked, or is refused with reason."""

import pytest

from gramil.description.reading import parse_description
from gramil.description.whole.openings import with_oval, with_port
from gramil.description.whole.writing import whole_description
from gramil.faults import MakersFault


def whole(start: str = "middle", unit: str = "mm") -> str:
    return whole_description({"start": start, "instrument.name": "Nova", "instrument.units": unit})


@pytest.mark.parametrize("start", ["small", "nylon", "twelve"])
def test_an_oval_takes_the_round_ones_place(start: str) -> None:
    """Its ring keeps its distance, half of what it was wider than the hole."""
    before = parse_description(whole(start)).instrument
    told = parse_description(with_oval(whole(start), "76 mm, 90 mm")).instrument
    hole, (ring,) = told.soundhole, told.rosette
    assert (hole.shape, hole.along, hole.across, hole.diameter) == ("oval", 76, 90, None)
    assert hole.centre == before.soundhole.centre
    assert ring.inner is None
    assert ring.gap == (before.rosette[0].inner - before.soundhole.diameter) / 2


def test_a_port_oval_or_round_and_in_inches() -> None:
    (port,) = parse_description(with_port(whole(), "bass, 220 mm, 60 mm, 38 mm")).instrument.port
    assert (port.side, port.centre, port.along, port.across, port.below) == ("bass", 220, 60, 38, None)
    (port,) = parse_description(with_port(whole(unit="in"), "treble, 9, 1 1/4")).instrument.port
    assert (port.side, port.centre, port.diameter) == ("treble", pytest.approx(228.6), pytest.approx(31.75))


@pytest.mark.parametrize(
    ("written", "words"),
    [
        (lambda: with_oval(whole(), "76 mm"), "a size along the body and one across"),
        (lambda: with_oval(whole(), "76 mm, wide"), "cannot be read as a length"),
        (lambda: with_oval(whole(), "76 mm, 290 mm"), "Inside the outline all round"),
        (lambda: with_port(whole(), "220 mm, 60 mm, 38 mm"), "A port has its side"),
        (lambda: with_port(whole(), "bass, 220 mm, -60 mm, 38 mm"), "port"),
    ],
)
def test_what_cannot_be_is_refused(written: object, words: str) -> None:
    with pytest.raises(MakersFault, match=words):
        written()  # type: ignore[operator]
