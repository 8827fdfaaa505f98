"""A refret with a reset, by hand: the wedge by old and new crowns, the tongue, the saddle, and a wire in old slots.

Every figure is invented; the geometry here is drawn out with points and lines of its own.
"""

from importlib.resources import files
from math import atan2, cos, hypot, sin, tan

import pytest

from gramil.description.reading import parse_description, parse_shop
from gramil.graph import Figures
from gramil.prints.whole import figures_of, findings_of
from gramil.shop.made_file import parse_made

EXAMPLES = files("gramil") / "data" / "examples"


def moor(old: str = "", new: str = "", made: bool = True) -> Figures:
    text = (EXAMPLES / "moor.toml").read_text("utf-8").replace(old, new)
    shop = (EXAMPLES / "shop.toml").read_text("utf-8").partition("[air]")[0]
    drawn = figures_of(parse_description(text, "moor"), parse_shop(shop.replace("place = ", "# place = ")))
    return (
        parse_made((EXAMPLES / "moor.made.toml").read_text("utf-8"), "moor.made.toml").pinned(drawn) if made else drawn
    )


@pytest.fixture(scope="module")
def figures() -> Figures:
    return moor()


def turned(x: float, z: float, angle: float) -> tuple[float, float]:
    """A point of the neck, from the join at its underside, as the head is laid back by an angle."""
    return x * cos(angle) - z * sin(angle), x * sin(angle) + z * cos(angle)


def height_at(one: tuple[float, float], other: tuple[float, float], x: float) -> float:
    return one[1] + (other[1] - one[1]) * (x - one[0]) / (other[0] - one[0])


def laid_over(angle: float, crowns: tuple[tuple[float, float], tuple[float, float]], at: float, board: float) -> float:
    """How high over the rim plane a straightedge on two crowns passes at a place, the neck at an angle.

    The crest lies a board's thickness over the join; crowns are (place from the join, height over the crest).
    """
    ends = [turned(x, crown, angle) for x, crown in crowns]
    return board + height_at(ends[0], ends[1], at)


def angle_that_reads(reading: float, crowns, at: float, board: float, bridge: float) -> float:
    """By halving: the angle at which the straightedge passes so far over the bridge's top."""
    low, high = -0.2, 0.2
    for _ in range(80):
        middle = (low + high) / 2
        low, high = (middle, high) if laid_over(middle, crowns, at, board) - bridge < reading else (low, middle)
    return (low + high) / 2


def test_the_wedge_goes_by_the_crowns_that_the_straightedge_lay_on(figures: Figures) -> None:
    """Old crowns 0.62 and 0.82 (the mean of those read stands in for fret 12 where the straightedge lay there), new
    ones 1.10; the neck's angle before by halving, the one wanted from where the new crowns are to be passed.
    """
    join = 642 / 2
    run, board, bridge = float(figures["neck_set_run_mean"]), 5.6, 8.2 + 1.6
    places = [642 * (1 - 2 ** (-fret / 12)) - join for fret in (1, 12)]
    old = ((places[0], 0.62), (places[1], 0.86))
    before = angle_that_reads(-2.4, old, run, board, bridge)
    new = ((places[0], 1.10), (places[1], 1.10))
    after = angle_that_reads(float(figures["neck_set_straightedge"]), new, run, board, bridge)
    assert figures["reset_wedge"] == pytest.approx(tan(after - before) * 92, abs=0.01)


def test_read_as_if_it_lay_on_the_new_crowns_the_wedge_would_be_too_large(figures: Figures) -> None:
    """What the new crowns stand higher, over the run to the saddle, is an angle: that times the heel is the mistake."""
    run = float(figures["neck_set_run_mean"])
    lies = float(figures["found_crown_at_saddle"])
    wrong = atan2(1.10 - lies, run) * 92
    as_new = moor('heel_depth = "92 mm"', 'heel_depth = "92 mm"', made=True)
    level = as_new.with_pins({k: v for k, v in as_new.pins.items() if not k.startswith("found_crown")})
    assert lies == pytest.approx(0.62 + (0.86 - 0.62) * (642 / 2 + run - 36.03) / (321 - 36.03), abs=0.01)
    assert wrong == pytest.approx((1.10 - lies) / hypot(run, 1.1) * 92, abs=0.005)
    assert level["reset_wedge"] != level["reset_wedge"]  # with no crown read it is not known


def test_the_tongue_lifts_by_the_angle_over_its_length(figures: Figures) -> None:
    tongue = 642 * (1 - 2 ** (-19 / 12)) + 9 - 321
    assert figures["reset_tongue"] == pytest.approx(tongue * figures["reset_wedge"] / 92, abs=0.005)
    assert figures["reset_tongue_left"] == pytest.approx(5.6)


def test_the_saddle_shows_what_was_wanted_after_the_reset(figures: Figures) -> None:
    assert float(figures["reset_exposed"].mean()) == pytest.approx(float(figures["saddle_exposed"]), abs=0.01)


def test_a_wire_in_the_old_slots_by_hand(figures: Figures) -> None:
    """The shop's medium wire: tang 0.54, beads 0.78, 1.6 deep, crown 1.15; slots 0.56 to 0.60 wide, 1.75 deep."""
    wire = figures["refret_chosen"]
    assert wire.narrowest == pytest.approx(0.56 - 0.54)
    assert wire.widest == pytest.approx(0.60 - 0.54)
    assert wire.bite == pytest.approx((0.78 - 0.60) / 2)
    assert wire.room == pytest.approx(1.75 - 1.6)
    crown = next(each for each in figures["refret_crowns"] if each.name == wire.name)
    assert crown.over_old == pytest.approx(1.15 - 0.86)
    assert crown.higher == pytest.approx(1.15 - 0.05 - 0.86)
    assert {each.name: each.words for each in figures["refret_verdicts"]}[wire.name] == "loose in the widest slot"


def test_old_frets_that_stay_are_the_crowns_of_the_work() -> None:
    stays = moor("refret = true", "refret = false")
    assert stays["crown_height"] == pytest.approx((0.62 + 0.78 + 0.86) / 3)
    told = {each.name: each for each in findings_of(stays)}
    assert told["old crowns"].severity in ("caution", "stop")
    assert "wire in the widest old slot" not in told


def test_the_old_saddle_s_line_is_held_against_the_frets(figures: Figures) -> None:
    assert figures["moved_bass"] == pytest.approx(figures["moved_wanted_bass"] - 645.6)
    assert figures["moved_treble"] == pytest.approx(figures["moved_wanted_treble"] - 643.4)


def test_before_it_is_read_nothing_of_it_is_judged() -> None:
    told = {each.name: each for each in findings_of(moor(made=False))}
    for name in ("wire in the widest old slot", "wedge of the reset", "action as found, bass", "old saddle's line"):
        if name in told:
            assert told[name].severity == "not judged", name
            assert "found " in str(told[name].says), name


def test_a_wire_in_the_old_slots_asks_for_the_slots_alone() -> None:
    """Whether a tang fits has nothing to do with how far the old crowns were worn down, nor has the neck's bow."""
    told = {each.name: str(each.says) for each in findings_of(moor(made=False))}
    for name in ("wire in the widest old slot", "bite in the widest old slot", "back-bow from the new frets"):
        assert "found slot width" in told[name], name
        assert "crown" not in told[name], name
