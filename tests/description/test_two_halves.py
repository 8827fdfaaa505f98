"""Bodies whose halves are given apart: stations, points or a drawing as it is; a cutaway out of one that is alike."""

import tomllib
from collections.abc import Callable
from pathlib import Path

import numpy as np
import pytest
import shapely

from gramil.description.reading import parse_description
from gramil.description.self_contained import self_contained
from gramil.faults import MakersFault
from gramil.shapes.outline import Outline

BASS = (
    "[0, 38], [12, 82], [45, 119], [95, 133], [140, 125], [185, 117], [230, 130], [285, 165], [350, 186], [410, 172], "
    "[455, 131], [482, 72], [490, 0]"
)
TREBLE = (
    "[0, 38], [12, 76], [45, 110], [105, 127], [150, 121], [200, 112], [245, 125], [300, 160], [365, 182], [425, 166], "
    "[462, 128], [483, 74], [490, 0]"
)


@pytest.fixture(scope="module")
def with_body(text_of: Callable[[str], str]) -> Callable[..., str]:
    tarn = text_of("tarn")
    head, _, tail = tarn.partition("[body]\n")
    rest = tail[tail.index("depth_neck") :]
    return lambda keys, more="": f"{head}[body]\n{keys}\n{rest}\n{more}\n"


def outline_in(text: str, folder: Path | None = None) -> Outline:
    (outline,) = parse_description(text, folder=folder).outlines
    return outline


def ring_of(outline: Outline) -> shapely.Polygon:
    return shapely.Polygon(outline.polyline(1e-4))


def test_halves_that_are_given_alike_make_the_body_that_is_alike(with_body) -> None:
    alike = outline_in(with_body(f"outline = [{BASS}]"))
    twice = outline_in(with_body(f"outline = [{BASS}]\ntreble_points = [{BASS}]"))
    assert not twice.alike
    assert (twice.area, twice.perimeter) == pytest.approx((alike.area, alike.perimeter), rel=1e-6)
    assert ring_of(alike).symmetric_difference(ring_of(twice)).area < 0.2


def test_a_body_that_leans(with_body) -> None:
    """Each half goes through its own stations, and the line runs on smoothly through the tail."""
    leaning = outline_in(with_body(f"outline = [{BASS}]\ntreble_points = [{TREBLE}]"))
    for half, given in ((leaning.treble_half, TREBLE), (leaning.bass_half, BASS)):
        rows = np.array(tomllib.loads(f"rows = [{given}]")["rows"], dtype=float)[1:-1]
        assert half.half_width(rows[:, 0]) == pytest.approx(rows[:, 1], abs=1e-6)
    assert leaning.area == pytest.approx(ring_of(leaning).area, abs=0.1)
    tail = leaning.half.length
    before, after = leaning.tangent([tail - 1e-6, tail + 1e-6])
    assert before == pytest.approx(after, abs=1e-4)
    assert leaning.length == pytest.approx(490.0, abs=0.05)


def svg_of(ring: shapely.Polygon) -> str:
    """A drawing of a ring in chords, its centreline on the drawing's own x axis; y runs down in the file."""
    places = " ".join(f"{x:.5f},{-y:.5f}" for x, y in ring.exterior.coords[:-1])
    return f'<svg xmlns="http://www.w3.org/2000/svg" width="600mm" height="500mm" viewBox="0 -250 600 500">' \
        f'<polygon points="{places}"/></svg>'  # fmt: skip


CUT = "\n[cutaway]\ndepth = 95\nhorn = 55\nradius = 22\n"


@pytest.fixture(scope="module")
def drawn(with_body, tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, shapely.Polygon]:
    """A folder with a drawing of a cutaway body in it, 30 mm off the file's left edge."""
    folder = tmp_path_factory.mktemp("drawn")
    ring = shapely.Polygon(outline_in(with_body(f"outline = [{BASS}]", CUT)).polyline(0.01)).simplify(0.04)
    (folder / "body.svg").write_text(svg_of(shapely.affinity.translate(ring, 30.0)))
    return folder, ring


def test_a_drawing_as_it_is(with_body, drawn: tuple[Path, shapely.Polygon]) -> None:
    folder, ring = drawn
    outline = outline_in(with_body('file = "body.svg"\ncentreline = 0'), folder)
    assert ring_of(outline).symmetric_difference(ring).area < 60.0
    assert outline.start == pytest.approx(0.0, abs=1e-9)


def test_a_drawing_as_it_is_has_the_length_that_is_stated(with_body, drawn: tuple[Path, shapely.Polygon]) -> None:
    folder, ring = drawn
    outline = outline_in(with_body('file = "body.svg"\ncentreline = 0\nlength = 980'), folder)
    assert outline.area == pytest.approx(4 * ring.area, rel=1e-3)


def test_without_that_it_is_refused(with_body, drawn: tuple[Path, shapely.Polygon]) -> None:
    with pytest.raises(MakersFault, match="the halves differ by"):
        outline_in(with_body('file = "body.svg"'), drawn[0])


def test_a_drawing_off_the_axis_is_refused(with_body, tmp_path: Path) -> None:
    ring = shapely.affinity.translate(shapely.Point(0, 0).buffer(100), 150.0, 130.0)
    (tmp_path / "body.svg").write_text(svg_of(ring))
    with pytest.raises(MakersFault, match="does not meet its centreline"):
        outline_in(with_body('file = "body.svg"\ncentreline = 0'), tmp_path)


@pytest.mark.parametrize("cut", ["", CUT])
def test_the_text_that_needs_no_file_has_the_same_body(with_body, tmp_path: Path, cut: str) -> None:
    """A cutaway by measures is cut once: what is kept is the outline that it is cut out of."""
    whole = shapely.Polygon(outline_in(with_body(f"outline = [{BASS}]")).polyline(0.05))
    (tmp_path / "body.svg").write_text(svg_of(whole))
    text = with_body('file = "body.svg"', cut)
    kept = outline_in(self_contained(text, "tarn.toml", tmp_path))
    assert ring_of(kept).symmetric_difference(ring_of(outline_in(text, tmp_path))).area < 0.05
    assert kept.alike == (not cut)


def test_a_drawing_as_it_is_needs_no_file_either(with_body, drawn: tuple[Path, shapely.Polygon]) -> None:
    text = with_body('file = "body.svg"\ncentreline = 0')
    kept = outline_in(self_contained(text, "tarn.toml", drawn[0]))
    assert ring_of(kept).symmetric_difference(ring_of(outline_in(text, drawn[0]))).area < 0.05


@pytest.mark.parametrize(
    ("keys", "more", "words"),
    [
        (f"outline = [{BASS}]\ntreble_points = [{TREBLE}]", CUT, "the treble half is given for itself"),
        (f"outline = [{BASS}]\ntreble_corners = [2]", "", "treble_corners goes with treble_points"),
        (f"outline = [{BASS}]\ncentreline = 0", "", "centreline goes with file"),
        (f"treble_points = [{TREBLE}]", "", "goes with outline or points for the bass half"),
        (f"outline = [{BASS}]\ntreble_points = [[0, 38], [200, 150], [470, 0]]", "", "20.00 mm apart at the tail"),
        (
            f"outline = [{BASS}]\ntreble_points = [[0, 0], [-9, 60], [200, 150], [490, 0]]",
            "",
            "ahead of the neck's end",
        ),
        (f"outline = [{BASS}]", "\n[cutaway]\ndepth = 95\n", "give depth and horn together"),
        (f"outline = [{BASS}]", "\n[cutaway]\ndepth = 95\nhorn = 130\n", "leaves no room for the hollow"),
    ],
)
def test_what_does_not_go_together_is_refused(with_body, keys: str, more: str, words: str) -> None:
    with pytest.raises(MakersFault, match=words):
        parse_description(with_body(keys, more))


def test_a_cutaway_out_of_no_body_is_refused(text_of: Callable[[str], str]) -> None:
    board = text_of("tarn").partition("# The body")[0]
    with pytest.raises(MakersFault, match="no body to cut it out of"):
        parse_description(board + CUT)


def test_a_cutaway_by_measures_on_the_bass_side_is_refused_with_what_to_draw(text_of: Callable[[str], str]) -> None:
    with pytest.raises(MakersFault, match=r"on the treble side: leave side out.*body\.points") as refused:
        parse_description(text_of("tarn") + '\n[cutaway]\ndepth = 95\nhorn = 55\nside = "bass"\n')
    assert "no such key" not in str(refused.value)
