"""Papers by name, by a roll's width and by two lengths; what is none says what to write."""

import pytest

from gramil.faults import MakersFault
from gramil.paper_sizes import SIZES, for_sheets, read_paper, roll_width, sides


@pytest.mark.parametrize(
    ("written", "short", "long"),
    [
        ("A4", 210.0, 297.0),
        ("a0", 841.0, 1189.0),
        ("11 x 17", 279.4, 431.8),
        ("13x19", 330.2, 482.6),
        ("legal", 215.9, 355.6),
        ("440 x 310 mm", 310.0, 440.0),
        ("12 in x 18 in", 304.8, 457.2),
        ("12 × 18 in", 304.8, 457.2),
    ],
)
def test_a_sheet_has_its_two_sides(written: str, short: float, long: float) -> None:
    assert sides(read_paper(written)) == pytest.approx((short, long))


@pytest.mark.parametrize(("written", "wide"), [("roll", 610.0), ("roll 914 mm", 914.0), ("Roll 36 in", 914.4)])
def test_a_roll_has_its_width(written: str, wide: float) -> None:
    assert roll_width(read_paper(written)) == pytest.approx(wide)


@pytest.mark.parametrize("written", ["", "a5", "roll wide", "3 x 4 mm", "310", "x", "a4 x a3", "9 x 9 m"])
def test_what_is_no_paper_says_what_to_write(written: str) -> None:
    with pytest.raises(MakersFault, match="letter"):
        read_paper(written)


def test_every_paper_is_known_under_its_own_name() -> None:
    for name in SIZES:
        assert read_paper(name) == name
        assert sides(name) == SIZES[name]
        assert for_sheets(name, "in") in SIZES
