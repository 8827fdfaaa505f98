"""What is written correctly about strings, saddle and bridge but impossible: too few pitches, a core thicker than its
string.

The checks are run with those of `checks.py`, each if the tables that it takes by name could be read.
"""

from collections.abc import Callable, Iterator, Sequence

from gramil.description.board.tables import Nut, Scale
from gramil.description.problems import Problem
from gramil.description.strings.tables import Bridge, Course, Intonation, Saddle, Strings
from gramil.description.strings.usual import LAST_FRET, PER_STRING, STEEL, wound


def a_pitch_for_each_string(strings: Strings) -> Iterator[Problem]:
    """If pitches are given, there is one for each string."""
    count = len(strings.gauges)
    if strings.tuning is not None and len(strings.tuning) != count:
        what = f"read {len(strings.tuning)} pitches, with {count} gauges"
        yield Problem(("strings", "tuning"), what, f"one pitch a string, treble first: {count}")


def a_course_for_each_string(strings: Strings, course: tuple[Course, ...]) -> Iterator[Problem]:
    """The courses, in their order, hold every string once and as it lies."""
    count, first = len(strings.gauges), 1
    for row, each in enumerate(course):
        wanted = tuple(range(first, first + len(each.strings)))
        if wanted[-1] > count:
            yield Problem(("course", row, "strings"), f"read {list(each.strings)}", f"strings up to {count}")
            return
        if each.strings != wanted:
            what, order = f"read {list(each.strings)}", "strings are counted as they lie, from the treble side"
            yield Problem(("course", row, "strings"), what, order, f"write {list(wanted)}")
            return
        first += len(each.strings)
    if course and first <= count:
        what = f"hold {first - 1} strings, and there are {count} gauges"
        yield Problem(("course",), what, "each string stands in one course", f"give string {first} a [[course]]")


def courses_have_room(strings: Strings, course: tuple[Course, ...], nut: Nut, bridge: Bridge) -> Iterator[Problem]:
    """The pairs leave something of their spread for the air between courses, at nut and saddle."""
    if sum(len(each.strings) for each in course) != len(strings.gauges):
        return
    gauges = strings.gauges
    ends = {each.strings[-1] for each in course}
    halves = [(gauges[row - 1] + gauges[row]) / 2 for row in range(1, len(gauges))]
    for name, table in (("nut", nut), ("bridge", bridge)):
        gap = table.pair_by == "gap"
        steps = (half if row in ends else table.pair + (half if gap else 0.0) for row, half in enumerate(halves, 1))
        taken = sum(steps)
        if course and taken >= table.spread:
            what = f"pairs and strings take {taken:.1f} mm of their spread, {table.spread:g} mm"
            yield Problem((name, "spread"), what, "a wider spread, or pairs nearer together")


def a_figure_for_each_string(strings: Strings) -> Iterator[Problem]:
    """Lists about strings have one entry for each string."""
    count = len(strings.gauges)
    for key in PER_STRING:
        values = getattr(strings, key)
        if values is not None and len(values) != count:
            yield Problem(("strings", key), f"read {len(values)} of them", f"one a string, 0 where not known: {count}")


def wound_strings_are_there(strings: Strings) -> Iterator[Problem]:
    """Wound strings are given by number; strings that are not steel must say which."""
    if strings.wound is None:
        if strings.plain != STEEL:
            example = "wound = [4, 5, 6]"
            yield Problem(
                ("strings", "wound"), "is missing", "which strings are wound, by number", f"such as {example}"
            )
        return
    for row, number in enumerate(strings.wound):
        if not 1 <= number <= len(strings.gauges):
            yield Problem(("strings", "wound", row), f"read {number}", f"a string, 1 to {len(strings.gauges)}")


def cores_are_inside(strings: Strings) -> Iterator[Problem]:
    """A core is thinner than its string."""
    for row, (core, gauge) in enumerate(zip(strings.cores or (), strings.gauges, strict=False)):
        if core < 0 or (wound(strings)[row] and core >= gauge):
            yield Problem(("strings", "cores", row), f"read {core:g} mm", f"less than the string's {gauge:g} mm")


def bending_is_inside(strings: Strings) -> Iterator[Problem]:
    """What resists bending is no thicker than the string."""
    for row, (across, gauge) in enumerate(zip(strings.bending or (), strings.gauges, strict=False)):
        if not 0 <= across <= gauge:
            yield Problem(("strings", "bending", row), f"read {across:g} mm", f"0 to the string's {gauge:g} mm")


def a_move_for_each_string(strings: Strings, saddle: Saddle) -> Iterator[Problem]:
    """Set-backs at the saddle are one for all strings, or one for each."""
    count, moves = len(strings.gauges), len(saddle.set_back)
    if moves not in (0, 1, count):
        yield Problem(("saddle", "set_back"), f"read {moves} of them", f"one for all, or one a string: {count}")


def a_nut_place_for_each_string(strings: Strings, scale: Scale, nut: Nut, intonation: Intonation) -> Iterator[Problem]:
    """Break points at the nut are one for all or one for each string, not behind the face; none with a zero fret."""
    count, moves = len(strings.gauges), intonation.nut_forward
    if moves is None:
        return
    if scale.zero_fret:
        yield Problem(("intonation", "nut_forward"), "is given, with a zero fret", "strings break over the zero fret")
    if len(moves) not in (0, 1, count):
        yield Problem(
            ("intonation", "nut_forward"), f"read {len(moves)} of them", f"one for all, or one a string: {count}"
        )
    for row, move in enumerate(moves):
        if move > nut.set_forward + FARTHEST or move < 0:
            yield Problem(
                ("intonation", "nut_forward", row), f"read {move:g} mm", f"0 to {nut.set_forward + FARTHEST:g} mm"
            )


FARTHEST = 6.0
"""Farthest that a break point may be filed ahead of the nut's face, in mm: more is a slip of the pen."""


def a_pair_on_one_break_point_breaks_there(
    course: tuple[Course, ...], saddle: Saddle, intonation: Intonation
) -> Iterator[Problem]:
    """Where a pair has one break point, places given one a string are the same for both of it."""
    if intonation.pair == "two break points":
        return
    given = ((("saddle", "set_back"), saddle.set_back), (("intonation", "nut_forward"), intonation.nut_forward or ()))
    for path, moves in given:
        for each in course if len(moves) > 1 else ():
            own = {moves[string - 1] for string in each.strings if 1 <= string <= len(moves)}
            if len(own) > 1:
                what = f"strings {each.strings[0]} and {each.strings[-1]} break in two places"
                remedy = 'give both the same, or intonation.pair = "two break points"'
                yield Problem(path, what, "a pair has one break point here", remedy)


def frets_that_count_are_there(scale: Scale, intonation: Intonation) -> Iterator[Problem]:
    """The frets that intonation is judged by are on the board."""
    for key in ("from_fret", "to_fret"):
        fret = getattr(intonation, key)
        if fret is not None and fret > scale.frets:
            yield Problem(("intonation", key), f"read {fret}", f"a fret, 1 to {scale.frets}")
    last = min(LAST_FRET, scale.frets)
    if intonation.to_fret is None and last <= intonation.from_fret <= scale.frets:
        yield Problem(
            ("intonation", "from_fret"),
            f"read {intonation.from_fret}",
            f"the last fret that counts is {last}",
            "give to_fret",
        )


def slot_leaves_a_bridge(saddle: Saddle, bridge: Bridge) -> Iterator[Problem]:
    """There is wood under the saddle's slot, and in front of it."""
    if saddle.slot_depth >= bridge.thickness:
        yield Problem(
            ("saddle", "slot_depth"), f"read {saddle.slot_depth:g} mm", f"less than the bridge, {bridge.thickness:g} mm"
        )
    second = bridge.rows_apart if bridge.rows != "one" and bridge.hold == "pins" else 0.0
    taken = bridge.front + bridge.hold_behind + second
    if taken >= bridge.width:
        what = f"saddle and strings' hold take {taken:g} mm"
        yield Problem(("bridge", "width"), what, f"less than the bridge's width, {bridge.width:g} mm")


STRING_CHECKS: Sequence[Callable[..., Iterator[Problem]]] = (
    a_pitch_for_each_string,
    a_course_for_each_string,
    courses_have_room,
    a_figure_for_each_string,
    wound_strings_are_there,
    cores_are_inside,
    bending_is_inside,
    a_move_for_each_string,
    a_nut_place_for_each_string,
    a_pair_on_one_break_point_breaks_there,
    frets_that_count_are_there,
    slot_leaves_a_bridge,
)
