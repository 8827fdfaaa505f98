"""Gauge cards to be cut from sheet: the arch at three stations, the slot's depth, the thickness."""

from math import cos, sin

from gramil import names as n
from gramil.drawings.kerf import Machine, cut_by
from gramil.drawings.marks import Anchor, Drawing, Label, Line, Mark, Marks, Point, Polyline, Words
from gramil.drawings.pen import fitted
from gramil.parts.cards import ArchCard, DepthCard, GapCard
from gramil.quantities import Mm

OWNS = ("drawing_", "piece_")

OVER, UNDER, APART = 16.0, 15.0, 8.0
"""In mm: sheet over and under an arch card's crest, and between two cards."""
SMALL_CARD = (42.0, 24.0)
"""Width and height of a depth card's body, in mm."""
TONGUE = 4.0
"""Width of a depth card's tongue: so narrow that an arch under its shoulders does not lift it by 0.01 mm."""
STEPS = 64
"""Straight pieces in which an arch is drawn."""
THROAT, JAW = 14.0, 9.0
"""How deep a gap card's gap is, and the sheet on either side of it, in mm."""


def piece_arch_cards(card_arches: tuple[ArchCard, ...], instrument_name: str) -> Marks:
    """Arch cards one below the other, nut first: each a hollow one for the board, and its twin for the block."""
    marks: list[Mark] = []
    crest = 0.0
    for card in card_arches:
        foot = crest - APART - _fall_at_end(card)
        marks += (*_hollow_card(card, (0.0, crest), instrument_name), *_full_card(card, (0.0, foot)))
        crest = foot - _under(card) - APART - OVER
    return tuple(marks)


def _fall_at_end(card: ArchCard) -> Mm:
    return card.radius * (1 - cos(card.half_angle)) if card.half_angle else 0.0


def _under(card: ArchCard) -> Mm:
    """Sheet under an arch card's crest: past the ticks at its edges, however far those fall."""
    return max(UNDER, card.fall + 5.0)


def _hollow_card(card: ArchCard, crest: Point, name: str) -> Marks:
    x, y = crest
    return (
        Polyline((*_edge(card, crest), (x + card.reach, y + OVER), (x - card.reach, y + OVER)), "cut", closed=True),
        *(Line((x + side, y - card.fall + 1.0), (x + side, y - card.fall + 4.0), "text") for side in _sides(card)),
        fitted((x, y + 12.8), name, 1.9 * card.reach, 2.2),
        fitted((x, y + 9.8), f"{card.name}: hollow, for the board", 1.9 * card.reach, 2.2),
        _radius_of(card, (x, y + 3.8), 4.0, "middle"),
    )


def _radius_of(card: ArchCard, at: Point, height: Mm, anchor: Anchor = "left") -> Label:
    """An arch's radius as it is written on drawings, or that it is flat."""
    return Label(at, n.card_arches[card.name].radius, "R " if card.half_angle else "", height=height, anchor=anchor)


def _full_card(card: ArchCard, crest: Point) -> Marks:
    x, y = crest
    low = y - _under(card)
    return (
        Polyline((*_edge(card, crest), (x + card.reach, low), (x - card.reach, low)), "cut", closed=True),
        *(Line((x + side, y - card.fall - 1.0), (x + side, y - card.fall - 4.0), "text") for side in _sides(card)),
        Label((x, y - 7.0), n.card_arches[card.name].fall, "edge falls ", height=2.4, anchor="middle"),
        fitted((x, y - 12.5), f"{card.name}: full, for the block", 1.9 * card.reach, 2.2),
    )


def _sides(card: ArchCard) -> tuple[Mm, Mm]:
    return (-card.half_width, card.half_width)


def _edge(card: ArchCard, crest: Point) -> tuple[Point, ...]:
    """The arch from the card's left side to its right one."""
    x, y = crest
    if card.half_angle == 0:
        return ((x - card.reach, y), (x + card.reach, y))
    angles = [card.half_angle * (2 * step / STEPS - 1) for step in range(STEPS + 1)]
    return tuple((x + card.radius * sin(angle), y - card.radius * (1 - cos(angle))) for angle in angles)


def piece_depth_cards(card_depths: tuple[DepthCard, ...], card_arches: tuple[ArchCard, ...]) -> Marks:
    """Depth cards beside the arch cards, tongue down."""
    left = max(card.reach for card in card_arches) + APART
    marks: list[Mark] = []
    foot = OVER
    for card in card_depths:
        marks += _depth_card(card, (left, foot - SMALL_CARD[1]))
        foot -= SMALL_CARD[1] + max(APART, card.depth + APART / 2)
    marks += [
        Words((left, foot), "Depth cards: thinner", 2.2),
        Label((left, foot - 4.0), n.saw_kerf, "than the slot, ", height=2.2),
    ]
    return tuple(marks)


def _depth_card(card: DepthCard, shoulder: Point) -> Marks:
    x, y = shoulder
    wide, tall = SMALL_CARD
    middle = x + wide / 2
    low, left, right = y - card.depth, middle - TONGUE / 2, middle + TONGUE / 2
    body = (
        (x, y + tall),
        (x, y),
        (left, y),
        (left, low),
        (right, low),
        (right, y),
        (x + wide, y),
        (x + wide, y + tall),
    )
    return (
        Polyline(body, "cut", closed=True),
        Words((middle, y + tall - 6.0), card.name, 2.4, anchor="middle"),
        Label((middle, y + 8.0), n.card_depths[card.name].depth, height=4.0, anchor="middle"),
    )


def piece_gap_cards(card_gaps: tuple[GapCard, ...], card_arches: tuple[ArchCard, ...]) -> Marks:
    """Thickness cards in a third row, gap to the right."""
    left = max(card.reach for card in card_arches) + 2 * APART + SMALL_CARD[0]
    marks: list[Mark] = []
    top = OVER
    for card in card_gaps:
        marks += _gap_card(card, (left, top))
        top -= card.thickness + 2 * JAW + APART
    return (*marks, Words((left, top), "Thickness cards", 2.2))


def _gap_card(card: GapCard, corner: Point) -> Marks:
    x, top = corner
    upper, lower, foot = top - JAW, top - JAW - card.thickness, top - 2 * JAW - card.thickness
    right, throat = x + SMALL_CARD[0] + THROAT, x + SMALL_CARD[0]
    points = (
        (x, top),
        (x, foot),
        (right, foot),
        (right, lower),
        (throat, lower),
        (throat, upper),
        (right, upper),
        (right, top),
    )
    return (
        Polyline(points, "cut", closed=True),
        Words((x + 3.0, top - 6.0), card.name, 2.4),
        Label((x + 3.0, foot + 5.0), n.card_gaps[card.name].thickness, height=4.0),
    )


def drawing_gauges(
    instrument_name: str,
    piece_laser: Machine,
    piece_arch_cards: Marks,
    piece_depth_cards: Marks,
    piece_gap_cards: Marks,
) -> Drawing:
    """Every gauge card of the board on one sheet.

    Used at: slotted, arched, fretted.
    """
    marks = (*piece_arch_cards, *piece_depth_cards, *piece_gap_cards)
    return cut_by(piece_laser, Drawing("gauges", f"{instrument_name}, gauge cards", "either side", marks))
