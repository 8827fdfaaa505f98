"""Sheets stand in the order of the work: never one after another whose work waits for its own."""

from collections.abc import Iterator
from importlib.resources import as_file, files
from itertools import combinations
from pathlib import Path

import pytest

from gramil.cli.options import opened_with_work
from gramil.description.reading import read_description
from gramil.graph import Figures
from gramil.reference import filled
from gramil.sheets.own_sheet import every_sheet, setup_sheets, sheets_of_a_set
from gramil.sheets.work_order import STAGES
from gramil.shop.operations import Work, needed
from gramil.shop.operations_file import usual_work, work_with

TRADE = ("layout", "neck-blank", "sides", "brace-top", "brace-back", "flush", "bridge", "strings", "owner-air")
"""A sheet of each stage as the trade takes them up: board, neck, sides, top, back, closing, bridge, setting up."""


ON_THE_NECK = ("neck-blank", "sides", "brace-top", "built-on", "brace-back", "flush", "layout", "bridge", "strings")
"""The same for a body that is built on its neck: neck, sides, top, these together, back, closing, board, bridge."""
OWN = """
[operation.sides_bent]
leave_out = true
[operation.linings_glued_back]
leave_out = true
[operation.head_drilled]
after = ["strung_once"]
[operation.strung_once]
what = "Try it in the white"
part = "neck"
hands = 30
after = ["top_braces_glued"]
figures = ["string_pull_said"]
"""


@pytest.fixture(scope="module", params=["tarn", "fell", "scree", "mere"])
def opened(request: pytest.FixtureRequest) -> Iterator[tuple[Figures, Work]]:
    with as_file(files("gramil") / "data" / "examples") as examples:
        figures, _, work = opened_with_work(Path(examples / f"{request.param}.toml"), Path(examples / "shop.toml"))
        yield figures, work


def waits(name: str, other: str, work: Work) -> bool:
    """Whether an operation waits for another, step by step."""
    seen, ahead = set[str](), [*work.operations[name].after]
    while ahead:
        each = ahead.pop()
        if each == other:
            return True
        if each not in seen:
            seen.add(each)
            ahead.extend(work.operations[each].after)
    return False


def firsts(sheet: str, work: Work) -> list[str]:
    """The operations of a sheet that wait for no other of its own."""
    own = [each.name for each in work.operations.values() if each.sheet == sheet] or [sheet]
    own = [each for each in own if each in work.operations]
    return [each for each in own if not any(waits(each, other, work) for other in own)]


def test_no_sheet_stands_after_one_whose_work_waits_for_it(opened: tuple[Figures, Work]) -> None:
    figures, work = opened
    names = [sheet.setup.name for sheet in every_sheet(figures, work) if not sheet.setup.closed]
    held = 0
    for earlier, later in combinations(names, 2):
        for one in firsts(earlier, work):
            for other in firsts(later, work):
                assert not waits(one, other, work), f"{earlier} waits for {later}"
                held += waits(other, one, work)
    assert held > 100, "the graph does say something of these sheets"


def test_where_nothing_waits_the_stages_are_the_trades(opened: tuple[Figures, Work]) -> None:
    figures, work = opened
    names = [sheet.setup.name for sheet in setup_sheets(figures, work) if not sheet.setup.closed]
    trade = ON_THE_NECK if "body_built_on" in work.operations else TRADE
    wanted = [name for name in trade if name in names]
    assert sorted(wanted, key=names.index) == wanted
    assert len(wanted) >= 4


def test_what_the_owner_is_told_comes_last_of_a_guitar_that_came_in_too() -> None:
    """No operation of a repair waits for the page on air: it had headed the list."""
    with as_file(files("gramil") / "data" / "examples") as examples:
        figures, _, work = opened_with_work(Path(examples / "moor.toml"), Path(examples / "shop.toml"))
    names = [sheet.setup.name for sheet in setup_sheets(figures, work)]
    assert names.index("as-found") < names.index("handed-back") < names.index("owner-air")


def test_a_sheet_that_is_left_out_is_still_in_the_list(opened: tuple[Figures, Work]) -> None:
    figures, work = opened
    assert {"deepen", "level", "mould"} <= {sheet.setup.name for sheet in setup_sheets(figures, work)}


def test_a_list_of_one_s_own_changes_the_set_of_sheets_and_its_order() -> None:
    """What it leaves out has no sheet, what it adds has one, and what is to wait comes later."""
    with as_file(files("gramil") / "data" / "examples") as examples:
        figures, _, _ = opened_with_work(Path(examples / "tarn.toml"), None)
        instrument = read_description(Path(examples / "tarn.toml")).instrument

    def names(lists: list[tuple[str, str]]) -> list[str]:
        sheets = sheets_of_a_set(figures, needed(work_with(lists), instrument))
        return [sheet.setup.name for sheet in sheets if not sheet.setup.closed]

    usual, own = names([]), names([("own.operations.toml", OWN)])
    assert set(usual) - set(own) == {"sides"}
    assert set(own) - set(usual) == {"strung_once"}
    assert usual.index("neck-head") < usual.index("brace-top")
    assert own.index("brace-top") < own.index("strung_once") < own.index("neck-head")


def test_every_part_that_is_worked_on_has_its_stage() -> None:
    """Else its sheets stand under no heading, and are left out where all is asked for."""
    staged = {part for parts in STAGES for part in parts}
    assert {each.part for each in usual_work().operations.values()} <= staged


def test_reasons_why_no_sheet_is_needed_go_on_a_sentence(opened: tuple[Figures, Work]) -> None:
    """As in "no sheet: the body is not bound": begun small, without a full stop."""
    reasons = [filled(each.setup.closed, lambda _: "1") for each in setup_sheets(*opened) if each.setup.closed]
    assert reasons
    assert [each for each in reasons if each[0].isupper() or each.endswith(".")] == []
