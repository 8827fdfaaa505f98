"""What readings of cut slots mean: a line for each slot, the likely cause if there is one, and what to do."""

from collections.abc import Iterator

from gramil.change.slot_causes import NOTHING, Cause
from gramil.change.slot_readings import SlotReading, SlotsReadback
from gramil.decimals import signed
from gramil.formatter import Formatter, shown

WORTH_IT = 0.02
"""A nut that stands off by less than this, in mm, stays where it is."""


def report(found: SlotsReadback, formatter: Formatter) -> Iterator[str]:
    """The lines of the report: one for each slot, the likely cause, and what is to be done about it."""
    settled = _settled(found)
    yield "fret   wanted       measured     error      cents   step    " + ("left   " if settled else "")
    for each in found.slots:
        yield _row(each, settled, formatter)
    yield ""
    yield cause_sentence(found.cause, formatter)
    yield from what_to_do(found, formatter)


def _settled(found: SlotsReadback) -> bool:
    """Whether nut or saddle are to be moved for the slots as they are."""
    return bool(found.nut_move or found.saddle_move)


def _row(each: SlotReading, settled: bool, formatter: Formatter) -> str:
    length = formatter.first
    left = f"{signed(each.left_cents, 2):>6} " if settled else ""
    return (
        f"{each.fret:>4}   {shown(each.wanted, 'mm', length):<12} {shown(each.measured, 'mm', length):<12} "
        f"{_signed(each.error, formatter):<10} {signed(each.cents, 2):>6}  "
        f"{signed(each.against_before, 2):>6}  {left}{_bar(each.left)} "
        f"{each.verdict}"
    )


def _bar(error: float) -> str:
    """A bar of eleven places, 0.05 mm each; the middle means no error."""
    place = max(-5, min(5, round(error / 0.05)))
    return "".join("o" if step == place else ("|" if step == 0 else ".") for step in range(-5, 6))


def _signed(value: float, formatter: Formatter) -> str:
    return ("+" if value > 0 else "") + shown(value, "mm", formatter.first)


def _mm(value: float, formatter: Formatter) -> str:
    return shown(value, "mm", formatter.first)


def cause_sentence(cause: Cause, formatter: Formatter) -> str:
    """The cause in words with its figures, or a sentence that the readings show none."""
    left = f"{_mm(cause.left, formatter)} RMS"
    if cause.name == NOTHING:
        return f"No cause common to the slots shows in these readings: they scatter by {left}."
    parts = []
    if cause.offset:
        parts.append(f"zero off by {_signed(cause.offset, formatter)}")
    if cause.stretch:
        parts.append(
            f"scale {'long' if cause.stretch > 0 else 'short'} by {abs(cause.stretch) * 1000:.2f} in a thousand"
        )
    if cause.slip_fret:
        which = f"fret {cause.slip_fret}'s" if cause.alone else f"every slot from fret {cause.slip_fret} on"
        parts.append(f"{which} out by {_signed(cause.slip, formatter)}")
    figures = f" ({', '.join(parts)})" if parts else ""
    return f"Likely cause: {cause.name}{figures}; what it leaves unexplained is {left}."


def what_to_do(found: SlotsReadback, formatter: Formatter) -> Iterator[str]:
    """What mends it, the nut's own place first; nothing if no cause shows."""
    if found.cause.by_rule_of_18:
        yield (
            "The rule of 18 takes an eighteenth of what is left of the string at each fret, where twelve equal steps "
            "take 1 in 17.817: fret 12 falls short of half way."
        )
    if abs(found.nut_move) >= WORTH_IT:
        yield _nut(found, formatter)
    if found.cause.stretch and not found.cause.by_rule_of_18:
        yield _scale(found, formatter)
    elif abs(found.saddle_move) >= WORTH_IT:
        way = "tail" if found.saddle_move > 0 else "nut"
        yield f"The saddle stands best {_mm(abs(found.saddle_move), formatter)} nearer the {way} than drawn."
    if found.cause.slip_fret and any(each.verdict == "recut" for each in found.slots):
        yield _slip(found.cause, formatter)
    if _settled(found):
        yield f"Placed like that, the slots are {found.after:.2f} cents RMS out, where they are {found.before:.2f} now."


def _nut(found: SlotsReadback, formatter: Formatter) -> str:
    much, first = _mm(abs(found.nut_move), formatter), "First the nut, if the caliper's own zero is right: "
    if found.nut_move > 0:
        return f"{first}plane {much} off the board's end, or set the nut that far in."
    return f"{first}set it {much} out from the board's end, toward the head, with a strip between."


def _slip(cause: Cause, formatter: Formatter) -> str:
    much, way = _mm(abs(cause.slip), formatter), "head" if cause.slip > 0 else "bridge"
    again = f"cut anew {much} toward the {way}"
    if cause.alone:
        return f"The slot of fret {cause.slip_fret} is to be filled with a strip of the board's wood and {again}."
    return (
        f"The slots from fret {cause.slip_fret} on are to be filled with strips of the board's wood and {again}; those "
        "before them stand."
    )


def _scale(found: SlotsReadback, formatter: Formatter) -> str:
    off, way = found.scale_cut - found.scale, "tail" if found.scale_cut > found.scale else "nut"
    return (
        f"The slots are cut to a scale of {_mm(found.scale_cut, formatter)}, not {_mm(found.scale, formatter)}: "
        f"place the saddle for that, {_mm(abs(off), formatter)} nearer the {way} than drawn."
    )
