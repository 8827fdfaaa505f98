"""Parts described by a form: bevels, a cutaway, openings and ports become a draft, faults stand at their fields."""

import re
from html import unescape

import httpx
import pytest

from gramil.bench.describing import ROWS, TABLES, sets_of
from gramil.bench.row_form import lengths_of
from gramil.measure import LengthUnit, read_length

from .conftest import post
from .test_tool_forms import field

BEVEL = {"table": "arm_bevel", "width": "26", "drop": "15", "length": "300", "do": "try"}
PORT = {"table": "port", "row": "1", "name": "port", "side": "bass", "centre": "200", "diameter": "50", "do": "try"}


def read(client: httpx.Client, tarn: str, **typed: str) -> httpx.Response:
    return client.get(f"{tarn}/describe", params=typed)


@pytest.mark.parametrize("table", [*TABLES, *ROWS])
def test_each_has_a_form_that_the_instrument_leads_to(demo: httpx.Client, tarn: str, table: str) -> None:
    links = re.findall(rf'href="({tarn}/describe\?table={table}[^"]*)"', demo.get(tarn).text)
    assert links != []
    page = demo.get(unescape(links[-1]))
    assert page.status_code == 200
    assert (TABLES.get(table) or ROWS[table]) in page.text


def test_a_bevel_is_tried_by_its_fields_and_kept(demo: httpx.Client, tarn: str) -> None:
    tried = read(demo, tarn, **BEVEL)
    assert tried.url.path == tarn
    assert tried.url.params.get_list("set") == [
        "arm_bevel.width=26 mm", "arm_bevel.drop=15 mm", "arm_bevel.length=300 mm"
    ]  # fmt: skip
    version = re.search(r'name="version" value="(\d+)"', tried.text)[1]  # type: ignore[index]
    base = re.search(r'name="base" value="(\d+)"', tried.text)[1]  # type: ignore[index]
    sets = tried.url.params.get_list("set")
    kept = post(demo, f"{tarn}/keep", set=sets, version=version, base=base, at="", why="for the arm", who="")
    assert "Kept as revision" in kept.text
    text = unescape(demo.get(f"{tarn}/files").text)
    assert re.search(r'\[arm_bevel\]\nwidth = "26 mm"\ndrop = "15 mm"\nlength = "300 mm"', text) is not None
    again = read(demo, tarn, table="arm_bevel")
    assert 'value="26 mm"' in field(again.text, "width")


def test_faults_stand_at_their_fields_with_what_was_typed(demo: httpx.Client, tarn: str) -> None:
    """A length that is none, and a bevel that runs past the body's ends; what is wrong of all of it stands above."""
    page = read(demo, tarn, **{**BEVEL, "width": "wide"})
    assert page.status_code == 422
    assert 'aria-invalid="true"' in field(page.text, "width")
    assert 'value="wide"' in field(page.text, "width")
    long = read(demo, tarn, **{**BEVEL, "length": "1900"})
    assert "past the middle of the" in field(long.text, "length")
    alone = unescape(read(demo, tarn, table="arm_bevel", width="26", do="try").text)
    assert "give width, drop and length together" in alone
    assert "arm_bevel" not in re.sub(r'="[^"]*"', "", alone)


def test_a_port_is_a_row_after_the_last(demo: httpx.Client, tarn: str) -> None:
    """The first of them begins the list; typed in inches it is told in inches; a row that is not next has no form."""
    tried = read(demo, tarn, **PORT)
    assert tried.url.path == tarn, unescape(tried.text)[:2000]
    assert "port[1].centre=200 mm" in tried.url.params.get_list("set")
    sets = {"set": tried.url.params.get_list("set")}
    second = demo.get(f"{tarn}/describe", params={**sets, "table": "port", "row": "2"})
    assert second.status_code == 200
    assert 'value="200 mm"' in field(demo.get(f"{tarn}/describe", params={**sets, "table": "port"}).text, "centre")
    assert read(demo, tarn, table="port", row="3").status_code == 404
    assert read(demo, tarn, table="board").status_code == 404


def test_what_is_usual_may_be_emptied_and_what_is_not_is_told(demo: httpx.Client, tarn: str) -> None:
    held = read(demo, tarn, table="soundhole", held_to="", diameter="", do="try")
    assert held.status_code == 422
    assert "nothing is usual" in field(held.text, "diameter")


def test_an_emptied_length_is_usual_whatever_the_file_is_written_in(demo: httpx.Client, tarn: str) -> None:
    """What is usual is kept in millimetres: bare in a file in inches, 30 would be a heel of 30 inches."""
    cutaway = {"table": "cutaway", "depth": "95", "horn": "50", "radius": "22", "heel": "34", "do": "try"}
    sets = read(demo, tarn, **cutaway).url.params.get_list("set")
    emptied = demo.get(f"{tarn}/describe", params={"set": sets, **cutaway, "heel": ""})
    assert "cutaway.heel=30 mm" in emptied.url.params.get_list("set")


def test_a_figure_in_inches_is_read_as_it_is_shown(demo: httpx.Client, tarn: str) -> None:
    """Tarn is in millimetres, its browser in inches: what stands keeps its unit, and a bare number is inches."""
    post(demo, "/unit", unit="in", back="/")
    tried = read(demo, tarn, **{**PORT, "centre": "8", "diameter": "2"})
    assert "port[1].diameter=2 in" in tried.url.params.get_list("set")
    hole = field(read(demo, tarn, table="soundhole").text, "centre")
    assert re.search(r'value="[\d.]+ mm"', hole) is not None


@pytest.mark.parametrize("table", [*TABLES, *ROWS])
def test_what_is_typed_is_what_is_set_in_either_unit(table: str) -> None:
    """Every length of every form; a fraction is one of inches, whatever the instrument is written in."""
    lengths = lengths_of(table)
    assert len(lengths) > 2
    sizes = {"40 mm": 40.0, "2 cm": 20.0, "1.5 in": 38.1, "12 thou": 0.3048}
    bare: dict[LengthUnit, dict[str, float]] = {
        "mm": {"2.5": 2.5, "1,5": 1.5, "-3": -3.0},
        "in": {"2.5": 63.5, "1,5": 38.1, "-3": -76.2, "1 1/2": 38.1, "3/4": 19.05, "-3 1/4": -82.55},
    }
    for unit, typed in bare.items():
        for text, size in {**sizes, **typed}.items():
            for key, written in sets_of(table, table, dict.fromkeys(lengths, text), {}, unit):
                for own in ("mm", "in"):
                    assert read_length(written, own) == pytest.approx(size, abs=1e-9), (key, text, unit)


def test_the_card_of_a_hole_tells_the_sizes_of_its_own_shape(demo: httpx.Client, tarn: str) -> None:
    """Tarn's hole is round: no size along or across is unknown of it, and of an oval no diameter is."""
    card = demo.get(f"{tarn}/part", params={"name": "soundhole"}).text
    figures = card[card.index('class="figures"') : card.index("</ul>")]
    assert "Diameter" in figures
    assert "Across" not in figures
    assert "not known" not in figures
    assert "describe?table=soundhole" in card
