"""Readings of a strung instrument, as they are written down: CSV with the columns `string,what,value`.

What may be measured: `cents@12` (or any fret; sharp of the open string is positive), `action@12` and `nut@1` (the
string over that fret's crown), `saddle_height` (saddle over the bridge under the string), `set_back` and `nut_forward`
(where a break point stands now); and, string left empty, `relief`, and `slot_treble` and `slot_bass`: from the zero
line to the middle of the saddle's slot at either end of it, along the centreline.
"""

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from gramil import names as n
from gramil.change.questioned import Reading
from gramil.csv_text import named_rows
from gramil.faults import Fault, MakersFault
from gramil.measure import LengthUnit, read_length

COLUMNS = ("string", "what", "value")
OF_NO_STRING = ("relief", "slot_treble", "slot_bass")
KINDS = ("cents", "action", "nut", "saddle_height", "set_back", "nut_forward", *OF_NO_STRING)
MOST_CENTS = 100.0
"""More than this, in cents, is a wrong note and no reading of intonation."""
_WHAT = re.compile(r"([a-z_]+)\s*(?:@\s*(\d{1,2}))?")
_CENTS = re.compile(r"([+-]?\d+(?:\.\d+)?)\s*(?:cents?)?", re.IGNORECASE)


@dataclass(frozen=True)
class SetUpReadings:
    """What was read, by string number (1 is at the treble side): cents by string and fret, lengths in mm.

    Relief and the two ends of the saddle's slot are None if they were not measured.
    """

    cents: Mapping[tuple[int, int], float] = field(default_factory=dict)
    action: Mapping[int, float] = field(default_factory=dict)
    nut: Mapping[int, float] = field(default_factory=dict)
    saddle_height: Mapping[int, float] = field(default_factory=dict)
    set_back: Mapping[int, float] = field(default_factory=dict)
    nut_forward: Mapping[int, float] = field(default_factory=dict)
    relief: float | None = None
    slot_treble: float | None = None
    slot_bass: float | None = None


def parse_set_up_readings(
    text: str, file: str, unit: LengthUnit, strings: int, last_fret: int, action_fret: int = 12
) -> SetUpReadings:
    """The readings in a CSV text; bare lengths are in `unit`. Raises MakersFault with every fault.

    A row may be out of order; the same thing read twice is a fault.
    """
    faults: list[Fault] = []
    found: dict[tuple[str, int, int], float] = {}
    for line, row in named_rows(text, file, COLUMNS):
        try:
            key = _key(row, strings, last_fret, action_fret)
            if key in found:
                raise ValueError("the same thing was read in an earlier line")
            found[key] = _value(key[0], row["value"], unit)
        except ValueError as error:
            faults.append(Fault(line, "reading", str(error), "", "", file))
    if not faults and not found:
        faults.append(Fault(None, "readings", "nothing was read", "", "Measure something first", file))
    if faults:
        raise MakersFault(faults)
    return _gathered(found)


def _key(row: Mapping[str, str], strings: int, last_fret: int, action_fret: int) -> tuple[str, int, int]:
    """What a row reads: its kind, string and fret; 0 for what has none."""
    written = row["what"].strip().lower()
    match = _WHAT.fullmatch(written)
    if match is None or match[1] not in KINDS:
        raise ValueError(f"{written!r} is none of " + ", ".join(KINDS) + ' (with a fret: "cents@12")')
    kind = match[1]
    usual = {"action": action_fret, "nut": 1}.get(kind, 0)
    fret = int(match[2]) if match[2] else usual
    _check_fret(kind, fret, last_fret, usual)
    text = row["string"].strip()
    if kind in OF_NO_STRING:
        return kind, 0, 0
    if not text.isdecimal() or not 1 <= int(text) <= strings:
        raise ValueError(f"string {text!r} is not one of 1 to {strings}, treble first")
    return kind, int(text), fret


def _check_fret(kind: str, fret: int, last_fret: int, usual: int) -> None:
    if kind == "cents" and not 1 <= fret <= last_fret:
        raise ValueError(f"cents are read at a fret, 1 to {last_fret}: write cents@12")
    if kind in ("action", "nut") and fret != usual:
        raise ValueError(f"{kind} is read over fret {usual}: write {kind}@{usual}")
    if kind not in ("cents", "action", "nut") and fret:
        raise ValueError(f"{kind} belongs to no fret")


def _value(kind: str, written: str, unit: LengthUnit) -> float:
    text = written.strip()
    if kind != "cents":
        return float(read_length(text, unit))
    match = _CENTS.fullmatch(text)
    if match is None or abs(float(match[1])) > MOST_CENTS:
        raise ValueError(f"{text!r} is not a reading in cents, up to {MOST_CENTS:g} either way")
    return float(match[1])


def _gathered(found: Mapping[tuple[str, int, int], float]) -> SetUpReadings:
    def of(kind: str) -> dict[int, float]:
        return {string: value for (name, string, _), value in found.items() if name == kind}

    cents = {(string, fret): value for (name, string, fret), value in found.items() if name == "cents"}
    lengths = (of("action"), of("nut"), of("saddle_height"), of("set_back"), of("nut_forward"))
    relief, treble, bass = (found.get((kind, 0, 0)) for kind in OF_NO_STRING)
    return SetUpReadings(cents, *lengths, relief, treble, bass)


FIGURES = {
    "action": n.action_wanted,
    "nut": n.nut_slot_over_first,
    "saddle_height": n.neck_set_exposed,
    "set_back": n.saddle_set_back,
    "nut_forward": n.intonation_nut_forward,
}
"""The figure that each kind of reading by string is of."""


def as_readings(readings: SetUpReadings) -> list[Reading]:
    """Everything that was measured, as readings of figures, to be questioned."""
    found = [
        Reading(figure[string].address, value)
        for kind, figure in FIGURES.items()
        for string, value in getattr(readings, kind).items()
    ]
    found += [Reading(n.intonation_cents_after[place].address, cents) for place, cents in readings.cents.items()]
    return found if readings.relief is None else [*found, Reading(n.heights_relief.address, readings.relief)]


def strings_read(readings: SetUpReadings) -> tuple[int, ...]:
    """The strings of which anything was read, in order."""
    places: Iterable[int] = (
        *(string for string, _ in readings.cents),
        *readings.action,
        *readings.nut,
        *readings.saddle_height,
        *readings.set_back,
        *readings.nut_forward,
    )
    return tuple(sorted(set(places)))
