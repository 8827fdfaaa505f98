"""PDFs as a reader program has them: title, language, bookmarks; read by another library."""

import io

import pikepdf
import pytest

from gramil.formatter import formatter_of
from gramil.prints.whole import drawings_of, figures_of_files
from gramil.writers.pdf import tiled_pdf, whole_pdf
from gramil.writers.together import together

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


def test_what_is_put_together_keeps_them(templates: bytes) -> None:
    made = together("Both", (templates, templates))
    assert made == together("Both", (templates, templates))
    with pikepdf.open(io.BytesIO(templates)) as one, pikepdf.open(io.BytesIO(made)) as both:
        first = bookmarks(one)
        assert bookmarks(both) == [*first, *((title, page + len(one.pages)) for title, page in first)]
        assert both.Root.Lang == "en"
        assert both.docinfo["/Title"] == "Both"
        assert both.Root.ViewerPreferences.PrintScaling == "/None"


def test_a_plan_on_one_page_has_them_too() -> None:
    figures = figures_of_files(EXAMPLES / "tarn.toml", EXAMPLES / "shop.toml")
    plan = next(each for each in drawings_of(figures) if each.name == "neck")
    with pikepdf.open(io.BytesIO(whole_pdf(plan, formatter_of(figures).text, heading="Tarn"))) as document:
        assert document.Root.Lang == "en"
        assert str(document.docinfo["/Title"])
