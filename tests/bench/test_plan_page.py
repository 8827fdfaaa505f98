"""A plan typed on the bench: the curve follows, a slip is asked about, and it is taken into old and new instruments."""

import re
import tomllib
from html import unescape

import httpx
import pytest

from ..description.whole.test_offsets import PLAN
from .conftest import post

ROWS = "\n".join(f"{station}, {half}" for station, half in PLAN)
SLIPPED = ROWS.replace("285, 165", "285, 156")
BRACES = """X left, top, saddle, 227, -66.6, 407, 133.2, 7, 13
X right, top, saddle, 227, 66.6, 407, -133.2, 7, 13
bar, top, saddle, 415, 30, 470, -60, 6, , X left
upper, top, body, 72, -50, 72, 50, 12, 13"""
HEAD = "0, 21.5\n10, 23\n24, 32, corner\n70, 34.5\n124, 35.5\n156, 33.5, corner\n161, 18\n163, 0"
ALL = {
    "outline": ROWS, "braces": BRACES, "head": HEAD, "hole_centre": "165", "hole_diameter": "92",
    "bridge_across": "150", "bridge_along": "32",
}  # fmt: skip


def description_in(page: httpx.Response) -> dict[str, object]:
    """What would be kept, off the page that tries it."""
    found = re.search(r'name="text" hidden>(.*?)</textarea>', page.text, re.DOTALL)
    assert found is not None, page.text[:3000]
    return tomllib.loads(unescape(found[1]))


def test_the_curve_appears_as_one_types(demo: httpx.Client) -> None:
    assert "appears here from the seventh station" in post(demo, "/plan/seen", outline=ROWS[:20]).text
    seen = post(demo, "/plan/seen", outline=ROWS).text
    assert seen.count('class="spot"') == len(PLAN)
    ring = re.search(r'class="edge" points="([^"]+)"', seen)
    assert ring is not None
    places = [tuple(map(float, each.split(","))) for each in ring[1].split()]
    for station, half in PLAN:
        assert min(abs(x - station) + abs(y + half) for x, y in places) < 8.0
    assert "stands out" not in seen
    assert "<html" not in seen


def test_a_slip_is_asked_about_and_either_answer_stands(demo: httpx.Client) -> None:
    seen = post(demo, "/plan/seen", outline=SLIPPED).text
    assert "At station 285.00 mm the half-width 156.00 mm stands out" in seen
    assert seen.count("spot odd") == 1
    row = re.search(r'name="right" value="(\d+)">It is (\d+\.\d+) mm<', seen)
    assert row is not None
    assert abs(float(row[2]) - 165) < 2
    refused = post(demo, "/plan", outline=SLIPPED, into="1")
    assert refused.status_code == 422
    assert "a half-width stands out" in refused.text
    righted = post(demo, "/plan", outline=SLIPPED, right=row[1]).text
    assert f"285, {row[2]} mm" in righted
    assert "stands out" not in righted
    kept = post(demo, "/plan", outline=SLIPPED, mean=row[1]).text
    assert "stands out" not in kept
    meant = re.search(r'name="meant" value="([^"]+)"', kept)
    assert meant is not None
    assert "stands out" not in post(demo, "/plan/seen", outline=SLIPPED, meant=meant[1]).text


def test_all_that_is_typed_is_tried_on_an_instrument(demo: httpx.Client) -> None:
    page = post(demo, "/plan", **ALL, into="1")
    assert page.status_code == 200
    assert "Nothing is saved yet" in page.text
    for told in ("X right crosses X left", "Out of the description for them: X, tone bar 1", "165.00 mm from the neck"):
        assert told in page.text
    got = description_in(page)
    body, braces = got["body"], {each["name"]: each for each in got["brace"]}  # type: ignore[attr-defined]
    assert [tuple(each) for each in body["outline"]] == PLAN  # type: ignore[index]
    assert braces["X right"]["crosses"] == ["X left"]
    # Both points lie as far apart along and across as they were typed, whatever they are held to.
    (x, y), (u, v) = braces["bar"]["line"]
    assert (u - x, y, v) == pytest.approx((55, 30, -60))
    assert braces["bar"]["start"] == "X left"
    assert {"back 1", "back 2"} <= braces.keys()
    assert got["bridge"]["length"] == 150  # type: ignore[index]
    assert got["head"]["corners"] == [3, 6]  # type: ignore[index]


def test_a_new_instrument_begins_with_it(demo: httpx.Client) -> None:
    page = post(demo, "/plan", **ALL, name="Moss", start="small", begin="1")
    assert re.fullmatch(r"/instrument/\d+", page.url.path), page.text[:2000]
    text = tomllib.loads(demo.get(f"{page.url.path}/description.toml").text)
    assert text["instrument"]["name"] == "Moss"
    assert [tuple(each) for each in text["body"]["outline"]] == PLAN
    assert text["soundhole"]["diameter"] == 92


@pytest.mark.parametrize(
    ("typed", "field", "said"),
    [
        ({"outline": ROWS.replace("185, 117", "185, wide")}, "outline", "row 10"),
        ({"outline": "1, 2\n3, 4"}, "outline", "2 stations"),
        ({"outline": ROWS.replace("185, 117", "150, 117")}, "outline", "comes after"),
        ({"braces": "X, top, nowhere, 1, 2, 3, 4"}, "braces", "Allowed: body"),
        ({"braces": "X, top, body, 1, 2, 1, 2"}, "braces", "are the same"),
        ({"hole_centre": "160"}, "hole_diameter", "Nothing is written"),
        ({"hole_centre": "160", "hole_diameter": "-5"}, "hole_centre", "more than 0"),
        ({"head": "0, 20"}, "head", "1 station"),
        ({"within": "x"}, "within", "x"),
        ({}, "", "the plan gives nothing yet"),
        ({"hole_centre": "480", "hole_diameter": "92"}, "", "Inside the outline"),
        ({"braces": BRACES.replace("72, -50, 72, 50", "672, -50, 672, 50")}, "", "Inside the body"),
    ],
)
def test_what_is_wrong_is_told_and_nothing_is_kept(
    demo: httpx.Client, typed: dict[str, str], field: str, said: str
) -> None:
    page = post(demo, "/plan", **typed, into="1")
    assert page.status_code == 422
    assert said in page.text
    if field:
        assert f'data-field="{field}"' in page.text
    for each in typed.values():
        assert each.split("\n")[-1] in unescape(page.text)
