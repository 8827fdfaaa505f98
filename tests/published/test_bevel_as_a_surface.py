"""A bevel made once more in an independent geometry kernel, from its three measures alone.

The kernel is Open CASCADE Technology (through `cadquery-ocp-novtk`), which knows nothing of this program: it draws half
the outline as its own curve, measures along it, stands square to it, and spans a ruled face between two curves.
"""

import math
from functools import cache
from typing import Any

import numpy as np
import pytest
from OCP.BRepBuilderAPI import BRepBuilderAPI_MakeEdge
from OCP.BRepFill import BRepFill
from OCP.BRepGProp import BRepGProp
from OCP.GCPnts import GCPnts_AbscissaPoint
from OCP.GeomAdaptor import GeomAdaptor_Curve
from OCP.GeomAPI import GeomAPI_Interpolate
from OCP.gp import gp_Pnt, gp_Vec
from OCP.GProp import GProp_GProps
from OCP.OCP.collections import HArray1_gp_Pnt

from gramil.shapes.dome import Dome
from gramil.shapes.edge_bevel import EdgeBevel
from gramil.shapes.outline_through import through_half_widths
from gramil.shapes.unrolled import UnrolledSide

X = (0, 15, 50, 100, 150, 200, 240, 290, 340, 400, 450, 480, 492)
WAISTED = (0, 70, 128, 148, 140, 124, 120, 135, 170, 196, 170, 110, 0)
OUTLINE = through_half_widths(X, WAISTED)
LENGTH, MIDDLE, OVER = 300.0, 520.0, 2.7
TOP = 7600.0
"""Radius of the top's dome, in mm, its apex half way along."""
PLACES = 241


def through(points: np.ndarray) -> Any:
    """The kernel's own smooth curve through points."""
    every = HArray1_gp_Pnt(1, len(points))
    for row, point in enumerate(points.tolist(), 1):
        every.SetValue(row, gp_Pnt(*point))
    curve = GeomAPI_Interpolate(every, False, 1e-7)
    curve.Perform()
    return curve.Curve()


@cache
def outline() -> GeomAdaptor_Curve:
    places = OUTLINE.half.point(np.linspace(0.0, OUTLINE.half.length, 721))
    return GeomAdaptor_Curve(through(np.column_stack((places, np.zeros(len(places))))))


def edge_at(along: float) -> tuple[np.ndarray, np.ndarray]:
    """A place so far along the kernel's curve, and the way inward there."""
    at = GCPnts_AbscissaPoint(outline(), along, outline().FirstParameter()).Parameter()
    point, tangent = gp_Pnt(), gp_Vec()
    outline().D1(at, point, tangent)
    unit = np.array([tangent.X(), tangent.Y()]) / math.hypot(tangent.X(), tangent.Y())
    return np.array([point.X(), point.Y()]), np.array([unit[1], -unit[0]])


def face_height(x: float, y: float) -> float:
    """Of a ball over the plane through its points at the outline's ends."""
    half = 246.0
    return math.sqrt(TOP**2 - (x - half) ** 2 - y**2) - math.sqrt(TOP**2 - half**2) + OVER


def lines(width: float, drop: float) -> tuple[np.ndarray, np.ndarray]:
    """The line on the face and the line on the wall."""
    face, wall = [], []
    for step in np.linspace(-0.5, 0.5, PLACES).tolist():
        share = math.cos(math.pi * step) ** 2
        edge, inward = edge_at(MIDDLE + step * LENGTH)
        place = edge + width * share * inward
        face.append((*place, face_height(*place.tolist())))
        wall.append((*edge, face_height(*edge.tolist()) - drop * share))
    return np.array(face), np.array(wall)


@pytest.mark.parametrize(("width", "drop"), [(25.0, 15.0), (12.0, 20.0)])
def test_area_and_lines(width: float, drop: float) -> None:
    face, wall = (BRepBuilderAPI_MakeEdge(through(each)).Edge() for each in lines(width, drop))
    spanned, ways = GProp_GProps(), []
    BRepGProp.SurfaceProperties_s(BRepFill.Face_s(face, wall), spanned)
    for each in (face, wall):
        figures = GProp_GProps()
        BRepGProp.LinearProperties_s(each, figures)
        ways.append(figures.Mass())
    side = UnrolledSide(OUTLINE, 90.0, 105.0, Dome(1 / TOP, 246.0), Dome(0.0, 246.0), "bass")
    bevel = EdgeBevel(side, True, OVER, width, drop, LENGTH, MIDDLE)
    assert bevel.area == pytest.approx(spanned.Mass(), rel=1e-4)
    assert (bevel.face_length, bevel.wall_length) == pytest.approx(ways, abs=0.01)
