"""Tarn with more open than its round hole, for the tests: an oval, a D beside it, a round one, two ports."""

OVAL = 'shape = "oval"\nacross = 96\nalong = 76\n'
FURTHER = """
[[opening]]
name = "ear"
centre = 118
aside = -84
shape = "D"
across = 36
along = 30
lean = 20

[[opening]]
name = "eye"
centre = 130
aside = 90
diameter = 24

[[rosette]]
name = "ear ring"
round = "ear"
gap = 3
width = 4

[[port]]
name = "port"
side = "bass"
centre = 210
along = 60
across = 36

[[port]]
name = "peep"
side = "treble"
centre = 560
below = 40
diameter = 25
patch = 0
"""


def oval(text: str) -> str:
    """A text of Tarn with an oval soundhole, its ring as far from the edge all round."""
    return text.replace("diameter = 92\n", OVAL, 1).replace("inner = 104\n", "gap = 6\n", 1)


def opened(text: str) -> str:
    """The same with further holes and ports."""
    return oval(text) + FURTHER
