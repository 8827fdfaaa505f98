"""A new whole guitar with bevels: what is written reads back as asked, in either unit, or is refused with reason."""

import pytest

from gramil.description.reading import parse_description
from gramil.description.whole.bevels import with_bevel
from gramil.description.whole.cutaway import with_cutaway
from gramil.description.whole.starting import STARTING_POINTS
from gramil.description.whole.writing import whole_description
from gramil.faults import MakersFault


def whole(start: str = "small", unit: str = "mm") -> str:
    return whole_description({"start": start, "instrument.name": "Nova", "instrument.units": unit})


@pytest.mark.parametrize("start", list(STARTING_POINTS))
def test_every_starting_point_takes_both(start: str) -> None:
    text = with_bevel(with_bevel(whole(start), "arm", "25 mm, 15 mm, 300 mm, -20 mm"), "rib", "16 mm, 12 mm, 220 mm")
    told = parse_description(text).instrument
    arm, rib = told.arm_bevel, told.rib_bevel
    assert (arm.width, arm.drop, arm.length, arm.place) == (25, 15, 300, -20)
    assert (rib.width, rib.drop, rib.length, rib.place) == (16, 12, 220, 0)


def test_beside_a_cutaway_and_in_inches() -> None:
    told = parse_description(with_bevel(with_cutaway(whole(unit="in"), "3.75, 2.0"), "arm", "1, 5/8, 12")).instrument
    assert (told.arm_bevel.width, told.arm_bevel.drop, told.arm_bevel.length) == pytest.approx((25.4, 15.875, 304.8))
    assert told.cutaway.depth == pytest.approx(95.25)


@pytest.mark.parametrize(
    ("measures", "words"),
    [
        ("25 mm, 15 mm", "a width on the plate, a drop"),
        ("25 mm, 15 mm, long", "cannot be read as a length"),
        ("25 mm, 15 mm, 2000 mm", "past the middle of the"),
        ("-25 mm, 15 mm, 300 mm", "at least 0 mm"),
    ],
)
def test_what_cannot_be_is_refused(measures: str, words: str) -> None:
    with pytest.raises(MakersFault, match=words):
        with_bevel(whole(), "arm", measures)
