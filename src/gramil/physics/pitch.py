"""Pitch: note names and frequencies, in twelve equal semitones.

The octave number changes at C, and A4 is 440 Hz (ISO 16:1975, "Acoustics: Standard tuning frequency") unless given.
"""

import math
import re

from gramil.faults import MakersFault

STANDARD_A4 = 440.0
"""Hertz; ISO 16:1975."""

_SEMITONES_ABOVE_C = {"C": 0, "D": 2, "E": 4, "F": 5, "G": 7, "A": 9, "B": 11}
_NOTE = re.compile(r"([A-Ga-g])(#{1,2}|b{1,2}|♯|♭)?(-?\d)")
_HERTZ = re.compile(r"(\d+(?:\.\d+)?)\s*hz", re.IGNORECASE)
_A4_STEP = 57  # semitones above C0


def read_pitch(text: str, a4: float = STANDARD_A4) -> float:
    """Hertz from a note with its octave ("E4", "F#2", "Bb3") or a frequency ("82.4 Hz").

    Raises MakersFault, saying what to write, for anything else.
    """
    written = text.strip()
    if hertz := _HERTZ.fullmatch(written):
        return _sounding(float(hertz[1]), text)
    if note := _NOTE.fullmatch(written):
        return frequency_of_step(_step(*note.groups()), a4)
    raise MakersFault.of(f"{text!r} is not a pitch", remedy=_remedy(written))


def frequency_of_step(step: float, a4: float = STANDARD_A4) -> float:
    """Hertz of a semitone counted from C0 = 0 (A4 = 57)."""
    return _sounding(a4, f"A4 at {a4} Hz") * math.exp2((step - _A4_STEP) / 12.0)


def _step(letter: str, accidental: str | None, octave: str) -> int:
    shift = {"#": 1, "♯": 1, "b": -1, "♭": -1}
    return 12 * int(octave) + _SEMITONES_ABOVE_C[letter.upper()] + sum(shift[sign] for sign in accidental or "")


def _sounding(frequency: float, written: str) -> float:
    if not (math.isfinite(frequency) and frequency > 0.0):
        raise MakersFault.of(f"{written!r} does not sound", remedy="a frequency is more than 0 Hz")
    return frequency


def _remedy(written: str) -> str:
    if re.fullmatch(r"\d+,\d+\s*hz", written, re.IGNORECASE):
        return f"write {written.replace(',', '.')}"
    if re.fullmatch(r"\d+(\.\d+)?", written):
        return f"write {written} Hz if it is a frequency"
    if re.fullmatch(r"([A-Ga-g])(#|b)?", written):
        return f"add its octave: {written}4 (the octave that begins at middle C is 4)"
    if written[:1] in ("H", "h"):
        return "write B for the note below C, and Bb for the one under it"
    return 'write a note and its octave, like "E4", "F#2" or "Bb3", or a frequency, like "82.4 Hz"'
