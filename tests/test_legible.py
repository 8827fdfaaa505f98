"""Read at arm's length: no letter under seven points on any page or drawing of the examples' packs."""

import io
import re
from collections.abc import Iterator
from importlib.resources import as_file, files
from math import hypot
from pathlib import Path

import pikepdf
import pytest

from gramil.cli.options import opened_with_work
from gramil.formatter import Formatter
from gramil.graph import Figures
from gramil.pack import TYPESET, build_book, pack_makers
from gramil.sheets.own_sheet import every_sheet
from gramil.shop.operations import Work

SEVEN = 7.0
HAIR = 0.01
"""What rounding in a file may take off a size, in points."""
POINTS_TO_MM = 72.0 / 25.4
Matrix = tuple[float, float, float, float, float, float]
SAME: Matrix = (1.0, 0.0, 0.0, 1.0, 0.0, 0.0)


@pytest.fixture(scope="module", params=["tarn", "fell", "scree", "mere"])
def opened(request: pytest.FixtureRequest) -> Iterator[tuple[Figures, Formatter, Work]]:
    with as_file(files("gramil") / "data" / "examples") as examples:
        yield opened_with_work(Path(examples / f"{request.param}.toml"), Path(examples / "shop.toml"))


def after(first: Matrix, then: Matrix) -> Matrix:
    """One change of coordinates after another, as the format multiplies them."""
    a, b, c, d, e, f = first
    p, q, r, s, t, u = then
    return (a * p + b * r, a * q + b * s, c * p + d * r, c * q + d * s, e * p + f * r + t, e * q + f * s + u)


def sizes(content: pikepdf.Page | pikepdf.Object, resources: pikepdf.Object, at: Matrix = SAME) -> Iterator[float]:
    """The size in points, on paper, of every piece of text on a page and in the pictures on it."""
    kept: list[tuple[Matrix, float]] = []
    size, text = 0.0, SAME
    for operands, operator in pikepdf.parse_content_stream(content):
        match str(operator):
            case "q":
                kept.append((at, size))
            case "Q":
                at, size = kept.pop()
            case "cm":
                at = after(tuple(map(float, operands)), at)  # type: ignore[arg-type]
            case "Tf":
                size = float(operands[1])
            case "BT":
                text = SAME
            case "Tm":
                text = tuple(map(float, operands))  # type: ignore[assignment]
            case "Tj" | "TJ" | "'" | '"':
                _, _, across, up, _, _ = after(text, at)
                yield size * hypot(across, up)
            case "Do":
                inner = resources.XObject[operands[0]]
                assert inner.Subtype == "/Form", "a picture of dots, in which letters cannot be measured"
                own: Matrix = tuple(map(float, inner.get("/Matrix", SAME)))  # type: ignore[assignment]
                yield from sizes(inner, inner.get("/Resources", resources), after(own, at))


def small(pdf: bytes) -> dict[int, list[float]]:
    """The sizes under seven points, by page; a file without a letter fails."""
    with pikepdf.open(io.BytesIO(pdf)) as document:
        found = {number: list(sizes(page, page.resources)) for number, page in enumerate(document.pages, 1)}
    assert all(found.values())
    return {page: under for page, all_ in found.items() if (under := [each for each in all_ if each < SEVEN - HAIR])}


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_nothing_in_the_book_and_on_its_sheets_is_smaller_than_seven_points(
    opened: tuple[Figures, Formatter, Work], paper: str
) -> None:
    assert small(build_book(*opened, paper)) == {}


def test_nothing_on_a_template_or_drawing_is_smaller_than_seven_points(opened: tuple[Figures, Formatter, Work]) -> None:
    makers = pack_makers(*opened, "a4")
    for name, make in makers.items():
        if name.endswith(".pdf") and name not in TYPESET:
            assert small(make()) == {}, name
        if name.endswith(".svg"):
            found = [float(each) for each in re.findall(r'font-size="([\d.]+)"', make().decode())]
            assert min(found) * POINTS_TO_MM >= SEVEN - HAIR, name


def test_no_sheet_has_an_empty_proof(opened: tuple[Figures, Formatter, Work]) -> None:
    figures, formatter, work = opened
    for sheet in every_sheet(figures, work):
        if not sheet.setup.closed and sheet.setup.name != "owner-air":  # the owner cuts nothing
            assert sheet.formatter(formatter).filled(sheet.setup.prove).strip(), sheet.setup.name
