"""The board cut across anywhere, against widths, arches and strings worked out here from the description alone."""

from importlib.resources import files
from math import sqrt

import pytest

from gramil import names as n
from gramil.drawings.marks import Circle, Label, Polyline, Span
from gramil.drawings.section_at import cut_at, over_board, section_drawing, section_marks, string_places, value_at
from gramil.graph import Figures
from gramil.prints.whole import figures_of_files

EXAMPLES = files("gramil") / "data" / "examples"


def figures(name: str) -> Figures:
    return figures_of_files(str(EXAMPLES / f"{name}.toml"), str(EXAMPLES / "shop.toml"))


@pytest.fixture(scope="module")
def tarn() -> Figures:
    return figures("tarn")


def fret(scale: float, number: int) -> float:
    return scale * (1 - 2 ** (-number / 12))


def wood(marks: tuple[object, ...]) -> Polyline:
    return next(each for each in marks if isinstance(each, Polyline) and each.hatch == "across the grain")


def test_between_frets_the_board_is_as_wide_as_its_straight_sides_make_it(tarn: Figures) -> None:
    """45.5 at the zero line and 56 at half the scale, 315; so 45.5 + 10.5 x 100 / 315 = 48.8333 at 100."""
    cut = cut_at(tarn, 100.0)
    assert cut.fret is None
    assert value_at(tarn, cut.of(n.board_width_at_fret), cut) == pytest.approx(48.8333, abs=1e-4)


def test_at_a_fret_the_cut_runs_along_it_and_shows_its_slot(tarn: Figures) -> None:
    cut = cut_at(tarn, fret(630, 7))
    assert cut.fret == 7
    bottoms = sorted(wood(section_marks(tarn, cut)).points, key=lambda point: -point[1])[:2]
    depth = -bottoms[0][1]
    assert bottoms[0][1] == bottoms[1][1], "a straight bottom is level"
    assert 1.6 + 0.15 < depth < 6.3, "deeper than tang and clearance, not through the board"


def test_between_frets_the_face_falls_as_the_arch_there_does(tarn: Figures) -> None:
    """The radius runs from 320 at the zero line to 390 at the tail end, 8 past fret 19."""
    x, tail = 100.0, fret(630, 19) + 8
    radius = 320 + 70 * x / tail
    face = wood(section_marks(tarn, cut_at(tarn, x))).points
    y, z = max(face[:25], key=lambda point: point[0])
    assert z == pytest.approx(-(radius - sqrt(radius**2 - y**2)), abs=1e-6)


def test_the_binding_is_as_thick_as_it_is(tarn: Figures) -> None:
    shapes = [
        each for each in section_marks(tarn, cut_at(tarn, 100.0)) if isinstance(each, Polyline) and each.hatch == "bone"
    ]
    assert len(shapes) == 2
    for each in shapes:
        across = [y for y, _ in each.points]
        assert max(across) - min(across) == pytest.approx(1.8, abs=0.001)


def test_the_strings_are_as_thick_as_they_are_and_as_high_as_asked_at_fret_12(tarn: Figures) -> None:
    """Action of 1.8 and 2.4 over crowns of the wire; gauges in inches."""
    cut = cut_at(tarn, fret(630, 12))
    strings = [each for each in section_marks(tarn, cut) if isinstance(each, Circle)]
    gauges = [0.012, 0.016, 0.024, 0.032, 0.042, 0.053]
    assert [2 * each.radius for each in strings] == pytest.approx([25.4 * each for each in gauges])
    crown = tarn["wire_crown_height"] - tarn["heights_dressing_loss"]
    radius = 320 + 70 * fret(630, 12) / (fret(630, 19) + 8)
    for (y, z), action in zip((string_places(tarn, cut)[0], string_places(tarn, cut)[-1]), (1.8, 2.4), strict=True):
        fall = radius - sqrt(radius**2 - y**2)
        assert z == pytest.approx(crown + action - fall, abs=1e-6)


def test_there_is_no_neck_under_the_board_over_the_body(tarn: Figures) -> None:
    over_neck = section_marks(tarn, cut_at(tarn, 300.0))
    over_body = section_marks(tarn, cut_at(tarn, 400.0))
    assert len(over_neck) > len(over_body)
    assert over_board(tarn, cut_at(tarn, 400.0))
    assert not over_board(tarn, cut_at(tarn, 500.0))


def test_past_the_board_only_the_strings_are_cut(tarn: Figures) -> None:
    assert all(isinstance(each, Circle) for each in section_marks(tarn, cut_at(tarn, 500.0)))


def test_a_fanned_cut_runs_along_its_fret() -> None:
    scree = figures("scree")
    cut = cut_at(scree, float(scree["fret_position"][1]))
    assert cut.fret == 1
    assert cut.slant == pytest.approx(float(scree["fret_slant"][1]))
    assert abs(cut.slant) > 0.01


def test_a_left_handed_section_has_its_treble_on_the_left() -> None:
    scree = figures("scree")
    marks = section_drawing(scree, cut_at(scree, 300.0)).marks
    thinnest = min((each for each in marks if isinstance(each, Circle)), key=lambda each: each.radius)
    assert thinnest.centre[0] < 0


@pytest.mark.parametrize("x", [0.0, 77.7, fret(630, 7), 430.0, 600.0])
def test_every_figure_on_the_drawing_can_be_read(tarn: Figures, x: float) -> None:
    cut = cut_at(tarn, x)
    addresses = [each.figure.address for each in section_drawing(tarn, cut).marks if isinstance(each, Label | Span)]
    values = [value_at(tarn, address, cut) for address in addresses]
    assert all(value == value for value in values)
    assert bool(addresses) == over_board(tarn, cut)


def test_an_address_that_means_nothing_between_frets_is_refused(tarn: Figures) -> None:
    cut = cut_at(tarn, 100.0)
    for address in ("scale_bass@", "string_y@", "string_y[2, 3]@"):
        with pytest.raises(KeyError):
            value_at(tarn, address, cut)


def test_the_board_in_the_whole_ends_8_past_its_last_fret(tarn: Figures) -> None:
    outline = next(each for each in tarn["piece_whole_board"] if isinstance(each, Polyline))
    assert max(x for x, _ in outline.points) == pytest.approx(fret(630, 19) + 8)
