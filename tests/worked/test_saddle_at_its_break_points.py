"""The saddle where each string really breaks, checked by lines through points and by nothing of the program's own.

A string runs straight through two points: its height at the nut's fret and its action at fret 12. Where it leaves the
saddle is `set_back` behind the end of its scale; there, and not at the scale's end, the saddle must reach it. The
same for the neck's set, and for the length that sounds, from break point to break point.
"""

import math
from collections.abc import Callable

import numpy as np
import pytest

from gramil.graph import Figures
from gramil.physics.stopped_string import StringStiffness, deviation

NAMES = ("tarn", "fell", "scree", "mere")


@pytest.fixture(scope="module", params=NAMES)
def figures(request: pytest.FixtureRequest, example: Callable[[str], Figures]) -> Figures:
    return example(request.param)


def break_x(figures: Figures, row: int) -> float:
    """Along the centreline: the line through the outer scales' far ends, and the set-back behind it."""
    half, lead = figures["bridge_spread"] / 2, figures["scale_lead"]
    ends = (-half, figures["scale_run_bass"] - lead), (half, figures["scale_run_treble"] + lead)
    return through(*ends, float(figures["string_y_bridge"][row])) + float(figures["saddle_set_back"][row])


def through(one: tuple[float, float], other: tuple[float, float], x: float) -> float:
    """The height at x of the line through two points."""
    (x1, z1), (x2, z2) = one, other
    return z1 + (z2 - z1) * (x - x1) / (x2 - x1)


def line_at(figures: Figures, row: int, x: float) -> float:
    """One open string over the crest plane at x, from what the maker chose: over a crown at the nut and at fret 12."""
    first, octave = int(figures["action_nut_fret"]), int(figures["action_fret"])
    wanted = {first: figures["action_nut"][row], octave: figures["action_wanted"][row]}
    points = [
        (float(figures["string_x"][row, fret]), float(figures["crown_top"][row, fret] + over))
        for fret, over in wanted.items()
    ]
    return through(*points, x)


def test_every_string_has_a_set_back_to_speak_of(figures: Figures) -> None:
    assert (figures["saddle_set_back"] > 0.1).all()


def test_the_string_at_the_saddle_lies_on_its_own_line(figures: Figures) -> None:
    for row in range(figures["strings_count"]):
        expected = line_at(figures, row, break_x(figures, row))
        assert figures["height_at_saddle"][row] == pytest.approx(expected, abs=1e-9)


def test_what_shows_of_the_saddle_meets_the_string_over_a_turned_neck(figures: Figures) -> None:
    """The board is turned about the join point by point; the saddle's top is where the string then is."""
    angle, join = figures["neck_angle_made"], figures["back_bow_length"]
    for row in range(figures["strings_count"]):
        x = break_x(figures, row)
        octave = float(figures["string_x"][row, int(figures["action_fret"])]) - float(figures["string_x"][row, 0])
        slack = figures["heights_body_rise"] * (x - float(figures["string_x"][row, 0])) / octave
        point = complex(x - join, line_at(figures, row, x) - slack) * complex(math.cos(angle), math.sin(angle))
        over_rim = figures["neck_set_board_at_join"] + point.imag
        bridge = figures["neck_set_dome_rise"] + figures["bridge_thickness"]
        assert figures["neck_set_exposed"][row] == pytest.approx(over_rim - bridge, abs=1e-9)
        assert figures["saddle_tall"][row] == pytest.approx(over_rim - bridge + figures["saddle_slot_depth"], abs=1e-9)


def test_a_saddle_made_so_gives_the_action_that_was_asked_for(figures: Figures) -> None:
    """From the saddle's top back to the nut, and read at fret 12: nothing is lost by the set-back."""
    octave = int(figures["action_fret"])
    for row in range(figures["strings_count"]):
        x = figures["string_x"][row]
        nut = (float(x[0]), float(figures["height_at_zero"][row]))
        top = (break_x(figures, row), float(figures["height_at_saddle"][row]))
        over = through(nut, top, float(x[octave])) - float(figures["crown_top"][row, octave])
        assert over == pytest.approx(figures["action_wanted"][row], abs=1e-9)


def test_the_length_that_sounds_goes_from_break_point_to_break_point(figures: Figures) -> None:
    """Pythagoras in plan; what the string weighs and sounds then gives its pull: T = mu (2 L f)^2."""
    for row in range(figures["strings_count"]):
        across = float(figures["string_y_bridge"][row] - figures["string_y_nut"][row])
        whole = math.hypot(break_x(figures, row) - float(figures["string_x"][row, 0]), across)
        length = whole - float(figures["intonation_nut_forward"][row])
        assert figures["string_speaking_length"][row] == pytest.approx(length, abs=2e-3)
        weight, pitch = float(figures["string_weight"][row]) * 1e-6, float(figures["strings_frequency"][row])
        pull = weight * (2 * length * pitch) ** 2 * 1e-3
        assert figures["string_pull"][row] == pytest.approx(pull, rel=1e-5)


def test_the_model_of_the_cents_runs_through_the_same_points(figures: Figures) -> None:
    """The stopped strings' ends as filed: along the string from the zero line, and on its own line."""
    paths = figures["intonation_paths_made"]
    for row in range(figures["strings_count"]):
        assert paths.saddle_height[row] == pytest.approx(figures["height_at_saddle"][row], abs=2e-5)
        ends = float(paths.saddle_x[row] - paths.nut_x[row])
        assert ends == pytest.approx(figures["string_speaking_length"][row], abs=1e-9)


def test_a_string_that_pulls_more_is_stretched_by_less_of_it(figures: Figures) -> None:
    """E A / T by the pull from break point to break point; nylon's share stays, for it stiffens with its pull."""
    paths, strings = figures["intonation_paths_made"], figures["intonation_strings"]
    core = math.pi * figures["string_core"] ** 2 / 4
    steel = core * figures["string_modulus"] / figures["string_pull"]
    nylon = core * figures["string_modulus"] / figures["string_pull_on_scale"]
    share = nylon if figures["strings_plain"] == "nylon" else steel
    truly = deviation(paths, StringStiffness(share, strings.bending_radius)).total
    np.testing.assert_allclose(figures["intonation_cents_after"][:, 1:], truly, atol=1e-3)
