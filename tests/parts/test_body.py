"""The body's figures: where it stands, what it holds, what is not there; a round body worked by hand."""

import math
from collections.abc import Callable

import numpy as np
import pytest

from gramil.graph import Figures
from gramil.prints.whole import dimensions_of, drawings_of, findings_of
from gramil.rows import headings

R = 200.0
ROUND = "\n".join(
    [
        "[body]",
        "points = ["
        + ", ".join(
            f"[{R - R * math.cos(turn):.9f}, {max(0.0, R * math.sin(turn)):.9f}]"
            for turn in (math.pi * step / 48 for step in range(49))
        )
        + "]",
        "depth_neck = 100",
        "depth_tail = 100",
        'back_radius = "flat"',
        "wall = 2",
        "linings = 8",
        "clearance = 0.5",
        "[top]",
        'radius = "flat"',
        "thickness = 3",
        "[soundhole]",
        "centre = 100",
        "diameter = 90",
        "[[brace]]",
        'name = "across"',
        'plate = "top"',
        "station = 200",
        "width = 8",
        "height = 12",
        "[[brace]]",
        'name = "X"',
        'plate = "top"',
        "line = [[150, -50], [250, 50]]",
        "twin = true",
        "width = 8",
        "height = 12",
    ]
)


@pytest.fixture(scope="module")
def round_one(text_of: Callable[[str], str], derive_text: Callable[..., Figures]) -> Figures:
    board = text_of("tarn").partition("# The body")[0]
    return derive_text(board + ROUND)


def test_a_round_body_has_the_measures_of_a_circle(round_one: Figures) -> None:
    assert round_one["body_length"] == pytest.approx(2 * R, rel=1e-6)
    assert round_one["body_width"] == pytest.approx(2 * R, rel=1e-6)
    assert round_one["body_perimeter"] == pytest.approx(2 * math.pi * R, rel=1e-6)
    assert round_one["body_tightest_bend"] == pytest.approx(R, rel=1e-3)


def test_the_air_is_that_of_a_cylinder_less_blocks_and_linings(round_one: Figures) -> None:
    blocks = (32 * 75 + 20 * 80) * 100
    linings = 2 * math.pi * R * 8 * 14
    assert round_one["body_air_volume"] == pytest.approx(math.pi * (R - 2) ** 2 * 100 - blocks - linings, rel=1e-5)


def test_the_rigid_resonance_is_the_formulas(round_one: Figures) -> None:
    """By hand: c = 343.2 m/s, S = pi 45^2 mm2, L' = 3 + 1.7 x 45 = 79.5 mm, over the volume above."""
    volume = math.pi * (R - 2) ** 2 * 100 - (32 * 75 + 20 * 80) * 100 - 2 * math.pi * R * 8 * 14
    by_hand = 343_200 / (2 * math.pi) * math.sqrt(math.pi * 45**2 / (79.5 * volume))
    assert round_one["body_air_rigid"] == pytest.approx(by_hand, rel=1e-3)
    assert round_one["body_air_least"] < round_one["body_air_most"] < round_one["body_air_rigid"]


def test_a_brace_across_the_middle_reaches_the_linings_less_clearance(round_one: Figures) -> None:
    assert round_one.at('brace_list["across"].length') == pytest.approx(2 * (R - 2 - 8 - 0.5), abs=0.01)
    assert math.isinf(round_one.at('brace_list["across"].radius'))
    assert round_one.at('brace_list["across"].sagitta') == 0


def test_twins_at_45_degrees_cross_square_in_the_middle_and_are_halved(round_one: Figures) -> None:
    (crossing,) = round_one["brace_crossings"]
    assert (crossing.x, crossing.y) == pytest.approx((200.0, 0.0), abs=1e-9)
    assert crossing.angle == pytest.approx(math.pi / 2)
    assert (crossing.depth_over, crossing.depth_under) == (6.0, 6.0)
    assert (crossing.width_over, crossing.width_under) == pytest.approx((8.0, 8.0))
    assert crossing.along_under == pytest.approx(R - 2 - 8 - 0.5, abs=0.01)


def test_braces_that_lie_over_each_other_unsaid_are_a_stop(round_one: Figures) -> None:
    found = {each.name: each for each in findings_of(round_one)}
    assert found["braces apart"].severity == "stop"
    assert round_one["room_between_braces"] == 0


def test_a_dome_arches_feet_by_its_sagitta(example: Callable[[str], Figures]) -> None:
    """By hand: 25 ft is 7620 mm; a leg through the apex is arched by R - sqrt(R^2 - (l / 2)^2)."""
    tarn = example("tarn")
    brace = next(each for each in tarn["brace_list"] if each.name == "back 3")
    off = brace.start_x - tarn["body_length"] / 2
    radius = math.sqrt((15 * 304.8) ** 2 - off**2)
    assert brace.radius == pytest.approx(radius, rel=1e-9)
    assert brace.sagitta == pytest.approx(radius - math.sqrt(radius**2 - (brace.length / 2) ** 2), rel=1e-6)


def test_the_body_begins_at_the_join(example: Callable[[str], Figures]) -> None:
    """By hand: 630 (1 - 2^(-13/12)) = 332.68 mm."""
    tarn = example("tarn")
    assert tarn["body_edge"] == pytest.approx(332.68, abs=0.005)
    assert tarn["body_edge"] + tarn["body_saddle"] == pytest.approx(tarn["saddle_position"])


def test_the_side_begins_and_ends_as_deep_as_stated(example: Callable[[str], Figures]) -> None:
    tarn = example("tarn")
    depth = tarn["side_depth"]
    assert (depth[0], depth[-1]) == pytest.approx((94.0, 104.0), abs=1e-9)
    assert tarn["side_along"][-1] == pytest.approx(tarn["body_perimeter"] / 2)
    named = [each.name for each in tarn["side_stations"]]
    assert named == ["neck end", "upper bout", "waist", "lower bout", "tail end"]


def test_what_is_not_there_is_not_listed_and_not_judged(example: Callable[[str], Figures]) -> None:
    scree = example("scree")
    listed = {heading.name for heading in headings(scree, dimensions_of(scree))}
    about = {name for name in listed if scree.graph.dimensions[name].part in ABSENT}
    assert about == {"body_edge", "body_saddle"}
    (body,) = [each for each in findings_of(scree) if each.name == "body"]
    assert (body.severity, body.says) == ("not judged", "because no body is described")
    assert not {"face-plan", "top-inside", "back-inside", "side", "mould", "braces"} & {
        each.name for each in drawings_of(scree)
    }


ABSENT = ("body", "sides", "soundhole", "braces", "brace_room", "brace_stock", "bridge_plate")
"""Parts of which nothing is known without a body, but where it would stand."""


def test_the_stock_yields_no_more_than_it_has(example: Callable[[str], Figures]) -> None:
    tarn = example("tarn")
    assert len(tarn["stick_list"]) == len(tarn["brace_list"])
    assert not tarn["stick_wanting"]
    assert sum(each.sticks for each in tarn["stick_billets"]) == len(tarn["stick_list"])
    for billet in tarn["stick_billets"]:
        assert billet.left <= 520 * np.floor(75 / 5)
