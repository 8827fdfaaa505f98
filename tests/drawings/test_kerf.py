"""One rule of kerf: what a machine leaves of every cut line, in the DXF and the SVG, is the finished shape.

Where the drawing allows for the kerf, its cut lines read back lie half of it outside the finished edge, in holes
inside it, by a library's offset; where the machine does, they are the finished edge.
"""

import re
from collections.abc import Iterator
from io import StringIO
from typing import Any
from xml.etree import ElementTree

import ezdxf
import numpy as np
import pytest
from ezdxf.path import make_path
from shapely import LinearRing, Point, Polygon, hausdorff_distance
from svgelements import Close, Line, Path
from tests.drawings.conftest import LASER, ROUTER, figures_cut
from tests.walks import these

from gramil import names as n
from gramil.drawings.kerf import FINISHED, Machine, cut_by
from gramil.drawings.marks import Circle as Hole
from gramil.drawings.marks import Drawing, Polyline
from gramil.drawings.marks import Line as Stroke
from gramil.formatter import Formatter
from gramil.graph import Figures
from gramil.prints.whole import drawings_of
from gramil.writers.dxf import dxf_bytes
from gramil.writers.extents import bounds
from gramil.writers.plain import kerf_of
from gramil.writers.svg import svg_bytes

KERF_OF = {"piece_laser": LASER, "piece_router": ROUTER}
"""The kerf of each machine, by the parameter through which a drawing gets it; shapes without one are cut by hand, and
their lines are the finished edge, whoever allows for kerf.
"""
SHARES = np.linspace(0.0, 1.0, 60)
NEAR = 0.012
"""In mm: an arc keeps within 0.01 of the curve that it stands for."""


def cut_drawings(figures: Figures) -> Iterator[Drawing]:
    return (drawing for drawing in drawings_of(figures) if drawing.kerf and drawing.kerf != FINISHED)


def widths(drawing: Drawing, figures: Figures) -> list[float]:
    """The kerf of the machine that cuts by a drawing: of one, or of none."""
    dimension = figures.graph.dimensions[f"drawing_{drawing.name.replace('-', '_')}"]
    return [KERF_OF[each] for each in dimension.parameters if each in KERF_OF]


Read = list[tuple[Polygon, bool]]
"""What a cut goes round, and whether it is a drilled hole."""


def rings_in_dxf(drawing: Drawing, figures: Figures) -> Read:
    """Every closed line of the cut layers in the DXF, flattened, with arcs as polygons."""
    data = dxf_bytes(drawing, Formatter(figures, figures["instrument_units"]).text)
    space = ezdxf.read(StringIO(data.decode("utf-8"))).modelspace()
    rings = []
    for each in space.query('*[layer=="cut" | layer=="pins"]'):
        if each.dxftype() == "LWPOLYLINE":
            assert each.closed, f"{drawing.name}: an open line to cut by"
        if each.dxftype() in ("LWPOLYLINE", "CIRCLE"):
            ring = Polygon([(p.x, p.y) for p in make_path(each).flattening(0.0005)])
            rings.append((ring, each.dxftype() == "CIRCLE"))
    return rings


def rings_in_svg(drawing: Drawing, figures: Figures) -> Read:
    """The same of the SVG file, y turned up again."""
    data = svg_bytes(drawing, Formatter(figures, figures["instrument_units"]).text)
    rings = []
    for group in ElementTree.fromstring(data).iterfind("{*}g"):
        for each in group if group.get("id") in ("cut", "pins") else ():
            match each.tag.rpartition("}")[2]:
                case "circle":
                    middle = Point(float(each.get("cx", 0)), -float(each.get("cy", 0)))
                    rings.append((middle.buffer(float(each.get("r", 0)), quad_segs=64), True))
                case "path":
                    path = Path(each.get("d", ""))
                    assert isinstance(path[-1], Close), f"{drawing.name}: an open line to cut by"
                    rings.append((Polygon([(p.x, -p.y) for p in flattened(path)]), False))
                case "polygon":
                    corners = (pair.split(",") for pair in each.get("points", "").split())
                    rings.append((Polygon([(float(x), -float(y)) for x, y in corners]), False))
    return rings


def flattened(path: Path) -> Iterator[Any]:
    for segment in path:
        yield from (segment.point(share) for share in ((0.0, 1.0) if isinstance(segment, Line | Close) else SHARES))


def left_of(lines: Read, aside: float) -> Iterator[Polygon]:
    """What cuts along these lines leave: less by half a kerf; a hole, or what lies within another, more by it."""
    for ring, drilled in lines:
        inside = drilled or any(other is not ring and other.contains(ring) for other, _ in lines)
        yield ring.buffer(aside if inside else -aside, join_style="mitre", mitre_limit=4.0)


@pytest.mark.parametrize("instrument", these(["tarn", "fell", "scree", "mere"], ["mere"]))
def test_what_is_left_of_every_cut_is_the_finished_shape(instrument: str) -> None:
    finished, allowed = (figures_cut(instrument, place) for place in ("the machine", "the drawing"))
    pairs = list(zip(cut_drawings(finished), cut_drawings(allowed), strict=True))
    assert len(pairs) >= 6
    for plain, moved in pairs:
        assert plain.name == moved.name
        (width,) = widths(plain, finished)
        for read in (rings_in_dxf, rings_in_svg):
            edges, lines = read(plain, finished), read(moved, allowed)
            assert len(edges) == len(lines) > 0
            for (edge, _), left in zip(edges, left_of(lines, width / 2), strict=True):
                off = hausdorff_distance(LinearRing(edge.exterior), LinearRing(left.exterior))
                assert off < NEAR, f"{instrument} {plain.name} by {read.__name__}: {off:.4f} mm"


@pytest.mark.parametrize("instrument", ["tarn", "fell", "scree", "mere"])
@pytest.mark.parametrize("allowed_in", ["the machine", "the drawing"])
def test_every_drawing_to_cut_by_says_who_allows_for_the_kerf(instrument: str, allowed_in: str) -> None:
    figures = figures_cut(instrument, allowed_in)
    text = Formatter(figures, figures["instrument_units"]).text
    for drawing in drawings_of(figures):
        to_cut = drawing.scale == 1.0 and any(isinstance(m, Polyline) and m.layer == "cut" for m in drawing.marks)
        assert bool(drawing.kerf) >= (to_cut and not drawing.name.startswith("setup-")), drawing.name
        by = widths(drawing, figures)
        if drawing.kerf and (not by or (drawing.name == "index-template" and not figures["card_notches_serve"])):
            assert kerf_of(drawing, text) == "Kerf: none in the drawing; lines are the finished edge."
        elif drawing.kerf:
            (width,) = by
            said = kerf_of(drawing, text)
            ((figure, unit),) = re.findall(r"([\d.]+) (mm|in)\b", said)
            assert unit == ("in" if instrument == "fell" else "mm")
            assert float(figure) == pytest.approx(width / (25.4 if unit == "in" else 1.0), abs=0.0005)
            assert ("left to the machine" in said) == (allowed_in == "the machine")
            for data in (dxf_bytes(drawing, text), svg_bytes(drawing, text)):
                assert said in data.decode("utf-8")


def box(*corners: tuple[float, float]) -> Polyline:
    return Polyline(corners, "cut", closed=True)


PLATE, SLOT = box((0, 0), (40, 0), (40, 30), (0, 30)), box((10, 10), (12, 10), (12, 20), (10, 20))


def test_outside_grows_a_slot_in_it_and_a_hole_shrink_and_a_mark_stays() -> None:
    mark = Stroke((5.0, 0.0), (5.0, 4.0), "slots")
    drawn = Drawing("card", "card", "the face", (PLATE, SLOT, Hole((30.0, 15.0), 2.0, "pins"), mark))
    plate, slot, hole, kept = cut_by(Machine(0.2, "the drawing", n.shop_laser_kerf), drawn).marks
    assert bounds([plate]) == pytest.approx((-0.1, -0.1, 40.1, 30.1))
    assert bounds([slot]) == pytest.approx((10.1, 10.1, 11.9, 19.9))
    assert hole == Hole((30.0, 15.0), 1.9, "pins")
    assert kept is mark


@pytest.mark.parametrize("marks", [(PLATE, SLOT), (PLATE, Hole((30.0, 15.0), 1.0, "pins"))])
def test_a_cut_too_wide_for_a_slot_is_left_to_the_machine_and_told(marks) -> None:
    machine = Machine(2.0, "the drawing", n.shop_router_kerf)
    drawn = cut_by(machine, Drawing("card", "card", "the face", marks))
    assert drawn.marks == marks
    assert "too wide" in str(drawn.kerf)


def test_without_a_kerf_lines_are_the_finished_edge() -> None:
    drawn = cut_by(Machine(0.0, "the drawing", n.shop_router_kerf), Drawing("card", "card", "the face", (PLATE,)))
    assert drawn.marks == (PLATE,)
    assert "finished edge" in str(drawn.kerf)
