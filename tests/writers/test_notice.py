"""Every drawing and chart says that nothing is promised; printed templates are read back in test_pdf.py."""

from collections.abc import Callable

from gramil.drawings.marks import Drawing
from gramil.graph import Figures
from gramil.notice import NOTICE
from gramil.writers.cents_map import cents_map_svg
from gramil.writers.chart import Chart, Curve, chart_svg
from gramil.writers.dxf import dxf_bytes
from gramil.writers.spans import Resolve
from gramil.writers.svg import svg_bytes, svg_text


def test_a_drawing_as_a_file_says_so(board: Drawing, resolve: Resolve) -> None:
    assert NOTICE in dxf_bytes(board, resolve).decode()
    assert NOTICE in svg_bytes(board, resolve).decode().replace("&#x27;", "'")
    assert NOTICE not in svg_text(board, resolve, captioned=False).replace("&#x27;", "'")  # the page round it says it


def test_a_chart_says_so(example: Callable[[str], Figures]) -> None:
    assert NOTICE in chart_svg(Chart("moisture", "days", "%", (Curve("top", (0.0, 1.0), (8.0, 7.5)),)))
    assert NOTICE in cents_map_svg(example("tarn")).replace("&#x27;", "'")
