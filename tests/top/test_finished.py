"""Finished tops of one's own, to set a new one beside: found by name, in a file or a store, and told as measured."""

from dataclasses import replace
from pathlib import Path

import pytest
from tests.in_process import gramil
from tests.top_of_tarn import EXAMPLES, top_of_tarn

from gramil import names as n
from gramil.acts.tools import keep_tool
from gramil.cli.store_options import moment_of
from gramil.cli.top import _finished, _its_file, finished_lines
from gramil.faults import MakersFault
from gramil.prints.top_rows import rise_in_words
from gramil.store.items import Item
from gramil.store.opening import open_store
from gramil.store.writing import Hand

FIGURES = {"instrument": "tarn-plan", "turn": "0.9 deg", "first": 188, "years": 4, "words": "even, dry"}


def test_a_finished_top_is_found_in_the_shops_file_and_told_as_it_was_measured(tmp_path: Path) -> None:
    shop = tmp_path / "shop.toml"
    row = '\n[[finished]]\nname = "number 12"\n' + "".join(
        f"{key} = {value if isinstance(value, int) else f'{chr(34)}{value}{chr(34)}'}\n"
        for key, value in FIGURES.items()
    )
    shop.write_text((EXAMPLES / "shop.toml").read_text("utf-8") + row, "utf-8")
    for each in EXAMPLES.iterdir():
        if each.name.endswith(".csv"):
            (tmp_path / each.name).write_text(each.read_text("utf-8"), "utf-8")
    found = _finished("number 12", shop, None)
    assert _its_file(found.instrument, shop, None) == tmp_path / "tarn-plan.toml"
    lines = "\n".join(finished_lines(found))
    for each in ("0.90°", "188 Hz", "4 years under the strings", "even, dry"):
        assert each in lines
    with pytest.raises(MakersFault, match="number 12"):
        _finished("number 13", shop, None)


def test_a_finished_top_is_found_in_a_store_and_what_was_not_measured_is_told_so(tmp_path: Path) -> None:
    gramil(tmp_path, "store", "new", "shop.gramil", "--shop", str(EXAMPLES / "shop.toml"))
    store = tmp_path / "shop.gramil"
    with open_store(store) as record:
        keep_tool(record, Item("finished", "number 12", {"instrument": "Tarn"}), Hand(moment_of(None)))
    found = _finished("number 12", None, store)
    assert _its_file(found.instrument, None, store) == Path("Tarn")
    assert "\n".join(finished_lines(found)).count("not measured") == 2


def test_the_rise_that_the_neck_is_set_for_follows_from_the_others() -> None:
    """The other is set for 0.8 mm and its top's part is 0.05 mm; this one's part is 0.12 mm: 0.87 mm."""
    own, other = (
        replace(
            top_of_tarn(),
            known={**top_of_tarn().known, n.pulled_action.address: part, n.heights_body_rise.address: rise},
        )
        for part, rise in ((0.12, 1.0), (0.05, 0.8))
    )
    lines = rise_in_words(own, other, "mm")
    assert 'body_rise = "0.87 mm"' in lines[1]
    assert "it is 1.000 mm now" in lines[2]
    unknown = replace(own, known={**own.known, n.pulled_action.address: float("nan")})
    assert rise_in_words(unknown, other, "mm") == ()
