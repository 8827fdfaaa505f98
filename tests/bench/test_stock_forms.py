"""Pieces of stock written down, changed, removed, and labelled, over HTTP; labels read back from the PDF."""

import io
import re

import httpx
import pikepdf

from gramil.air.places import place
from gramil.bench.pages.labels_page import labels_of
from gramil.shop.stock import Blank, blank_named, blanks
from gramil.store.opening import open_store

from .conftest import Served, post
from .test_tool_forms import field, version_of

BEAM = {"name": "beam 7", "wood": "persimmon", "length": "530", "width": "70,5", "thickness": "9", "count": "2"}


def test_a_piece_is_written_down_with_all_that_is_known_of_it(served: Served, demo: httpx.Client) -> None:
    form = {**BEAM, "grain": "quartersawn", "place": "cupboard", "cost": "12,5", "note": "from the old barn"}
    page = post(demo, "/stock/form", **form).text
    assert "530 × 70.5 × 9 mm" in page
    assert "lies in the cupboard" in page
    with open_store(served.store) as store:
        found, lies = blank_named(store, "beam 7"), place(store, "cupboard").id
    assert (found.width, found.count, found.grain, found.cost, found.place) == (70.5, 2, "quartersawn", 12.5, lies)


def test_faults_of_a_piece_stand_beside_their_fields(served: Served, demo: httpx.Client) -> None:
    answer = post(demo, "/stock/form", **{**BEAM, "name": "", "length": "long", "width": "2000", "count": "few"})
    assert answer.status_code == 422
    for key in ("name", "length", "width", "count"):
        assert 'class="fault"' in field(answer.text, key), key
    assert 'class="fault"' not in field(answer.text, "thickness")
    assert 'value="long"' in field(answer.text, "length")
    with open_store(served.store) as store:
        assert all(each.wood and each.name for each in blanks(store))


def test_a_piece_is_changed_once_by_who_saw_it(served: Served, demo: httpx.Client) -> None:
    post(demo, "/stock/form", **BEAM)
    number = blank(served).id
    page = demo.get(f"/stock/form?blank={number}").text
    assert 'value="70.5"' in field(page, "width")
    form = {**BEAM, "blank": str(number), "version": version_of(page), "thickness": "8"}
    assert post(demo, "/stock/form", **form).status_code == 200
    assert post(demo, "/stock/form", **{**form, "thickness": "7"}).status_code == 422
    assert blank(served).thickness == 8.0


def blank(served: Served) -> Blank:
    with open_store(served.store) as store:
        return blank_named(store, "beam 7")


def test_inches_are_typed_and_shown_as_such(served: Served, demo: httpx.Client) -> None:
    """20.5 in is 520.7 mm."""
    post(demo, "/unit", unit="in")
    page = post(demo, "/stock/form", **{**BEAM, "length": "20.5", "width": "2 3/4", "thickness": "3/8"}).text
    assert "20.5 × 2.75 × 0.375 in" in page
    assert blank(served).length == 520.7


def test_a_piece_is_removed_after_a_question(served: Served, demo: httpx.Client) -> None:
    post(demo, "/stock/form", **BEAM)
    number = blank(served).id
    page = demo.get(f"/stock/remove?blank={number}").text
    form = {"blank": str(number), "version": version_of(page)}
    assert "beam 7" not in post(demo, "/stock/remove", **form).text
    assert post(demo, "/stock/remove", **form).status_code == 404


def test_labels_say_where_a_piece_lies_and_for_whom(served: Served, demo: httpx.Client) -> None:
    """The demonstration's `persimmon 2` is followed: it lies in the shop, quartersawn."""
    post(demo, "/stock/promise")
    post(demo, "/stock/form", **{**BEAM, "wood": "African mahogany"})
    with open_store(served.store) as store:
        found = {each.name: each for each in labels_of(store, "mm", "2026-11-25")}
    label = found["persimmon 2"]
    assert (label.wood, label.sizes) == ("persimmon", "462 × 67.5 × 7.4 mm")
    assert "lies in the shop" in label.lines
    assert "quartersawn" in label.lines
    assert any(line.startswith("for Tarn") for line in label.lines)
    assert "lies in the cupboard" in found["neck blank"].lines
    assert label.permit == found["neck blank"].permit == ""
    assert found[BEAM["name"]].permit.startswith("CITES Appendix II, listed since February 2023")


def test_labels_of_those_ticked_are_printed(demo: httpx.Client) -> None:
    answer = demo.get("/stock/labels.pdf", params={"name": ["hornbeam", "locust"]})
    assert answer.headers["content-type"] == "application/pdf"
    with pikepdf.open(io.BytesIO(answer.content)) as document:
        assert len(document.pages) == 1
    assert demo.get("/stock/labels.pdf", params={"name": "no such piece"}).status_code == 422
    everything = demo.get("/stock/labels.pdf")
    with pikepdf.open(io.BytesIO(everything.content)) as document:
        assert len(document.pages) >= 1


def test_the_page_of_stock_leads_to_its_forms(demo: httpx.Client) -> None:
    page = demo.get("/stock").text
    for address in re.findall(r'href="(/stock/(?:form|remove)[^"]*)"', page):
        assert demo.get(address).status_code == 200
