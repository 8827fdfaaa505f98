"""The examples' templates on their pages: none of them empty, the way round that takes the fewest, cards together."""

from collections.abc import Iterator
from importlib.resources import as_file, files
from math import ceil
from pathlib import Path

import pytest
from tests.lying_over import lying_over

from gramil.cli.options import opened_with_work
from gramil.drawings.marks import Drawing, Polyline
from gramil.formatter import Formatter
from gramil.pack import PLANS
from gramil.prints.papers import is_template
from gramil.prints.whole import drawings_of
from gramil.writers.beside import labels_on
from gramil.writers.crosses import cross_lines, cross_name
from gramil.writers.lettering import Lettering
from gramil.writers.pdf import Template, laid_out, leaves, pages_of
from gramil.writers.plain import Plain, plain
from gramil.writers.tiles import Tile
from gramil.writers.whole_words import shown_whole

PAPERS = {"a4": (210.0, 297.0), "letter": (215.9, 279.4)}
"""Short and long side in mm: ISO 216, and 8 1/2 by 11 inches."""
EDGE, FOOT, OVERLAP, ROOM = 8.0, 26.0, 10.0, 3.0
"""What a page keeps blank in mm: at each edge, at its foot, where two overlap, and round the shape."""
MOST = {"a4": 40, "letter": 42}
"""Pages of the templates of any example, in all; *Tarn*, on A4, takes 40 at the most."""
Opened = tuple[list[Drawing], Formatter]


@pytest.fixture(scope="module", params=["tarn", "fell", "scree", "mere"])
def opened(request: pytest.FixtureRequest) -> Opened:
    with as_file(files("gramil") / "data" / "examples") as examples:
        figures, formatter, _ = opened_with_work(Path(examples / f"{request.param}.toml"), Path(examples / "shop.toml"))
    return [each for each in drawings_of(figures) if is_template(each) and each.name not in PLANS], formatter


@pytest.fixture(scope="module", params=["a4", "letter"])
def on_paper(request: pytest.FixtureRequest, opened: Opened) -> tuple[str, tuple[Template, ...]]:
    drawings, formatter = opened
    return request.param, laid_out(drawings, labels_on(drawings, formatter), request.param)


def reach(mark: Plain) -> tuple[list[float], list[float]]:
    """The coordinates that say how far a mark reaches, taken generously for arcs: by their whole circle."""
    if hasattr(mark, "centre"):
        (x, y), r = mark.centre, mark.radius
        return [x - r, x + r], [y - r, y + r]
    points = mark.points if hasattr(mark, "points") else (mark.start, mark.end)  # type: ignore[union-attr]
    return [x for x, _ in points], [y for _, y in points]


def shape(template: Template) -> list[Plain]:
    beside = ("text", "dimensions", "list")
    return [mark for mark in template.marks if not isinstance(mark, Lettering) and mark.layer not in beside]


def full_grid(wide: float, tall: float, page: tuple[float, float]) -> int:
    """How many pages of a size hold a shape if none is left out."""
    across, up = page[0] - 2 * EDGE, page[1] - 2 * EDGE - FOOT
    if wide + 2 <= across and tall + 2 <= up:
        return 1
    return ceil((wide + 2 * ROOM - OVERLAP) / (across - OVERLAP)) * ceil((tall + 2 * ROOM - OVERLAP) / (up - OVERLAP))


def test_neither_way_round_would_take_fewer_pages(on_paper: tuple[str, tuple[Template, ...]]) -> None:
    paper, templates = on_paper
    short, long = PAPERS[paper]
    for each in templates:
        xs, ys = zip(*map(reach, shape(each)), strict=True)
        wide, tall = (max(map(max, along)) - min(map(min, along)) for along in (xs, ys))
        least = min(full_grid(wide, tall, page) for page in ((short, long), (long, short)))
        assert len(each.tiling.tiles) <= least, each.names


def test_no_page_is_empty(on_paper: tuple[str, tuple[Template, ...]]) -> None:
    """Something to cut reaches into every page: some point of the shape, or a line between two of them, lies in it."""
    for each in on_paper[1]:
        boxes = [(min(xs), min(ys), max(xs), max(ys)) for xs, ys in map(reach, shape(each))]
        for tile in each.tiling.tiles:
            left, low, right, high = tile.window
            assert any(b[0] <= right and b[2] >= left and b[1] <= high and b[3] >= low for b in boxes), each.names


def test_few_pages_in_all_and_each_template_on_some(on_paper: tuple[str, tuple[Template, ...]], opened: Opened) -> None:
    paper, templates = on_paper
    pages = pages_of(templates)
    assert set(pages) == {each.name for each in opened[0]}
    tarn = any(each.title.startswith("Tarn") for each in opened[0])
    assert max(last for _, last in pages.values()) <= (40 if (paper, tarn) == ("a4", True) else MOST[paper])


def test_small_cards_share_a_page(on_paper: tuple[str, tuple[Template, ...]]) -> None:
    assert any(len(each.names) > 1 for each in on_paper[1])


def test_no_words_lie_over_a_line_or_other_words_on_any_page(on_paper: tuple[str, tuple[Template, ...]]) -> None:
    """The crosses that join pages, their names and the square that proves the print among them."""
    found = {
        (each.names, tile.name): over
        for each in on_paper[1]
        for tile in each.tiling.tiles
        if (over := lying_over([*on_page(each, tile)]))
    }
    assert found == {}


def on_page(template: Template, tile: Tile) -> Iterator[Plain]:
    shown = [mark for mark in template.marks if shown_whole(mark, tile)]
    yield from shown
    for cross in template.tiling.crosses(tile):
        yield from cross_lines(cross.at)
        yield cross_name(cross, tile, shown)
    proof = template.tiling.proof
    if proof is not None and template.tiling.tiles[proof.page] is tile:
        (x, y), side = proof.at, proof.side
        yield Polyline(((x, y), (x + side, y), (x + side, y + side), (x, y + side)), "pins", closed=True)


def test_no_word_of_a_template_is_left_out(on_paper: tuple[str, tuple[Template, ...]], opened: Opened) -> None:
    """Lists of braces among them: each word stands whole on some page, with its 64ths in inches."""
    drawings, formatter = opened
    read = labels_on(drawings, formatter)
    printed = {name: set[str]() for each in on_paper[1] for name in each.names}
    for each in on_paper[1]:
        words = {mark.text for tile in each.tiling.tiles for mark in on_page(each, tile) if isinstance(mark, Lettering)}
        for name in each.names:
            printed[name] |= words
    for drawing in drawings:
        wanted = {mark.text for mark in plain(drawing, read) if isinstance(mark, Lettering)}
        assert wanted - printed[drawing.name] == set(), drawing.name


def test_a_brace_is_cut_by_no_edge_of_a_page_unless_it_is_longer_and_keeps_its_words(
    on_paper: tuple[str, tuple[Template, ...]], opened: Opened
) -> None:
    """Its words stand to its outline as they do in the drawing: moved, they had stood at another brace."""
    drawings, formatter = opened
    drawn = [plain(each, labels_on(drawings, formatter)) for each in drawings if each.name == "braces"]
    wanted = [words for marks in drawn for words in said_of(marks)]
    laid = [each for each in on_paper[1] if each.names == ("braces",)]
    assert sorted(words for each in laid for words in said_of(each.marks)) == sorted(wanted)
    for each in laid:
        windows = [tile.window for tile in each.tiling.tiles]
        for outline in outlines(each.marks):
            xs, ys = reach(outline)
            held = [w for w in windows if w[1] <= min(ys) and max(ys) <= w[3]]
            assert held, each.drawing.title
            whole = any(w[0] <= min(xs) and max(xs) <= w[2] for w in held)
            assert whole or max(xs) - min(xs) > windows[0][2] - windows[0][0] - 2 * ROOM


def outlines(marks: tuple[Plain, ...]) -> list[Polyline]:
    return [mark for mark in marks if isinstance(mark, Polyline) and mark.layer == "cut"]


def said_of(marks: tuple[Plain, ...]) -> list[tuple[str, float, float]]:
    """Each word with how far it stands from the lower left of the outline before it, to a hundredth of a millimetre."""
    found, corner = [], (0.0, 0.0)
    for mark in marks:
        if isinstance(mark, Polyline):
            corner = (min(x for x, _ in mark.points), min(y for _, y in mark.points))
        elif isinstance(mark, Lettering):
            found.append((mark.text, round(mark.at[0] - corner[0], 2), round(mark.at[1] - corner[1], 2)))
    return found


def test_every_page_says_who_allows_for_the_kerf_and_its_foot_is_whole(
    on_paper: tuple[str, tuple[Template, ...]],
) -> None:
    for each in on_paper[1]:
        words = [
            word["text"]
            for leaf in leaves([each], "Some instrument, scale 650.00 mm, left hand")
            for word in leaf["words"]
        ]
        assert [text for text in words if "…" in text] == [], each.names
        assert any(text.startswith("Kerf: ") for text in words), each.names
