"""The record's pages over HTTP: what was written wrongly, undo, copies and the proof that one can be put back."""

import re
import threading
from html import unescape
from pathlib import Path

import httpx

from gramil.air.places import latest_reading, place
from gramil.bench.shop_record import record_at
from gramil.doorway.verify import verify
from gramil.shop.instruments import instrument
from gramil.shop.operations_done import measurements, operations_done
from gramil.store.items import Item, add_item, item_named
from gramil.store.opening import open_store
from gramil.store.writing import Hand, changes

from .conftest import Served, post


def link(page: str, words: str) -> str:
    found = re.search(rf'<a[^>]*href="([^"]+)"[^>]*>[^<]*{words}', page)
    assert found is not None, words
    return unescape(found[1])


def hidden(page: str) -> dict[str, str]:
    """The fields of a page's own form that nobody sees, but its token."""
    form = page[page.index("<main") :]
    found = re.findall(r'<input type="hidden" name="([^"]+)" value="([^"]*)"', form)
    return {name: unescape(value) for name, value in found if name != "token"}


def a_wrong_reading(client: httpx.Client) -> str:
    """The page of a reading of 4.5 % that was meant to be 45."""
    post(client, "/air/reading", place="shop", humidity="4.5", temperature="20")
    return link(client.get("/air/readings?place=shop").text, "2026-11-25 09:00")


def test_a_reading_is_put_right_on_a_page_of_its_own(served: Served, demo: httpx.Client) -> None:
    address = a_wrong_reading(demo)
    page = demo.get(address).text
    assert "4.5 %, 20 °C" in page
    refused = post(demo, "/air/reading/correct", **hidden(page), do="right", humidity="wet", temperature="20")
    assert refused.status_code == 422
    assert "wet" in refused.text
    listed = post(demo, "/air/reading/correct", **hidden(page), do="right", humidity="45", temperature="20", why="slip")
    assert listed.status_code == 200
    assert "slip" in listed.text
    with open_store(served.store) as store:
        reading = latest_reading(store, place(store, "shop").id)
    assert reading is not None
    assert reading.humidity == 45.0
    assert "gluing is open here" in demo.get("/").text
    assert verify(served.store) == ()


def test_a_reading_is_struck_once_and_undo_brings_it_back(served: Served, demo: httpx.Client) -> None:
    page = demo.get(a_wrong_reading(demo)).text
    post(demo, "/air/reading/correct", **hidden(page), do="strike")
    again = post(demo, "/air/reading/correct", **hidden(page), do="strike")
    assert again.status_code == 422
    assert "no reading of that moment" in again.text
    record = demo.get("/record").text
    assert "air of the shop: 4.5 % 20 C" in record
    request = demo.get(link(record, "Take back the last"))
    assert "strike reading of the shop" in request.text
    back = post(demo, "/record/undo", **hidden(request.text))
    assert "taken back" in back.text
    assert post(demo, "/record/undo", **hidden(request.text)).status_code == 200
    with open_store(served.store) as store:
        reading = latest_reading(store, place(store, "shop").id)
    assert reading is not None
    assert reading.humidity == 4.5


def test_undo_of_what_is_not_the_last_change_is_refused(demo: httpx.Client) -> None:
    request = demo.get(link(demo.get("/record").text, "Take back the last"))
    post(demo, "/air/place", name="attic")
    answer = post(demo, "/record/undo", **hidden(request.text))
    assert answer.status_code == 422
    assert "not the last change" in answer.text
    assert "attic" in demo.get("/air").text


def test_a_weighing_is_put_right_and_struck(served: Served, demo: httpx.Client) -> None:
    weighings = [{"at": "2026-01-10T09:00:00", "mass": 81.0}]
    with open_store(served.store) as store:
        figures = {"wood": "Sitka spruce", "part": "top", "thickness": 3, "width": 200, "dry_mass": 700}
        lay = [{"place": "shop", "from": "2025-12-01"}]
        add_item(store, Item("piece", "top 9", {**figures, "lay": lay, "weighings": weighings}), Hand(served.clock.now))
    page = demo.get("/air/weighing", params={"piece": "top 9", "number": "0"}).text
    assert "81 g" in page
    assert post(demo, "/air/weighing", **hidden(page), do="right", mass="heavy").status_code == 422
    assert post(demo, "/air/weighing", **hidden(page), do="right", mass="810").status_code == 200
    with open_store(served.store) as store:
        assert item_named(store, "piece", "top 9").figures["weighings"][0]["mass"] == 810.0
    assert post(demo, "/air/weighing", **hidden(page), do="strike").status_code == 422
    page = demo.get("/air/weighing", params={"piece": "top 9", "number": "0"}).text
    assert "It was not weighed yet" in post(demo, "/air/weighing", **hidden(page), do="strike").text


def test_a_measurement_and_an_operation_noted_wrongly(served: Served, demo: httpx.Client) -> None:
    form = {"measured.slot_depth_setting": "29.1", "do": "done"}
    request = post(demo, "/instrument/1/operation/slotted", **form).text
    assert "is the decimal point in its place?" in request
    sheet = post(demo, "/instrument/1/operation/slotted", **form, as_read=hidden(request)["as_read"]).text
    page = demo.get(link(sheet, "slot depth setting")).text
    assert "29.1" in page
    assert post(demo, link_of_form(page), **hidden(page), do="right", written="deep").status_code == 422
    sheet = post(demo, link_of_form(page), **hidden(page), do="right", written="2,91").text
    assert "last 2.91" in sheet
    page = demo.get(link(sheet, "slot depth setting")).text
    post(demo, link_of_form(page), **hidden(page), do="strike")
    with open_store(served.store) as store:
        owner = instrument(store, "Tarn").id
        assert measurements(store, owner) == []
    request = demo.get(link(demo.get("/instrument/1/operation/slotted").text, "Not done after all"))
    for _ in range(2):
        again = post(demo, "/instrument/1/operation/slotted/not-done", **hidden(request.text), do="strike")
        assert 'value="done">Done</button>' in again.text
    with open_store(served.store) as store:
        assert operations_done(store, owner) == []


def link_of_form(page: str) -> str:
    found = re.search(r'<form method="post" action="([^"]+)"', page[page.index("<main") :])
    assert found is not None
    return unescape(found[1])


def test_another_instruments_measurement_is_not_there(demo: httpx.Client) -> None:
    post(demo, "/instrument/1/operation/slotted", **{"measured.slot_depth_setting": "2.91", "do": "measured"})
    assert demo.get("/instrument/2/measured/1").status_code == 404
    assert demo.get("/instrument/1/measured/99").status_code == 422
    assert demo.get("/air/reading", params={"place": "shop", "instant": "soon"}).status_code == 404


def test_a_copy_is_a_sound_store_with_everything_in_it(demo: httpx.Client, tmp_path: Path) -> None:
    answer = demo.get("/record/copy")
    assert 'filename="shop-2026-11-25.gramil"' in answer.headers["content-disposition"]
    copy = tmp_path / "copy.gramil"
    copy.write_bytes(answer.content)
    assert verify(copy) == ()
    with open_store(copy) as store:
        assert instrument(store, "Tarn").name == "Tarn"


def test_the_proof_puts_a_copy_back_and_counts_what_is_in_it(served: Served, demo: httpx.Client) -> None:
    page = demo.get("/record?prove=1").text
    with open_store(served.store) as store:
        (readings,) = store.row("SELECT count(*) FROM air_reading") or (0,)
    assert f"{readings} readings of air" in page
    with open_store(served.store) as store:
        store.connection.execute("PRAGMA foreign_keys = OFF")
        store.connection.execute("DELETE FROM place WHERE name = 'house'")
    assert "Not sound" in demo.get("/record?prove=1").text


def put_back(client: httpx.Client, name: str) -> httpx.Response:
    request = client.get("/record/put-back", params={"copy": name})
    return post(client, "/record/put-back", **hidden(request.text))


def test_a_copy_beside_the_record_is_put_back_and_that_is_taken_back(served: Served, demo: httpx.Client) -> None:
    """What was there lies beside under the moment's name, and is put back in the same way."""
    copy = served.store.with_name("monday.gramil")
    copy.write_bytes(demo.get("/record/copy").content)
    post(demo, "/air/place", name="attic")
    assert "monday.gramil" in demo.get("/record/put-back").text
    request = demo.get("/record/put-back", params={"copy": "monday.gramil"}).text
    assert "1 change would be gone" in request
    assert "attic" in request
    assert "attic" in demo.get("/air").text, "asking puts nothing back"
    told = put_back(demo, "monday.gramil").text
    kept = "shop.gramil.before-20261125T090000"
    assert kept in told
    assert "attic" not in demo.get("/air").text
    assert verify(served.store) == ()
    served.clock.later(minutes=1)
    assert "The record is as in" in put_back(demo, kept).text
    assert "attic" in demo.get("/air").text
    assert copy.exists()


def test_a_copy_waits_until_no_page_has_the_record_open(served: Served, demo: httpx.Client) -> None:
    copy = served.store.with_name("monday.gramil")
    copy.write_bytes(demo.get("/record/copy").content)
    post(demo, "/air/place", name="attic")
    keeping = record_at(served.store)
    putting = threading.Thread(target=keeping.put_back, args=(copy, served.clock.now))
    with keeping.opened() as store:
        putting.start()
        putting.join(0.3)
        assert putting.is_alive()
        assert place(store, "attic").name == "attic"
    putting.join(30)
    assert not putting.is_alive()
    assert "attic" not in demo.get("/air").text


def test_what_was_noted_after_the_question_is_not_lost(served: Served, demo: httpx.Client) -> None:
    served.store.with_name("monday.gramil").write_bytes(demo.get("/record/copy").content)
    request = hidden(demo.get("/record/put-back", params={"copy": "monday.gramil"}).text)
    post(demo, "/air/place", name="attic")
    answer = post(demo, "/record/put-back", **request)
    assert answer.status_code == 422
    assert "noted meanwhile" in answer.text
    assert "attic" in demo.get("/air").text


def test_nothing_but_a_sound_copy_beside_the_record_is_put_back(
    served: Served, demo: httpx.Client, tmp_path: Path
) -> None:
    content = demo.get("/record/copy").content
    elsewhere = tmp_path / "elsewhere"
    elsewhere.mkdir()
    (elsewhere / "copy.gramil").write_bytes(content)
    served.store.with_name("half.gramil").write_bytes(content[: len(content) // 2])
    served.store.with_name("notes.gramil").write_text("no store at all")
    before = demo.get("/record").text.count("<li>")
    for name in ("elsewhere/copy.gramil", "../copy.gramil", "shop.gramil", "half.gramil", "notes.gramil", ""):
        answer = post(demo, "/record/put-back", copy=name, seen=newest(served))
        assert answer.status_code == 422, name
    assert demo.get("/record").text.count("<li>") == before
    assert [each.name for each in tmp_path.glob("*before*")] == []


def newest(served: Served) -> str:
    with open_store(served.store) as store:
        return str(changes(store, 1)[0].id)


def test_an_earlier_revision_is_returned_to_after_a_question(demo: httpx.Client) -> None:
    first = demo.get("/instrument/1/description.toml").text
    form = demo.get("/instrument/1?set=scale.length%3D650").text
    fields = dict(re.findall(r'<input type="hidden" name="(version|base)" value="([^"]+)"', form))
    post(demo, "/instrument/1/keep", set="scale.length=650", why="longer", **fields)
    assert demo.get("/instrument/1/description.toml").text != first
    request = demo.get(link(demo.get("/instrument/1/revisions").text, "Return to it"))
    assert "to revision 1?" in request.text
    assert post(demo, "/instrument/1/return/1", version="1").status_code != 200
    post(demo, "/instrument/1/return/1", **hidden(request.text))
    assert demo.get("/instrument/1/description.toml").text == first
    assert "as in revision 1 again" in demo.get("/instrument/1/revisions").text
