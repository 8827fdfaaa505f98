"""Sheets as text, in the order of the work, for `sheet.typ` to set: measured values beside wanted ones."""

import hashlib
import json
from collections.abc import Sequence
from typing import Any, TypedDict

from gramil import names as n
from gramil.formatter import NOT_KNOWN, Formatter
from gramil.prints.pages import FigureText, PageText, named_on, safe
from gramil.prints.work_sheets import page_of_work
from gramil.reference import Ref
from gramil.sheets.sheet import Sheet, made_text, read_on

LONGEST_TITLE = 70
"""Characters of an instrument's name that a sheet's head holds."""


class Row(TypedDict):
    """One line of the order of work: an operation with its sheet's number, or why it is not needed."""

    title: str
    sheet: int
    closed: str


class Book(TypedDict):
    """All sheets of an instrument."""

    title: str
    shop: str
    notice: str
    revision: str
    order: list[Row]
    pages: list[PageText]


def book(sheets: Sequence[Sheet], formatter: Formatter, title: str) -> Book:
    """The sheets as text, in the order given; `revision` changes whenever anything on one of them does."""
    pages = [sheet_text(sheet, formatter) for sheet in sheets if not sheet.setup.closed]
    order = _order(sheets, formatter)
    notice = (
        "No shop was given: a usual one stands in. Measure your own wire, saws and cutters before you cut."
        if formatter.figures[n.shop_is_default]
        else ""
    )
    short = title if len(title) <= LONGEST_TITLE else title[: LONGEST_TITLE - 1].rstrip() + "…"
    state = json.dumps([title, order, pages], sort_keys=True).encode()
    revision = hashlib.sha256(state).hexdigest()[:6]
    return Book(
        title=safe(short),
        shop=safe(formatter.text(n.shop_name)),
        notice=notice,
        revision=revision,
        order=order,
        pages=pages,
    )


def _order(ordered: Sequence[Sheet], formatter: Formatter) -> list[Row]:
    rows, number = [], 0
    for sheet in ordered:
        setup, own = sheet.setup, sheet.formatter(formatter)
        number += not setup.closed
        rows.append(Row(title=setup.title, sheet=0 if setup.closed else number, closed=safe(own.filled(setup.closed))))
    return rows


def sheet_text(sheet: Sheet, formatter: Formatter) -> PageText:
    """One sheet as text, in the units of `formatter`."""
    own = sheet.formatter(formatter)
    found, big = page_of_work(sheet.setup, sheet.also, own), [figure.figure for figure in sheet.setup.figures]
    found["figures"] = [
        _with_made(text, sheet, figure, own) for text, figure in zip(found["figures"], big, strict=True)
    ]
    found["made"] = [safe(_made(figure, sheet, own)) for figure in sheet.measured if figure not in big]
    return found


def _with_made(text: FigureText, sheet: Sheet, figure: Ref[Any], own: Formatter) -> FigureText:
    return {**text, "made": safe(made_text(sheet.off(figure), own, read_on(sheet, figure)))}


def _made(figure: Ref[Any], sheet: Sheet, own: Formatter) -> str:
    return f"{named_on(sheet.setup, figure, own)}: {made_text(sheet.off(figure), own, read_on(sheet, figure))}"


def made_lines(sheet: Sheet, formatter: Formatter) -> list[str]:
    """Every measured figure on a sheet: what it should be, what was made, how far it is off."""
    own = sheet.formatter(formatter)
    return [
        f"{named_on(sheet.setup, figure, own)}: {_and_wanted(own.text(figure))}"
        f"{made_text(sheet.off(figure), own, read_on(sheet, figure))}"
        for figure in sheet.measured
    ]


def _and_wanted(text: str) -> str:
    """What a figure should be, before what it was found as; nothing where nothing was wanted."""
    return "" if text == NOT_KNOWN else f"{text}, "
