"""What moves a figure, and one of them turned until it is met: against what the figures are by hand."""

import math
from importlib.resources import files

import pytest

from gramil.change.turnable import Turnable, turnables, turned
from gramil.description.base import base_values, keys_of
from gramil.description.reading import parse_description, read_shop
from gramil.description.writing import set_key
from gramil.faults import MakersFault
from gramil.graph import Figures
from gramil.prints.whole import figures_of

TEXT = (files("gramil") / "data" / "examples" / "tarn.toml").read_text(encoding="utf-8")
SHOP = read_shop()


@pytest.fixture(scope="module")
def tarn() -> Figures:
    return figures_of(parse_description(TEXT), SHOP)


def key_of(name: str) -> str | None:
    """Tarn has one scale, and its wire by name."""
    keys = [key for key in keys_of(name) if not key.startswith(("shop.", "limits.", "wire."))]
    return "scale.length" if "scale.length" in keys else keys[0] if keys else None


def changed(tarn: Figures, key: str, unit: str = " mm"):
    def at(value: float) -> Figures:
        base = base_values(parse_description(set_key(TEXT, key, f"{value:.9f}{unit}")), SHOP)
        return tarn.with_base(base.values, base.origins, base.lengths)

    return at


def named(tarn: Figures, address: str, key: str) -> Turnable:
    return next(each for each in turnables(tarn, address, key_of) if each.key == key)


def test_what_moves_a_fret_is_the_scale_and_by_how_much(tarn: Figures) -> None:
    """Fret 12 lies half way: a millimetre more of scale moves it by half a millimetre."""
    found = turnables(tarn, "fret_position[12]", key_of)
    assert [each.key for each in found] == ["scale.length"]
    assert found[0].moves == pytest.approx(0.5, abs=1e-6)
    assert found[0].bounds == pytest.approx((630 - 126, 630 + 126))


def test_the_board_is_turned_until_the_wood_left_is_what_is_wanted(tarn: Figures) -> None:
    """The slot's depth hangs on the wire alone, so wood left grows with the board, millimetre for millimetre."""
    address = "slot_left_least[19]"
    board = named(tarn, address, "board.thickness")
    assert board.moves == pytest.approx(1.0)
    wanted = float(tarn.at(address)) + 0.25
    found = turned(tarn, board, changed(tarn, board.key), address, wanted, board.bounds)
    assert found.answers == pytest.approx((6.55,), abs=1e-6)


def test_a_key_on_which_others_hang_is_worked_out_from_the_description(tarn: Figures) -> None:
    """Fret 12 at 320 wants a scale of 640; the run of the strings sideways hangs on the scale too."""
    scale = named(tarn, "fret_position[12]", "scale.length")
    found = turned(tarn, scale, changed(tarn, scale.key), "fret_position[12]", 320.0, (620.0, 660.0))
    assert found.answers == pytest.approx((640.0,), abs=1e-6)


def test_out_of_reach_says_what_is_within_it(tarn: Figures) -> None:
    board = named(tarn, "slot_left_least[19]", "board.thickness")
    found = turned(tarn, board, changed(tarn, board.key), "slot_left_least[19]", 30.0, board.bounds)
    assert found.answers == ()
    assert found.highest - found.lowest == pytest.approx(2 * 6.3 / 5)


def test_an_answer_that_the_description_refuses_is_none(tarn: Figures) -> None:
    board = named(tarn, "slot_left_least[19]", "board.thickness")
    at = changed(tarn, board.key)

    def refusing(value: float) -> Figures:
        if value > 6.5:
            raise MakersFault.of("too thick")
        return at(value)

    wanted = float(tarn.at("slot_left_least[19]")) + 0.25
    found = turned(tarn, board, refusing, "slot_left_least[19]", wanted, board.bounds)
    assert found.answers == ()
    assert found.refused == 1


def test_a_key_written_otherwise_is_refused(tarn: Figures) -> None:
    board = named(tarn, "slot_left_least[19]", "board.thickness")
    with pytest.raises(MakersFault, match="not written in the form"):
        turned(tarn, board, lambda _: tarn, "slot_left_least[19]", 3.8, board.bounds)


def test_a_whole_run_of_figures_is_not_turned(tarn: Figures) -> None:
    with pytest.raises(KeyError):
        turnables(tarn, "fret_position", key_of)


def test_a_curvature_is_turned_as_it_is_reckoned_with(tarn: Figures) -> None:
    """The fall at the edge grows with the curvature; an end of the arch is a key of its own."""

    def ends(name: str) -> str | None:
        return f"board.arch.{name.rsplit('_', 1)[1]}" if name.startswith("board_curvature") else None

    found = turnables(tarn, "arch_fall_at_edge_treble[0]", ends)
    nut = next(each for each in found if each.key == "board.arch.nut")
    assert nut.value == pytest.approx(1 / 320)
    assert nut.moves > 0
    assert math.isfinite(nut.moves)
