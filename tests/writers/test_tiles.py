"""Pages cut so that nothing drawn is lost, and named as on a map."""

from hypothesis import given, settings
from hypothesis import strategies as st

from gramil.drawings.marks import Line
from gramil.writers.extents import touches
from gramil.writers.tiles import tiled

PLACE = st.tuples(st.floats(-700.0, 700.0), st.floats(-400.0, 400.0))


@settings(max_examples=60, deadline=None)
@given(st.lists(st.tuples(PLACE, PLACE), min_size=1, max_size=4), st.sampled_from(["a4", "letter", "a3", "roll"]))
def test_every_point_drawn_is_on_a_page(ends, paper):
    lines = [Line(a, b, "outline") for a, b in ends]
    tiling = tiled(lines, paper, (1.0, 1.0))
    for line in lines:
        for i in range(41):
            x, y = (a + (b - a) * i / 40 for a, b in zip(line.start, line.end, strict=True))
            assert any(t.window[0] <= x <= t.window[2] and t.window[1] <= y <= t.window[3] for t in tiling.tiles)
    assert all(any(touches(line, tile.window) for line in lines) for tile in tiling.tiles)


def test_rows_are_letters_past_the_alphabet():
    """7 m upright on A4: 255 mm of window, 245 mm from page to page, so 29 rows: A to Z, AA, AB, AC."""
    names = [tile.name for tile in tiled([Line((0.0, 0.0), (0.0, 7000.0), "outline")], "a4", (1.0, 1.0)).tiles]
    assert len(names) == 29
    assert names[:2] == ["A1", "B1"]
    assert names[-4:] == ["Z1", "AA1", "AB1", "AC1"]


def test_neighbours_share_their_crosses():
    tiling = tiled(
        [Line((0.0, 0.0), (600.0, 400.0), "outline"), Line((0.0, 400.0), (600.0, 0.0), "outline")], "a4", (1.0, 1.0)
    )
    by_name = {tile.name: {cross.at: cross.joins for cross in tiling.crosses(tile)} for tile in tiling.tiles}
    for name, crosses in by_name.items():
        assert crosses
        for at, joins in crosses.items():
            assert name in joins
            assert all(by_name[other][at] == joins for other in joins)


def test_a_page_to_prove_the_print_costs_less_than_a_joint():
    """190 by 200 mm fits upright A4 alone, with no room for a square; lying it would be cut in two."""
    marks = [Line((0.0, y), (190.0, y), "cut") for y in range(0, 236, 40)]
    tiling = tiled(marks, "a4", (1.0, 1.0))
    assert len(tiling.tiles) == 1
    assert tiling.proof is None
    assert tiling.pages == 2
