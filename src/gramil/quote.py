"""The quote of an instrument as a page to hand over: hours by part, materials, a plain total."""

from datetime import datetime

from gramil import names as n
from gramil.formatter import NOT_KNOWN, Formatter
from gramil.graph import Figures
from gramil.measure import LengthUnit
from gramil.now.costs import Cost
from gramil.sheets.quote_sheet import Quote, quote_pdf

FACTS = (
    ("Scale", n.scale_bass),
    ("Frets", n.scale_frets),
    ("Body at fret", n.scale_join),
    ("Width at the nut", n.nut_width),
    ("Fretboard", n.board_wood),
    ("Sides", n.body_side_wood),
)
"""What a quote says of the instrument: words and addresses."""
OF_OLD = FACTS[:-1]
"""The same of a guitar that came in, as far as it is known."""


ESTIMATE = "An estimate, from hours and prices as they are known now: it binds nobody until it is agreed in writing."


def amount(value: float, money: str) -> str:
    """An amount of money, with its currency if that was said."""
    return f"{value:.2f} {money}".strip()


def notes_of(figures: Figures) -> list[str]:
    """What a quote is, and which of the instrument's woods are protected or may be."""
    permits = (each.permit for each in figures[n.stuff_list] if each.permit)
    return [ESTIMATE, *dict.fromkeys(permits)]


def _facts(figures: Figures, formatter: Formatter) -> list[tuple[str, str]]:
    """What the quote says of the instrument; of a guitar that came in, what is known of it."""
    old = figures[n.repair_described]
    told = [(word, formatter.text(address)) for word, address in (OF_OLD if old else FACTS)]
    return [(word, text) for word, text in told if not old or text != NOT_KNOWN]


def quote_of(figures: Figures, cost: Cost, money: str, customer: str, now: datetime, paper: str) -> bytes:
    """The quote sheet as a PDF."""
    first: LengthUnit = figures[n.instrument_units]
    formatter = Formatter(figures, first)
    parts = [(each.part.capitalize(), each.done + each.left) for each in cost.hours]
    return quote_pdf(
        Quote(
            str(figures[n.instrument_name]),
            str(figures[n.shop_name]),
            customer,
            f"{now.day} {now:%B %Y}",
            _facts(figures, formatter),
            [(part, f"{hours:.1f} h", amount(hours * cost.rate, money)) for part, hours in parts],
            [(each.what, "", "" if each.cost is None else amount(each.cost, money)) for each in cost.materials],
            amount(cost.total, money),
            [*notes_of(figures), *([f"Not in the total: {', '.join(cost.without)}."] if cost.without else [])],
        ),
        paper,
    )
