"""Reading pitches; the message for what cannot be read says what to write."""

import pytest

from gramil.faults import MakersFault
from gramil.physics.pitch import read_pitch


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
