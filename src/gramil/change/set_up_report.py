"""What is to be done about the readings of a strung instrument, line by line, in the order of the work."""

import math
from collections.abc import Iterator

from gramil import names as n
from gramil.change.set_up_cause_report import WORTH_IT, cause_lines, slot_lines
from gramil.change.set_up_causes import Amount, Cause
from gramil.change.set_up_heights import Heights, NeckSet
from gramil.change.set_up_moves import Moves, Stiffness
from gramil.change.set_up_readings import SetUpReadback, StringReadback
from gramil.decimals import signed
from gramil.formatter import Formatter, shown


def report(found: SetUpReadback, formatter: Formatter) -> Iterator[str]:
    """The lines of the report, in the order in which the work is done."""
    yield from _relief(found, formatter)
    for each in found.strings:
        yield ""
        yield f"String {each.string}"
        yield from _heights(each.heights, formatter)
        yield from _notes(each)
        fellow = _fellow(each.string, formatter)
        if each.moves is not None and fellow is not None:
            yield _pair_moves(each, next((other for other in found.strings if other.string == fellow), None), formatter)
        elif each.moves is not None:
            yield from _moves(each.moves, each, formatter)
        if each.stiffness is not None and _strings_at_fault(found):
            yield from _stiffness(each.stiffness, formatter)
    if found.neck is not None:
        yield ""
        yield from _neck(found.neck, formatter)
    yield from slot_lines(found, formatter)
    yield from cause_lines(found, formatter)


def _fellow(string: int, formatter: Formatter) -> int | None:
    """The string that shares this one's break point, if there is one."""
    points = formatter.figures[n.intonation_break_point].tolist()
    return next((row for row, point in enumerate(points, 1) if point == points[string - 1] and row != string), None)


def _strings_at_fault(found: SetUpReadback) -> bool:
    """Whether the strings themselves may cause the readings: if something else explains them, no stretch is
    reported.
    """
    return not found.causes or any(each.kind == "stretch" for cause in found.causes for each in _supposed(cause))


def _supposed(cause: Cause) -> tuple[Amount, ...]:
    return (*cause.amounts, *cause.instead)


def _relief(found: SetUpReadback, formatter: Formatter) -> Iterator[str]:
    if math.isnan(found.relief):
        yield "Relief was not read: it is taken to be as wanted."
        return
    relief, wanted = _mm(found.relief, formatter), _mm(found.relief_wanted, formatter)
    yield f"Relief {relief}, wanted {wanted}: {_rod(found, formatter)}"


def _rod(found: SetUpReadback, formatter: Formatter) -> str:
    """What to do about the relief: turn the rod, or live with it."""
    over = found.relief - found.relief_wanted
    if abs(over) < WORTH_IT:
        return "leave it so." if found.rod == "none" else "leave the truss rod as it is."
    if found.rod != "none":
        return f"{'tighten' if over > 0 else 'slacken'} the truss rod first."
    much = f" It is over {_mm(found.relief_most, formatter)}, the most that is usual." if _much(found) else ""
    return f"there is no truss rod, it stays, and the heights go by it.{much}"


def _much(found: SetUpReadback) -> bool:
    return found.relief > found.relief_most + WORTH_IT


def _heights(heights: Heights, formatter: Formatter) -> Iterator[str]:
    if not math.isnan(heights.nut):
        read, wanted = (heights.nut, heights.nut_with_relief), heights.nut_wanted
        yield f"  over fret 1   {_read(*read, wanted, formatter)}: {_off(heights.off_nut, 'the nut slot', formatter)}"
    if not math.isnan(heights.action):
        read, wanted = (heights.action, heights.action_with_relief), heights.action_wanted
        yield f"  action        {_read(*read, wanted, formatter)}: {_off_saddle(heights, formatter)}"
    yield from _saddle(heights, formatter)
    if max(abs(heights.first_change), abs(heights.octave_change)) >= 0.05:
        yield (
            f"  with it       fret 1 goes by {signed(heights.first_change, 1)} cent, the octave by "
            f"{signed(heights.octave_change, 1)} cent"
        )


def _read(now: float, with_relief: float, wanted: float, formatter: Formatter) -> str:
    """A height as read, as it will be once the relief is set, and as wanted."""
    set_first = f" ({_mm(with_relief, formatter)} once the relief is set)" if abs(with_relief - now) >= WORTH_IT else ""
    return f"{_mm(now, formatter)}{set_first}, wanted {_mm(wanted, formatter)}"


def _off_saddle(heights: Heights, formatter: Formatter) -> str:
    """The instruction for the saddle, or that none can be given."""
    if not heights.saddle_stops or abs(heights.off_saddle) < WORTH_IT:
        return _off(heights.off_saddle, "the saddle", formatter)
    way = "high" if heights.off_saddle > 0 else "low"
    return f"{_mm(abs(heights.off_saddle), formatter)} too {way} at the saddle, more than it can give"


def _saddle(heights: Heights, formatter: Formatter) -> Iterator[str]:
    """How much of the saddle will show, or would."""
    if math.isnan(heights.saddle_left):
        if abs(heights.off_saddle) >= WORTH_IT:
            yield "  saddle        not judged, because what shows of it was not read (saddle_height)"
        return
    left = _mm(heights.saddle_left, formatter)
    if not heights.saddle_stops:
        yield f"  saddle        {left} will show"
    elif heights.saddle_left < 0:
        yield f"  saddle        it would end {_mm(-heights.saddle_left, formatter)} under the bridge's top"
    else:
        yield f"  saddle        {left} would show"


def _off(amount: float, where: str, formatter: Formatter) -> str:
    if abs(amount) < WORTH_IT:
        return f"leave {where}"
    return (
        f"take {_mm(amount, formatter)} off {where}" if amount > 0 else f"build {where} up by {_mm(-amount, formatter)}"
    )


def _neck(neck: NeckSet, formatter: Formatter) -> Iterator[str]:
    """What to do for heights that no saddle can give."""
    many, which = len(neck.strings) > 1, shown(neck.strings, None)
    shows, lift, wedge = (
        formatter.text(n.saddle_exposed),
        _mm(abs(neck.rise), formatter),
        _mm(abs(neck.wedge), formatter),
    )
    higher, cap = ("higher", "its cap") if neck.rise > 0 else ("lower", "the board")
    yield (
        f"String{'s' * many} {which}: this cannot be had at the saddle, by the limits of check. Change the neck's "
        f"angle or the bridge's thickness. For {shows} of saddle to show, the neck's line is to pass {lift} {higher} "
        f"over the bridge: {wedge} off the heel at {cap}."
    )


def _notes(each: StringReadback) -> Iterator[str]:
    if each.notes:
        yield "  fret      read     heights set   saddle moved"
    for note in each.notes:
        read, with_heights, moved = (signed(cents, 2) for cents in (note.measured, note.with_heights, note.left))
        yield f"  {note.fret:>4}   {read:>7}   {with_heights:>11}   {moved:>12}   cent"


def _moves(moves: Moves, each: StringReadback, formatter: Formatter) -> Iterator[str]:
    rule = f"{_mm(each.per_cent, formatter)} a cent at the octave"
    if each.heights.saddle_stops:
        yield "  saddle alone  not before the neck's set"
        return
    if _has_room(moves.saddle_alone, each):
        move = _toward(moves.saddle_alone, "the tail", "the nut", formatter)
        yield f"  saddle alone  {move} ({rule}): {moves.now:.2f} to {moves.left_alone:.2f} cent RMS"
    else:
        yield f"  saddle alone  {_no_room(moves.saddle_alone, each, formatter)} ({rule}): {moves.now:.2f} cent RMS"
    if math.isnan(moves.nut):
        return
    if _has_room(moves.saddle_with_nut, each):
        yield (
            f"  with the nut  nut {_toward(moves.nut, 'fret 1', 'the head', formatter)}, saddle "
            f"{_toward(moves.saddle_with_nut, 'the tail', 'the nut', formatter)}: to {moves.left_both:.2f} cent RMS"
        )
    else:
        yield f"  with the nut  {_no_room(moves.saddle_with_nut, each, formatter)}"


def _pair_moves(each: StringReadback, fellow: StringReadback | None, formatter: Formatter) -> str:
    """Where the one break point of a pair goes: half way between what its strings ask for, as cents go alike by it."""
    if each.heights.saddle_stops:
        return "  saddle, both  not before the neck's set"
    if each.moves is None or fellow is None or fellow.moves is None:
        return f"  saddle, both  read string {_fellow(each.string, formatter)} too: the pair breaks in one place"
    move = (each.moves.saddle_alone + fellow.moves.saddle_alone) / 2
    asked = f"half way between what strings {each.string} and {fellow.string} ask for"
    if not (_has_room(move, each) and _has_room(move, fellow)):
        return f"  saddle, both  {_no_room(move, each, formatter)} ({asked})"
    return f"  saddle, both  {_toward(move, 'the tail', 'the nut', formatter)} ({asked})"


def _has_room(move: float, each: StringReadback) -> bool:
    return abs(move) < WORTH_IT or each.room.takes(move)


def _no_room(move: float, each: StringReadback, formatter: Formatter) -> str:
    """A move that the saddle has no room for is not asked for: it says how much would be wanted, and is there."""
    room = max(0.0, each.room.toward_tail if move > 0 else each.room.toward_nut)
    wanted = _toward(move, "the tail", "the nut", formatter)
    return f"no room on this saddle: {wanted} would be wanted, {_mm(room, formatter)} is there"


def _toward(move: float, ahead: str, behind: str, formatter: Formatter) -> str:
    if abs(move) < WORTH_IT:
        return "stays"
    return f"{_mm(abs(move), formatter)} toward {ahead if move > 0 else behind}"


def _stiffness(found: Stiffness, formatter: Formatter) -> Iterator[str]:
    if math.isnan(found.fitted):
        yield "  stretch       no stiffness explains these cents: check signs, set-backs and heights"
        return
    sure = found.uncertainty / found.fitted
    yield (
        f"  stretch       {found.fitted:.0f} ± {found.uncertainty:.0f} as read, {found.drawn:.0f} as drawn: "
        + ("too unsure to use" if sure > 0.3 else "put it into [strings] stretch once read twice alike")
    )
    if not math.isnan(found.saddle_error):
        yield (
            f"                or, its break point sought too, that acts {_signed(found.saddle_error, formatter)} ± "
            f"{_mm(found.saddle_uncertainty, formatter)} from where it was taken to be"
        )


def _mm(value: float, formatter: Formatter) -> str:
    return shown(value, "mm", formatter.first)


def _signed(value: float, formatter: Formatter) -> str:
    return ("+" if value > 0 else "") + _mm(value, formatter)
