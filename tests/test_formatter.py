"""Figures as text: units, the other unit, what is flat or not known, and addresses within a sentence."""

import math
from typing import Annotated

import numpy as np
import pytest

from gramil.decimals import coarse
from gramil.formatter import Formatter, parted, shown
from gramil.graph import Input, derive
from gramil.quantities import Cents, Count, GramPerM, Mm, PerFret, Radians, Unit
from gramil.reference import Ref, refs_in, says
from gramil.wiring import build

INPUTS = {
    "nut_width": (Mm, 45.5),
    "radius": (Mm, math.inf),
    "unread": (Mm, math.nan),
    "angle": (Radians, math.radians(0.954)),
    "frets": (Count, 19),
    "bound": (bool, True),
    "name": (str, "Tarn {nut_width}"),
    "marked": (tuple[int, ...], (3, 5, 7)),
    "position": (PerFret[Mm], np.array([0.0, 25.4, 50.8])),
    "off": (PerFret[Cents], np.array([-0.001, 0.5, 1.0])),
}


@pytest.fixture
def formatter() -> Formatter:
    graph = build((), {name: Input(annotation, name) for name, (annotation, _) in INPUTS.items()})
    return Formatter(derive(graph, {name: value for name, (_, value) in INPUTS.items()}, lengths={"fret": 3}))


@pytest.mark.parametrize(
    ("address", "text"),
    [
        ("nut_width", "45.50 mm"),
        ("radius", "flat"),
        ("unread", "not known"),
        ("angle", "0.95°"),
        ("frets", "19"),
        ("bound", "yes"),
        ("marked", "3, 5 and 7"),
        ("marked[2]", "5"),
        ("position[1]", "25.40 mm"),
        ("position", "0.00 to 50.80 mm"),
        ("off[0]", "0.00 cent"),
    ],
)
def test_each_kind_of_figure(formatter: Formatter, address: str, text: str) -> None:
    assert formatter.text(address) == text


def test_the_other_unit_stands_beside_lengths_only(formatter: Formatter) -> None:
    assert formatter.both("position[2]") == ("50.80 mm", "2.000 in")
    assert formatter.both("position") == ("0.00 to 50.80 mm", "0.000 to 2.000 in")
    assert [formatter.other(address) for address in ("angle", "radius", "unread", "name", "bound")] == [""] * 5


def test_inches_first(formatter: Formatter) -> None:
    inches = Formatter(formatter.figures, "in")
    assert inches.both("position[1]") == ("1.000 in", "")


def test_a_sentence_is_filled_once(formatter: Formatter) -> None:
    told = says("{} is {} wide", Ref("name"), Ref("nut_width"))
    assert formatter.filled(told) == "Tarn {nut_width} is 45.50 mm wide"
    assert tuple(refs_in(told)) == (Ref("name"), Ref("nut_width"))
    assert formatter.filled("a maker's own {nut_width}") == "a maker's own {nut_width}"


@pytest.mark.parametrize(
    ("limit", "said"),
    [
        (0.1, "0.004 in"),  # 3.94 thou
        (0.05, "0.002 in"),  # 1.97
        (0.2, "0.008 in"),  # 7.87
        (0.02, "0.0008 in"),  # 0.79: a whole thou is a quarter more
        (0.07, "0.0028 in"),  # 2.76
        (0.5, "0.020 in"),
        (10.0, "0.4 in"),  # 0.394: of a block's radius
        (3.0, "0.118 in"),
        (0.0, "0.000 in"),
    ],
)
def test_an_inch_shop_reads_small_limits_as_a_maker_says_them(limit: float, said: str) -> None:
    """Where it is told how near a figure must come; the figure itself stays as it is, and so do other figures."""
    names = ("limit_near", "nut_gap")
    figures = derive(build((), {name: Input(Mm, name) for name in names}), dict.fromkeys(names, limit))
    text = says("± {}", Ref("limit_near"))
    assert Formatter(figures, "in").filled_near(text) == f"± {said}"
    assert Formatter(figures, "mm").filled_near(text) == f"± {limit:.2f} mm"
    assert Formatter(figures, "in").filled_near(says("{}", Ref("nut_gap"))) == Formatter(figures, "in").text("nut_gap")
    assert Formatter(figures, "in").text("limit_near") == Formatter(figures, "in").text("nut_gap")


def test_holes_and_figures_are_as_many() -> None:
    with pytest.raises(ValueError, match="2 holes for 1 figures"):
        says("{} and {}", Ref("nut_width"))


def test_an_address_that_leads_nowhere(formatter: Formatter) -> None:
    for address in ("nut_wide", "position[9]", "name.length"):
        with pytest.raises(KeyError):
            formatter.text(address)


@pytest.mark.parametrize(
    ("text", "parts"),
    [
        ("45.50 mm", ("45.50", "mm")),
        ("-0.01 mm", ("-0.01", "mm")),
        ("0.95°", ("0.95", "°")),
        ("flat", ("flat", "")),
        ("19", ("19", "")),
        ("1 7/8 in + 0.002", ("1 7/8 in + 0.002", "")),
        ("0.668 g/m", ("0.668", "g/m")),
        ("0.00003741 lb/in", ("0.00003741", "lb/in")),
    ],
)
def test_number_and_unit_apart(text: str, parts: tuple[str, str]) -> None:
    assert parted(text) == parts


@pytest.mark.parametrize(
    ("value", "symbol", "text"),
    [(0.9, "", "0.9"), (2 / 3, "", "0.6667"), (12000.0, "MPa", "12000 MPa"), (0.0, "1/mm", "flat"), (-0.0, "", "0")],
)
def test_other_units(value: float, symbol: str, text: str) -> None:
    assert shown(value, symbol) == text


def test_the_unit_comes_from_the_annotation() -> None:
    graph = build((), {"pull": Input(Annotated[float, Unit("N")], "pull")})
    assert Formatter(derive(graph, {"pull": 720.04})).text("pull") == "720.0 N"


@pytest.mark.parametrize(
    ("value", "unit", "first", "text"),
    [
        (645.16, "mm2", "in", "1.000 in²"),
        (136393.5, "mm2", "mm", "1363.9 cm²"),
        (1740.7, "mm2", "mm", "1740.7 mm²"),
        (16387.064, "mm3", "in", "1.000 in³"),
        (13_551_903.0, "mm3", "mm", "13551.9 cm³"),
        (982.0, "mm4", "mm", "982 mm⁴"),
        (416_231.4256, "mm4", "in", "1.000 in⁴"),
        (0.0, "mm3", "in", "0 in³"),
    ],
)
def test_areas_and_volumes_go_with_the_makers_unit(value: float, unit: str, first: str, text: str) -> None:
    """An inch is 25.4 mm: 645.16 mm2, 16387.064 mm3, 416231.4256 mm4."""
    assert shown(value, unit, first) == text


@pytest.mark.parametrize(("value", "text"), [(12000.0, "1740000 psi"), (1580.9, "229000 psi"), (1.0, "145 psi")])
def test_psi_have_three_digits(value: float, text: str) -> None:
    """A psi is 0.0068947573 MPa (NIST SP 811): 12000 MPa are 1 740 453 of them, and nobody measured the 453."""
    assert shown(value, "MPa", "in") == text


def test_a_string_weighs_in_an_inch_shop_what_its_packet_says() -> None:
    """A pound is 453.59237 g and an inch 25.4 mm: 1 g/m is 0.0254 / 453.59237 lb/in, 0.0000559974."""
    figures = derive(build((), {"string_weighs": Input(GramPerM, "string_weighs")}), {"string_weighs": 0.668})
    assert Formatter(figures, "in").text("string_weighs") == "0.00003741 lb/in"
    assert Formatter(figures, "mm").text("string_weighs") == "0.668 g/m"


@pytest.mark.parametrize(
    ("text", "digits", "said"),
    [
        ("1722.4 g", 3, "1720 g"),
        ("26.2 g", 2, "26 g"),
        ("100.82 to 123.68 Hz", 2, "100 to 120 Hz"),
        ("-14032 N mm", 2, "-14000 N mm"),
        ("0.0 g", 2, "0.0 g"),
        ("964.1 cm²", 3, "964 cm²"),
        ("not known", 2, "not known"),
    ],
)
def test_a_figure_in_the_digits_that_it_is_worth(text: str, digits: int, said: str) -> None:
    assert coarse(text, digits) == said


def test_a_line_of_many_points_says_what_a_maker_can_use() -> None:
    """A half outline by hand: bouts of 120 and 150 mm, a waist of 60 between them; its legs by Pythagoras."""
    line = ((0.0, 0.0), (0.0, 60.0), (80.0, 120.0), (160.0, 60.0), (240.0, 120.0), (320.0, 150.0), (400.0, 0.0))
    told = shown(line, None)
    legs = 60 + 100 + 100 + 100 + math.hypot(80, 30) + 170
    assert told == (
        f"7 points from 0.00 to 400.00 mm, {legs:.2f} mm long, off the axis at most 150.00 mm at 320.00 mm, "
        "between 60.00 mm at 160.00 mm"
    )
    assert shown(line, None, "in").startswith("7 points from 0.000 to 15.748 in")
    assert shown(line[:4], None) == "0 and 0, 0 and 60, 80 and 120 and 160 and 60", "a few are written out"
    assert shown(tuple((float(each), math.nan) for each in range(9)), None) == "9 points, not all known"
