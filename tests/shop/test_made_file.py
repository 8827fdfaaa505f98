"""What is made already, from its file: read whole or every fault of it, and its measurements in place of figures."""

import math
from collections.abc import Callable
from importlib.resources import files

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gramil.faults import MakersFault
from gramil.graph import Figures
from gramil.shop.made_file import CALLED_NOW, Done, Made, Measured, made_beside, made_text, parse_made, read_made

RECORD = """\
gramil = 1

[made]
units = "mm"

[[done]]
operation = "slotted"
date = 2026-11-02
measured = { board_thickness = "6.38 mm" }

[[done]]
operation = "tapered"
date = 2026-11-05
note = "left edge a hair proud"

[done.measured]
"board_thickness" = 6.31
"core_width_at_fret[7]" = "2 1/16 in"
"""


def test_operations_days_and_notes_are_read() -> None:
    made = parse_made(RECORD)
    assert made.operations == ("slotted", "tapered")
    assert [each.day for each in made.done] == ["2026-11-02", "2026-11-05"]
    assert made.done[1].note == "left edge a hair proud"


def test_an_operation_that_was_called_otherwise_is_read_by_its_names_of_now() -> None:
    """As the store's fifth migration has it: both edges of the body were one operation."""
    text = 'gramil = 1\n[[done]]\noperation = "body_bound"\ndate = 2026-05-02\nmeasured = { rim_height = "4 mm" }\n'
    done = parse_made(text).done
    assert [each.operation for each in done] == ["top_bound", "back_bound"]
    assert [len(each.measured) for each in done] == [1, 0]
    migration = (files("gramil") / "data" / "migrations" / "0005_edges_bound_apart.sql").read_text("utf-8")
    for old, new in CALLED_NOW.items():
        assert all(f"'{name}'" in migration for name in (old, *new))


def test_the_latest_measurement_takes_the_figure_s_place(figures: Figures) -> None:
    made = parse_made(RECORD).pinned(figures)
    assert made["board_thickness"] == 6.31
    assert math.isclose(made["core_width_at_fret"][7], 52.3875)  # 2 1/16 in = 33/16 of 25.4 mm
    assert made.pins["board_thickness"].when == "2026-11-05"
    assert made.drawn("board_thickness") == figures["board_thickness"]


def test_days_decide_which_is_latest_not_the_order_in_the_file(figures: Figures) -> None:
    text = RECORD.replace("2026-11-02", "2026-12-24")
    assert parse_made(text).pinned(figures)["board_thickness"] == 6.38


def test_bare_lengths_are_in_the_file_s_unit(figures: Figures) -> None:
    text = RECORD.replace('units = "mm"', 'units = "in"').replace("6.31", "0.25")
    assert parse_made(text).pins(figures)["board_thickness"].value == pytest.approx(6.35)


def test_every_fault_is_told_with_its_line() -> None:
    text = RECORD.replace("operation = ", "operaton = ", 1).replace("2026-11-05", '"tomorrow"')
    with pytest.raises(MakersFault) as caught:
        parse_made(text.replace('"mm"', '"cm"', 1), "tarn.made.toml")
    said = [(fault.line, fault.where) for fault in caught.value.faults]
    assert said == [(4, "made.units"), (6, "done.1"), (7, "done.1.operaton"), (13, "done.2.date")]
    assert "operation" in caught.value.faults[2].remedy


def test_addresses_that_lead_nowhere_and_values_of_another_kind_are_all_told(figures: Figures) -> None:
    text = RECORD.replace("core_width_at_fret[7]", "core_width_at_fret[99]").replace('"6.38 mm"', '"12 deg"')
    with pytest.raises(MakersFault) as caught:
        parse_made(text, "tarn.made.toml").pins(figures)
    assert [fault.line for fault in caught.value.faults] == [9, 18]


def test_a_whole_row_of_figures_is_not_one_measurement(figures: Figures) -> None:
    with pytest.raises(MakersFault, match="not one number"):
        parse_made(RECORD.replace("core_width_at_fret[7]", "core_width_at_fret")).pins(figures)


def test_what_is_counted_is_not_measured(example: Callable[[str], Figures]) -> None:
    """A board measured as having 17 frets was one of 19 with 17: nothing that hangs on it could be worked out."""
    text = 'gramil = 1\n[[done]]\noperation = "slotted"\nmeasured = { scale_frets = 17 }\n'
    with pytest.raises(MakersFault, match="counted, not measured"):
        parse_made(text).pins(example("tarn"))


@pytest.mark.parametrize("text", ["", "gramil = 2", "done = 3", "[[done", "gramil = 1\ndone = [1]", "made = 1"])
def test_what_is_no_record_is_told_not_raised(text: str) -> None:
    with pytest.raises(MakersFault):
        parse_made(text)


def test_a_missing_file_is_a_message(tmp_path) -> None:
    with pytest.raises(MakersFault, match="cannot be read"):
        read_made(made_beside(tmp_path / "tarn.toml"))


WORDS = st.text(st.characters(exclude_categories=["Cs"]), min_size=1, max_size=20)
VALUES = st.one_of(WORDS, st.floats(allow_nan=False, allow_infinity=False), st.integers(-(10**9), 10**9))
DONE = st.builds(
    Done,
    WORDS,
    st.one_of(st.just(""), st.dates().map(str), st.datetimes().map(lambda moment: moment.isoformat())),
    st.text(st.characters(exclude_categories=["Cs"]), max_size=40),
    st.dictionaries(WORDS, VALUES, max_size=4).map(lambda found: tuple(Measured(*each) for each in found.items())),
)


@given(st.lists(DONE, max_size=4), st.sampled_from(["mm", "in"]))
def test_a_record_written_and_read_is_the_same(done: list[Done], units) -> None:
    back = parse_made(made_text(Made(tuple(done), units)))
    without_lines = [
        Done(each.operation, each.day, each.note, tuple(Measured(one.address, one.written) for one in each.measured))
        for each in back.done
    ]
    assert (without_lines, back.units) == (done, units)
