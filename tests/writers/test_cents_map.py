"""The cents map: a cell a note, its figure the note's, warm where sharp and cold where flat."""

import re
from collections.abc import Callable
from xml.etree import ElementTree

import numpy as np
import pytest

from gramil.graph import Figures
from gramil.writers.cents_map import cents_map_bytes, cents_map_svg

SVG = "{http://www.w3.org/2000/svg}"


@pytest.mark.parametrize("name", ["tarn", "fell", "scree", "mere"])
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


def test_a_bar_says_sharp_or_flat_without_colour(example: Callable[[str], Figures]) -> None:
    """A bar is of the figure as it is written, so a note that is written 0.0 has none."""
    root = ElementTree.fromstring(cents_map_svg(example("tarn")))
    written = [float(each.text or "") for each in root.findall(f"{SVG}text") if each.get("font-size") == "2.7"]
    bars = [each.get("class") for each in root.findall(f"{SVG}path")]
    assert {"sharp", "flat"} == set(bars)
    assert bars == ["sharp" if value > 0 else "flat" for value in written if value]
    for cell in root.findall(f"{SVG}rect"):
        fill = cell.get("fill", "")
        assert fill[1:3] == fill[3:5] == fill[5:7]
