"""The derivation graph: what it refuses, what it gives, and what it works out again when something changes."""

import contextlib
from collections.abc import Callable
from dataclasses import dataclass
from functools import wraps
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from gramil.graph import Figures, Graph, Input, Origin, Pin, WiringError, derive
from gramil.quantities import Count, Mm, PerFret, PerString, PerStringFret, Radians, Ratio
from gramil.wiring import build

INPUTS = {
    "length": Input(Mm, "a length"),
    "width": Input(Mm, "a width"),
    "rows": Input(PerFret[Ratio], "a share a fret"),
    "strings": Input(PerString[Mm], "a thickness a string"),
    "word": Input(str, "a word"),
}
LENGTHS = {"fret": 4, "string": 2}


@dataclass(frozen=True)
class Piece:
    """A record with a length in it, and a property."""

    name: str
    long: Mm
    count: Count

    @property
    def half(self) -> Mm:
        """Half of it."""
        return self.long / 2


def area(length: Mm, width: Mm) -> Mm:
    """Not really one, but it has two parents."""
    return length * width


def places(length: Mm, rows: PerFret[Ratio]) -> PerFret[Mm]:
    """A place a fret."""
    return length * rows


def crossings(places: PerFret[Mm], strings: PerString[Mm]) -> PerStringFret[Mm]:
    """A place a string and fret."""
    return strings[:, None] + places


def pieces(length: Mm, width: Mm) -> tuple[Piece, ...]:
    """Two pieces by name."""
    return (Piece("the long one", length, 1), Piece("a.b", width, 2))


FUNCTIONS = (area, places, crossings, pieces)
BASE = {
    "length": 10.0,
    "width": 3.0,
    "rows": np.array([0.0, 0.25, 0.5, 1.0]),
    "strings": np.array([1.0, 2.0]),
    "word": "six",
}


def figures(**changed: Any) -> Figures:
    base = {name: value.copy() if isinstance(value, np.ndarray) else value for name, value in BASE.items()}
    return derive(build(FUNCTIONS, INPUTS), base, lengths=LENGTHS, **changed)


def test_two_of_one_name_are_refused() -> None:
    def other() -> Mm:
        """The same name again."""
        return 1.0

    other.__name__ = "area"
    with pytest.raises(WiringError, match="area"):
        build([area, other], INPUTS)


def test_a_dimension_may_not_be_called_as_an_input() -> None:
    def length(width: Mm) -> Mm:
        """An input has this name."""
        return width

    with pytest.raises(WiringError, match="length"):
        build([length], INPUTS)


def test_a_missing_input_is_named_with_who_asks_for_it() -> None:
    def tall(height: Mm) -> Mm:
        """Nothing gives a height."""
        return height

    with pytest.raises(WiringError, match=r"tall.*height"):
        build([tall], INPUTS)


def test_a_parameter_that_nothing_gives_is_told_the_names_most_like_it() -> None:
    def wide(widht: Mm) -> Mm:
        """A slip of the pen."""
        return widht

    with pytest.raises(WiringError, match=r"wide asks for widht, which nothing gives; the nearest is width"):
        build([area, wide], INPUTS)


def test_a_circle_is_named_in_full() -> None:
    def one(three: Mm) -> Mm:
        """First."""
        return three

    def two(one: Mm) -> Mm:
        """Second."""
        return one

    def three(two: Mm, length: Mm) -> Mm:
        """Third."""
        return two + length

    with pytest.raises(WiringError) as raised:
        build([one, two, three, area], INPUTS)
    said = str(raised.value)
    assert all(name in said for name in ("one", "two", "three"))
    assert "area" not in said
    chain = said.split(": ")[1].split(" -> ")
    assert chain[0] == chain[-1]
    assert len(chain) == 4
    parents = {"one": "three", "two": "one", "three": "two"}
    follows = all(parents[low] == high for low, high in zip(chain[1:], chain[:-1], strict=True))
    hangs = all(parents[high] == low for low, high in zip(chain[1:], chain[:-1], strict=True))
    assert follows or hangs, "each step of the chain is a wire"


def test_itself_is_a_circle_too() -> None:
    def loop(loop: Mm) -> Mm:
        """It follows from itself."""
        return loop

    with pytest.raises(WiringError, match="loop -> loop"):
        build([loop], INPUTS)


def test_a_length_is_not_wired_to_an_angle() -> None:
    def turned(length: Radians) -> Radians:
        """Takes a length for an angle."""
        return length

    with pytest.raises(WiringError, match=r"turned.*length"):
        build([turned], INPUTS)


def test_a_figure_a_fret_is_not_wired_to_one_a_string() -> None:
    def wrong(rows: PerString[Ratio]) -> PerString[Ratio]:
        """Takes a figure a fret for one a string."""
        return rows

    def also_wrong(area: PerFret[Mm]) -> PerFret[Mm]:
        """Takes one figure for many."""
        return area

    for function in (wrong, also_wrong):
        with pytest.raises(WiringError, match=function.__name__):
            build([function, area], INPUTS)


def test_a_unit_inside_an_array_counts() -> None:
    def wrong(places: PerFret[Ratio]) -> PerFret[Ratio]:
        """Millimetres taken for shares."""
        return places

    with pytest.raises(WiringError, match=r"wrong.*places"):
        build([wrong, places], INPUTS)


def test_a_function_says_what_it_returns() -> None:
    def silent(length: Mm):  # type: ignore[no-untyped-def]  # that is the point
        """No unit."""
        return length

    with pytest.raises(WiringError, match="silent"):
        build([silent], INPUTS)


def test_a_missing_value_is_named() -> None:
    with pytest.raises(WiringError, match="width"):
        derive(build(FUNCTIONS, INPUTS), {name: value for name, value in BASE.items() if name != "width"})


def test_a_wrong_number_of_rows_is_refused() -> None:
    def short(rows: PerFret[Ratio]) -> PerFret[Ratio]:
        """One row too few."""
        return rows[1:]

    with pytest.raises(WiringError, match="short"):
        _ = derive(build([short], INPUTS), BASE, lengths=LENGTHS)["short"]


def test_above_below_and_order() -> None:
    graph = build(FUNCTIONS, INPUTS)
    assert graph.above("crossings") == {"places", "strings", "length", "rows"}
    assert graph.below("length") == {"area", "places", "crossings", "pieces"}
    assert graph.below("word") == frozenset()
    assert set(graph.order) == set(INPUTS) | {each.__name__ for each in FUNCTIONS}
    for name in graph.order:
        assert all(graph.order.index(each) < graph.order.index(name) for each in graph.parameters(name))


def test_figures_are_worked_out_once_and_only_when_asked() -> None:
    calls: list[str] = []
    given_figures = counted(calls)
    assert calls == []
    assert given_figures["crossings"][1, 2] == 7.0
    assert calls == ["places", "crossings"]
    _ = given_figures["crossings"], given_figures["places"]
    assert calls == ["places", "crossings"]


def counted(calls: list[str]) -> Figures:
    """Figures whose functions note that they were called."""

    def noted(function: Callable[..., Any]) -> Callable[..., Any]:
        @wraps(function)
        def call(*values: Any) -> Any:
            calls.append(function.__name__)
            return function(*values)

        return call

    return derive(build(map(noted, FUNCTIONS), INPUTS), BASE, lengths=LENGTHS)


@pytest.mark.parametrize(
    ("changed", "again"),
    [
        ({"width": 4.0}, {"area", "pieces"}),
        ({"length": 11.0}, {"area", "places", "crossings", "pieces"}),
        ({"strings": np.array([1.0, 2.5])}, {"crossings"}),
        ({"word": "seven"}, set()),
        ({}, set()),
        ({"rows": BASE["rows"].copy()}, set()),
    ],
)
def test_a_change_works_out_only_what_hangs_on_it(changed: dict[str, Any], again: set[str]) -> None:
    calls: list[str] = []
    before = counted(calls)
    everything = {name: before[name] for name in before}
    calls.clear()
    after = before.with_base(BASE | changed)
    found = {name: after[name] for name in after}
    assert sorted(calls) == sorted(again)
    fresh = derive(before.graph, BASE | changed, lengths=LENGTHS)
    for name in fresh:
        np.testing.assert_equal(found[name], fresh[name])
    assert everything["area"] == before["area"] == 30.0, "the old figures stay as they were"


def test_arrays_cannot_be_written() -> None:
    given_figures = figures()
    for name in ("rows", "strings", "places", "crossings"):
        with pytest.raises(ValueError, match="read-only"):
            given_figures[name][0] = 9.0


def test_a_pin_takes_the_place_of_a_figure_and_goes_down() -> None:
    pinned = figures(pins={"places": Pin(np.array([0.0, 2.0, 5.0, 10.0]), "2026-11-02")})
    np.testing.assert_array_equal(pinned["places"], [0, 2, 5, 10])
    assert pinned["crossings"][0, 1] == 3.0
    np.testing.assert_array_equal(pinned.drawn("places"), [0, 2.5, 5, 10])
    np.testing.assert_array_equal(pinned.drawn("crossings")[0], [1, 3.5, 6, 11])


def test_a_pin_on_one_row_leaves_the_others() -> None:
    pinned = figures(pins={"places[1]": Pin(2.4, "today"), "crossings[2, 3]": Pin(99.0, "today")})
    np.testing.assert_array_equal(pinned["places"], [0, 2.4, 5, 10])
    np.testing.assert_array_equal(pinned["crossings"], [[1, 3.4, 6, 11], [2, 4.4, 7, 99]])


def test_a_pin_on_one_string_counts_from_one() -> None:
    assert figures(pins={"strings[1]": Pin(7.0, "today")})["crossings"][0, 0] == 7.0


def test_a_pin_on_a_row_that_is_not_there_is_left_out() -> None:
    """As where a fret was measured that the board has no more."""
    pinned = figures(pins={"places[9]": Pin(2.4, "today"), "places[1]": Pin(2.4, "today")})
    np.testing.assert_array_equal(pinned["places"], [0, 2.4, 5, 10])


def test_other_pins_work_out_only_what_hangs_on_them() -> None:
    calls: list[str] = []
    before = counted(calls)
    everything = {name: before[name] for name in before}
    calls.clear()
    assert before.with_pins({}) is before
    after = before.with_pins({"places[1]": Pin(2.4, "today")})
    found = {name: after[name] for name in after}
    assert sorted(calls) == ["crossings", "places"]
    fresh = derive(before.graph, BASE, pins=after.pins, lengths=LENGTHS)
    for name in fresh:
        np.testing.assert_equal(found[name], fresh[name])
    assert everything["area"] == found["area"]
    back = after.with_pins({})
    np.testing.assert_array_equal(back["places"], before["places"])


def test_a_pin_on_a_member_of_a_list_changes_that_member_alone() -> None:
    pinned = figures(pins={'pieces["a.b"].long': Pin(6.5, "today"), "pieces[1].count": Pin(4, "today")})
    assert pinned["pieces"] == (Piece("the long one", 10.0, 4), Piece("a.b", 6.5, 2))
    assert pinned.at('pieces["a.b"].half') == 3.25


def test_what_a_record_works_out_is_not_pinned() -> None:
    pinned = figures(pins={'pieces["a.b"].half': Pin(9.0, "today")})
    assert pinned["pieces"] == figures()["pieces"]


@pytest.mark.parametrize(
    "address", ["places[9]", "crossings[3, 1]", 'pieces["gone"].long', "pieces[7].long", "pieces[1].gone", "gone"]
)
def test_a_pin_on_what_is_not_there_any_more_changes_nothing(address: str) -> None:
    """A board has a fret less, or a brace another name, since it was measured."""
    pinned, plain = figures(pins={address: Pin(9.0, "today")}), figures()
    assert pinned["pieces"] == plain["pieces"]
    np.testing.assert_array_equal(pinned["crossings"], plain["crossings"])


def test_an_input_can_be_pinned() -> None:
    assert figures(pins={"width": Pin(5.0, "today")})["area"] == 50.0


class Growing(dict[str, Any]):
    """What is known while another thread works figures out: it grows as it is gone through."""

    def items(self) -> Any:
        for pair in super().items():
            yield pair
            self["another"] = None


def test_another_thread_may_work_figures_out_meanwhile() -> None:
    """The bench answers several requests at once, all from the figures of one instrument."""
    before = figures()
    known = {name: before[name] for name in ("length", "width", "area")}
    shared = Figures(before.graph, before.base, lengths=before.lengths, known=Growing(known))
    assert shared.with_pins({"width": Pin(5.0, "today")})["area"] == 50.0
    assert shared.with_base(BASE | {"width": 6.0})["area"] == 60.0


def test_a_changed_base_keeps_its_pins() -> None:
    pinned = figures(pins={"places[1]": Pin(2.4, "today")}).with_base(BASE | {"length": 20.0})
    np.testing.assert_array_equal(pinned["places"], [0, 2.4, 10, 20])


@pytest.mark.parametrize(
    ("address", "value"),
    [
        ("length", 10.0),
        ("word", "six"),
        ("places[0]", 0.0),
        ("places[3]", 10.0),
        ("strings[1]", 1.0),
        ("strings[2]", 2.0),
        ("crossings[2, 1]", 4.5),
        ("crossings[2,1]", 4.5),
        ('pieces["the long one"].long', 10.0),
        ("pieces['a.b'].count", 2),
        ("pieces[2].name", "a.b"),
        ('pieces["a.b"].half', 1.5),
    ],
)
def test_addresses(address: str, value: Any) -> None:
    assert figures().at(address) == value


@pytest.mark.parametrize(
    "address",
    [
        "",
        "nothing",
        "places[4]",
        "places[-1]",
        "places[]",
        "places[1",
        "places[1]]",
        "places.long",
        'places["x"]',
        "places[1, 1]",
        "places[99999999999999999999999]",
        "places[" + "9" * 5000 + "]",
        "strings[0]",
        "strings[3]",
        "crossings[3, 0]",
        "crossings[1, 4]",
        "pieces[0]",
        "pieces[3]",
        'pieces["nobody"].long',
        'pieces["a.b"].deep',
        "pieces.long",
        "length[1]",
        "length.name",
        "length ",
        " length",
        "length\n",
        "[1]",
        ".long",
    ],
)
def test_rubbish_is_a_key_error_with_the_address(address: str) -> None:
    with pytest.raises(KeyError) as raised:
        figures().at(address)
    assert raised.value.args == (address,)
    with pytest.raises(KeyError):
        figures().unit_at(address + "..")


def test_a_record_has_no_unit_for_what_it_has_not() -> None:
    with pytest.raises(KeyError):
        figures().unit_at('pieces["a.b"].deep')


ADDRESSES = st.one_of(
    st.text(),
    st.from_regex(r"(places|strings|crossings|pieces|length|word|area)(\[[-\d ,]*\]|\[\"[a-z .]*\"\]|\.[a-z_]+){0,3}"),
)


@given(address=ADDRESSES)
def test_any_text_is_a_figure_or_a_key_error(address: str) -> None:
    with contextlib.suppress(KeyError):
        figures().at(address)


@given(address=ADDRESSES)
def test_any_text_has_a_unit_or_none_or_is_a_key_error(address: str) -> None:
    try:
        unit = figures().unit_at(address)
    except KeyError:
        return
    assert unit is None or isinstance(unit, str)


@pytest.mark.parametrize(
    ("address", "unit"),
    [
        ("length", "mm"),
        ("places[2]", "mm"),
        ("rows[2]", ""),
        ("word", None),
        ('pieces["a.b"].long', "mm"),
        ('pieces["a.b"].count', "count"),
        ('pieces["a.b"].name', None),
        ('pieces["a.b"].half', "mm"),
        ("pieces", None),
    ],
)
def test_units(address: str, unit: str | None) -> None:
    assert figures().unit_at(address) == unit


def test_units_of_an_instruments_records(example: Callable[[str], Figures]) -> None:
    tarn = example("tarn")
    for address in ("board_outline.length", "board_outline.width", "ledge_choice.proud", "slot_left_least[3]"):
        tarn.at(address)
        assert tarn.unit_at(address) == "mm"


def test_origins_and_length() -> None:
    origin = Origin("written", "tarn.toml", 4)
    assert str(origin) == "tarn.toml:4"
    assert str(Origin("common practice")) == "common practice"
    given_figures = derive(build(FUNCTIONS, INPUTS), BASE, {"length": origin}, lengths=LENGTHS)
    assert given_figures.origins["length"] is origin
    assert len(given_figures) == len(list(given_figures)) == len(INPUTS) + len(FUNCTIONS)
    assert "area" in given_figures
    assert "volume" not in given_figures


def test_the_whole_graph_of_every_example(example: Callable[[str], Figures]) -> None:
    """Every name can be worked out, and hangs on inputs alone in the end."""
    for name in ("tarn", "fell", "scree", "mere"):
        whole = example(name)
        graph: Graph = whole.graph
        for each in graph.order:
            _ = whole[each]
            assert graph.above(each) <= set(graph.inputs) | set(graph.dimensions)
