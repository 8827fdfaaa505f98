"""Moulds, forms and dishes serve the outline or radius that they were made for, and are not made twice."""

from importlib.resources import files

import pytest

from gramil.description.instrument import Instrument
from gramil.description.reading import parse_description, parse_shop
from gramil.description.shop.tables import JigTable
from gramil.description.writing import set_key
from gramil.faults import MakersFault
from gramil.now.own_jigs import Built, with_own_jigs, without_jigs_on_hand
from gramil.shop.operations import Work, needed
from gramil.shop.operations_file import usual_work

EXAMPLES = files("gramil") / "data" / "examples"
SHOP = 'gramil = 1\n\n[shop]\nname = "ours"\nunits = "mm"\n\n'


def described(name: str, **changes: str) -> Instrument:
    text = (EXAMPLES / f"{name}.toml").read_text("utf-8")
    for key, value in changes.items():
        text = set_key(text, key.replace("__", "."), value)
    return parse_description(text).instrument


TARN, FELL = described("tarn"), described("fell")
TWIN = described("tarn", instrument__name='"Beck"', body__back_radius='"6 m"')
WORK = {id(each): needed(usual_work(), each) for each in (TARN, FELL, TWIN)}


def built(each: Instrument, *done: str) -> Built:
    return Built(each.instrument.name, each, WORK[id(each)], frozenset(done))


def jigs(text: str) -> tuple[JigTable, ...]:
    return parse_shop(SHOP + text).shop.jig


def kinds(work: Work, *names: str) -> set[str]:
    return {kind for name in names for kind in (*work.operations[name].uses, *work.operations[name].takes)}


def test_each_outline_has_its_mould_and_form_and_each_radius_its_dish() -> None:
    (tarn, fell, twin), _ = with_own_jigs([built(TARN), built(FELL), built(TWIN)], ())
    assert kinds(tarn, "sides_bent") == {"mould for Tarn and Beck", "side form for Tarn and Beck"}
    assert kinds(twin, "sides_bent") == kinds(tarn, "sides_bent")
    assert kinds(fell, "sides_bent") == {"mould for Fell", "side form for Fell"}
    assert kinds(tarn, "rim_domed_back").isdisjoint(kinds(twin, "rim_domed_back"))
    assert tarn.operations["back_glued"].frees == ("mould for Tarn and Beck",)
    assert "go-bars" in kinds(tarn, "top_glued") & kinds(fell, "top_glued")


def test_what_is_made_on_one_serves_the_other_of_its_outline_and_a_finished_one_serves_too() -> None:
    (tarn, fell, twin), _ = with_own_jigs([built(TARN, "mould_made"), built(FELL), built(TWIN)], ())
    assert twin.left_out["mould_made"] == "that of Tarn serves"
    assert "mould_made" in fell.operations
    assert "mould_made" in tarn.operations  # done there, and so part of its work
    assert "side_form_made" in twin.operations
    finished = Built("Tarn", TARN, Work({}, {}), frozenset({"mould_made"}))
    again = with_own_jigs([built(TWIN), finished], ())[0][0]
    assert again.left_out["mould_made"] == "that of Tarn serves"
    assert "sides_thicknessed" in again.operations["sides_bent"].after
    assert kinds(again, "sides_bent") == {"mould for Beck", "side form for Beck"}


def test_what_serves_already_is_not_paid_for_again() -> None:
    tarn = Built("Tarn", TARN, Work({}, {}), frozenset({"mould_made", "side_form_made"}))
    alone = without_jigs_on_hand(built(TWIN), (), ())
    beside = without_jigs_on_hand(built(TWIN), (tarn,), jigs('[[jig]]\nname = "dish"\nfor = "top dish"\n'))
    assert alone.operations.keys() - beside.operations.keys() == {"mould_made", "side_form_made", "top_dish_made"}


def test_jigs_that_the_shop_lists_serve_whom_they_say() -> None:
    listed = jigs(
        '[[jig]]\nname = "the old mould"\nfor = "mould"\nserves = ["tarn"]\n'
        '[[jig]]\nname = "dish 15 ft"\nfor = "back dish"\nradius = "15 ft"\n'
        '[[jig]]\nname = "dish 15 ft, second"\nfor = "back dish"\nradius = "4572 mm"\n'
    )
    (tarn, twin), counted = with_own_jigs([built(TARN), built(TWIN)], listed)
    assert tarn.left_out["mould_made"] == "the shop has it: the old mould"
    assert "mould_made" in twin.operations
    assert tarn.left_out["back_dish_made"] == "the shop has it: dish 15 ft"
    assert "back_dish_made" in twin.operations
    assert kinds(tarn, "back_braces_fitted") == {"back dish dish 15 ft or dish 15 ft, second"}
    assert counted["back dish dish 15 ft or dish 15 ft, second"] == 2


def test_one_listed_for_any_serves_any() -> None:
    (tarn, fell), counted = with_own_jigs(
        [built(TARN), built(FELL)], jigs('[[jig]]\nname = "adjustable"\nfor = "mould"\n')
    )
    assert "mould" in kinds(tarn, "sides_bent") & kinds(fell, "sides_bent")
    assert counted["mould"] == 1
    assert "mould_made" in fell.left_out


def test_a_jig_that_sets_a_cut_has_a_constant() -> None:
    with pytest.raises(MakersFault, match="has a constant"):
        jigs('[[jig]]\nname = "sled"\nfor = "taper"\n')
