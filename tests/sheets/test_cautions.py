"""What to mind stands on every sheet: of each tool, of the dust of what is worked, and of protected wood."""

import re
from collections.abc import Callable, Iterator
from importlib.resources import files

import pytest

from gramil.description.cautions import DUST, MACHINE, NO_WOOD, TOOLS
from gramil.description.reading import parse_description
from gramil.description.wood.stuff import PARTS
from gramil.description.writing import set_key
from gramil.faults import MakersFault
from gramil.formatter import Formatter
from gramil.graph import Figures
from gramil.prints.whole import setups_of
from gramil.sheets.own_sheet import every_sheet, sheet_named
from gramil.sheets.sheet import Sheet
from gramil.sheets.sheet_pages import sheet_text
from gramil.shop.operations import Operation, Work, needed
from gramil.shop.operations_file import usual_work, work_with
from gramil.wood.permits import permit_of

NAMES = ("tarn", "fell", "scree", "mere")
OPERATIONS = usual_work().operations
CUTS = re.compile(r"\b([Ss]aw|[Rr]out|[Pp]lane|[Ss]and|[Dd]rill|[Bb]ore|[Cc]arve|[Ss]crape|[Ff]ile|[Tt]rim|[Cc]ut)\b")
"""Words of an operation by which something is cut."""


def known_by(tool: str) -> str:
    """The first words of a tool's caution, up to its first stop."""
    return re.split(r"[:.;]", TOOLS[tool].caution)[0]


def lines_on(sheet: Sheet) -> list[str]:
    return [line.replace("\N{NO-BREAK SPACE}", " ") for line in sheet_text(sheet, Formatter(sheet.figures))["caution"]]


def lines_of(name: str, figures: Figures, work: Work | None = None) -> list[str]:
    """The lines of caution on an operation's page; none where there is no page."""
    sheet = sheet_named(name, figures, work or usual_work())
    return [] if sheet is None or sheet.setup.closed else lines_on(sheet)


def open_sheets(figures: Figures) -> Iterator[Sheet]:
    return (sheet for sheet in every_sheet(figures, usual_work()) if not sheet.setup.closed)


def sharing(sheet: Sheet) -> list[Operation]:
    return [each for each in OPERATIONS.values() if sheet.setup.name in (each.sheet, each.name)]


@pytest.mark.parametrize("name", OPERATIONS)
def test_every_operation_says_by_what_it_is_done_or_why_there_is_nothing_to_mind(name: str) -> None:
    each = OPERATIONS[name]
    assert bool(each.by) != bool(each.safe), name
    assert set(each.by) <= set(TOOLS)
    assert set(each.on) <= set(PARTS)
    if any(TOOLS[tool].dusty for tool in each.by):
        assert each.on, f"{name} cuts or sands, and does not say what"
    if CUTS.search(each.what) and "Clean" not in each.what:
        assert each.by, f"{name} cuts something by its own words"


@pytest.mark.parametrize("name", NAMES)
def test_every_sheet_cautions_of_each_tool_and_of_each_dust(name: str, example: Callable[[str], Figures]) -> None:
    figures, tried = example(name), 0
    for sheet in open_sheets(figures):
        lines, whole = lines_on(sheet), " ".join(lines_on(sheet))
        operations = sharing(sheet)
        by = {*sheet.setup.by, *(tool for each in operations for tool in each.by)} - set(sheet.setup.instead)
        for tool in by:
            tried += 1
            assert sum(line.startswith(known_by(tool)) for line in lines) == 1, (sheet.setup.name, tool)
        assert (MACHINE in lines) == any(TOOLS[tool].powered for tool in by), sheet.setup.name
        if any(TOOLS[tool].dusty for tool in by):
            worked = {*(each.address for each in sheet.setup.on)} | {
                f'stuff_list["{part}"]' for each in operations for part in each.on
            }
            assert worked, sheet.setup.name
            for stuff in (figures.at(address) for address in worked):
                assert not stuff.wood or (stuff.wood.lower() in whole.lower() and stuff.dust in whole), sheet.setup.name
            assert DUST in whole
        assert len(lines) == len(set(lines)), sheet.setup.name
    assert tried > 100


@pytest.mark.parametrize("name", NAMES)
def test_a_set_up_works_all_that_its_operations_do(name: str, example: Callable[[str], Figures]) -> None:
    """Else what is printed on it would hang on what the graph does not know of."""
    figures = example(name)
    for setup in setups_of(figures):
        own = {each.address for each in setup.on}
        asked = {
            f'stuff_list["{part}"]' for each in OPERATIONS.values() if each.sheet == setup.name for part in each.on
        }
        assert setup.closed or asked <= own, (setup.name, asked - own)
        assert set(setup.instead) <= {
            tool for each in OPERATIONS.values() if each.sheet == setup.name for tool in each.by
        }
        assert set(setup.by) <= set(TOOLS), setup.name


LISTED = {
    "board.wood": ("African blackwood", "slotted"),
    "carve.wood": ("Honduras mahogany", "neck_sawn"),
    "body.side_wood": ("Indian rosewood", "sides_bent"),
    "top.wood": ("Spanish cedar", "plates_flushed"),
    "bridge.wood": ("Brazilian rosewood", "bridge_glued"),
    "bridge_plate.wood": ("cocobolo", "bridge_plate_glued"),
    "head.veneer_wood": ("African padauk", "head_drilled"),
    "body.linings_wood": ("African mahogany", "linings_glued_back"),
    "body.block_wood": ("African mahogany", "neck_joint_cut"),
    "top_binding.wood": ("Indian rosewood", "binding_bent"),
}


def test_protected_wood_is_told_where_it_is_worked_and_as_a_finding(
    text_of: Callable[[str], str], derive_text: Callable[..., Figures]
) -> None:
    text = text_of("tarn")
    for key, (wood, _) in LISTED.items():
        text = set_key(text, key, wood)
    figures = derive_text(text, text_of("shop"))
    told = [Formatter(figures).filled(each.says) for each in figures["finding_permits"]]
    for wood, operation in LISTED.values():
        line = next(line for line in lines_of(operation, figures) if line.startswith(f"{wood} ("))
        assert re.search(
            r"CITES Appendix I+, listed since \w+ \d{4}, looked up in \w+ \d{4}, .*local law comes first", line
        )
        assert any(each.startswith(f"{wood} (") for each in told), wood
    owner = [Formatter(figures).filled(each) for each in figures["setup_owner_air"].notes]
    assert {wood for wood, _ in LISTED.values()} <= {each.split(" (")[0] for each in owner}
    assert any("sensitive" in each for each in owner)


def test_a_name_that_may_be_protected_asks_for_the_species(
    text_of: Callable[[str], str], derive_text: Callable[..., Figures]
) -> None:
    for name in ("rosewood", "ebony", "mahogany", "cedar", "Curly Mahogany"):
        figures = derive_text(set_key(text_of("tarn"), "board.wood", name), text_of("shop"))
        assert any(line.startswith(f"{name}: of which species?") for line in lines_of("slotted", figures)), name
        assert next(each.severity for each in figures["finding_permits"]) == "note"


def test_a_new_description_begins_with_no_protected_wood(derive_text: Callable[..., Figures]) -> None:
    for start in ("new-description", "new-nylon"):
        text = (files("gramil") / "data" / "new-description.toml").read_text("utf-8")
        if start == "new-nylon":
            text = text.rstrip("\n") + "\n" + (files("gramil") / "data" / "new-nylon.toml").read_text("utf-8")
        figures = derive_text(text)
        assert not any(each.permit for each in figures["stuff_list"])


def test_hands_and_tools_that_are_not_used_are_not_cautioned_of(example: Callable[[str], Figures]) -> None:
    assert not any("Face down" in line for line in lines_of("slotted", example("fell")))
    for operation in ("relief_set", "second_set_up"):
        assert not any("rod" in line for line in lines_of(operation, example("mere")))
    assert "bridge plate" not in " ".join(lines_of("pins_fitted", example("mere")))  # it has none
    assert any("never force it" in line.lower() for line in lines_of("relief_set", example("tarn")))


def test_a_bearing_that_nobody_has_leaves_the_ledge_and_the_trimming_to_the_hand(
    text_of: Callable[[str], str], derive_text: Callable[..., Figures]
) -> None:
    bare = re.sub(r"\[\[cutter\]\]\n(?:.+\n)+", "", text_of("shop"))
    figures = derive_text(text_of("tarn"), bare)
    for operation in ("ledge_cut", "plates_flushed"):
        lines = " ".join(lines_of(operation, figures))
        assert "outer" not in lines, operation
        assert "rimmer" not in lines
        assert "behind the edge" in lines


@pytest.mark.parametrize("name", NAMES)
def test_no_cutter_is_fed_with_its_turn_but_for_a_last_hair(name: str, example: Callable[[str], Figures]) -> None:
    for sheet in open_sheets(example(name)):
        for step in map(Formatter(sheet.figures).filled, (*sheet.setup.steps, *lines_on(sheet))):
            assert "climb" not in step.lower(), sheet.setup.name
            if "with the turn" in step and "would" not in step:
                assert "hair" in step or "go with" in step, step


def test_the_neck_joint_has_a_sheet_of_its_own(example: Callable[[str], Figures]) -> None:
    sheet = sheet_named("neck_joint_cut", example("tarn"), usual_work())
    assert sheet is not None
    assert sheet.setup.name == "neck-joint"
    fitted = " ".join(lines_of("neck_fitted", example("tarn")))
    assert "Router" not in fitted


def test_a_makers_own_caution_stands_as_it_is_written_and_his_tools_are_cautioned_of(
    example: Callable[[str], Figures],
) -> None:
    own = """
[operation.slotted]
caution = ["The saw's fence {here} is worn: feel for it."]
by = ["laser"]
[operation.tail_end_cut]
caution = ["Mind the {gap}."]
by = []
on = []
"""
    work = work_with([("tarn.operations.toml", own)])
    slotted = lines_of("slotted", example("tarn"), work)
    assert "The saw's fence {here} is worn: feel for it." in slotted
    assert any(line.startswith("Laser: never left alone") for line in slotted)
    assert lines_of("tail_end_cut", example("tarn"), work) == ["Mind the {gap}."]


@pytest.mark.parametrize(("key", "word"), [("by", "bandsaw"), ("on", "bord")])
def test_a_tool_or_a_part_that_there_is_not_is_refused_with_the_nearest(key: str, word: str) -> None:
    with pytest.raises(MakersFault, match=re.escape(word)) as fault:
        work_with([("tarn.operations.toml", f'[operation.slotted]\n{key} = ["{word}"]\n')])
    assert {"bandsaw": "band saw", "bord": "board"}[word] in str(fault.value)


def test_what_is_no_wood_has_dust_too(example: Callable[[str], Figures]) -> None:
    for operation, stuff in (("nut_made", "bone"), ("markers_set", "shell"), ("index_template_made", "plywood")):
        assert NO_WOOD[stuff][1] in " ".join(lines_of(operation, example("tarn")))
    assert "hot glue pot" in " ".join(lines_of("board_glued", example("tarn")))


def test_bars_of_carbon_are_cautioned_of_where_there_are_any(
    text_of: Callable[[str], str], derive_text: Callable[..., Figures]
) -> None:
    figures = derive_text(set_key(text_of("tarn"), "neck.bars", "2"), text_of("shop"))
    assert NO_WOOD["carbon"][1] in " ".join(lines_of("rod_fitted", figures))


def test_protected_wood_on_a_label_is_told_in_few_words() -> None:
    assert permit_of("African mahogany").brief.startswith("CITES Appendix II, listed since February 2023, looked up in")
    assert permit_of("ebony").brief.startswith("Of which species?")
    assert permit_of("maple").brief == ""
    for name in ("African mahogany", "bubinga", "Brazilian rosewood", "ebony"):
        assert len(permit_of(name).brief) < 160, "it has two lines beside the piece's name"


def test_what_is_to_be_minded_is_printed_where_nothing_is_set_too(example: Callable[[str], Figures]) -> None:
    """Finishing, buffing and fret filing have no figures: their cautions had stood on no sheet."""
    figures, work = example("tarn"), usual_work()
    minded = {name: each for name, each in work.operations.items() if each.by}
    of_a_repair = {
        name for name, each in minded.items() if any(skip.get("repair.described") is False for skip in each.skipped)
    }
    assert not [name for name in minded.keys() - of_a_repair if sheet_named(name, figures, work) is None]
    assert len(of_a_repair) > 10
    assert not [name for name in of_a_repair if sheet_named(name, example("moor"), work) is None]
    assert any("Rags heat up by themselves" in line for line in lines_of("finish_last_coats", figures))
    assert any(line.startswith("Buffing wheel") for line in lines_of("finish_polished", figures))
    assert "Persimmon" in " ".join(lines_of("fret_ends_dressed", figures))
    assert "Walnut" in " ".join(lines_of("sanded_for_finish", figures))


@pytest.mark.parametrize(
    ("instrument", "operations"),
    [
        ("tarn", ("markers_set", "arched", "side_dots_set", "board_trued", "fret_ends_dressed")),
        ("moor", ("old_board_trued", "old_slots_deepened", "new_frets_pressed", "new_fret_ends_dressed")),
    ],
)
def test_whoever_works_a_bound_board_is_told_that_its_binding_burns(
    instrument: str, operations: tuple[str, ...], text_of: Callable[[str], str], derive_text: Callable[..., Figures]
) -> None:
    """Where a drill, a file or abrasive reaches through to the edge: side dots are drilled into the binding."""
    text = re.sub(r"^\[binding\]\n(?:[^\[\n].*\n|#.*\n)*", "", text_of(instrument), flags=re.MULTILINE)
    text += '\n[binding]\nthickness = "1.5 mm"\nwood = "celluloid"\n'
    figures = derive_text(text, text_of("shop"))
    work = needed(usual_work(), parse_description(text).instrument)
    for name in operations:
        said = " ".join(lines_of(name, figures, work))
        assert not said or "celluloid burn fiercely" in said, name
    assert sum(bool(lines_of(name, figures, work)) for name in operations) >= len(operations) - 1
