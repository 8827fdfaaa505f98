"""The lines of a DXF drawing, as points on them: lines, polylines with their arcs, arcs, circles, ellipses, splines."""

import io
import logging
from collections.abc import Iterable, Iterator
from itertools import islice

import ezdxf.filemanagement
import numpy as np
from ezdxf import recover, units
from ezdxf.document import Drawing as Document
from ezdxf.entities.dxfentity import DXFEntity
from ezdxf.enums import InsertUnits
from ezdxf.lldxf.const import DXFError
from ezdxf.math import Vec3
from numpy.typing import NDArray

from gramil.faults import Fault, MakersFault
from gramil.shapes.bulged import bulged_extent, bulged_points, chords_of
from gramil.shapes.chains import STUMBLES, Drawing, Trace
from gramil.shapes.drawn_limits import (
    MOST_DXF_LINES,
    MOST_ON_A_LINE,
    MOST_POINTS,
    hold_digits_dxf,
    hold_number,
    hold_places,
)
from gramil.shapes.dxf_blocks import STRINGS, hold_blocks, taken_apart

logging.getLogger("ezdxf").addHandler(logging.NullHandler())  # what it mends on its own is not the maker's to read

Array = NDArray[np.float64]
FINENESS = 2e-5
"""Chords leave their curves by no more than this part of the drawing's extent: 0.01 mm on 500 mm."""
LONGEST = 80
"""Letters of what a reader says of a file that it cannot read."""
_ROUND = ("ARC", "CIRCLE", "ELLIPSE", "SPLINE")
MOST_BENDS = 25
"""The highest degree of a spline that is read: what drawing programs write is 3, some 5."""


def read_dxf(text: str, file: str | None = None) -> Drawing:
    """What the text of a DXF file holds in its model space, blocks taken apart; words, hatches and dimensions left out.

    `file` names it in faults. Raises MakersFault where it is no DXF drawing.
    """
    hold_number(max(text.count("\n"), text.count("\r")), MOST_DXF_LINES, "lines of text", file)
    hold_digits_dxf(text, file)
    try:
        document = _document(text)
        with np.errstate(all="ignore"):  # places that are no numbers are named
            return _drawing(document, file)
    except (DXFError, *STUMBLES) as error:
        why = _said(error) if isinstance(error, DXFError) else "something in it is not as the standard has it"
        raise MakersFault(
            [
                Fault(
                    what="this is not a DXF drawing that can be read",
                    why=why,
                    remedy="Save it again as a text DXF, version R12 or later",
                    file=file,
                )
            ]
        ) from None


def _document(text: str) -> Document:
    """The drawing as it stands, with the line ends of any system; if it bends the standard, mended by the library."""
    try:
        return ezdxf.filemanagement.read(io.StringIO(text, newline=None))
    except (DXFError, *STUMBLES):
        document, _ = recover.read(io.BytesIO(text.encode()))
        return document


def _drawing(document: Document, file: str | None) -> Drawing:
    """Opened twice, once for the extent that says how fine chords are to be: what is opened is not kept."""
    hold_blocks(document, file)
    space = document.modelspace()
    sag = FINENESS * _extent(_coarse(entity, file) for entity in _drawn(space))
    traces: list[Trace] = []
    held = 0
    for entity in _drawn(space):
        if trace := _trace(entity, sag, file):
            held += len(trace.points)
            hold_number(held, MOST_POINTS, "points on its lines and curves", file)
            traces.append(trace)
    return Drawing(tuple(traces), _unit(document))


def _said(error: Exception) -> str:
    """What went wrong, on one short line: a file that is no drawing may say anything."""
    line = str(error).split("\n", 1)[0]
    said = "".join(each if each.isprintable() else "?" for each in line)
    return said if len(said) <= LONGEST else said[:LONGEST] + "..."


def _unit(document: Document) -> float | None:
    """How many mm a drawing unit is."""
    stated = int(document.header.get("$INSUNITS", 0))
    return None if stated == 0 else float(units.conversion_factor(InsertUnits(stated), InsertUnits.Millimeters))


def _drawn(space: Iterable[DXFEntity]) -> Iterator[DXFEntity]:
    return (each for each in taken_apart(space) if each.dxftype() in (*_ROUND, *STRINGS, "LINE"))


def _extent(places: Iterable[Array]) -> float:
    """The longer side of the box about all places."""
    boxes = [np.stack((each.min(axis=0), each.max(axis=0))) for each in places if len(each)]
    return float(np.ptp(np.vstack(boxes), axis=0).max()) or 1.0 if boxes else 1.0


def _coarse(entity: DXFEntity, file: str | None) -> Array:
    """A few places about whose box is the entity's, shape (n, 2), each a number and none too far off."""
    kind = entity.dxftype()
    if kind in STRINGS:
        places = bulged_extent(*_corners(entity))
    elif kind == "LINE":
        places = _flat([entity.dxf.start, entity.dxf.end])
    elif kind == "SPLINE":
        places = _of_spline(entity, file)
    else:
        places = _of_round(entity)
    hold_places(places, _name(entity), file)
    return places


def _of_spline(entity: DXFEntity, file: str | None) -> Array:
    hold_number(int(entity.dxf.degree), MOST_BENDS, "bends in one step of a spline", file)
    points = [*entity.control_points, *entity.fit_points]  # type: ignore[attr-defined]  # splines have both
    return np.array([(float(each[0]), float(each[1])) for each in points]).reshape(-1, 2)


def _of_round(entity: DXFEntity) -> Array:
    """The box about the whole of a circle or ellipse; an arc by places along it."""
    if entity.dxftype() == "ARC" and np.isfinite(entity.dxf.radius) and entity.dxf.radius > 0:
        return _flat(entity.flattening(entity.dxf.radius / 10))  # type: ignore[attr-defined]  # arcs have it
    if entity.dxftype() == "ELLIPSE":
        return _flat(entity.vertices(np.linspace(0, 6.28, 9)))  # type: ignore[attr-defined]  # ellipses have it
    centre, radius = entity.ocs().to_wcs(entity.dxf.center), float(entity.dxf.radius)  # type: ignore[attr-defined]
    return np.array([(centre.x - radius, centre.y - radius), (centre.x + radius, centre.y + radius)])


def _flat(points: Iterable[Vec3]) -> Array:
    return np.array([(each.x, each.y) for each in points], dtype=np.float64).reshape(-1, 2)


def _trace(entity: DXFEntity, sag: float, file: str | None) -> Trace | None:
    """An entity as points; nothing for one of no length."""
    kind, layer = entity.dxftype(), entity.dxf.layer
    if kind in STRINGS:
        corners, bulges = _corners(entity)
        if len(corners) < 2:
            return None
        counts = chords_of(corners, bulges, sag)
        hold_number(int(counts.sum()), MOST_ON_A_LINE, f"points on one {kind}", file)
        points, straight = bulged_points(corners, bulges, counts)
        kind = "POLYLINE"
    else:
        points = _points(entity, sag)
        hold_number(len(points), MOST_ON_A_LINE, f"points on one {kind}", file)
        straight = np.full(max(len(points) - 1, 0), kind == "LINE")
    if len(points) < 2 or not np.ptp(points, axis=0).any():
        return None
    return Trace(points, straight, (layer,), f"{kind} on layer {layer}")


def _points(entity: DXFEntity, sag: float) -> Array:
    if entity.dxftype() == "LINE":
        return _flat([entity.dxf.start, entity.dxf.end])
    return _flat(islice(entity.flattening(sag), MOST_ON_A_LINE + 1))  # type: ignore[attr-defined]  # curves have it


def _corners(entity: DXFEntity) -> tuple[Array, Array]:
    """A polyline's corners, its first again at the end of a closed one, and the bulge of each step between them."""
    if entity.dxftype() == "LWPOLYLINE":
        rows = np.array(entity.lwpoints.values, dtype=np.float64).reshape(-1, 5)  # type: ignore[attr-defined]
        corners, bulges, flat = rows[:, :2], rows[:, 4], True
    else:
        if entity.is_poly_face_mesh or entity.is_polygon_mesh:  # type: ignore[attr-defined]  # a polyline has them
            return np.empty((0, 2)), np.empty(0)
        vertices, flat = entity.vertices, entity.is_2d_polyline  # type: ignore[attr-defined]  # as above
        corners = _flat([each.dxf.location for each in vertices])
        bulges = np.array([each.dxf.get("bulge", 0.0) if flat else 0.0 for each in vertices], dtype=np.float64)
    if flat:
        corners, bulges = _in_the_world(entity, corners, bulges)
    if entity.is_closed and len(corners) > 1:  # type: ignore[attr-defined]  # as above
        corners = np.vstack((corners, corners[:1]))
    bulges = bulges[: max(len(corners) - 1, 0)]
    moved = np.hypot(*np.diff(corners, axis=0).T) != 0 if len(corners) > 1 else np.empty(0, dtype=bool)
    return (corners[np.concatenate(([True], moved))] if len(corners) else corners), bulges[moved]


def _in_the_world(entity: DXFEntity, corners: Array, bulges: Array) -> tuple[Array, Array]:
    """Seen from above: a polyline drawn from below is mirrored, and its arcs run the other way."""
    ocs = entity.ocs()  # type: ignore[attr-defined]  # flat entities have it
    if not ocs.transform:
        return corners, bulges
    placed = _flat(ocs.to_wcs(Vec3(x, y)) for x, y in corners.tolist())
    return placed, bulges * np.sign(entity.dxf.extrusion.z)


def _name(entity: DXFEntity) -> str:
    return f"{entity.dxftype()} on layer {entity.dxf.layer}"
