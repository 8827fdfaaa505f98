"""The shop's pages over HTTP: the air written down, stock, tools and jigs, measurements and work done, the weeks."""

import re
from datetime import UTC, datetime

import httpx
import pytest

from gramil.air.places import latest_reading, place
from gramil.shop.instruments import instrument
from gramil.shop.operations_done import measurements, operations_done
from gramil.shop.stock import blanks, promise_blank
from gramil.shop.tools import kerf
from gramil.store.items import item_named
from gramil.store.opening import open_store
from gramil.store.writing import Hand

from .conftest import Served, post


def test_the_air_is_written_down_where_it_was_read(served: Served, demo: httpx.Client) -> None:
    answer = post(demo, "/air/reading", place="shop", humidity="43,5 %", temperature="20")
    assert answer.status_code == 200
    with open_store(served.store) as store:
        reading = latest_reading(store, place(store, "shop").id)
    assert reading is not None
    assert (reading.humidity, reading.temperature) == (43.5, 20.0)
    assert "gluing is open here" in demo.get("/").text


@pytest.mark.parametrize(("humidity", "temperature"), [("wet", "20"), ("400", "20"), ("", "20")])
def test_air_that_cannot_be_is_refused_in_words(demo: httpx.Client, humidity: str, temperature: str) -> None:
    answer = post(demo, "/air/reading", place="shop", humidity=humidity, temperature=temperature)
    assert answer.status_code == 422
    assert "Something to mend" in answer.text


def test_a_loggers_file_is_brought_in(demo: httpx.Client) -> None:
    token = re.search(r'name="token" value="([^"]+)"', demo.get("/air").text)
    assert token is not None
    log = "time,temperature C,humidity %\n2026-11-25 07:00,20.1,44\n2026-11-25 08:00,20.3,45\n"
    fields = {"token": token[1], "place": "house"}
    answer = demo.post("/air/log", data=fields, files={"log": ("log.csv", log.encode("utf-16"))})
    assert answer.status_code == 200
    assert '<b class="number">45</b>' in demo.get("/air").text
    backward = "time,temperature C,humidity %\n2026-11-25 10:00,20.1,47\n2026-11-25 09:00,20.3,46\n"
    answer = demo.post("/air/log", data=fields, files={"log": ("log.csv", backward.encode())}, follow_redirects=True)
    assert "newest first: it was turned round" in answer.text


def test_a_verdict_is_in_the_unit_shown_and_in_cents_where_a_fret_moves(demo: httpx.Client) -> None:
    """Fret 12 of a 630 scale lies at 315; 0.1 mm there is 1200 / ln 2 x 0.1 / 315 = 0.55 cent."""
    address = "fret_position[12]"
    ask = {"at": address, f"measured.{address}": "315.1"}
    text = demo.get("/instrument/1/verdict", params=ask).text
    assert "+0.10 mm" in text
    assert "+0.55 cent" in text
    assert "too far" in text
    post(demo, "/unit", unit="in")
    inches = demo.get("/instrument/1/verdict", params={**ask, f"measured.{address}": "12.4016"}).text
    assert "0.000 in" in inches
    assert "near enough" in inches


def test_a_measurement_that_cannot_be_read_says_what_to_write(demo: httpx.Client) -> None:
    ask = {"at": "slot_depth_setting", "measured.slot_depth_setting": "three"}
    assert 'class="fault"' in demo.get("/instrument/1/verdict", params=ask).text
    answer = post(demo, "/instrument/1/operation/slotted", **{"measured.slot_depth_setting": "three", "do": "done"})
    assert answer.status_code == 422


def test_work_is_done_once_with_what_was_measured_even_if_sent_twice(served: Served, demo: httpx.Client) -> None:
    form = {"measured.slot_depth_setting": "2.91", "do": "done", "note": "went well", "hours": "1,5", "who": "A"}
    for _ in range(2):
        assert post(demo, "/instrument/1/operation/slotted", **form).status_code == 200
    with open_store(served.store) as store:
        owner = instrument(store, "Tarn").id
        (done,) = operations_done(store, owner)
        (measured,) = measurements(store, owner)
    assert (done.operation, done.hours, done.note, done.who) == ("slotted", 1.5, "went well", "A")
    assert (measured.address, measured.value, measured.unit) == ("slot_depth_setting", 2.91, "mm")
    assert "<b>Done</b>" in demo.get("/instrument/1/operation/slotted").text


def test_a_jigs_constant_and_a_saws_test_cuts_count_from_now_on(served: Served, demo: httpx.Client) -> None:
    with open_store(served.store) as store:
        jig, saw = item_named(store, "jig", "taper sled"), item_named(store, "saw", "table saw")
    post(demo, "/tools/jig", item=str(jig.id), constant="62.55")
    post(demo, "/tools/saw", item=str(saw.id), widths="0.60, 0.62")
    with open_store(served.store) as store:
        figures = item_named(store, "jig", "taper sled").figures
        assert kerf(store, saw).used == pytest.approx(0.61)
    assert figures["constant"] == "62.55 mm"
    assert figures["checked"] == "2026-11-25"


def test_a_piece_laid_in_stock_serves_a_need_and_is_promised_once(demo: httpx.Client) -> None:
    form = {"name": "old beam", "wood": "persimmon", "length": "530", "width": "70", "thickness": "9", "count": "1"}
    for _ in range(2):
        assert post(demo, "/stock/form", **form).text.count("<h2>old beam</h2>") == 1
    assert post(demo, "/stock/form", **{**form, "width": "71"}).status_code == 422
    page = post(demo, "/stock/promise").text
    assert "Take back" in page
    assert post(demo, "/stock/promise").status_code == 200
    assert demo.get("/stock").text.count("Take back") == page.count("Take back")


def test_what_is_left_of_the_wood_is_asked_for_and_kept(served: Served, demo: httpx.Client) -> None:
    """Only where the work uses wood up; sizes that are none, or more than there was, are told at their field."""
    with open_store(served.store) as store:
        wood = blanks(store)[0]
        promise_blank(store, instrument(store, "Tarn").id, "board", wood.id, Hand(datetime.now(UTC)))
    at = "/instrument/1/operation/thicknessed"
    assert f"Left of {wood.name}:" in demo.get(at).text
    assert 'name="left"' not in demo.get("/instrument/1/operation/slotted").text
    for wrong, told in (("410 by 30", "are no sizes"), ("5000 x 900 x 400", "more is left than")):
        answer = post(demo, at, do="done", left=wrong)
        assert answer.status_code == 422
        assert told in answer.text
        assert 'id="no-left"' in answer.text
    for _ in range(2):
        assert post(demo, at, do="done", left="410 x 20 x 6; 90 x 60 x 6.5").status_code == 200
    with open_store(served.store) as store:
        left = [(each.length, each.width) for each in blanks(store) if "left over" in each.name]
    assert left == [(410.0, 20.0), (90.0, 60.0)]


def test_an_empty_shop_says_what_to_do_first(served: Served) -> None:
    client = served.client()
    assert "begin with the usual tools" in client.get("/tools").text
    assert "Nothing is in stock yet" in client.get("/stock").text
    assert "No place is named yet" in client.get("/air").text
    assert "instrument on the bench" in client.get("/weeks").text
    assert "Fret wire" in post(client, "/tools/bring-in", usual="1").text


def test_the_weeks_are_planned_and_printed(demo: httpx.Client) -> None:
    page = demo.get("/weeks", params={"count": "1", "outlook": "thu 44 %"}).text
    assert "Wednesday 25 November" in page
    assert demo.get("/weeks.pdf").content.startswith(b"%PDF")


def test_revisions_can_be_compared(demo: httpx.Client) -> None:
    page = demo.get("/instrument/1", params={"set": "scale.length=650"}).text
    fields = dict(re.findall(r'<input type="hidden" name="(version|base)" value="([^"]+)"', page))
    post(demo, "/instrument/1/keep", set="scale.length=650", why="longer", **fields)
    compared = demo.get("/instrument/1/compare", params={"old": "1", "new": "2"}).text
    assert "figures moved" in compared
    assert "650.00 mm" in compared
    assert 'data-layer="old"' in compared


def test_a_sheet_handed_out_grows_stale_when_its_saw_changes(served: Served, demo: httpx.Client) -> None:
    answer = post(demo, "/instrument/1/sheet/slot/give")
    assert answer.headers["content-type"] == "application/pdf"
    with open_store(served.store) as store:
        saw = item_named(store, "saw", "table saw")
    assert "stale" not in demo.get("/").text
    post(demo, "/tools/saw", item=str(saw.id), widths="0.70")
    assert "stale" in demo.get("/").text


def test_every_file_of_the_pack_can_be_had(demo: httpx.Client) -> None:
    page = demo.get("/instrument/2/print").text
    files = set(re.findall(r'href="(/instrument/2/print/[^"?]+)', page))
    for name in ("board.dxf", "board.svg", "dimensions.csv", "bench-sheets.pdf", "templates-a4.pdf"):
        assert f"/instrument/2/print/{name}" in files
        assert demo.get(f"/instrument/2/print/{name}").status_code == 200
    assert demo.get("/instrument/2/print/..%2Fshop").status_code == 404


@pytest.mark.parametrize("hours", ["-1", "nan", "1e9", "inf"])
def test_hours_that_no_operation_takes_are_not_noted(served: Served, demo: httpx.Client, hours: str) -> None:
    answer = post(demo, "/instrument/1/operation/tapered", do="done", hours=hours)
    assert answer.status_code == 422
    assert "0 to 10000" in answer.text
    with open_store(served.store) as store:
        assert operations_done(store, instrument(store, "Tarn").id) == []
