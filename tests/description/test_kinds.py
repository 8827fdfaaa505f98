"""What a description's own facts change in what is usual and in what judges it: strings, their hold, the tuners."""

from collections.abc import Callable
from typing import get_args

import pytest

from gramil.description.base import base_values, keys_of
from gramil.description.fields import length_of
from gramil.description.instrument import Instrument
from gramil.description.kinds import KINDS, USUAL
from gramil.description.problems import table_in
from gramil.description.reading import parse_description, parse_shop, read_shop
from gramil.description.shop.limits import JUDGING, LIMITS
from gramil.graph import Figures
from gramil.prints.whole import findings_of

STEEL_BAND = {"limit_action_bass_least": 2.2, "limit_relief_least": 0.1, "limit_torque_most": 11.5}
NYLON = 'plain = "nylon"\nwound = [4, 5, 6]\n'


@pytest.fixture
def nylon_text(text_of: Callable[[str], str]) -> str:
    """Fell with nylon strings, all else as it was."""
    text = text_of("fell")
    return text.replace("[strings]\n", f"[strings]\n{NYLON}").replace(
        "gauges = [0.013, 0.017, 0.026, 0.035, 0.045, 0.056]", "gauges = [0.028, 0.032, 0.040, 0.029, 0.035, 0.043]"
    )


@pytest.fixture
def nylon(nylon_text: str, derive_text: Callable[..., Figures]) -> Figures:
    return derive_text(nylon_text)


def test_every_row_is_of_a_kind_and_a_key_that_there_is() -> None:
    for row in USUAL:
        table, key = row.key.split(".")
        model = table_in(Instrument.model_fields[table].annotation)
        assert model is not None
        field = model.model_fields[key]
        assert row.kind in KINDS
        assert row.value != field.default, f"{row.key} is as usual anyway"
        if isinstance(row.value, str):
            assert row.value in get_args(field.annotation), row.key
        elif isinstance(row.value, tuple):
            assert all(type(fret) is int for fret in row.value), row.key
        else:
            for bound in field.metadata:
                assert getattr(bound, "gt", row.value - 1) < row.value <= getattr(bound, "le", row.value), row.key


def test_every_limit_for_a_kind_stands_for_one_that_there_is() -> None:
    for name, limit in LIMITS.items():
        assert bool(limit.kind) == bool(limit.instead_of), name
        if limit.kind:
            assert limit.kind in KINDS, name
            assert limit.instead_of in JUDGING, name
            assert limit.unit == LIMITS[limit.instead_of].unit, name
            assert limit.origin != LIMITS[limit.instead_of].origin, name


def test_limits_for_steel_stay_where_strings_are_steel(example: Callable[[str], Figures]) -> None:
    for name in ("tarn", "fell", "scree"):
        figures = example(name)
        assert {limit: figures[limit] for limit in STEEL_BAND} == STEEL_BAND


def test_nylon_strings_are_judged_as_such(nylon: Figures) -> None:
    assert (nylon["limit_action_bass_least"], nylon["limit_action_bass_most"]) == (3.5, 4.2)
    assert nylon["limit_relief_least"] == 0
    assert nylon["limit_torque_most"] == 5.5
    assert "nylon" in str(nylon.origins["limit_torque_most"])


def test_what_is_left_out_follows_the_strings(nylon: Figures) -> None:
    """The limits and what is usual go together: a nylon-string guitar that says nothing of them is found fine."""
    assert nylon["heights_action_bass"] == 4.0
    assert nylon["bridge_hold"] == "tie block"
    assert nylon["bridge_hold_below"] == 4.0, "tied, because its strings are nylon"
    assert nylon["neck_rod"] == "none"
    names = {"action, bass", "action, treble", "relief asked for", "what the body gives", "torque on the bridge"}
    names |= {"saddle over the bridge", "strings over the top", "nut slots, lowest", "nut slots, highest"}
    judged = {each.name: each.severity for each in findings_of(nylon) if each.name in names}
    assert judged == dict.fromkeys(names, "fine")


def test_a_default_that_follows_the_strings_says_so(nylon: Figures) -> None:
    assert str(nylon.origins["heights_action_bass"]) == "default (common practice, nylon strings: 3.5 to 4.2 mm)"
    assert "tied strings" in str(nylon.origins["bridge_hold_behind"])


def test_what_is_written_stands(nylon_text: str, derive_text: Callable[..., Figures]) -> None:
    figures = derive_text(nylon_text + '\n[heights]\naction_bass = "2.4 mm"\n[neck]\nrod = "two way"\n')
    assert figures["heights_action_bass"] == pytest.approx(2.4)
    assert figures["heights_action_treble"] == 3.0
    assert figures["neck_rod"] == "two way"
    (action,) = [each for each in findings_of(figures) if each.name == "action, bass"]
    assert (action.severity, str(action.limit)) == ("note", "limit_action_bass_least")


def test_a_shop_overrides_each_by_its_own_name(nylon_text: str, text_of: Callable[[str], str]) -> None:
    own = text_of("shop").replace("[limits]\n", "[limits]\naction_bass_least = 2.0\naction_bass_least_nylon = 3.0\n")
    shop = parse_shop(own, "shop.toml")
    steel = base_values(parse_description(text_of("fell")), shop)
    nylon = base_values(parse_description(nylon_text), shop)
    assert steel.values["limit_action_bass_least"] == 2.0
    assert nylon.values["limit_action_bass_least"] == 3.0
    assert nylon.origins["limit_action_bass_least"].file == "shop.toml"
    assert nylon.origins["limit_action_bass_least"].line == steel.origins["limit_action_bass_least"].line + 1


def test_a_slotted_head_has_rollers_in_it_where_nothing_else_is_said(text_of: Callable[[str], str]) -> None:
    text = text_of("fell") + '\n[head]\ntuners = "across"\n'
    values = base_values(parse_description(text), read_shop()).values
    assert values["head_post_height"] == -values["head_thickness"] / 2
    assert list(values["head_posts_x"][:3]) == [45.0, 80.0, 115.0], "35 mm apart"
    assert values["limit_break_angle_most"] == pytest.approx(0.6108652, abs=1e-6), "35 degrees"


def test_an_inch_file_leaves_out_the_same(nylon_text: str, derive_text: Callable[..., Figures]) -> None:
    """Fell is in inches: what is filled in is in millimetres and stays so."""
    assert length_of(1.0, "in") == 25.4
    assert 'units = "in"' in nylon_text
    assert derive_text(nylon_text)["saddle_exposed"] == 3.0


def test_limits_of_kinds_are_not_keys_of_figures() -> None:
    assert keys_of("limit_action_bass_least") == ("limits.action_bass_least",)


def test_of_two_kinds_the_first_row_gives_the_value_and_its_reason(
    nylon_text: str, derive_text: Callable[..., Figures]
) -> None:
    """A doubled treble of nylon on pins is of two kinds, which each have a bridge's width: 29 and 39 mm."""
    courses = "".join(f"\n[[course]]\nstrings = {strings}\n" for strings in ([1, 2], [3], [4], [5], [6]))
    figures = derive_text(nylon_text.replace("[bridge]\n", '[bridge]\nhold = "pins"\n') + courses)
    assert figures["bridge_rows"] == "staggered"
    assert figures["bridge_width"] == 29.0
    assert "nylon strings" in str(figures.origins["bridge_width"])
