"""Bevels put into a description on the bench: tried, kept, and their sheets and drawings there."""

import re
from html import unescape

import httpx

from .conftest import post

BEVELS = "\n[arm_bevel]\nwidth = 26\ndrop = 15\nlength = 300\n"


def test_a_bevel_is_tried_and_kept(demo: httpx.Client, tarn: str) -> None:
    page = demo.get(f"{tarn}/files").text
    text = unescape(re.search(r'<textarea name="text"[^>]*>(.*?)</textarea>', page, re.DOTALL)[1])  # type: ignore[index]
    version = re.search(r'name="version" value="(\d+)"', page)[1]  # type: ignore[index]
    tried = post(demo, f"{tarn}/files", text=text + BEVELS, do="try", version=version)
    assert tried.status_code == 200
    assert "arm bevel" in unescape(tried.text)
    kept = post(demo, f"{tarn}/files", text=text + BEVELS, do="keep", version=version, why="for the arm")
    assert kept.status_code == 200
    figures = unescape(demo.get(f"{tarn}/figures").text)
    assert "bevel" in figures
