"""The cents map: a cell a note, its figure the note's, warm where sharp and cold where flat."""

import re
from collections.abc import Callable
from xml.etree import ElementTree

import numpy as np
import pytest

from gramil.graph import Figures
from gramil.writers.cents_map import cents_map_bytes, cents_map_svg

SVG = "{http://www.w3.org/2000/svg}"


@pytest.mark.parametrize("name", ["tarn", "fell", "scree"])
def test_every_note_has_its_cell_and_figure(example: Callable[[str], Figures], name: str) -> None:
    figures = example(name)
    root = ElementTree.fromstring(cents_map_bytes(figures))
    cells = root.findall(f"{SVG}rect")
    shown = [each.text or "" for each in root.findall(f"{SVG}text") if each.get("font-size") == "2.7"]
    cents = np.concatenate(
        [figures[key][:, 1:].ravel() for key in ("intonation_cents_before", "intonation_cents_after")]
    )
    assert len(cells) == len(shown) == cents.size
    np.testing.assert_allclose([float(text) for text in shown], cents, atol=0.0501)
    assert not any(re.fullmatch(r"[-+]0\.0", text) for text in shown)


def test_sharp_is_warm_and_flat_is_cold(example: Callable[[str], Figures]) -> None:
    figures = example("tarn")
    root = ElementTree.fromstring(cents_map_svg(figures))
    cells = [each.get("fill", "") for each in root.findall(f"{SVG}rect")]
    cents = [*figures["intonation_cents_before"][:, 1:].ravel(), *figures["intonation_cents_after"][:, 1:].ravel()]
    for fill, value in zip(cells, cents, strict=True):
        red, blue = int(fill[1:3], 16), int(fill[5:7], 16)
        if abs(value) > 0.2:
            assert (red > blue) == (value > 0), (fill, value)
