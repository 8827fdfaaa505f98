"""Costs and the question what comes of gluing now, over HTTP."""

import re

import httpx
import pytest

from .conftest import Served, post


def test_hours_and_money_are_added_up(demo: httpx.Client) -> None:
    """1.5 h are noted at 40 an hour: what is left of the hours, done and to do, is common practice."""
    post(demo, "/instrument/1/operation/slotted", do="done", hours="1,5")
    page = demo.get(
        "/instrument/1/cost", params={"rate": "40", "money": "crowns", "materials": "tuners 85\ncase 120,5"}
    )
    hours = re.search(r"<p>([\d.]+) h at 40.00 crowns: <b>([\d.]+) crowns", page.text)
    total = re.search(r'Total <b class="number">([\d.]+) crowns', page.text)
    assert hours is not None
    assert total is not None
    assert float(hours[2]) == pytest.approx(40 * float(hours[1]), abs=2.01)
    assert float(total[1]) == pytest.approx(float(hours[2]) + 85 + 120.5)
    assert "1 of 1 operations done" in page.text


def test_what_is_no_cost_is_told(demo: httpx.Client) -> None:
    assert demo.get("/instrument/1/cost").status_code == 200
    for wrong in ({"rate": "dear"}, {"rate": "-1"}, {"rate": "40", "materials": "tuners"}):
        assert demo.get("/instrument/1/cost", params=wrong).status_code == 422
    assert demo.get("/instrument/1/quote.pdf", params={"rate": "dear"}).status_code == 422


def test_the_quote_is_a_page(demo: httpx.Client) -> None:
    answer = demo.get("/instrument/1/quote.pdf", params={"rate": "40", "materials": "tuners 85"})
    assert answer.headers["content-type"] == "application/pdf"
    assert answer.content.startswith(b"%PDF")


def test_damp_wood_is_not_glued_and_what_comes_of_it_is_said(demo: httpx.Client) -> None:
    page = demo.get("/if-glued", params={"what": "top", "wood": "Sitka spruce", "rh": "80"}).text
    assert "Do this first" in page
    assert "Settle it in the air for gluing" in page
    assert page.count('class="later-air"') == 3


def test_wood_settled_in_the_band_may_be_glued(demo: httpx.Client) -> None:
    """45 % is the middle of the usual band."""
    page = demo.get("/if-glued", params={"what": "neck", "wood": "persimmon", "rh": "45"}).text
    assert re.search(r'id="answer"[^>]*>Go<', page)


def test_an_instruments_own_sizes_and_its_owners_airs_are_taken(demo: httpx.Client) -> None:
    """The owner's air is 25 to 65 % where the shop says nothing else."""
    for what in ("top", "board", "bridge", "neck"):
        ask = {"what": what, "instrument": "1", "rh": "45", "other": "persimmon"}
        answer = demo.get("/if-glued", params=ask)
        assert answer.status_code == 200, what
        assert answer.text.count('class="later-air"') == 3


def test_a_piece_of_the_shop_is_taken_as_it_is_and_told_when_it_is_ready(demo: httpx.Client) -> None:
    page = demo.get("/if-glued", params={"what": "top", "piece": "brace billet"}).text
    assert re.search(r"(ready|No place of the shop|Go<)", page)


@pytest.mark.parametrize(
    "wrong",
    [
        {"moisture": "wet"},
        {"moisture": "80"},
        {"rh": "45", "wood": "unheard of"},
        {"rh": "45", "what": "board"},
        {"rh": "45", "thickness": "thick"},
        {"piece": "no such piece"},
    ],
)
def test_what_cannot_be_read_is_told(demo: httpx.Client, wrong: dict[str, str]) -> None:
    answer = demo.get("/if-glued", params=wrong)
    assert answer.status_code == 422
    assert '<ul class="faults">' in answer.text


def test_the_question_stands_on_an_empty_bench_too(served: Served) -> None:
    client = served.client()
    assert "Say what comes of it" in client.get("/if-glued").text
    assert "Do this first" in client.get("/if-glued", params={"what": "top", "rh": "80"}).text
