"""A part that was made for one hand is not right for the other, unless it is its own mirror image."""

from functools import cache
from importlib.resources import files

import numpy as np
import pytest

from gramil.change.made import Judged, judge
from gramil.change.made_words import verdict_line
from gramil.description.reading import parse_description, read_shop
from gramil.description.writing import set_key
from gramil.graph import Figures
from gramil.prints.whole import figures_of
from gramil.shapes.mirrored import alike, turned_over


@cache
def for_hand(name: str, hand: str) -> Figures:
    text = (files("gramil") / "data" / "examples" / f"{name}.toml").read_text(encoding="utf-8")
    return figures_of(parse_description(set_key(text, "instrument.handed", hand)), read_shop())


def turned(name: str, *done: str) -> dict[str, Judged]:
    """How what was done of an example for one hand stands when it is to be for the other; Scree is left-handed."""
    hands = ("left", "right") if name == "scree" else ("right", "left")
    before, after = (for_hand(name, hand) for hand in hands)
    return {each.operation: each for each in judge(dict.fromkeys(done, before), after)}


def test_braces_with_tone_bars_are_for_one_hand() -> None:
    """*Tarn*'s tone bars run from the treble side to the bass: on the other hand they would run the other way."""
    found = turned("tarn", "top_braces_glued", "top_voiced")
    assert found["top_braces_glued"].standing == "lost"
    assert verdict_line(found["top_braces_glued"]) == "for the other hand (right, wanted left): make new braces"
    assert verdict_line(found["top_voiced"]) == "lost with the top's braces"
    glued = turned("tarn", "top_braces_glued", "top_glued")
    assert verdict_line(glued["top_glued"]).endswith("take the top off, and glue on one that is braced for that hand")


def test_fanned_slots_are_for_one_hand_and_square_ones_for_either() -> None:
    """*Scree*'s bass scale is the longer; *Tarn*'s frets are square to its centreline."""
    assert turned("scree", "slotted")["slotted"].standing == "lost"
    assert turned("scree", "board_laid_out")["board_laid_out"].standing == "rework"
    assert turned("tarn", "slotted")["slotted"].standing == "still right"


@pytest.mark.parametrize(
    ("operation", "remedy"),
    [
        ("nut_slots_filed", "Make a new nut."),
        ("strung", "Put the strings on in their new order."),
        ("side_dots_set", "Plug them, and bore them in the other edge."),
        ("intonation_set", "Make a new saddle."),
        ("saddle_slot_cut", "Plug the slot and cut it anew, if the bridge is wide enough."),
    ],
)
def test_what_follows_the_strings_is_for_one_hand(operation: str, remedy: str) -> None:
    assert (turned("tarn", operation)[operation].standing, turned("tarn", operation)[operation].remedy) == (
        "rework",
        remedy,
    )


@pytest.mark.parametrize("operation", ["tapered", "sides_bent", "neck_profiled", "arched", "bridge_made"])
def test_what_is_its_own_mirror_image_is_still_right(operation: str) -> None:
    assert turned("tarn", operation)[operation].standing == "still right"


def test_points_against_their_mirror_images() -> None:
    """Two posts a side at 30 and 70 mm: each has its image. One of them 1 mm further out has none."""
    posts = np.array([[30.0, 25.0], [70.0, 25.0], [30.0, -25.0], [70.0, -25.0]])
    assert alike(turned_over(posts), posts)
    farther = np.array([[30.0, 26.0], [70.0, 25.0], [30.0, -25.0], [70.0, -25.0]])
    assert not alike(turned_over(farther), farther)
