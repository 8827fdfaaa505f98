"""The page of prints: the page that goes to the owner stands apart, and every file says what it holds."""

import io
import re
import zipfile

import httpx
import pikepdf


def test_the_owners_page_stands_apart_and_is_a_pdf(demo: httpx.Client, tarn: str) -> None:
    page = demo.get(f"{tarn}/print").text
    owners = page[page.index("For its owner") :]
    found = re.search(r'href="([^"]+owner-air\.pdf[^"]*)"', owners)
    assert found is not None
    assert page.count("owner-air.pdf") == 1, "and not a second time among the shop's own sheets"
    answer = demo.get(found[1].replace("&amp;", "&"))
    assert answer.headers["content-type"] == "application/pdf"
    assert answer.content.startswith(b"%PDF")


def test_every_file_to_print_says_what_it_holds(demo: httpx.Client, tarn: str) -> None:
    page = demo.get(f"{tarn}/print").text
    on_paper = page[page.index("On paper") : page.index("For its owner")]
    assert on_paper.count("<li>") == 4, "templates, bench sheets, build book, strips to photograph by"
    assert on_paper.count('class="other wrap"') == 4
    assert "plan of the face" in page


def test_what_is_ticked_comes_as_one_pdf(demo: httpx.Client, tarn: str) -> None:
    page = demo.get(f"{tarn}/print").text
    listed = set(re.findall(r'type="checkbox" name="(\w+)" value="([^"]+)"', page))
    assert {("today", "1"), ("all", "1"), ("part", "bridge"), ("sheet", "slot"), ("template", "mould")} <= listed
    answer = demo.get(f"{tarn}/print-chosen?template=neck-gauges&sheet=slot&sheet=taper")
    assert answer.headers["content-type"] == "application/pdf"
    few = pages_in(answer.content)
    assert 3 <= few <= 6
    more = demo.get(f"{tarn}/print-chosen?today=1&sheet=slot")
    assert pages_in(more.content) > 1


def test_two_papers_come_in_an_archive_and_nothing_ticked_is_told(demo: httpx.Client, tarn: str) -> None:
    answer = demo.get(f"{tarn}/print-chosen?template=neck-gauges&sheet=taper&paper=a2")
    with zipfile.ZipFile(io.BytesIO(answer.content)) as archive:
        assert archive.namelist() == ["chosen-a4.pdf", "chosen-a2.pdf"]
    nothing = demo.get(f"{tarn}/print-chosen?sheet=nonsense")
    assert nothing.status_code == 422
    assert "nothing is ticked" in nothing.text


def pages_in(pdf: bytes) -> int:
    with pikepdf.open(io.BytesIO(pdf)) as document:
        return len(document.pages)
