"""Sheets stand in the order of the work: never one after another whose work waits for its own."""

from collections.abc import Iterator
from importlib.resources import as_file, files
from itertools import combinations
from pathlib import Path

import pytest

from gramil.cli.options import opened_with_work
from gramil.graph import Figures
from gramil.sheets.own_sheet import every_sheet, setup_sheets
from gramil.sheets.work_order import STAGES
from gramil.shop.operations import Work
from gramil.shop.operations_file import usual_work

TRADE = ("layout", "neck-blank", "sides", "brace-top", "brace-back", "flush", "bridge", "strings", "owner-air")
"""A sheet of each stage as the trade takes them up: board, neck, sides, top, back, closing, bridge, setting up."""


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
    wanted = [name for name in TRADE if name in names]
    assert sorted(wanted, key=names.index) == wanted
    assert len(wanted) >= 4


def test_a_sheet_that_is_left_out_is_still_in_the_list(opened: tuple[Figures, Work]) -> None:
    figures, work = opened
    assert {"deepen", "level", "mould"} <= {sheet.setup.name for sheet in setup_sheets(figures, work)}


def test_every_part_that_is_worked_on_has_its_stage() -> None:
    """Else its sheets stand under no heading, and are left out where all is asked for."""
    staged = {part for parts in STAGES for part in parts}
    assert {each.part for each in usual_work().operations.values()} <= staged
