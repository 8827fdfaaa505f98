"""Why: every dimension has a formula or a method and a source, and every formula gives the figure that it explains."""

from collections.abc import Callable
from typing import Any

import numpy as np
import pytest

from gramil.graph import Dimension, Figures, Pin
from gramil.prints.whole import whole_graph
from gramil.reason import formula_of, read_doc, readable, walk, why, with_numbers

PARTS: dict[str, list[Dimension]] = {}
"""The dimensions of each part."""
for each in whole_graph().dimensions.values():
    if each.function.__module__.startswith("gramil.parts."):
        PARTS.setdefault(each.function.__module__.rsplit(".", 1)[-1], []).append(each)
NAMES = {name: getattr(np, name) for name in dir(np) if not name.startswith("_")} | {"len": len}
"""What a formula may use: numpy's names, and how many rows there are."""


@pytest.fixture(scope="module")
def boards(
    example: Callable[[str], Figures], text_of: Callable[[str], str], derive_text: Callable[..., Figures]
) -> dict[str, Figures]:
    """A bound cone, a fanned board, an unbound levelled cylinder, and each way of cutting slots, with a zero fret."""
    found = {name: example(name) for name in ("tarn", "fell", "scree", "mere")}
    text = text_of("tarn").replace("zero_fret = false", "zero_fret = true").replace("equal gaps", "equal centres")
    for bottom in ("straight", "follows the arch"):
        for cut in ("before arching", "after arching"):
            changed = text.replace('bottom = "straight"', f'bottom = "{bottom}"')
            found[f"{bottom}, {cut}"] = derive_text(changed.replace('cut = "before arching"', f'cut = "{cut}"'))
    return found


@pytest.mark.parametrize("part", PARTS)
def test_every_dimension_says_how_and_where_from(part: str) -> None:
    for dimension in PARTS[part]:
        doc = read_doc(dimension.what)
        assert doc.what, f"{dimension.name} does not say what it is"
        assert doc.source, f"{dimension.name} does not say where it is from"
        two = bool(formula_of(dimension.function)), bool(doc.method)
        assert two[0] != two[1], f"{dimension.name}: a formula or a method, and not both"


@pytest.mark.parametrize("part", PARTS)
def test_every_formula_gives_the_figure(part: str, boards: dict[str, Figures]) -> None:
    for dimension in PARTS[part]:
        formula = formula_of(dimension.function)
        for name, figures in boards.items() if formula else ():
            parents = {each: figures[each] for each in dimension.parameters}
            with np.errstate(divide="ignore"):
                found = eval(formula, {"__builtins__": {}}, {**NAMES, **parents})
            agree(f"{name}: {dimension.name} = {formula}", found, figures[dimension.name])


def agree(where: str, found: Any, figure: Any) -> None:
    if isinstance(figure, str | bool):
        assert found == figure, where
    elif isinstance(figure, int | float | np.ndarray | np.number):
        np.testing.assert_allclose(found, figure, rtol=1e-12, atol=1e-12, err_msg=where)
    else:
        assert found == figure, where


def test_a_docstring_is_taken_apart() -> None:
    doc = read_doc("""What it is.

    More of it.
    Formula: a + b
        + c
    Source: common practice.
    """)
    assert doc.what == "What it is.\n\nMore of it."
    assert (doc.formula, doc.method, doc.source) == ("a + b + c", "", "common practice")


def _one_expression(width: float, angle: float) -> float:
    """Something. Source: none."""
    return float(np.sqrt(width) / np.cos(angle))


def _two_statements(width: float) -> float:
    """Something."""
    half = width / 2
    half += 1
    return half


def test_a_formula_is_the_codes_own_expression() -> None:
    assert formula_of(_one_expression) == "sqrt(width) / cos(angle)"
    assert formula_of(_two_statements) == ""


def test_numbers_go_in_by_whole_names() -> None:
    formula = "width * width_at_fret + at"
    assert with_numbers(formula, {"width": "44", "width_at_fret": "54"}) == "44 * 54 + at"
    assert with_numbers("1 + 1", {}) == "1 + 1"
    assert readable("2 ** n * L") == "2 ^ n × L"


def test_why_a_slot_is_as_deep_as_it_is(example: Callable[[str], Figures]) -> None:
    tarn = example("tarn")
    reason = why(tarn, "slot_need", lambda address: f"{tarn.at(address):.2f} mm")
    assert reason.value == pytest.approx(1.75)
    assert reason.numbers == "1.60 mm + 0.15 mm"
    assert [each.address for each in reason.follows] == ["wire_tang_depth", "slots_clearance"]
    assert all(each.origin is not None for each in reason.follows)
    assert reason.source == "common practice"


def test_why_a_row_shows_the_same_row_of_its_parents(example: Callable[[str], Figures]) -> None:
    tarn = example("tarn")
    reason = why(tarn, "fret_x_bass[7]", lambda address: f"{tarn.at(address):g}")
    assert [each.address for each in reason.follows] == ["fret_fraction[7]", "scale_run_bass", "scale_lead"]
    assert reason.numbers == f"{1 - 2 ** (-7 / 12):g} * 630 - 0"


def test_why_goes_all_the_way_to_what_the_maker_wrote(example: Callable[[str], Figures]) -> None:
    tarn = example("tarn")
    steps = list(walk(why(tarn, "slot_left_least[1]", lambda address: "")))
    found = {step.address for _, step in steps}
    assert {"board_thickness", "wire_tang_depth", "board_curvature_nut", "slot_left_at_end[1]"} <= found
    assert steps[0] == (0, steps[0][1])
    assert max(depth for depth, _ in steps) >= 4
    names = {address.split("[")[0] for address in found}
    assert names == set(tarn.graph.above("slot_left_least")) | {"slot_left_least"}


def test_why_names_a_measurement(example: Callable[[str], Figures]) -> None:
    tarn = example("tarn")
    pinned = Figures(tarn.graph, tarn.base, tarn.origins, {"slot_need": Pin(1.9, "2026-11-02")}, tarn.lengths)
    reason = why(pinned, "slot_need", lambda address: "")
    assert (reason.value, reason.pinned) == (1.9, "2026-11-02")
    assert reason.drawn == pytest.approx(1.75)


def test_why_nothing_is_a_key_error(example: Callable[[str], Figures]) -> None:
    with pytest.raises(KeyError):
        why(example("tarn"), "slot_nothing", lambda address: "")
