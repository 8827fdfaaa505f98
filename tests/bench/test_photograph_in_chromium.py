"""A body of ours printed from its plan, photographed by reckoning on its strips, and traced in the browser."""

import tomllib
from dataclasses import replace

import numpy as np
import pytest
from numpy.typing import NDArray

from gramil.shapes.outline_through import through_points

from ..photographs.printed import TARN, printed, ring_of
from ..photographs.rendered import Scene, off_the_line, strips_round
from .test_in_chromium import EVERY_RULE, faults, lay_out_demo, small_targets

pytest.importorskip("playwright.sync_api", reason="playwright is not installed: no browser can be driven")
pytestmark = pytest.mark.slow
Array = NDArray[np.float64]
COUNT = 24
SCENE = Scene(strips_round(), size=(2000, 1500), focal=1800.0, distance=1150.0)


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
