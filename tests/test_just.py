"""A maker's day in one command: the templates and sheets that are chosen, one PDF a paper, and nothing else."""

import io
from importlib.resources import as_file, files
from pathlib import Path

import pikepdf
import pytest

from gramil.cli.options import opened_with_work
from gramil.cli.pack import write_pack
from gramil.faults import MakersFault
from gramil.formatter import Formatter, formatter_of
from gramil.graph import derive
from gramil.pack import PLANS
from gramil.print_choice import Choices, PrintChoice, choices, chosen_makers
from gramil.writers.files import write_files


@pytest.fixture(scope="module")
def opened() -> tuple[Formatter, Choices]:
    with as_file(files("gramil") / "data" / "examples") as examples:
        figures, formatter, work = opened_with_work(Path(examples / "tarn.toml"), Path(examples / "shop.toml"))
    return formatter, choices(figures, formatter, work)


def sizes_in(pdf: bytes) -> list[tuple[int, int]]:
    """Width and height of each page, in whole mm, the shorter side first."""
    with pikepdf.open(io.BytesIO(pdf)) as document:
        boxes = [[float(each) * 25.4 / 72 for each in page.mediabox] for page in document.pages]
    return [tuple(sorted((round(right - left), round(top - low)))) for left, low, right, top in boxes]  # type: ignore[misc]


def made(opened: tuple[Formatter, Choices], chosen: PrintChoice, paper: str, sheets_on: str = "") -> dict[str, bytes]:
    formatter, known = opened
    makers = chosen_makers(formatter, known, chosen, paper, sheets_on=sheets_on)
    return {name: make() for name, make in makers.items()}


def test_three_sheets_and_a_template_are_one_file_where_they_share_a_paper(opened: tuple[Formatter, Choices]) -> None:
    chosen = opened[1].named(["neck-gauges", "slot", "taper", "ledge"])
    pdfs = made(opened, chosen, "letter", "letter")
    assert list(pdfs) == ["print/chosen-letter.pdf"]
    pages = sizes_in(pdfs["print/chosen-letter.pdf"])
    assert set(pages) == {(216, 279)}
    with pikepdf.open(io.BytesIO(pdfs["print/chosen-letter.pdf"])) as document:
        assert document.Root.ViewerPreferences.PrintScaling == "/None"
        words = b"".join(page.Contents.read_bytes() for page in document.pages[:1])
    assert words
    assert 5 <= len(pages) <= 8


def test_a_template_is_found_by_its_name_alone(opened: tuple[Formatter, Choices]) -> None:
    known = opened[1]
    assert len(known.drawings) > 5
    for each in known.drawings:
        assert known.drawings_named((each.name,)) == (each,)


def test_whoever_names_one_template_does_not_wait_for_the_others(opened: tuple[Formatter, Choices]) -> None:
    shared, work = opened[1].figures, opened[1].work
    figures = derive(shared.graph, shared.base, shared.origins, shared.pins, shared.lengths)  # nothing worked out yet
    known = choices(figures, formatter_of(figures), work)
    assert (known.named(["mould"]) | known.of_parts(())).templates == {"mould"}
    assert "drawing_mould" in known.drawn.known
    assert not {"drawing_face_plan", "drawing_plan_face", "drawing_top_inside"} & set(known.drawn.known)


def test_a_file_for_each_paper_where_they_do_not(opened: tuple[Formatter, Choices]) -> None:
    pdfs = made(opened, opened[1].named(["neck-gauges", "slot"]), "a3", "letter")
    assert {name: set(sizes_in(pdf)) for name, pdf in pdfs.items()} == {
        "print/chosen-letter.pdf": {(216, 279)},
        "print/chosen-a3.pdf": {(297, 420)},
    }


def test_the_same_choice_is_the_same_bytes(opened: tuple[Formatter, Choices]) -> None:
    chosen = opened[1].named(["neck-gauges", "taper"])
    assert made(opened, chosen, "a4", "a4") == made(opened, chosen, "a4", "a4")


def test_one_template_alone_asks_for_no_sheets(opened: tuple[Formatter, Choices]) -> None:
    assert opened[1].named(["neck-gauges"]) == PrintChoice(frozenset({"neck-gauges"}), frozenset())


def test_an_operation_means_its_sheet(opened: tuple[Formatter, Choices]) -> None:
    assert opened[1].named(["slotted"]) == PrintChoice(frozenset(), frozenset({"slot"}))


def test_a_part_means_its_templates_and_its_sheets(opened: tuple[Formatter, Choices]) -> None:
    chosen = opened[1].of_parts(["bridge"])
    assert chosen.templates == {"bridge"}
    assert "bridge" in chosen.sheets
    assert "slot" not in chosen.sheets


def test_all_is_every_template_and_every_sheet_but_the_plans(opened: tuple[Formatter, Choices]) -> None:
    _, known = opened
    assert {each.name for each in known.templates} - known.all.templates == set(PLANS)
    assert known.all.sheets == {each.name for each in known.sheets}


def test_operations_that_have_no_sheet_are_left_out(opened: tuple[Formatter, Choices]) -> None:
    assert opened[1].of_operations(["slotted", "wood_chosen"]) == PrintChoice(frozenset(), frozenset({"slot"}))


def test_a_name_or_a_part_that_there_is_not_says_the_nearest(opened: tuple[Formatter, Choices]) -> None:
    with pytest.raises(MakersFault, match="neck-gauges"):
        opened[1].named(["neck-gauge"])
    with pytest.raises(MakersFault, match="board"):
        opened[1].of_parts(["bord"])


def test_what_is_chosen_goes_beside_an_earlier_pack(opened: tuple[Formatter, Choices], tmp_path: Path) -> None:
    formatter, known = opened
    earlier = {"cut/board.dxf": b"one", "print/chosen-a4.pdf": b"of yesterday"}
    write_files(tmp_path, earlier)
    makers = chosen_makers(formatter, known, known.named(["neck-gauges"]), "a4")
    write_pack(makers, tmp_path, beside=True)
    assert (tmp_path / "cut" / "board.dxf").read_bytes() == b"one"
    assert (tmp_path / "print" / "chosen-a4.pdf").read_bytes() != earlier["print/chosen-a4.pdf"]
