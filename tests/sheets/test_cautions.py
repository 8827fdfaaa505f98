"""A sheet cautions of all that its operation does, and says nothing twice."""

import re
import tomllib
from collections.abc import Callable, Iterator
from importlib.resources import files

import pytest

from gramil.description.reading import parse_description
from gramil.graph import Figures
from gramil.setups.lines import SAID
from gramil.sheets.own_sheet import setup_sheets, sheet_named
from gramil.sheets.sheet_pages import sheet_text
from gramil.shop.operations import Work, needed
from gramil.shop.operations_file import cautions, usual_work, work_with
from gramil.show import Shower

ROWS = tomllib.loads((files("gramil") / "data" / "operations.toml").read_text(encoding="utf-8"))["operation"]
"""The list of operations as it is written."""
NAMES = ("tarn", "fell", "scree", "mere")
SUBJECTS = {
    "dust": r"respirator|Bone dust",
    "router": r"[Cc]limb|cutter's turn",
    "saw": r"over the line of cut",
    "face_down": r"[Ff]ace.down",
    "heat": r"[Hh]ot iron",
    "binding": r"[Hh]ot iron|no iron",
    "solvent": r"rags",
    "glue": r"[Dd]ry run",
    "cyanoacrylate": r"[Cc]yanoacrylate",
    "strings": r"store energy",
    "papers": r"papers before",
    "edge": r"behind the edge",
}
"""What each caution of the list is known by among a page's lines, however it is worded there."""


def lines_of(name: str, figures: Figures, work: Work) -> list[str]:
    """The lines of caution on an operation's page; none where there is no page."""
    sheet = sheet_named(name, figures, work)
    if sheet is None or sheet.setup.closed:
        return []
    return sheet_text(sheet, Shower(figures))["caution"]


def asked(name: str, figures: Figures) -> Iterator[tuple[str, str]]:
    """Each caution of an operation that holds on this instrument, with what it is known by."""
    for key in ROWS[name].get("caution", ()):
        if key != "face_down" or figures["saw_main"].cuts == "face down":
            yield key, SUBJECTS.get(key, re.escape(key))


@pytest.mark.parametrize("name", NAMES)
def test_every_caution_of_an_operation_is_on_its_page_once(name: str, example: Callable[[str], Figures]) -> None:
    figures, tried = example(name), 0
    for operation in ROWS:
        lines = lines_of(operation, figures, usual_work())
        assert len(lines) == len(set(lines)), operation
        for key, known_by in asked(operation, figures) if lines else ():
            tried += 1
            found = [line for line in lines if re.search(known_by, line)]
            assert len(found) >= 1, (operation, key, lines)
            assert len(found) == 1 or key == "binding", (operation, key, found)
    assert tried > 15


def test_what_had_been_lost_is_there(example: Callable[[str], Figures]) -> None:
    figures = example("tarn")
    for operation, words in (
        ("neck_joint_cut", "climb-feed"),
        ("fretted", "Cyanoacrylate"),
        ("markers_set", "Cyanoacrylate"),
        ("thicknessed", "respirator"),
        ("brace_stock_split", "over the line of cut"),
        ("saddle_slot_cut", "climb-feed"),
        ("neck_blank_glued", "Dry run"),
    ):
        assert any(words in line for line in lines_of(operation, figures, usual_work())), operation
    assert not any("Face" in line for line in lines_of("slotted", example("fell"), usual_work()))


@pytest.mark.parametrize("name", NAMES)
def test_a_page_for_several_operations_cautions_of_all_of_them(
    name: str, example: Callable[[str], Figures], text_of: Callable[[str], str]
) -> None:
    figures = example(name)
    work = needed(usual_work(), parse_description(text_of(name)).instrument)
    for sheet in setup_sheets(figures, work):
        lines = sheet_text(sheet, Shower(figures))["caution"]
        sharing = [each.name for each in work.operations.values() if each.sheet == sheet.setup.name]
        for key, known_by in (pair for each in sharing for pair in asked(each, figures)):
            assert sheet.setup.closed or any(re.search(known_by, line) for line in lines), (sheet.setup.name, key)
        assert len(lines) == len(set(lines))


def test_a_makers_own_caution_stands_as_it_is_written(example: Callable[[str], Figures]) -> None:
    own = """
[operation.slotted]
caution = ["dust", "The saw's fence {here} is worn: feel for it."]
[operation.tail_end_cut]
caution = ["Mind the {gap}."]
"""
    work = work_with([("tarn.operations.toml", own)])
    slotted = lines_of("slotted", example("tarn"), work)
    assert "The saw's fence {here} is worn: feel for it." in slotted
    assert sum("respirator" in line for line in slotted) == 1
    assert lines_of("tail_end_cut", example("tarn"), work) == ["Mind the {gap}."]


def test_what_a_page_says_itself_is_a_caution_of_the_list() -> None:
    for sheet, keys in SAID.items():
        of_work = {key for row in ROWS.values() if row.get("sheet") == sheet for key in row.get("caution", ())}
        assert set(keys) <= of_work & set(cautions()), sheet
