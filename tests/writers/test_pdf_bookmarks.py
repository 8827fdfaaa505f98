"""PDFs as a reader program has them: title, language, bookmarks; read by another library."""

import io
from collections.abc import Iterator

import pikepdf
import pytest

from gramil.cli.options import opened_with_work
from gramil.formatter import formatter_of
from gramil.print_choice import choices, chosen_makers
from gramil.prints.whole import drawings_of, figures_of_files
from gramil.typeset import printed_unscaled
from gramil.writers.pdf import tiled_pdf, whole_pdf

from ..conftest import EXAMPLES

SHOWN = ("board", "index-template", "bridge")


@pytest.fixture(scope="module")
def templates() -> bytes:
    figures = figures_of_files(EXAMPLES / "tarn.toml", EXAMPLES / "shop.toml")
    drawings = [each for each in drawings_of(figures) if each.name in SHOWN]
    return tiled_pdf(drawings, formatter_of(figures).text, "a4", heading="Tarn")


def bookmarks(document: pikepdf.Pdf) -> list[tuple[str, int]]:
    """Each bookmark with the number of the page that it leads to."""
    pages = [page.obj.objgen for page in document.pages]
    with document.open_outline() as outline:
        return [(item.title, pages.index(item.destination[0].objgen)) for item in outline.root]


def test_templates_have_title_language_and_a_bookmark_a_drawing(templates: bytes) -> None:
    with pikepdf.open(io.BytesIO(templates)) as document:
        assert document.docinfo["/Title"] == "Tarn"
        assert document.Root.Lang == "en"
        found = bookmarks(document)
        assert len(found) == len(SHOWN)
        for title, page in found:
            assert title.startswith("Tarn")
            assert 0 <= page < len(document.pages)
        assert [page for _, page in found] == sorted(page for _, page in found)


def test_sheets_and_templates_on_one_paper_keep_them_and_are_tagged() -> None:
    figures, formatter, work = opened_with_work(EXAMPLES / "tarn.toml", EXAMPLES / "shop.toml")
    known = choices(figures, formatter, work)
    (make,) = chosen_makers(formatter, known, known.named(["board", "taper"]), "a4").values()
    made = make()
    assert made == make()
    with pikepdf.open(io.BytesIO(made)) as document:
        assert [page for _, page in bookmarks(document)] == [0, 1]
        assert document.Root.Lang == "en"
        assert str(document.docinfo["/Title"]).startswith("Tarn")
        assert document.Root.ViewerPreferences.PrintScaling == "/None"
        assert document.Root.MarkInfo.Marked


def tags(element: pikepdf.Object) -> Iterator[pikepdf.Object]:
    """Every tag under one, itself included, as a reader aloud goes through them."""
    if isinstance(element, pikepdf.Dictionary) and "/S" in element:
        yield element
        under = element.get("/K", [])
        for each in under if isinstance(under, pikepdf.Array) else [under]:
            yield from tags(each)


def test_a_template_is_tagged_its_lines_are_a_figure_told_in_words(templates: bytes) -> None:
    with pikepdf.open(io.BytesIO(templates)) as document:
        told = [tag for each in document.Root.StructTreeRoot.K for tag in tags(each)]
        figures = [str(tag.Alt) for tag in told if tag.S == "/Figure"]
        assert len(figures) == len(document.pages)
        assert any("sheet A1, 1 of 2. Seen from" in words for words in figures)
        pages = {tag.Pg.objgen for tag in told if tag.S != "/Figure" and "/Pg" in tag}
        assert pages == {page.obj.objgen for page in document.pages}, "words of a page are not told"


def test_another_reader_finds_the_file_whole(templates: bytes) -> None:
    """The word to the printing program is written behind the typesetter's file: each list of its parts is read."""
    with pikepdf.open(io.BytesIO(templates), attempt_recovery=False) as document:
        assert not document.check_pdf_syntax()
        assert document.Root.ViewerPreferences.PrintScaling == "/None"


def test_a_file_of_another_make_is_no_file_of_the_typesetter() -> None:
    with pytest.raises(ValueError, match="does not end"):
        printed_unscaled(b"%PDF-1.7\nstartxref\n9\n%%EOF")


def test_a_plan_on_one_page_has_them_too() -> None:
    figures = figures_of_files(EXAMPLES / "tarn.toml", EXAMPLES / "shop.toml")
    plan = next(each for each in drawings_of(figures) if each.name == "neck")
    with pikepdf.open(io.BytesIO(whole_pdf(plan, formatter_of(figures).text, heading="Tarn"))) as document:
        assert document.Root.Lang == "en"
        assert str(document.docinfo["/Title"])
