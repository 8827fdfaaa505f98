"""Tarn with its strings in courses, for the tests: six pairs in octaves and unison, or any other set."""

from collections.abc import Sequence

GAUGES = (0.010, 0.010, 0.014, 0.014, 0.022, 0.008, 0.030, 0.012, 0.040, 0.018, 0.048, 0.026)
"""Of our own round sizes, inches: two pairs in unison, four in octaves, their thin string on the bass side."""
PITCHES = ("E4", "E4", "B3", "B3", "G3", "G4", "D3", "D4", "A2", "A3", "E2", "E3")
SIX_PAIRS = (2, 2, 2, 2, 2, 2)


def in_courses(
    text: str,
    strings: Sequence[int] = SIX_PAIRS,
    gauges: Sequence[float] = GAUGES,
    pitches: Sequence[str] = PITCHES,
) -> str:
    """A text of Tarn with so many strings in each course; its own six strings are taken out."""
    head, rest = text.split("[strings]\n", 1)
    lines = rest.split("\n")
    after = "\n".join(line for line in lines if not line.startswith(("gauges =", "tuning =")))
    rows, first = "", 1
    for count in strings:
        rows += f"\n[[course]]\nstrings = {list(range(first, first + count))}\n"
        first += count
    pitched = ", ".join(f'"{each}"' for each in pitches)
    return f"{head}[strings]\ngauges = {list(gauges)}\ntuning = [{pitched}]\n{rows}{after}"
