"""Turning on a page: what may move for a figure, its answer as a draft, no answer, and more than one."""

import re
from urllib.parse import unquote_plus

import httpx
import pytest


def words(page: httpx.Response) -> str:
    return re.sub(r"\s+", " ", re.sub(r"<[^>]+>", "", page.text))


def test_the_card_of_a_derived_figure_leads_to_what_may_move(demo: httpx.Client, tarn: str) -> None:
    card = demo.get(f"{tarn}/figure?at=fret_position%5B12%5D&x=300").text
    found = re.search(r'href="([^"]+/turn[^"]+)"', card)
    assert found is not None
    page = demo.get(found[1].replace("&amp;", "&"))
    assert "fret position at fret 12" in page.text
    assert re.findall(r'<button name="turn" value="([^"]+)"', page.text) == ["scale.length"]
    assert "1.00 mm more: +0.50 mm" in page.text
    assert "/turn" not in demo.get(f"{tarn}/figure?at=board_thickness").text, "what was chosen is changed itself"
    assert "/turn" not in demo.get(f"{tarn}/figure?at=fret_position").text, "a whole run is not turned"


def test_the_answer_is_a_draft_and_nothing_is_saved(demo: httpx.Client, tarn: str) -> None:
    """Fret 12 at 320 wants a scale of 640."""
    request = {"at": "fret_position[12]", "wanted": "320 mm", "turn": "scale.length", "low": "620", "high": "660"}
    page = demo.get(f"{tarn}/turn", params=request)
    assert "scale length: 640.00 mm" in page.text
    assert "What else moves" in page.text
    found = re.search(r'class="button main" href="([^"]+)"', page.text)
    assert found is not None
    assert "set=scale.length=640.00000 mm" in unquote_plus(found[1])
    draft = demo.get(found[1].replace("&amp;", "&")).text
    assert "figures moved" in draft
    assert "Nothing is saved yet" in draft
    assert "figures moved" not in demo.get(tarn).text


def test_the_answer_stands_on_the_draft_that_was_there(demo: httpx.Client, tarn: str) -> None:
    """With the scale at 640 in hand, the board's thickness is found on top of it."""
    request = {"at": "slot_left_least[19]", "wanted": "3.8", "turn": "board.thickness", "set": "scale.length=640"}
    page = demo.get(f"{tarn}/turn", params=request).text
    found = re.search(r'class="button main" href="([^"]+)"', page)
    assert found is not None
    assert "set=scale.length=640" in unquote_plus(found[1])
    assert "set=board.thickness=" in unquote_plus(found[1])


def test_no_answer_says_what_is_within_reach(demo: httpx.Client, tarn: str) -> None:
    page = demo.get(f"{tarn}/turn", params={"at": "fret_position[12]", "wanted": "100", "turn": "scale.length"})
    assert "No answer" in page.text
    assert "from 252.00 mm to 378.00 mm" in words(page), "half of four and of six fifths of 630"
    assert "100.00 mm is out of reach" in words(page)


def test_more_than_one_answer_is_a_choice(demo: httpx.Client, tarn: str) -> None:
    """As the nut grows the edge's fall grows alike along the board, then too much: two widths give one difference."""
    request = {"at": "thickness_edge_spread", "wanted": "0.1", "turn": "nut.width"}
    page = demo.get(f"{tarn}/turn", params=request).text
    assert "2 answers" in page
    drafts = re.findall(r'class="button" href="([^"]+)">Try', page)
    assert len(drafts) == 2
    for draft in drafts:
        found = demo.get(draft.replace("&amp;", "&").replace("?", "/figure?at=thickness_edge_spread&", 1))
        assert '<b class="number">0.10</b>' in found.text


@pytest.mark.parametrize("wanted", ["wide", "3,8,1", "0/0 mm"])
def test_what_cannot_be_read_is_said_beside_the_field(demo: httpx.Client, tarn: str, wanted: str) -> None:
    page = demo.get(f"{tarn}/turn", params={"at": "fret_position[12]", "wanted": wanted, "turn": "scale.length"})
    assert page.status_code == 200
    assert 'id="turn-fault"' in page.text
    assert 'aria-invalid="true"' in page.text


def test_a_word_is_not_turned(demo: httpx.Client, tarn: str) -> None:
    assert demo.get(f"{tarn}/turn", params={"at": "instrument_name"}).status_code == 404
    assert demo.get(f"{tarn}/turn", params={"at": "nothing_like_it"}).status_code == 404
