"""The lines of a DXF drawing, as points on them: lines, polylines with their arcs, arcs, circles, ellipses, splines."""

import io
from collections.abc import Iterable, Iterator

import ezdxf
import numpy as np
from ezdxf import units
from ezdxf.document import Drawing as Document
from ezdxf.entities.dxfentity import DXFEntity
from ezdxf.enums import InsertUnits
from ezdxf.lldxf.const import DXFError

from gramil.faults import Fault, MakersFault
from gramil.shapes.chains import Drawing, Trace

FINENESS = 2e-5
"""Chords leave their curves by no more than this part of the drawing's extent: 0.01 mm on 500 mm."""
_ROUND = ("ARC", "CIRCLE", "ELLIPSE", "SPLINE")
_STRINGS = ("LWPOLYLINE", "POLYLINE")


def read_dxf(text: str, file: str | None = None) -> Drawing:
    """What the text of a DXF file holds in its model space, blocks taken apart; words, hatches and dimensions left out.

    `file` names it in faults. Raises MakersFault where it is no DXF drawing.
    """
    try:
        document = ezdxf.read(io.StringIO(text))  # type: ignore[attr-defined]  # re-exported without saying so
    except (DXFError, ValueError) as error:
        raise MakersFault(
            [
                Fault(
                    what="this is not a DXF drawing that can be read",
                    why=str(error),
                    remedy="Save it again as a text DXF, version R12 or later",
                    file=file,
                )
            ]
        ) from None
    entities = [entity for entity in _taken_apart(document.modelspace()) if entity.dxftype() in (*_ROUND, "LINE")]
    sag = FINENESS * _extent(entities)
    return Drawing(tuple(_trace(entity, sag) for entity in entities if not _nothing(entity)), _unit(document))


def _unit(document: Document) -> float | None:
    """How many mm a drawing unit is."""
    stated = int(document.header.get("$INSUNITS", 0))
    return None if stated == 0 else float(units.conversion_factor(InsertUnits(stated), InsertUnits.Millimeters))


def _taken_apart(entities: Iterable[DXFEntity]) -> Iterator[DXFEntity]:
    """Blocks as what they hold, polylines as lines and arcs, in the file's order."""
    for entity in entities:
        if entity.dxftype() == "INSERT" or entity.dxftype() in _STRINGS:
            yield from _taken_apart(entity.virtual_entities())  # type: ignore[attr-defined]  # these types have it
        else:
            yield entity


def _extent(entities: Iterable[DXFEntity]) -> float:
    """The longer side of the box about all points, from a coarse look."""
    points = [point for entity in entities for point in _coarse(entity)]
    if not points:
        return 1.0
    box = np.array(points)
    return float((box.max(axis=0) - box.min(axis=0)).max()) or 1.0


def _coarse(entity: DXFEntity) -> list[tuple[float, float]]:
    if entity.dxftype() == "SPLINE":
        return [(float(point[0]), float(point[1])) for point in entity.control_points]  # type: ignore[attr-defined]
    if entity.dxftype() == "LINE":
        return [(entity.dxf.start.x, entity.dxf.start.y), (entity.dxf.end.x, entity.dxf.end.y)]
    if entity.dxftype() == "ELLIPSE":
        return [(point.x, point.y) for point in entity.vertices(np.linspace(0, 6.28, 9))]  # type: ignore[attr-defined]
    return [(point.x, point.y) for point in entity.flattening(entity.dxf.radius / 10)]  # type: ignore[attr-defined]


def _trace(entity: DXFEntity, sag: float) -> Trace:
    name = f"{entity.dxftype()} on layer {entity.dxf.layer}"
    if entity.dxftype() == "LINE":
        return Trace(np.array(_coarse(entity)), np.array([True]), (entity.dxf.layer,), name)
    points = np.array([(point.x, point.y) for point in entity.flattening(sag)])  # type: ignore[attr-defined]
    return Trace(points, np.zeros(len(points) - 1, dtype=bool), (entity.dxf.layer,), name)


def _nothing(entity: DXFEntity) -> bool:
    """Whether a line has no length, as polylines with a doubled point leave behind."""
    return entity.dxftype() == "LINE" and entity.dxf.start.isclose(entity.dxf.end)
