"""Verdicts on openings: each fine where Tarn has it, and what is said of one that comes too near to something."""

from collections.abc import Callable

import pytest
from tests.with_openings import opened

from gramil.findings.finding import Finding
from gramil.graph import Figures
from gramil.prints.whole import findings_of

Find = Callable[..., Finding]
CUTTER = '\n[[cutter]]\nname = "pattern bit"\ndiameter = 3\nbearings = [3]\n'


@pytest.fixture(scope="module")
def find(text_of: Callable[[str], str], derive_text: Callable[..., Figures]) -> Find:
    known: dict[tuple[object, ...], Figures] = {}

    def found(name: str, *changes: tuple[str, str], shop: str = CUTTER, limits: str = "") -> Finding:
        if (changes, shop, limits) not in known:
            text = opened(text_of("tarn"))
            for old, new in changes:
                assert old in text, old
                text = text.replace(old, new)
            known[changes, shop, limits] = derive_text(
                text, text_of("shop").replace("[limits]\n", f"[limits]\n{limits}") + shop
            )
        return next(each for each in findings_of(known[changes, shop, limits]) if each.name == name)

    return found


@pytest.mark.parametrize(
    ("name", "breaks", "change"),
    [
        ("ear and hole side bass", "stop", ("aside = -84", "aside = -68")),
        ("eye and X bass", "stop", ("centre = 130\n", "centre = 142\n")),
        ("ear and linings", "stop", ("aside = -84", "aside = -108")),
        ("eye and soundhole", "stop", ("aside = 90", "aside = 54")),
        ("ear and edge", "caution", ("gap = 3\nwidth = 4", "gap = 3\nwidth = 24")),
        ("cutting the ear", "caution", ("lean = 20", "lean = 20\ncorner = 1")),
        ("channel of the ear ring", "caution", ("gap = 3\nwidth = 4", "gap = 3\nwidth = 2.5")),
        ("port and back's linings", "stop", ("across = 36\n\n[[port]]", "across = 90\n\n[[port]]")),
        ("peep and tail block", "stop", ("centre = 560", "centre = 676")),
    ],
)
def test_what_comes_too_near_is_found(find: Find, name: str, breaks: str, change: tuple[str, str]) -> None:
    assert find(name).severity == "fine"
    assert find(name, change).severity == breaks


def test_a_shop_without_a_cutter_that_follows_a_template_is_told(find: Find) -> None:
    assert find("cutting the ear").severity == "fine"
    other = find("cutting the ear", shop="")
    assert other.severity == "caution"
    assert str(other.figure) == 'opening_list["ear"].tightest'


def test_a_port_where_the_side_is_bent_too_tightly(find: Find) -> None:
    """Its patch reaches to 252 mm, on the way to the waist, whose radius is 76."""
    assert find("bend of the side at the port").severity == "fine"
    tight = find("bend of the side at the port", limits="port_bend = 120\n")
    assert (tight.severity, str(tight.limit)) == ("caution", "limit_port_bend")
