"""What was once read is read, and packed: descriptions of each earlier form, and one that says only what it must.

They were written when a description was of a board alone, then of strings, of a body, of a fanned board; one has seven
strings and no tuning, which seven have no usual one of. Never changed; what is refused anew stands in the changelog.
"""

from pathlib import Path

import numpy as np
import pytest
from tests.walks import these

from gramil import names as n
from gramil.description.reading import read_description, read_shop
from gramil.formatter import Formatter
from gramil.graph import Figures
from gramil.pack import TYPESET, pack_makers, whole_pack
from gramil.prints.whole import figures_of, findings_of
from gramil.shop.operations_file import usual_work

from .every_key.descriptions import EXAMPLES

EARLIER = sorted(path.stem for path in (Path(__file__).parent / "earlier").glob("*.toml"))
SETTLED = (n.fret_position, n.slot_need, n.slot_left_least, n.string_y_bridge)
"""Figures that need no pitch."""


@pytest.fixture(scope="module")
def figures() -> dict[str, Figures]:
    shop = read_shop(str(EXAMPLES / "shop.toml"))
    return {
        name: figures_of(read_description(Path(__file__).parent / "earlier" / f"{name}.toml"), shop) for name in EARLIER
    }


def test_each_earlier_form_is_kept() -> None:
    assert EARLIER == ["bare", "board", "body", "fanned", "seven", "strings"]


@pytest.mark.parametrize("name", these(EARLIER, ["seven", "bare"]))
def test_it_is_packed(figures: dict[str, Figures], name: str) -> None:
    """Every file, but that only one of them is typeset, which takes longest."""
    makers = pack_makers(figures[name], Formatter(figures[name]), usual_work(), "a4")
    wanted = {each: maker for each, maker in makers.items() if each not in TYPESET or name == "seven"}
    pack = dict(whole_pack(wanted))
    assert all(pack.values())
    assert {"cut/board.dxf", "cut/index-template.dxf", "read/dimensions.csv"} <= set(pack)
    assert b"nan" not in pack["cut/board.dxf"].lower()


def test_of_seven_strings_without_a_tuning_all_that_needs_none_is_given(figures: dict[str, Figures]) -> None:
    seven = figures["seven"]
    for each in SETTLED:
        assert np.isfinite(seven[each]).all(), each
    assert np.isnan(seven[n.strings_frequency]).all()


def test_what_needs_a_pitch_is_not_judged_for_want_of_one(figures: dict[str, Figures]) -> None:
    found = {each.name: each for each in findings_of(figures["seven"])}
    for name in ("slack strings", "intonation, string by string", "place of the nut", "uneven set"):
        assert (found[name].severity, str(found[name].says)) == ("not judged", "because no tuning is given")
    assert not any("slack for the model" in str(each.says) for each in found.values())
    assert [each.severity for each in found.values() if each.name == "edge margin, treble"] == ["fine"]
