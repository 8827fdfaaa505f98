"""Reading and naming pitches; the message for what cannot be read says what to write."""

import math

import pytest

from gramil.faults import MakersFault
from gramil.physics.pitch import cents_between, nearest_pitch, raised_by_cents, read_pitch


def test_names_of_one_sound_agree() -> None:
    for one, other in (("Bb3", "A#3"), ("B♭3", "A♯3"), ("Cb4", "B3"), ("B#3", "C4"), ("bb3", "Bb3"), ("F##2", "G2")):
        assert read_pitch(one) == read_pitch(other)


def test_frequency_is_taken_as_written() -> None:
    assert read_pitch("82.4 Hz") == 82.4
    assert read_pitch(" 110hz ") == 110.0


def test_a4_moves_every_note_alike() -> None:
    for name in ("E2", "G#3", "A4"):
        assert read_pitch(name, a4=432.0) / read_pitch(name) == pytest.approx(432.0 / 440.0, rel=1e-15)
    assert read_pitch("A4", a4=415.0) == 415.0


@pytest.mark.parametrize(
    ("written", "remedy"),
    [
        ("82,4 Hz", "Write 82.4 Hz"),
        ("82.4", "82.4 Hz"),
        ("E", "E4"),
        ("H3", "Write B"),
        ("", "octave"),
        ("J2", "octave"),
        ("E4 440", "octave"),
        ("0 Hz", "more than 0"),
        ("-5 Hz", "octave"),
    ],
)
def test_what_cannot_be_read_says_what_to_write(written: str, remedy: str) -> None:
    with pytest.raises(MakersFault, match=remedy):
        read_pitch(written)


def test_nearest_pitch_and_its_cents() -> None:
    assert nearest_pitch(440.0) == ("A4", 0.0)
    name, cents = nearest_pitch(445.0)
    assert name == "A4"
    assert cents == pytest.approx(1200.0 * math.log2(445.0 / 440.0), abs=1e-9)
    assert nearest_pitch(233.0, flats=True)[0] == "Bb3"
    assert nearest_pitch(16.36)[0] == "C0"


def test_no_pitch_for_silence() -> None:
    with pytest.raises(MakersFault):
        nearest_pitch(0.0)


def test_cents_there_and_back() -> None:
    assert cents_between(220.0, 440.0) == 1200.0
    assert cents_between(440.0, raised_by_cents(440.0, -7.25)) == pytest.approx(-7.25, abs=1e-9)
