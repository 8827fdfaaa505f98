"""A body of ours as it is printed: its PDF, and the lines that stand in it, read back."""

from functools import cache
from io import BytesIO

import numpy as np
import pikepdf
from numpy.typing import NDArray

from gramil.description.reading import parse_description
from gramil.drawings.body import piece_body_outline
from gramil.drawings.marks import Drawing
from gramil.writers.pdf import whole_pdf

from ..conftest import EXAMPLES

Array = NDArray[np.float64]
PT = 72 / 25.4
(TARN,) = parse_description((EXAMPLES / "tarn.toml").read_text(encoding="utf-8"), "tarn", EXAMPLES).outlines


@cache
def pdf() -> bytes:
    """Tarn's outline at true size on one page."""
    return whole_pdf(Drawing("body", "Body", "the face", piece_body_outline((TARN,)), scale=1.0), str, heading="Body")


@cache
def on_page() -> tuple[Array, tuple[float, float]]:
    """The outline on the page, mm from its lower left corner, 0.3 mm from point to point; and the page's size, mm."""
    with pikepdf.open(BytesIO(pdf())) as file:
        paths = [path for page in file.pages for path in paths_of(page)]
        left, low, right, high = map(float, file.pages[0].mediabox)
    ring = np.array(max(paths, key=len)) / PT
    ring = np.vstack((ring, ring[:1]))
    at = np.concatenate(([0.0], np.cumsum(np.hypot(*np.diff(ring, axis=0).T))))
    close = np.column_stack([np.interp(np.arange(0, at[-1], 0.3), at, column) for column in ring.T])
    return close - (left / PT, low / PT), ((right - left) / PT, (high - low) / PT)


def printed() -> Array:
    """The outline as it stands on the PDF that is printed of it, mm about its middle, 0.3 mm from point to point."""
    ring, _ = on_page()
    return ring - (ring.min(axis=0) + ring.max(axis=0)) / 2


def paths_of(page: pikepdf.Page) -> list[list[tuple[float, float]]]:
    """Every path of a page, its curves as points, in points of the page."""
    paths, now, kept = list[list[tuple[float, float]]](), np.eye(3), list[Array]()
    for operands, operator in pikepdf.parse_content_stream(page):
        match str(operator):
            case "q":
                kept.append(now)
            case "Q":
                now = kept.pop()
            case "cm":
                a, b, c, d, e, f = map(float, operands)
                now = np.array([[a, b, 0.0], [c, d, 0.0], [e, f, 1.0]]) @ now
            case "m" | "l" | "c" as name:
                corners = np.array([float(each) for each in operands]).reshape(-1, 2) @ now[:2, :2] + now[2, :2]
                paths = [*paths, []] if name == "m" else paths
                paths[-1] += bent(paths[-1][-1], corners) if name == "c" else [tuple(corners[0].tolist())]
    return paths


def bent(start: tuple[float, float], rest: Array) -> list[tuple[float, float]]:
    """Points of a cubic curve of a PDF: its start, then its three other corners."""
    share = np.linspace(0, 1, 60)[1:, None]
    weights = np.hstack(((1 - share) ** 3, 3 * share * (1 - share) ** 2, 3 * share**2 * (1 - share), share**3))
    return [(x, y) for x, y in (weights @ np.vstack((start, rest))).tolist()]


def ring_of(half: Array) -> Array:
    return np.vstack((half, half[-2:0:-1] * (1, -1)))
