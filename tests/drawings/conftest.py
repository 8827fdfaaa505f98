"""The example instruments, and a way to change a line of one."""

from functools import cache
from importlib.resources import files

import pytest

from gramil.description.reading import parse_description, parse_shop
from gramil.graph import Figures
from gramil.prints.whole import figures_of

EXAMPLES = files("gramil").joinpath("data", "examples")


LASER, ROUTER = 0.14, 0.4
"""Kerf in mm of the bundled shop's machine for templates, and of one for parts that it could have."""


def shop_allowing(text: str, allowed_in: str) -> str:
    """A shop's text with both of its machines' kerf allowed for in the drawing, or by the machine."""
    keys = f'laser_kerf_in = "{allowed_in}"\nrouter_kerf = {ROUTER}\nrouter_kerf_in = "{allowed_in}"'
    return text.replace(f"laser_kerf = {LASER}", f"laser_kerf = {LASER}\n{keys}")


@cache
def figures_cut(name: str, allowed_in: str) -> Figures:
    """The figures of a bundled instrument in the bundled shop, kerf allowed for in "the drawing" or "the machine"."""
    shop = shop_allowing(EXAMPLES.joinpath("shop.toml").read_text(encoding="utf-8"), allowed_in)
    text = EXAMPLES.joinpath(f"{name}.toml").read_text(encoding="utf-8")
    return figures_of(parse_description(text, f"{name}.toml"), parse_shop(shop, "shop.toml"))


@cache
def figures_for(name: str, *changes: tuple[str, str]) -> Figures:
    """The figures of a bundled instrument in the bundled shop, with pieces of its text changed (old, new).

    Kerf is left to the machines, so that every line drawn is a finished edge.
    """
    text = EXAMPLES.joinpath(f"{name}.toml").read_text(encoding="utf-8")
    for old, new in changes:
        assert old in text
        text = text.replace(old, new)
    shop = shop_allowing(EXAMPLES.joinpath("shop.toml").read_text(encoding="utf-8"), "the machine")
    return figures_of(parse_description(text, f"{name}.toml"), parse_shop(shop, "shop.toml"))


@pytest.fixture(scope="session")
def example():
    """The function that makes the figures of a bundled instrument: `example(name, (old, new), ...)`."""
    return figures_for


@pytest.fixture(scope="session")
def tarn() -> Figures:
    """A bound, right-handed board of 630 mm, its face a cone."""
    return figures_for("tarn")


@pytest.fixture(scope="session")
def left_tarn() -> Figures:
    """The same for the left hand."""
    return figures_for("tarn", ('handed = "right"', 'handed = "left"'))


@pytest.fixture(params=["tarn", "fell", "scree", "mere"], scope="session")
def any_board(request) -> Figures:
    """Each of them: bound; in inches, unbound and levelled; fanned and left-handed; flat, for nylon strings."""
    return figures_for(request.param)
