"""Two pieces of one drawing on pages of their own: nothing that is cut is lost, each has its own words."""

from gramil.drawings.marks import Drawing, Line, Polyline, Words
from gramil.writers.lettering import Lettering
from gramil.writers.pdf import laid_out, pages_of


def half(low: float, high: float) -> Polyline:
    return Polyline(((0.0, low), (300.0, low), (300.0, high), (0.0, high)), "cut", closed=True)


def drawn(*marks: Polyline | Line | Words) -> Drawing:
    return Drawing("mould", "a mould", "the face", marks)


def test_two_halves_take_fewer_pages_apart_than_with_the_gap_between_them() -> None:
    """Each is 246 mm tall: one row of A4 upright has 255 mm for it, two rows have 500 and the pair takes 508."""
    words = (Words((10.0, 265.0), "over the upper"), Words((10.0, -240.0), "in the lower"))
    drawing = drawn(half(8.0, 254.0), half(-254.0, -8.0), Line((0.0, 0.0), (300.0, 0.0), "centreline"), *words)
    upper, lower = laid_out([drawing], str, "a4")
    assert len(upper.tiling.tiles) == len(lower.tiling.tiles) == 2
    assert [mark for mark in upper.marks if isinstance(mark, Polyline)] == [half(8.0, 254.0)]
    assert [mark for mark in lower.marks if isinstance(mark, Polyline)] == [half(-254.0, -8.0)]
    said = [{mark.text for mark in each.marks if isinstance(mark, Lettering)} for each in (upper, lower)]
    assert said == [{"over the upper"}, {"in the lower"}]
    assert pages_of((upper, lower)) == {"mould": (1, 4)}


def test_what_takes_no_fewer_pages_apart_stays_together() -> None:
    assert len(laid_out([drawn(half(4.0, 40.0), half(-40.0, -4.0))], str, "a4")) == 1
    assert len(laid_out([drawn(half(-300.0, 300.0))], str, "a4")) == 1


def test_no_two_pages_of_the_two_pieces_have_one_name() -> None:
    names = [
        [tile.name for tile in each.tiling.tiles]
        for each in laid_out([drawn(half(8.0, 254.0), half(-254.0, -8.0))], str, "a4")
    ]
    assert names == [["A1", "A2"], ["B1", "B2"]]
