"""The slots of a heel that a body is built on, sawn in an independent geometry kernel, and the body's sides let in.

The kernel is Open CASCADE Technology (through `cadquery-ocp-novtk`), which knows nothing of this program. Heel and foot
are a block with a level face; both slots are sawn as the drawing has them on that face, down the heel at the angle that
the sheet tells. The sides are the body's outline as a machine reads it from the DXF of the top, as thick as described,
square to the top's rim; the rim is turned against the neck's face by the angle that the straightedge asks for. Do the
sides go in, do they go in no other way, and how much room have they?
"""

import io
import math
from typing import Any

import ezdxf
import pytest
import shapely
from OCP.BRepAlgoAPI import BRepAlgoAPI_Common, BRepAlgoAPI_Cut, BRepAlgoAPI_Fuse
from OCP.BRepBuilderAPI import BRepBuilderAPI_MakeFace, BRepBuilderAPI_MakePolygon, BRepBuilderAPI_Transform
from OCP.BRepGProp import BRepGProp
from OCP.BRepPrimAPI import BRepPrimAPI_MakeBox, BRepPrimAPI_MakePrism
from OCP.gp import gp_Ax1, gp_Dir, gp_Pnt, gp_Trsf, gp_Vec
from OCP.GProp import GProp_GProps

from gramil.drawings.marks import Polyline
from gramil.formatter import Formatter
from gramil.graph import Figures
from gramil.writers.dxf import dxf_bytes

HAIR = 0.01
"""In mm: how near a side may lie to a slot's wall and still be free of it, or in it."""
ROUNDED = "outline = [\n  [0, 0], [2, 18], [8, 45], [30, 92]"
SQUARE = "outline = [\n  [0, 36], [8, 80]"


@pytest.fixture(scope="module", params=["square neck end", "rounded neck end"])
def leaning(request: pytest.FixtureRequest, text_of: Any, derive_text: Any) -> Figures:
    """The nylon example with a thicker bridge, so that the neck leans; its body ends square, or rounded."""
    text = text_of("mere").replace("[bridge]\n", "[bridge]\nthickness = 11\n")
    assert SQUARE in text
    if request.param == "rounded neck end":
        text = text.replace(SQUARE, ROUNDED).replace("slot_room = 0.2", "slot_room = 1.2")
    return derive_text(text)  # type: ignore[no-any-return]


def test_the_sides_go_into_the_slots_and_only_so_far(leaning: Figures) -> None:
    """Pushed tailward by the room they are still free, by a hair more they are not; nor the other way."""
    heel, bow = sawn_heel(leaning), leaning["foot_slot_bow"]
    room = float(leaning["carve_slot_room"])
    sides = sides_of(leaning)
    assert overlap(heel, moved(sides, bow + HAIR)) < 0.5, "free once the mouth is eased by the bow that is told"
    assert overlap(heel, moved(sides, room - 2 * HAIR)) < 0.5 + 100 * bow
    assert overlap(heel, moved(sides, room + 0.2)) > 100
    assert overlap(heel, moved(sides, bow - 0.2)) > 100


def test_a_slot_square_to_the_neck_does_not_take_them(leaning: Figures) -> None:
    """The angle is what the sheet tells; without it the sides bind by the foot's height times its tangent."""
    assert abs(leaning["neck_angle_face"]) > math.radians(0.3)
    square = sawn_heel(leaning, lean=0.0)
    assert overlap(square, moved(sides_of(leaning), leaning["foot_slot_bow"] + HAIR)) > 100


def test_they_reach_the_wood_between_and_the_foot_holds_them(leaning: Figures) -> None:
    """Each ends in its slot; a heel with no slots is in their way by slot depth times thickness times height."""
    whole = BRepPrimAPI_MakeBox(
        gp_Pnt(-40, -leaning["foot_cheek"], -leaning["neck_heel_depth"]),
        gp_Pnt(leaning["foot_length"], leaning["foot_cheek"], 0),
    ).Shape()
    taken = overlap(whole, sides_of(leaning))
    high = min(leaning["foot_height"], leaning["neck_heel_depth"] - leaning["foot_step"])
    by_hand = 2 * leaning["foot_slot_depth"] / math.cos(leaning["foot_slot_angle"]) * leaning["body_wall"] * high
    assert taken == pytest.approx(by_hand, rel=0.03)


def sawn_heel(figures: Figures, lean: float | None = None) -> Any:
    """Heel and foot as a block under the neck's face (height 0, the body's edge at 0 along), with both slots sawn."""
    angle = float(figures["neck_angle_face"]) if lean is None else lean
    cheek, depth = float(figures["foot_cheek"]), float(figures["neck_heel_depth"]) + 30
    block = BRepPrimAPI_MakeBox(gp_Pnt(-40, -cheek, -depth), gp_Pnt(figures["foot_length"], cheek, 0)).Shape()
    down = (-math.sin(angle), 0.0, -math.cos(angle))
    for slot in figures["piece_slots_on_face"]:
        assert isinstance(slot, Polyline)
        start = [(x - 5 * down[0], y, -5 * down[2]) for x, y in slot.points]
        long = depth + 40
        block = BRepAlgoAPI_Cut(block, prism(start, tuple(long * each for each in down))).Shape()
    return block


def sides_of(figures: Figures) -> Any:
    """Both sides near the neck, from the outline in the DXF: square to the rim, which is turned to the neck's face."""
    text = dxf_bytes(figures["drawing_top_inside"], Formatter(figures).text).decode("utf-8")
    runs = ezdxf.read(io.StringIO(text)).modelspace().query("LWPOLYLINE")
    rings = [shapely.Polygon([at[:2] for at in run.get_points()]) for run in runs if run.closed]
    outside = max(rings, key=lambda ring: ring.area)
    wall = outside.difference(outside.buffer(-figures["body_wall"], join_style="mitre"))
    (corner, *_) = outside.bounds
    bottom, cheek = float(figures["foot_slot_bottom"]), float(figures["foot_cheek"])
    pieces = [
        wall.intersection(shapely.box(corner, side, corner + 30, side + cheek - bottom)) for side in (bottom, -cheek)
    ]
    top, high = -float(figures["foot_step"]), float(figures["foot_height"])
    both = None
    for piece in pieces:
        assert isinstance(piece, shapely.Polygon)
        solid = prism([(x, y, top) for x, y in piece.exterior.coords[:-1]], (0.0, 0.0, -high))
        both = solid if both is None else fused(both, solid)
    return turned(both, float(figures["neck_angle_face"]))


def fused(one: Any, other: Any) -> Any:
    return BRepAlgoAPI_Fuse(one, other).Shape()


def turned(shape: Any, angle: float) -> Any:
    """Turned about the body's edge so that the rim falls away from the neck's plane toward the tail."""
    turn = gp_Trsf()
    turn.SetRotation(gp_Ax1(gp_Pnt(0, 0, 0), gp_Dir(0, 1, 0)), angle)
    return BRepBuilderAPI_Transform(shape, turn, True).Shape()


def moved(shape: Any, along: float) -> Any:
    way = gp_Trsf()
    way.SetTranslation(gp_Vec(along, 0, 0))
    return BRepBuilderAPI_Transform(shape, way, True).Shape()


def overlap(one: Any, other: Any) -> float:
    properties = GProp_GProps()
    BRepGProp.VolumeProperties_s(BRepAlgoAPI_Common(one, other).Shape(), properties)
    return float(properties.Mass())


def prism(corners: list[tuple[float, float, float]], way: tuple[float, ...]) -> Any:
    polygon = BRepBuilderAPI_MakePolygon()
    for corner in corners:
        polygon.Add(gp_Pnt(*corner))
    polygon.Close()
    return BRepPrimAPI_MakePrism(BRepBuilderAPI_MakeFace(polygon.Wire()).Face(), gp_Vec(*way)).Shape()
