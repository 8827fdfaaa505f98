"""All that the maker gets of an instrument, by paper: the oracle of what differs between two states.

It is the SVG text of every drawing and the typesetter's input of every sheet and page. Each paper notes which figures
were read for it as it was made; of another state only those papers are made again of whose figures one has moved.
"""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field, fields, is_dataclass
from functools import lru_cache
from typing import Any

from gramil import names as n
from gramil.formatter import Formatter, formatter_of
from gramil.graph import Figures, same
from gramil.prints.book_pages import front_pages
from gramil.prints.pages import FrontPage
from gramil.prints.papers import ON_SHEETS
from gramil.prints.whole import drawings_of
from gramil.sheets.own_sheet import every_sheet, setup_sheets
from gramil.sheets.sheet import Sheet
from gramil.sheets.sheet_pages import book, sheet_text
from gramil.shop.operations import Work
from gramil.writers.cents_map import cents_map_svg
from gramil.writers.svg import svg_text


@dataclass(frozen=True, eq=False)
class Noting(Figures):
    """Figures that note which of them were read."""

    asked: set[str] = field(default_factory=set)
    __eq__, __hash__ = object.__eq__, object.__hash__

    def __getitem__(self, name: Any) -> Any:
        self.asked.add(str(name))
        return super().__getitem__(name)


@dataclass(frozen=True)
class Made:
    """A paper as given to the maker, what it was made of besides figures, and the figures that were read for it."""

    shown: Any
    of: Any
    asked: frozenset[str]


Maker = tuple[str, Any, Callable[[], Any]]
"""A paper's name, what it is made of besides figures, and how."""


def noting(figures: Figures) -> Noting:
    """The same figures, every one of them worked out, so that only what a paper itself reads is noted."""
    every = {name: figures[name] for name in figures.graph.order}
    return Noting(figures.graph, figures.base, figures.origins, figures.pins, figures.lengths, every)


def moved(old: Figures, new: Figures) -> frozenset[str]:
    """The names of every figure, set-up and drawing that differs."""
    return frozenset(name for name in old.graph.order if new[name] is not old[name] and not alike(old[name], new[name]))


def alike(one: Any, other: Any) -> bool:
    """Whether two figures are the same, to the last field of their records; what is no number is like itself."""
    if one is other:
        return True
    if type(one) is not type(other):
        return False
    if isinstance(one, tuple | list):
        return len(one) == len(other) and all(map(alike, one, other))
    if is_dataclass(one):
        return all(alike(getattr(one, each.name), getattr(other, each.name)) for each in fields(one))
    return same(one, other)


def given(
    figures: Noting, work: Work, known: Mapping[str, Made] | None = None, differ: frozenset[str] = frozenset()
) -> dict[str, Made]:
    """Every paper; one that is `known` of another state is taken over if none of the figures read for it `differ`."""
    found: dict[str, Made] = {}
    for name, of, make in makers(figures, work):
        before = (known or {}).get(name)
        if before is None or before.of != of or before.asked & differ:
            figures.asked.clear()
            before = Made(make(), of, frozenset(figures.asked))
        found[name] = before
    return found


def by_paper(made: Mapping[str, Made], figures: Figures) -> dict[str, object]:
    """What each paper shows: a sheet its words and its drawing, and the pages of the build book each by itself."""
    shown = {name: each.shown for name, each in made.items()}
    pages = {page["title"]: page for page in shown.pop("pages") if page["title"] != figures[n.instrument_name]}
    sheets = {
        name: (each.shown, shown.get(_drawing_on(each.of[0], figures)))
        for name, each in made.items()
        if name.startswith("sheet ")
    }
    return {**{name: each for name, each in shown.items() if not name.startswith(ON_SHEETS)}, **sheets, **pages}


def makers(figures: Figures, work: Work) -> Iterator[Maker]:
    formatter = formatter_of(figures)
    for drawing in drawings_of(figures):
        yield drawing.name, drawing, lambda drawing=drawing: _svg(drawing, formatter)
    for sheet in every_sheet(figures, work):
        if not sheet.setup.closed:
            of = (sheet.setup, sheet.also, sheet.measure)
            yield f"sheet {sheet.setup.name}", of, lambda sheet=sheet: sheet_text(sheet, formatter)
    yield "Order of work", None, lambda: _order(setup_sheets(figures, work), formatter)
    yield "cents-map", None, lambda: cents_map_svg(figures).replace(figures[n.instrument_name], "")
    yield "pages", None, lambda: pages_of(formatter)


def pages_of(formatter: Formatter) -> tuple[FrontPage, ...]:
    """The build book's own pages, of one state once."""
    assert isinstance(formatter.figures, Noting)
    return _pages(formatter.figures)


@lru_cache(maxsize=4)
def _pages(figures: Noting) -> tuple[FrontPage, ...]:
    return tuple({**page, "tables": list(page["tables"])} for page in front_pages(formatter_of(figures)))


def _svg(drawing: Any, formatter: Formatter) -> str:
    return svg_text(drawing, formatter.said).replace(f"{formatter.figures[n.instrument_name]}, ", "")


def _order(sheets: tuple[Sheet, ...], formatter: Formatter) -> str:
    closed = book([each for each in sheets if each.setup.closed], formatter, "")["order"]
    return str([*(each.setup.title for each in sheets), *((row["title"], row["closed"]) for row in closed)])


def _drawing_on(setup: Any, figures: Figures) -> str:
    return "" if setup.drawing is None else str(figures[setup.drawing].name)
