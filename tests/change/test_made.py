"""What a change does to what is made: every operation known, every figure there, and verdicts worked by hand."""

from importlib.resources import files

import pytest

from gramil.change.made import Judged, judge, operations
from gramil.description.reading import parse_description, read_shop
from gramil.description.writing import set_key
from gramil.graph import Figures
from gramil.prints.whole import figures_of, whole_graph
from gramil.shop.operations_file import usual_work

TARN = (files("gramil") / "data" / "examples" / "tarn.toml").read_text(encoding="utf-8")


def tarn(**changes: str) -> Figures:
    text = TARN
    for key, value in changes.items():
        text = set_key(text, key.replace("__", "."), value)
    return figures_of(parse_description(text), read_shop())


def verdict(operation: str, **changes: str) -> Judged:
    (found,) = judge([operation], tarn(), tarn(**changes))
    return found


def test_every_operation_and_figure_is_known() -> None:
    graph = whole_graph()
    for name, operation in operations().items():
        assert name in usual_work().operations
        assert operation.fixes
        for fixed in operation.fixes:
            assert fixed.figure in graph.dimensions or fixed.figure in graph.inputs, (name, fixed.figure)


@pytest.mark.parametrize(
    ("operation", "change", "standing"),
    [
        ("blocks_made", {"body__depth_neck": "94.4"}, "still right"),
        ("blocks_made", {"body__depth_neck": "90"}, "can be reworked"),
        ("blocks_made", {"body__depth_neck": "99"}, "lost"),
        ("sides_thicknessed", {"body__wall": "1.9"}, "can be reworked"),
        ("rod_slot_cut", {"scale__join": "14"}, "can be reworked"),
        ("neck_joint_cut", {"scale__join": "14"}, "lost"),
        ("neck_joint_cut", {"scale__join": "12"}, "can be reworked"),
        ("channels_cut", {"top_binding__thickness": "2.04"}, "still right"),
        ("channels_cut", {"top_binding__thickness": "2.3"}, "can be reworked"),
        ("channels_cut", {"top_binding__thickness": "1.8"}, "lost"),
        ("binding_bent", {"top_binding__thickness": "1.8"}, "can be reworked"),
        ("binding_bent", {"top_binding__thickness": "2.3"}, "lost"),
        ("body_bound", {"back_binding__height": "6.6"}, "can be reworked"),
        ("body_bound", {"back_binding__height": "5"}, "lost"),
        ("back_thicknessed", {"body__back_thickness": "2.2"}, "can be reworked"),
        ("back_thicknessed", {"body__back_thickness": "2.8"}, "lost"),
        ("top_sawn", {"body__plate_allowance": "9"}, "still right"),
    ],
)
def test_standings_by_hand(operation: str, change: dict[str, str], standing: str) -> None:
    assert verdict(operation, **change).standing == standing


def test_a_dome_where_there_was_none_is_a_change() -> None:
    """From flat, whose radius is without end, to a dish: the rims must be sanded in it."""
    (found,) = judge(["linings_glued_top"], tarn(top__radius='"flat"'), tarn())
    assert (found.address, found.standing) == ("top_radius", "can be reworked")
    (same,) = judge(["linings_glued_top"], tarn(top__radius='"flat"'), tarn(top__radius='"flat"'))
    assert same.standing == "still right"


def test_a_strings_post_is_named_from_one() -> None:
    posts = {"head.posts_y": "[22.5, 19, 15.5, -15.5, -19, -22.5]", "head.posts_x": "[42, 80, 118, 118, 80, 42]"}
    before = after = TARN
    for key, value in posts.items():
        before, after = set_key(before, key, value), set_key(after, key, value.replace("80, 42]", "80, 45]"))
    old, new = (figures_of(parse_description(text), read_shop()) for text in (before, after))
    (found,) = judge(["head_drilled"], old, new)
    assert (found.address, found.standing) == ("head_posts_x[6]", "can be reworked")
