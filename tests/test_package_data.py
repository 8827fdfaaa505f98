"""The package's data read from what lies beside it as JSON is the data itself."""

import tomllib
from pathlib import Path

import pytest

from gramil import package_data
from gramil.package_data import COMPACT, DATA, compact, data_tables, data_text


@pytest.mark.parametrize("name", COMPACT)
def test_what_lies_beside_a_file_says_the_same(name: str) -> None:
    """Kinds of numbers too: 1 and 1.0 are equal, and told differently."""
    assert data_text(f"compact/{name}.json") == compact(name), "run `make names`"
    assert repr(data_tables(name)) == repr(tomllib.loads(data_text(f"{name}.toml")))


def test_only_those_files_lie_there() -> None:
    assert sorted(each.stem for each in (DATA / "compact").iterdir()) == list(COMPACT)


def test_a_file_that_was_changed_since_is_read_itself(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(package_data, "DATA", tmp_path)
    (tmp_path / "compact").mkdir()
    (tmp_path / "limits.toml").write_text("[wedge]\nvalue = 1\n")
    (tmp_path / "compact" / "limits.json").write_text(compact("limits"))
    (tmp_path / "limits.toml").write_text("[wedge]\nvalue = 2\n")
    assert data_tables("limits") == {"wedge": {"value": 2}}
