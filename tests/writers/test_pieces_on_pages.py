"""Templates of several pieces on their pages: no piece is cut where a page holds it, and each still says what it is."""

from collections.abc import Sequence

import pytest
from tests.drawings.conftest import figures_for
from tests.lying_over import lying_over

from gramil.drawings.marks import Drawing, Polyline
from gramil.formatter import Formatter
from gramil.writers.lettering import Lettering
from gramil.writers.pdf import Template, laid_out
from gramil.writers.plain import Plain, plain
from gramil.writers.whole_words import shown_whole

Box = tuple[float, float, float, float]
PAPERS = {"a4": (210.0, 297.0), "letter": (215.9, 279.4)}
EDGE, FOOT, ROOM = 8.0, 26.0, 1.0
"""What a page keeps blank in mm: at each edge, at its foot, round what is cut if it is all on one page."""
MOVED = 3.0
"""In mm: a word may be moved by no more up or down, where it would run over a page's edge; along, it may."""


def on_pages(name: str, hand: str, paper: str) -> tuple[Drawing, Formatter, tuple[Template, ...]]:
    figures = figures_for("corrie", ('handed = "left"', f'handed = "{hand}"'))
    formatter = Formatter(figures, "mm")
    return figures[name], formatter, laid_out([figures[name]], formatter.text, paper)


def box_of(line: Polyline) -> Box:
    xs, ys = zip(*line.points, strict=True)
    return (min(xs), min(ys), max(xs), max(ys))


def is_in(inner: Box, outer: Box) -> bool:
    return inner[0] >= outer[0] and inner[1] >= outer[1] and inner[2] <= outer[2] and inner[3] <= outer[3]


def pieces_of(marks: Sequence[Plain]) -> list[list[Plain]]:
    """Each outer line to cut by, with what follows it up to the next."""
    pieces: list[list[Plain]] = []
    for mark in marks:
        if isinstance(mark, Polyline) and mark.layer == "cut":
            outer = pieces[-1][0] if pieces else None
            if not (isinstance(outer, Polyline) and is_in(box_of(mark), box_of(outer))):
                pieces.append([])
        pieces[-1].append(mark)
    return pieces


def told(marks: Sequence[Plain]) -> dict[tuple[str, int, int], float]:
    """Each word with its piece's width and height: how far over the piece's lower edge it stands, in mm."""
    found = {}
    for outline, *rest in pieces_of(marks):
        assert isinstance(outline, Polyline)
        left, low, right, high = box_of(outline)
        words = (each for each in rest if isinstance(each, Lettering))
        found |= {(each.text, round(right - left), round(high - low)): each.at[1] - low for each in words}
    return found


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize(("name", "pieces"), [("drawing_bevel_arm", 3), ("drawing_openings", 3)])
@pytest.mark.parametrize("hand", ["left", "right"])
def test_every_piece_is_on_some_page_with_its_own_words(name: str, pieces: int, hand: str, paper: str) -> None:
    """A window stays in its board, and no name stands at another template."""
    drawing, formatter, templates = on_pages(name, hand, paper)
    drawn = plain(drawing, formatter.text)
    assert len(pieces_of(drawn)) == pieces
    found = {word: at for each in templates for word, at in told(each.marks).items()}
    for word, at in told(drawn).items():
        assert found[word] == pytest.approx(at, abs=MOVED), word
    for each in templates:
        for tile in each.tiling.tiles:
            assert lying_over([mark for mark in each.marks if shown_whole(mark, tile)]) == []
        words = [mark for mark in each.marks if isinstance(mark, Lettering)]
        assert all(any(shown_whole(word, tile) for tile in each.tiling.tiles) for word in words)


@pytest.mark.parametrize("paper", PAPERS)
def test_a_template_that_a_page_holds_is_not_cut_by_the_edge_of_one(paper: str) -> None:
    """The outside template of an oval hole's rosette had lain over three pages."""
    _, _, templates = on_pages("drawing_openings", "left", paper)
    short, long = PAPERS[paper]
    for each in templates:
        windows = [tile.window for tile in each.tiling.tiles]
        for outline in (box_of(piece[0]) for piece in pieces_of(each.marks) if isinstance(piece[0], Polyline)):
            wide, tall = outline[2] - outline[0] + 2 * ROOM, outline[3] - outline[1] + 2 * ROOM
            assert wide <= short - 2 * EDGE  # a page holds it
            assert tall <= long - 2 * EDGE - FOOT
            assert any(is_in(outline, window) for window in windows)
    assert sum(each.tiling.pages for each in templates) <= 3
