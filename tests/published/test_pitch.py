"""Pitch against ISO 16:1975, the twelve-semitone table, and every name worked out from the same definition."""

import pytest
from tests.published.read_values import rows

from gramil.physics.pitch import read_pitch

# 440 * 2^((m - 69) / 12), printed to 0.0001 Hz: a table worked out elsewhere from the definition of equal temperament.
TABLE = {
    "E2": 82.4069, "F2": 87.3071, "F#2": 92.4986, "G2": 97.9989, "G#2": 103.8262, "A2": 110.0, "A#2": 116.5409,
    "B2": 123.4708, "C3": 130.8128, "C#3": 138.5913, "D3": 146.8324, "D#3": 155.5635, "E3": 164.8138,
    "F3": 174.6141, "F#3": 184.9972, "G3": 195.9977, "G#3": 207.6523, "A3": 220.0, "A#3": 233.0819, "B3": 246.9417,
    "C4": 261.6256, "C#4": 277.1826, "D4": 293.6648, "D#4": 311.1270, "E4": 329.6276,
}  # fmt: skip


def test_standard_tuning_frequency() -> None:
    """ISO 16:1975, "Acoustics: Standard tuning frequency (standard musical pitch)": A in the treble stave is 440 Hz."""
    ((note, hertz),) = rows("iso_16", "pitch")
    assert read_pitch(note) == hertz


@pytest.mark.parametrize(("note", "hertz"), rows("suits_notes", "notes"))
def test_every_note_of_a_published_table(note: str, hertz: float) -> None:
    """Six octaves and a half, printed to 0.01 Hz."""
    assert read_pitch(note) == pytest.approx(hertz, abs=0.0061)


@pytest.mark.parametrize(("name", "hertz"), TABLE.items())
def test_equal_temperament_table(name: str, hertz: float) -> None:
    assert read_pitch(name) == pytest.approx(hertz, abs=6e-5)


@pytest.mark.parametrize("octave", range(9))
@pytest.mark.parametrize("letter", "CDEFGAB")
@pytest.mark.parametrize("accidental", ["", "#", "b", "##", "bb"])
def test_every_name_by_the_definition(letter: str, accidental: str, octave: int) -> None:
    """Semitones from A4, counted up the scale of C: a twelfth of an octave each."""
    steps = {"C": -9, "D": -7, "E": -5, "F": -4, "G": -2, "A": 0, "B": 2}[letter]
    steps += accidental.count("#") - accidental.count("b") + 12 * (octave - 4)
    assert read_pitch(f"{letter}{accidental}{octave}") == pytest.approx(440 * 2 ** (steps / 12), rel=1e-9)


@pytest.mark.parametrize("standard", [415.0, 432.0, 442.0])
def test_other_standards(standard: float) -> None:
    """F#2 lies two octaves and three semitones below A4."""
    assert read_pitch("F#2", a4=standard) == pytest.approx(standard / 4 * 2 ** (-3 / 12), rel=1e-9)
