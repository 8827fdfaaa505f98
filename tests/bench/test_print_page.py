"""The page of prints: the page that goes to the owner stands apart, and every file says what it holds."""

import re

import httpx

from .test_instrument_page import numbered


def test_the_owners_page_stands_apart_and_is_a_pdf(demo: httpx.Client) -> None:
    tarn = f"/instrument/{numbered(demo, 'Tarn')}"
    page = demo.get(f"{tarn}/print").text
    owners = page[page.index("For its owner") :]
    found = re.search(r'href="([^"]+owner-air\.pdf[^"]*)"', owners)
    assert found is not None
    assert page.count("owner-air.pdf") == 1, "and not a second time among the shop's own sheets"
    answer = demo.get(found[1].replace("&amp;", "&"))
    assert answer.headers["content-type"] == "application/pdf"
    assert answer.content.startswith(b"%PDF")


def test_every_file_to_print_says_what_it_holds(demo: httpx.Client) -> None:
    page = demo.get(f"/instrument/{numbered(demo, 'Tarn')}/print").text
    on_paper = page[page.index("On paper") : page.index("For its owner")]
    assert on_paper.count("<li>") == 3
    assert on_paper.count('class="other wrap"') == 3
    assert "plan of the face" in page
