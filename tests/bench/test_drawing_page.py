"""A drawing of a plan sent to the bench: its lines pointed at, named by layer, and taken to the plan's table."""

import re
from html import unescape

import httpx
import pytest

from ..description.plan import plans
from .conftest import post, token_of


def sent(client: httpx.Client, content: bytes, name: str = "plan.dxf") -> httpx.Response:
    token = token_of(client.get("/drawing"))
    return client.post("/drawing", data={"token": token}, files={"drawing": (name, content)})


def pointed(page: httpx.Response) -> str:
    found = re.search(r'name="pointed" value="([^"]*)"', page.text)
    assert found is not None
    return unescape(found[1])


@pytest.mark.parametrize("name", ["plan.dxf", "plan.svg"])
def test_a_drawing_is_read_by_its_layers_and_goes_on_to_the_table(demo: httpx.Client, name: str) -> None:
    page = sent(demo, (plans.dxf() if name.endswith("dxf") else plans.svg()).encode(), name)
    assert page.status_code == 200, page.text[:500]
    for said in ("Hole: 96.00 mm wide", "Braces of the top: 2", "Left: "):
        assert said in page.text
    plan = post(demo, page.url.path, pointed=pointed(page), do="go")
    assert plan.status_code == 200
    assert "What was taken, and what was left" in plan.text
    assert "2 braces" not in plan.text
    assert 'name="hole_diameter" value="96.00"' in plan.text
    assert plan.text.count('class="stick"') == 3  # the X and its twin, and the bar
    table = re.search(r'name="braces"[^>]*>(.*?)</textarea>', plan.text, re.DOTALL)
    assert table is not None
    assert "top 1, top, saddle, 227.00" in table[1]


def test_a_line_pointed_at_is_taken_and_a_layer_left_out(demo: httpx.Client) -> None:
    page = sent(demo, plans.dxf().encode())
    lines = dict(re.findall(r"Line (\d+) on (\w+)", page.text))
    (hole, *_), (outline, *_) = ([n for n, layer in lines.items() if layer == of] for of in ("HOLE", "OUTLINE"))
    alone = post(demo, page.url.path, pointed=f"outline: {outline}; hole: {hole}", do="read")
    assert "Hole: 96.00" in alone.text
    assert "Left: 1 line on HOLE" in alone.text
    assert "Braces of" not in alone.text
    assert f'data-line="{hole}" class="hole"' in alone.text
    layers = re.findall(r'<label for="l\d+">(\w+)</label>', page.text)
    choice = ["outline" if layer == "OUTLINE" else "" for layer in layers]
    by_layer = post(demo, page.url.path, pointed=pointed(page), layer=choice, do="read")
    assert "Hole: " not in by_layer.text
    assert "Left: 2 lines on HOLE" in by_layer.text


def test_what_is_wrong_is_told(demo: httpx.Client) -> None:
    for content, said in ((b"", "no drawing was chosen"), (b"0\nSECTION", "no lines, arcs"), (b"<svg", "not an SVG")):
        page = sent(demo, content)
        assert page.status_code == 422
        assert said in page.text
        assert 'data-field="drawing"' in page.text
    path = sent(demo, plans.dxf().encode()).url.path
    for typed, said in (
        ({"pointed": "nose: 5"}, "Write it like"),
        ({"pointed": "hole: 500"}, "Write it like"),
        ({"pointed": "hole: 5"}, "no line is taken for the outline"),
        ({"pointed": "outline: 2", "length": "far"}, "far"),
        ({"pointed": "outline: 2", "length": "9 m"}, "so long"),
    ):
        for do in ("read", "go"):
            page = post(demo, path, do=do, **typed)
            assert page.status_code == 422
            assert said in page.text
    assert demo.get("/drawing/0000").status_code == 404
