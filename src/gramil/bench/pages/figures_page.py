"""Every figure of an instrument by part, with a field to find one by its words."""

from starlette.responses import Response

from gramil.bench.open_instruments import OpenInstruments
from gramil.bench.page_request import PageRequest
from gramil.bench.pages.instrument_page import desk_of
from gramil.formatter import Formatter
from gramil.graph import Figures
from gramil.in_shop_units import in_shop_units
from gramil.prints.listed import headings_of
from gramil.prints.whole import dimensions_of


def figures_page(request: PageRequest, open_instruments: OpenInstruments) -> Response:
    """Every dimension and everything chosen, limited to those whose words contain what was looked for."""
    with request.record.opened() as store:
        desk = desk_of(request, store, open_instruments)
    figures, formatter = desk.draft.figures, desk.reading.now
    looked = request.one("find").lower()
    return request.page(
        "figures.html",
        title=f"{desk.held.seen.name}, every figure",
        held=desk.held,
        draft=desk.draft,
        parts=_parts(figures, formatter, looked),
        find=request.one("find"),
        at=f"x={desk.cut.x:.4f}",
        unit=formatter.first,
    )


def _parts(figures: Figures, formatter: Formatter, looked: str) -> dict[str, list[tuple[str, str, str, str]]]:
    found: dict[str, list[tuple[str, str, str, str]]] = {}
    for each in headings_of(figures, dimensions_of(figures)):
        words = each.name.replace("_", " ")
        if looked in f"{words} {each.what}".lower():
            found.setdefault(each.part, []).append(
                (
                    words,
                    each.name,
                    in_shop_units(f"{each.what} {each.remark}".strip(), formatter.first),
                    formatter.text(each.name),
                )
            )
    return found
