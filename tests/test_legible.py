"""Read at arm's length, or aloud: no letter under seven points on any page or drawing, title, language, bookmarks and
tags in each PDF, and every kind of PDF is measured.
"""

import io
import re
from collections.abc import Iterator
from datetime import datetime
from importlib.resources import as_file, files
from math import hypot
from pathlib import Path

import pikepdf
import pytest
from tests.walks import WHOLE, these

import gramil
from gramil.cli.options import opened_with_work
from gramil.formatter import Formatter
from gramil.graph import Figures
from gramil.measure import LengthUnit
from gramil.pack import TYPESET, build_book, pack_makers, printed
from gramil.sheets.bench_sheets import bench_sheets_pdf
from gramil.sheets.labels import Label, labels_pdf
from gramil.sheets.own_sheet import every_sheet, setup_sheets
from gramil.sheets.quote_sheet import Quote, quote_pdf
from gramil.sheets.sheet_pages import sheet_text
from gramil.sheets.weeks_sheet import Entry, weeks_pdf
from gramil.shop.operations import Work
from gramil.writers.chart import Band, Chart, Curve, chart_svg
from gramil.writers.photo_strips import frame_pdf, strips_pdf

SEVEN = 7.0
HAIR = 0.01
"""What rounding in a file may take off a size, in points."""
POINTS_TO_MM = 72.0 / 25.4
LETTERED = "q Q cm Tf BT Tm Tj TJ ' \" Do"
"""What a page is drawn by that has to do with the size of its letters."""
Matrix = tuple[float, float, float, float, float, float]
SAME: Matrix = (1.0, 0.0, 0.0, 1.0, 0.0, 0.0)


@pytest.fixture(scope="module", params=these(["tarn", "fell", "scree", "mere"], ["fell", "mere"]))
def opened(request: pytest.FixtureRequest) -> Iterator[tuple[Figures, Formatter, Work]]:
    with as_file(files("gramil") / "data" / "examples") as examples:
        yield opened_with_work(Path(examples / f"{request.param}.toml"), Path(examples / "shop.toml"))


def after(first: Matrix, then: Matrix) -> Matrix:
    """One change of coordinates after another, as the format multiplies them."""
    a, b, c, d, e, f = first
    p, q, r, s, t, u = then
    return (a * p + b * r, a * q + b * s, c * p + d * r, c * q + d * s, e * p + f * r + t, e * q + f * s + u)


def sizes(content: pikepdf.Page | pikepdf.Object, resources: pikepdf.Object, at: Matrix = SAME) -> Iterator[float]:
    """The size in points, on paper, of every piece of text on a page and in the pictures on it."""
    kept: list[tuple[Matrix, float]] = []
    size, text = 0.0, SAME
    for operands, operator in pikepdf.parse_content_stream(content, LETTERED):
        match str(operator):
            case "q":
                kept.append((at, size))
            case "Q":
                at, size = kept.pop()
            case "cm":
                at = after(tuple(map(float, operands)), at)  # type: ignore[arg-type]
            case "Tf":
                size = float(operands[1])
            case "BT":
                text = SAME
            case "Tm":
                text = tuple(map(float, operands))  # type: ignore[assignment]
            case "Tj" | "TJ" | "'" | '"':
                _, _, across, up, _, _ = after(text, at)
                yield size * hypot(across, up)
            case "Do":
                inner = resources.XObject[operands[0]]
                assert inner.Subtype == "/Form", "a picture of dots, in which letters cannot be measured"
                own: Matrix = tuple(map(float, inner.get("/Matrix", SAME)))  # type: ignore[assignment]
                yield from sizes(inner, inner.get("/Resources", resources), after(own, at))


def lacking(document: pikepdf.Pdf) -> list[str]:
    """What a reading program is not told: title, language, tags, and a bookmark to the first page at least."""
    with document.open_outline() as outline:
        led_to = {str(item.title): item.destination[0].objgen for item in outline.root if item.destination}
    told = {
        "title": bool(str(document.docinfo.get("/Title", ""))),
        "language": document.Root.get("/Lang") == "en",
        "tags": "/StructTreeRoot" in document.Root and bool(document.Root.MarkInfo.Marked),
        "bookmarks": document.pages[0].obj.objgen in led_to.values(),
    }
    return [what for what, there in told.items() if not there]


def small(pdf: bytes) -> dict[int, list[float]]:
    """The sizes under seven points, by page; a file without a letter fails, or one that a reading program is told too
    little of.
    """
    with pikepdf.open(io.BytesIO(pdf)) as document:
        found = {number: list(sizes(page, page.resources)) for number, page in enumerate(document.pages, 1)}
        assert lacking(document) == []
    assert all(found.values())
    return {page: under for page, all_ in found.items() if (under := [each for each in all_ if each < SEVEN - HAIR])}


@pytest.mark.parametrize(("paper", "unit"), [("a4", "mm"), ("letter", "in")])
def test_nothing_in_the_book_and_on_its_sheets_is_smaller_than_seven_points(
    opened: tuple[Figures, Formatter, Work], paper: str, unit: LengthUnit
) -> None:
    figures, _, work = opened
    if not WHOLE and (paper == "a4") == (figures["instrument_units"] == "in"):
        pytest.skip("at the gate a book in the instrument's own units")
    assert small(build_book(figures, Formatter(figures, unit), work, paper)) == {}


def test_nothing_on_a_sheet_of_an_operation_alone_is_smaller_than_seven_points(
    opened: tuple[Figures, Formatter, Work],
) -> None:
    """Of operations that have no set-up: these sheets stand in no book."""
    figures, formatter, work = opened
    in_book = {each.setup.name for each in setup_sheets(figures, work)}
    own = [each for each in every_sheet(figures, work) if each.setup.name not in in_book]
    assert own
    assert small(bench_sheets_pdf([printed(each, formatter, "a4") for each in own], formatter, "Own", "a4")) == {}


def day(hour: int, minute: int = 0) -> datetime:
    return datetime(2026, 12, 1, hour, minute)


def test_nothing_in_the_plan_of_weeks_is_smaller_than_seven_points_and_every_work_is_told() -> None:
    """Work of a few minutes has no room for its words in its own block: they stand under the day."""
    what = "Shape the feet of the top's braces to the dome, and cut their crossings, one after another"
    spans = [((8, 0), (8, 2)), ((8, 2), (8, 10)), ((8, 10), (8, 40)), ((9, 0), (17, 0)), ((17, 0), (18, 0))]
    entries = [Entry(whose="Tarn", what=what, begins=day(*one), ends=day(*two), cures=None) for one, two in spans]
    pdf = weeks_pdf(entries, "Tarn", ["One note."])
    assert small(pdf) == {}
    with pikepdf.open(io.BytesIO(pdf)) as document:
        assert len(document.pages) == 1


def test_nothing_on_a_label_or_a_quote_is_smaller_than_seven_points() -> None:
    label = Label("neck 1", "khaya", "900 x 100 x 25 mm", "1 May", ("on the shelf", "settled"), permit="Khaya: CITES.")
    lines = [("board", "3.5 h", "140.00"), ("neck", "", "80.00")]
    quote = Quote(
        "Tarn", "shop", "its customer", "1 May", [("Scale", "630 mm")], lines, lines, "220.00", ["Binds none."]
    )
    assert small(labels_pdf([label] * 12)) == {}
    assert small(quote_pdf(quote)) == {}


def test_nothing_on_what_is_laid_round_a_plan_is_smaller_than_seven_points() -> None:
    assert small(strips_pdf("a4")) == {}
    assert small(frame_pdf(700.0, 500.0)) == {}


def test_nothing_on_a_chart_is_smaller_than_seven_points() -> None:
    chart = Chart("moisture", "days", "%", (Curve("top", (0.0, 1.0), (8.0, 7.5)),), (Band("its band", 6.0, 8.0),))
    found = [float(each) for each in re.findall(r'font-size="([\d.]+)"', chart_svg(chart))]
    assert len(found) > 1
    assert min(found) * POINTS_TO_MM >= SEVEN - HAIR


MEASURED = {
    "bench_sheets_pdf", "build_book_pdf", "frame_pdf", "labels_pdf", "quote_pdf", "sheets_pdf", "strips_pdf",
    "templates_pdf", "tiled_pdf", "weeks_pdf", "whole_pdf",
}  # fmt: skip
"""Every function that writes a PDF: what each of them writes is measured here."""
WRITES_PDF = re.compile(r"^def ((?!is_)[a-z]\w*_pdf)\(", re.MULTILINE)
"""What asks whether a file is one writes none."""


def test_every_kind_of_pdf_is_measured() -> None:
    code = [each.read_text(encoding="utf-8") for each in Path(gramil.__file__).parent.rglob("*.py")]
    write = [text for text in code if re.search(r"\btypeset\(\"|= page_canvas\(", text)]
    assert all(re.search(r"^def \w+_pdf\(", text, re.MULTILINE) for text in write)
    assert {name for text in write for name in WRITES_PDF.findall(text)} <= MEASURED
    assert {name for text in code for name in WRITES_PDF.findall(text)} == MEASURED


def test_nothing_on_a_template_or_drawing_is_smaller_than_seven_points(opened: tuple[Figures, Formatter, Work]) -> None:
    makers = pack_makers(*opened, "a4")
    for name, make in makers.items():
        if name.endswith(".pdf") and name not in TYPESET:
            assert small(make()) == {}, name
        if name.endswith(".svg"):
            found = [float(each) for each in re.findall(r'font-size="([\d.]+)"', make().decode())]
            assert min(found) * POINTS_TO_MM >= SEVEN - HAIR, name


@pytest.mark.parametrize("unit", ["mm", "in"])
def test_no_sheet_has_an_empty_proof(opened: tuple[Figures, Formatter, Work], unit: LengthUnit) -> None:
    figures, _, work = opened
    for sheet in every_sheet(figures, work):
        if sheet.setup.figures and sheet.setup.name != "owner-air":  # the owner cuts nothing
            said = sheet_text(sheet, Formatter(figures, unit))["prove"]
            assert len(said.split()) > 3, sheet.setup.name
