"""Pages beside the vice: errors at their fields in the fields' words, choices as choices, work that is open first."""

import re

import httpx

from .conftest import Served, post


def test_every_answer_that_cannot_be_is_told_at_once_at_its_field_and_in_its_words(served: Served) -> None:
    client = served.client()
    answer = post(client, "/new", **{"instrument.name": "Moss", "scale.length": "long", "nut.width": "broad"})
    assert answer.status_code == 422
    page = answer.text
    assert page.count('aria-invalid="true"') == 2
    assert "2 answers cannot be read" in page
    told = re.findall(r'<p class="fault" id="q\d-fault">(.*?)</p>', page)
    assert len(told) == 2
    for words in told:
        assert "scale.length" not in words
        assert "nut.width" not in words
        assert not re.search(r":\d+:", words), "no file and no line"
    assert page.count(" data-focus") == 1
    assert 'value="long"' in page


def test_what_has_two_answers_is_chosen_and_the_questions_are_counted(served: Served) -> None:
    page = served.client().get("/").text
    assert "Six questions" in page
    boards = {f"board and neck alone, {strings}" for strings in ("steel", "nylon", "twelve strings")}
    starts = {"small", "middle", "large", "nylon", "baritone", "twelve"} | boards
    for name, answers in (("instrument.handed", {"right", "left"}), ("start", starts)):
        assert set(re.findall(rf'type="radio" name="{name}" value="([^"]+)"', page)) == answers


def test_a_reading_that_cannot_be_read_is_told_under_its_field_with_all_others_kept(demo: httpx.Client) -> None:
    fields = {"measured.slot_depth_setting": "deep", "measured.saw_kerf": "0.58"}
    answer = post(demo, "/instrument/1/operation/slotted", do="measured", **fields)
    assert answer.status_code == 422
    assert "1 field cannot be read" in answer.text
    box = next(each for each in answer.text.split('<div class="box">') if 'name="measured.slot_depth_setting"' in each)
    assert 'value="deep"' in box
    assert 'aria-invalid="true"' in box
    assert 'class="fault"' in box
    assert "slot_depth_setting:" not in re.sub(r"<[^>]*>", "", box)
    assert 'value="0.58"' in answer.text
    assert "last 0.58" not in demo.get("/instrument/1/sheet/slot").text, "nothing was noted"


def test_a_comma_is_taken_for_a_point_wherever_a_number_is(demo: httpx.Client) -> None:
    post(demo, "/instrument/1/operation/slotted", **{"do": "measured", "measured.slot_depth_setting": "3,0"})
    assert "last 3" in demo.get("/instrument/1/sheet/slot").text


def test_the_unit_stands_in_the_field_and_fractions_are_tapped_where_the_shop_is_in_inches(demo: httpx.Client) -> None:
    page = demo.get("/instrument/1/sheet/slot").text
    assert '<span class="in-field" aria-hidden="true">mm</span>' in page
    assert "data-type" not in page
    post(demo, "/unit", unit="in")
    page = demo.get("/instrument/1/sheet/slot").text
    assert '<span class="in-field" aria-hidden="true">in</span>' in page
    assert 'data-type="/64"' in page


def test_work_that_can_be_begun_stands_first_and_done_work_is_folded(demo: httpx.Client) -> None:
    before = demo.get("/instrument/1/sheets").text
    assert "Done," not in before
    post(demo, "/instrument/1/operation/wood_chosen", do="done")
    page = demo.get("/instrument/1/sheets").text
    groups = re.findall(r'<details class="work-group[^>]*?>', page)
    assert [("open" in each) for each in groups][:2] == [True, False]
    begun = page[page.index("Can be begun") : page.index("Waits for work before it")]
    assert "Weigh top, back" in begun, "what waited for the wood to be chosen"
    assert "Choose the wood" not in begun
    assert "Choose the wood" in page[page.index("Done, 1") :]
