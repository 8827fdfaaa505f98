"""Whatever a sheet tells the hands to take up, its caution stands on the same sheet."""

import re
from collections.abc import Callable, Iterator

import pytest

from gramil.description.cautions import TOOLS
from gramil.formatter import Formatter
from gramil.graph import Figures
from gramil.prints.pages import safe
from gramil.sheets.own_sheet import every_sheet, sheets_of_a_set
from gramil.sheets.sheet import Sheet
from gramil.sheets.sheet_pages import sheet_text
from gramil.shop.operations_file import usual_work

SAWS = {"table saw", "slotting saw", "saw from above", "saw in the old kerf", "hand saw", "band saw"}
WORDS = {
    r"\b[Kk]nife\b|\b[Ss]core[ds]?\b": {"knife"},
    r"\b[Ss]aw(s|ed)?\b(?!'s)": SAWS,
    r"\b[Rr]out(er)?\b": {"router", "router table", "trimmer"},
    r"\b[Tt]rimmer\b": {"trimmer"},
    r"\b([Dd]rill|[Bb]ore)\b": {"drill press", "hand drill", "reamer"},
    r"\b[Ss]crape[rs]?\b": {"scraper"},
    r"(?<!never )\b([Ff]ile|[Rr]asp)\b": {"files", "fret files"},
    r"\b([Pp]lane|[Pp]are|[Cc]hisel|[Ss]pokeshave)\b": {"edge tools"},
    r"\b[Ss]and\b|\b[Aa]brasive\b": {"sanding", "drum sander", "edge sander"},
    r"\bGlue\b|\bglue it\b": {"glue"},
    r"\b[Ww]arm\b": {"bending iron", "warm plastic"},
    r"\bPress or hammer\b": {"fret press"},
    r"\bthen bevel\b": {"fret files"},
    r"\bHalve\b": SAWS,
    r"\b[Tt]urn the rod\b|\bTry the rod\b": {"rod"},
}
"""Words of the steps and of the list of tools, each with the tools of which one is then cautioned of."""
NO_CUT = {"owner-air"}
"""Sheets on which no work is done: what wants a tool is sent to a repairer."""


def told(sheet: Sheet) -> Iterator[str]:
    """The steps and the tools of a sheet, as they are printed."""
    yield from map(Formatter(sheet.figures).filled, (*sheet.setup.steps, *sheet.setup.tools))


@pytest.mark.parametrize("name", ["tarn", "fell", "scree", "mere"])
def test_a_sheet_cautions_of_every_tool_that_its_steps_take_up(name: str, example: Callable[[str], Figures]) -> None:
    sheets = [each for each in every_sheet(example(name), usual_work()) if not each.setup.closed]
    tried, missed = 0, []
    for sheet in sheets:
        by = {*sheet.setup.by, *sheet.also.by}
        for text in told(sheet) if sheet.setup.name not in NO_CUT else ():
            for word, tools in WORDS.items():
                if re.search(word, text):
                    tried += 1
                    missed += [] if tools & by else [(sheet.setup.name, word, text)]
    assert tried > 40
    assert not missed


def test_only_the_moulds_own_stuff_is_told_where_the_mould_is_made(example: Callable[[str], Figures]) -> None:
    """Its sheet had the dust of the sides, of which none is cut there."""
    sheet = next(each for each in every_sheet(example("tarn"), usual_work()) if each.setup.name == "mould")
    assert {each.address for each in (*sheet.setup.on, *sheet.also.on)} == {'stuff_list["plywood"]'}
    assert "layer by layer" in " ".join(told(sheet))


def test_a_pull_from_estimated_weights_is_asked_for_no_nearer_than_it_is_told(
    example: Callable[[str], Figures],
) -> None:
    """Its box had asked for 684.8 N under a page that says about 680."""
    sheet = next(each for each in every_sheet(example("tarn"), usual_work()) if each.setup.name == "strings")
    found = sheet_text(sheet, Formatter(sheet.figures))
    box = next(each for each in found["boxes"] if "all strings" in each["what"].lower())
    assert re.fullmatch(r"about \d+0 N", box["wanted"].replace("\N{NO-BREAK SPACE}", " "))
    assert box["unit"] == "N"


@pytest.mark.parametrize("name", ["tarn", "mere"])
def test_a_printed_set_cautions_of_all_work_of_the_instrument(name: str, example: Callable[[str], Figures]) -> None:
    """Finishing has no set-up: whoever printed the pack had no word of rags on any of its pages."""
    figures, work = example(name), usual_work()
    pages = [each for each in sheets_of_a_set(figures, work) if not each.setup.closed]
    said = {line for each in pages for line in sheet_text(each, Formatter(figures))["caution"]}
    left_out = {"rod"} if name == "mere" else set()
    by = {tool for each in work.operations.values() if not each.sheet for tool in each.by} - left_out
    assert not [tool for tool in by if safe(TOOLS[tool].caution) not in said]
    assert "solvents" in by
