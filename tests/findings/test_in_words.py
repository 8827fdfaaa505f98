"""A finding is put into words in one place: what is judged, its limit, and where that is from."""

import re
from collections.abc import Callable
from pathlib import Path

import pytest

import gramil
from gramil import names as n
from gramil.bench.moved import strip_between
from gramil.description.writing import set_key
from gramil.findings.finding import Finding, in_words
from gramil.formatter import Formatter
from gramil.graph import Figures
from gramil.reference import says

ROOT = Path(gramil.__file__).parent
BY_ITSELF = re.compile(r"\.text\(\w+\.limit\)|origins\.get\(\w+\.limit|filled\(\w+\.(says|remedy)\)")


@pytest.fixture(scope="module")
def tarn(example: Callable[[str], Figures]) -> Figures:
    return example("tarn")


def test_every_figure_of_a_finding_is_written_out_in_the_unit_that_is_asked_for(tarn: Figures) -> None:
    limit = n.limit_edge_margin
    finding = Finding("edge", "caution", n.string_margin_bass, 2.0, limit, says("{} is little", limit), "move it")
    told = in_words(finding, Formatter(tarn, "mm"))
    assert told.says == f"{told.limit_shown} is little."
    assert (told.address, told.limit, told.remedy) == ("string_margin_bass", "limit_edge_margin", "move it")
    assert told.shown.endswith(" mm")
    assert told.limit_from
    assert in_words(finding, Formatter(tarn, "in")).shown.endswith(" in")


def test_what_is_not_judged_shows_no_figure_and_what_has_no_limit_shows_none(tarn: Figures) -> None:
    finding = Finding("edge", "not judged", n.string_margin_bass, 2.0, None, "because nothing is known")
    told = in_words(finding, Formatter(tarn, "mm"))
    assert (told.shown, told.limit, told.limit_shown, told.limit_from) == ("", "", "", "")


def test_what_comes_of_a_change_is_told_in_the_figures_after_it(
    tarn: Figures, text_of: Callable[[str], str], derive_text: Callable[..., Figures]
) -> None:
    thin = derive_text(set_key(text_of("tarn"), "board.thickness", "3.2 mm"), text_of("shop"))
    came, after = strip_between(tarn, thin, {}, Formatter(tarn, "mm")).came, Formatter(thin, "mm")
    judged = [each for each in came if each.severity != "not judged"]
    assert any(Formatter(tarn, "mm").text(each.address) != each.shown for each in judged)
    assert [each.shown for each in judged] == [after.text(each.address) for each in judged]
    assert came == strip_between(tarn, thin, {}, after).came


def test_nobody_else_puts_a_finding_into_words() -> None:
    home = ROOT / "findings" / "finding.py"
    files = [path for path in sorted(ROOT.rglob("*.py")) if path != home]
    found = [path.name for path in files if BY_ITSELF.search(path.read_text(encoding="utf-8"))]
    assert not found, "ask in_words"
