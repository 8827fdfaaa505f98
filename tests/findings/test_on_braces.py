"""Relations that must hold are looked at again: each move that breaks one brings its finding."""

from collections.abc import Callable

import pytest

from gramil.graph import Figures
from gramil.prints.whole import findings_of


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


def test_a_brace_too_low_for_a_straight_edge_is_noted(
    text_of: Callable[[str], str], derive_text: Callable[..., Figures]
) -> None:
    """The third of the back hangs by 2.73 on its dome, over the 2.5 of its ends: 5.3 high is enough, 5.2 is not."""
    high, low = (
        ("station = 290\nwidth = 9\nheight = 12", f"station = 290\nwidth = 9\nheight = {to}") for to in (5.3, 5.2)
    )
    assert "low braces" not in found_on(text_of, derive_text, high)
    assert "low braces" in found_on(text_of, derive_text, low)


def test_a_ladder_of_braces_has_no_x_to_land_on(example: Callable[[str], Figures]) -> None:
    names = {each.name for each in findings_of(example("fell"))}
    assert "bridge on the X" not in names
    assert "pins and braces" in names


def found_on(text_of: Callable[[str], str], derive_text: Callable[..., Figures], *changes: tuple[str, str]) -> set[str]:
    text = text_of("tarn")
    for old, new in changes:
        assert old in text, old
        text = text.replace(old, new)
    return {each.name for each in findings_of(derive_text(text, text_of("shop"))) if each.severity != "fine"}


def test_braces_to_be_notched_that_do_not_meet(
    text_of: Callable[[str], str], derive_text: Callable[..., Figures]
) -> None:
    """The tone bars lie side by side; the upper transverse brace meets neither, and no leg of the X is asked to."""
    asked = ("line = [[99, 30], [154, -60]]\n", 'line = [[99, 30], [154, -60]]\ncrosses = ["tone bar 1"]\n')
    assert "notched braces" not in found_on(text_of, derive_text)
    assert "notched braces" in found_on(text_of, derive_text, asked)


def test_a_bridge_plate_that_sticks_out_of_the_body(
    text_of: Callable[[str], str], derive_text: Callable[..., Figures]
) -> None:
    assert "bridge plate outside the body" not in found_on(text_of, derive_text)
    assert "bridge plate outside the body" in found_on(text_of, derive_text, ("length_back = 176", "length_back = 366"))


def test_a_brace_may_run_over_the_bridge_plate_if_it_says_so(
    text_of: Callable[[str], str], derive_text: Callable[..., Figures]
) -> None:
    over = ("line = [[70, 30], [125, -60]]\n", "line = [[20, 30], [75, -60]]\n")
    said = (over[0], over[1] + 'crosses = ["bridge plate"]\n')
    assert "bridge plate and braces" in found_on(text_of, derive_text, over)
    assert {"bridge plate and braces", "notched braces"}.isdisjoint(found_on(text_of, derive_text, said))
