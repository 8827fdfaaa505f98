"""Templates on paper: drawings at true scale on as many sheets as they need, with marks to check the print.

Every page says which instrument it is for and has a bar of 100 mm or 4 in, its name and its place on the map; the
first page of a drawing has a square as well. What the printer stretches or shrinks is corrected beforehand if it is
known.
"""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import partial
from math import ceil, pi

from gramil.drawings.marks import Drawing, Polyline
from gramil.measure import LengthUnit
from gramil.paper_sizes import LEAST
from gramil.typeset import typeset
from gramil.writers.crosses import cross_lines, cross_name
from gramil.writers.extents import bounds
from gramil.writers.leaf import Ink, Leaf, leaf
from gramil.writers.lettering import Lettering, clean
from gramil.writers.page_foot import Foot, page_foot
from gramil.writers.page_map import page_map
from gramil.writers.paper import FOOT, MARGIN, Sheet, checked
from gramil.writers.pdf_ink import Placed, fitted, ink_marks, inked, letter
from gramil.writers.plain import Plain, kerf_of, plain, seen_from, true_or_stretched
from gramil.writers.proof_square import Proof
from gramil.writers.set_apart import set_apart
from gramil.writers.shared_pages import Card, card_of, is_small, shared
from gramil.writers.side_by_side import side_by_side
from gramil.writers.spans import Resolve
from gramil.writers.tiles import (
    ROOM_ALONE,
    Cross,
    Tile,
    Tiling,
    named_after,
    proof_on,
    tiled,
    with_a_page_of_lists,
)
from gramil.writers.title_block import with_revision
from gramil.writers.type_widths import WORDS
from gramil.writers.whole_words import LIST, shown_whole, whole_words

HOW_TO_PROVE: Mapping[LengthUnit, str] = {
    "mm": "Measure the square and the bar first: both ways, to a fifth of a millimetre.",
    "in": "Measure the square and the bar first: both ways, to half a 64th of an inch.",
}
HOW_TO_JOIN = (
    "Lay each sheet on its neighbour so that the crosses of one name meet, and tape them.",
    "Measure once more over the joints before you cut.",
)


@dataclass(frozen=True)
class Template:
    """A drawing, or several small ones, ready for its pages: the drawings' names, the marks and the tiling."""

    drawing: Drawing
    names: tuple[str, ...]
    marks: tuple[Plain, ...]
    tiling: Tiling


def tiled_pdf(
    drawings: Sequence[Drawing],
    resolve: Resolve,
    paper: str,
    printer_scale: tuple[float, float] = (1.0, 1.0),
    *,
    heading: str,
    unit: LengthUnit = "mm",
) -> bytes:
    """The drawings as a PDF at true scale, each from a fresh page; small ones last, several to a page.

    `heading` is the instrument's name and scale length, as printed on each page. `printer_scale` is what a
    proof bar measures on a print over what it should: first along the sheet's short side (across a roll), then along
    its long side; `unit` is that of the rule it is measured with. Raises MakersFault for a scale that no printer has.
    """
    return templates_pdf(laid_out(drawings, resolve, paper, printer_scale, unit), heading)


def laid_out(
    drawings: Sequence[Drawing],
    resolve: Resolve,
    paper: str,
    printer_scale: tuple[float, float] = (1.0, 1.0),
    unit: LengthUnit = "mm",
) -> tuple[Template, ...]:
    """The drawings on their pages, in the order of the pages; `unit` is that of the rule that proves the prints.

    Raises MakersFault for a scale that no printer has.
    """
    scale = checked(printer_scale)
    cards = _on_pages([_card(each, resolve, paper, unit) for each in drawings], paper, scale)
    onto = partial(tiled, paper=paper, printer_scale=scale, unit=unit)
    anew = partial(side_by_side, paper=paper, printer_scale=scale, unit=unit)
    return tuple(_laid_out(card, tiling) for whole in cards for card, tiling in _tilings(whole, onto, anew))


OnPages = Sequence[tuple[Card, Tiling]]


def _tilings(card: Card, onto: Callable[..., Tiling], anew: Callable[[Card], OnPages]) -> OnPages:
    """A card on its pages, or its two pieces on theirs where that takes fewer; `onto` lays marks on pages.

    What has a title block is a plan.

    Pieces that may lie anywhere are laid `anew`, unless that takes more: a row of pages then cuts none of them.
    """
    onto = partial(onto, plan=card.drawing.told_at is not None)
    whole: OnPages = [(card, onto(card.marks))]
    if len(whole[0][1].tiles) < 2:
        return whole
    if card.drawing.pieces_apart:
        ways = [_named(anew(card)), whole]
    else:
        pieces = set_apart(card)
        ways = [whole, _named([(each, onto(each.marks)) for each in pieces])]
    return min((way for way in ways if way), key=lambda found: sum(tiling.pages for _, tiling in found))


def _named(found: OnPages) -> OnPages:
    """Cards on their pages, no two of which share a name."""
    cards, tilings = [card for card, _ in found], [tiling for _, tiling in found]
    return list(zip(cards, named_after(tilings), strict=True))


def _laid_out(card: Card, tiling: Tiling) -> Template:
    """A card on its pages: its words find room first, then the square, unless that would cost a page."""
    laid, marks = _with_lists(card, tiling)
    unmoved = laid is tiling and marks == tuple(card.marks)
    proof = laid.proof if unmoved else proof_on(marks, laid)
    if proof is None:
        return Template(card.drawing, card.names, whole_words(card.marks, laid), laid)
    return Template(card.drawing, card.names, marks, replace(laid, proof=proof))


def _with_lists(card: Card, tiling: Tiling) -> tuple[Tiling, tuple[Plain, ...]]:
    """A card's words on its pages, before the square is; a list that has no room on them gets a page more."""
    marks = whole_words(card.marks, replace(tiling, proof=None))
    if len(card.marks) - len(marks) >= LIST:
        more = with_a_page_of_lists(tiling)
        found = whole_words(card.marks, replace(more, proof=None))
        if len(found) - len(marks) >= LIST:
            return more, found
    return tiling, marks


def templates_pdf(templates: Sequence[Template], heading: str) -> bytes:
    """The drawings as laid out, as a PDF."""
    return typeset("templates.typ", {"title": clean(heading), "leaves": leaves(templates, heading)})


def leaves(templates: Sequence[Template], heading: str) -> list[Leaf]:
    """The pages of the drawings as laid out, for the typesetter; a bookmark leads to the first of each."""
    return [leaf for template in templates for leaf in _leaves(template, clean(heading))]


def pages_of(templates: Sequence[Template]) -> dict[str, tuple[int, int]]:
    """The first and the last page of each drawing in the PDF, counted from 1, by its name."""
    found, before = dict[str, tuple[int, int]](), 0
    for template in templates:
        last = before + template.tiling.pages
        found |= {name: (found.get(name, (before + 1, 0))[0], last) for name in template.names}
        before = last
    return found


def _card(drawing: Drawing, resolve: Resolve, paper: str, unit: LengthUnit) -> Card:
    """A drawing's marks, with what its title block says of the paper."""
    with_kerf = replace(drawing, kerf=kerf_of(drawing, resolve))
    return Card(with_kerf, with_revision(drawing, plain(drawing, resolve), paper, unit), (drawing.name,))


def _on_pages(bare: Sequence[Card], paper: str, scale: tuple[float, float]) -> Iterator[Card]:
    """Each drawing by itself, in order; small ones last, several to a page."""
    named = [card_of(card.drawing, card.marks) for card in bare]
    small = [is_small(card, paper, scale) for card in named]
    if sum(small) < 2:
        yield from bare
        return
    yield from (card for card, fits in zip(bare, small, strict=True) if not fits)
    yield from shared([card for card, fits in zip(named, small, strict=True) if fits], paper, scale)


def whole_pdf(drawing: Drawing, resolve: Resolve, *, heading: str, unit: LengthUnit = "mm") -> bytes:
    """The drawing as a PDF at true scale on one page as large as itself: for a roll, or a shop that prints plans."""
    left, low, right, high = bounds(plain(drawing, resolve))
    wide = max(right - left + 2 * ROOM_ALONE + 2 * MARGIN, LEAST)
    tall = max(high - low + 2 * ROOM_ALONE + 2 * MARGIN + FOOT, LEAST)
    short, long = sorted((ceil(wide), ceil(tall)))
    return tiled_pdf([drawing], resolve, f"{short} x {long} mm", heading=heading, unit=unit)


def _leaves(template: Template, heading: str) -> Iterator[Leaf]:
    tiling, bookmark = template.tiling, clean(template.drawing.title)
    size = (tiling.sheet.width, tiling.sheet.height)
    if tiling.proof is None:
        foot = _foot(template, None, heading)
        yield leaf(size, _proof_page(template, foot), _described(foot), bookmark)
    for tile in tiling.tiles:
        foot = _foot(template, tile, heading)
        first = tiling.proof is not None and tile is tiling.tiles[0]
        yield leaf(size, _page(template, tile, foot), _described(foot), bookmark if first else "")


def _described(foot: Foot) -> str:
    """What a page's lines are, for one who does not see them."""
    return f"{foot.title}. {foot.view} {foot.kerf}".strip()


def _page(template: Template, tile: Tile, foot: Foot) -> Iterator[Ink]:
    """The part of a drawing that lies on one page, its crosses and its foot; the square where it found room."""
    tiling = template.tiling
    left, low, _, _ = tile.window
    place = Placed((left, low), (MARGIN, MARGIN + FOOT), tiling.sheet.stretch)
    shown = [mark for mark in template.marks if shown_whole(mark, tile)]
    yield from ink_marks(shown, place, tile.window)
    for cross in tiling.crosses(tile):
        yield from _cross(cross, tile, shown, place)
    if tiling.proof is not None and tile is tiling.tiles[tiling.proof.page]:
        yield from _square(tiling.proof, tiling.sheet, place)
    yield from page_foot(tiling, foot, template.marks)


def _proof_page(template: Template, foot: Foot) -> Iterator[Ink]:
    """A page before the others, if the drawing leaves no room for the square."""
    sheet = template.tiling.sheet
    wide, tall = sheet.window
    place = Placed((0.0, 0.0), (MARGIN, MARGIN + FOOT), sheet.stretch)
    side = sheet.bar
    square = Proof((10.0, tall - side - 10.0), side)
    yield from _square(square, sheet, place)
    top = square.at[1] - 12.0
    for i, line in enumerate((HOW_TO_PROVE[sheet.unit], *(HOW_TO_JOIN if len(template.tiling.tiles) > 1 else ()))):
        mark = Lettering((10.0, top - 6.0 * i), *fitted(line, 3.0, WORDS, wide - 20.0), 0.0, "left", "text")
        yield letter(mark, place)
    right = MARGIN + 10.0 + side + 15.0
    room = (sheet.width - MARGIN - right, side)
    yield from page_map(template.tiling, template.marks, None, (right, sheet.height - MARGIN - 10.0 - side), room)
    yield from page_foot(template.tiling, foot, template.marks)


def _foot(template: Template, tile: Tile | None, heading: str) -> Foot:
    drawing, tiles = template.drawing, template.tiling.tiles
    where = (
        "sheet to prove the print" if tile is None else f"sheet {tile.name}, {tiles.index(tile) + 1} of {len(tiles)}"
    )
    return Foot(
        heading=heading,
        title=f"{clean(drawing.title)}: {where}",
        view=f"{seen_from(drawing)} {true_or_stretched(drawing, template.tiling.sheet.unit)}",
        kerf=str(drawing.kerf),
        tile=tile,
    )


def _cross(cross: Cross, tile: Tile, marks: Sequence[Plain], place: Placed) -> Iterator[Ink]:
    for line in cross_lines(cross.at):
        yield inked(line, place)
    yield letter(cross_name(cross, tile, marks), place)


def _square(proof: Proof, sheet: Sheet, place: Placed) -> Iterator[Ink]:
    """The square, its side written along both directions with the name by which the printer's scale is given."""
    (x, y), side = proof.at, proof.side
    corners = ((x, y), (x + side, y), (x + side, y + side), (x, y + side))
    yield inked(Polyline(corners, "pins", closed=True), place)
    along, up = (f"{sheet.said(side)} {name}" for name in sheet.sides)
    height = min(fitted(text, 2.2, WORDS, side - 12.0)[1] for text in (along, up))
    for text, at, angle in ((along, (x + side / 2, y + 2.0), 0.0), (up, (x + 4.0, y + side / 2), pi / 2)):
        yield letter(Lettering(at, text, height, angle, "middle", "text"), place)
    middle = Lettering((x + side / 2, y + side / 2), "Prove the print", 3.0, 0.0, "middle", "text")
    yield letter(middle, place)
