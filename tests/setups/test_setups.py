"""Set-ups: every figure on them exists, no number is typed into their words, and what is not needed says why."""

import math
import re
from collections.abc import Callable
from typing import Any

import pytest

from gramil.description.reading import parse_description, parse_shop
from gramil.formatter import Formatter
from gramil.graph import Figures
from gramil.prints.came_in import is_of
from gramil.prints.whole import figures_of, names_of
from gramil.reference import in_row
from gramil.setups.setup import Setup, figures_on

from .conftest import SHOP, TARN

Trial = Callable[..., Figures]
ORDER = [
    "blank",
    "layout",
    "template",
    "slot",
    "taper",
    "ledge",
    "board-binding",
    "arch",
    "deepen",
    "level",
    "wire",
    "markers",
    "caliper",
]


def setups(figures: Figures) -> dict[str, Setup]:
    found = [figures[name] for name in names_of(figures, "setup_") if is_of(figures, name)]
    return {each.name: each for each in sorted(found, key=lambda each: each.order)}


BUILT_ON = {"heel-slots", "build-board", "built-on"}
"""What only a body needs that is built on its neck; none of these is."""

BODY_HAS_NONE = frozenset(("bevel", "bevel-block", "bevel-veneer", "openings", "ports"))
"""Set-ups for what Tarn's body has not: bevels, holes besides a round one, ports."""


def closed(figures: Figures) -> set[str]:
    found = {name for name, each in setups(figures).items() if each.closed}
    assert found >= BUILT_ON | BODY_HAS_NONE
    return found - BUILT_ON - BODY_HAS_NONE


def test_the_work_is_in_order(any_board: Figures) -> None:
    orders = {name: each.order for name, each in setups(any_board).items()}
    assert list(orders)[: len(ORDER)] == ORDER
    assert [orders[name] for name in ORDER] == list(range(1, len(ORDER) + 1))
    assert len(set(orders.values())) == len(orders)


def test_every_address_leads_to_a_figure(any_board: Figures) -> None:
    formatter = Formatter(any_board)
    for setup in setups(any_board).values():
        for address in [each.address for each in figures_on(setup)]:
            assert formatter.text(address) not in ("", "not known") or address.startswith("stuff_list"), (
                setup.name,
                address,
            )


def test_no_number_is_typed_into_the_words(any_board: Figures) -> None:
    for setup in setups(any_board).values():
        columns = [text for table in setup.tables for text in (table.title, *(head for head, _ in table.columns))]
        for text in (*setup.texts, *columns):
            assert not re.search(r"\d", re.sub(r"\{[^{}]+\}", "", str(text))), text


def test_an_open_set_up_can_be_worked_from(any_board: Figures) -> None:
    for setup in setups(any_board).values():
        if setup.closed:
            assert not setup.figures
            continue
        assert setup.prove
        assert setup.steps
        assert len(setup.figures) <= 6
        assert setup.figures or setup.tables


def test_how_near_is_near_enough_is_the_makers_to_say() -> None:
    """One who planes to a twentieth writes it in the shop's file, and every sheet says so."""
    description = parse_description(TARN)
    usual, own = (
        Formatter(figures_of(description, parse_shop(SHOP + more)))
        for more in ("", "[limits]\ntolerance_height = 0.05\ntolerance_width = 0.15\n")
    )
    for formatter, height, width in ((usual, "0.10 mm", "0.20 mm"), (own, "0.05 mm", "0.15 mm")):
        blank = setups(formatter.figures)["blank"]
        near = {each.figure.address: formatter.filled(each.tolerance) for each in blank.figures}
        assert near["blank_thickness"].startswith(f"± {height}")
        assert height in formatter.filled(blank.prove)
        layout = {
            each.figure.address: formatter.filled(each.tolerance)
            for each in setups(formatter.figures)["layout"].figures
        }
        assert layout["nut_width"].startswith(f"± {width}")


def test_what_is_not_needed(trial: Trial) -> None:
    assert closed(trial()) == {"deepen", "level"}
    assert closed(trial("levelled", "following")) == set()
    assert closed(trial("following", "after")) == {"deepen", "level"}
    assert closed(trial("fanned", "left")) == {"template", "deepen", "level"}
    assert closed(trial("unbound")) == {"ledge", "board-binding", "deepen", "level"}
    assert closed(trial("flat", "levelled", "unmarked")) == {"arch", "deepen", "level", "markers"}


def test_a_maker_s_own_braces_are_left_alone(trial: Trial) -> None:
    figures = trial()
    assert "rack three, lower {nut_width}" in Formatter(figures).filled(setups(figures)["blank"].steps[0])


def test_the_taper_comes_from_the_jig_s_constant(trial: Trial) -> None:
    """By plane geometry: the distance from a point to the finished edge's line, from that line's two points."""
    figures = trial()
    constant, length = 96.4, 427.7617
    nut, tail = 45.5 / 2, (45.5 + (56.0 - 45.5) / 315.0 * length) / 2

    def inside_the_cut(x: float, y: float) -> float:
        along, up = length, tail - nut
        return abs(along * (nut - y) - up * (0 - x)) / math.hypot(along, up)

    assert figures["taper_centre_nut"] == pytest.approx(constant - inside_the_cut(0, 0), abs=1e-4)
    assert figures["taper_centre_tail"] == pytest.approx(constant - inside_the_cut(length, 0), abs=1e-4)
    assert figures["taper_edge_nut"] == pytest.approx(constant - inside_the_cut(0, -nut), abs=1e-4)
    assert figures["taper_edge_tail"] == pytest.approx(constant - inside_the_cut(length, -tail), abs=1e-4)


def test_the_taper_of_a_fanned_board_is_set_by_its_corners(trial: Trial) -> None:
    figures = trial("fanned")
    corners = figures["board_outline"]
    edge = (corners.start_upper_x, corners.start_upper_y), (corners.end_upper_x, corners.end_upper_y)

    def inside_the_cut(x: float, y: float) -> float:
        (x1, y1), (x2, y2) = edge
        return abs((x2 - x1) * (y1 - y) - (x1 - x) * (y2 - y1)) / math.hypot(x2 - x1, y2 - y1)

    nut, tail = (corners.start_lower_x, corners.start_lower_y), (corners.end_lower_x, corners.end_lower_y)
    assert figures["taper_edge_nut"] == pytest.approx(96.4 - inside_the_cut(*nut), abs=1e-9)
    assert figures["taper_edge_tail"] == pytest.approx(96.4 - inside_the_cut(*tail), abs=1e-9)


def test_without_a_jig_the_taper_is_marked(trial: Trial, shop: str) -> None:
    other = shop.replace('for = "taper"', 'for = "something else"')
    setup = setups(trial(shop=other))["taper"]
    assert [each.figure.address for each in setup.figures][:2] == ["taper_half_width_nut", "taper_half_width_tail"]
    assert not any("jig_taper.constant" in str(text) for text in setup.texts)


def test_jigs_say_when_they_were_checked(trial: Trial) -> None:
    figures = trial()
    formatter = Formatter(figures)
    lines = [formatter.filled(line) for setup in setups(figures).values() for line in setup.tools]
    assert any("taper sled, constant 96.40 mm, checked 2026-01-12" in line for line in lines)
    assert any("index fence, constant 60.15 mm, never checked" in line for line in lines)


def test_where_the_slot_s_depth_is_measured_from(trial: Trial) -> None:
    face_down = setups(trial())["slot"].figures
    assert face_down[0].what == "Blade above the surface that the face lies on"
    assert "stop_over_cradle" not in [each.figure.address for each in face_down]
    over = trial("after")
    assert setups(over)["slot"].figures[0].what == "Teeth below the crest"
    assert setups(over)["slot"].figures[1].figure.address == "stop_over_cradle"
    # Worked by hand: template 6.0, crest before levelling 6.3, less the depth below the crest.
    assert over["stop_over_cradle"] == pytest.approx(6.0 + 6.3 - over["slot_depth_at_crest"])
    assert "rides" in setups(trial("following", "after"))["slot"].figures[0].what


def test_the_router_s_turn_agrees_with_the_grain_on_one_edge(trial: Trial) -> None:
    assert (trial()["feed_agreeing_edge"], trial()["feed_other_edge"]) == ("treble", "bass")
    assert (trial("left")["feed_agreeing_edge"], trial("left")["feed_other_edge"]) == ("bass", "treble")


def test_the_wood_s_caution(trial: Trial) -> None:
    def board(wood: str) -> Any:
        return trial(wood=wood).at('stuff_list["board"]')

    assert "Diospyros" in board("persimmon").dust
    assert "sensitise" in board("Indian rosewood").dust
    assert "not known" in board("pear").dust
    assert "Papers" in board("rosewood").permit
    assert board("pear").permit == ""


def test_a_cylinder_shows_one_radius(trial: Trial) -> None:
    radii = [
        each.figure.address for each in setups(trial("cylinder"))["arch"].figures if "radius" in each.figure.address
    ]
    assert radii == ["arching_radius_nut"]


def test_a_shop_without_tools_still_has_sheets(trial: Trial, shop: str) -> None:
    bare = shop[: shop.index("[[saw]]")]
    figures = trial("following", "levelled", shop=bare)
    formatter = Formatter(figures)
    for setup in setups(figures).values():
        for address in [each.address for each in figures_on(setup)]:
            formatter.both(address)
    assert "No saw" in str(setups(figures)["slot"].steps[0])
    assert "No cutter" in str(setups(figures)["ledge"].steps[0])
    assert "No piece" in str(setups(figures)["blank"].steps[0])


def test_the_carving_sheet_has_every_station_and_line(trial: Trial) -> None:
    """Five flats: a line on the side and one on the back at each of the three usual stations."""
    carve = setups(trial())["neck-carve"]
    (table,) = carve.tables
    assert table.rows == ("fret 1", "fret 5", "fret 9")
    shown = {in_row(figure, row).address for row in table.rows for _, figure in table.columns}
    for station in table.rows:
        assert f'carve_lines["{station}, line 1"].joint' in shown
        assert f'carve_lines["{station}, line 2"].centre' in shown
    assert shown <= {each.address for each in figures_on(carve)}


def test_a_column_of_64ths_has_its_unit_at_its_head(example):
    """A fraction with what is left over keeps to one line: its unit stands over the column, not in the middle of it."""
    from gramil.formatter import formatter_of
    from gramil.prints.pages import page_text

    figures = example("fell")
    (table,) = page_text(figures["setup_caliper"], formatter_of(figures))["tables"]
    assert table["units"][1:5] == ["in", "in", "in", "in"]
    # 25.787 in less 25.787 / 2^(1/12): 1.447 in, of which 1 29/64 is 1.4531.
    assert table["rows"][0][1:3] == ["1.447", "1 29/64 - 0.006"]
    assert not [cell for row in table["rows"] for cell in row if "in" in cell]
