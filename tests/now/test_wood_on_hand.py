"""What closes work for want of wood, and billets for braces that are given once only."""

from dataclasses import replace
from importlib.resources import files
from pathlib import Path

import pytest

from gramil import names as n
from gramil.description.reading import parse_description, read_shop
from gramil.description.records import Blank
from gramil.graph import Figures
from gramil.now.match import Stock
from gramil.now.needs import Fit, MadePart, needs_of
from gramil.now.wood_on_hand import sticks_for, without_wood
from gramil.prints.whole import figures_of, figures_of_files

EXAMPLES = Path(str(files("gramil") / "data" / "examples"))
BOARD = Stock("dry board", "persimmon", 600.0, 90.0, 10.0)
BEFORE = ("wood_chosen", "wood_weighed")


@pytest.fixture(scope="module")
def tarn() -> Figures:
    return figures_of_files(EXAMPLES / "tarn.toml", EXAMPLES / "shop.toml")


def test_work_is_closed_by_the_wood_that_is_missing_and_by_nothing_else(tarn: Figures) -> None:
    missing = without_wood(tarn, BEFORE, [BOARD])
    assert "thicknessed" not in missing
    assert "2 of" in missing["top_jointed"]
    half = Stock("half", str(tarn[n.top_wood]), 600.0, 300.0, 10.0)
    assert "1 of" in without_wood(tarn, BEFORE, [half])["top_jointed"]
    assert "top_jointed" not in without_wood(tarn, BEFORE, [half, half])
    assert "thicknessed" in without_wood(tarn, BEFORE, [half])


def test_wood_that_is_promised_to_another_is_not_on_hand(tarn: Figures) -> None:
    assert "thicknessed" in without_wood(tarn, BEFORE, [replace(BOARD, owner="Fell")])
    assert "thicknessed" not in without_wood(tarn, BEFORE, [replace(BOARD, owner="Tarn")])


def test_a_finished_guitar_wants_no_board_and_an_unlisted_stock_judges_nothing(tarn: Figures) -> None:
    assert "thicknessed" not in without_wood(tarn, ("thicknessed",), [replace(BOARD, wood="walnut")])
    assert without_wood(tarn, BEFORE, []) == {}


def test_a_part_made_ahead_stands_for_its_wood(tarn: Figures) -> None:
    slotted = Fit(MadePart("board of May", "slotted board", {}), "board", "still right", ())
    assert "thicknessed" not in without_wood(tarn, BEFORE, [replace(BOARD, wood="walnut")], [slotted])


def with_billets(tarn: Figures, count: int) -> Figures:
    """The instrument in a shop with billets that each yield all its braces but no more."""
    sticks = tarn[n.stick_list]
    wide = sum(each.width + 2.0 for each in sticks)
    wood = str(sticks[0].wood)
    assert all(each.wood == wood for each in sticks)
    billet = Blank(
        "billet", wood, max(each.length for each in sticks), wide, max(each.height for each in sticks), count
    )
    return tarn.with_base({**tarn.base, "shop_blanks": (billet,)})


def test_two_instruments_never_get_the_same_billet(tarn: Figures) -> None:
    for count, wants in ((1, [False, True, True]), (2, [False, False, True]), (3, [False, False, False])):
        asked = [(with_billets(tarn, count), BEFORE)] * 3
        found = sticks_for(asked)
        assert [bool(each.wanting) for each in found] == wants
        assert sum(each.billets.get("billet", 0) for each in found) <= count


def test_its_own_billet_is_taken_before_a_free_one(tarn: Figures) -> None:
    own = with_billets(tarn, 2)
    first, second = sticks_for([(own, BEFORE), (with_billets(tarn, 1), BEFORE)], {"billet": 1})
    assert not first.wanting
    assert not second.wanting


def test_split_stock_asks_for_no_billet(tarn: Figures) -> None:
    assert sticks_for([(tarn, ("brace_stock_split",))]) == ()


def test_a_guitar_that_came_in_asks_for_no_wood_of_a_new_one(tarn: Figures) -> None:
    """Its board, plates and braces are in it, however much of it is described."""
    text = (EXAMPLES / "tarn.toml").read_text("utf-8") + "\n[repair]\nrefret = true\nnut = true\n"
    came_in = parse_description(text)
    old = figures_of(came_in, read_shop(EXAMPLES / "shop.toml"))
    assert needs_of(tarn, ())
    assert needs_of(old, ()) == ()
    assert sticks_for([(tarn, ())])
    assert sticks_for([(old, ())]) == ()
