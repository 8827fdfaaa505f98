"""Plans of several layers of our own, drawn by reckoning: their truth is in these numbers."""

import io
from collections.abc import Sequence
from math import hypot

import ezdxf.filemanagement

from gramil.shapes.outline_through import through_points

Place = tuple[float, float]
HALF: tuple[Place, ...] = (
    *((0, 38), (12, 82), (30, 107.4), (45, 119), (70, 129.3), (95, 133), (118, 130.5), (140, 125), (162, 119.4)),
    *((185, 117), (207, 121), (230, 130), (257, 147.5), (285, 165), (317, 179.4), (350, 186), (380, 183.4)),
    *((410, 172), (435, 153), (455, 131), (470, 105), (482, 72), (490, 0)),
)
RING: tuple[Place, ...] = (*HALF, *((x, -y) for x, y in reversed(HALF[:-1])))
X: tuple[Place, Place] = ((227.0, -66.6), (407.0, 133.2))
BAR: tuple[Place, Place] = ((420.0, 30.0), (460.0, -70.0))
BACK: tuple[Place, Place] = ((185.0, -70.0), (185.0, 70.0))
HOLE = (160.0, 96.0)
BRIDGE = (322.0, 354.0, 76.0)
"""Its front and back edge along, half its length across."""
HEAD: tuple[Place, ...] = ((0, 21.5), (24, 32), (120, 35), (160, 33), (163, 0))


def edges(line: tuple[Place, Place], width: float) -> list[tuple[Place, Place]]:
    """The two long edges of a brace."""
    (x, y), (u, v) = line
    length = hypot(u - x, v - y)
    aside = ((y - v) / length * width / 2, (u - x) / length * width / 2)
    return [((x + s * aside[0], y + s * aside[1]), (u + s * aside[0], v + s * aside[1])) for s in (1, -1)]


def box(line: tuple[Place, Place], width: float) -> list[Place]:
    """A brace as a closed shape."""
    (a, b), (c, d) = edges(line, width)
    return [a, b, d, c]


def mirrored(line: tuple[Place, Place]) -> tuple[Place, Place]:
    (x, y), (u, v) = line
    return (x, -y), (u, -v)


def smooth() -> list[Place]:
    """Points close together on the half, as a drawing program writes a smooth line."""
    curve = through_points(HALF).half
    return [(x, y) for x, y in curve.place(curve.sample(0.002, 1.0)).tolist() if y >= 38 or x > 100]


def moved(places: Sequence[Place], unit: float, upright: bool) -> list[Place]:
    """In the drawing's own units and place; upright, the neck is at the top of a page whose y runs up."""
    turned = [(y, -x) if upright else (x, y) for x, y in places]
    return [((x + 700) / unit, (y + 900) / unit) for x, y in turned]


def dxf(unit: float = 1.0, upright: bool = False, half: bool = False, head: bool = True) -> str:
    """The plan as DXF: outline, braces of three kinds, hole with a ring, bridge, head, a dimension's lines."""
    made = ezdxf.filemanagement.new("R2010")
    made.header["$INSUNITS"] = {1.0: 4, 25.4: 1}[unit]
    space = made.modelspace()

    def poly(places: Sequence[Place], layer: str, close: bool = True) -> None:
        space.add_lwpolyline(moved(places, unit, upright), close=close, dxfattribs={"layer": layer})

    def line(ends: tuple[Place, Place], layer: str) -> None:
        space.add_line(*moved(ends, unit, upright), dxfattribs={"layer": layer})

    def circle(along: float, diameter: float, layer: str) -> None:
        space.add_circle(moved([(along, 0)], unit, upright)[0], diameter / 2 / unit, dxfattribs={"layer": layer})

    if half:
        made.modelspace().add_spline(moved(HALF, unit, upright), dxfattribs={"layer": "OUTLINE"})
        line(((0, 0), HALF[0]), "OUTLINE")
    else:
        space.add_spline(moved(RING, unit, upright), dxfattribs={"layer": "OUTLINE"})
        line((RING[-1], RING[0]), "OUTLINE")
    poly(box(X, 7), "TOP_BRACES")
    poly(box(mirrored(X), 7), "TOP_BRACES")
    for edge in edges(BAR, 6):
        line(edge, "TOP_BRACES")
    poly([(200, 20), (240, 60), (280, 30)], "TOP_BRACES", close=False)
    line(BACK, "BACK_BRACES")
    circle(HOLE[0], HOLE[1], "HOLE")
    circle(HOLE[0], HOLE[1] + 24, "HOLE")
    front, back, wing = BRIDGE
    poly([(front, -wing), (front, wing), (back, wing), (back, -wing)], "BRIDGE")
    if head:
        poly([(-420 - x, y) for x, y in (*HEAD, *((x, -y) for x, y in reversed(HEAD[:-1])))], "HEAD")
    for across in (200, 210):
        line(((0, across), (490, across)), "DIMS")
    text = io.StringIO()
    made.write(text)
    return text.getvalue()


def svg() -> str:
    """The plan as SVG, y down, in mm, each part a group."""

    def path(places: Sequence[Place], close: bool = True) -> str:
        drawn = " L ".join(f"{x + 300:.4f},{300 - y:.4f}" for x, y in places)
        return f'<path d="M {drawn}{" Z" if close else ""}"/>'

    close = smooth()
    half = " ".join(f"{x + 300:.4f},{300 - y:.4f}" for x, y in (*close, *((x, -y) for x, y in reversed(close[:-1]))))
    named = [
        ("outline", f'<polygon points="{half}"/>'),
        ("top-braces", path(box(X, 7)) + path(box(mirrored(X), 7)) + path(BAR, close=False)),
        ("back-braces", path(box(BACK, 8))),
        ("hole", f'<circle cx="{300 + HOLE[0]}" cy="300" r="{HOLE[1] / 2}"/>'),
        ("bridge", f'<rect x="{300 + BRIDGE[0]}" y="{300 - BRIDGE[2]}" width="32" height="{2 * BRIDGE[2]}"/>'),
        ("notes", path([(0, 200), (490, 200)], close=False)),
    ]
    groups = "".join(f'<g id="{name}">{content}</g>' for name, content in named)
    return (
        '<svg xmlns="http://www.w3.org/2000/svg" width="900mm" height="600mm" viewBox="0 0 900 600" fill="none" '
        f'stroke="black">{groups}</svg>'
    )
