"""The day's pages over HTTP: what is open now, sheets and verdicts, weeks, stock, tools, air, revisions, prints."""

import re
from datetime import datetime

import httpx
import pytest

from gramil.bench.application import GETS

from .conftest import Served, post

TARN = "/instrument/1"


def test_pages_of_an_empty_store_say_what_to_do_first(served: Served) -> None:
    client = served.client()
    for path, first in (
        ("/weeks", "instrument on the bench"),
        ("/stock", "Write the name on a piece"),
        ("/tools", "Begin the shop"),
        ("/air", "Name the one where you glue first"),
    ):
        assert first in client.get(path).text, path


def test_nothing_of_an_empty_store_is_a_mistake_of_the_bench(served: Served) -> None:
    """Every page and file that is there without an instrument, with nothing noted yet."""
    client = served.client()
    paths = [path for path, _ in GETS if "{" not in path]
    assert [path for path in paths if client.get(path).status_code >= 500] == []


def test_the_air_is_logged_and_opens_gluing(served: Served) -> None:
    """45 % lies in the usual band for gluing, 20 % does not."""
    client = served.client()
    post(client, "/new", **{"instrument.name": "Moss"})
    post(client, "/air/place", name="bench")
    written = post(client, "/air/reading", place="bench", humidity="45", temperature="20,5", back="/")
    assert "gluing is open here" in written.text
    served.clock.later(minutes=20)
    dry = post(client, "/air/reading", place="bench", humidity="20", temperature="20.5", back="/")
    assert "gluing is closed here" in dry.text
    chart = re.search(r"<svg.*?</svg>", client.get("/air").text, re.DOTALL)
    assert chart is not None
    assert "for gluing" in chart[0]


def test_a_reading_that_is_no_number_is_told(served: Served) -> None:
    client = served.client()
    post(client, "/air/place", name="bench")
    answer = post(client, "/air/reading", place="bench", humidity="damp", temperature="20")
    assert answer.status_code == 422
    assert "damp" in answer.text
    assert "No reading yet" in client.get("/air").text


def test_the_demo_shop_is_laid_out_as_of_today(demo: httpx.Client) -> None:
    """Its files say 19 January 2026, their air last read at eight that morning: the same hour of this day, here."""
    page = demo.get("/").text
    assert "gluing is closed here, its band is 40 to 50 %" in page
    assert "days ago" not in page
    assert "weeks ago" not in page


@pytest.mark.usefixtures("demo")
def test_old_readings_are_drawn_to_the_last_of_them_and_said_to_be_old(served: Served) -> None:
    served.clock.later(days=44 * 7)
    page = served.client().get("/air").text
    assert page.count("last read 44 weeks ago: not to be glued by") == 3
    assert page.count("for gluing") > 3, "each place's chart names the band"


def test_the_first_page_leads_to_a_sheet_in_one_tap(demo: httpx.Client) -> None:
    links = re.findall(r'<a class="next" href="([^"]+)"', demo.get("/").text)
    assert links
    for link in links:
        page = demo.get(link)
        assert page.status_code == 200
        assert 'value="done">Done</button>' in page.text


def test_a_verdict_is_given_as_it_is_typed_and_nothing_is_saved(demo: httpx.Client) -> None:
    """Half of 630 is 315: measured 315.10 it is 0.10 too long, more than the sheet's 0.05."""
    address = slot_address(demo, "Zero line to fret 12")
    for written, said in (("315.10", "+0.10 mm"), ("315,02", "+0.02 mm"), ("315 mm", "0.00 mm")):
        answer = demo.get(f"{TARN}/verdict", params={"at": address, f"measured.{address}": written})
        assert said in answer.text
        assert ("too far" in answer.text) == (written == "315.10")
    assert 'class="other">last ' not in demo.get(f"{TARN}/sheet/slot").text


def slot_address(client: httpx.Client, label: str) -> str:
    page = client.get(f"{TARN}/sheet/slot").text
    found = re.search(rf'<label for="(m\d+)">{label}.*?<input id="\1" name="measured\.([^"]+)"', page, re.DOTALL)
    assert found is not None
    return found[2]


def test_a_verdict_on_what_is_no_length_says_what_to_write(demo: httpx.Client) -> None:
    address = slot_address(demo, "Zero line to fret 12")
    answer = demo.get(f"{TARN}/verdict", params={"at": address, f"measured.{address}": "long"})
    assert answer.status_code == 200
    assert 'class="fault"' in answer.text


def test_an_operation_is_done_once_with_its_note_and_its_measurement(demo: httpx.Client) -> None:
    address = slot_address(demo, "Zero line to fret 12")
    for _ in range(2):
        fields = {f"measured.{address}": "315.02", "do": "done", "note": "blade just honed", "who": "A", "hours": "1,5"}
        answer = post(demo, f"{TARN}/operation/slot", **fields)
        assert answer.status_code == 200
    assert "blade just honed" in answer.text
    assert "A, 1.5 h" in answer.text
    assert "last 315.02" in answer.text
    assert "1 of " in demo.get("/").text


def test_a_reading_says_at_once_what_it_means_for_the_work(demo: httpx.Client) -> None:
    """The tang alone takes 1.60 mm."""
    fields = {"measured.slot_depth_setting": "1.2", "do": "done"}
    request = post(demo, f"{TARN}/operation/slotted", **fields).text
    answers = re.findall(r'name="as_read" value="([^"]*)"', request)
    page = post(demo, f"{TARN}/operation/slotted", **fields, as_read=answers[0]).text
    assert re.search(r'<b class="word">rework</b>: fret slots cut: too shallow by \d', page)
    assert "deepen the slots" in page
    assert '<b class="word">stop</b> comes: depth of the slots' in page
    assert "too shallow by" in demo.get(TARN).text


def test_a_reading_moves_neither_its_target_nor_its_verdict_and_stands_beside_it(demo: httpx.Client) -> None:
    """Slots 3.60 deep where 2.96 is wanted are 0.64 too deep; the next board's, 3.00 deep, are 0.04 off."""
    address = slot_address(demo, "Blade above the surface")
    assert '<b class="number">2.96</b>' in demo.get(f"{TARN}/operation/slotted").text
    for do in ("measured", "done"):
        post(demo, f"{TARN}/operation/slotted", **{f"measured.{address}": "3.60", "do": do})
        page = demo.get(f"{TARN}/operation/slotted").text
        assert '<b class="number">2.96</b>' in page
        assert "wanted 2.96 mm" in page
        assert page.count("made 3.60\N{NO-BREAK SPACE}mm, +0.64\N{NO-BREAK SPACE}mm") == 1
        request = {"work": "slotted", "at": address, f"measured.{address}": "3.00"}
        assert "+0.04 mm" in demo.get(f"{TARN}/verdict", params=request).text
    assert demo.get(f"{TARN}/print/sheet-slotted.pdf").content.startswith(b"%PDF")
    assert post(demo, f"{TARN}/sheet/slotted/give").content.startswith(b"%PDF")
    assert demo.get(f"{TARN}/print/sheet-nothing.pdf").status_code == 404


def test_what_a_reading_settles_is_offered_as_a_draft(demo: httpx.Client) -> None:
    """A blank of 6.30 where 6.50 is wanted is a board of 6.10 in the end; nothing is written until it is kept."""
    page = post(demo, f"{TARN}/operation/thicknessed", **{"measured.blank_thickness": "6.30", "do": "measured"}).text
    assert "set board.thickness to 6.10 mm" in page
    link = re.search(rf'href="({TARN}\?set=board\.thickness[^"]+)">Try it</a>', page)
    assert link is not None
    draft = demo.get(link[1].replace("&amp;", "&")).text
    assert 'value="board.thickness=6.1"' in draft
    assert "set=board.thickness" not in demo.get(TARN).text


def test_work_that_there_is_not_cannot_be_done(demo: httpx.Client) -> None:
    assert post(demo, f"{TARN}/operation/nothing", do="done").status_code == 404
    assert "0 of " in demo.get("/").text
    assert "1 of " not in demo.get("/").text


def test_a_measurement_that_cannot_be_read_marks_nothing_done(demo: httpx.Client) -> None:
    address = slot_address(demo, "Zero line to fret 12")
    answer = post(demo, f"{TARN}/operation/slot", **{f"measured.{address}": "long", "do": "done"})
    assert answer.status_code == 422
    assert 'value="done">Done</button>' in demo.get(f"{TARN}/sheet/slot").text


def test_a_sheet_follows_the_swapped_unit(demo: httpx.Client) -> None:
    """315 mm / 25.4 = 12.402 in."""
    post(demo, "/unit", unit="in", back="/")
    page = demo.get(f"{TARN}/sheet/slot").text
    assert '<b class="number">12.402</b>' in page
    address = slot_address(demo, "Zero line to fret 12")
    answer = demo.get(f"{TARN}/verdict", params={"at": address, f"measured.{address}": "12.412"})
    assert "+0.010 in" in answer.text


def test_the_weeks_are_a_table_a_calendar_and_a_print(demo: httpx.Client) -> None:
    page = demo.get("/weeks?count=1").text
    times = re.findall(r'<th scope="row" class="number">(\d\d:\d\d) to (\d\d:\d\d)</th>', page)
    assert times
    assert all("08:30" <= begins < ends <= "17:30" for begins, ends in times)
    calendar = demo.get("/weeks.ics?count=1")
    assert calendar.headers["content-type"].startswith("text/calendar")
    busy = [each for each in calendar.text.split("BEGIN:VEVENT")[1:] if "TRANSP:OPAQUE" in each]
    assert len(busy) == len(times)
    starts = [re.search(r"DTSTART:(\d{8}T\d{6})", each) for each in busy]
    assert all(datetime.strptime(each[1], "%Y%m%dT%H%M%S").weekday() < 5 for each in starts if each)
    assert demo.get("/weeks.pdf?count=1").content.startswith(b"%PDF")


def test_a_calendar_of_an_empty_store_is_empty(served: Served) -> None:
    lines = served.client().get("/weeks.ics").text.split("\r\n")
    assert (lines[0], lines[-2]) == ("BEGIN:VCALENDAR", "END:VCALENDAR")
    assert "BEGIN:VEVENT" not in lines


def test_a_piece_is_laid_in_stock_once(demo: httpx.Client) -> None:
    """24 in are 609.6 mm."""
    sizes = {"wood": "hornbeam", "length": "24 in", "width": "80", "thickness": "8.5", "count": "2"}
    page = post(demo, "/stock/form", name="shed 4", **sizes).text
    assert "609.6 × 80 × 8.5 mm" in page
    assert post(demo, "/stock/form", name="shed 4", **sizes).status_code == 200, "a phone that lost the answer"
    assert demo.get("/stock").text.count("<h2>shed 4</h2>") == 1


def test_test_cuts_give_the_saws_kerf_and_a_jig_its_day(demo: httpx.Client) -> None:
    page = demo.get("/tools").text
    saw = re.search(r'action="/tools/saw".*?name="item" value="(\d+)"', page, re.DOTALL)
    jig = re.search(r'action="/tools/jig".*?name="item" value="(\d+)"', page, re.DOTALL)
    assert saw is not None
    assert jig is not None
    after = post(demo, "/tools/saw", item=saw[1], widths="0.60, 0.62, 0.61").text
    assert "3 test cuts, 2026-11-25" in after
    assert (
        '<dt>checked</dt><dd><b class="number">2026-11-25</b>'
        in post(demo, "/tools/jig", item=jig[1], constant="62.55").text
    )


def longer(client: httpx.Client) -> None:
    """Revision 2 of Tarn, its scale 650 mm."""
    form = re.search(r'action="[^"]+/keep".*?</form>', client.get(f"{TARN}?set=scale.length%3D650").text, re.DOTALL)
    assert form is not None
    fields = dict(re.findall(r'<input type="hidden" name="(version|base)" value="([^"]+)"', form[0]))
    assert post(client, f"{TARN}/keep", set="scale.length=650", why="longer", **fields).status_code == 200


def test_two_revisions_are_held_against_each_other(demo: httpx.Client) -> None:
    """The fretboard's half of the scale goes from 315 to 325."""
    assert "There is one revision" in demo.get(f"{TARN}/revisions").text
    longer(demo)
    assert "Compare the two" in demo.get(f"{TARN}/revisions").text
    page = demo.get(f"{TARN}/compare?old=1&new=2").text
    assert "Revision 2 over revision 1" in page
    assert "figures moved" in page
    assert "+20.00 mm" in page, "650 less 630"
    back = demo.get(f"{TARN}/compare?old=2&new=1").text
    assert "-20.00 mm" in back


def test_a_drawing_of_two_revisions_has_the_old_in_grey_and_how_far_figures_moved(demo: httpx.Client) -> None:
    longer(demo)
    links = re.findall(r'href="(\?old=1&amp;new=2&amp;drawing=[^"#]+)#drawn"', demo.get(f"{TARN}/compare?new=2").text)
    assert links
    for link in links[:6]:
        page = demo.get(f"{TARN}/compare{link.replace('&amp;', '&')}").text
        drawn = page[page.index('id="drawn"') :]
        assert 'data-layer="old"' in drawn
    assert 'id="drawn"' not in demo.get(f"{TARN}/compare?new=2&drawing=nothing").text


def test_the_same_revision_twice_moves_nothing(demo: httpx.Client) -> None:
    page = demo.get(f"{TARN}/compare?old=1&new=1").text
    assert "0 figures moved" in page
    assert "Nothing moved." in page


def test_a_drawing_over_the_old_one_writes_no_move_that_is_nothing(demo: httpx.Client) -> None:
    """The action stays as chosen when the scale changes; what moves by a hair is not written beside it."""
    longer(demo)
    page = demo.get(f"{TARN}/compare?old=1&new=2&drawing=heights").text
    drawn = re.search(r"<svg.*?</svg>", page[page.index('id="drawn"') :], re.DOTALL)
    assert drawn is not None
    assert not re.search(r">[+-]?0\.00 mm<", drawn[0])


def test_a_piece_is_weighed_and_laid_elsewhere(demo: httpx.Client) -> None:
    """The neck blank's moisture at the beginning is in the demonstration shop; nothing is known of the back's."""
    assert post(demo, "/air/lay", piece="back 1", place="cupboard").status_code == 200
    assert post(demo, "/air/weigh", piece="neck blank", mass="1412,5").status_code == 200
    assert post(demo, "/air/weigh", piece="neck blank", mass="heavy").status_code == 422
    assert post(demo, "/air/weigh", piece="nothing", mass="412").status_code == 422
    assert post(demo, "/air/lay", piece="back 1", place="nowhere").status_code == 422


def test_a_weight_that_says_nothing_is_refused_and_the_shop_can_still_be_read(demo: httpx.Client) -> None:
    answer = post(demo, "/air/weigh", piece="back 1", mass="412")
    assert answer.status_code == 422
    assert "says nothing of its moisture yet" in answer.text
    assert demo.get("/air").status_code == 200


@pytest.mark.parametrize("page", ["heights", "cents"])
def test_a_picture_has_its_table(demo: httpx.Client, page: str) -> None:
    """A row for the nut and for each of 19 frets, a cell a string."""
    text = demo.get(f"{TARN}/{page}").text
    assert "<svg" in text
    tables = re.findall(r"<tbody>(.*?)</tbody>", text, re.DOTALL)
    assert all(table.count('<th scope="row">') == 20 for table in tables)
    assert all(table.count("<td>") == 20 * 6 for table in tables)


def test_what_can_be_printed_is_there_to_be_had(demo: httpx.Client) -> None:
    page = demo.get(f"{TARN}/print").text
    links = re.findall(rf'href="({TARN}/print/[^"]+)"', page)
    kinds = {"pdf": b"%PDF", "svg": b"<?xml", "json": b"{", "dxf": b"  0"}
    for kind, opening in kinds.items():
        link = next(each for each in links if f".{kind}?" in each).replace("&amp;", "&")
        answer = demo.get(link)
        assert answer.status_code == 200
        assert answer.content.startswith(opening), link
    assert demo.get(f"{TARN}/print/shop.gramil").status_code == 404


def test_a_printer_that_is_far_out_is_told(demo: httpx.Client) -> None:
    answer = demo.get(f"{TARN}/print?x=50")
    assert answer.status_code == 422
    assert "100 mm bar" in answer.text


def test_charts_of_old_air_open_at_the_day_that_was_read_last(served: Served) -> None:
    """The chart of a place read three weeks ago ends with that day, on both pages, and one is asked to read it now."""
    client = served.client()
    post(client, "/new", **{"instrument.name": "Moss"})
    post(client, "/air/place", name="bench")
    assert 'class="day-curve' not in post(client, "/air/reading", place="bench", humidity="44", temperature="20").text
    served.clock.later(hours=1)
    post(client, "/air/reading", place="bench", humidity="45", temperature="20")
    served.clock.later(days=22)
    for path, drawn in (("/", "bench, the day to 2026-11-25 10:00"), ("/air", "Air of the bench to 2026-11-25 10:00")):
        page = client.get(path).text
        assert "last read 3 weeks ago: not to be glued by" in page, path
        assert drawn in page, path
    page = client.get("/").text
    assert "gluing is closed here until it is read again" in page
    assert "Read it now, and write it down" in page
    written = post(client, "/air/reading", place="bench", humidity="45", temperature="20", back="/").text
    assert "gluing is open here" in written
    assert "last read" not in written
    assert "Air of the bench to 2026-12-17 10:00" in client.get("/air").text, "of the weeks behind, not of a day alone"


def test_work_without_a_set_up_shows_what_it_is_done_to(demo: httpx.Client) -> None:
    """The tail end is cut where the board ends: 419.76 mm to the last fret of 19 on a scale of 630, and 8 beyond it."""
    page = demo.get(f"{TARN}/operation/tail_end_cut").text
    assert "427.76" in page
    assert 'value="done">Done</button>' in page
    printed = post(demo, f"{TARN}/sheet/tail_end_cut/give")
    assert printed.headers["content-type"] == "application/pdf"
    assert demo.get(f"{TARN}/operation/sides_bent").text.count("721.54") > 0


def test_numbers_that_no_record_holds_are_no_fault_of_the_bench(demo: httpx.Client) -> None:
    """A raised two, and more digits than a number may have: both had ended in a mistake of the bench's own."""
    for odd in ("\N{SUPERSCRIPT TWO}", "9" * 5000):
        for path in (f"{TARN}?fret={odd}", f"/weeks?count={odd}", f"{TARN}/compare?old={odd}&new=1"):
            assert demo.get(path).status_code < 500, path
        assert post(demo, "/record/undo", change=odd).status_code < 500


def test_a_flat_board_is_flat_between_its_frets_as_well(served: Served) -> None:
    client = served.client()
    here = post(client, "/new", **{"instrument.name": "Moss", "start": "nylon"}).url.path
    for at in ({"fret": "5"}, {"x": "100"}):
        words = re.sub(r"<[^>]+>|\s", " ", client.get(here, params=at).text)
        assert re.search(r"Radius here\s+flat\b", words), at
