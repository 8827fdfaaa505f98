"""Every finding of whole instruments: what it points at is there, and the figures are what it says."""

import ast
import math
import re
from collections.abc import Callable, Iterator
from importlib.resources import files

import pytest

from gramil.findings.finding import SEVERITIES, in_words
from gramil.formatter import Formatter
from gramil.graph import Figures
from gramil.prints.whole import findings_of


@pytest.fixture(scope="module")
def instruments(
    example: Callable[[str], Figures], text_of: Callable[[str], str], derive_text: Callable[..., Figures]
) -> list[Figures]:
    """The examples in their shop, in the usual one, and in a shop with nothing in it."""
    bare = 'gramil = 1\n[shop]\nname = "bare"\nunits = "mm"\n'
    sizes = {"crown_width": 2.3, "crown_height": 1.1, "tang_thickness": 0.5, "bead_thickness": 0.7, "tang_depth": 1.5}
    own = "\n".join(['name = "own"', *(f"{key} = {size}" for key, size in sizes.items())])
    wire = text_of("tarn").replace('use = "medium"', own)
    after = text_of("tarn").replace('cut = "before arching"', 'cut = "after arching"')
    texts = [derive_text(text_of(name)) for name in ("tarn", "fell", "scree", "mere")]
    return [*map(example, ("tarn", "fell", "scree", "mere")), *texts, derive_text(wire, bare), derive_text(after)]


def test_each_points_at_a_figure_that_is_what_it_says(instruments: list[Figures]) -> None:
    for figures in instruments:
        for found in findings_of(figures):
            figure = figures.at(found.figure.address)
            if not math.isnan(found.value):
                assert figure == pytest.approx(found.value, abs=1e-12), found.figure.address


def test_each_limit_is_known_and_says_where_it_is_from(instruments: list[Figures]) -> None:
    for figures in instruments:
        for found in findings_of(figures):
            if str(found.limit or ""):
                assert str(found.limit or "") in figures
                assert str(found.limit or "") not in figures.graph.inputs or str(
                    figures.origins[str(found.limit or "")]
                )


def test_each_speaks_in_words(instruments: list[Figures]) -> None:
    for figures in instruments:
        for found in findings_of(figures):
            assert found.severity in SEVERITIES
            assert found.name
            assert str(found.says).strip()
            assert str(found.says).startswith("because ") == (found.severity == "not judged"), found.name
            if found.severity in ("stop", "caution"):
                assert found.remedy, f"{found.name} says nothing that would mend it"


def test_gravest_first(instruments: list[Figures]) -> None:
    for figures in instruments:
        rows = [SEVERITIES.index(each.severity) for each in findings_of(figures)]
        assert rows == sorted(rows)


def test_names_tell_findings_apart(instruments: list[Figures]) -> None:
    for figures in instruments:
        names = [each.name for each in findings_of(figures)]
        assert len(names) == len(set(names))


def test_a_bare_shop_is_not_judged_rather_than_fine(instruments: list[Figures]) -> None:
    """Silence never means fine: what lacks saws, cutters, blocks or wood says so."""
    found = {each.name: each.severity for each in findings_of(instruments[-2])}
    for name in ("saw for the slots", "binding ledge", "blank", "sanding blocks", "wire in the kerf"):
        assert found[name] == "not judged", name


def test_no_figure_stands_in_a_sentence(instruments: list[Figures]) -> None:
    """Numbers are shown from their address; words hold none but a fret's number and the shop's own names."""
    for figures in instruments:
        names = [each.name for key in ("shop_saws", "shop_blocks", "shop_blanks") for each in figures[key]]
        names += [f"{each.name}, bearing {size:g}" for each in figures["shop_cutters"] for size in each.bearings]
        names += [each.name for each in figures["brace_list"]]
        for found in findings_of(figures):
            said = re.sub(r"fret \d+|\{[^{}]*\}", "", str(found.says))
            for name in sorted(names, key=len, reverse=True):
                said = said.replace(name, "")
            assert not re.search(r"\d", said), said


def test_no_text_holds_a_raw_name_and_each_figure_in_one_is_there(instruments: list[Figures]) -> None:
    """A figure stands in a text as its address in braces and is put in where it is shown: what is read is words."""
    for figures in instruments:
        formatter = Formatter(figures)
        for found in findings_of(figures):
            told = in_words(found, formatter)
            for text in (told.says, told.remedy):
                assert not re.search(r"[a-z]_[a-z]|[{}]", text), f"{found.name}: {text}"


def test_no_finding_is_written_with_a_raw_name_in_its_text() -> None:
    """Nor is there one in a text that no example comes to: every text with a space in it, as it is written."""
    for path in sorted((files("gramil") / "findings").iterdir(), key=lambda each: each.name):
        if path.name.startswith("on_"):
            for text in texts_in(ast.parse(path.read_text(encoding="utf-8"))):
                bare = re.sub(r"\{[^{}]*\}?", "", text)
                assert not re.search(r"[a-z]_[a-z]", bare), f"{path.name}: {text}"


def texts_in(tree: ast.Module) -> Iterator[str]:
    """Texts of more than a word that are no docstrings."""
    owners = (each for each in ast.walk(tree) if isinstance(each, ast.Module | ast.FunctionDef | ast.ClassDef))
    docs = {id(each.body[0].value) for each in owners if isinstance(each.body[0], ast.Expr)}
    for each in ast.walk(tree):
        if (
            isinstance(each, ast.Constant)
            and isinstance(each.value, str)
            and id(each) not in docs
            and " " in each.value
        ):
            yield each.value
