"""The bench sheets, read back from the PDF that the maker prints."""

import hashlib
import io
import re
import subprocess
import sys
from dataclasses import replace
from functools import cache
from importlib.resources import files

import pikepdf
import pytest
from tests.walks import these

from gramil.description.reading import parse_description, parse_shop
from gramil.formatter import Formatter
from gramil.graph import Figures, Pin
from gramil.notice import NOTICE
from gramil.pack import printed
from gramil.prints.pages import safe
from gramil.prints.whole import figures_of, setups_of
from gramil.quote import notes_of
from gramil.setups.setup import Setup
from gramil.sheets.bench_sheets import bench_sheets_pdf
from gramil.sheets.labels import Label, labels_pdf
from gramil.sheets.own_sheet import setup_sheets
from gramil.sheets.quote_sheet import Quote, quote_pdf
from gramil.sheets.sheet import Sheet
from gramil.sheets.sheet_pages import book, sheet_text
from gramil.shop.operations_file import usual_work

EXAMPLES = files("gramil") / "data" / "examples"
MAKERS_NAME = 'O\'Neil "No 1" #let x = [*b*] $y$ \\ <a> @b _c_ `d` 吉 🎸'
SPACES = re.compile(r"\s+")


@cache
def example(name: str, instrument: str = "") -> Figures:
    text = (EXAMPLES / f"{name}.toml").read_text(encoding="utf-8")
    if instrument:
        text = re.sub(r'(?m)^name = ".*?"', lambda _: f"name = '''{instrument}'''", text, count=1)
    shop = (EXAMPLES / "shop.toml").read_text(encoding="utf-8")
    return figures_of(parse_description(text), parse_shop(shop))


def formatter_of(figures: Figures) -> Formatter:
    return Formatter(figures, "in" if figures["instrument_units"] == "in" else "mm")


def sheets(figures: Figures, paper: str = "a4") -> list[Sheet]:
    return [printed(each, formatter_of(figures), paper) for each in setup_sheets(figures, usual_work())]


def made(figures: Figures, paper: str = "a4", title: str = "") -> bytes:
    name = title or figures["instrument_name"]
    return bench_sheets_pdf(sheets(figures, paper), formatter_of(figures), name, paper)


@cache
def example_made(name: str, paper: str) -> bytes:
    """An example's sheets, typeset once for all that look at them."""
    return made(example(name), paper)


@cache
def pages_of(name: str, paper: str) -> list[str]:
    return words(example_made(name, paper))


def words(pdf: bytes) -> list[str]:
    """The text of each page, from the characters that the fonts' own maps give, spaces left out."""
    with pikepdf.open(io.BytesIO(pdf)) as document:
        return [SPACES.sub("", "".join(_strings(page))) for page in document.pages]


def _strings(page: pikepdf.Page) -> list[str]:
    return _read(page, page.resources)


def _read(content: pikepdf.Page | pikepdf.Object, resources: pikepdf.Object) -> list[str]:
    found: list[str] = []
    font: dict[int, str] = {}
    for operands, operator in pikepdf.parse_content_stream(content):
        match str(operator):
            case "Tf":
                font = _map(resources.Font[operands[0]])
            case "Tj" | "TJ":
                parts = operands[0] if str(operator) == "TJ" else operands
                for part in parts:
                    if isinstance(part, pikepdf.String):
                        code = bytes(part)
                        found.extend(
                            font.get(int.from_bytes(code[at : at + 2], "big"), "?") for at in range(0, len(code), 2)
                        )
            case "Do":
                inner = resources.XObject[operands[0]]
                if inner.Subtype == "/Form":
                    found.extend(_read(inner, inner.get("/Resources", resources)))
    return found


def _map(font: pikepdf.Object) -> dict[int, str]:
    """A font's characters by their codes, from its ToUnicode map."""
    table = font.ToUnicode.read_bytes().decode("ascii")
    pairs = re.findall(r"<([0-9a-fA-F]{4})>\s*<([0-9a-fA-F]+)>", table)
    return {int(code, 16): bytes.fromhex(text).decode("utf-16-be") for code, text in pairs}


@pytest.fixture(params=these(["tarn", "fell", "scree"], ["tarn", "fell"]))
def name(request: pytest.FixtureRequest) -> str:
    return str(request.param)


@pytest.fixture
def figures(name: str) -> Figures:
    return example(name)


def needed(figures: Figures) -> list[Setup]:
    return [setup for setup in setups_of(figures) if not setup.closed]


def test_every_operation_has_its_page_with_its_figures_in_both_units(name: str, figures: Figures) -> None:
    formatter, pages = formatter_of(figures), pages_of(name, "a4")
    for setup in needed(figures):
        text = "".join(page for page in pages[1:] if SPACES.sub("", setup.title) in page)
        assert text, setup.title
        for figure in setup.figures:
            for shown in filter(None, formatter.both(figure.figure.address)):
                assert SPACES.sub("", shown) in text, (setup.title, figure.figure.address)


def numbers(pages: list[str]) -> list[int]:
    """The number of the sheet that each page after the order of work belongs to."""
    return [int(re.search(r"sheet(\d+)of", page)[1]) for page in pages[1:]]  # type: ignore[index]


def test_one_operation_a_page_and_a_second_where_its_drawing_or_tables_want_one(name: str, figures: Figures) -> None:
    pages = pages_of(name, "a4")
    found = numbers(pages)
    assert found == sorted(found)
    assert set(found) == set(range(1, len(needed(figures)) + 1))
    assert max(map(found.count, found)) <= 2
    assert all(SPACES.sub("", NOTICE) in page for page in pages)


LOW = "216 x 250 mm"


def test_a_long_table_turns_the_page_whole_and_leaves_the_drawing_its_room() -> None:
    """On paper lower than letter, on which it has room once all of the page stands nearer together."""
    text = (EXAMPLES / "scree.toml").read_text(encoding="utf-8").replace("frets = 20", "frets = 36", 1)
    figures = figures_of(parse_description(text), parse_shop((EXAMPLES / "shop.toml").read_text(encoding="utf-8")))
    (layout,) = (each for each in setup_sheets(figures, usual_work()) if each.setup.name == "layout")
    sheet = printed(layout, formatter_of(figures), LOW)
    pages = words(bench_sheets_pdf([sheet], formatter_of(figures), "Scree", LOW))
    first, second = (page for page in pages if "Layout" in page and "sheet1of" in page)
    assert "Endsofeachfret" not in first
    assert "Endsofeachfret" in second
    assert "Caution" in first


def test_every_sheet_of_tarn_is_one_page_on_letter() -> None:
    """Tables of the same braces had stood under one another on a page of their own, and the strings' heights alone."""
    pages = pages_of("tarn", "letter")
    found = numbers(pages)
    assert max(map(found.count, found)) == 1


@pytest.mark.parametrize(
    ("instrument", "operations"),
    [
        ("corrie", ("brace-top", "channels", "binding-bend", "relief", "saddle", "in-tune")),
        ("mere", ("neck-head", "relief")),
    ],
)
def test_what_a_few_millimetres_hold_takes_no_second_page_on_letter(
    instrument: str, operations: tuple[str, ...]
) -> None:
    """Short tables stand beside one another, what is done and what it is done with end at one height."""
    figures = example(instrument)
    chosen = [each for each in setup_sheets(figures, usual_work()) if each.setup.name in operations]
    assert len(chosen) == len(operations)
    laid = [printed(each, formatter_of(figures), "letter") for each in chosen]
    pages = [page for page in words(bench_sheets_pdf(laid, formatter_of(figures), instrument, "letter")) if page]
    assert len(pages) == 1 + len(chosen)  # the order of work comes first
    assert sum("Caution" in page for page in pages) == len(chosen)


@pytest.mark.parametrize(("operation", "titled"), [("sides", "Bendthesides"), ("ports", "Cuttheports")])
def test_no_sheet_takes_a_third_page(operation: str, titled: str) -> None:
    """Of Corrie, whose two sides are not alike, on letter; its drawing stands beside the words where it can."""
    figures = example("corrie")
    (found,) = (each for each in setup_sheets(figures, usual_work()) if each.setup.name == operation)
    sheet = printed(found, formatter_of(figures), "letter")
    pages = [page for page in words(bench_sheets_pdf([sheet], formatter_of(figures), "Corrie", "letter")) if page]
    assert len(pages) <= 2
    assert all(titled in page for page in pages)
    assert "Measured" in pages[0]


ORDERS = [(name, paper) for name in ("tarn", "fell", "scree") for paper in ("a4", "letter")]


@pytest.mark.parametrize(("example", "paper"), these(ORDERS, [("tarn", "letter"), ("fell", "a4")]))
def test_the_order_of_work_is_one_page(example: str, paper: str) -> None:
    pages = pages_of(example, paper)
    assert sum("Orderofwork" in page for page in pages) == 1
    assert "Sheetsofanotherrevisiondonotbelonginthisset" in pages[0]


def test_every_box_stands_between_its_name_and_what_it_should_be(name: str) -> None:
    page = next(page for page in pages_of(name, "a4") if "Setintune" in page and "Measured" in page)
    assert page[: page.index("string5,fret12")].count("shouldbe") == 4


def test_the_caliper_table_has_every_fret_in_both_units(name: str, figures: Figures) -> None:
    """In an inch shop it has inches and no millimetre, and 64ths only where a rule is the tool."""
    formatter = formatter_of(figures)
    page = next(page for page in pages_of(name, "a4")[1:] if "Calipertable" in page)
    for fret in range(1, figures["scale_frets"] + 1):
        first, beside = formatter.both(f"fret_position[{fret}]")
        assert first.split()[0] in page
        assert all(word in page for word in beside.removesuffix("in").split())
    assert bool(re.search(r"\dmm", page)) == (formatter.first == "mm")


def test_what_is_not_needed_says_why(name: str, figures: Figures) -> None:
    first, formatter = pages_of(name, "a4")[0], formatter_of(figures)
    for setup in setups_of(figures):
        assert SPACES.sub("", setup.title) in first
        if setup.closed:
            assert SPACES.sub("", formatter.filled(setup.closed)) in first


@pytest.mark.parametrize(("paper", "size"), [("a4", (210, 297)), ("letter", (215.9, 279.4)), ("a3", (297, 420))])
def test_the_paper(paper: str, size: tuple[float, float]) -> None:
    with pikepdf.open(io.BytesIO(few_sheets(example("tarn"), paper=paper))) as document:
        assert len(document.pages) > 4
        for page in document.pages:
            box = [float(each) * 25.4 / 72 for each in page.mediabox]
            assert box == pytest.approx([0, 0, *size], abs=0.1)


def test_grey_only_and_its_own_faces(name: str) -> None:
    with pikepdf.open(io.BytesIO(example_made(name, "a4"))) as document:
        fonts = {str(each.BaseFont) for each in document.objects if _is_font(each)}
        for page in document.pages:
            for operands, operator in pikepdf.parse_content_stream(page):
                if str(operator) in ("rg", "RG"):
                    assert len({float(each) for each in operands}) == 1
    assert fonts
    assert all("B612" in name for name in fonts)


def _is_font(each: pikepdf.Object) -> bool:
    return isinstance(each, pikepdf.Dictionary) and each.get("/Type") == "/Font"


def test_a_maker_s_name_is_text_not_markup() -> None:
    figures = example("tarn", MAKERS_NAME)
    pages = words(few_sheets(figures))
    assert len(pages) > 4
    assert all(SPACES.sub("", 'O\'Neil "No 1" #let x = [*b*] $y$ \\ <a> @b _c_ `d`') in page for page in pages)


@pytest.mark.parametrize("name", ["W" * 200, "a b " * 50, "\x00\x1b[31m\n\t", "«»„“", "", "}{ {nut_width}"])
def test_any_name_makes_pages(name: str) -> None:
    """It stands at the head of each page alike: of a few of the sheets."""
    assert set(numbers(words(few_sheets(example("tarn"), name or " ")))) == {1, 2, 3, 4}


def few_sheets(figures: Figures, name: str = "", paper: str = "a4") -> bytes:
    """The first four sheets of an instrument under a name, or under its own."""
    few = [each for each in setup_sheets(figures, usual_work()) if not each.setup.closed][:4]
    pages = [printed(each, formatter_of(figures), paper) for each in few]
    return bench_sheets_pdf(pages, formatter_of(figures), name or figures["instrument_name"], paper)


def test_a_missing_drawing_leaves_room_for_a_sketch() -> None:
    figures = example("tarn")
    bare = [replace(each, picture=None) for each in setup_sheets(figures, usual_work())][:12]
    pages = words(bench_sheets_pdf(bare, formatter_of(figures), "Tarn"))
    drawn = sum(bool(each.setup.drawing) for each in bare if not each.setup.closed)
    assert sum("sketch" in page for page in pages) == drawn > 4


def test_the_revision_follows_what_the_sheets_say() -> None:
    figures, other = example("tarn"), example("fell")
    first = book(sheets(figures), formatter_of(figures), "Tarn")
    assert first["revision"] == book(sheets(figures), formatter_of(figures), "Tarn")["revision"]
    assert first["revision"] != book(sheets(other), formatter_of(other), "Tarn")["revision"]
    assert first["revision"] != book(sheets(figures), Formatter(figures, "in"), "Tarn")["revision"]


def test_a_measured_figure_stands_beside_its_target_on_its_own_page() -> None:
    """Tarn's slots as deep as 3.60 where 2.96 is wanted: 0.64 too deep, and every other word as it was."""
    drawn = example("tarn")
    read = drawn.with_pins({"slot_depth_setting": Pin(drawn["slot_depth_setting"] + 0.64, "today", "slotted")})
    pairs = [*zip(sheets(drawn), sheets(read), strict=True)]
    differ = [(was, now) for was, now in pairs if told(was, drawn) != told(now, read)]
    assert [was.setup.name for was, _ in differ] == ["slot"]
    for was, now in zip(*(words(slots_of(each)) for each in (drawn, read)), strict=True):
        beside = "made3.60mm,+0.64mm" if "Cuttheslots" in was and "Measured" in was else ""
        assert beside in now
        assert without_revision(now).replace(beside, "") == without_revision(was)


def told(sheet: Sheet, figures: Figures) -> str:
    """All that the typesetter is given of a sheet."""
    return str(sheet_text(sheet, formatter_of(figures)))


def slots_of(figures: Figures) -> bytes:
    """The sheet by which the slots are cut, with the order of work before it."""
    few = [each for each in sheets(figures) if each.setup.name == "slot"]
    return bench_sheets_pdf(few, formatter_of(figures), figures["instrument_name"])


def without_revision(page: str) -> str:
    return re.sub(r"revision[0-9a-f]{6}", "", page)


def test_figures_keep_their_units_and_long_words_can_break() -> None:
    assert safe("45.50 mm and 5 inside\x07") == "45.50\N{NO-BREAK SPACE}mm and 5 inside "
    assert safe("W" * 70).count("\N{ZERO WIDTH SPACE}") == 2


def test_the_same_bytes_from_another_process() -> None:
    code = (
        "import sys, hashlib; sys.path.insert(0, sys.argv[1])\n"
        "import test_bench_sheets as t\n"
        "print(hashlib.sha256(t.few_sheets(t.example('tarn'))).hexdigest())"
    )
    here = str(__file__).rsplit("/", 1)[0]
    said = subprocess.run([sys.executable, "-c", code, here], capture_output=True, text=True, check=True).stdout
    assert said.strip() == hashlib.sha256(few_sheets(example("tarn"))).hexdigest()


def test_a_quote_binds_nobody_and_labels_and_quotes_promise_nothing() -> None:
    figures = example("tarn")
    protected = [replace(each, permit="Wood X: CITES Appendix II.") for each in figures["stuff_list"]]
    notes = notes_of(figures.with_base({**figures.base, "stuff_list": tuple(protected)}))
    assert "binds nobody" in notes[0]
    assert notes[1:] == ["Wood X: CITES Appendix II."]
    quote = quote_pdf(Quote("Tarn", "shop", "", "1 May", [], [], [], "12.00", notes))
    labels = labels_pdf([Label("neck 1", "khaya", "", "1 May", ("lies here",), permit="Khaya: CITES.")] * 9)
    for page in (*words(quote), *words(labels)):
        assert SPACES.sub("", NOTICE) in page
        assert "CITES" in page
