"""A measurement as it is typed: read in the maker's unit, compared with what is wanted, and judged if a sheet says
how.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import partial

from gramil.bare_numbers import with_unit
from gramil.bench.doubts import doubt_of
from gramil.bench.open_instruments import OpenInstrument
from gramil.change.as_made import AsMade, as_made, difference_text, off_at
from gramil.change.made_words import lines as made_lines
from gramil.change.questioned import Reading, questions
from gramil.change.settled import off as off_settled
from gramil.change.settled import sentence, settled
from gramil.change.settled_text import place_of, value_text
from gramil.description.shop.limits import limit_ref
from gramil.description.shop.tolerances import tolerance_of
from gramil.faults import MakersFault
from gramil.findings.finding import InWords, in_words
from gramil.formatter import Formatter, shown
from gramil.graph import Figures, Pin
from gramil.shop.measured import read_measured, unit_to_measure

MEASURED = "measured."
"""What the name of a field starts with that holds a measurement of the address after it."""
MOST_MOVES = 12


@dataclass(frozen=True)
class Verdict:
    """A measurement compared with what was wanted: how far off, and whether that is near enough, if practice says.

    `asked` is the question to put to the maker about an unlikely reading.
    """

    text: str
    near: str
    fault: str = ""
    asked: str = ""


@dataclass(frozen=True)
class MeasuredAs:
    """What a new measurement means: how far off it is, in words, what follows from it, and whether the work is right.

    `settles` says what it fixes in the description, each with the key set to match (empty if no value gives the
    reading).
    """

    found: AsMade
    came: tuple[InWords, ...]
    off: tuple[str, ...]
    follows: tuple[str, ...]
    standing: tuple[tuple[str, str], ...]
    settles: tuple[tuple[str, str], ...]


def verdict(
    held: OpenInstrument, wanted: Figures, address: str, written: str, formatter: Formatter, work: str = ""
) -> Verdict:
    """How far a measurement is from what is wanted, in its unit and in cents; `work` is the operation it is read at."""
    try:
        unit = unit_to_measure(wanted, address)
        value = read_measured(bare(written), unit, formatter.first, address)
    except MakersFault as fault:
        return Verdict("", "", ". ".join(filter(None, (fault.faults[0].what, fault.faults[0].remedy))))
    reading = Reading(address, value, with_unit(bare(written), unit, formatter.first), of=work)
    found = questions(held.figures, [reading])
    said = next((doubt_of(each, formatter.first).text for each in found), "")
    return Verdict(off_text(wanted, address, value, formatter), _near(wanted, address, value), asked=said)


def off_text(wanted: Figures, address: str, value: float, formatter: Formatter) -> str:
    """A measurement less what is wanted: `+0.12 mm, +0.41 cent`; not known if nothing is wanted."""
    return difference_text(off_at(address, Pin(value, ""), wanted), formatter.first)


def _near(wanted: Figures, address: str, value: float) -> str:
    """Whether a value is near enough by common practice: "near enough", "too far", or empty if there is no
    tolerance.
    """
    limit = partial(_limit, wanted)
    holds = tolerance_of(address).holds(value, float(wanted.at(address)), limit)
    return "" if holds is None else "near enough" if holds else "too far"


def _limit(figures: Figures, name: str) -> float:
    return float(figures[limit_ref(name)])


def bare(written: str) -> str | float:
    """A bare number with the unit that the page shows added; anything else as it is written."""
    try:
        return float(written.strip().replace(",", "."))
    except ValueError:
        return written


def measured_as(
    held: OpenInstrument,
    wanted: Figures,
    addresses: tuple[str, ...],
    operation: str,
    done: Sequence[str],
    formatter: Formatter,
) -> MeasuredAs | None:
    """What the measurements at these addresses mean, compared with what was `wanted`; None if none of them is noted."""
    new = {address: held.figures.pins[address] for address in addresses if address in held.figures.pins}
    if not new:
        return None
    others = {address: pin for address, pin in held.figures.pins.items() if address not in new}
    found = as_made(settled(held.figures.with_pins(others)), new, operation, done, wanted)
    came = tuple(in_words(each, formatter) for each in found.came)
    off = tuple(
        f"{address.replace('_', ' ')}: {off_text(wanted, address, float(pin.value), formatter)} from what was wanted"
        for address, pin in new.items()
    )
    settles = tuple(_settles(held, tuple(new), formatter))
    return MeasuredAs(found, came, off, tuple(_follows(found, formatter)), tuple(_standing(found, formatter)), settles)


def _settles(held: OpenInstrument, addresses: tuple[str, ...], formatter: Formatter) -> Iterator[tuple[str, str]]:
    instrument = held.description.instrument
    for each in off_settled(held.figures, addresses):
        known = each.value is not None
        to_set = f"{place_of(each, instrument)}={value_text(each, instrument.instrument.units)}" if known else ""
        yield sentence(each, held.figures, formatter.first), to_set


def _standing(found: AsMade, formatter: Formatter) -> Iterator[tuple[str, str]]:
    yield from ((each.standing, each.what) for each in found.judged if each.standing == "still right")
    yield from ((each.standing, line) for each, line in made_lines(found.judged, formatter.first))


def _follows(found: AsMade, formatter: Formatter) -> list[str]:
    return [
        f"{move.address.replace('_', ' ')}: {shown(move.new, move.unit, formatter.first)}, "
        f"as drawn {shown(move.old, move.unit, formatter.first)}"
        for move in found.moves[:MOST_MOVES]
    ]
