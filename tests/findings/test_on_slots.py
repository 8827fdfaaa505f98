"""The slots as they were cut: deep enough for the tang all along, judged by what was measured."""

import pytest

from gramil.description.reading import parse_description, read_shop
from gramil.findings.finding import Finding
from gramil.graph import Figures, Pin
from gramil.prints.whole import figures_of

from ..conftest import EXAMPLES


def drawn(name: str, *edits: tuple[str, str]) -> Figures:
    text = (EXAMPLES / f"{name}.toml").read_text(encoding="utf-8")
    for old, new in edits:
        assert old in text
        text = text.replace(old, new)
    return figures_of(parse_description(text), read_shop())


def depth(figures: Figures, **pins: float) -> Finding:
    made = figures.with_pins({name: Pin(value, "today", "slotted") for name, value in pins.items()})
    (found,) = made["finding_slot_depth"]
    assert isinstance(found, Finding)
    return found


@pytest.mark.parametrize("name", ["tarn", "fell", "scree", "mere"])
def test_slots_as_drawn_are_deep_enough(name: str) -> None:
    assert depth(drawn(name)).severity == "fine"


@pytest.mark.parametrize(
    ("short", "severity"),
    [
        (0.0, "fine"),
        (0.09, "fine"),  # within a tenth, as depths are worked
        (0.12, "caution"),  # some of the 0.15 of room under the tang is left
        (0.16, "stop"),  # the tang stands on the bottom before the crown is down
        (1.46, "stop"),
    ],
)
def test_a_kerf_so_much_too_shallow(short: float, severity: str) -> None:
    """*Tarn*: the tang takes 1.60 and 0.15 is left under it, at the slot's end once the board is arched."""
    tarn = drawn("tarn")
    found = depth(tarn, slot_depth_setting=tarn["slot_depth_setting"] - short)
    assert found.severity == severity
    assert found.value == pytest.approx(1.75 - short, abs=1e-6)


def test_a_pilot_is_judged_as_it_is_deepened() -> None:
    """Its own ends are shallow on purpose, and the hand saw goes on to the tang's depth from there."""
    follows = drawn("tarn", ('bottom = "straight"', 'bottom = "follows the arch"'))
    assert depth(follows).severity == "fine"
    assert depth(follows, slot_need=1.5).severity == "stop"
