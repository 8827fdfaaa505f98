"""What a sheet goes by: every measurement but those of its own operation and of those that wait for it."""

import math
import tomllib
from collections.abc import Callable, Iterator
from functools import cache
from importlib.resources import files

import pytest
from tests.walks import one_of_each

from gramil import names as n
from gramil.formatter import Formatter
from gramil.graph import Figures, Pin
from gramil.prints.whole import setups_of
from gramil.sheets.own_sheet import figures_for_sheet, sheet_named
from gramil.sheets.sheet import Sheet
from gramil.sheets.sheet_pages import made_lines, sheet_text
from gramil.shop.operations_file import usual_work

ROWS = tomllib.loads((files("gramil") / "data" / "operations.toml").read_text(encoding="utf-8"))["operation"]
"""The list of operations as it is written."""
FELL = {
    "instrument.build": "neck to body",
    "slots.cut": "after arching",
    "work.neck_joint": "glued",
    "work.neck_set": "after the finish",
    "work.side_strips": "between the linings",
}
"""What decides on *Fell* what waits for what."""
NAMES = ("tarn", "fell", "scree", "mere")


@cache
def before(name: str) -> frozenset[str]:
    """What comes before an operation on *Fell*, through any chain: by the list itself, and by no code of the program.

    Its slots are cut after arching, and nothing is said of how it is built.
    """
    rows = ({"operation": each} if isinstance(each, str) else each for each in ROWS[name].get("after", ()))
    direct = [row["operation"] for row in rows if all(FELL[key] == row[key] for key in row if key != "operation")]
    return frozenset(direct).union(*(before(each) for each in direct))


def text(sheet: Sheet) -> dict[str, object]:
    """A sheet's page without what was made."""
    found = dict(sheet_text(sheet, Formatter(sheet.figures)))
    return {**found, "made": [], "figures": [{**each, "made": ""} for each in sheet_figures(found)]}


def sheet_figures(found: dict[str, object]) -> list[dict[str, str]]:
    return found["figures"]  # type: ignore[return-value]


def needed(name: str, figures: Figures) -> Sheet:
    """The sheet of an operation that has one."""
    sheet = sheet_named(name, figures, usual_work())
    assert sheet is not None
    return sheet


def asked(figures: Figures) -> Iterator[tuple[str, str]]:
    """Each operation with a sheet on this instrument, with each single number that it asks to have measured."""
    setups = {setup.name: setup for setup in setups_of(figures)}
    for name, row in ROWS.items():
        setup = setups.get(row.get("sheet", ""))
        if setup is not None and setup.closed:
            continue
        boxes = map(str, setup.boxes) if setup else ()
        for address in dict.fromkeys((*boxes, *row.get("measure", ()))):
            if isinstance(figures.at(address), float) and math.isfinite(figures.at(address)):
                yield name, address


NOTED = ("at the operation", "at no operation")
NOTED_ON = [(name, noted) for noted in NOTED for name in NAMES]


@pytest.mark.parametrize(("name", "noted"), one_of_each(NOTED_ON, lambda each: each[1]))
def test_no_reading_moves_its_own_sheet(name: str, noted: str, example: Callable[[str], Figures]) -> None:
    drawn = example(name)
    tried = list(asked(drawn))
    assert len(tried) > 20
    for operation, address in tried:
        pin = Pin(drawn.at(address) * 1.05 + 0.3, "today", operation if noted == "at the operation" else "")
        made = needed_or_none(operation, drawn.with_pins({address: pin}))
        plain = needed_or_none(operation, drawn)
        if made is not None and plain is not None:
            assert text(made) == text(plain), (operation, address)
            assert made.drawing == plain.drawing, (operation, address)


def needed_or_none(name: str, figures: Figures) -> Sheet | None:
    return sheet_named(name, figures, usual_work())


def test_what_comes_before_goes_by_what_is_drawn_and_the_rest_by_what_was_made(
    example: Callable[[str], Figures],
) -> None:
    """The board's thickness, measured when it was arched: whoever waits for that, or works beside it, goes by it."""
    drawn = example("fell")
    made = drawn.with_pins({"board_thickness": Pin(drawn["board_thickness"] - 0.4, "today", "arched")})
    for name in ROWS:
        follows = name != "arched" and name not in before("arched")
        thickness = figures_for_sheet(name, made, usual_work())["board_thickness"]
        asks = "board_thickness" in ROWS[name].get("measure", ())
        assert thickness == pytest.approx(drawn["board_thickness"] - 0.4 * (follows and not asks)), name


CRADLE = (('cuts = "face down"', 'cuts = "from above"'), ("rides_arch = true", "rides_arch = false"))
"""A shop whose saws cut from above, over a cradle's floor."""


def test_the_slot_sheet_follows_a_blank_that_came_out_thin_and_never_its_own_reading(
    text_of: Callable[[str], str], derive_text: Callable[..., Figures]
) -> None:
    """By hand: the teeth stop over the cradle's floor at template and blank less the depth, so a blank 0.20 thinner
    is 0.20 less there; the depth itself, from the face, is the same."""
    shop = text_of("shop")
    for old, new in CRADLE:
        assert old in shop
        shop = shop.replace(old, new)
    drawn = derive_text(text_of("tarn"), shop)
    depth, floor = drawn["slot_depth_setting"], drawn["stop_over_cradle"]
    made = drawn.with_pins(
        {
            "blank_thickness": Pin(drawn["blank_thickness"] - 0.20, "2026-01-05", "thicknessed"),
            "slot_depth_setting": Pin(depth + 0.64, "2026-01-07", "slotted"),
        }
    )
    sheet = needed("slotted", made)
    assert sheet.figures["stop_over_cradle"] == pytest.approx(floor - 0.20)
    assert sheet.figures["slot_depth_setting"] == pytest.approx(depth)
    off = sheet.off(n.slot_depth_setting)
    assert off is not None
    assert (off.wanted, off.measured) == pytest.approx((depth, depth + 0.64))
    assert sheet.off(n.blank_thickness) is None  # what it goes by is no slip of its own


def test_what_was_made_stands_beside_the_setting_with_its_offset(example: Callable[[str], Figures]) -> None:
    drawn = example("tarn")
    wanted = drawn["slot_depth_setting"]
    made = drawn.with_pins({"slot_depth_setting": Pin(wanted + 0.64, "today", "slotted")})
    formatter = Formatter(made)
    first = sheet_text(needed("slotted", made), formatter)["figures"][0]
    assert first["number"] == f"{wanted:.2f}"
    assert first["made"].replace("\N{NO-BREAK SPACE}", " ") == f"made {wanted + 0.64:.2f} mm, +0.64 mm"
    (line,) = made_lines(needed("slotted", made), formatter)
    assert line.endswith(f": {wanted:.2f} mm, made {wanted + 0.64:.2f} mm, +0.64 mm")
    assert made_lines(needed("slotted", drawn), formatter) == []


def test_a_row_of_a_table_is_a_target_too(example: Callable[[str], Figures]) -> None:
    """Half of 630 is 315; a slot that lies at 315.10 leaves the caliper table as it was, and stands under it.

    The string is then 314.90 long where it was 315: 1200 log2(315 / 314.90) = 0.55 cent sharp.
    """
    made = example("tarn").with_pins({"fret_position[12]": Pin(315.10, "today", "slotted")})
    found = sheet_text(needed("slots_measured", made), Formatter(made))
    (row,) = [row for table in found["tables"] for row in table["rows"] if row[0] == "12"]
    assert row[1].startswith("315.00")
    (line,) = found["made"]
    assert line.replace("\N{NO-BREAK SPACE}", " ").endswith("made 315.10 mm, +0.10 mm, +0.55 cent")


def test_what_stands_between_two_readings_goes_by_the_first(example: Callable[[str], Figures]) -> None:
    """The straightedge is read when the neck is fitted and again when it is set; the board is glued in between."""
    drawn = example("fell")
    fitted = Pin(1.5, "2026-01-07", "neck_fitted")
    made = drawn.with_pins({"neck_set_straightedge": Pin(2.5, "2026-02-10", "neck_set").after(fitted)})
    assert "neck_fitted" in before("board_glued")
    assert "board_glued" in before("neck_set")
    for name, value in (
        ("neck_fitted", drawn["neck_set_straightedge"]),
        ("board_glued", 1.5),
        ("strung", 2.5),
    ):
        assert figures_for_sheet(name, made, usual_work())["neck_set_straightedge"] == pytest.approx(value), name


def test_of_one_operation_the_last_reading_counts() -> None:
    first, again, other = Pin(1.0, "a", "slotted"), Pin(2.0, "b", "slotted"), Pin(3.0, "c", "arched")
    assert again.after(first).before == ()
    assert other.after(again.after(first)).before == (again,)
