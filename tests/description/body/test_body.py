"""A body as a maker writes it: read in any way it may be given, and every slip named with its place."""

import io
from collections.abc import Callable
from pathlib import Path

import ezdxf
import pytest

from gramil.description.base import base_values
from gramil.description.reading import parse_description, read_shop
from gramil.faults import MakersFault

SMALL = """
[body]
outline = [[0, 38], [45, 119], [95, 133], [185, 117], [285, 165], [350, 186], [455, 131], [490, 0]]
"""


@pytest.fixture
def board(text_of: Callable[[str], str]) -> str:
    """Tarn's board and strings, with no body."""
    return text_of("tarn").partition("# The body")[0]


def refused(text: str, folder: Path | None = None) -> str:
    with pytest.raises(MakersFault) as caught:
        parse_description(text, "guitar.toml", folder)
    return str(caught.value)


def brace(*lines: str) -> str:
    return "\n".join(["[[brace]]", 'name = "bar"', 'plate = "top"', "width = 6", "height = 10", *lines]) + "\n"


def test_stations_are_one_half_and_its_mirror_image(board: str) -> None:
    (outline,) = parse_description(board + SMALL).outlines
    assert outline.length == pytest.approx(490, abs=0.5)
    assert float(outline.half_width(185.0)) == pytest.approx(117.0, abs=0.02)
    assert outline.start == pytest.approx(0.0, abs=1e-9)


def test_without_a_body_there_is_none(board: str) -> None:
    assert parse_description(board).outlines == ()
    values = base_values(parse_description(board), read_shop()).values
    assert values["body_outlines"] == ()
    assert values["braces_asked"] == ()
    assert values["top_length"] == 490.0


def test_lengths_with_a_unit_are_bare_numbers(board: str) -> None:
    one = parse_description(board + SMALL).outlines
    assert parse_description(board + tidy(SMALL)).outlines == one


def tidy(text: str) -> str:
    """Every bare number of the outline as text with a unit."""
    head, _, rest = text.partition("[[")
    rows = [row.strip("[]\n ") for row in ("[[" + rest).split("],")]
    pairs = [[f'"{figure.strip()} mm"' for figure in row.strip("[]\n ").split(",")] for row in rows]
    return head + "[" + ", ".join("[" + ", ".join(pair) + "]" for pair in pairs) + "]\n"


def test_an_outline_that_crosses_itself_says_where(board: str) -> None:
    said = refused(board + "[body]\npoints = [[0, 0], [300, 150], [100, 150], [400, 20], [490, 0]]\n")
    assert "body.points" in said
    assert "crosses itself at x = " in said


def test_a_brace_outside_the_body_says_where_it_would_lie(board: str) -> None:
    said = refused(board + SMALL + brace("station = 600"))
    assert "guitar.toml:" in said
    assert "brace[1].station" in said
    assert "600.0 mm from the body's edge" in said


def test_held_to_nothing_names_what_it_may_be(board: str) -> None:
    said = refused(board + SMALL + brace("station = 100", 'held_to = "sadle"'))
    assert 'brace[1].held_to: read "sadle"' in said
    assert 'the nearest is "saddle"' in said.replace("The", "the")


def test_held_to_a_soundhole_that_is_not_there(board: str) -> None:
    said = refused(board + SMALL + brace("station = 0", 'held_to = "soundhole"'))
    assert "brace[1].held_to: there is no soundhole" in said


def test_an_end_against_a_brace_that_is_not_there(board: str) -> None:
    bars = brace("line = [[100, -20], [100, 60]]", 'start = "other"')
    said = refused(board + SMALL + bars)
    assert 'brace[1].start: read "other"' in said
    assert '"linings"' in said


def test_a_brace_without_a_body(board: str) -> None:
    assert "there is no body to glue it in" in refused(board + brace("station = 100"))


def test_two_outlines_are_one_too_many(board: str) -> None:
    assert "give one of outline and points" in refused(board + SMALL + "points = [[0, 0], [200, 150], [400, 0]]\n")


def drawing(*rings: float, unit: int = 4) -> str:
    """A DXF with half-round ended boxes of these half-widths, 400 long."""
    document = ezdxf.new("R2010")
    document.header["$INSUNITS"] = unit
    for half in rings:
        run = [(0, half), (400, half, 0, 0, -1), (400, -half), (0, -half, 0, 0, -1)]
        document.modelspace().add_lwpolyline([(*each, 0, 0, 0)[:5] for each in run], format="xyseb", close=True)
    stream = io.StringIO()
    document.write(stream)
    return stream.getvalue()


def test_a_traced_outline_is_read_and_scaled_by_its_length(board: str, tmp_path: Path) -> None:
    (tmp_path / "half.dxf").write_text(drawing(100.0))
    text = board + '[body]\nfile = "half.dxf"\nlength = 480\n'
    (outline,) = parse_description(text, folder=tmp_path).outlines
    assert outline.start == pytest.approx(0.0, abs=1e-9)
    assert outline.length == pytest.approx(480.0)
    assert outline.width == pytest.approx(480.0 * 200 / 600, rel=1e-4)


def test_a_drawing_with_several_outlines_or_no_units_is_named(board: str, tmp_path: Path) -> None:
    (tmp_path / "two.dxf").write_text(drawing(100.0, 60.0))
    (tmp_path / "bare.dxf").write_text(drawing(100.0, unit=0))
    for name, words in (
        ("two.dxf", "the drawing has 2 closed outlines"),
        ("bare.dxf", "does not say its units"),
        ("none.dxf", "there is no such file beside the description"),
        ("../half.dxf", "the bare name of a drawing"),
    ):
        said = refused(board + f'[body]\nfile = "{name}"\n', tmp_path)
        assert "body.file" in said
        assert words.lower() in said.lower()


def test_a_length_belongs_to_a_drawing(board: str) -> None:
    assert "go with file" in refused(board + SMALL + "length = 480\n")
