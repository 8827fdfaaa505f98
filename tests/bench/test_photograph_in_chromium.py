"""A body of ours printed from its plan, photographed by reckoning on its strips, and traced in the browser."""

import tomllib
from dataclasses import replace
from io import BytesIO

import numpy as np
import pikepdf
import pytest
from numpy.typing import NDArray

from gramil.description.reading import parse_description
from gramil.drawings.body import piece_body_outline
from gramil.drawings.marks import Drawing
from gramil.shapes.outline_through import through_points
from gramil.writers.pdf import whole_pdf

from ..conftest import EXAMPLES
from ..photographs.rendered import Scene, off_the_line, strips_round
from .test_in_chromium import EVERY_RULE, browser, faults, lay_out_demo, small_targets, wide

__all__ = ["browser", "wide"]  # they serve here as well
pytest.importorskip("playwright.sync_api", reason="playwright is not installed: no browser can be driven")
pytestmark = pytest.mark.slow
Array = NDArray[np.float64]
PT = 72 / 25.4
COUNT = 24
SCENE = Scene(strips_round(), size=(2000, 1500), focal=1800.0, distance=1150.0)
(TARN,) = parse_description((EXAMPLES / "tarn.toml").read_text(encoding="utf-8"), "tarn", EXAMPLES).outlines


def printed() -> Array:
    """The outline as it stands on the PDF that is printed of it, mm about its middle, 0.3 mm from point to point."""
    drawing = Drawing("body", "Body", "the face", piece_body_outline((TARN,)), scale=1.0)
    with pikepdf.open(BytesIO(whole_pdf(drawing, str, heading="Body"))) as pdf:
        paths = [path for page in pdf.pages for path in paths_of(page)]
    ring = np.array(max(paths, key=len)) / PT
    ring = np.vstack((ring, ring[:1])) - (ring.min(axis=0) + ring.max(axis=0)) / 2
    at = np.concatenate(([0.0], np.cumsum(np.hypot(*np.diff(ring, axis=0).T))))
    return np.column_stack([np.interp(np.arange(0, at[-1], 0.3), at, column) for column in ring.T])


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


def laid_on(page: object, scene: Scene, ring: Array) -> None:
    """Points clicked one after another round the outline, the last dragged and pushed to its place."""
    box = page.locator("#photograph svg").bounding_box()  # type: ignore[attr-defined]
    share = box["width"] / scene.size[0]
    places = scene.seen(ring[np.linspace(0, len(ring), COUNT, endpoint=False).astype(int)]) * share + (
        box["x"],
        box["y"],
    )
    *most, last = places.tolist()
    for x, y in most:
        page.mouse.click(x, y)  # type: ignore[attr-defined]
    page.mouse.click(last[0] + 60, last[1] + 30)  # type: ignore[attr-defined]
    page.mouse.move(last[0] + 60, last[1] + 30)  # type: ignore[attr-defined]
    page.mouse.down()  # type: ignore[attr-defined]
    page.mouse.move(last[0] + 30, last[1])  # type: ignore[attr-defined]
    page.mouse.move(last[0] + 10, last[1])  # type: ignore[attr-defined]
    page.mouse.up()  # type: ignore[attr-defined]
    page.locator("#photograph").focus()  # type: ignore[attr-defined]
    page.keyboard.press("Shift+ArrowLeft")  # type: ignore[attr-defined]


def test_a_body_of_ours_comes_back_from_its_photograph(wide) -> None:
    page, ring = wide, printed()
    lay_out_demo(page)
    scene = replace(SCENE, lines=((ring, 0.5),))
    page.set_viewport_size({"width": 1200, "height": 1400})
    page.goto("/picture")
    page.get_by_label("Pictures of one plan").set_input_files(
        {"name": "plan.jpg", "mimeType": "image/jpeg", "buffer": scene.jpeg()}
    )
    page.get_by_role("button", name="Send").click()
    page.get_by_text("tags 1, 2, 3, 4, 5, 6, 7, 8").wait_for()
    page.get_by_label("What the bar measures").fill("220 mm")
    page.get_by_label("How high the plan stands").fill("0 mm")
    page.locator("#photograph").scroll_into_view_if_needed()
    page.evaluate("document.getElementById('photograph').scrollIntoView({block: 'start'})")
    laid_on(page, scene, ring)
    page.get_by_text(f"{COUNT} points laid, number {COUNT} chosen").wait_for()
    page.get_by_role("button", name="Follow the line").click()
    page.get_by_role("heading", name="The outline, within").wait_for()

    written = tomllib.loads(page.get_by_label("Or copy it").input_value())["body"]
    corners = tuple(each - 1 for each in written.get("corners", ()))
    found = through_points(tuple(map(tuple, written["points"])), corners).half
    back = ring_of(found.place(found.sample(0.01, 1.0)))
    own = TARN.half
    off = off_the_line(back - (TARN.length / 2, 0), ring_of(own.place(own.sample(0.001, 0.2))) - (TARN.length / 2, 0))
    assert np.sqrt((off**2).mean()) < 0.15
    assert np.abs(off).max() < 0.35

    wrong = faults(page, EVERY_RULE) + small_targets(page)
    page.set_viewport_size({"width": 320, "height": 640})
    assert wrong + faults(page, EVERY_RULE) + small_targets(page) == []
    page.get_by_role("button", name="See what it moves on Tarn").click()
    page.get_by_role("heading", name="What was brought in").wait_for()
    assert page.wrong == []
