"""Fret positions against the twelfth root of two to 50 digits, and against the constant published for the trade.

The constant: a fret lies 1/17.817 of what is left of the string past the fret before it. It is read as 17.817 in a
transcription of a 1996 article's summary; 17.817154 is 1 / (1 - 2^(-1/12)) worked out.
"""

from collections.abc import Callable

import mpmath
import numpy as np
import pytest

from gramil.graph import Figures

DIGITS = 50


def with_scale(text: str, length: str, frets: int, temperament: str = "12-equal") -> str:
    """An example's text with another scale."""
    for old, new in (
        ("length = 630 ", f'length = "{length}" '),
        ("frets = 19\n", f"frets = {frets}\n"),
        ("12-equal", temperament),
    ):
        assert old in text
        text = text.replace(old, new, 1)
    return text


@pytest.mark.parametrize("length", ["630 mm", "648.5 mm", "25 1/2 in", "710 mm", "330 mm"])
@pytest.mark.parametrize("steps", [12, 19, 24, 31])
def test_against_fifty_digits(
    length: str, steps: int, text_of: Callable[[str], str], derive_text: Callable[..., Figures]
) -> None:
    figures = derive_text(with_scale(text_of("tarn"), length, 19, f"{steps}-equal"))
    scale = mpmath.mpf("647.7") if "in" in length else mpmath.mpf(length.split()[0])
    with mpmath.workdps(DIGITS):
        wanted = [float(scale * (1 - mpmath.root(2, steps) ** -fret)) for fret in range(20)]
    np.testing.assert_allclose(figures["fret_position"], wanted, rtol=0, atol=1e-12 * float(scale))


def test_the_published_constant(text_of: Callable[[str], str], derive_text: Callable[..., Figures]) -> None:
    figures = derive_text(with_scale(text_of("tarn"), "630 mm", 19))
    left = 630 - figures["fret_position"]
    steps = figures["fret_step"][1:]
    assert left[:-1] / steps == pytest.approx(np.full(19, 17.817154), abs=5e-7)
    np.testing.assert_allclose(left[:-1] / steps, 17.817, atol=5e-4)


def test_the_octave_halves_the_string_and_two_quarter_it(
    text_of: Callable[[str], str], derive_text: Callable[..., Figures]
) -> None:
    figures = derive_text(with_scale(text_of("tarn"), "640 mm", 24))
    assert figures["fret_position"][12] == 320.0
    assert figures["fret_position"][24] == 480.0


# Common practice, and elementary: an error e in a slot costs 1200/ln 2 x e / (L - x) cents. Worked by hand for 630 mm
# and 0.05 mm: 1731.234049 x 0.05 / (630 x 0.943874313) at fret 1; / 315 at fret 12; / (630 x 0.333709964) at fret 19.
@pytest.mark.parametrize(("fret", "cents"), [(1, 0.145570), (12, 0.274799), (19, 0.411733)])
def test_cents_that_an_error_costs(
    fret: int, cents: float, text_of: Callable[[str], str], derive_text: Callable[..., Figures]
) -> None:
    figures = derive_text(with_scale(text_of("tarn"), "630 mm", 19))
    assert 0.05 * figures["fret_cents_per_mm"][fret] == pytest.approx(cents, abs=1e-6)
    assert figures["fret_cents_per_tenth"][fret] == pytest.approx(2 * cents, abs=2e-6)
