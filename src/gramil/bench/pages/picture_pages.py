"""Pages that are pictures with their tables: the heights of the strings, and the map of cents."""

from starlette.responses import Response

from gramil import names as n
from gramil.bench.open_instruments import OpenInstruments
from gramil.bench.page_request import PageRequest
from gramil.bench.pages.instrument_page import instrument_id
from gramil.bench.svg_in_page import in_plain_words, inlined
from gramil.bench.units import formatter_for
from gramil.drawings.marks import Drawing
from gramil.formatter import Formatter, parted
from gramil.graph import Figures
from gramil.prints.whole import drawings_of
from gramil.reference import Rows
from gramil.writers.beside import labels_on
from gramil.writers.cents_map import cents_map_svg
from gramil.writers.svg import described, svg_text

HEIGHTS = ("heights", "neck-set", "nut")
"""Drawings of the heights page, in order."""
LONG = ("heights", "neck-set")
"""Those of them that need the page's width."""
SUMS = (
    ("Neck angle", n.neck_angle_target),
    ("Saddle over the bridge, mean", n.neck_set_exposed_mean),
    ("Straightedge over the bridge", n.neck_set_straightedge),
    ("Relief", n.heights_relief),
    ("Strings over the top, mean", n.neck_set_over_top_mean),
)


def heights_page(request: PageRequest, open_instruments: OpenInstruments) -> Response:
    """How high each string lies, drawn stretched, with neck set and nut, and as a table."""
    with request.record.opened() as store:
        held = open_instruments.held(store, instrument_id(request))
    formatter = formatter_for(request.session, held.figures)
    drawings = {drawing.name: drawing for drawing in drawings_of(held.figures)}
    pictures = [_picture(drawings[name], formatter) for name in HEIGHTS if name in drawings]
    return request.page(
        "heights.html",
        title=f"{held.seen.name}, heights",
        held=held,
        pictures=pictures,
        sums=[(words, *formatter.both(figure), figure.address) for words, figure in SUMS],
        heads=[str(number) for number in range(1, int(held.figures[n.strings_count]) + 1)],
        rows=by_fret(n.height_over_crown, held.figures, formatter),
        unit=formatter.first,
    )


def _picture(drawing: Drawing, formatter: Formatter) -> tuple[str, str, str, bool]:
    """A drawing's title, picture and words, and whether it is long and narrow."""
    picture = inlined(svg_text(drawing, labels_on((drawing,), formatter), captioned=False, unit=formatter.first))
    return (
        drawing.title,
        picture,
        in_plain_words(described(drawing, formatter.said, formatter.first)),
        drawing.name in LONG,
    )


def cents_page(request: PageRequest, open_instruments: OpenInstruments) -> Response:
    """How far each string is out at each fret, before and after, as a picture and as tables."""
    with request.record.opened() as store:
        held = open_instruments.held(store, instrument_id(request))
    formatter = formatter_for(request.session, held.figures)
    return request.page(
        "cents.html",
        title=f"{held.seen.name}, cents map",
        held=held,
        picture=cents_map_svg(held.figures),
        heads=[str(number) for number in range(1, int(held.figures[n.strings_count]) + 1)],
        before=by_fret(n.intonation_cents_before, held.figures, formatter),
        after=by_fret(n.intonation_cents_after, held.figures, formatter),
        unit=formatter.first,
    )


def by_fret(notes: Rows, figures: Figures, formatter: Formatter) -> list[tuple[str, list[str]]]:
    """A figure for every string and fret as a table with one row for each fret, numbers only."""
    strings = range(1, int(figures[n.strings_count]) + 1)
    return [
        (str(fret), [parted(formatter.text(notes[string, fret]))[0] for string in strings])
        for fret in range(len(figures[n.fret_position]))
    ]
