"""Faults planted in the readings of the four examples: the right one is told first, and the last sentence mends it.

A fault is planted over the graph, by pinning where things are, and not by what the search itself supposes; every
reading scatters by one cent. Each fault is as large as moves one reading by five cents.
"""

from collections.abc import Callable
from dataclasses import replace
from functools import cache

import numpy as np
import pytest
from tests.walks import fewer

from gramil.change.set_up_causes import Cause, likely_causes
from gramil.change.set_up_file import SetUpReadings
from gramil.change.set_up_readings import pinned, read_back_set_up
from gramil.change.set_up_report import report
from gramil.formatter import Formatter
from gramil.graph import Figures

NAMES = ("tarn", "fell", "scree", "mere")
FRETS = (1, 3, 5, 7, 9, 12, 15, 19)
SEEDS = fewer(15, 6)
"""Of each fault on each instrument."""
FIVE, NEARLY = 5.0, 0.05
"""Cents by which a planted fault moves the reading that it moves most, and how nearly."""
UNREAD = ("nut height", "relief")
"""Heights that are at fault, and more than is wanted: nobody read any."""
Example = Callable[[str], Figures]


def filed(figures: Figures) -> Figures:
    """The instrument with its break points filed where they are drawn: they do not follow what is planted."""
    ends = ("saddle_set_back", "intonation_nut_forward")
    return pinned(figures, {f"{name}[{row}]": float(value) for name in ends for row, value in by_row(figures[name])})


def by_row(values: np.ndarray) -> list[tuple[int, float]]:
    return list(enumerate(values.tolist(), 1))


def with_fault(figures: Figures, kind: str, place: int, size: float) -> Figures:
    """The instrument with a fault: mm, toward the tail (a nut: toward the head), or the logarithm of a stretch."""
    across = figures["string_y_bridge"] / figures["string_y_bridge"][0]
    set_back, rows = figures["saddle_set_back"], np.arange(1, figures["strings_count"] + 1)
    shares = {"bridge": np.ones_like(across), "slant": across, "break point": (rows == place).astype(float)}
    if kind in shares:
        return pinned(figures, {f"saddle_set_back[{row}]": x for row, x in by_row(set_back + size * shares[kind])})
    if kind == "nut place":
        forward = figures["intonation_nut_forward"] - size
        return pinned(figures, {f"intonation_nut_forward[{row}]": x for row, x in by_row(forward)})
    if kind == "fret":
        return pinned(figures, {f"fret_position[{place}]": float(figures["fret_position"][place]) + size})
    stretch = float(figures["string_stretch"][place - 1]) * float(np.exp(size))
    return pinned(figures, {f"string_stretch[{place}]": stretch})


def planted(figures: Figures, kind: str, place: int, sign: int) -> np.ndarray:
    """The cents at the frets that are read, the fault as large as moves one of them by five cents."""
    right, size, most = figures["intonation_cents_after"][:, FRETS], 0.05 * sign, 0.0
    wrongly = (
        (lambda by: raised(figures, kind, by)) if kind in UNREAD else lambda by: with_fault(figures, kind, place, by)
    )
    while abs(most - FIVE) > NEARLY:
        wrong = wrongly(size)["intonation_cents_after"][:, FRETS]
        most = float(abs(wrong - right).max())
        size *= FIVE / most
    return np.asarray(wrong)


@pytest.fixture(scope="module")
def with_planted(example: Example) -> Callable[..., tuple[Figures, np.ndarray]]:
    """An example, filed, and the cents of a fault in it, each worked out once."""
    one = cache(lambda name: filed(example(name)))
    return cache(lambda name, *fault: (one(name), planted(one(name), *fault)))


def as_read(cents: np.ndarray, figures: Figures) -> SetUpReadings:
    """Readings of a maker who reads the heights first."""
    return SetUpReadings(
        cents={(row + 1, fret): float(each[at]) for row, each in enumerate(cents) for at, fret in enumerate(FRETS)},
        action=dict(by_row(figures["action_wanted"])),
        nut=dict(by_row(figures["nut_slot_over_first"])),
        relief=figures["heights_relief"],
    )


def things(cause: Cause) -> set[tuple[str, int]]:
    """What is at fault: a string's stretch and its break point are one thing, since they can hardly be parted."""
    strings = ("stretch", "break point")
    return {("string" if each.kind in strings else each.kind, each.place) for each in cause.amounts}


@pytest.mark.parametrize("kind", ["bridge", "slant", "nut place", "fret", "stretch", "break point", *UNREAD])
def test_the_right_cause_comes_first_in_95_of_100(
    kind: str, with_planted: Callable[..., tuple[Figures, np.ndarray]]
) -> None:
    right = 0
    for name in NAMES:
        chance = np.random.default_rng([len(kind), len(name), 7])
        places = {"fret": FRETS, "stretch": range(1, 7), "break point": range(1, 7)}.get(kind, (0,))
        for _ in range(SEEDS):
            place = int(chance.choice(np.array(places)))
            figures, cents = with_planted(name, kind, place, 1 if kind in UNREAD else int(chance.choice([-1, 1])))
            readings = as_read(cents + chance.normal(0.0, 1.0, cents.shape), figures)
            if kind in UNREAD:
                readings = SetUpReadings(cents=readings.cents)
            thing = "string" if kind in ("stretch", "break point") else kind
            right += things(likely_causes(figures, readings)[0]) == {(thing, place)}
    assert right >= 0.95 * SEEDS * len(NAMES)


def test_readings_without_a_fault_are_told_to_have_none(example: Example) -> None:
    none = 0
    for name in NAMES:
        figures = filed(example(name))
        chance = np.random.default_rng([len(name), 11])
        for _ in range(SEEDS):
            cents = figures["intonation_cents_after"][:, FRETS]
            readings = as_read(cents + chance.normal(0.0, 1.0, cents.shape), figures)
            none += not likely_causes(figures, readings)[0].amounts
    assert none >= 0.95 * SEEDS * len(NAMES)


@pytest.mark.parametrize("kind", ["bridge", "slant", "nut place", "fret", "stretch", "break point"])
def test_how_much_of_it_there_is_comes_back(kind: str, example: Example) -> None:
    """Without scatter: half a millimetre, or half of a logarithm, put in and found again."""
    figures = filed(example("tarn"))
    place = {"fret": 7, "stretch": 3, "break point": 3}.get(kind, 0)
    cents = with_fault(figures, kind, place, -0.9)["intonation_cents_after"][:, FRETS]
    first = likely_causes(figures, as_read(cents, figures))[0]
    (found,) = [each for each in (*first.amounts, *first.instead) if each.kind == kind]
    assert found.value == pytest.approx(-0.9, abs=2e-3)
    assert (found.kind, found.place) == (kind, place)


@pytest.mark.parametrize(("what", "size"), [("nut height", 0.3), ("relief", 0.4)])
def test_heights_that_nobody_read_are_suspected(what: str, size: float, example: Example) -> None:
    """Nut and saddle as they were made; over the crowns the strings then lie as lines through points put them."""
    figures = filed(example("tarn"))
    readings = as_read(raised(figures, what, size)["intonation_cents_after"][:, FRETS], figures)
    first = likely_causes(figures, SetUpReadings(cents=readings.cents))[0]
    assert things(first) == {(what, 0)}
    assert first.amounts[0].value == pytest.approx(size, abs=0.01)


def raised(figures: Figures, what: str, size: float) -> Figures:
    """The nut higher by so much, or the neck bent more with its nut on it; the saddle stays."""
    bent = pinned(figures, {"heights_relief": figures["heights_relief"] + size}) if what == "relief" else figures
    x, end = figures["string_x"], figures["height_saddle_x"][:, None]
    rise = bent["relief_rise"] - figures["relief_rise"]
    nut = rise[:, :1] + (size if what == "nut height" else 0.0)
    over = figures["height_over_crown"] + nut * (1 - (x - x[:, :1]) / (end - x[:, :1])) - rise
    octave = figures["action_fret"]
    heights = {f"action_nut[{row}]": value for row, value in by_row(over[:, 1])}
    heights |= {f"action_wanted[{row}]": value for row, value in by_row(over[:, octave])}
    return pinned(bent, {"action_nut_fret": 1} | heights)


def test_what_was_read_is_not_suspected(example: Example) -> None:
    """The same cents, the break points read where they were meant to be: then no bridge is out of its place."""
    figures = filed(example("tarn"))
    cents = with_fault(figures, "bridge", 0, -1.5)["intonation_cents_after"][:, FRETS]
    readings = replace(as_read(cents, figures), set_back=dict(by_row(figures["saddle_set_back"])))
    for cause in likely_causes(figures, readings):
        assert not things(cause) & {("bridge", 0), ("slant", 0)}


def last_line(figures: Figures, readings: SetUpReadings) -> str:
    return list(report(read_back_set_up(figures, readings), Formatter(figures)))[-1]


def test_six_sharp_strings_end_in_one_sentence_that_mends_them(example: Example) -> None:
    """Five cents at fret 12 of 630 mm are 5 x 0.364 = 1.8 mm and a little more, too near the nut."""
    figures = example("tarn")
    readings = SetUpReadings(cents={(string, 12): 5.0 + figures_at_12(figures)[string - 1] for string in range(1, 7)})
    lines = list(report(read_back_set_up(figures, readings), Formatter(figures)))
    assert "all strings break" in lines[-2]
    assert "too near the nut" in lines[-2]
    assert not any("stretch" in line for line in lines)
    assert lines[-1].startswith("Plug the saddle's slot and cut it anew 1.8")
    assert "toward the tail" in lines[-1]
    assert "pins" in lines[-1]


def figures_at_12(figures: Figures) -> np.ndarray:
    return np.asarray(figures["intonation_cents_after"][:, 12])


def test_a_move_that_the_saddle_has_room_for_is_filed(example: Example) -> None:
    """Mere's break points lie within 0.7 mm of the middle of a saddle 3 mm thick: 0.3 mm is there, 2 mm is not."""
    figures = filed(example("mere"))
    for size, starts in ((-0.3, "File the break points 0.3"), (-2.0, "Plug the saddle's slot")):
        cents = with_fault(figures, "bridge", 0, size)["intonation_cents_after"][:, FRETS]
        mended = last_line(figures, as_read(cents, figures))
        assert mended.startswith(starts)
    assert "pins" not in mended, "the strings are tied to this bridge"


@pytest.mark.parametrize(
    ("string", "size", "asks"),
    [(1, -0.9, "Else file its break point 0.90 mm toward the tail"), (2, -1.9, "Else widen the saddle's slot by 1.8")],
)
def test_one_string_s_break_point_is_filed_only_where_there_is_room(
    string: int, size: float, asks: str, example: Example
) -> None:
    """Tarn's second string breaks 0.08 mm from where its saddle ends for it: 1.9 mm are 1.82 mm too many."""
    figures = filed(example("tarn"))
    cents = with_fault(figures, "break point", string, size)["intonation_cents_after"][:, FRETS]
    lines = list(report(read_back_set_up(figures, as_read(cents, figures)), Formatter(figures)))
    assert asks in lines[-1]
    alone = [line for line in lines if "saddle alone" in line][string - 1]
    assert ("no room" in alone) == ("widen" in asks)


def test_no_end_is_moved_off_the_saddle_with_the_nut_either(example: Example) -> None:
    """A bridge 5 mm too near the nut: whatever the nut does, no string finds its place on this saddle."""
    figures = filed(example("tarn"))
    cents = with_fault(figures, "bridge", 0, -5.0)["intonation_cents_after"][:, FRETS]
    lines = list(report(read_back_set_up(figures, as_read(cents, figures)), Formatter(figures)))
    asked = [line for line in lines if "saddle alone" in line or "with the nut" in line]
    assert len(asked) == 12
    assert all("no room" in line for line in asked)


def test_a_bridge_without_the_wood_is_moved(example: Example) -> None:
    figures = filed(example("tarn"))
    cents = with_fault(figures, "bridge", 0, -5.0)["intonation_cents_after"][:, FRETS]
    assert last_line(figures, as_read(cents, figures)).startswith("Move the bridge 5.0")


def test_no_move_is_asked_of_a_saddle_that_would_stand_too_low(example: Example) -> None:
    figures = filed(example("mere"))
    low = replace(
        SetUpReadings(cents={(1, 12): 6.0, (2, 12): 6.0}), action={1: 5.0, 2: 5.0}, saddle_height={1: 2.0, 2: 2.0}
    )
    lines = list(report(read_back_set_up(figures, low), Formatter(figures)))
    assert not any("saddle alone" in line and "toward" in line for line in lines)
    assert any("not before the neck's set" in line for line in lines)
    assert lines[-1].startswith("Once the neck's set allows it")


@pytest.mark.parametrize(("off", "says"), [(0.0, "every string is to break on the saddle"), (-4.0, "off the saddle")])
def test_a_slot_as_measured_says_whether_the_break_points_fall_on_it(off: float, says: str, example: Example) -> None:
    figures = example("tarn")
    ends = {"slot_treble": figures["saddle_end_treble"] + off, "slot_bass": figures["saddle_end_bass"] + off}
    lines = list(report(read_back_set_up(figures, SetUpReadings(**ends)), Formatter(figures)))
    assert any(says in line for line in lines)


def test_a_zero_fret_does_not_move(derive_text: Callable[..., Figures], text_of: Callable[[str], str]) -> None:
    text = text_of("tarn").replace("zero_fret = false", "zero_fret = true ")
    figures = filed(derive_text(text, text_of("shop")))
    cents = with_fault(figures, "bridge", 0, -1.5)["intonation_cents_after"][:, FRETS]
    readings = SetUpReadings(cents=as_read(cents, figures).cents)
    assert all(("nut place", 0) not in things(cause) for cause in likely_causes(figures, readings))
    lines = list(report(read_back_set_up(figures, readings), Formatter(figures)))
    assert not any("with the nut" in line for line in lines)


def test_two_faults_at_once_are_both_told(example: Example) -> None:
    figures = filed(example("scree"))
    both = with_fault(with_fault(figures, "bridge", 0, -2.0), "fret", 7, 0.8)
    first = likely_causes(figures, as_read(both["intonation_cents_after"][:, FRETS], figures))[0]
    assert things(first) == {("bridge", 0), ("fret", 7)}
