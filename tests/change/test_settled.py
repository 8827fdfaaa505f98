"""What measurements settle: the input takes the value that gives the reading, and what is later hangs on it."""

from collections.abc import Callable, Iterator
from importlib.resources import files
from pathlib import Path

import pytest
from click.testing import CliRunner
from tests.walks import these

from gramil.change.made import judge
from gramil.change.made_rows import Fixed, operations
from gramil.change.off_rows import _known
from gramil.change.settled import MEMBER, off, readings, sentence, settled, settled_by_readings
from gramil.change.settled_text import written_into
from gramil.cli.done import command as done
from gramil.description.base import base_name, keys_of
from gramil.description.reading import parse_description
from gramil.graph import Figures, Pin
from gramil.prints.whole import whole_graph
from gramil.quantities import axes_of, unit_of
from gramil.sheets.own_sheet import figures_for_sheet, sheet_named
from gramil.shop.operations_file import usual_work

EXAMPLES = Path(str(files("gramil") / "data" / "examples"))
NAMES = ("tarn", "fell", "scree", "mere")
LITTLE = 0.04
"""Less than is taken off the frets when they are levelled, so that no input is driven under nothing by it."""
NOT_SETTLED = {
    "heights_relief": "it is set anew at the rod as often as is wanted: what was read is never what is wanted",
    **dict.fromkeys(
        ("heights_action_bass", "heights_action_treble", "heights_nut_bass", "heights_nut_treble"),
        "it is set anew as often as is wanted, and read as a guitar goes back: what was read is never what is wanted",
    ),
    "top_radius": "it is the dish's, and read off no instrument",
    "body_back_radius": "it is the dish's, and read off no instrument",
    "wire_crown_height": "it is the wire's: another wire is another name in the shop",
    "wire_tang_thickness": "it is the wire's",
    "wire_bead_thickness": "it is the wire's",
    "wire_tang_depth": "it is the wire's",
    "shop_pin_offset": "it is the rail's, in the shop's own description",
}

STRAY = ("board_thickness", "head_thickness", "saddle_thickness", "bridge_thickness")
"""What may be read at any work, whether or not its sheet asks for it."""
HANGS_ON_OTHERS = {
    ("mere", "plank_shaft"): "the body is built on the neck, which ends with its foot and has no tenon",
    **dict.fromkeys(
        [(name, f'opening_list["soundhole"].{size}') for name in NAMES for size in ("along", "across")],
        "it is round, and both are its diameter",
    ),
}


def settling() -> Iterator[tuple[str, Fixed]]:
    """Every row that settles an input, with its operation."""
    for name, row in operations().items():
        yield from ((name, fixed) for fixed in row.fixes if fixed.settles_any)


def first_of_each() -> Iterator[Fixed]:
    yield from {(fixed.figure, fixed.field): fixed for _, fixed in settling()}.values()


def rows_of(fixed: Fixed, figures: Figures) -> Iterator[tuple[str, float]]:
    """The first and the last row of a figure, as it is drawn."""
    found = [(address, float(value)) for address, (value, _) in _known(fixed, figures, figures[fixed.figure])]
    yield from dict([*found[:1], *found[-1:]]).items()


def read(drawn: Figures, address: str, value: float, at: str = "") -> Figures:
    return settled(drawn.with_pins({address: Pin(value, "2026-01-05", at)}))


def test_a_figure_settles_one_key_wherever_it_is_read() -> None:
    found: dict[tuple[str, str], set[tuple[str, ...]]] = {}
    for row in operations().values():
        for fixed in row.fixes:
            of = dict(fixed.settles_of or {})
            found.setdefault((fixed.figure, fixed.field), set()).add((fixed.settles, fixed.settles_else, *of.values()))
    assert [each for each, keys in found.items() if len(keys) > 1] == []
    for _, fixed in settling():
        assert all(map(base_name, (fixed.settles_of or {}).values()))
        keys = [fixed.settles.replace(MEMBER, name) for name in ("arm", "rib") if fixed.settles]
        assert all(base_name(key.partition(".")[0] if key == fixed.settles and fixed.field else key) for key in keys)


def test_every_length_of_the_description_that_work_fixes_is_settled_or_says_why_not() -> None:
    graph = whole_graph()
    for row in operations().values():
        for fixed in row.fixes:
            kind = graph.annotation(fixed.figure)
            unit = unit_of(kind) if fixed.figure in graph.inputs and not axes_of(kind) else None
            if unit is not None and unit.symbol == "mm":
                assert bool(fixed.settles) != (fixed.figure in NOT_SETTLED), fixed.figure
                if fixed.settles:
                    assert fixed.settles in keys_of(fixed.figure), fixed.figure
            if fixed.settles_at_zero:
                assert base_name(fixed.settles_at_zero)
                assert axes_of(kind) == ("fret",), fixed.figure


@pytest.mark.parametrize("name", NAMES)
def test_the_settled_input_gives_the_reading_back(name: str, example: Callable[[str], Figures]) -> None:
    drawn, tried = example(name), 0
    for fixed in first_of_each():
        for address, value in rows_of(fixed, drawn):
            for by in (LITTLE, -LITTLE):
                made = drawn.with_pins({address: Pin(value + by, "today")})
                if (name, address) in HANGS_ON_OTHERS:
                    assert settled_by_readings(made) == ()
                    continue
                (each,) = settled_by_readings(made)
                if each.value is None:  # the tenon that there is not, a strip of no thickness
                    assert value + by < 0 or drawn.at(each.address) == 0, address
                    continue
                back = drawn.with_pins({each.address: Pin(each.value, "")}).at(address)
                assert back == pytest.approx(value + by, abs=1e-6), address
                tried += 1
    assert tried > 80


@pytest.mark.parametrize("name", ["tarn", "scree"])
def test_the_sheet_of_its_own_operation_keeps_its_target(name: str, example: Callable[[str], Figures]) -> None:
    drawn = example(name)
    for operation, fixed in settling():
        for address, value in rows_of(fixed, drawn):
            wanted = figures_for_sheet(operation, read(drawn, address, value - LITTLE, operation), usual_work())
            assert wanted.at(address) == pytest.approx(value, abs=1e-9), (operation, address)


def test_a_blank_that_came_out_thin_is_a_thinner_board(example: Callable[[str], Figures]) -> None:
    """6.50 is to be planed to 6.30 in the end; 6.30 planed makes 6.10 of it, and the neck's plane lies by that."""
    drawn = example("tarn")
    made = read(drawn, "blank_thickness", 6.30, "thicknessed")
    assert drawn["board_thickness"] == 6.3
    assert made["board_thickness"] == pytest.approx(6.10, abs=1e-9)
    assert made["thickness_at_crest"][12] == pytest.approx(drawn["thickness_at_crest"][12] - 0.2, abs=1e-3)
    assert made.pins["board_thickness"].settled_by == "blank_thickness"
    assert figures_for_sheet("slotted", made, usual_work())["board_thickness"] == pytest.approx(6.10)
    assert figures_for_sheet("arched", made, usual_work())["board_thickness"] == pytest.approx(6.10)
    assert figures_for_sheet("thicknessed", made, usual_work())["board_thickness"] == 6.3
    (judged,) = judge({"thicknessed": made}, drawn)
    assert judged.standing == "rework"
    assert judged.remedy.startswith("Take the board that much thinner")
    drawn_so = example("tarn").with_base({**drawn.base, "board_thickness": 6.10})
    (kept,) = judge({"thicknessed": made}, drawn_so)
    assert kept.standing == "still right"


def test_the_last_reading_of_an_input_counts(example: Callable[[str], Figures]) -> None:
    drawn = example("tarn")
    blank = Pin(6.30, "2026-01-05", "thicknessed")
    arched = Pin(6.05, "2026-02-01", "arched")
    made = settled(drawn.with_pins({"board_thickness": arched, "blank_thickness": blank}))
    assert made["board_thickness"] == 6.05
    later = settled(drawn.with_pins({"board_thickness": Pin(6.05, "2026-01-01"), "blank_thickness": blank}))
    assert later["board_thickness"] == pytest.approx(6.10)
    assert readings(later.pins) == {"board_thickness": Pin(6.05, "2026-01-01"), "blank_thickness": blank}
    assert settled(later).pins == later.pins


def test_what_no_value_gives_is_said(example: Callable[[str], Figures]) -> None:
    """Crowns higher than the wire's own 1.15 cannot come of levelling."""
    drawn = example("tarn")
    made = drawn.with_pins({"crown_height": Pin(1.30, "today", "frets_levelled")})
    (each,) = off(made, ["crown_height"])
    said = sentence(each, made, "mm").replace("\N{NO-BREAK SPACE}", " ")
    assert said == "No heights.dressing_loss gives crown_height = 1.30 mm: the description cannot follow it."
    assert "heights_dressing_loss" not in settled(made).pins


def test_it_is_written_where_it_stands(example: Callable[[str], Figures]) -> None:
    text = (EXAMPLES / "tarn.toml").read_text(encoding="utf-8")
    instrument = parse_description(text).instrument
    drawn = example("tarn")
    made = drawn.with_pins(
        {
            "blank_thickness": Pin(6.30, "today"),
            'brace_list["X treble"].height': Pin(12.4, "today"),
            "body_wall": Pin(2.1, "today"),
        }
    )
    found = off(made, [*made.pins])
    assert [each.key for each in found] == ["board.thickness", "brace.height"]
    new = written_into(text, instrument, found)
    changed = [
        (one.split("#")[0].strip(), other.split("#")[0].strip())
        for one, other in zip(text.splitlines(), new.splitlines(), strict=True)
        if one != other
    ]
    assert changed == [("thickness = 6.3", "thickness = 6.1"), ("height = 13", "height = 12.4")]


def test_an_inch_file_gets_inches(example: Callable[[str], Figures]) -> None:
    text = (EXAMPLES / "fell.toml").read_text(encoding="utf-8")
    made = example("fell").with_pins({"body_wall": Pin(2.0, "today")})
    new = written_into(text, parse_description(text).instrument, off(made, ["body_wall"]))
    assert parse_description(new).instrument.body.wall == pytest.approx(2.0, abs=0.001)


def test_done_writes_it_when_it_is_asked_to(tmp_path: Path) -> None:
    for name in ("tarn.toml", "shop.toml"):
        (tmp_path / name).write_bytes((EXAMPLES / name).read_bytes())
    file, shop = str(tmp_path / "tarn.toml"), str(tmp_path / "shop.toml")
    ask = ["thicknessed", file, "--shop", shop, "--measured", "blank_thickness=6.3 mm"]
    told = CliRunner().invoke(done, ask)
    assert told.exit_code == 0, told.output
    line = "As made board.thickness is 6.10 mm, described as 6.30 mm: set board.thickness to 6.10 mm."
    assert line in told.output.replace("\N{NO-BREAK SPACE}", " ")
    assert (tmp_path / "tarn.toml").read_bytes() == (EXAMPLES / "tarn.toml").read_bytes()
    (tmp_path / "tarn.made.toml").unlink()
    told = CliRunner().invoke(done, [*ask, "--write"])
    assert "tarn.toml is changed." in told.output
    written = (tmp_path / "tarn.toml").read_text(encoding="utf-8")
    assert parse_description(written).instrument.board.thickness == 6.1


def test_a_board_read_at_two_frets_is_as_wide_between_them_as_its_straight_edges_make_it(
    example: Callable[[str], Figures],
) -> None:
    """44.90 at the zero line and 55.50 at fret 12, half of 630 on: the neck is carved to that, at every station.

    By hand, fret 1 at 630 - 630 / 2 ** (1 / 12) = 35.359: 44.90 + 35.359 / 315 * 10.60 = 46.090.
    """
    for first in ("board_width_at_fret[0]", "board_width_at_fret[12]"):
        read_at = {"board_width_at_fret[0]": 44.9, "board_width_at_fret[12]": 55.5}
        pins = {each: Pin(value, "2026-01-05" if each == first else "2026-01-06") for each, value in read_at.items()}
        made = settled(example("tarn").with_pins(pins))
        assert made["board_width_at_fret"][1] == pytest.approx(46.090, abs=1e-3)
        assert made["board_nut_length"] == pytest.approx(44.9, abs=1e-3)
        assert (made["nut_width"], made["board_width"]) == pytest.approx((44.9, 55.5))


# ------------------------------------------------------------------------------------ targets stay targets


def targets(operation: str, drawn: Figures) -> set[str]:
    """What a sheet is to bring about: what it asks for, and what its work fixes and no earlier work has settled."""
    sheet = sheet_named(operation, drawn, usual_work())
    asked = {str(each) for each in (*sheet.setup.boxes, *sheet.measure)} if sheet else set()
    fixed = {each.figure for each in operations()[operation].fixes if not each.settles and not each.field}
    return asked | fixed


def address_in(figure: str, drawn: Figures) -> str:
    """Where a figure's own number or its second rows stand; empty where it has no number."""
    value = drawn.at(figure)
    if isinstance(value, bool | str | tuple) or getattr(value, "size", 1) == 0:
        return ""
    row = ", ".join("1" * getattr(value, "ndim", 0))
    return figure + (f"[{row}]" if row else "")


@pytest.mark.parametrize("name", these(["tarn", "scree"], ["scree"]))
def test_no_reading_becomes_a_target(name: str, example: Callable[[str], Figures]) -> None:
    """Every figure that is read somewhere, off, at each work that fixes it and apart from any: each sheet that is to
    bring it about says what it said."""
    drawn, tried = example(name), 0
    wants = {operation: targets(operation, drawn) for operation in operations()}
    for figure in sorted(set().union(*wants.values())):
        address = address_in(figure, drawn)
        mine = [operation for operation, names in wants.items() if figure in names]
        for at in ("", *mine) if address else ():
            made = read(drawn, address, float(drawn.at(address)) + 0.3, at)
            for operation in mine:
                is_wanted = figures_for_sheet(operation, made, usual_work()).at(address)
                assert is_wanted == pytest.approx(drawn.at(address), nan_ok=True), (address, at, operation)
                tried += 1
    assert tried > 150


def test_what_is_noted_with_a_work_is_none_of_its_targets(example: Callable[[str], Figures]) -> None:
    """Whatever is read at a work, asked for by its sheet or not: its sheet and those it waited for go by what is drawn.

    What a sheet asks for is kept from it for that reason alone, so that what it does not ask for is read here.
    """
    drawn = example("scree")
    for operation, work in usual_work().operations.items():
        figure = next(each for each in STRAY if each not in targets(operation, drawn))
        made = drawn.with_pins({figure: Pin(drawn[figure] + 0.3, "today", operation)})
        for at in (operation, *work.after):
            assert figures_for_sheet(at, made, usual_work())[figure] == drawn[figure], (figure, at, operation)


def test_a_second_set_up_wants_the_relief_of_the_first(example: Callable[[str], Figures]) -> None:
    drawn = example("tarn")
    made = read(drawn, "heights_relief", drawn["heights_relief"] + 0.15, "relief_set")
    assert figures_for_sheet("second_set_up", made, usual_work())["heights_relief"] == drawn["heights_relief"]


def test_a_strip_that_was_read_is_a_binding_described_so(
    example: Callable[[str], Figures], text_of: Callable[[str], str], derive_text: Callable[..., Figures]
) -> None:
    """What is bent, and the channels still to cut, go by the strips that there are."""
    drawn = example("tarn")
    read_off = {"thickness": 1.8, "height": 5.6}
    pins = {f'strip_list["top binding"].{field}': Pin(value, "2026-01-05") for field, value in read_off.items()}
    made = settled(drawn.with_pins(pins))
    instrument = parse_description(text_of("tarn")).instrument
    written = written_into(text_of("tarn"), instrument, settled_by_readings(made))
    binding = parse_description(written).instrument.top_binding
    assert (binding.thickness, binding.height) == pytest.approx((1.8, 5.6))
    wanted = derive_text(written, text_of("shop"))
    for name, fields in (("strip_list", ("thickness", "bend")), ("channel_cuts", ("inset", "step", "depth"))):
        one, other, before = (
            [getattr(row, each) for row in of[name] for each in fields] for of in (made, wanted, drawn)
        )
        assert one == pytest.approx(other, nan_ok=True) != before
