"""The body's bindings as a maker writes them: what is taken when nothing is said, and what cannot be."""

from collections.abc import Callable

import pytest

from gramil.description.base import base_values
from gramil.description.reading import parse_description, read_shop
from gramil.faults import MakersFault


@pytest.fixture
def unbound(text_of: Callable[[str], str]) -> str:
    """Tarn with its body, and no binding round that."""
    head, _, rest = text_of("tarn").partition("# Binding and purfling round the top")
    return head + "[soundhole]" + rest.partition("[soundhole]")[2]


def refused(text: str) -> str:
    with pytest.raises(MakersFault) as caught:
        parse_description(text, "guitar.toml")
    return str(caught.value)


def line_of(text: str, start: str) -> int:
    return next(row for row, line in enumerate(text.splitlines(), 1) if line.startswith(start))


def test_left_out_it_is_unbound_and_the_back_as_thick_as_usual(unbound: str) -> None:
    text = unbound.replace("back_thickness = 2.5\n", "")
    values = base_values(parse_description(text), read_shop()).values
    assert (values["top_binding_thickness"], values["back_binding_thickness"]) == (0.0, 0.0)
    assert values["body_back_thickness"] == 2.6


def test_inches_are_millimetres(unbound: str) -> None:
    text = unbound + '[top_binding]\nthickness = "0.08 in"\nheight = "1/4 in"\n'
    values = base_values(parse_description(text), read_shop()).values
    assert values["top_binding_thickness"] == pytest.approx(2.032)
    assert values["top_binding_height"] == pytest.approx(6.35)


def test_there_must_be_a_body_to_bind(text_of: Callable[[str], str]) -> None:
    text = text_of("tarn").partition("# The body")[0] + "[back_binding]\nthickness = 2\n"
    told = refused(text)
    assert "there is no body to bind" in told
    assert f"guitar.toml:{line_of(text, '[back_binding]')}: " in told


def test_purfling_lies_against_a_binding(unbound: str) -> None:
    text = unbound + "[top_binding]\npurfling = 1.5\n"
    told = refused(text)
    assert "no binding outside it" in told
    assert f"guitar.toml:{line_of(text, 'purfling = 1.5')}: " in told


def test_purfling_does_not_go_below_its_binding(unbound: str) -> None:
    binding = "[back_binding]\nthickness = 2\nheight = {}\npurfling = 1\npurfling_depth = 2\n"
    parse_description(unbound + binding.format(2.1))
    told = refused(unbound + binding.format(2.0))
    assert "ess than the binding's height, 2 mm" in told


def test_two_bindings_leave_side_between_them(unbound: str) -> None:
    """Tarn is 94 deep at the neck, its plates are 2.8 and 2.5: 99.3 in all."""
    shallow = unbound.replace("depth_neck = 94", "depth_neck = 60")
    both = "[top_binding]\nthickness = 2\nheight = 40\n[back_binding]\nthickness = 2\nheight = {}\n"
    parse_description(shallow + both.format(25.2))
    told = refused(shallow + both.format(25.4))
    assert "both bindings are 65.4 mm high together" in told
    assert "65.3 mm" in told


def test_binding_that_does_not_go_round_is_refused_at_its_line(text_of: Callable[[str], str]) -> None:
    """A waist 20 wide has no room for 8 and 4 from both sides."""
    board = text_of("tarn").partition("# The body")[0]
    body = "[body]\noutline = [[0, 40], [100, 120], [200, 10], [300, 150], [400, 0]]\nwall = 1\nlinings = 1\n"
    parse_description(board + body + "[top_binding]\nthickness = 2\n")
    told = refused(board + body + "[top_binding]\nthickness = 8\npurfling = 4\n")
    assert "top_binding.thickness" in told
