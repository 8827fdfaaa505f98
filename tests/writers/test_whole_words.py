"""Words on pages: each whole on one, near where it belongs, over nothing; a list together or not at all."""

from collections.abc import Callable
from importlib.resources import as_file, files
from itertools import combinations
from pathlib import Path

import pytest
from tests.twelve import in_courses

from gramil.cli.options import opened_with_work
from gramil.drawings.marks import Drawing, Line, Polyline, Words
from gramil.formatter import Formatter
from gramil.graph import Figures
from gramil.pack import PLANS
from gramil.prints.papers import is_template
from gramil.prints.whole import drawings_of
from gramil.writers.extents import Box, bounds, touches
from gramil.writers.lettering import Lettering
from gramil.writers.pdf import Template, laid_out, pages_of
from gramil.writers.plain import plain


def long_card(*marks: Words | Line | Polyline) -> Drawing:
    corners = ((0.0, 0.0), (400.0, 0.0), (400.0, 60.0), (0.0, 60.0))
    return Drawing("card", "a card", "either side", (Polyline(corners, "cut", closed=True), *marks))


def words_of(template: Template) -> dict[str, Lettering]:
    return {mark.text: mark for mark in template.marks if isinstance(mark, Lettering)}


def whole_on(template: Template, mark: Lettering) -> list[str]:
    left, low, right, high = bounds([mark])
    return [
        tile.name
        for tile in template.tiling.tiles
        if tile.window[0] <= left and tile.window[1] <= low and right <= tile.window[2] and high <= tile.window[3]
    ]


def test_a_word_on_the_edge_of_a_page_moves_along_its_line_to_where_it_is_whole() -> None:
    edge = laid_out([long_card()], str, "a4")[0].tiling.tiles[0].window[2]
    (template,) = laid_out([long_card(Words((edge - 25.0, 30.0), "across the edge of two pages"))], str, "a4")
    word = words_of(template)["across the edge of two pages"]
    assert whole_on(template, word)
    assert abs(word.at[1] - 30.0) < 5.0
    assert abs(word.at[0] - (edge - 25.0)) < 60.0


def test_a_list_moves_together_and_keeps_its_places() -> None:
    lines = [Words((450.0 + 30.0 * (at % 3), 20.0 - 6.0 * (at // 3)), f"row {at}", layer="list") for at in range(9)]
    (template,) = laid_out([long_card(*lines)], str, "a4")
    found = words_of(template)
    by = {
        (round(found[each.text].at[0] - each.at[0], 6), round(found[each.text].at[1] - each.at[1], 6)) for each in lines
    }
    assert len(by) == 1
    assert all(whole_on(template, found[each.text]) for each in lines)


def test_a_list_that_no_page_holds_is_left_out_whole() -> None:
    lines = [Words((450.0 + 90.0 * at, 20.0), f"column {at}", layer="list") for at in range(6)]
    (template,) = laid_out([long_card(*lines)], str, "a4")
    assert not words_of(template).keys() & {each.text for each in lines}


def test_what_stands_in_a_frame_moves_with_it() -> None:
    edge = laid_out([long_card()], str, "a4")[0].tiling.tiles[0].window[2]
    left = edge - 20.0
    box = ((left, 70.0), (left + 40.0, 70.0), (left + 40.0, 90.0), (left, 90.0))
    frame, rule = Polyline(box, "list", closed=True), Line((left, 79.0), (left + 40.0, 79.0), "list")
    words = (Words((left + 2.0, 82.0), "name"), Words((left + 2.0, 73.0), "so long"))
    (template,) = laid_out([long_card(frame, rule, *words)], str, "a4")
    (box_moved,) = [mark for mark in template.marks if isinstance(mark, Polyline) and mark.layer == "list"]
    (ruled,) = [mark for mark in template.marks if isinstance(mark, Line)]
    found = words_of(template)
    by = (box_moved.points[0][0] - left, box_moved.points[0][1] - 70.0)
    assert by != (0.0, 0.0), "an edge of a page cuts it where it is drawn"
    assert ruled.start == pytest.approx((left + by[0], 79.0 + by[1]))
    for each in words:
        assert found[each.text].at == pytest.approx((each.at[0] + by[0], each.at[1] + by[1]))
        assert whole_on(template, found[each.text])


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_a_list_beside_which_there_is_no_room_has_a_page_of_its_own(paper: str) -> None:
    strokes = [Line((0.0, 10.0 * at), (215.0, 10.0 * at), "cut") for at in range(16)]
    rows = [f"{row} from the middle and a little further" for row in range(9)]
    lines = [Words((230.0, 120.0 - 6.0 * row), said, layer="list") for row, said in enumerate(rows)]
    (template,) = laid_out([Drawing("card", "a card", "either side", (*strokes, *lines))], str, paper)
    assert [tile.name for tile in template.tiling.tiles] == ["A1", "L"]
    found = words_of(template)
    assert all(whole_on(template, found[each.text]) == ["L"] for each in lines)
    down = [found[each.text].at[1] - found[rows[0]].at[1] for each in lines]
    assert down == pytest.approx([-6.0 * row for row in range(9)])
    assert pages_of([template]) == {"card": (1, 2)}
    assert template.tiling.crosses(template.tiling.tiles[0]) == ()


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_the_many_strings_of_a_head_stand_in_their_list(
    derive_text: Callable[..., Figures], text_of: Callable[[str], str], paper: str
) -> None:
    """Six pairs: no row of the list lies on the head or away from its neighbours."""
    figures = derive_text(in_courses(text_of("tarn")))
    drawing = figures["drawing_head"]
    (template,) = laid_out([drawing], Formatter(figures, "mm").text, paper)
    drawn = {
        m.text: m.at
        for m in plain(drawing, Formatter(figures, "mm").text)
        if isinstance(m, Lettering) and m.layer == "list"
    }
    assert sum("bends sideways" in text for text in drawn) == 12
    found = words_of(template)
    by = {(round(found[text].at[0] - x, 6), round(found[text].at[1] - y, 6)) for text, (x, y) in drawn.items()}
    assert len(by) == 1


def laid(name: str, paper: str) -> list[tuple[Template, set[str]]]:
    """The templates of an example, each with the words that its drawing has."""
    with as_file(files("gramil") / "data" / "examples") as examples:
        figures, formatter, _ = opened_with_work(Path(examples / f"{name}.toml"), Path(examples / "shop.toml"))
    drawings = [each for each in drawings_of(figures) if is_template(each) and each.name not in PLANS]
    said = {
        each.name: {mark.text for mark in plain(each, formatter.text) if isinstance(mark, Lettering)}
        for each in drawings
    }
    return [
        (each, set[str]().union(*(said[n] for n in each.names))) for each in laid_out(drawings, formatter.text, paper)
    ]


@pytest.mark.parametrize("name", ["tarn", "fell", "scree", "mere"])
def test_in_the_examples_next_to_no_word_is_left_out_and_none_lies_over_the_square(name: str) -> None:
    """One word in a drawing may find no room; none that is shown is cut."""
    found = laid(name, "a4")
    for template, said in found:
        shown = words_of(template)
        everywhere = {text for other, _ in found if other.names == template.names for text in words_of(other)}
        assert len({each for each in said if each.strip()} - everywhere) <= 1, template.names
        assert all(whole_on(template, mark) for mark in shown.values() if mark.text.strip())
        proof = template.tiling.proof
        if proof is not None:
            square: Box = (*proof.at, proof.at[0] + proof.side, proof.at[1] + proof.side)
            assert not any(touches(mark, square) for mark in template.marks), template.names


def test_words_that_move_do_not_land_on_one_another() -> None:
    for template, _ in laid("tarn", "letter"):
        if "braces" in template.names or "top-inside" in template.names:
            boxes = [bounds([mark]) for mark in words_of(template).values() if abs(mark.angle) < 1e-6]
            for one, other in combinations(boxes, 2):
                wide = min(one[2], other[2]) - max(one[0], other[0])
                tall = min(one[3], other[3]) - max(one[1], other[1])
                assert not (wide > 0.5 and tall > 0.5)
