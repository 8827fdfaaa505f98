"""Every drawing and chart says that nothing is promised; printed templates are read back in test_pdf.py."""

from collections.abc import Callable
from importlib.resources import files

import pytest
from tests.writers.test_pdf import read

from gramil.drawings.marks import Drawing
from gramil.formatter import Formatter
from gramil.graph import Figures
from gramil.notice import NOTICE
from gramil.pack import pack_makers
from gramil.shop.operations_file import usual_work
from gramil.writers.cents_map import cents_map_svg
from gramil.writers.chart import Chart, Curve, chart_svg
from gramil.writers.dxf import dxf_bytes
from gramil.writers.photo_strips import frame_pdf, strips_pdf
from gramil.writers.spans import Resolve
from gramil.writers.svg import svg_bytes, svg_text

INKED = {"templates.typ", "leaves.typ"}
"""Typeset from words that are placed one by one, the notice among them: at the foot of a template's page (read back in
test_pdf.py), and under the strips and the frame to photograph by (read back below).
"""


def test_a_drawing_as_a_file_says_so(board: Drawing, resolve: Resolve) -> None:
    assert NOTICE in dxf_bytes(board, resolve).decode()
    assert NOTICE in svg_bytes(board, resolve).decode().replace("&#x27;", "'")
    assert NOTICE not in svg_text(board, resolve, captioned=False).replace("&#x27;", "'")  # the page round it says it


def test_a_chart_says_so(example: Callable[[str], Figures]) -> None:
    assert NOTICE in chart_svg(Chart("moisture", "days", "%", (Curve("top", (0.0, 1.0), (8.0, 7.5)),)))
    assert NOTICE in cents_map_svg(example("tarn")).replace("&#x27;", "'")


def test_every_file_to_cut_by_or_to_read_says_so(example: Callable[[str], Figures]) -> None:
    figures = example("mere")
    makers = pack_makers(figures, Formatter(figures), usual_work(), "a4")
    found = {name: make() for name, make in makers.items() if name.endswith((".dxf", ".svg"))}
    assert len(found) > 20
    assert not [name for name, made in found.items() if NOTICE not in made.decode().replace("&#x27;", "'")]


@pytest.mark.parametrize("made", [strips_pdf("a4"), strips_pdf("letter"), frame_pdf(300.0, 250.0)])
def test_every_page_to_photograph_by_says_so(made: bytes) -> None:
    for page in read(made):
        assert NOTICE in [words for words, _ in page.words]


def test_every_page_that_is_typeset_or_served_has_a_place_for_it() -> None:
    """One that is added later is found here: each that begins a page by itself, or builds on no other."""
    own = files("gramil")
    typeset = [each for each in (own / "sheets").iterdir() if each.name.endswith(".typ")]
    assert len(typeset) >= 4
    assert {each.name for each in typeset if "data.promise" not in each.read_text("utf-8")} == INKED
    served = [each.read_text("utf-8") for each in (own / "bench" / "templates").iterdir()]
    whole = [text for text in served if "<!doctype" in text.lower()]
    assert len(whole) >= 3
    assert all("{{ notice }}" in text for text in whole)


def test_the_bar_of_a_strip_is_told_in_the_unit_of_the_rule() -> None:
    """220 mm is 8.66142 in, and 8 21/32 in is 8.65625: 0.005 less."""
    words = [words for page in read(strips_pdf("letter", unit="in")) for words, _ in page.words]
    assert words.count("from left edge to left edge of the tags: 8.661 in (8 21/32 in + 0.005)") == 4
    assert not [each for each in words if " mm" in each]
