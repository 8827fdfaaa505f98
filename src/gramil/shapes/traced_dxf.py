"""The lines of a DXF drawing, as points on them: lines, polylines with their arcs, arcs, circles, ellipses, splines."""

import io
import logging
from collections.abc import Iterable, Iterator

import ezdxf
import numpy as np
from ezdxf import units
from ezdxf.document import Drawing as Document
from ezdxf.entities.dxfentity import DXFEntity
from ezdxf.enums import InsertUnits
from ezdxf.lldxf.const import DXFError
from numpy.typing import NDArray

from gramil.faults import Fault, MakersFault
from gramil.shapes.chains import STUMBLES, Drawing, Trace

logging.getLogger("ezdxf").addHandler(logging.NullHandler())  # what it mends on its own is not the maker's to read

Array = NDArray[np.float64]
FINENESS = 2e-5
"""Chords leave their curves by no more than this part of the drawing's extent: 0.01 mm on 500 mm."""
LONGEST = 80
"""Letters of what a reader says of a file that it cannot read."""
_ROUND = ("ARC", "CIRCLE", "ELLIPSE", "SPLINE")
_STRINGS = ("LWPOLYLINE", "POLYLINE")


def read_dxf(text: str, file: str | None = None) -> Drawing:
    """What the text of a DXF file holds in its model space, blocks taken apart; words, hatches and dimensions left out.

    `file` names it in faults. Raises MakersFault where it is no DXF drawing.
    """
    try:
        return _drawing(ezdxf.read(io.StringIO(text)))  # type: ignore[attr-defined]  # re-exported without saying so
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


def _drawing(document: Document) -> Drawing:
    runs = [run for entity in _taken_apart(document.modelspace()) if (run := _run(entity))]
    sag = FINENESS * _extent([each for run in runs for each in run])
    with np.errstate(invalid="ignore"):  # places that are no numbers are named by whoever reads the outline
        return Drawing(tuple(_trace(run, sag) for run in runs), _unit(document))


def _said(error: Exception) -> str:
    """What went wrong, on one short line: a file that is no drawing may say anything."""
    line = str(error).split("\n", 1)[0]
    said = "".join(each if each.isprintable() else "?" for each in line)
    return said if len(said) <= LONGEST else said[:LONGEST] + "..."


def _unit(document: Document) -> float | None:
    """How many mm a drawing unit is."""
    stated = int(document.header.get("$INSUNITS", 0))
    return None if stated == 0 else float(units.conversion_factor(InsertUnits(stated), InsertUnits.Millimeters))


def _taken_apart(entities: Iterable[DXFEntity]) -> Iterator[DXFEntity]:
    """Blocks as what they hold, in the file's order."""
    for entity in entities:
        if entity.dxftype() == "INSERT":
            yield from _taken_apart(entity.virtual_entities())  # type: ignore[attr-defined]  # a block has it
        else:
            yield entity


def _run(entity: DXFEntity) -> list[DXFEntity]:
    """The lines and arcs of a polyline, or the one line or curve itself; nothing for all else."""
    whole = [entity]
    if entity.dxftype() in _STRINGS:
        whole = list(entity.virtual_entities())  # type: ignore[attr-defined]  # polylines have it
    return [each for each in whole if each.dxftype() in (*_ROUND, "LINE") and not _nothing(each)]


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


def _trace(run: list[DXFEntity], sag: float) -> Trace:
    pieces = _in_turn([_points(entity, sag) for entity in run])
    straight = [
        np.full(len(points) - 1, entity.dxftype() == "LINE") for entity, points in zip(run, pieces, strict=True)
    ]
    points = np.vstack([pieces[0][:1], *(piece[1:] for piece in pieces)])
    kind = run[0].dxftype() if len(run) == 1 else "POLYLINE"
    return Trace(points, np.concatenate(straight), (run[0].dxf.layer,), f"{kind} on layer {run[0].dxf.layer}")


def _points(entity: DXFEntity, sag: float) -> Array:
    if entity.dxftype() == "LINE":
        return np.array(_coarse(entity))
    return np.array([(point.x, point.y) for point in entity.flattening(sag)])  # type: ignore[attr-defined]  # as above


def _in_turn(pieces: list[Array]) -> list[Array]:
    """Each turned to go on from the one before: arcs run anticlockwise, whichever way their polyline goes."""
    if len(pieces) > 1 and _away(pieces[0][0], pieces[1]) < _away(pieces[0][-1], pieces[1]):
        pieces[0] = pieces[0][::-1]
    for row, piece in enumerate(pieces[1:], start=1):
        tip = pieces[row - 1][-1]
        if _away(tip, piece[-1:]) < _away(tip, piece[:1]):
            pieces[row] = piece[::-1]
    return pieces


def _away(place: Array, piece: Array) -> float:
    """Distance from a place to the nearer end of a piece."""
    return min(float(np.hypot(*(place - end))) for end in (piece[0], piece[-1]))


def _nothing(entity: DXFEntity) -> bool:
    """Whether a line has no length, as polylines with a doubled point leave behind."""
    return entity.dxftype() == "LINE" and entity.dxf.start.isclose(entity.dxf.end)
