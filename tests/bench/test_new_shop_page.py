"""A shop begun on the bench: what is kept of the usual, jigs with their constants, places and wood."""

import re

import httpx
import pytest

from gramil.shop.shop_in_store import shop_description
from gramil.store.opening import open_store

from .conftest import Served, post

SHOP: dict[str, str | list[str]] = {
    "name": "The barn", "units": "in", "paper": "letter", "wire": "medium", "saw": ["pull saw"], "cutter": [],
    "block": [], "places": "barn, loft", "jig slots": "2.5", "checked slots": "2026-11-02", "piece 1": "A7",
    "wood 1": "red maple", "length 1": "30", "width 1": "3 1/2", "thickness 1": "1",
}  # fmt: skip


@pytest.fixture
def usual(served: Served) -> dict[str, list[str]]:
    """The names that the page offers, by kind."""
    page = served.client().get("/shop/new").text
    found: dict[str, list[str]] = {}
    for kind, name in re.findall(r'type="checkbox" name="(\w+)" value="([^"]+)" checked', page):
        found.setdefault(kind, []).append(name)
    return found


def test_a_shop_begins_from_what_is_there(served: Served, usual: dict[str, list[str]]) -> None:
    assert usual.keys() == {"wire", "saw", "cutter", "block"}
    saw, wire = usual["saw"][0], usual["wire"][0]
    client = served.client()
    fields = {**SHOP, "saw": [saw], "wire": [wire], f"kerf {saw}": "0.025"}
    page = post(client, "/shop/new", **fields)
    assert page.url.path == "/tools", page.text[:3000]
    with open_store(served.store) as store:
        shop = shop_description(store).shop
    assert [each.name for each in shop.saw] == [saw]
    assert shop.saw[0].kerf == pytest.approx(0.025 * 25.4)
    assert [each.name for each in shop.wire] == [wire]
    assert shop.cutter == ()
    (jig,) = shop.jig
    assert jig.constant == pytest.approx(63.5)
    assert str(jig.checked) == "2026-11-02"
    (piece,) = shop.blank
    assert (piece.name, piece.width) == ("A7", pytest.approx(88.9))
    assert "loft" in client.get("/air").text


@pytest.mark.parametrize(
    ("typed", "field", "said"),
    [
        ({"jig slots": "wide"}, "jig slots", "wide"),
        ({"jig slots": "", "checked slots": "2026-11-02"}, "jig slots", "no constant"),
        ({"thickness 1": ""}, "thickness 1", "no size"),
        ({"length 1": "long"}, "length 1", "long"),
        ({"checked slots": "last May"}, "", "last May"),
        ({"saw": ["nobody's"]}, "", "none of the usual ones"),
    ],
)
def test_what_is_wrong_is_told_and_nothing_begins(
    served: Served, typed: dict[str, str | list[str]], field: str, said: str
) -> None:
    client: httpx.Client = served.client()
    page = post(client, "/shop/new", **{**SHOP, "saw": [], "wire": [], **typed})
    assert page.status_code == 422
    assert said in page.text
    assert not field or f'data-field="{field}"' in page.text
    assert 'value="The barn"' in page.text
    with open_store(served.store) as store:
        assert shop_description(store).shop.jig == ()


@pytest.mark.parametrize(("unit", "said"), [("mm", ("184.15 mm", "508.00 mm")), ("in", ("7.250 in", "20.000 in"))])
def test_radius_blocks_are_told_with_their_unit(served: Served, unit: str, said: tuple[str, ...]) -> None:
    """Common blocks of 7 1/4 and 20 inches, which a bare 184 and 508 had stood for; the flat one has no radius."""
    page = served.client().get("/shop/new", params={"units": unit}).text
    blocks = re.findall(r'name="block" value="[^"]+"[^>]*> ([^<]+)</label>', page)
    assert blocks[0] == "flat"
    assert (blocks[1], blocks[-1]) == said
