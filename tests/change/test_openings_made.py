"""What is cut of openings, judged after a change: longer is cut on, elsewhere is lost, a scale moves nothing."""

from collections.abc import Callable

import pytest

from gramil.change.made import judge
from gramil.graph import Figures

DONE = ("rosette_let_in", "openings_cut", "ports_cut")


@pytest.mark.parametrize(
    ("old", "new", "standing"),
    [
        ("along = 84 ", "along = 90 ", {"openings_cut": "rework"}),
        ("centre = 154.8 ", "centre = 160 ", {"openings_cut": "lost", "rosette_let_in": "lost"}),
        ("centre = 236 ", "centre = 230 ", {"ports_cut": "lost"}),
        ("across = 40 ", "across = 44 ", {"ports_cut": "rework"}),
        ('length = "650 mm"', 'length = "640 mm"', {}),
    ],
)
def test_how_what_is_cut_stands(
    old: str,
    new: str,
    standing: dict[str, str],
    example: Callable[[str], Figures],
    text_of: Callable[[str], str],
    derive_text: Callable[..., Figures],
) -> None:
    """By hand, on *Corrie*: a hole grows, and nothing that is cut moves; the oval is held to the body."""
    text = text_of("corrie")
    assert old in text
    found = judge(dict.fromkeys(DONE, example("corrie")), derive_text(text.replace(old, new), text_of("shop")))
    assert {each.operation: each.standing for each in found} == dict.fromkeys(DONE, "still right") | standing
