"""A figure's card: its formula by the figures in it, its source by title, what hangs on it."""

import html
import re

import httpx


def card(client: httpx.Client, tarn: str, address: str) -> str:
    return html.unescape(client.get(f"{tarn}/figure", params={"at": address, "x": "209.5"}).text)


def test_the_formula_leads_to_each_figure_in_it(demo: httpx.Client, tarn: str) -> None:
    page = card(demo, tarn, "slot_left_at_crest[7]")
    formula = page[page.index("<dt>Formula</dt>") : page.index("<dt>With numbers</dt>")]
    assert re.findall(r">([^<>]+)</a>", formula) == ["thickness at crest", "slot kerf at crest"]
    assert "at=thickness_at_crest%5B7%5D" in formula, "on the same row"
    assert "6.30 mm - " in page


def test_a_published_source_stands_with_author_title_and_year(demo: httpx.Client, tarn: str) -> None:
    page = card(demo, tarn, "string_pull[6]")
    assert "The Physics of Musical Instruments" in page
    assert "fletcher_rossing" not in page
    assert "common practice" in card(demo, tarn, "slot_left_at_crest[7]")


def test_what_was_given_says_where(demo: httpx.Client, tarn: str) -> None:
    """Tarn gives its board's thickness; its relief it leaves to what is usual."""
    assert re.search(r"Given: Tarn, line \d+\.", card(demo, tarn, "board_thickness"))
    assert "default (" in card(demo, tarn, "heights_relief")


def test_what_hangs_on_it_is_a_tap_away(demo: httpx.Client, tarn: str) -> None:
    page = card(demo, tarn, "slot_left_at_crest[7]")
    hangs = page[page.index("Hangs on it") :]
    assert "at=slot_left_least%5B7%5D" in hangs or "at=slot_left_least" in hangs
