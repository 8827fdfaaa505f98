"""Another instrument as the start: what differs is written, all else stays to the letter."""

from importlib.resources import files
from pathlib import Path

import pytest

from gramil.description.reading import parse_description
from gramil.description.whole.from_own import from_own, present
from gramil.faults import MakersFault

EXAMPLES = files("gramil") / "data" / "examples"
TARN = (EXAMPLES / "tarn.toml").read_text(encoding="utf-8")


def test_what_differs_is_written_and_all_else_stays() -> None:
    made = from_own(TARN, "tarn.toml", None, {"instrument.name": "Wren", "scale.length": "620 mm"})
    changed = [new for old, new in zip(TARN.splitlines(), made.splitlines(), strict=True) if old != new]
    assert [line.partition("#")[0].strip() for line in changed] == ['name = "Wren"', 'length = "620 mm"']


def test_a_list_is_typed_as_in_any_new_description() -> None:
    gauges = "0.011, 0.015, 0.022, 0.030, 0.040, 0.050"
    made = from_own(TARN, "tarn.toml", None, {"instrument.name": "Wren", "strings.gauges": gauges})
    assert parse_description(made).instrument.strings.gauges[0] == pytest.approx(0.2794)  # 0.011 x 25.4


def test_a_drawing_beside_the_other_comes_along(tmp_path: Path) -> None:
    """Half a body drawn as SVG, 492 mm long: the new description names no file, and has the outline."""
    half = "M0 0 L0 60 C20 160 130 160 180 120 C250 60 492 350 492 0"
    page = 'xmlns="http://www.w3.org/2000/svg" width="500mm" height="300mm" viewBox="0 0 500 300"'
    (tmp_path / "half.svg").write_text(f'<svg {page}><path fill="none" d="{half}"/></svg>', encoding="utf-8")
    before, _, after = TARN.partition("[body]\noutline = [")
    text = before + '[body]\nfile = "half.svg"\n' + after[after.index("depth_neck") :]
    made = from_own(text, "tarn.toml", tmp_path, {"instrument.name": "Wren"})
    assert "half.svg" not in made
    (outline,) = parse_description(made).outlines
    assert outline.length == pytest.approx(492.0, abs=0.05)
    assert outline.half_width(180) == pytest.approx(120.0, abs=0.2)


@pytest.mark.parametrize(
    ("answers", "told"),
    [
        ({}, "Tarn is the name of the other"),
        ({"instrument.name": "Tarn"}, "Tarn is the name of the other"),
        ({"instrument.name": "Wren", "strings.plain": "nylon"}, "more than one key"),
        ({"instrument.name": "Wren", "scale.frets": "3"}, "last fret"),
    ],
)
def test_what_is_refused(answers: dict[str, str], told: str) -> None:
    with pytest.raises(MakersFault, match=told):
        from_own(TARN, "tarn.toml", None, answers)


def test_what_it_has_is_offered() -> None:
    assert present(TARN, "scale.length") == "630"
    assert present(TARN, "scale.bass") is None
