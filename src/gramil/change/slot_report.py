"""What readings of cut slots mean, in lines: a row a slot, the likely cause, and the nut end."""

from collections.abc import Iterator

from gramil.change.slot_readings import Cause, SlotReading, SlotsReadback
from gramil.show import Shower, shown


def report(found: SlotsReadback, shower: Shower) -> Iterator[str]:
    """The lines of the report: a row a slot, the likely cause, and the nut end."""
    yield "fret   wanted       measured     error      cents   step    "
    for each in found.slots:
        yield _row(each, shower)
    yield ""
    yield f"Likely cause: {told(found.cause, shower)}"
    yield (
        f"Moving the nut end by {_signed(found.nut_move, shower)} (toward the bridge positive) takes the slots from "
        f"{found.before:.2f} to {found.after:.2f} cents RMS; the saddle moves with it."
    )


def _row(each: SlotReading, shower: Shower) -> str:
    bar = _bar(each.error)
    length = shower.first
    return (
        f"{each.fret:>4}   {shown(each.wanted, 'mm', length):<12} {shown(each.measured, 'mm', length):<12} "
        f"{_signed(each.error, shower):<10} {each.cents:+6.2f}  {each.against_before:+6.2f}  {bar} {each.verdict}"
    )


def _bar(error: float) -> str:
    """Eleven places across: each is 0.05 mm, the middle is right."""
    place = max(-5, min(5, round(error / 0.05)))
    return "".join("o" if step == place else ("|" if step == 0 else ".") for step in range(-5, 6))


def _signed(value: float, shower: Shower) -> str:
    return ("+" if value > 0 else "") + shown(value, "mm", shower.first)


def told(cause: Cause, shower: Shower) -> str:
    """A cause in words with its figures."""
    parts = []
    if cause.offset:
        parts.append(f"zero off by {_signed(cause.offset, shower)}")
    if cause.stretch:
        parts.append(
            f"scale {'long' if cause.stretch > 0 else 'short'} by {abs(cause.stretch) * 1000:.2f} in a thousand"
        )
    if cause.slip_fret:
        parts.append(f"every slot from fret {cause.slip_fret} on out by {_signed(cause.slip, shower)}")
    left = f"what it leaves unexplained is {shown(cause.left, 'mm', shower.first)} RMS"
    return f"{cause.name}" + (f" ({', '.join(parts)})" if parts else "") + f"; {left}."
