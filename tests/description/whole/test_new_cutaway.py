"""A new whole guitar with a cutaway: what is written reads back as asked, in either unit, or is refused with reason."""

import pytest

from gramil.description.reading import parse_description
from gramil.description.whole.cutaway import with_cutaway
from gramil.description.whole.starting import STARTING_POINTS
from gramil.description.whole.writing import whole_description
from gramil.faults import MakersFault


def whole(start: str = "small", unit: str = "mm") -> str:
    return whole_description({"start": start, "instrument.name": "Nova", "instrument.units": unit})


@pytest.mark.parametrize("start", list(STARTING_POINTS))
def test_every_starting_point_takes_one(start: str) -> None:
    described = parse_description(with_cutaway(whole(start), "95 mm, 50 mm, 22 mm"))
    cut = described.instrument.cutaway
    assert (cut.depth, cut.horn, cut.radius) == (95, 50, 22)
    assert cut.heel >= described.instrument.board.width / 2 + 2
    assert not described.outlines[0].alike


def test_in_inches_and_without_a_radius() -> None:
    cut = parse_description(with_cutaway(whole(unit="in"), "3.75, 2.0")).instrument.cutaway
    assert (cut.depth, cut.horn, cut.radius) == pytest.approx((95.25, 50.8, 0.0))


@pytest.mark.parametrize(
    ("measures", "words"),
    [
        ("95 mm", "a depth, the width of its horn"),
        ("95 mm, 190 mm", "leaves no room for the hollow"),
        ("95 mm, wide", "cannot be read as a length"),
        ("-95 mm, 50 mm", "more than 0"),
    ],
)
def test_what_cannot_be_is_refused(measures: str, words: str) -> None:
    with pytest.raises(MakersFault, match=words):
        with_cutaway(whole(), measures)
