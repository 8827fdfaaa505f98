"""The head's outline as a maker writes it: half of it, all of it, or a drawing; and what cannot be one."""

from collections.abc import Callable
from importlib.resources import files
from pathlib import Path

import numpy as np
import pytest

from gramil.description.reading import parse_description, read_shop
from gramil.faults import MakersFault
from gramil.graph import Figures
from gramil.prints.whole import figures_of

TARN = (files("gramil") / "data" / "examples" / "tarn.toml").read_text(encoding="utf-8").partition("[head]")[0]
HALF = "outline = [[0, 22], [30, 26], [150, 32], [178, 20], [172, 0]]\ncorners = [2, 3, 5]"
BOX = "outline = [[0, 30], [160, 30], [160, -30], [0, -30]]\ncorners = [2, 3]"


def headed(words: str, folder: Path | None = None) -> Figures:
    return figures_of(parse_description(f"{TARN}\n[head]\n{words}\n", "tarn.toml", folder), read_shop())


def faults(words: str, folder: Path | None = None) -> str:
    with pytest.raises(MakersFault) as caught:
        headed(words, folder)
    return str(caught.value)


def test_a_half_is_mirrored() -> None:
    points = np.array(headed(HALF)["head_outline"].points)
    np.testing.assert_allclose(points, points[::-1] * [1, -1], atol=1e-9)
    assert points[0] == pytest.approx((0, 22))
    assert points[-1] == pytest.approx((0, -22))


def test_sizes_of_a_box() -> None:
    """60 by 160; the usual posts of Tarn stand 22.25 from the centreline at most: 30 - 22.25 less half a hole."""
    figures = headed(BOX)
    assert figures["head_reach"] == pytest.approx(160)
    assert figures["head_width"] == pytest.approx(60)
    np.testing.assert_allclose(figures["head_hole_to_edge"][[0, 5]], 30 - 22.25 - 5)


def test_a_post_outside_the_head_has_less_than_no_wood() -> None:
    figures = headed(BOX + "\nposts_x = [40, 80, 120, 120, 80, 40]\nposts_y = [33, 20, 20, -20, -20, -20]")
    assert figures["head_hole_to_edge"][0] == pytest.approx(-3 - 5)
    assert figures["head_hole_to_edge"][5] == pytest.approx(10 - 5)


def test_holes_apart_by_hand() -> None:
    figures = headed("posts_x = [40, 80, 120, 120, 80, 40]\nposts_y = [20, 20, 20, -20, -20, -20]\nhole = 8")
    assert figures["head_holes_apart"] == pytest.approx(40 - 8)


def test_a_drawing_beside_the_description(tmp_path: Path) -> None:
    (tmp_path / "head.svg").write_text(
        '<svg xmlns="http://www.w3.org/2000/svg" width="170mm" height="64mm" viewBox="0 0 170 64">'
        '<path d="M 0 10 L 160 0 L 170 32 L 160 64 L 0 54 Z"/></svg>'
    )
    figures = headed('file = "head.svg"\nlength = 170', tmp_path)
    assert figures["head_reach"] == pytest.approx(170, abs=0.01)
    assert figures["head_width"] == pytest.approx(64, abs=0.01)


@pytest.mark.parametrize(
    ("words", "said"),
    [
        ("outline = [[0, 22], [50, 30], [50, 30], [100, 0]]", "twice running"),
        ("outline = [[0, -22], [50, -30], [100, 0], [0, 22]]", "does not run"),
        ("outline = [[0, 22], [100, 30], [20, 5], [160, 10], [120, 30]]", "crosses itself"),
        ('file = "nothing.svg"', "no such file"),
        ('file = "../head.svg"', "bare name"),
        (HALF + '\nfile = "head.svg"', "give one of"),
        ("length = 170", "go with file"),
        ("outline = [[0, 22], [50, 30], [100, 0]]\ncorners = [4]", "none of the 3 points"),
    ],
)
def test_what_is_no_outline(words: str, said: str, tmp_path: Path) -> None:
    assert said in faults(words, tmp_path)


@pytest.mark.parametrize(
    ("words", "said"), [("facets = 6", "odd number"), ("heel_cap = 50", "less than heel_length"), ("facets = 3", "5")]
)
def test_what_is_no_carve(words: str, said: str) -> None:
    with pytest.raises(MakersFault) as caught:
        parse_description(f"{TARN}\n[carve]\n{words}\n", "tarn.toml")
    assert said in str(caught.value)


def test_an_inch_file_carves_the_same(text_of: Callable[[str], str]) -> None:
    mm = headed("hole = 10.16\n[carve]\nheel_length = 50.8")
    inch = headed('hole = "0.4 in"\n[carve]\nheel_length = "2 in"')
    assert mm["carve_heel_start"] == pytest.approx(inch["carve_heel_start"], abs=1e-12)
    assert mm["head_holes_apart"] == pytest.approx(inch["head_holes_apart"], abs=1e-12)
