"""A page of a PDF sent to the bench: its scale and its parts laid, and all taken to the table of the plan."""

import re
from html import unescape

import httpx
import numpy as np

from ..photographs.printed import on_page, pdf
from ..photographs.test_scan import locked, pages
from .conftest import post, token_of

PER_MM = 300 / 25.4


def sent(client: httpx.Client, content: bytes, page: str = "") -> httpx.Response:
    files = [("picture", ("plan.pdf", content, "application/pdf"))]
    return client.post("/picture", data={"token": token_of(client.get("/picture")), "page": page}, files=files)


def written(places: np.ndarray) -> str:
    """Places of the page, mm from its lower left corner, in the pixels of the page as it is rendered."""
    _, (_, high) = on_page()
    there = np.column_stack((places[:, 0], high - places[:, 1])) * PER_MM - 0.5
    return " ".join(f"{x:.1f},{y:.1f}" for x, y in there.tolist())


def laid() -> dict[str, str]:
    """The two known lengths, 24 points on the outline, a brace across the middle of the page and a hole in it."""
    ring, _ = on_page()
    low, high = ring.min(axis=0), ring.max(axis=0)
    middle = (low + high) / 2
    along, across = (high - low).tolist()
    turns = np.linspace(0, 2 * np.pi, 6, endpoint=False)
    rim = middle + 45 * np.column_stack((np.cos(turns), np.sin(turns)))
    return {
        "laid": "nothing",
        "along": written(np.array([low, (high[0], low[1])])),
        "along_length": f"{along} mm",
        "across": written(np.array([low, (low[0], high[1])])),
        "across_length": f"{across} mm",
        "points": written(ring[np.linspace(0, len(ring), 24, endpoint=False).astype(int)]),
        "braces": written(middle + np.array([(90, 40), (95, -60)])),
        "hole": written(rim),
    }


def test_a_pdf_is_traced_and_goes_on_to_the_table(demo: httpx.Client) -> None:
    page = sent(demo, pdf())
    assert page.status_code == 200, page.text[:500]
    assert page.url.params["laid"] == "nothing"
    assert "lay the two ends of a length" in page.text
    fields = laid()
    followed = demo.get(page.url.path, params=fields)
    assert followed.status_code == 200
    assert "Hole: 90.0" in followed.text
    assert "Braces: 1, within" in followed.text
    plan = post(demo, page.url.path, **fields)
    assert plan.status_code == 200
    assert "What was taken, and what was left" in plan.text
    within = re.search(r'name="within" value="([\d.]+)"', plan.text)
    assert within is not None
    assert 0.05 < float(within[1]) < 1
    hole = re.search(r'name="hole_diameter" value="([\d.]+)"', plan.text)
    assert hole is not None
    assert abs(float(hole[1]) - 90) < 0.3
    rows = re.search(r'name="outline"[^>]*>(.*?)</textarea>', plan.text, re.DOTALL)
    assert rows is not None
    typed = {"outline": unescape(rows[1]), "within": within[1], "hole_centre": "165", "hole_diameter": hole[1]}
    tried = post(demo, "/plan", **typed, turns="yes", into="1")
    assert tried.status_code == 200
    assert "traced_within" in tried.text


def test_what_is_wrong_stands_at_its_field(demo: httpx.Client) -> None:
    for content, page, said in (
        (locked(), "", "locked with a password"),
        (pages(12), "", "has 12 pages"),
        (pages(2), "7", "no page 7"),
        (pdf()[:300], "", "cut short"),
    ):
        answer = sent(demo, content, page)
        assert answer.status_code == 422
        assert said in answer.text
        assert 'data-field="picture"' in answer.text
    path, fields = sent(demo, pdf()).url.path, laid()
    for typed, field, said in (
        ({"across_length": "400 mm"}, "", "contradict each other by"),
        ({"across": fields["along"]}, "", "run alike"),
        ({"across": ""}, "across", "0 ends are laid"),
        ({"braces": "5,5"}, "braces", "one point alone"),
        ({"hole": "5,5 6,6"}, "hole", "2 points on the hole"),
        ({"points": " ".join(fields["points"].split()[::5] + fields["points"].split()[1::5])}, "", ""),
    ):
        for answer in (demo.get(path, params={**fields, **typed}), post(demo, path, **{**fields, **typed})):
            assert answer.status_code in ((422,) if said else (200, 422)), typed
            assert said in answer.text
            assert not field or f'data-field="{field}"' in answer.text
