"""A shop begun: what is usual is marked as such, what was measured as that, and what cannot be is refused."""

from importlib.resources import files

import pytest

from gramil.description.reading import parse_shop
from gramil.description.shop.new_shop import JIGS, KINDS, Jig, NewShop, Piece, new_shop, usual_names
from gramil.faults import MakersFault

DEFAULT = parse_shop((files("gramil") / "data" / "shop-default.toml").read_text(encoding="utf-8")).shop


@pytest.mark.parametrize("units", ["mm", "in"])
def test_all_that_is_usual_is_the_shop_that_stands_in(units: str) -> None:
    made = parse_shop(new_shop(NewShop(units=units))).shop  # type: ignore[arg-type]
    assert (made.wire, made.saw, made.cutter, made.block) == (DEFAULT.wire, DEFAULT.saw, DEFAULT.cutter, DEFAULT.block)


@pytest.mark.parametrize(("units", "paper"), [("mm", "a4"), ("in", "letter")])
def test_a_shop_that_was_not_asked_has_the_paper_of_its_units(units: str, paper: str) -> None:
    """Who measures in inches buys paper in inches: common practice."""
    assert parse_shop(new_shop(NewShop(units=units))).shop.shop.paper == paper  # type: ignore[arg-type]
    assert parse_shop(new_shop(NewShop(units=units, paper="legal"))).shop.shop.paper == "legal"  # type: ignore[arg-type]


def test_what_is_kept_is_marked_as_usual_and_what_was_measured_is_not() -> None:
    kept = {"wire": ("medium",), "saw": ("table saw",), "cutter": (), "block": ("flat", "406")}
    text = new_shop(NewShop("Fell's", kept=kept, kerfs={"table saw": "0.61 mm"}))
    made = parse_shop(text).shop
    assert [each.name for each in made.wire] == ["medium"]
    assert made.saw[0].kerf == pytest.approx(0.61)
    assert 'kerf = "0.61 mm"                 # measured' in text
    assert text.count("# usual, not measured") == 4
    assert not made.cutter


def test_jigs_places_and_stock() -> None:
    jigs = (Jig("taper", "62.4 mm", "2026-10-14"), Jig("slots", "2 1/4 in"))
    stock = (Piece("persimmon 1", "persimmon", ("520 mm", "72 mm", "8.5 mm")),)
    text = new_shop(NewShop(jigs=jigs, places=("bench room", "cupboard"), stock=stock))
    made = parse_shop(text).shop
    assert [each.constant for each in made.jig] == pytest.approx([62.4, 57.15])  # 2.25 x 25.4
    assert [str(each.checked) for each in made.jig] == ["2026-10-14", "None"]
    assert all(how in text for how in JIGS.values())
    assert [each.name for each in made.place] == ["bench room", "cupboard"]
    assert made.air.gluing_place == "bench room"
    assert made.blank[0].width == 72.0


@pytest.mark.parametrize(
    ("shop", "told"),
    [
        (NewShop(kept={"wire": ("midium",)}), "medium"),
        (NewShop(jigs=(Jig("taper", "far"),)), "constant"),
        (NewShop(jigs=(Jig("taper", "62 mm", "yesterday"),)), "the new shop"),
        (NewShop(stock=(Piece("a", "oak", ("long", "1 mm", "1 mm")),)), "length"),
        (NewShop(name=""), "name"),
    ],
)
def test_what_cannot_be_is_refused(shop: NewShop, told: str) -> None:
    with pytest.raises(MakersFault, match=told):
        new_shop(shop)


def test_a_quote_in_a_name_stays_a_quote() -> None:
    name = 'the 5" bench, "old"'
    assert parse_shop(new_shop(NewShop(name=name))).shop.shop.name == name


def test_every_kind_has_usual_ones() -> None:
    assert all(usual_names(kind) for kind in KINDS)
