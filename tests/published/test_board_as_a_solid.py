"""A board made once more as a solid, in an independent geometry kernel, the way a shop makes it, and then measured.

The kernel is Open CASCADE Technology (through `cadquery-ocp-novtk`), which knows nothing of this program. From the
program come only what a maker sets on the tools: where each slot is, the saw's kerf and how deep to set it. Everything
else here (the taper, the binding's line, the cone) is drawn from the description's own numbers. What is measured on
the solid agrees with the program's other figures to 0.0001 mm on slots and what is left under them, and to 0.001 mm on
edges.
"""

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Any

import pytest
from OCP.BRepAlgoAPI import BRepAlgoAPI_Common, BRepAlgoAPI_Cut
from OCP.BRepBuilderAPI import (
    BRepBuilderAPI_MakeEdge,
    BRepBuilderAPI_MakeFace,
    BRepBuilderAPI_MakePolygon,
    BRepBuilderAPI_MakeWire,
)
from OCP.BRepCheck import BRepCheck_Analyzer
from OCP.BRepOffsetAPI import BRepOffsetAPI_ThruSections
from OCP.BRepPrimAPI import BRepPrimAPI_MakePrism
from OCP.collections import List_TopoDS_Shape
from OCP.GC import GC_MakeArcOfCircle
from OCP.gp import gp_Dir, gp_Lin, gp_Pnt, gp_Vec
from OCP.IntCurvesFace import IntCurvesFace_ShapeIntersector

from gramil.graph import Figures

# The description, in mm: nut 44, 54 at the octave, 640 scale, 20 frets, 10 past the last, 6.2 thick, cone 300 to 400,
# bound 1.6 and 0.4, slots 0.15 clear of a 1.5 tang, 0.2 of crest still to come off when they are cut.
SCALE, FRETS, NUT, OCTAVE, PAST, THICK, INSET, LOSS, NEED = 640.0, 20, 44.0, 54.0, 10.0, 6.2, 2.0, 0.2, 1.65
RADIUS_NUT, RADIUS_END = 300.0, 400.0
TAIL = SCALE * (1 - 0.5 ** (FRETS / 12)) + PAST
TEXT = """
gramil = 1
instrument = { name = "Solid", units = "mm" }
scale = { length = 640, frets = 20, join = 14 }
nut = { width = 44, spread = 37 }
bridge = { spread = 55 }
binding = { thickness = 1.6, purfling = 0.4, tail = false }
slots = { bottom = "straight", cut = "before arching", clearance = 0.15, crest_loss = 0.2 }
strings = { gauges = [0.012, 0.016, 0.024, 0.032, 0.042, 0.053] }
[board]
wood = "persimmon"
width = 54
width_at = "fret 12"
thickness = 6.2
beyond_last_fret = 10
arch = { nut = 300, end = 400 }
level_underside = true
[wire]
name = "measured"
crown_width = 2.2
crown_height = 1.1
tang_thickness = 0.54
bead_thickness = 0.78
tang_depth = 1.5
"""


def half(x: float, inset: float = 0.0) -> float:
    """Half the board's width at x, the edge moved in square to itself by `inset`."""
    growth = (OCTAVE - NUT) / 2 / (SCALE / 2)
    return NUT / 2 + growth * x - inset * math.hypot(1, growth)


def prism(corners: list[tuple[float, float]], bottom: float, top: float) -> Any:
    """A solid that stands on a polygon."""
    polygon = BRepBuilderAPI_MakePolygon()
    for x, y in corners:
        polygon.Add(gp_Pnt(x, y, bottom))
    polygon.Close()
    face = BRepBuilderAPI_MakeFace(polygon.Wire()).Face()
    return BRepPrimAPI_MakePrism(face, gp_Vec(0, 0, top - bottom)).Shape()


def trapezium(inset: float) -> list[tuple[float, float]]:
    """The board's plan, or its core's."""
    return [(0, -half(0, inset)), (TAIL, -half(TAIL, inset)), (TAIL, half(TAIL, inset)), (0, half(0, inset))]


def under_the_cone() -> Any:
    """All that lies under the playing surface: a loft, ruled, between the arcs at zero line and tail end."""
    loft = BRepOffsetAPI_ThruSections(True, True, 1e-9)
    for x, radius in ((0.0, RADIUS_NUT), (TAIL, RADIUS_END)):
        loft.AddWire(section(x, radius, math.asin(40 / RADIUS_END)))
    loft.Build()
    return loft.Shape()


def section(x: float, radius: float, angle: float) -> Any:
    """An arc of a circle with its top at z = 0, the same angle at both ends, closed by three straight lines below."""
    y, z = radius * math.sin(angle), radius * (math.cos(angle) - 1)
    left, top, right = gp_Pnt(x, -y, z), gp_Pnt(x, 0, 0), gp_Pnt(x, y, z)
    low_left, low_right = gp_Pnt(x, -y, -30), gp_Pnt(x, y, -30)
    wire = BRepBuilderAPI_MakeWire()
    wire.Add(BRepBuilderAPI_MakeEdge(GC_MakeArcOfCircle(left, top, right).Value()).Edge())
    for one, other in ((right, low_right), (low_right, low_left), (low_left, left)):
        wire.Add(BRepBuilderAPI_MakeEdge(one, other).Edge())
    return wire.Wire()


def wedge_below(at_nut: float, at_tail: float) -> Any:
    """What is planed off the underside: everything below a plane at two heights."""
    polygon = BRepBuilderAPI_MakePolygon()
    slope = (at_tail - at_nut) / TAIL
    for x, z in ((-9, at_nut - 9 * slope), (TAIL + 9, at_tail + 9 * slope), (TAIL + 9, -20), (-9, -20)):
        polygon.Add(gp_Pnt(x, -50, z))
    polygon.Close()
    return BRepPrimAPI_MakePrism(BRepBuilderAPI_MakeFace(polygon.Wire()).Face(), gp_Vec(0, 100, 0)).Shape()


def slotted(blank: Any, figures: Figures) -> Any:
    """The blank with every slot sawn across the core to the depth that is set, from its flat face."""
    kerf, bottom = figures["saw_kerf"], LOSS - figures["slot_depth_setting"]
    slots = List_TopoDS_Shape()
    core = prism(trapezium(INSET), -20, 20)
    for fret in range(1, FRETS + 1):
        low, high = figures["fret_position"][fret] - kerf / 2, figures["fret_position"][fret] + kerf / 2
        slot = prism([(low, -60), (high, -60), (high, 60), (low, 60)], bottom, 5)
        slots.Append(BRepAlgoAPI_Common(slot, core).Shape())
    body = List_TopoDS_Shape()
    body.Append(blank)
    cut = BRepAlgoAPI_Cut()
    cut.SetArguments(body)
    cut.SetTools(slots)
    cut.Build()
    return cut.Shape()


@dataclass(frozen=True)
class Solid:
    """A solid, and where straight lines pass through its faces."""

    shape: Any

    def along(self, start: tuple[float, float, float], way: tuple[float, float, float]) -> list[float]:
        """Distances at which a line from `start` meets the faces, nearest first."""
        finder = IntCurvesFace_ShapeIntersector()
        finder.Load(self.shape, 1e-9)
        finder.Perform(gp_Lin(gp_Pnt(*start), gp_Dir(*way)), 0, 2000)
        return sorted({round(finder.WParameter(each), 9) for each in range(1, finder.NbPnt() + 1)})

    def height(self, x: float, y: float) -> tuple[float, float]:
        """Underside and top at a place."""
        found = self.along((x, y, -100), (0, 0, 1))
        return found[0] - 100, found[-1] - 100

    def thickness(self, x: float, y: float) -> float:
        """What a caliper would read at a place."""
        low, high = self.height(x, y)
        return high - low


@dataclass(frozen=True)
class Made:
    """The figures, and the board before and after its underside was levelled."""

    figures: Figures
    arched: Solid
    levelled: Solid


@pytest.fixture(scope="module")
def made(derive_text: Callable[..., Figures]) -> Made:
    """Blank, slots, arch; then the underside planed so that nut and tail edges are as thick as the tail's now are."""
    figures = derive_text(TEXT)
    blank = prism(trapezium(0), -THICK, LOSS)
    arched = Solid(BRepAlgoAPI_Common(slotted(blank, figures), under_the_cone()).Shape())
    near = 1e-6
    at_nut, at_tail = (arched.height(x, half(x) - near)[1] for x in (near, TAIL - near))
    edge = at_tail + THICK
    cut = BRepAlgoAPI_Cut(arched.shape, wedge_below(at_nut - edge, at_tail - edge))
    return Made(figures, arched, Solid(cut.Shape()))


def test_the_solid_is_sound(made: Made) -> None:
    assert BRepCheck_Analyzer(made.arched.shape).IsValid()
    assert BRepCheck_Analyzer(made.levelled.shape).IsValid()


def walls(solid: Solid) -> Iterator[tuple[float, float]]:
    """Near and far wall of each slot, found by a line down the centre just under the surface."""
    found = solid.along((-10, 0, -0.5), (1, 0, 0))
    inner = [each - 10 for each in found[1:-1]]
    return zip(inner[::2], inner[1::2], strict=True)


def test_slots_lie_at_twelfth_roots(made: Made) -> None:
    places = list(walls(made.levelled))
    assert len(places) == FRETS
    for fret, (near, far) in enumerate(places, start=1):
        assert (near + far) / 2 == pytest.approx(SCALE * (1 - 0.5 ** (fret / 12)), abs=1e-4)
        assert far - near == pytest.approx(made.figures["saw_kerf"], abs=1e-4)


def test_every_slot_takes_the_tang_and_leaves_what_is_said(made: Made) -> None:
    figures = made.figures
    for fret in range(1, FRETS + 1):
        x = SCALE * (1 - 0.5 ** (fret / 12))
        end = half(x, INSET) - 1e-3
        assert made.levelled.thickness(x, 0) == pytest.approx(figures["slot_left_at_crest"][fret], abs=1e-4)
        for y in (end, -end):
            assert made.levelled.thickness(x, y) == pytest.approx(figures["slot_left_at_end"][fret], abs=1e-4)
            assert depth(made.levelled, x, y) == pytest.approx(figures["slot_depth_at_end"][fret], abs=1e-4)
            assert depth(made.levelled, x, y) >= NEED - 1e-4
        assert depth(made.levelled, x, 0) == pytest.approx(figures["slot_depth_at_crest"], abs=1e-4)


def depth(solid: Solid, x: float, y: float) -> float:
    """Depth of a slot under the surface, which is taken half way between its two sides."""
    beside = [solid.height(x + step, y)[1] for step in (-0.5, 0.5)]
    return sum(beside) / 2 - solid.height(x, y)[1]


def test_slots_stop_at_the_binding(made: Made) -> None:
    """Just inside the core there is a slot; just outside it the binding stands at the full height of the surface."""
    for fret in (1, 12, 20):
        x = SCALE * (1 - 0.5 ** (fret / 12))
        edge = made.figures["core_y_treble"][fret]
        assert depth(made.levelled, x, edge - 1e-3) > NEED - 1e-3
        assert depth(made.levelled, x, edge + 1e-3) == pytest.approx(0, abs=1e-4)


def test_edges_and_crest(made: Made) -> None:
    figures = made.figures
    for fret in range(1, FRETS + 1):
        x = SCALE * (1 - 0.5 ** (fret / 12))
        for side, sign in (("treble", 1), ("bass", -1)):
            reading = made.levelled.thickness(x, sign * (half(x) - 1e-4))
            assert reading == pytest.approx(figures[f"thickness_at_edge_{side}"][fret], abs=1e-3)
        beside = [made.levelled.thickness(x + step, 0) for step in (-0.5, 0.5)]
        assert sum(beside) / 2 == pytest.approx(figures["thickness_at_crest"][fret], abs=1e-4)


def test_before_levelling_edges_differ_by_the_falls(made: Made, derive_text: Callable[..., Figures]) -> None:
    left = derive_text(TEXT.replace("level_underside = true", "level_underside = false"))
    for fret in range(1, FRETS + 1):
        x = SCALE * (1 - 0.5 ** (fret / 12))
        reading = made.arched.thickness(x, half(x) - 1e-4)
        assert reading == pytest.approx(left["thickness_at_edge_treble"][fret], abs=1e-3)
        assert THICK - reading == pytest.approx(left["arch_fall_at_edge_treble"][fret], abs=1e-3)


def test_wedge(made: Made) -> None:
    taken = made.arched.thickness(1e-6, 0) - made.levelled.thickness(1e-6, 0)
    assert taken == pytest.approx(made.figures["thickness_wedge"], abs=1e-4)
