"""Relations that must hold are looked at again: each move that breaks one brings its finding."""

from collections.abc import Callable

import pytest

from gramil.change.whole import findings_of
from gramil.graph import Figures


@pytest.fixture
def severity(text_of: Callable[[str], str], derive_text: Callable[..., Figures]) -> Callable[..., str]:
    """The severity of a finding on Tarn with words of its description replaced."""

    def judged(finding: str, *changes: tuple[str, str]) -> str:
        text = text_of("tarn")
        for old, new in changes:
            assert old in text, old
            text = text.replace(old, new)
        found = {each.name: each.severity for each in findings_of(derive_text(text, text_of("shop")))}
        return found[finding]

    return judged


@pytest.mark.parametrize(
    ("finding", "breaks", "change"),
    [
        ("bridge on the X", "caution", ("[[-118, -66.6], [62, 133.2]]", "[[-148, -240], [32, 300]]")),
        ("bridge plate under the pins", "stop", ("behind = 26", "behind = 10")),
        (
            "bridge plate and X",
            "caution",
            ("length_front = 87                # between the legs of the X\nlength_back = 176", "length_front = 60"),
        ),
        ("crossing and soundhole", "caution", ("diameter = 92", "diameter = 98")),
        ("braces and soundhole", "stop", ("[[-40, 58], [8, 58]]", "[[-40, 45], [8, 45]]")),
        ("pins and braces", "stop", ("[[70, 30], [125, -60]]", "[[0, 30], [30, -20]]")),
        ("braces apart", "stop", ("[[99, 30], [154, -60]]", "[[72, 30], [127, -60]]")),
        ("braces and blocks", "caution", ("station = 72", "station = 30")),
        ("wood for the braces", "note", ('height = 13\nends = "scalloped"', 'height = 33\nends = "scalloped"')),
        ("bending the sides", "caution", ("wall = 2.1", "wall = 4.0")),
        ("heel and neck block", "caution", ("depth_neck = 94", "depth_neck = 88")),
        ("bridge plate and braces", "stop", ("[[70, 30], [125, -60]]", "[[30, 30], [85, -60]]")),
    ],
)
def test_a_broken_relation_is_found(
    severity: Callable[..., str], finding: str, breaks: str, change: tuple[str, str]
) -> None:
    assert severity(finding) == "fine"
    assert severity(finding, change) == breaks


def test_a_brace_that_the_scale_carries_out_of_the_body_is_a_stop(severity: Callable[..., str]) -> None:
    assert severity("brace outside the body", ("[[-20, 75], [-10, 150]]", "[[-20, 175], [-10, 250]]")) == "stop"


def test_a_ladder_of_braces_has_no_x_to_land_on(example: Callable[[str], Figures]) -> None:
    names = {each.name for each in findings_of(example("fell"))}
    assert "bridge on the X" not in names
    assert "pins and braces" in names
