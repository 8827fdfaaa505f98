"""Pitches that frets give against the table of equal temperament over ISO 16's A of 440 Hz.

ISO 16:1975, "Acoustics - Standard tuning frequency (standard musical pitch)", first edition: title and foreword were
read; A = 440 Hz was read in a transcription. The table is 440 x 2^((m - 69) / 12), m the note's number with A4 at 69,
worked out elsewhere to four decimals.
"""

from collections.abc import Callable

import pytest

from gramil.graph import Figures

# Note numbers from E2 (40) to E4 (64) and their frequencies in Hz.
TABLE = dict(
    enumerate(
        [
            82.4069, 87.3071, 92.4986, 97.9989, 103.8262, 110.0000, 116.5409, 123.4708, 130.8128,
            138.5913, 146.8324, 155.5635, 164.8138, 174.6141, 184.9972, 195.9977, 207.6523, 220.0000,
            233.0819, 246.9417, 261.6256, 277.1826, 293.6648, 311.1270, 329.6276,
        ],
        start=40,
    )
)  # fmt: skip
OPEN = {"E2": 40, "A2": 45, "D3": 50, "G3": 55, "B3": 59}


@pytest.mark.parametrize("note", OPEN)
@pytest.mark.parametrize("name", ["tarn", "fell"])
def test_frets_sound_the_table(note: str, name: str, example: Callable[[str], Figures]) -> None:
    """An ideal string sounds in inverse proportion to the length from fret to saddle."""
    figures = example(name)
    scale, opened = figures["scale_run"], OPEN[note]
    for fret in range(figures["scale_frets"] + 1):
        if opened + fret in TABLE:
            sounded = TABLE[opened] * scale / (scale - figures["fret_position"][fret])
            assert sounded == pytest.approx(TABLE[opened + fret], abs=3e-4), (note, fret)


@pytest.mark.parametrize(("fret", "hertz"), [(5, 440.0), (0, 329.6276), (12, 659.2551)])
def test_the_thinnest_string_sounds_iso_16_at_fret_5(
    fret: int, hertz: float, example: Callable[[str], Figures]
) -> None:
    """E4 stopped at fret 5 is the A of ISO 16; its octave 659.2551 Hz is twice the table's E4."""
    figures = example("tarn")
    assert 329.62756 * 630 / (630 - figures["fret_position"][fret]) == pytest.approx(hertz, abs=2e-4)
