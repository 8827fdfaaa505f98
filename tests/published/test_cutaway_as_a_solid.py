"""Cutaway bodies made once more as solids, in an independent geometry kernel, from their measures alone.

The kernel is Open CASCADE Technology (through `cadquery-ocp-novtk`), which knows nothing of this program. It draws the
outline as it was, once round, as its own curve through the same points; saws the cutaway out of it with a box and a
round cutter; rounds the horn over with its own fillet; and raises the plan between two balls, as dishes hollow them.
"""

import math
from typing import Any

import numpy as np
import pytest
import shapely
from OCP.BRep import BRep_Tool
from OCP.BRepAlgoAPI import BRepAlgoAPI_Common, BRepAlgoAPI_Cut
from OCP.BRepBuilderAPI import (
    BRepBuilderAPI_MakeEdge,
    BRepBuilderAPI_MakeFace,
    BRepBuilderAPI_MakePolygon,
    BRepBuilderAPI_MakeWire,
)
from OCP.BRepFilletAPI import BRepFilletAPI_MakeFillet
from OCP.BRepGProp import BRepGProp
from OCP.BRepPrimAPI import BRepPrimAPI_MakeBox, BRepPrimAPI_MakeCylinder, BRepPrimAPI_MakePrism, BRepPrimAPI_MakeSphere
from OCP.BRepTools import BRepTools
from OCP.GeomAPI import GeomAPI_Interpolate
from OCP.gp import gp_Ax2, gp_Dir, gp_Pnt, gp_Vec
from OCP.GProp import GProp_GProps
from OCP.OCP.collections import HArray1_gp_Pnt
from OCP.TopAbs import TopAbs_EDGE, TopAbs_FACE, TopAbs_VERTEX
from OCP.TopExp import TopExp_Explorer
from OCP.TopoDS import TopoDS

from gramil.shapes.cutaway import Cutaway, cut_away
from gramil.shapes.dome import Dome
from gramil.shapes.outline import Outline
from gramil.shapes.outline_through import through_half_widths
from gramil.shapes.unrolled import UnrolledSide, enclosed_volume

X = (0, 15, 50, 100, 150, 200, 240, 290, 340, 400, 450, 480, 492)
WAISTED = (0, 70, 128, 148, 140, 124, 120, 135, 170, 196, 170, 110, 0)
HOLLOW = 54.0
"""Radius of the hollow that these measures are to come to, in mm."""
DEPTH, DOMES = 98.0, (6000.0, 4000.0)
HEEL = 28.0
HIGH = 300.0


@pytest.fixture(scope="module")
def whole() -> Outline:
    return through_half_widths(X, WAISTED)


def cutaway(whole: Outline, depth: float, radius: float) -> Cutaway:
    """The measures of a cutaway whose hollow has the radius HOLLOW: its horn is what is left beside it."""
    return Cutaway(depth, float(whole.half_width(depth)) - HEEL - HOLLOW, radius, HEEL)


def plan(outline: Outline) -> Any:
    """The outline as a face of the kernel's: its own smooth curve through places some 2 mm apart, for either half."""
    edges = []
    for side in (1, -1):
        places = outline.half.point(np.linspace(0.0, outline.half.length, 361)).tolist()
        points = HArray1_gp_Pnt(1, len(places))
        for row, (x, y) in enumerate(places, 1):
            points.SetValue(row, gp_Pnt(x, side * abs(y), 0.0))
        curve = GeomAPI_Interpolate(points, False, 1e-7)
        curve.Perform()
        edges.append(BRepBuilderAPI_MakeEdge(curve.Curve()).Edge())
    return BRepBuilderAPI_MakeFace(BRepBuilderAPI_MakeWire(*edges).Wire()).Face()


def in_chords(outline: Outline) -> Any:
    """The same in chords within 0.05 mm: the kernel's volumes are close only between plane walls."""
    ring = BRepBuilderAPI_MakePolygon()
    for x, y in shapely.Polygon(outline.polyline(0.01)).simplify(0.04).exterior.coords[:-1]:
        ring.Add(gp_Pnt(x, y, 0.0))
    ring.Close()
    return BRepBuilderAPI_MakeFace(ring.Wire()).Face()


def sawn(face: Any, depth: float) -> Any:
    """The plan with the cutaway sawn out of its treble half: a box ahead, and a round cutter behind it."""
    middle = (depth - HOLLOW, HEEL + HOLLOW)
    box = BRepPrimAPI_MakeBox(gp_Pnt(-50.0, HEEL, -1.0), gp_Pnt(middle[0], 400.0, 1.0)).Shape()
    cutter = BRepPrimAPI_MakeCylinder(gp_Ax2(gp_Pnt(*middle, -1.0), gp_Dir(0, 0, 1)), HOLLOW, 2.0).Shape()
    cut = BRepAlgoAPI_Cut(BRepAlgoAPI_Cut(face, box).Shape(), cutter).Shape()
    (left,) = of_kind(cut, TopAbs_FACE, TopoDS.Face)
    return left


def made(whole: Outline, depth: float, radius: float) -> Any:
    """The cut plan; its outermost corner on the treble side, the horn's, is rounded over on a block as high as HIGH."""
    face = sawn(plan(whole), depth)
    if not radius:
        return face
    block = BRepPrimAPI_MakePrism(face, gp_Vec(0, 0, HIGH)).Shape()
    fillet = BRepFilletAPI_MakeFillet(block)
    fillet.Add(radius, max(of_kind(block, TopAbs_EDGE, TopoDS.Edge), key=outermost_if_upright))
    return max(of_kind(fillet.Shape(), TopAbs_FACE, TopoDS.Face), key=height_of)


def height_of(face: Any) -> float:
    figures = GProp_GProps()
    BRepGProp.SurfaceProperties_s(face, figures)
    return float(figures.CentreOfMass().Z())


def outermost_if_upright(edge: Any) -> float:
    """How far to the treble side an upright edge stands."""
    ends = [BRep_Tool.Pnt_s(each) for each in of_kind(edge, TopAbs_VERTEX, TopoDS.Vertex)]
    low, high = ends[0], ends[-1]
    return float(low.Y()) if abs(high.Z() - low.Z()) > HIGH - 1 else -math.inf


def of_kind(shape: Any, kind: Any, cast: Any) -> list[Any]:
    found, explorer = [], TopExp_Explorer(shape, kind)
    while explorer.More():
        found.append(cast(explorer.Current()))
        explorer.Next()
    return found


def volume(shape: Any) -> float:
    figures = GProp_GProps()
    BRepGProp.VolumeProperties_s(shape, figures)
    return float(figures.Mass())


def area(face: Any) -> float:
    figures = GProp_GProps()
    BRepGProp.SurfaceProperties_s(face, figures, 1e-8)
    return float(figures.Mass())


def round_it(face: Any) -> float:
    figures = GProp_GProps()
    BRepGProp.LinearProperties_s(BRepTools.OuterWire_s(face), figures)
    return float(figures.Mass())


CASES = [(95.0, 22.0), (95.0, 0.0), (80.0, 15.0), (110.0, 0.0)]


@pytest.mark.parametrize(("depth", "radius"), CASES)
def test_area_and_both_sides_lengths(whole: Outline, depth: float, radius: float) -> None:
    face, cut = made(whole, depth, radius), cut_away(whole, cutaway(whole, depth, radius))
    assert cut.area == pytest.approx(area(face), abs=0.05)
    assert cut.treble_half.curve.length == pytest.approx(round_it(face) - whole.half.length, abs=0.005)
    assert cut.bass_half.curve.length == whole.half.length


@pytest.mark.parametrize(("depth", "radius"), CASES[:2])
def test_volume_between_two_domes(whole: Outline, depth: float, radius: float) -> None:
    """As deep at neck and tail, so that each face is part of a ball: raised from the plan, and cut by both balls.

    Chords within 0.05 mm take an eight-thousandth off the plan, and off the volume.
    """
    cut, middle = cut_away(whole, cutaway(whole, depth, radius)), whole.length / 2
    face = in_chords(cut) if radius else sawn(in_chords(whole), depth)
    solid = BRepPrimAPI_MakePrism(face, gp_Vec(0, 0, HIGH)).Shape()
    rise = [each - math.sqrt(each**2 - middle**2) for each in DOMES]
    low = 100.0
    top = BRepPrimAPI_MakeSphere(gp_Pnt(middle, 0, low + DEPTH + rise[0] - DOMES[0]), DOMES[0]).Shape()
    back = BRepPrimAPI_MakeSphere(gp_Pnt(middle, 0, low - rise[1] + DOMES[1]), DOMES[1]).Shape()
    body = BRepAlgoAPI_Common(BRepAlgoAPI_Common(solid, top).Shape(), back).Shape()
    side = UnrolledSide(cut, DEPTH, DEPTH, Dome(1 / DOMES[0], middle), Dome(1 / DOMES[1], middle))
    lost = cut.area / area(face)
    assert enclosed_volume(side) == pytest.approx(lost * volume(body), rel=2e-5)
