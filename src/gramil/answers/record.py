"""Acts on the shop's record, as answers: files brought in, copies, corrections, wood, places, sheets, revisions.

Moments are those of the record, in ISO 8601; an instrument that an act is on stands in the answer's `instruments`.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from gramil.answers.verdicts import MadeAnswer


@dataclass(frozen=True)
class FileBrought:
    """What a file brought: what it was, whose, how many rows, how many of them were there already, how many lines of a
    log were left out; for an instrument saved again what is made and is no longer right, or why that is not judged.
    """

    file: str
    kind: str
    whose: str
    count: int
    there_already: int
    lines_left_out: int
    made: tuple[MadeAnswer, ...]
    not_judged: str


@dataclass(frozen=True)
class FilesBrought:
    """Files brought into a store, in the order in which they went in."""

    store: str
    files: tuple[FileBrought, ...]


@dataclass(frozen=True)
class CopyMade:
    """A copy of a store, proved to be sound, and how many bytes it has."""

    store: str
    copy: str
    bytes: int


@dataclass(frozen=True)
class ChangeAnswer:
    """A change of the record: when, and what."""

    at: str
    what: str


@dataclass(frozen=True)
class PutBack:
    """A copy put in a store's place: the changes that it knew nothing of, and where what was there is kept, if anything
    was.
    """

    store: str
    copy: str
    gone: tuple[ChangeAnswer, ...]
    kept: str | None


@dataclass(frozen=True)
class Proved:
    """A store that was proved: one with faults is told as they are, with exit code 2."""

    store: str
    sound: bool


@dataclass(frozen=True)
class Upgraded:
    """A store in this program's form now, and where what was there is kept."""

    store: str
    kept: str


@dataclass(frozen=True)
class HandedOut:
    """Sheets handed out: their names."""

    sheets: tuple[str, ...]


@dataclass(frozen=True)
class StaleAnswer:
    """A sheet that is no longer true: whose, its name, when it was handed out, and why."""

    instrument: str
    sheet: str
    at: str
    why: str


@dataclass(frozen=True)
class JigChecked:
    """A jig's constant as measured (mm, and as written), and the sheets that are no longer true by it."""

    jig: str
    constant: float
    written: str
    stale: tuple[StaleAnswer, ...]


@dataclass(frozen=True)
class BegunAnew:
    """A piece begun anew: its work that is open again, blanks written off, and the name under which the old piece is
    kept, if it is.
    """

    piece: str
    open_again: tuple[str, ...]
    written_off: tuple[str, ...]
    kept: str | None


@dataclass(frozen=True)
class UsedAnswer:
    """Wood that an operation used up: its name, and the need that it was promised for."""

    piece: str
    need: str


@dataclass(frozen=True)
class OpenAgain:
    """An operation that is not done after all, what is done and hangs on it, the wood that it had used up, which is put
    back, and what is in stock as left over of that wood.
    """

    operation: str
    hanging: tuple[str, ...]
    put_back: tuple[UsedAnswer, ...]
    left: tuple[str, ...]


@dataclass(frozen=True)
class MeasuredAnew:
    """A measurement that was put right, or struck (`right` is `null`): what was noted and when, in `unit`."""

    address: str
    was: float
    was_written: str
    at: str
    right: float | None
    right_written: str
    unit: str


@dataclass(frozen=True)
class AirAnswer:
    """Air as a meter reads it: relative humidity in %, temperature in C."""

    humidity: float
    temperature: float


@dataclass(frozen=True)
class ReadAnew:
    """A reading of a place's air that was put right, or struck (`right` is `null`)."""

    place: str
    at: str
    was: AirAnswer
    right: AirAnswer | None


@dataclass(frozen=True)
class Marked:
    """An instrument as it stands now: open, waiting or done."""

    instrument: str
    standing: str


@dataclass(frozen=True)
class OwnList:
    """A list of own operations, of an instrument or (empty) of the whole shop: its text as kept now, `null` once it is
    taken away.
    """

    instrument: str
    text: str | None


@dataclass(frozen=True)
class Returned:
    """An instrument returned to an earlier revision, which is kept under a new number; what is made and is no longer
    right by it, or why that is not judged.
    """

    instrument: str
    as_in: int
    revision: int
    made: tuple[MadeAnswer, ...]
    not_judged: str


@dataclass(frozen=True)
class StruckOff:
    """A kind of wood, or a part made ahead, that is no longer on the list."""

    piece: str


@dataclass(frozen=True)
class Lies:
    """A piece of wood, and the place where it lies from now on."""

    piece: str
    place: str


@dataclass(frozen=True)
class PieceCut:
    """A piece of wood with its sizes in mm."""

    name: str
    length: float
    width: float
    thickness: float


@dataclass(frozen=True)
class Cut:
    """A piece cut into others."""

    piece: str
    parts: tuple[PieceCut, ...]


@dataclass(frozen=True)
class Counted:
    """Wood of one kind and size under one name, and how many there are now."""

    piece: str
    count: int


@dataclass(frozen=True)
class PartKept:
    """A part made ahead: its name, its kind, and what it measures, as written."""

    name: str
    kind: str
    figures: Mapping[str, str]


@dataclass(frozen=True)
class PlaceKnown:
    """All that is known of a place now."""

    place: str
    figures: Mapping[str, float | str | tuple[float, ...] | None]


@dataclass(frozen=True)
class MeterRead:
    """A place's air as the meter says it, the band for gluing (least and most %), and whether it is within."""

    place: str
    air: AirAnswer
    band: tuple[float, float]
    within: bool


@dataclass(frozen=True)
class SpellAnswer:
    """Air that is said to hold from a moment on (ISO 8601, by the shop's clock): C, and % of humidity."""

    begins: str
    temperature: float
    humidity: float


@dataclass(frozen=True)
class OutlookKept:
    """What is said of a place's air to come, kept with its moment: its spells, and how far it is trusted, in words."""

    place: str
    said: str
    spells: tuple[SpellAnswer, ...]
    trusted: str


@dataclass(frozen=True)
class LogRead:
    """A logger's file read into a place's own: its readings, lines left out and gaps, when it begins and ends, how many
    readings the place's file has with it, and how many of them are new. Nothing is `written` on a dry run.
    """

    place: str
    file: str
    readings: int
    lines_left_out: int
    gaps: int
    begins: str
    ends: str
    kept_in: str
    kept: int
    new: int
    written: bool
