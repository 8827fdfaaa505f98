"""What is at fault in a strung instrument, in sentences, and the one sentence that says how to mend it.

A saddle is never told to move if there is no room: its slot is then plugged and cut again, or the bridge moved.
"""

import math
from collections.abc import Callable, Iterator

import numpy as np

from gramil import names as n
from gramil.change.set_up_causes import Amount, Cause
from gramil.change.set_up_readings import SetUpReadback
from gramil.findings.on_bridge import finding_break_points
from gramil.formatter import Formatter, shown
from gramil.physics.arrays import FloatArray

WORTH_IT = 0.02
"""A move smaller than this, in mm, is not worth a stroke of the file."""
SURE, LIKELY = 0.95, 0.7
"""From which share of the likelihood a cause is called sure, and likely."""
OF_THE_SADDLE = ("bridge", "slant")
STRUNG_ANEW = "Try another string in its place first: a false or a worn one plays so."
MEASURE_MORE = "Read every string at fret 1, at fret 12 and at one between, and the heights, to tell them apart."


def slot_lines(found: SetUpReadback, formatter: Formatter) -> Iterator[str]:
    """Lines on whether every string's break point falls on a saddle in the slot as it was measured."""
    if found.to_face is None:
        return
    (finding,) = finding_break_points(found.to_face, formatter.figures[n.limit_saddle_edge])
    string = int(np.argmin(found.to_face)) + 1
    left = _mm(abs(finding.value), formatter)
    yield ""
    if finding.value < 0:
        yield f"In the slot as read, string {string} is to break {left} off the saddle: plug the slot and cut it anew."
    else:
        near = ", which is little: a thicker saddle, or the slot cut anew" if finding.severity != "fine" else ""
        yield f"In the slot as read, every string is to break on the saddle, string {string} {left} from a face{near}."


def cause_lines(found: SetUpReadback, formatter: Formatter) -> Iterator[str]:
    """What is at fault, what else it may be, and finally what mends it."""
    if not found.causes:
        return
    first, *others = found.causes
    yield ""
    yield f"What is at fault{_how_sure(first)}: {_sentence(first, formatter)}"
    for other in others if first.likely < SURE else ():
        yield f"Or, {other.likely:.0%} likely: {_sentence(other, formatter)}"
    first_neck = "Once the neck's set allows it: " if found.neck is not None else ""
    yield first_neck + _mend(first, found, formatter)


def _how_sure(cause: Cause) -> str:
    return ", surely" if cause.likely >= SURE else f", {cause.likely:.0%} likely"


def _sentence(cause: Cause, formatter: Formatter) -> str:
    if not cause.amounts:
        return f"nothing; these are the cents of the instrument as drawn and read, within {cause.left:.1f} cent RMS."
    fault = " and ".join(_fault(each, formatter) for each in cause.amounts)
    if len(cause.amounts) > 2:
        fault = f"every string by itself, in its {'stretch' if cause.amounts[0].kind == 'stretch' else 'break point'}"
    instead = "".join(f", or {_fault(each, formatter)}" for each in cause.instead)
    return f"{fault}{instead}. It explains {cause.explained:.0%} of the cents and leaves {cause.left:.1f} cent RMS."


def _fault(amount: Amount, formatter: Formatter) -> str:
    return FAULTS[amount.kind](amount, formatter)


def _much(amount: Amount, formatter: Formatter) -> str:
    return f"{_mm(abs(amount.value), formatter)} (± {_mm(amount.uncertainty, formatter)})"


def _way(amount: Amount, more: str, less: str) -> str:
    return more if amount.value > 0 else less


def _bridge(amount: Amount, formatter: Formatter) -> str:
    way = _way(amount, "far from", "near")
    much = _much(amount, formatter)
    return f"all strings break {much} too {way} the nut: the bridge, or its saddle's slot, stands there"


def _slant(amount: Amount, formatter: Formatter) -> str:
    one, other = ("tail", "nut") if amount.value > 0 else ("nut", "tail")
    return (
        f"the saddle slants wrongly: the first string breaks {_much(amount, formatter)} too far toward the {one}, "
        f"and the last as much toward the {other}"
    )


def _nut_place(amount: Amount, formatter: Formatter) -> str:
    return (
        f"the nut's edge stands {_much(amount, formatter)} too far {_way(amount, 'toward the head', 'toward fret 1')}"
    )


def _nut_height(amount: Amount, formatter: Formatter) -> str:
    return f"the nut's slots lie {_much(amount, formatter)} too {_way(amount, 'high', 'low')}"


def _relief(amount: Amount, formatter: Formatter) -> str:
    return f"the relief is {_much(amount, formatter)} {_way(amount, 'more', 'less')} than is wanted; it was not read"


def _action(amount: Amount, formatter: Formatter) -> str:
    return f"the action is {_much(amount, formatter)} {_way(amount, 'more', 'less')} than is wanted; it was not read"


def _fret(amount: Amount, formatter: Formatter) -> str:
    return f"fret {amount.place} stands {_much(amount, formatter)} too near the {_way(amount, 'bridge', 'nut')}"


def _stretch(amount: Amount, formatter: Formatter) -> str:
    drawn = float(formatter.figures[n.string_stretch][amount.place - 1])
    is_, sure = drawn * math.exp(amount.value), drawn * math.exp(amount.value) * amount.uncertainty
    return f"string {amount.place} has a stretch of {is_:.0f} ± {sure:.0f}, not {drawn:.0f}"


def _break_point(amount: Amount, formatter: Formatter) -> str:
    way = _way(amount, "far from", "near")
    return f"string {amount.place} breaks {_much(amount, formatter)} too {way} the nut"


FAULTS: dict[str, Callable[[Amount, Formatter], str]] = {
    "bridge": _bridge, "slant": _slant, "nut place": _nut_place, "nut height": _nut_height, "relief": _relief,
    "action": _action, "fret": _fret, "stretch": _stretch, "break point": _break_point,
}  # fmt: skip
"""Each kind of fault in words."""


def _mend(cause: Cause, found: SetUpReadback, formatter: Formatter) -> str:
    """One sentence that says what to do, or two where two things are at fault."""
    if not cause.amounts:
        return "There is nothing to mend except what each string asks for above."
    if cause.likely < LIKELY:
        return MEASURE_MORE
    if len(cause.amounts) > 2:
        return "Give each string what is said of it above: its stretch under [strings], or its own break point."
    of_saddle = [each for each in cause.amounts if each.kind in OF_THE_SADDLE]
    others = [_mended(each, found, formatter) for each in cause.amounts if each.kind not in OF_THE_SADDLE]
    return " ".join([*([_saddle_mended(of_saddle, found, formatter)] if of_saddle else []), *others])


def _saddle_mended(amounts: list[Amount], found: SetUpReadback, formatter: Formatter) -> str:
    """Where the saddle's line goes: on the saddle as it is, in a slot cut anew, or with the bridge."""
    figures = formatter.figures
    across = figures[n.string_y_bridge] / figures[n.string_y_bridge][0]
    shifts = -sum(each.value * (across if each.kind == "slant" else np.ones_like(across)) for each in amounts)
    where = _where(shifts, formatter)
    if all(each.room.takes(float(shifts[each.string - 1])) for each in found.strings):
        return f"File the break points {where}: the saddle has room for it."
    hold = "pins" if figures[n.bridge_hold] == "pins" else "holes of the tie block"
    behind = float((figures[n.bridge_hold_wall] - shifts).min())
    ahead = float(figures[n.bridge_front] - figures[n.saddle_thickness] / 2 + shifts.min())
    thick = formatter.text(n.saddle_thickness)
    if min(behind, ahead) >= figures[n.limit_pin_to_saddle] / 2:
        little = f", where {formatter.text(n.limit_pin_to_saddle)} is usual" * (behind < figures[n.limit_pin_to_saddle])
        return (
            f"Plug the saddle's slot and cut it anew {where}: a saddle {thick} thick has no room for it, and "
            f"{_mm(behind, formatter)} of wood is left before the {hold}{little}."
        )
    return (
        f"Move the bridge {where}: a saddle {thick} thick has no room for it, and a new slot would come too near the "
        + (f"{hold}." if behind < ahead else "bridge's front.")
    )


def _where(shifts: FloatArray, formatter: Formatter) -> str:
    first, last = (_toward(float(shifts[row]), formatter) for row in (0, -1))
    if np.ptp(shifts) < WORTH_IT:
        return first
    return f"{first} at the first string and {last} at the last"


def _toward(shift: float, formatter: Formatter) -> str:
    return f"{_mm(abs(shift), formatter)} toward the {'tail' if shift > 0 else 'nut'}"


def _mended(amount: Amount, found: SetUpReadback, formatter: Formatter) -> str:
    much, up = _mm(abs(amount.value), formatter), amount.value > 0
    if amount.kind == "nut place":
        return (
            f"Bring the nut's edge {much} toward fret 1: a nut that reaches over the board's end by that much."
            if up
            else f"Set the nut's edge {much} back toward the head: a strip before the board's end, or its front filed."
        )
    if amount.kind == "nut height":
        return f"Read the strings over fret 1, then {'file the nut down' if up else 'build the nut up'} by {much}."
    if amount.kind in ("relief", "action"):
        return f"Read the {amount.kind} and set it first: what is left then shows what else there is."
    if amount.kind == "fret":
        way = "nut" if up else "bridge"
        return f"Recut the slot of fret {amount.place} {much} toward the {way}, or file its crown over by that much."
    return f"{STRUNG_ANEW} {_own_break_point(amount, found, formatter)}"


def _own_break_point(amount: Amount, found: SetUpReadback, formatter: Formatter) -> str:
    """What to do about one string's break point, if the string itself is right: on the saddle, or in a wider slot."""
    each = next(each for each in found.strings if each.string == amount.place)
    sought = each.moves.saddle_alone if each.moves else 0.0
    move = -amount.value if amount.kind == "break point" else sought
    if each.room.takes(move):
        return f"Else file its break point {_toward(move, formatter)}: the saddle has room for it."
    room, end = (each.room.toward_tail, "tail") if move > 0 else (each.room.toward_nut, "nut")
    wider, goes = _mm(abs(move) - room, formatter), _mm(abs(move), formatter)
    return (
        f"Else widen the saddle's slot by {wider} toward the {end}, for a thicker saddle: its break point goes {goes} "
        "that way, and on this one it has no room."
    )


def _mm(value: float, formatter: Formatter) -> str:
    return shown(value, "mm", formatter.first)
