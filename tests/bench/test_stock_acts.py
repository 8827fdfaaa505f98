"""What the command line can do with wood, places, guitars and weeks, done by form: cut, joined, laid, marked, kept."""

import httpx

from gramil.air.places import place
from gramil.shop.instruments import instrument
from gramil.shop.kept_plans import kept_weeks
from gramil.shop.stock import Blank, blank_named, blanks, parts
from gramil.store.opening import open_store

from .conftest import Served, post

BEAM = {"name": "beam 7", "wood": "persimmon", "length": "530", "width": "70", "thickness": "9", "count": "2"}


def blank(served: Served, name: str = "beam 7") -> Blank:
    with open_store(served.store) as store:
        return blank_named(store, name)


def of(found: Blank) -> dict[str, str]:
    return {"blank": str(found.id), "version": str(found.version)}


def test_a_piece_is_cut_into_parts_and_no_more_comes_out_than_there_was(served: Served, demo: httpx.Client) -> None:
    post(demo, "/stock/form", **BEAM)
    assert "Cut one of it into parts" in demo.get(f"/stock/form?blank={blank(served).id}").text
    page = post(demo, "/stock/cut", **of(blank(served)), parts="bridge 7 = 160 x 40 x 8\nrest = 350 x 70 x 9")
    assert "350 × 70 × 9 mm" in page.text
    assert (blank(served).count, blank(served, "rest").wood) == (1, "persimmon")
    refused = post(demo, "/stock/cut", **of(blank(served)), parts="huge = 900 x 90 x 9")
    assert "more than the piece" in refused.text
    assert "are no sizes" in post(demo, "/stock/cut", **of(blank(served)), parts="huge = 900").text
    assert blank(served).count == 1


def test_alike_pieces_are_counted_together_and_laid_elsewhere(served: Served, demo: httpx.Client) -> None:
    for name in ("beam 7", "beam 8"):
        post(demo, "/stock/form", **{**BEAM, "name": name})
    assert "Count with it, being alike" in demo.get(f"/stock/form?blank={blank(served).id}").text
    post(demo, "/stock/join", **of(blank(served)), other=str(blank(served, "beam 8").id))
    assert blank(served).count == 4
    with open_store(served.store) as store:
        assert "beam 8" not in [each.name for each in blanks(store)]
    post(demo, "/stock/move", **of(blank(served)), place="cupboard")
    with open_store(served.store) as store:
        assert blank_named(store, "beam 7").place == place(store, "cupboard").id


def test_a_part_made_ahead_is_written_down(served: Served, demo: httpx.Client) -> None:
    assert "A part made ahead" in demo.get("/stock").text
    page = post(demo, "/stock/made", name="sides of May", kind="bent sides", wood="walnut", figures="thickness = 2 mm")
    assert "sides of May, bent sides, walnut" in page.text
    with open_store(served.store) as store:
        (made,) = [each for each in parts(store) if each.name == "sides of May"]
    assert dict(made.figures) == {"thickness": "2 mm"}
    assert "serves no need" in post(demo, "/stock/made", name="x", kind="a song", figures="").text


def test_a_guitar_is_marked_as_waiting_by_who_saw_it(served: Served, demo: httpx.Client) -> None:
    with open_store(served.store) as store:
        seen = instrument(store, "Tarn")
    assert "Mark it so" in demo.get(f"/instrument/{seen.id}").text
    post(demo, f"/instrument/{seen.id}/mark", standing="waiting", version=str(seen.version))
    with open_store(served.store) as store:
        assert instrument(store, "Tarn").standing == "waiting"
    late = post(demo, f"/instrument/{seen.id}/mark", standing="done", version=str(seen.version))
    assert late.status_code == 422
    with open_store(served.store) as store:
        assert instrument(store, "Tarn").standing == "waiting"


def test_what_is_known_of_a_place_is_written_down(served: Served, demo: httpx.Client) -> None:
    assert "Its humidifier puts in" in demo.get("/air").text
    form = {"room": "45", "least": "0,3", "most": "1", "air_from": "house", "humidifier": "120", "dehumidifier": ""}
    post(demo, "/air/place/known", place="shop", **form)
    with open_store(served.store) as store:
        known = place(store, "shop").figures
    assert (known["room"], known["air_changes"], known["humidifier"]) == (45.0, [0.3, 1.0], 120.0)
    assert "dehumidifier" not in known
    assert post(demo, "/air/place/known", place="shop", **{**form, "room": "-3"}).status_code >= 400
    with open_store(served.store) as store:
        assert place(store, "shop").figures["room"] == 45.0


def test_a_week_s_promise_is_kept_on_the_bench(served: Served, demo: httpx.Client) -> None:
    said = {"outlook": "+1 44 %, +3 38 %", "do": "outlook"}
    assert "The outlook of " in post(demo, "/weeks", **said).text
    assert post(demo, "/weeks", **{**said, "outlook": "+1 4400"}).status_code == 422
    page = post(demo, "/weeks", hours="08:30-12:30 13:30-17:30", days="mon-fri", outlook="")
    with open_store(served.store) as store:
        (week,) = kept_weeks(store)
    assert week.monday.weekday() == 0
    assert f"Week of {week.monday}" in page.text
