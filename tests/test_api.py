"""The names for other people's programs: the figures that the commands give, and nothing loaded before its use."""

import json
import re
import subprocess
import sys
from importlib.resources import files
from pathlib import Path
from xml.etree import ElementTree

import numpy as np
import pytest
from click.testing import CliRunner

import gramil
from gramil.cli import gramil as program

EXAMPLES = Path(str(files("gramil") / "data" / "examples"))

LOADED = """
import sys, gramil
print(sum(name.startswith("gramil") for name in sys.modules), "numpy" in sys.modules)
"""


@pytest.fixture(scope="module")
def tarn() -> gramil.Guitar:
    return gramil.read(EXAMPLES / "tarn.toml", shop=EXAMPLES / "shop.toml")


def answered(*words: str) -> str:
    return CliRunner().invoke(program, [*words, "--shop", str(EXAMPLES / "shop.toml")]).output


def test_frets_lie_where_equal_temperament_puts_them(tarn: gramil.Guitar) -> None:
    """ISO 16 pitch ratios: a fret stands at L (1 - 2^(-n/12)); the scale is 630 mm, as the description says."""
    places = tarn["fret_position"]
    assert places.unit == "mm"
    expected = 630.0 * (1 - 2 ** (-np.arange(len(places.value)) / 12))
    np.testing.assert_allclose(np.asarray(places), expected, atol=1e-9)
    assert float(tarn["fret_position[12]"]) == pytest.approx(315.0)


def test_every_dimension_is_what_the_command_says(tarn: gramil.Guitar) -> None:
    answer = json.loads(answered("dims", str(EXAMPLES / "tarn.toml"), "--json"))
    told = {row["address"]: row["value"] for row in answer["told"]["dimensions"]}
    single = [name for name in tarn if name in told]
    assert len(single) > 100
    for name in single:
        value = tarn[name].value
        assert value == pytest.approx(told[name]) if isinstance(value, float) else value == told[name]


def test_a_key_path_with_dots_is_understood(tarn: gramil.Guitar) -> None:
    assert tarn["board.thickness"] == tarn["board_thickness"]


def test_what_is_not_there_is_a_key_error(tarn: gramil.Guitar) -> None:
    for wrong, near in (
        ("fret_positon[7]", "fret_position"),
        ("board.thicknes", "board_thickness"),
        ("slot_need[99]", "slot_need"),
    ):
        with pytest.raises(KeyError, match=f"no such figure, the nearest is {near}"):
            tarn[wrong]


def test_changed_gives_another_and_leaves_the_first(tarn: gramil.Guitar) -> None:
    longer = tarn.changed({"scale.length": "650 mm"})
    assert float(longer["fret_position[12]"]) == pytest.approx(325.0)
    assert float(tarn["fret_position[12]"]) == pytest.approx(315.0)
    assert "fret_position" in {move.name for move in gramil.shift(tarn, longer).moves}
    assert gramil.shift(tarn, tarn).moves == ()


def test_what_cannot_be_is_a_fault_in_the_makers_words(tarn: gramil.Guitar) -> None:
    with pytest.raises(gramil.MakersFault, match="scale"):
        tarn.changed({"scale.length": "-3 mm"})


def test_a_reason_and_the_verdicts(tarn: gramil.Guitar) -> None:
    reason = tarn.why("slot_depth_setting")
    assert {each.address for each in reason.follows} == {"slot_depth_at_crest", "slots_crest_loss", "slots_cut"}
    assert any(each.severity == "fine" for each in tarn.findings)


def test_a_drawing_shows_itself(tarn: gramil.Guitar, tmp_path: Path) -> None:
    picture = tarn.drawings["board"]
    assert ElementTree.fromstring(picture._repr_svg_()).tag.endswith("svg")
    picture.save(tmp_path / "board.svg")
    assert (tmp_path / "board.svg").read_text(encoding="utf-8") == picture.svg


def test_a_table_of_ten_scale_lengths_against_set_back(tarn: gramil.Guitar) -> None:
    """A script of someone else's: set-back falls as the scale grows, for the same strings then pull more."""
    table = [
        (length, tarn.changed({"scale.length": f"{length} mm"})["saddle_set_back"].value.mean())
        for length in range(610, 660, 5)
    ]
    assert len(table) == 10
    assert [back for _, back in table] == sorted((back for _, back in table), reverse=True)


def test_nothing_is_loaded_before_it_is_used() -> None:
    seen = subprocess.run(
        [sys.executable, "-c", LOADED],
        capture_output=True, text=True, check=True,
    )  # fmt: skip
    assert seen.stdout.split() == ["1", "False"]


def test_every_name_that_is_offered_is_there() -> None:
    assert all(getattr(gramil, name) is not None for name in gramil.__all__)
    with pytest.raises(AttributeError, match="nothing"):
        _ = gramil.nothing


def test_the_page_about_it_runs(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
    page = (Path(__file__).parent.parent / "docs" / "python.md").read_text(encoding="utf-8")
    blocks = re.findall(r"```python\n(.*?)```", page, re.DOTALL)
    monkeypatch.chdir(EXAMPLES)
    names: dict[str, object] = {}
    for block in blocks:
        exec(block, names)
    told = capsys.readouterr().out
    assert told.startswith("2.96 mm\n315.0")
    assert len(re.findall(r"^6\d\d ", told, re.MULTILINE)) == 10
