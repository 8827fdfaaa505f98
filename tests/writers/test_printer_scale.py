"""What a proof bar measures on a print, as a maker writes it: a share, bare inches, or a length with its unit."""

import pytest

from gramil.faults import MakersFault
from gramil.measure import LengthUnit
from gramil.writers.paper import checked, read_scale


@pytest.mark.parametrize(
    ("written", "unit", "share"),
    [
        ("0.998", "mm", 0.998),
        ("0.998", "in", 0.998),
        ("3.992", "in", 0.998),
        ("3.992 in", "mm", 0.998),
        ("4 1/64 in", "in", 1.00390625),
        ("99.8 mm", "in", 0.998),
        ("99.8 mm", "mm", 0.998),
        ("101.4 mm", "in", 101.4 / 101.6),
    ],
)
def test_a_bar_is_held_against_its_own_length(written: str, unit: LengthUnit, share: float) -> None:
    """4 in are 101.6 mm: 3.992 / 4 and 99.8 / 100 are 0.998, and 101.4 mm is nearer to 4 in than to 100 mm."""
    assert read_scale(written, unit) == pytest.approx(share, rel=1e-12)


@pytest.mark.parametrize("written", ["", "wide", "3.9.9 in", "3,99"])
def test_what_is_no_length_says_what_to_write(written: str) -> None:
    with pytest.raises(MakersFault, match="what the bar measures"):
        read_scale(written, "in")


@pytest.mark.parametrize("written", ["0", "2 in", "99.8", "nan"])
def test_what_no_bar_measures_is_refused(written: str) -> None:
    with pytest.raises(MakersFault, match="no printer's"):
        checked((read_scale(written, "mm"), 1.0))
