"""A maker's own operations over HTTP: kept where they hold together, told where not, removed after a question."""

import re

import httpx

from gramil.shop.own_operations import own_operations, work_of
from gramil.store.opening import open_store

from .conftest import Served, post
from .test_record_pages import hidden

OWN = """\
[operation.head_inlaid]
what = "Let the inlay into the head"
part = "neck"
after = ["head_veneered"]
hands = 240
"""


def keep(client: httpx.Client, text: str, of: str = "") -> httpx.Response:
    fields = hidden(client.get("/operations", params={"for": of}).text)
    return post(client, "/operations", **{**fields, "text": text})


def test_a_list_is_kept_and_its_operation_stands_among_the_work(served: Served, demo: httpx.Client) -> None:
    assert "None is kept yet" in demo.get("/operations").text
    page = keep(demo, OWN, "1")
    assert page.status_code == 200
    assert "Let the inlay into the head" in page.text
    assert "Let the inlay into the head" in demo.get("/instrument/1/sheets").text
    assert "Let the inlay into the head" not in demo.get("/instrument/2/sheets").text
    sheet = demo.get("/instrument/1/operation/head_inlaid")
    assert "<h1>Let the inlay into the head</h1>" in sheet.text
    assert demo.get("/instrument/2/operation/head_inlaid").status_code == 404
    noted = post(demo, "/instrument/1/operation/head_inlaid", do="done", note="in ebony")
    assert "in ebony" in noted.text
    assert keep(demo, OWN.replace("240", "30")).status_code == 200
    with open_store(served.store) as store:
        assert work_of(store, 1).operations["head_inlaid"].hands == 240
        assert work_of(store, 2).operations["head_inlaid"].hands == 30


def test_a_list_that_does_not_hold_together_is_told_with_its_line(served: Served, demo: httpx.Client) -> None:
    for text in (OWN.replace("head_veneered", "head_venered"), "[operation", "x" * 200_001):
        answer = keep(demo, text)
        assert answer.status_code == 422
        assert "Nothing was saved" in answer.text
    assert "head_venered" in keep(demo, OWN.replace("head_veneered", "head_venered")).text
    with open_store(served.store) as store:
        assert own_operations(store) is None


def test_two_who_write_a_list_do_not_overwrite_one_another(served: Served, demo: httpx.Client) -> None:
    seen = hidden(demo.get("/operations").text)
    assert post(demo, "/operations", **{**seen, "text": OWN}).status_code == 200
    late = post(demo, "/operations", **{**seen, "text": OWN.replace("240", "10")})
    assert late.status_code == 422
    assert "240" in late.text
    with open_store(served.store) as store:
        assert work_of(store).operations["head_inlaid"].hands == 240


def test_a_list_is_removed_after_a_question(served: Served, demo: httpx.Client) -> None:
    keep(demo, OWN)
    request = demo.get("/operations/remove?for=").text
    assert re.search(r"Remove the shop(&#39;|')s own operations\?", request)
    for _ in range(2):
        assert "None is kept yet" in post(demo, "/operations/remove", **hidden(request)).text
    with open_store(served.store) as store:
        assert "head_inlaid" not in work_of(store).operations


def test_there_is_no_list_of_what_is_not_there(demo: httpx.Client) -> None:
    assert demo.get("/operations?for=99").status_code == 404
    assert demo.get("/operations?for=moss").status_code == 404
