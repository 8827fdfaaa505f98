"""The notebook among the examples, run cell by cell as a notebook does: what it prints, and what each cell shows."""

import ast
import json
import sys
from importlib.resources import files
from pathlib import Path
from types import SimpleNamespace
from typing import Any
from xml.etree import ElementTree

import pytest

import gramil

EXAMPLES = Path(str(files("gramil") / "data" / "examples"))
NOTEBOOK = EXAMPLES / "ten-scales.ipynb"


def cells(kind: str) -> dict[str, str]:
    """The text of each cell of a kind, by its name."""
    whole = json.loads(NOTEBOOK.read_text(encoding="utf-8"))
    assert (whole["nbformat"], whole["nbformat_minor"]) == (4, 5)
    return {cell["id"]: "".join(cell["source"]) for cell in whole["cells"] if cell["cell_type"] == kind}


def shown(text: str, names: dict[str, Any]) -> Any:
    """Run a cell; what it shows is its last line, if that is an expression."""
    body = ast.parse(text).body
    last = body.pop() if isinstance(body[-1], ast.Expr) else None
    exec(compile(ast.Module(body, []), "cell", "exec"), names)
    return None if last is None else eval(compile(ast.Expression(last.value), "cell", "eval"), names)


@pytest.fixture(scope="module")
def run() -> tuple[dict[str, Any], dict[str, Any]]:
    """What each cell shows, and the names that they leave, run in the folder of the examples."""
    names: dict[str, Any] = {}
    with pytest.MonkeyPatch.context() as patch:
        patch.chdir(EXAMPLES)
        return {name: shown(text, names) for name, text in cells("code").items()}, names


def test_each_cell_shows_what_its_words_promise(run: tuple[dict[str, Any], dict[str, Any]]) -> None:
    found, names = run
    assert ElementTree.fromstring(found["board"]._repr_svg_()).tag.endswith("svg")
    assert list(names["set_back"]) == list(range(610, 660, 5))
    assert all(len(backs) == 6 for backs in names["set_back"].values())
    assert len(found["shift"]) == 5
    assert "=" in found["why"] or "-" in found["why"]
    assert all(isinstance(each, str) for each in found["findings"])


def test_the_file_keeps_no_answer_of_an_earlier_run() -> None:
    whole = json.loads(NOTEBOOK.read_text(encoding="utf-8"))
    assert all(cell["outputs"] == [] and cell["execution_count"] is None
               for cell in whole["cells"] if cell["cell_type"] == "code")  # fmt: skip
    assert len({cell["id"] for cell in whole["cells"]}) == len(whole["cells"])


def test_every_figure_is_a_row_where_pandas_is_there(
    run: tuple[dict[str, Any], dict[str, Any]], monkeypatch: pytest.MonkeyPatch
) -> None:
    """A stand-in for pandas: rows and columns as they were handed over."""
    monkeypatch.setitem(sys.modules, "pandas", SimpleNamespace(DataFrame=lambda rows, columns: (rows, columns)))
    tarn: gramil.Guitar = run[1]["tarn"]
    rows, columns = tarn.frame()  # type: ignore[misc]  # the stand-in's
    assert columns == ["part", "address", "value", "unit"]
    assert all(len(row) == 4 for row in rows)
    twelfth = next(row for row in rows if row[1] == "fret_position[12]")
    assert (twelfth[2], twelfth[3]) == (pytest.approx(315.0), "mm")


def test_without_pandas_it_is_an_import_that_fails_and_nothing_else(
    run: tuple[dict[str, Any], dict[str, Any]], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setitem(sys.modules, "pandas", None)
    with pytest.raises(ImportError):
        run[1]["tarn"].frame()
