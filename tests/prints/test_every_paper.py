"""Every file of the pack and every page that the bench prints is among the papers, and is told when it differs."""

from importlib.resources import files

import pytest

from gramil.description.reading import parse_description, parse_shop
from gramil.description.writing import set_key
from gramil.formatter import formatter_of
from gramil.graph import Figures
from gramil.pack import pack_makers
from gramil.prints.book_pages import front_pages
from gramil.prints.papers import (
    CENTS,
    ORDER,
    Paper,
    cents_print,
    one_print,
    own_prints,
    papers_that_differ,
    printed_alike,
)
from gramil.prints.whole import figures_of, names_of
from gramil.sheets.own_sheet import every_sheet
from gramil.sheets.sheet_pages import book, sheet_text
from gramil.shop.operations import Work, needed
from gramil.shop.operations_file import usual_work
from gramil.writers.cents_map import cents_map_svg

EXAMPLES = files("gramil") / "data" / "examples"
TARN = (EXAMPLES / "tarn.toml").read_text(encoding="utf-8")
SHOP = parse_shop((EXAMPLES / "shop.toml").read_text(encoding="utf-8"))
MADE_OF = {
    "read/cut-list.csv": "Cut lists and woods",
    "read/dimensions.csv": "Dimensions by part",
    "read/dimensions.json": "Dimensions by part",
    "read/findings.json": "What was found",
    "read/cents-map.svg": "cents-map",
}
"""Files that show what a page of the build book shows, or a paper of another name."""
TOGETHER = ("contents.html", "print/templates-a4.pdf", "print/bench-sheets.pdf", "read/build-book.pdf")
"""Files that are put together of papers."""
OF_NO_INSTRUMENT = ("print/photograph-strips-a4.pdf",)
"""Files that hang on the paper and the printer alone: no change of an instrument makes one of them stale."""


def changed(**keys: str) -> Figures:
    text = TARN
    for key, value in keys.items():
        text = set_key(text, key.replace("__", "."), value)
    return figures_of(parse_description(text), SHOP)


@pytest.fixture(scope="module")
def tarn() -> Figures:
    return changed()


@pytest.fixture(scope="module")
def work() -> Work:
    return needed(usual_work(), parse_description(TARN).instrument)


def papers(figures: Figures, work: Work) -> set[Paper]:
    names = (*names_of(figures, "setup_"), *names_of(figures, "drawing_"))
    prints = [*(one_print(figures, name, work) for name in names), *own_prints(figures, work).values()]
    return {each.paper for each in (*prints, cents_print(figures)) if each is not None}


def pages(figures: Figures) -> set[str]:
    return {page["title"] for page in front_pages(formatter_of(figures))} | {ORDER}


def test_every_file_of_the_pack_is_a_paper_or_put_together_of_some(tarn: Figures, work: Work) -> None:
    drawn = {paper.name for paper in papers(tarn, work) if paper.kind != "sheet"}
    for name in pack_makers(tarn, formatter_of(tarn), work, "a4"):
        stem = name.rpartition("/")[2].rsplit(".", 1)[0]
        together = name in (*TOGETHER, *OF_NO_INSTRUMENT)
        assert stem in drawn or MADE_OF.get(name) in drawn | pages(tarn) or together, name


def test_a_file_of_no_instrument_is_the_same_for_another(tarn: Figures, work: Work) -> None:
    """Scale, nut and machine of the strings changed: what is said to hang on none of it comes out byte by byte."""
    other = changed(instrument__name='"Moss"', scale__length="650 mm")
    for name in OF_NO_INSTRUMENT:
        one, two = (pack_makers(each, formatter_of(each), work, "a4")[name]() for each in (tarn, other))
        assert one == two, name


def test_every_sheet_that_can_be_printed_is_a_paper(tarn: Figures, work: Work) -> None:
    sheets = {paper.name: paper.title for paper in papers(tarn, work) if paper.kind == "sheet"}
    printed = {sheet.setup.name: sheet.setup.title for sheet in every_sheet(tarn, work) if not sheet.setup.closed}
    assert sheets == printed
    assert len(printed) > 60


def test_a_sheet_without_a_set_up_and_the_map_of_cents_are_told(tarn: Figures, work: Work) -> None:
    longer = changed(scale__length="650 mm")
    told = {paper.name for paper in papers_that_differ(tarn, longer, work)}
    assert "cents-map" in told
    assert cents_map_svg(tarn) != cents_map_svg(longer)
    own = own_prints(tarn, work), own_prints(longer, work)
    differ = {name for name in own[1] if not printed_alike(own[0][name], own[1][name])}
    assert differ
    assert differ <= told
    assert not (set(own[1]) - differ) & told


def test_what_the_map_of_cents_does_not_show_does_not_tell_it(tarn: Figures) -> None:
    other = changed(instrument__name="Twin", board__wood="ebony")
    assert "cents-map" not in {paper.name for paper in papers_that_differ(tarn, other)}
    assert all(name in tarn.graph.dimensions or name in tarn.graph.inputs for name in CENTS)


def test_the_order_of_work_is_told_when_a_sheet_is_needed_no_more(tarn: Figures, work: Work) -> None:
    after = changed(binding__thickness="0")
    titles = [
        [(row["title"], row["closed"]) for row in book(every_sheet(each, work), formatter_of(each), "")["order"]]
        for each in (tarn, after)
    ]
    told = {paper.name for paper in papers_that_differ(tarn, after, work)}
    assert (ORDER in told) == (titles[0] != titles[1])
    assert ORDER in told


def test_cautions_of_operations_that_share_a_page_are_told_with_their_work(tarn: Figures, work: Work) -> None:
    """Another wood has other dust, which stands on the sheets of what is cut of it."""
    other = changed(board__wood="ebony")
    told = {paper.name for paper in papers_that_differ(tarn, other, work) if paper.kind == "sheet"}
    before, after = (
        {sheet.setup.name: page for sheet, page in zip(every_sheet(each, work), book_pages(each, work), strict=True)}
        for each in (tarn, other)
    )
    assert told >= {name for name in before if before[name]["caution"] != after[name]["caution"]}
    assert "slot" in told


def book_pages(figures: Figures, work: Work) -> list[dict[str, list[str]]]:
    return [dict(sheet_text(sheet, formatter_of(figures))) for sheet in every_sheet(figures, work)]
