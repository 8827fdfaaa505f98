"""Tools written down, changed and removed by form over HTTP: faults beside their fields, and what comes of a change."""

import re
from html import unescape

import httpx
import pytest

from gramil.shop.shop_in_store import shop_description
from gramil.store.items import Item, item_named, items
from gramil.store.opening import open_store

from .conftest import Served, post

WIRE = {
    "name": "narrow",
    "crown_width": "2.0",
    "crown_height": "1,0",
    "tang_thickness": "0.5",
    "bead_thickness": "0.7",
    "tang_depth": "1.5",
}


def item(served: Served, kind: str, name: str) -> Item:
    with open_store(served.store) as store:
        return item_named(store, kind, name)


def version_of(page: str) -> str:
    found = re.search(r'name="version" value="(\d+)"', page)
    assert found is not None
    return found[1]


def field(page: str, key: str) -> str:
    """What stands in a field, with the fault beside it."""
    found = re.search(rf'<(?:input|select)[^>]*name="{key}".*?</div>', page, re.DOTALL)
    assert found is not None, key
    return unescape(found[0])


@pytest.mark.parametrize("kind", ["wire", "saw", "jig", "cutter", "block", "template", "wood", "piece"])
def test_every_kind_has_a_form_that_names_what_it_needs(demo: httpx.Client, kind: str) -> None:
    page = demo.get(f"/tools/form?kind={kind}")
    assert page.status_code == 200
    answer = post(demo, "/tools/form", kind=kind)
    assert answer.status_code == 422
    assert 'aria-invalid="true"' in field(answer.text, "name")


def test_a_wire_is_written_down_once_even_if_sent_twice(served: Served, demo: httpx.Client) -> None:
    for _ in range(2):
        assert "narrow is written down" in post(demo, "/tools/form", kind="wire", **WIRE).text
    with open_store(served.store) as store:
        wires = [each for each in shop_description(store).shop.wire if each.name == "narrow"]
    assert [(each.crown_width, each.crown_height) for each in wires] == [(2.0, 1.0)]


def test_faults_stand_beside_their_fields_and_what_was_typed_stays(served: Served, demo: httpx.Client) -> None:
    answer = post(demo, "/tools/form", kind="wire", **{**WIRE, "crown_width": "wide", "tang_depth": "99"})
    assert answer.status_code == 422
    assert 'class="fault"' in field(answer.text, "crown_width")
    assert 'value="wide"' in field(answer.text, "crown_width")
    assert 'class="fault"' in field(answer.text, "tang_depth")
    assert 'class="fault"' not in field(answer.text, "crown_height")
    taken = post(demo, "/tools/form", kind="wire", **{**WIRE, "name": "medium"})
    assert "one of that name already" in field(taken.text, "name")
    with open_store(served.store) as store:
        assert [each.name for each in items(store, "wire")] == ["medium", "large"]


def test_lists_words_and_inches_are_read_as_they_are_typed(served: Served, demo: httpx.Client) -> None:
    """0.5 in is 12.7 mm; 3/8 in is 9.525 mm."""
    post(demo, "/unit", unit="in")
    post(demo, "/tools/form", kind="cutter", name="new cutter", diameter="0.5", bearings="3/8 in, 0.4375")
    post(demo, "/tools/form", kind="saw", name="small saw", kerf="0.023", cuts="from above", rides_arch="yes")
    post(demo, "/tools/form", kind="block", name="20 inch", radius="20")
    with open_store(served.store) as store:
        shop = shop_description(store).shop
    assert [(each.diameter, each.bearings) for each in shop.cutter][-1] == (12.7, (9.525, 11.1125))
    assert (shop.saw[-1].kerf, shop.saw[-1].rides_arch) == (pytest.approx(0.5842), True)
    assert shop.block[-1].radius == 508.0


def test_a_changed_wire_says_what_moves_on_the_instruments(served: Served, demo: httpx.Client) -> None:
    wire = item(served, "wire", "medium")
    page = demo.get(f"/tools/form?item={wire.id}").text
    assert 'value="2.4"' in field(page, "crown_width")
    form = {**WIRE, "name": "medium", "tang_thickness": "0.6", "on_hand": "6 m", "version": version_of(page)}
    answer = post(demo, "/tools/form", item=str(wire.id), **form)
    assert answer.status_code == 200
    assert re.search(r"Tarn: \d+ figures moved", answer.text)
    assert item(served, "wire", "medium").figures["tang_thickness"] == "0.6 mm"


def test_two_who_change_the_same_tool_get_told_and_nothing_is_overwritten(served: Served, demo: httpx.Client) -> None:
    wire = item(served, "wire", "medium")
    version = version_of(demo.get(f"/tools/form?item={wire.id}").text)
    for depth, status in (("1.6", 200), ("1.4", 422)):
        form = {**WIRE, "name": "medium", "tang_depth": depth, "version": version}
        assert post(demo, "/tools/form", item=str(wire.id), **form).status_code == status
    assert item(served, "wire", "medium").figures["tang_depth"] == "1.6 mm"


def test_a_checked_jig_says_which_printed_sheet_is_stale(served: Served, demo: httpx.Client) -> None:
    assert post(demo, "/instrument/1/sheet/taper/give").status_code == 200
    jig = item(served, "jig", "taper sled")
    answer = post(demo, "/tools/jig", item=str(jig.id), constant="62.55")
    assert re.search(r"Stale: Tarn, sheet taper: [^<]+ on it, now [^<]+\. Print it again\.", answer.text)
    assert re.search(r"Tarn: \d+ figures? moved", answer.text)


def test_a_tool_is_removed_after_a_question_and_stays_where_something_speaks_of_it(
    served: Served, demo: httpx.Client
) -> None:
    post(demo, "/tools/form", kind="wire", **WIRE)
    wire = item(served, "wire", "narrow")
    page = demo.get(f"/tools/remove?item={wire.id}").text
    assert "Remove narrow?" in page
    form = {"item": str(wire.id), "version": version_of(page)}
    assert "narrow is removed" in post(demo, "/tools/remove", **form).text
    assert post(demo, "/tools/remove", **form).status_code == 404
    saw = item(served, "saw", "table saw")
    post(demo, "/tools/saw", item=str(saw.id), widths="0.6")
    page = demo.get(f"/tools/remove?item={saw.id}").text
    assert post(demo, "/tools/remove", item=str(saw.id), version=version_of(page)).status_code == 422
    assert item(served, "saw", "table saw").name == "table saw"


def test_a_piece_to_follow_lies_where_it_was_said(served: Served, demo: httpx.Client) -> None:
    form = {"name": "top 5", "wood": "Sitka spruce", "part": "top", "thickness": "3.4", "lies": "cupboard"}
    page = post(demo, "/tools/form", kind="piece", **form).text
    assert "top 5 is written down" in page
    lay = item(served, "piece", "top 5").figures["lay"]
    assert [(each["place"], each["from"]) for each in lay] == [("cupboard", "2026-11-25T09:00:00")]
    refused = post(demo, "/tools/form", kind="piece", **{**form, "name": "top 6", "wood": "unheard of"})
    assert 'class="fault"' in field(refused.text, "wood")


def test_the_list_of_tools_says_its_lengths_in_the_unit_of_the_page(demo: httpx.Client) -> None:
    """A kerf of 0.58 mm is 0.58 / 25.4 = 0.023 in: bare, on a page of inches, it read as more than half an inch."""
    kerf = '<dt>kerf</dt><dd><b class="number">{}</b><span class="u"> {}</span></dd>'
    assert kerf.format("0.58", "mm") in demo.get("/tools").text
    post(demo, "/unit", unit="in", back="/tools")
    page = demo.get("/tools").text
    assert kerf.format("0.023", "in") in page
    assert "0.58" not in page
