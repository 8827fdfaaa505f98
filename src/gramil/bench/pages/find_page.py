"""Find anything from anywhere: figures, sheets and operations, pieces, tools, findings and revisions."""

from collections.abc import Iterator

from starlette.responses import Response

from gramil import names as n
from gramil.bench.finding_words import Found, matching
from gramil.bench.open_instruments import OpenInstrument, OpenInstruments
from gramil.bench.page_request import PageRequest
from gramil.bench.pages.card_page import words_of
from gramil.bench.pages.sheet_page import work_for
from gramil.bench.pages.tools_page import KINDS, unit_of_shop
from gramil.bench.things import KINDS as PARTS
from gramil.bench.units import formatter_for
from gramil.faults import MakersFault
from gramil.prints.listed import headings_of
from gramil.prints.whole import dimensions_of, findings_of
from gramil.shop.instruments import instruments, revisions
from gramil.shop.stock import blanks
from gramil.store.items import items
from gramil.store.opening import Store


def find_page(request: PageRequest, open_instruments: OpenInstruments) -> Response:
    """What was looked for, instrument by instrument and in the shop."""
    looked = request.one("find")
    groups: list[tuple[str, tuple[Found, ...]]] = []
    if looked:
        with request.record.opened() as store:
            for each in instruments(store, "open"):
                try:
                    held = open_instruments.held(store, each.id)
                except MakersFault:
                    continue
                groups.append((each.name, matching(looked, _of_instrument(request, store, held))))
            groups.append(("The shop", matching(looked, _of_shop(store))))
    return request.page(
        "find.html", title="Find", looked=looked, groups=[(name, rows) for name, rows in groups if rows]
    )


def _of_instrument(request: PageRequest, store: Store, held: OpenInstrument) -> Iterator[Found]:
    base = f"/instrument/{held.seen.id}"
    yield from _work(base, store, held)
    yield from _pictured(base, held)
    yield from _figures(request, base, held)
    for each in revisions(store, held.seen.id):
        before = max(1, each.number - 1)
        yield Found("revision", f"revision {each.number} {each.why}", f"{base}/compare?old={before}&new={each.number}")


def _work(base: str, store: Store, held: OpenInstrument) -> Iterator[Found]:
    for each in work_for(store, held).operations.values():
        yield Found("sheet" if each.sheet else "operation", each.what, f"{base}/operation/{each.name}")


def _pictured(base: str, held: OpenInstrument) -> Iterator[Found]:
    """Parts of the drawing and what stands against the instrument."""
    for name in (*PARTS, *(each.name for each in held.figures[n.brace_list])):
        yield Found("part", name, f"{base}/part?name={name.replace(' ', '%20')}")
    asking = [each for each in findings_of(held.figures) if each.severity in ("stop", "caution", "note")]
    for number, each in enumerate(asking, 1):
        yield Found("finding", f"{each.name} {each.severity}", f"{base}/found?n={number}")


def _figures(request: PageRequest, base: str, held: OpenInstrument) -> Iterator[Found]:
    """Every dimension and everything chosen, by what it is."""
    figures, formatter = held.figures, formatter_for(request.session, held.figures)
    for each in headings_of(figures, dimensions_of(figures)):
        words = f"{each.name.replace('_', ' ')}: {each.what}"
        yield Found("figure", words, f"{base}/figure?at={each.name}", formatter.text(each.name))
    for name in figures.graph.inputs:
        if not name.startswith(("shop_", "limit_", "air_")):
            words = f"{name.replace('_', ' ')}: {words_of(figures, name, formatter.first)}"
            yield Found("figure", words, f"{base}/figure?at={name}", formatter.text(name))


def _of_shop(store: Store) -> Iterator[Found]:
    """Tools, pieces of wood, and the pages of the shop."""
    for kind, words in KINDS.items():
        for item in items(store, kind):
            yield Found("tool", f"{item.name} {words}", f"/tools/form?item={item.id}")
    for blank in blanks(store):
        yield Found("piece", f"{blank.name} {blank.wood}", f"/stock/form?blank={blank.id}")
    for words, address in PAGES:
        yield Found("page", words, address)


PAGES = (
    ("weeks ahead, plan of the work", "/weeks"),
    ("stock of wood", "/stock"),
    ("tools and jigs", "/tools"),
    ("air, humidity and pieces of wood followed", "/air"),
    ("record, undo, copies", "/record"),
    ("today on one page, to save", "/today"),
    ("gluing now: what if", "/if-glued"),
    ("keys of the keyboard", "/keys"),
)
"""Pages of the shop, by what is done there."""


def keys_page(request: PageRequest, _: OpenInstruments) -> Response:
    """Every key and what it does."""
    with request.record.opened() as store:
        unit = unit_of_shop(request, store)
    return request.page("keys.html", title="Keys", keys=KEYS, unit=unit)


KEYS = (
    (
        "Anywhere",
        (
            ("/", "find anything"),
            ("?", "this page"),
            ("Esc", "close the card, or stop measuring"),
            ("Tab", "the next thing, as the eye reads"),
        ),
    ),
    (
        "On an instrument's page",
        (
            ("d", "to the drawing"),
            ("s", "to the section line"),
            ("f", "to the figures"),
            ("m", "measure, or stop measuring"),
            ("o", "held down in a draft: the old lines"),
            ("Ctrl-Z", "in a draft: back by one change"),
        ),
    ),
    (
        "On the drawing",
        (
            ("+ and -", "larger and smaller"),
            ("0", "the whole of it"),
            ("arrows", "move it when it is enlarged"),
            ("arrows on the section line", "from fret to fret, over the body from brace to brace"),
            ("Shift and an arrow", "the section line by 0.1 mm"),
            ("Home, End", "the section line to the nut, to the tail"),
        ),
    ),
)
"""Keys by where they serve."""
