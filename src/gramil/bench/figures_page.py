"""Every figure of an instrument by part, with a field to find one by its words."""

from starlette.responses import Response

from gramil.bench.asking import Asked
from gramil.bench.instrument_page import desk_of
from gramil.bench.shelf import Shelf
from gramil.graph import Figures
from gramil.prints.listed import headings_of
from gramil.prints.whole import dimensions_of
from gramil.show import Shower


def figures_page(asked: Asked, shelf: Shelf) -> Response:
    """Every dimension and everything chosen, those whose words hold what was looked for."""
    with asked.keeping.opened() as store:
        desk = desk_of(asked, store, shelf)
    figures, shower = desk.draft.figures, desk.reading.now
    looked = asked.one("find").lower()
    return asked.page(
        "figures.html",
        title=f"{desk.held.seen.name}, every figure",
        held=desk.held,
        draft=desk.draft,
        parts=_parts(figures, shower, looked),
        find=asked.one("find"),
        at=f"x={desk.cut.x:.4f}",
        unit=shower.first,
    )


def _parts(figures: Figures, shower: Shower, looked: str) -> dict[str, list[tuple[str, str, str, str]]]:
    found: dict[str, list[tuple[str, str, str, str]]] = {}
    for each in headings_of(figures, dimensions_of(figures)):
        words = each.name.replace("_", " ")
        if looked in f"{words} {each.what}".lower():
            found.setdefault(each.part, []).append(
                (words, each.name, f"{each.what} {each.remark}".strip(), shower.text(each.name))
            )
    return found
