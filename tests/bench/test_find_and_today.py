"""Find anything by a maker's words; today's work as one file; the page of keys."""

import re
from html import unescape

import httpx
import pytest

from gramil.bench.finding_words import Found, asked_words, matching

from .conftest import Served, post

KNOWN = (
    Found("figure", "top thickness: Thickness of the top", "/a"),
    Found("figure", "back thickness: Thickness of the back", "/b"),
    Found("operation", "File the nut slots", "/c"),
    Found("tool", "rosette cutter", "/d"),
)


def test_what_is_called_just_so_is_found_first(demo: httpx.Client) -> None:
    """*Relief* is what the maker chose; a dozen figures that begin with the word had stood before it, and not it."""
    page = demo.get("/find", params={"find": "relief"}).text
    first = re.search(r'<ul class="links"><li><a href="([^"]+)"', page)[1]
    assert first.endswith("/figure?at=heights_relief")
    assert "stiffest 3" not in page, "what is no one figure is not shown as one"


def test_little_words_fall_away_and_a_maker_s_word_is_the_program_s() -> None:
    assert asked_words("How thick is the top?") == ("thickness", "top")
    assert [each.address for each in matching("how thick is the top", KNOWN)] == ["/a"]
    assert [each.address for each in matching("nut slots", KNOWN)] == ["/c"]
    assert [each.address for each in matching("rosettes", KNOWN)] == ["/d"]
    assert matching("is the", KNOWN) == ()
    assert matching("banjo", KNOWN) == ()


@pytest.mark.parametrize(
    ("asked", "kinds", "words"),
    [
        ("how thick is the top", {"figure"}, "Thickness of the top"),
        ("rosette", {"figure", "operation"}, "rosette"),
        ("nut slots", {"sheet"}, "slots"),
        ("bridge", {"part", "figure"}, "bridge"),
        ("tone bar 1", {"part"}, "tone bar 1"),
        ("gluing what if", {"page"}, "gluing now"),
    ],
)
def test_what_is_looked_for_is_found_and_each_link_opens(
    demo: httpx.Client, asked: str, kinds: set[str], words: str
) -> None:
    page = demo.get("/find", params={"find": asked}).text
    rows = re.findall(r'<li><a href="([^"]+)"><span><span class="other">(\w+)</span> ([^<]*)</span>', page)
    assert kinds <= {kind for _, kind, _ in rows}
    assert any(words in unescape(said) for _, _, said in rows)
    opened = {kind: unescape(to) for to, kind, _ in rows}
    for to in opened.values():
        assert demo.get(to).status_code == 200


def test_nothing_found_says_what_to_try(demo: httpx.Client) -> None:
    assert "Try one of them" in demo.get("/find", params={"find": "banjo"}).text


def test_tools_findings_and_revisions_are_found_too(demo: httpx.Client) -> None:
    assert '<span class="other">tool</span>' in demo.get("/find", params={"find": "saw"}).text
    assert '<span class="other">finding</span>' in demo.get("/find", params={"find": "caution"}).text
    assert '<span class="other">revision</span>' in demo.get("/find", params={"find": "revision 1"}).text


def test_today_is_one_file_that_needs_nothing_else(demo: httpx.Client) -> None:
    answer = demo.get("/today")
    assert "attachment" in answer.headers["content-disposition"]
    page = answer.text
    assert not re.search(r"""(?:src|href)=["'](?!#)""", page), "nothing is loaded, no link leads out of the file"
    assert "url(" not in page
    assert "<script" not in page
    marks = re.findall(r'href="#([^"]+)"', page)
    assert len(marks) > 3
    for mark in marks:
        assert f'id="{mark}"' in page
    first = demo.get("/").text
    for what in re.findall(r'class="next" href="[^"]+"><span>([^<]+)<', first):
        assert what.strip() in page, "what is open on the bench stands in it"
    assert "<svg" in page
    assert 'class="bigs"' in page


def test_an_empty_bench_has_a_day_without_work(served: Served) -> None:
    assert served.client().get("/today").status_code == 200


def test_every_key_of_the_page_of_keys_is_in_the_script(demo: httpx.Client) -> None:
    page = unescape(demo.get("/keys").text)
    script = demo.get("/static/bench.js").text + demo.get("/static/drawing.js").text
    for key in re.findall(r"<kbd>(\S)</kbd>", page):
        assert f'"{key}"' in script or f"{key}: ()" in script, key
    post(demo, "/unit", unit="mm")
