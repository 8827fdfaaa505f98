"""Heights, neck, head and top as written: usual values, and what cannot be, with its line."""

import math
from importlib.resources import files

import numpy as np
import pytest

from gramil.description.base import base_values
from gramil.description.neck.usual import usual_posts
from gramil.description.reading import parse_description, read_shop
from gramil.faults import MakersFault

TARN = (files("gramil") / "data" / "examples" / "tarn.toml").read_text(encoding="utf-8").partition("[head]")[0]


def values(more: str = "") -> dict[str, object]:
    return dict(base_values(parse_description(TARN + more, "tarn.toml"), read_shop()).values)


def refused(more: str, text: str = TARN) -> tuple[str, str, str]:
    """Where, what, and what is allowed, of the one fault."""
    with pytest.raises(MakersFault) as raised:
        parse_description(text + more, "tarn.toml")
    (fault,) = raised.value.faults
    assert fault.line is not None
    return fault.where, fault.what, fault.why


def test_left_out_they_are_as_usual() -> None:
    found = values()
    assert (found["heights_action_bass"], found["heights_action_treble"], found["heights_relief"]) == (2.4, 1.8, 0.15)
    assert found["head_angle"] == pytest.approx(math.radians(14))
    assert math.isnan(float(str(found["neck_straightedge"])))
    assert found["top_radius"] == 7620.0


def test_angles_are_degrees() -> None:
    assert values("\n[head]\nangle = 12.5")["head_angle"] == pytest.approx(math.radians(12.5))
    assert values('\n[head]\nangle = "12 deg"')["head_angle"] == pytest.approx(math.radians(12))
    where, _, why = refused("\n[head]\nangle = 140")
    assert (where, "45" in why) == ("head.angle", True)


def test_limits_in_degrees_are_read_in_degrees() -> None:
    assert values()["limit_neck_angle_most"] == pytest.approx(math.radians(3))


def test_a_flat_top_is_a_radius_without_end() -> None:
    assert values('\n[top]\nradius = "flat"')["top_radius"] == math.inf


def test_usual_posts_stand_half_a_side_for_any_number_of_strings() -> None:
    for strings in (4, 5, 6, 7, 8):
        x, y = usual_posts(strings, 38.0)
        assert (y[: (strings + 1) // 2] > 0).all()
        assert (y[(strings + 1) // 2 :] < 0).all()
        assert len(np.unique(np.stack([x, y], axis=-1), axis=0)) == strings


@pytest.mark.parametrize(
    ("more", "where", "says"),
    [
        ("\n[heights]\nrelief = 1.9", "heights.relief", "less than the action"),
        ("\n[heights]\naction_bass = 0", "heights.action_bass", "more than 0"),
        ('\n[heights]\nnut_over = "the zero line"', "heights", "nut_bass and nut_treble"),
        ('\n[heights]\nnut_over = "fret 0"', "heights.nut_over", "fret 1"),
        ("\n[neck]\ndepth_at_1 = 6", "neck.depth_at_1", "more than the board alone"),
        ("\n[neck]\nrod_depth = 15", "neck.rod_depth", "less than the neck's wood"),
        ("\n[neck]\nbars = 2\nbar_depth = 15", "neck.bar_depth", "less than the neck's wood"),
        ("\n[neck]\nbars = 6\nbar_width = 8", "neck.bar_width", "less than 45.5"),
        ("\n[head]\nposts_x = [40, 80, 120, 120, 80, 40]", "head.posts_y", "together"),
        ("\n[head]\nposts_x = [40, 80]\nposts_y = [20, -20, 3, 4, 5, 6]", "head.posts_x", "one a string: 6"),
        (
            "\n[head]\nposts_x = [4, 80, 120, 120, 80, 40]\nposts_y = [20, 20, 20, -20, -20, -20]",
            "head.posts_x[1]",
            "past the nut",
        ),
        ("\n[top]\nradius = 200\nlength = 490", "top.radius", "more than half the body"),
    ],
)
def test_what_cannot_be(more: str, where: str, says: str) -> None:
    found = refused(more)
    assert found[0] == where
    assert says in f"{found[1]} {found[2]}".lower()


def test_a_join_without_a_neck_before_it() -> None:
    where, _, why = refused("", TARN.replace("join = 13 ", "join = 2 "))
    assert (where, "relief" in why) == ("scale.join", True)


def test_a_usual_value_that_does_not_do_is_not_said_to_have_been_read() -> None:
    thick = TARN.replace("thickness = 6.3", "thickness = 22", 1)
    with pytest.raises(MakersFault, match=r"none is given, and the usual 21 mm does not do\. More than the board"):
        parse_description(thick, "tarn.toml")
    with pytest.raises(MakersFault, match="read 21 mm"):
        parse_description(thick + "\n[neck]\ndepth_at_1 = 21\n", "tarn.toml")
