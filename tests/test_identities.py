"""What must hold of every board, whatever its figures: two ways of writing one thing give one thing.

Boards are drawn at random, written as files, read and derived, so that the whole way from the maker's words is tried.
"""

import math
from collections.abc import Callable, Iterator
from dataclasses import fields, is_dataclass
from typing import Any, get_type_hints

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.walks import fewer

from gramil.graph import Dimension, Figures
from gramil.quantities import unit_of

GROWTH = {
    "mm": 1, "mm2": 2, "mm4": 4, "1/mm": -1, "1/mm2": -2, "cent/mm": -1, "rad": 0, "cent": 0, "": 0,
    "count": 0, "MPa": 0,
}  # fmt: skip
"""To what power of a length each unit goes."""
PARTS = {
    "arch", "back_bow", "binding", "blank", "block", "board", "markers", "saw", "scale", "section", "slot_options",
    "slots", "string_lines", "template", "thickness", "wire",
}  # fmt: skip
"""The modules of the fretboard."""
SHOP = {
    "shop": {"name": "Drawn", "template_pin": 4.0, "template_thickness": 6.0, "pin_clearance": 0.03,
             "laser_kerf": 0.15, "allowance_side": 3.0, "allowance_length": 10.0},
    "saw": [{"name": "table", "kerf": 0.58, "cuts": "face down"},
            {"name": "hand", "kerf": 0.6, "cuts": "from above", "rides_arch": True}],
    "cutter": [{"name": "ledge", "diameter": 12.7, "bearings": [9.0, 9.5, 11.1]}],
    "block": [{"name": "flat", "radius": "flat"}, {"name": "sixteen", "radius": 406.4}],
    "template": [{"name": "648", "scale": 648.0, "frets": 20, "pin": 4.0}],
    "jig": [{"name": "rail", "for": "slots", "constant": 58.3}],
    "blank": [{"name": "one", "wood": "persimmon", "length": 700.0, "width": 90.0, "thickness": 9.5}],
}  # fmt: skip
Draw = st.DataObject
Derive = Callable[..., Figures]


@st.composite
def in_courses(draw: Callable[..., Any], boards: st.SearchStrategy[Any]) -> Any:
    """A drawn board whose strings stand in courses of one or two."""
    board, first, courses = draw(boards), 1, []
    count = len(board["strings"]["gauges"])
    while first <= count:
        strings = min(draw(st.integers(1, 2)), count - first + 1)
        courses.append({"strings": list(range(first, first + strings))})
        first += strings
    apart = {
        end: {
            "pair": type(board["nut"]["width"])(draw(st.integers(60, 90))),
            "pair_by": draw(st.sampled_from(["centres", "gap"])),
            "spacing": draw(st.sampled_from(["equal centres", "equal gaps"])),
        }
        for end in ("nut", "bridge")
    }
    return board | {"course": courses} | {end: board[end] | keys for end, keys in apart.items()}


@settings(max_examples=fewer(25, 10))
@given(data=st.data())
def test_an_inch_file_equals_its_millimetre_twin(
    data: Draw, boards: Any, as_file: Callable[..., str], derive_text: Derive
) -> None:
    board = data.draw(in_courses(boards()))
    alike(derive_text(as_file(board, "mm")), derive_text(as_file(board, "in")), 1e-12)


@settings(max_examples=fewer(25, 10))
@given(data=st.data())
def test_left_is_the_mirror_of_right(data: Draw, boards: Any, as_file: Callable[..., str], derive_text: Derive) -> None:
    """Only drawings are mirrored: treble stays positive in all computing, so every dimension is the same figure."""
    board = data.draw(in_courses(boards()))
    hands = [
        derive_text(as_file(board | {"instrument": board["instrument"] | {"handed": hand}}, "mm"))
        for hand in ("left", "right")
    ]
    alike(*hands, 0)


@settings(max_examples=fewer(25, 10))
@given(data=st.data(), radius=st.integers(7250, 20000))
def test_equal_radii_are_a_cylinder(
    data: Draw, radius: int, boards: Any, as_file: Callable[..., str], derive_text: Derive
) -> None:
    board = data.draw(boards())
    size = f"{radius * 0.0254:.4f} mm"
    cone = derive_text(as_file(with_arch(board, {"nut": size, "end": size}), "mm"))
    alike(cone, derive_text(as_file(with_arch(board, size), "mm")), 0)
    for side in ("treble", "bass"):
        exact = float(size.split()[0])
        falls = exact - np.sqrt(exact**2 - cone[f"edge_y_{side}"] ** 2)
        np.testing.assert_allclose(cone[f"arch_fall_at_edge_{side}"], falls, rtol=0, atol=1e-10)
    np.testing.assert_allclose(cone["arch_radius_at_fret"], exact, rtol=1e-13)


def with_arch(board: Any, arch: Any) -> Any:
    return board | {"board": board["board"] | {"arch": arch}}


@settings(max_examples=fewer(25, 10))
@given(data=st.data())
def test_equal_scales_are_square(data: Draw, boards: Any, as_file: Callable[..., str], derive_text: Derive) -> None:
    """A fan of two equal scales is a square board whose scale runs askew, along the outer strings."""
    board = data.draw(boards(fanned=True))
    scale = board["scale"] | {"bass": board["scale"]["treble"]}
    fan = derive_text(as_file(board | {"scale": scale}, "mm"))
    askew = (fan["bridge_spread"] - fan["nut_spread"]) / 2
    length = math.sqrt(fan["scale_treble"] ** 2 - askew**2)
    square = {key: value for key, value in scale.items() if key not in ("bass", "treble", "square_at")}
    twin = derive_text(as_file(board | {"scale": square | {"length": f"{length:.12f} mm"}}, "mm"))
    assert (fan["fret_angle"] == 0).all()
    assert abs(fan["string_error"]).max() < 1e-9
    alike(fan, twin, 1e-9, but=("scale_run_", "board_width_position"))


@pytest.mark.slow
@settings(max_examples=fewer(25, 10))
@given(data=st.data(), bits=st.integers(0, 3))
def test_doubled_lengths_double_every_length(
    data: Draw, bits: int, boards: Any, as_file: Callable[..., str], as_toml: Any, derive_text: Derive
) -> None:
    """The shop's own lengths and limits too: areas go by four, curvatures by a half, angles and cents stay."""
    board = data.draw(in_courses(boards()))
    board["slots"] |= {"bottom": ("straight", "follows the arch")[bits % 2], "cut": "before arching"}
    one = derive_text(as_file(board, "mm"), shop_text(as_toml, 1, derive_text, as_file(board, "mm")))
    two = derive_text(as_file(doubled(board), "mm"), shop_text(as_toml, 2, derive_text, as_file(board, "mm")))
    for name, dimension in one.graph.dimensions.items():
        if is_of_the_board(dimension):
            # A tenth of a millimetre stays what it is, and costs half as many cents.
            figure = two[name] * 2 if name == "fret_cents_per_tenth" else two[name]
            if name == "string_along_saddle":  # set-back goes by the strings' pull: the slant does not stay
                figure = figure * np.hypot(1, one["saddle_slant"]) / np.hypot(1, two["saddle_slant"])
            check_grown(name, dimension.annotation, one[name], figure)


def doubled(value: Any) -> Any:
    """A drawn board with every length twice as long."""
    if isinstance(value, dict):
        return {key: doubled(each) for key, each in value.items()}
    if isinstance(value, list):
        return [doubled(each) for each in value]
    return type(value)(value.count, 2) if hasattr(value, "grown") else value


def shop_text(as_toml: Any, factor: int, derive_text: Derive, text: str) -> str:
    """The shop with all its lengths times a factor, its limits written out so that those in mm grow too."""
    figures = derive_text(text)
    limits = {
        name.removeprefix("limit_"): figures[name] * (factor if unit_of(each.annotation).symbol == "mm" else 1)
        for name, each in figures.graph.inputs.items()
        if name.startswith("limit_")
    }
    head = {"units": "mm"} | grown(SHOP["shop"], factor)
    return as_toml({**grown(SHOP, factor), "shop": head, "limits": limits})


def grown(value: Any, factor: int) -> Any:
    """Every float times a factor; the shop's plain numbers are counts, and whole."""
    if isinstance(value, dict):
        return {key: grown(each, factor) for key, each in value.items()}
    if isinstance(value, list):
        return [grown(each, factor) for each in value]
    return value * factor if isinstance(value, float) else value


def check_grown(where: str, annotation: Any, one: Any, two: Any) -> None:
    """That a figure has grown by the power of two that its unit says, inside records too."""
    unit = unit_of(annotation)
    if unit is not None:
        np.testing.assert_allclose(
            two, np.asarray(one) * 2.0 ** GROWTH[unit.symbol], rtol=1e-9, atol=1e-9, err_msg=where
        )
    elif isinstance(one, tuple):
        assert len(one) == len(two), where
        for row, (first, second) in enumerate(zip(one, two, strict=True)):
            check_grown(f"{where}[{row}]", None, first, second)
    elif is_dataclass(one):
        hints = get_type_hints(type(one), include_extras=True)
        for field in fields(one):
            if unit_of(hints[field.name]) is not None:
                first, second = getattr(one, field.name), getattr(two, field.name)
                check_grown(f"{where}.{field.name}", hints[field.name], first, second)


@settings(max_examples=fewer(25, 10))
@given(data=st.data())
def test_a_zero_fret_changes_no_fret(data: Draw, boards: Any, as_file: Callable[..., str], derive_text: Derive) -> None:
    """It has a slot like any other, the nut moves behind it, and one more piece of wire is wanted."""
    board = data.draw(boards())
    board["nut"]["set_forward"] = "0 mm"
    bare, zero = (
        derive_text(as_file(board | {"scale": board["scale"] | {"zero_fret": each}}, "mm")) for each in (False, True)
    )
    for name in ("fret_position", "fret_angle", "edge_x_treble", "core_y_bass", "string_margin_bass", "wire_line"):
        np.testing.assert_array_equal(bare[name], zero[name])
    assert (bare["slot_first"], zero["slot_first"]) == (1, 0)
    assert zero["board_nut_position"] == -zero["nut_behind"]
    assert zero["board_length"] == pytest.approx(bare["board_length"] + zero["nut_behind"], abs=1e-12)
    more = zero["wire_cut"][0] * zero["limit_wire_spare"]
    assert zero["wire_total"] == pytest.approx(bare["wire_total"] + more, abs=1e-9)
    assert zero["back_bow_frets"] == bare["back_bow_frets"] + 1
    assert zero["template_notch"][0] == zero["shop_pin_offset"]


@settings(max_examples=fewer(25, 10))
@given(data=st.data())
def test_flat_is_flat(data: Draw, boards: Any, as_file: Callable[..., str], derive_text: Derive) -> None:
    """Nothing falls, the edges are as thick as the crest, levelling takes nothing, both bottoms are one."""
    board = with_arch(data.draw(boards()), "flat")
    board["board"]["level_underside"] = True
    figures = derive_text(as_file(board, "mm"))
    for name in figures.graph.dimensions:
        if name.startswith(("arch_fall", "arch_hump", "arch_over")):
            assert not np.any(figures[name]), name
    assert figures["thickness_wedge"] == 0
    assert (figures["thickness_at_edge_bass"] == figures["board_thickness"]).all()
    assert np.isinf(figures["arch_radius_at_fret"]).all()
    settings_by_cut: dict[str, set[float]] = {"before arching": set(), "after arching": set()}
    for option in figures["cutting_options"]:
        settings_by_cut[option.cut].add(option.setting)
        assert option.left_at_crest == option.left_at_end
    assert all(len(each) == 1 for each in settings_by_cut.values())
    # Of a rectangle h high a slot d deep keeps ((h - d) / h)^3.
    left = (figures["board_thickness"] - figures["slot_depth_at_crest"]) / figures["board_thickness"]
    for bottom in ("straight", "following"):
        np.testing.assert_allclose(figures[f"section_kept_{bottom}"], left**3, rtol=1e-12)


def test_a_very_large_radius_is_all_but_flat(text_of: Callable[[str], str], derive_text: Derive) -> None:
    text = text_of("tarn")
    arch = '{ nut = "320 mm", end = "390 mm" }'
    round_, flat = (derive_text(text.replace(arch, each)) for each in ('"100 m"', '"flat"'))
    for name, one, other in pairs(round_, flat):
        if (
            name not in ("arch_radius_at_fret", "wire_bend_radius")
            and not name.startswith("block_")
            and isinstance(one, float | np.ndarray)
        ):
            np.testing.assert_allclose(one, other, rtol=2e-3, atol=0.01, err_msg=name)


def is_of_the_board(dimension: Dimension) -> bool:
    room, _, module = dimension.function.__module__.rpartition(".")
    return room == "gramil.parts" and module in PARTS


def pairs(one: Figures, other: Figures) -> Iterator[tuple[str, Any, Any]]:
    for name, dimension in one.graph.dimensions.items():
        if is_of_the_board(dimension):
            yield name, one[name], other[name]


def alike(one: Figures, other: Figures, within: float, but: tuple[str, ...] = ()) -> None:
    """That every dimension of the board is the same figure, to a relative and absolute `within`."""
    for name, first, second in pairs(one, other):
        if not name.startswith(but or ("nothing",)):
            same(name, first, second, within)


def same(where: str, one: Any, other: Any, within: float) -> None:
    if isinstance(one, float | np.ndarray | np.number):
        np.testing.assert_allclose(one, other, rtol=within, atol=within, err_msg=where)
    elif isinstance(one, tuple):
        assert len(one) == len(other), where
        for first, second in zip(one, other, strict=True):
            same(where, first, second, within)
    elif is_dataclass(one):
        for field in fields(one):
            same(f"{where}.{field.name}", getattr(one, field.name), getattr(other, field.name), within)
    else:
        assert one == other, where
