"""Drawings to be written and read back: a 500 mm board with every kind of mark, and the words for its figures."""

from math import pi

import pytest

from gramil import names as n
from gramil.drawings.marks import Arc, Circle, Drawing, Label, Line, Mark, Polyline, Span, Words

FIGURES = {"nut_width": "45.50 mm", "board_length": "500.00 mm", "slot_depth[7]": "3.25 mm"}
SLOTS = tuple(35.3 + 19.123456 * i for i in range(22))


@pytest.fixture(scope="session")
def resolve():
    """Addresses to shown text; an unknown address is a KeyError."""
    return lambda figure: FIGURES[str(figure)]


@pytest.fixture(scope="session")
def slots():
    """The slots of the board: x in mm, in order."""
    return SLOTS


@pytest.fixture(scope="session")
def board():
    """A board of exactly 500 by 60 mm, zero line at x = 0."""
    marks: list[Mark] = [
        Polyline(((0.0, -22.75), (500.0, -30.0), (500.0, 30.0), (0.0, 22.75)), "outline", closed=True),
        Line((0.0, 0.0), (500.0, 0.0), "centreline"),
        Line((0.0, -22.75), (0.0, 22.75), "nut"),
    ]
    marks += [Line((x, -22.0 - i / 7), (x + 0.25, 22.0 + i / 7), "slots") for i, x in enumerate(SLOTS)]
    marks += [
        Circle((70.123456, 0.0), 3.1, "markers"),
        Arc((250.0, -300.0), 320.0, pi / 2 - 0.08, pi / 2 + 0.08, "hidden"),
        Arc((480.0, 0.0), 10.0, -pi / 2, pi / 2, "cut"),
        Words((100.0, -10.0), "bass <side> & 100 %", 3.0),
        Label((200.0, 10.0), n.slot_depth[7], "depth ", ".", height=3.5),
        Span((0.0, -30.0), (500.0, -30.0), -8.0, n.board_length),
        Span((0.0, -22.75), (0.0, 22.75), 8.0, n.nut_width),
    ]
    return Drawing("board", "Tarn, fretboard", "the face", tuple(marks))


@pytest.fixture(scope="session")
def section():
    """A small drawing with every hatch, seen from the end, heights four times too tall."""
    kinds = ("along the grain", "across the grain", "metal", "bone", "void")
    marks: list[Mark] = [
        Polyline(((x, 0.0), (x + 25.0, 0.0), (x + 20.0, 18.0), (x, 12.0)), "outline", closed=True, hatch=kind)
        for x, kind in zip((0.0, 30.0, 60.0, 90.0, 120.0), kinds, strict=True)
    ]
    marks.append(Label((12.0, 5.0), n.nut_width, anchor="middle", height=2.5))
    return Drawing("section", "Section at the nut", "the end", tuple(marks), stretch=4.0)
