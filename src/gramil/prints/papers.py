"""Every paper of an instrument: what would be printed on it, and which papers differ between two states.

A paper is stale when what is printed on it differs: its texts, and its marks to a thousandth of a millimetre. The lines
at the head and foot of every page (instrument, revision, date) do not count. This is the only place that
decides what a change makes stale, whether of the description, of the shop, or of what was measured.
"""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, fields
from itertools import chain, zip_longest
from typing import Any, Literal

from gramil import names as n
from gramil.drawings.marks import Drawing, Marks
from gramil.formatter import formatter_of
from gramil.graph import Figures
from gramil.layers import strokes
from gramil.prints.book_pages import front_pages
from gramil.prints.came_in import as_known, is_of
from gramil.prints.cents import PANELS, cents_printed
from gramil.prints.lazily import Lazily
from gramil.prints.pages import safe
from gramil.prints.sharing import changed, share
from gramil.prints.whole import drawings_of, is_drawn, names_of, setups_of
from gramil.prints.work_sheets import Minded, minded, own_setup, page_of_work, sharing
from gramil.reference import Ref, filled
from gramil.setups.setup import Setup
from gramil.shop.operations import Operation, Work

Kind = Literal["sheet", "drawing", "template", "cut file", "page of the build book"]
ON_SHEETS = "setup-"
"""What the names of drawings start with that stand on set-up sheets alone."""
ORDER = "Order of work"
"""The title of the list ahead of the sheets."""
CENTS = frozenset(name.address for _, *shown in PANELS for name in (*shown, n.strings_frequency, n.intonation_weights))
"""What the map of cents hangs on."""
THOUSANDTH = 0.001
"""Marks that lie no further apart than this, in mm, are drawn alike."""


@dataclass(frozen=True)
class Paper:
    """A paper: its short name (a sheet's, a drawing's file), what it is, and its title as a maker reads it.

    A cut file is what a machine cuts a template by, told where that alone is no longer true.
    """

    name: str
    kind: Kind
    title: str


@dataclass(frozen=True)
class Print:
    """A paper and all that is printed on it, as plain values that can be compared: words and figures, and the marks of
    its drawing.
    """

    paper: Paper
    printed: Any = ()
    drawn: Lazily = field(default_factory=lambda: Lazily(()))


def is_template(drawing: Drawing) -> bool:
    """Whether a drawing is one to cut by: at true scale, and not a picture on a set-up sheet."""
    return drawing.scale == drawing.stretch == 1.0 and not drawing.name.startswith(ON_SHEETS)


def papers_that_differ(old: Figures, new: Figures, work: Work | None = None) -> tuple[Paper, ...]:
    """Every paper whose print differs, or which only one of the two has, in the graph's order.

    With the `work` that is needed, sheets carry their operations' cautions, and sheets of operations without a set-up
    are among the papers. A different name of the instrument does not count. Only papers that depend on what changed are
    compared.
    """
    renamed = {**new.base, n.instrument_name.address: old[n.instrument_name]}
    named = new if new[n.instrument_name] == old[n.instrument_name] else new.with_base(renamed)
    differ = changed(old, named)
    share(old, named, differ)
    touched = {*differ, *old.graph.hung_from(differ)}
    if n.repair_described.address in differ:
        touched |= {*names_of(old, "setup_"), *names_of(old, "drawing_")}
    sheets = [name for name in names_of(old, "setup_") if name in touched or (work and n.stuff_list.address in touched)]
    names = (*sheets, *(name for name in names_of(old, "drawing_") if name in touched))
    graph = (_either(one_print(old, name, work), one_print(named, name, work)) for name in names)
    own = _own_sheets_that_differ(own_prints(old, work), own_prints(named, work))
    pages = _pages_that_differ(old, named)
    map_of_cents = _either(cents_print(old), cents_print(named)) if CENTS & touched else None
    cut = _cut_files_that_differ(old, named) if n.shop_layers.address in touched else ()
    return tuple(paper for paper in (*graph, *cut, *own, *pages, map_of_cents) if paper is not None)


def _cut_files_that_differ(old: Figures, new: Figures) -> Iterator[Paper]:
    """The files that a machine cuts by in which a layer stands in another colour or weight; paper shows neither."""
    before, after = (strokes(each[n.shop_layers]) for each in (old, new))
    inked = {layer for layer in after if before[layer] != after[layer]}
    for drawing in filter(is_template, drawings_of(new)):
        if not inked.isdisjoint(mark.layer for mark in drawing.marks):
            yield Paper(drawing.name, "cut file", _title(new, drawing))


def one_print(figures: Figures, name: str, work: Work | None = None) -> Print | None:
    """What is printed on the sheet or drawing of this name; None if the instrument has no such paper."""
    if not (is_drawn(figures, name) if name.startswith("drawing_") else is_of(figures, name)):
        return None
    made = figures[name]
    if isinstance(made, Setup):
        made = as_known(figures, made.name)
        return None if made.closed else sheet_print(figures, made, sharing(made, work) if work else ())
    if not made.marks or made.name.startswith(ON_SHEETS):
        return None
    kind: Kind = "template" if is_template(made) else "drawing"
    return Print(Paper(made.name, kind, _title(figures, made)), drawn=_drawn(figures, made))


def sheet_print(figures: Figures, setup: Setup, operations: Sequence[Operation] = ()) -> Print:
    """What is printed on the sheet of these operations: its words and figures, and its drawing."""
    return sheet_as_printed(figures, setup, minded(setup, operations))


def sheet_as_printed(figures: Figures, setup: Setup, also: Minded) -> Print:
    """What is printed on a sheet that has more cautions than its set-up."""
    drawn = Lazily(()) if setup.drawing is None else _drawn(figures, figures[setup.drawing])
    page = Lazily(page_of_work(setup, also, formatter) for formatter in (formatter_of(figures),))
    return Print(Paper(setup.name, "sheet", setup.title), page, drawn)


def own_prints(figures: Figures, work: Work | None) -> Mapping[str, Print]:
    """What is printed on the sheets of operations without a set-up, by their names."""
    operations = work.operations.values() if work else ()
    found = ((each, own_setup(each, figures)) for each in operations if not each.sheet)
    return {each.name: sheet_print(figures, setup, (each,)) for each, setup in found if setup is not None}


def _own_sheets_that_differ(old: Mapping[str, Print], new: Mapping[str, Print]) -> Iterator[Paper | None]:
    return (_either(old.get(name), new.get(name)) for name in {**old, **new})


def cents_print(figures: Figures) -> Print:
    """What the map of cents shows."""
    return Print(Paper("cents-map", "drawing", "Cents by string and fret"), cents_printed(figures))


def _pages_that_differ(old: Figures, new: Figures) -> Iterator[Paper]:
    """The build book's own pages: pages with drawings differ where these do, and the drawings are reported
    separately.
    """
    before, after = ({**_front(each), ORDER: _order(each)} for each in (old, new))
    for title in {**before, **after}:
        if before.get(title) != after.get(title):
            own = title in (old[n.instrument_name], new[n.instrument_name])
            yield Paper(title, "page of the build book", "title page" if own else title)


def _front(figures: Figures) -> dict[str, Any]:
    return {page["title"]: page for page in front_pages(formatter_of(figures))}


def _order(figures: Figures) -> list[tuple[str, str]]:
    """The list in front of the sheets: each set-up or, if it is not needed, why."""
    formatter = formatter_of(figures)
    return [(setup.title, safe(formatter.filled(setup.closed))) for setup in setups_of(figures)]


def _either(old: Print | None, new: Print | None) -> Paper | None:
    """The paper, if the two prints differ."""
    if old is None or new is None:
        found = new or old
        return found.paper if found else None
    return None if printed_alike(old, new) else new.paper


def printed_alike(one: Print, other: Print) -> bool:
    """Whether two prints show the same; their marks are looked at first, since most prints that differ do so there."""
    return alike(one.drawn, other.drawn) and alike(one.printed, other.printed)


def alike(one: Any, other: Any) -> bool:
    """Whether two prints show the same: words to the letter, lengths to a thousandth of a millimetre."""
    if isinstance(one, Lazily) or isinstance(other, Lazily):
        return all(alike(*each) for each in zip_longest(one, other))
    if isinstance(one, tuple | list) and isinstance(other, tuple | list):
        return len(one) == len(other) and all(map(alike, one, other))
    if isinstance(one, float) and isinstance(other, float):
        return abs(one - other) <= THOUSANDTH or one == other
    return bool(one == other)


def _drawn(figures: Figures, drawing: Drawing) -> Lazily:
    text = formatter_of(figures).text
    kerf = filled(drawing.kerf, text)
    said = (_title(figures, drawing), drawing.seen_from, drawing.stretch, drawing.scale, kerf)
    return Lazily(chain([said], plain_marks(drawing.marks, text)))


def _title(figures: Figures, drawing: Drawing) -> str:
    return drawing.title.removeprefix(f"{figures[n.instrument_name]}, ")


def headed(figures: Figures, drawing: Drawing) -> str:
    """A drawing's title as a line of a list: without the instrument's name, with a capital."""
    title = _title(figures, drawing)
    return title[:1].upper() + title[1:]


def plain_marks(marks: Marks, text: Callable[[Ref[Any]], str]) -> Iterator[Any]:
    """Marks as plain values, with every figure as text."""
    return ((type(mark).__name__, *(_plain(getattr(mark, each.name), text) for each in fields(mark))) for mark in marks)


def _plain(value: Any, text: Callable[[Ref[Any]], str]) -> Any:
    if isinstance(value, Ref):
        return text(value)
    return tuple(_plain(each, text) for each in value) if isinstance(value, tuple) else value
