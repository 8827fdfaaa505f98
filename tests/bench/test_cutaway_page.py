"""A cutaway put into a description on the bench: tried, kept, and drawn where it is."""

import re
from html import unescape

import httpx

from .conftest import post

CUT = "\n[cutaway]\ndepth = 95\nhorn = 55\nradius = 22\n"
PLACE = re.compile(r"(-?\d+(?:\.\d+)?),(-?\d+(?:\.\d+)?)")


def test_a_cutaway_is_tried_kept_and_drawn(demo: httpx.Client, tarn: str) -> None:
    """The body's outline on the plan comes in to the heel's 30 mm on the treble side, and not on the other."""
    page = demo.get(f"{tarn}/files").text
    text = unescape(re.search(r'<textarea name="text"[^>]*>(.*?)</textarea>', page, re.DOTALL)[1])  # type: ignore[index]
    version = re.search(r'name="version" value="(\d+)"', page)[1]  # type: ignore[index]
    tried = post(demo, f"{tarn}/files", text=text + CUT, do="try", version=version)
    assert tried.status_code == 200
    assert "tightest bend of the treble side" in unescape(tried.text)
    kept = post(demo, f"{tarn}/files", text=text + CUT, do="keep", version=version, why="higher frets")
    assert kept.status_code == 200
    plan = demo.get(tarn).text
    drawn = re.search(r'plan-drawing".*?<polygon points="([^"]+)"', plan, re.DOTALL)
    assert drawn is not None
    places = [(float(x), float(y)) for x, y in PLACE.findall(drawn[1])]
    near = min(x for x, _ in places) + 40.0
    ahead = [y for x, y in places if x < near]
    reach = sorted(abs(y) for y in (min(ahead), max(ahead)))
    assert reach[0] < 32 < 90 < reach[1]
