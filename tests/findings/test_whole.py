"""Every finding of whole instruments: what it points at is there, and the figures are what it says."""

import math
import re
from collections.abc import Callable

import pytest

from gramil.change.whole import findings_of
from gramil.findings.finding import SEVERITIES
from gramil.graph import Figures


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
    texts = [derive_text(text_of(name)) for name in ("tarn", "fell", "scree")]
    return [*map(example, ("tarn", "fell", "scree")), *texts, derive_text(wire, bare), derive_text(after)]


def test_each_points_at_a_figure_that_is_what_it_says(instruments: list[Figures]) -> None:
    for figures in instruments:
        for found in findings_of(figures):
            figure = figures.at(found.address)
            if not math.isnan(found.value):
                assert figure == pytest.approx(found.value, abs=1e-12), found.address


def test_each_limit_is_known_and_says_where_it_is_from(instruments: list[Figures]) -> None:
    for figures in instruments:
        for found in findings_of(figures):
            if found.limit:
                assert found.limit in figures
                assert found.limit not in figures.graph.inputs or str(figures.origins[found.limit])


def test_each_speaks_in_words(instruments: list[Figures]) -> None:
    for figures in instruments:
        for found in findings_of(figures):
            assert found.severity in SEVERITIES
            assert found.name
            assert found.says.strip()
            assert found.says.startswith("because ") == (found.severity == "not judged"), found.name
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
    found = {each.name: each.severity for each in findings_of(instruments[6])}
    for name in ("saw for the slots", "binding ledge", "blank", "sanding blocks", "wire in the kerf"):
        assert found[name] == "not judged", name


def test_no_figure_stands_in_a_sentence(instruments: list[Figures]) -> None:
    """Numbers are shown from their address; words hold none but a fret's number and the shop's own names."""
    for figures in instruments:
        names = [each.name for key in ("shop_saws", "shop_blocks", "shop_blanks") for each in figures[key]]
        names += [each.name for each in (*figures["ledge_options"], *figures["brace_list"])]
        for found in findings_of(figures):
            said = re.sub(r"fret \d+", "", found.says)
            for name in sorted(names, key=len, reverse=True):
                said = said.replace(name, "")
            assert not re.search(r"\d", said), said
