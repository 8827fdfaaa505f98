"""What readings mean: caliper readings of every slot, and cents, heights and relief of the strung instrument.

Nothing is kept: the readings stand in the page's address. Measurements to be kept on record are noted on the sheets.
"""

import csv
import io
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from starlette.responses import Response

from gramil import names as n
from gramil.bench.doubts import Doubt, doubts
from gramil.bench.measuring import bare
from gramil.bench.open_instruments import OpenInstruments
from gramil.bench.page_request import PageRequest
from gramil.bench.pages.instrument_page import instrument_id
from gramil.bench.units import formatter_for
from gramil.change.old_board import read_old_board
from gramil.change.old_board_report import old_board_report
from gramil.change.questioned import Question, questions
from gramil.change.set_up_file import as_readings as set_up_as_readings
from gramil.change.set_up_file import parse_set_up_readings
from gramil.change.set_up_readings import read_back_set_up
from gramil.change.set_up_report import report as set_up_report
from gramil.change.slot_questions import slot_questions
from gramil.change.slot_readings import parse_slot_readings, read_back
from gramil.change.slot_report import report as slot_report
from gramil.faults import Fault, MakersFault
from gramil.formatter import Formatter
from gramil.graph import Figures

_Read = tuple[Iterable[Question], Callable[[], Iterable[str]]]
"""The questions that what was typed raises, and what gives the lines of what it means."""
TYPED = "what was typed"
"""What faults call the readings, in the place of a file."""
PER_STRING = (
    ("cents@12", "Cents at fret 12, sharp positive"),
    ("cents@5", "at fret 5"),
    ("cents@1", "at fret 1"),
    ("action", "Action"),
    ("nut", "Over fret 1"),
    ("saddle_height", "Saddle shows"),
)
"""What is read of each string, and its words."""
OF_NO_STRING = (
    ("relief", "Relief"),
    ("slot_treble", "Zero line to the middle of the slot, treble end"),
    ("slot_bass", "bass end"),
)
"""What is read once, and its words."""


@dataclass(frozen=True)
class Reading:
    """A field for one reading: its name, its words, and what was typed."""

    name: str
    words: str
    typed: str


@dataclass(frozen=True)
class Group:
    """Fields that are read together, under one heading."""

    heading: str
    fields: tuple[Reading, ...]


def slots_readback(request: PageRequest, open_instruments: OpenInstruments) -> Response:
    """Where each slot lies, from the nut line, and the likely cause of the errors."""
    how = "Measure each slot from the nut line; two or more will do."
    return _page(request, open_instruments, "Slots as measured", how, _slot_groups, _slots_read)


def set_up_readback(request: PageRequest, open_instruments: OpenInstruments) -> Response:
    """Cents, heights and relief of the strung instrument, and what is to be done about them."""
    return _page(request, open_instruments, "Set-up as measured", "Strung and at pitch. Leave empty what was not read.",
                 _set_up_groups, _set_up_read)  # fmt: skip


def _page(
    request: PageRequest,
    open_instruments: OpenInstruments,
    heading: str,
    how: str,
    groups_of: Callable[[PageRequest, Figures], Iterable[Group]],
    read: Callable[[PageRequest, Figures, Formatter], _Read],
) -> Response:
    with request.record.opened() as store:
        held = open_instruments.held(store, instrument_id(request))
    formatter = formatter_for(request.session, held.figures)
    groups = tuple(groups_of(request, held.figures))
    lines: tuple[str, ...] = ()
    faults: tuple[Fault, ...] = ()
    found: Mapping[str, Doubt] = {}
    if any(field.typed for group in groups for field in group.fields):
        try:
            asked, lines_of = read(request, held.figures, formatter)
            found = doubts(request, asked, formatter.first)
            lines = () if found else tuple(lines_of())
        except MakersFault as fault:
            typed = [field.name for group in groups for field in group.fields if field.typed]
            faults = tuple(_of_field(each, typed) for each in fault.faults)
    return request.page(
        "readback.html",
        422 if faults or found else 200,
        doubts=found,
        title=f"{held.seen.name}: {heading}",
        heading=heading,
        how=how,
        held=held,
        groups=groups,
        lines=lines,
        faults=faults,
        unit=formatter.first,
    )


def _of_field(fault: Fault, typed: Sequence[str]) -> Fault:
    """A fault of a row of what was typed, under the table's head, at the field that the row was typed in."""
    row = (fault.line or 0) - 2
    return replace(fault, where=typed[row], line=None, file=None) if 0 <= row < len(typed) else fault


def _field(request: PageRequest, name: str, words: str) -> Reading:
    return Reading(name, words, request.one(name).strip())


def _slot_groups(request: PageRequest, figures: Figures) -> Iterator[Group]:
    frets = range(1, len(figures[n.fret_position]))
    fields = tuple(_field(request, f"fret.{each}", f"Fret {each}") for each in frets)
    yield Group("From the nut line to the slot of", fields)


def _slots_read(request: PageRequest, figures: Figures, formatter: Formatter) -> _Read:
    last = len(figures[n.fret_position]) - 1
    rows = [(each, request.one(f"fret.{each}").strip()) for each in range(1, last + 1)]
    text = _csv(("fret", "position"), [(str(fret), str(bare(typed))) for fret, typed in rows if typed])
    frets, measured = parse_slot_readings(text, TYPED, formatter.first, last)
    if figures[n.repair_described]:
        old = read_old_board(frets, measured, figures[n.limit_slot_error_cents])
        return (), lambda: old_board_report(old, formatter.first)
    found = read_back(figures, frets, measured)
    return slot_questions(found, formatter), lambda: slot_report(found, formatter)


def _set_up_groups(request: PageRequest, figures: Figures) -> Iterator[Group]:
    yield Group("The neck and the saddle's slot", tuple(_field(request, *each) for each in OF_NO_STRING))
    for string in range(1, figures[n.strings_count] + 1):
        fields = tuple(_field(request, f"{what}.{string}", words) for what, words in PER_STRING)
        yield Group(f"String {string}{', at the treble' if string == 1 else ''}", fields)


def _set_up_read(request: PageRequest, figures: Figures, formatter: Formatter) -> _Read:
    strings = [str(each) for each in range(1, figures[n.strings_count] + 1)]
    read = [(each, what, request.one(f"{what}.{each}").strip()) for each in strings for what, _ in PER_STRING]
    rows = [*(("", what, request.one(what).strip()) for what, _ in OF_NO_STRING), *read]
    text = _csv(("string", "what", "value"), [(each, what, str(bare(typed))) for each, what, typed in rows if typed])
    counts = figures[n.strings_count], figures[n.scale_frets], figures[n.action_fret]
    readings = parse_set_up_readings(text, TYPED, formatter.first, *counts)
    asked = questions(figures, set_up_as_readings(readings))
    return asked, lambda: set_up_report(read_back_set_up(figures, readings), formatter)


def _csv(head: tuple[str, ...], rows: list[tuple[str, ...]]) -> str:
    text = io.StringIO()
    csv.writer(text).writerows([head, *rows])
    return text.getvalue()
