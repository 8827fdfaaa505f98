"""A push on the strung guitar with a dial gauge, beside the same push solved."""

import math
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from tests.in_process import gramil
from tests.top_of_tarn import EXAMPLES, top_of_tarn

from gramil import names as n
from gramil.cli.top_pushed import kept_push, with_push
from gramil.description.wood.timbers import Push
from gramil.faults import MakersFault
from gramil.formatter import Formatter, formatter_of
from gramil.graph import Figures
from gramil.physics.plates.plate import Plate
from gramil.physics.plates.plies import Ply
from gramil.physics.plates.timber import Timber
from gramil.prints.top_rows import pushes_in_words
from gramil.shop.shop_in_store import shop_description
from gramil.store.opening import open_store
from gramil.top.braced import Braced, Pull, solved
from gramil.top.pushing import PushCompared, push_list

STEEL = 210000.0
"""Young's modulus, MPa; 0.3 for Poisson's ratio."""


def test_a_clamped_disc_gives_what_the_books_say() -> None:
    """A load on the middle of a clamped circular plate: w = F a^2 / (16 pi D); Timoshenko and Woinowsky-Krieger, Theory
    of Plates and Shells, 1959, article 19. The load stands on 8 by 30 mm, which lessens it by some 1 %."""
    radius, thickness = 200.0, 3.0
    turn = np.linspace(0.0, 2 * math.pi, 121)[:-1]
    shear = STEEL / 2.6
    steel = Timber(STEEL, STEEL, STEEL, shear, shear, shear, 0.3, 0.3, 7850.0)
    around = np.stack([np.cos(turn), np.sin(turn)], axis=1)
    pull = Pull(20.0 * around, (0.0, 0.0, 1.0), (0.0, 0.0))
    top = solved(Braced("disc", Plate(radius * around, Ply(steel), thickness), (), (), (pull,), -10.0, 0.0, 10.0), 14.0)
    (told,) = push_list((Push("a push", 20.0, 1.0, 0.01),), (top,), (top,), 0.22)
    bending = STEEL * thickness**3 / (12 * (1 - 0.09))
    assert told.solved == pytest.approx(20.0 * radius**2 / (16 * math.pi * bending), rel=0.015)


def of_tarn(*pushes: Push) -> tuple[PushCompared, ...]:
    figures = top_of_tarn()
    top = figures[n.braced_quick]
    return push_list(pushes, top, top, figures[n.pulled_spread])


def test_a_top_that_gives_a_fifth_less_is_a_quarter_stiffer_and_turns_so_much_less() -> None:
    """All of a linear model: deflection and turn are as one over its stiffness. Errors are put together by hand."""
    turn = top_of_tarn()[n.braced_quick][0].moved.turn
    (soft,) = of_tarn(Push("one", 20.0, 0.1, 0.01))
    (stiff,) = of_tarn(Push("two", 20.0, soft.solved / 1.25, 0.01))
    assert stiff.factor == pytest.approx(1.25)
    assert stiff.turn == pytest.approx(turn / 1.25)
    by_hand = math.sqrt((0.01 * 1.25 / soft.solved) ** 2 + 0.01**2 + 0.03**2)  # gauge, weight, and the model's 3 %
    assert stiff.factor_within == pytest.approx(1.25 * by_hand)
    assert stiff.least < soft.solved < stiff.most


def test_what_no_wood_explains_is_said_and_lengths_are_in_the_makers_unit() -> None:
    figures = top_of_tarn()
    (soft,) = of_tarn(Push("one", 20.0, 0.1, 0.01))
    told = (replace(soft, given=3 * soft.solved),)
    formatter = formatter_of(replace(figures, known={**figures.known, n.push_list.address: told}))
    lines = pushes_in_words(formatter.figures, replace(formatter, first="in"))
    assert any("no wood explains" in line for line in lines)
    assert " in; solved " in lines[0]
    assert not any("no wood explains" in line for line in pushes_in_words(*_as_solved(soft)))


def _as_solved(soft: PushCompared) -> tuple[Figures, Formatter]:
    figures = top_of_tarn()
    known = {**figures.known, n.push_list.address: (replace(soft, given=soft.solved),)}
    as_solved = replace(figures, known=known)
    return as_solved, formatter_of(as_solved)


def test_it_is_kept_in_the_store_for_its_instrument(tmp_path: Path) -> None:
    gramil(tmp_path, "store", "new", "shop.gramil", "--shop", str(EXAMPLES / "shop.toml"))
    figures, row = with_push(top_of_tarn(), "2000 g", "0.16")
    (push,) = figures[n.timber_pushes]
    assert push.force == pytest.approx(19.61, abs=0.01)  # two kilograms weigh that, N
    assert push.given == 0.16
    assert "written down" in " ".join(kept_push(row, tmp_path / "shop.gramil"))
    with open_store(tmp_path / "shop.gramil", to_read=True) as store:
        (kept,) = shop_description(store).shop.pushed
    assert (kept.instrument, kept.weight, kept.given) == ("Tarn", 2000.0, 0.16)
    assert "[[pushed]]" in " ".join(kept_push(row, None))
    assert with_push(figures, "2000 g", "0.16")[1]["name"] != row["name"]


@pytest.mark.parametrize(
    ("weight", "given"), [("2000 g", "-0.1"), ("heavy", "0.1"), ("0 g", "0.1"), ("2000 g", "soft")]
)
def test_what_is_no_push_is_refused(weight: str, given: str) -> None:
    with pytest.raises(MakersFault):
        with_push(top_of_tarn(), weight, given)
