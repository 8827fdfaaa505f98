"""The page of the solved top: solved when it is asked for, a mode over the braces, a brace tapped and shaved."""

import re

import httpx

PATIENT = 600.0
"""Seconds that a page is waited for where a top is solved: a machine that does other work at once is slow."""


def test_nothing_is_solved_until_it_is_asked_for(demo: httpx.Client) -> None:
    page = demo.get("/instrument/1/top")
    assert page.status_code == 200
    assert "Solve it" in page.text
    assert "over the braces" not in page.text


def test_a_mode_over_the_braces_and_a_brace_shaved(demo: httpx.Client) -> None:
    """*Tarn* in the shop's record; a tenth of a millimetre of what the table says comes true, sign and all."""
    demo.timeout = PATIENT
    asked = {"solve": "1", "mode": "2", "brace": "X", "off": "0.5"}
    page = demo.get("/instrument/1/top", params=asked).text
    assert "elastic, at once, on a rigid rim" in page
    assert "Mode 2 over the braces" in page
    assert len(re.findall(r'aria-label="Shave [^"]+"', page)) == 9  # the top's braces, as described
    assert "0.50 mm off X, solved again" in page
    before, after = re.search(r"the bridge turns</th><td>([\d.]+)°</td><td>([\d.]+)°", page).groups()  # type: ignore[union-attr]
    assert float(after) > float(before)
    for wrong, told in (("99", "more cannot come off"), ("-1", "more cannot come off"), ("thin", "thin")):
        assert told in demo.get("/instrument/1/top", params={**asked, "off": wrong}).text
    assert demo.get("/instrument/1/top", params={"solve": "1", "mode": "77", "brace": "no such"}).status_code == 200


def test_a_piece_is_tapped_by_form(demo: httpx.Client) -> None:
    page = demo.get("/tools/form", params={"kind": "tapped"})
    assert page.status_code == 200
    assert "Note, Hz, with a cross at rest" in page.text
