"""A guitar that came in: what is not given is not known and not judged, whatever else is given of it."""

import math
import tomllib
from importlib.resources import files

import numpy as np
import pytest
import tomlkit

from gramil.description.reading import parse_description, parse_shop, read_shop
from gramil.description.repair.writing import repair_description
from gramil.faults import MakersFault
from gramil.graph import Figures
from gramil.prints.whole import drawings_of, figures_of, findings_of, setups_of
from gramil.setups.setup import figures_on
from gramil.shop.made_file import parse_made

EXAMPLE_SHOP = parse_shop((files("gramil") / "data" / "examples" / "shop.toml").read_text("utf-8"))
FEW = repair_description({"scale.frets": "19", "instrument.name": "Worn"})
GIVEN = {
    "scale": {"length": "640 mm", "join": 12},
    "nut": {"width": "44 mm", "spread": "36 mm"},
    "bridge": {"spread": "55 mm", "thickness": "9 mm"},
    "board": {"width": "55 mm", "width_at": "fret 12", "thickness": "6 mm", "beyond_last_fret": "8 mm", "arch": "flat"},
    "wire": {"use": "medium"},
    "neck": {"heel_depth": "95 mm"},
    "top": {"length": "480 mm", "rise": "3 mm"},
}
"""What may be known of it, table by table; invented."""


def figures(text: str) -> Figures:
    return figures_of(parse_description(text), read_shop())


def with_tables(*names: str) -> str:
    """The few keys, and these tables of what may be known."""
    whole = tomlkit.parse(FEW)
    for name in names:
        table = whole.get(name) or tomlkit.table()
        for key, value in GIVEN[name].items():
            table[key] = value
        whole[name] = table
    return tomlkit.dumps(whole)


SHEETS_BEFORE = ("as-found", "old-slots")
SHEETS_AFTER = ("reset", "bridge-again", "handed-back", "relief", "nut-slots", "saddle", "in-tune")
KNOWN = [(), *((name,) for name in GIVEN), ("scale", "nut", "bridge"), ("scale", "board", "wire"), tuple(GIVEN)]


@pytest.mark.parametrize("known", KNOWN, ids=lambda names: "+".join(names) or "frets and strings")
def test_whatever_is_known_of_it_every_figure_is_worked_out_and_no_sheet_prints_what_is_not(
    known: tuple[str, ...],
) -> None:
    found = figures_of(parse_description(with_tables(*known)), EXAMPLE_SHOP)
    for name in found.graph.order:
        found[name]
    for setup in setups_of(found):
        if not setup.closed:
            for figure in set(figures_on(setup)) - set(setup.boxes):
                value = found.at(figure.address)
                assert not (isinstance(value, float | np.ndarray) and np.isnan(value).any()), (setup.name, figure)


@pytest.mark.parametrize("name", ["tarn", "fell", "scree", "mere"])
def test_a_guitar_of_one_s_own_that_comes_back_is_known_as_far_as_its_file_goes(name: str) -> None:
    text = (files("gramil") / "data" / "examples" / f"{name}.toml").read_text("utf-8")
    wanted = figures_of(parse_description(text), EXAMPLE_SHOP)
    back = figures_of(parse_description(text + "\n[repair]\nrefret = true\n"), EXAMPLE_SHOP)
    for each in back.graph.order:
        back[each]
    assert back["scale_bass"] == wanted["scale_bass"]
    assert len(drawings_of(back)) < len(drawings_of(wanted)) / 3
    assert {each.name for each in setups_of(back)} >= {"as-found", "refret", "relief"}


def test_frets_and_strings_are_enough_and_nothing_of_the_guitar_is_judged() -> None:
    found = figures(FEW)
    assert {each.severity for each in findings_of(found) if "because not given" in str(each.says)} == {"not judged"}
    assert "stop" not in {each.severity for each in findings_of(found)}
    assert math.isnan(found["scale_bass"])
    assert math.isnan(found["scale_join"])
    assert not drawings_of(found)


def test_what_is_not_judged_says_which_measures_it_wants() -> None:
    told = {each.name: str(each.says) for each in findings_of(figures(with_tables("scale", "nut")))}
    assert "bridge.spread" in told["edge margin, treble"]
    assert "nut.width" not in told["edge margin, treble"]


def test_what_is_wanted_of_the_work_keeps_its_usual_values() -> None:
    judged = {each.name: each.severity for each in findings_of(figures(FEW))}
    assert judged["action, bass"] == "fine"
    assert judged["relief asked for"] == "fine"


def test_no_sheet_mixes_what_was_found_with_what_is_to_be() -> None:
    """The sheets on what is there show readings alone; those of the work show none of them."""
    moor = (files("gramil") / "data" / "examples" / "moor.toml").read_text("utf-8")
    drawn = figures(moor)
    found = parse_made((files("gramil") / "data" / "examples" / "moor.made.toml").read_text("utf-8")).pinned(drawn)
    sheets = {each.name: each for each in setups_of(found)}
    for name in SHEETS_BEFORE:
        assert not sheets[name].closed
        assert {
            figure.address.startswith("found_") for figure in figures_on(sheets[name]) if "stuff" not in str(figure)
        } == {True}
    for name in SHEETS_AFTER:
        assert not sheets[name].closed, (name, sheets[name].closed)
        assert not [figure for figure in figures_on(sheets[name]) if figure.address.startswith("found_")], name


def test_what_stands_in_is_not_held_against_what_is_given() -> None:
    wide = FEW + "\n[nut]\nspread = 60\n"
    assert figures(wide)["nut_spread"] == 60.0


def test_a_width_without_its_place_and_a_fan_without_its_spreads_are_not_known() -> None:
    assert math.isnan(figures(FEW + "\n[board]\nwidth = 55\n")["board_width"])
    fan = FEW.replace("[scale]\n", "[scale]\nbass = 660\ntreble = 640\n")
    found = figures(fan)
    assert math.isnan(found["scale_sideways"])
    for name in found.graph.order:
        found[name]
    assert figures(with_tables("scale"))["scale_sideways"] == 0.0


def test_what_is_given_is_held_against_what_is_given() -> None:
    with pytest.raises(MakersFault, match=r"nut\.spread"):
        figures(FEW + "\n[nut]\nspread = 60\nwidth = 44\n")


def test_without_the_table_the_same_file_lacks_what_a_new_guitar_needs() -> None:
    whole = tomllib.loads(FEW)
    del whole["repair"]
    with pytest.raises(MakersFault, match="nut"):
        parse_description(tomlkit.dumps(whole))


def test_frets_must_be_counted() -> None:
    with pytest.raises(MakersFault, match="Count the frets"):
        repair_description({"instrument.name": "Worn"})
    with pytest.raises(MakersFault, match=r"nut\.width"):
        repair_description({"scale.frets": "19", "nut.width": "44 mm"})


def test_nylon_and_a_given_scale_go_into_the_text() -> None:
    text = repair_description({"scale.frets": "19", "strings.plain": "nylon", "scale.length": "25 1/2 in"})
    instrument = parse_description(text).instrument
    assert instrument.strings.plain == "nylon"
    assert instrument.scale.length == pytest.approx(647.7)


def test_a_neck_that_the_body_is_built_on_is_not_set_anew() -> None:
    """Nylon is built so where nothing else is said; a neck that is joined says so, and is set anew."""
    few = repair_description({"scale.frets": "19", "strings.plain": "nylon"})
    reset = few.replace("reset = false", "reset = true")
    with pytest.raises(MakersFault, match="does not come off"):
        parse_description(reset)
    parse_description(few)
    joined = parse_description(reset.replace("[instrument]\n", '[instrument]\nbuild = "neck to body"\n'))
    assert joined.instrument.repair.reset


def test_what_may_be_given_is_shown_in_the_unit_of_the_file() -> None:
    """Examples in comments: 44.5 mm is 1 3/4 in, 8 mm 5/16 in, 55 mm 2 3/16 in, each to a 16th."""
    text = repair_description({"scale.frets": "19", "instrument.units": "in"})
    assert " mm" not in text.replace('"mm" or "in"', "")
    assert '# width = "1 3/4 in"             # width of the board at the nut' in text
    assert '# width = "2 3/16 in"            # at the station width_at' in text
    assert '# beyond_last_fret = "5/16 in"\n' in text
    commented = [line for line in text.splitlines() if line.startswith("# ") and '"' in line and line.count("#") == 2]
    assert {line.index("#", 1) for line in commented} == {33}
