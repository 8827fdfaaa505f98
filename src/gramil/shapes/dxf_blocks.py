"""What a DXF drawing shows once its blocks are opened: counted before, then taken apart in the file's order."""

from collections.abc import Iterable, Iterator

from ezdxf.document import Drawing as Document
from ezdxf.entities.dxfentity import DXFEntity

from gramil.shapes.drawn_limits import MOST_DEEP, MOST_ON_A_LINE, MOST_POINTS, MOST_SHAPES, hold_number, too_much

STRINGS = ("LWPOLYLINE", "POLYLINE")
Amount = tuple[int, int]
"""Shapes, and the points that define them."""


def hold_blocks(document: Document, file: str | None) -> None:
    """Raises MakersFault where the model space shows too much, or a block shows itself."""
    shapes, points = _amount(document, document.modelspace(), file, {}, ())
    hold_number(shapes, MOST_SHAPES, "shapes, those of blocks counted as often as they show", file)
    hold_number(points, MOST_POINTS, "points, those of blocks counted as often as they show", file)


def _amount(
    document: Document,
    entities: Iterable[DXFEntity],
    file: str | None,
    known: dict[str, Amount],
    about: tuple[str, ...],
) -> Amount:
    shapes = points = 0
    for entity in entities:
        if entity.dxftype() != "INSERT":
            shapes, points = shapes + 1, points + _points(entity, file)
            continue
        times = max(1, entity.dxf.row_count) * max(1, entity.dxf.column_count)
        inner = _in_block(document, str(entity.dxf.get("name", "")), file, known, about)
        shapes, points = shapes + times * (inner[0] + 1), points + times * inner[1]
    return shapes, points


def _in_block(
    document: Document, name: str, file: str | None, known: dict[str, Amount], about: tuple[str, ...]
) -> Amount:
    key = name.casefold()
    if key in about:
        raise too_much(f'the block "{name}" shows itself', file)
    if len(about) >= MOST_DEEP:
        raise too_much(f"blocks lie more than {MOST_DEEP} deep in blocks", file)
    if key not in known:
        block = document.blocks.get(name)
        known[key] = (0, 0) if block is None else _amount(document, block, file, known, (*about, key))
    return known[key]


def _points(entity: DXFEntity, file: str | None) -> int:
    kind = entity.dxftype()
    if kind in STRINGS:
        count = len(entity)  # type: ignore[arg-type]  # polylines have a length
    elif kind == "SPLINE":
        count = len(entity.control_points) + len(entity.fit_points)  # type: ignore[attr-defined]  # splines have both
    else:
        return 2
    hold_number(count, MOST_ON_A_LINE, f"points on one {kind}", file)
    return count


def taken_apart(entities: Iterable[DXFEntity]) -> Iterator[DXFEntity]:
    """Blocks, and arrays of them, as what they hold, in the file's order."""
    for entity in entities:
        if entity.dxftype() != "INSERT":
            yield entity
        elif entity.mcount > 1:  # type: ignore[attr-defined]  # an insert has it
            yield from taken_apart(entity.multi_insert())  # type: ignore[attr-defined]  # as above
        else:
            yield from taken_apart(entity.virtual_entities())  # type: ignore[attr-defined]  # as above
