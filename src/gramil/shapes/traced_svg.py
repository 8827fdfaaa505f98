"""The lines of an SVG drawing, as points on them: paths and all basic shapes, with every transform carried out."""

import io
import re
from collections.abc import Iterator
from xml.etree import ElementTree

import numpy as np
import svgelements  # type: ignore[import-untyped]  # it carries no annotations
from numpy.typing import NDArray

from gramil.faults import Fault, MakersFault
from gramil.shapes.chains import STUMBLES, Drawing, Trace
from gramil.shapes.drawn_limits import MOST_ON_A_LINE, MOST_POINTS, hold_number, hold_places
from gramil.shapes.svg_kept import hold_text, kept, local

Array = NDArray[np.float64]
FINENESS = 2e-5
"""Chords leave their curves by no more than this part of the drawing's extent: 0.01 mm on 500 mm."""
MILLIMETRES = {"mm": 1.0, "cm": 10.0, "m": 1000.0, "in": 25.4, "pt": 25.4 / 72, "pc": 25.4 / 6, "q": 0.25}
PIXEL = 25.4 / 96
"""An SVG user unit in mm where the page has a size in real units but no view box (CSS Values and Units, level 3)."""

STRAIGHT = svgelements.Line | svgelements.Close
LONGEST = 80
"""How many letters of a name are shown."""
Shape = tuple[tuple[str, ...], str, svgelements.Path]
"""The ids of a shape and of the groups about it, what it is called, and its path."""


def read_svg(text: str, file: str | None = None) -> Drawing:
    """What the text of an SVG file draws, in its outermost coordinates (y down); words and hidden shapes left out.

    The unit is known where the page's width or height is in real units. `file` names it in faults. Raises
    MakersFault where it is no SVG drawing.
    """
    hold_text(text, file)
    try:
        root = ElementTree.fromstring(text)
    except ElementTree.ParseError as error:
        raise _unreadable(str(error), file) from None
    if local(root.tag) != "svg":
        raise _unreadable(f"its outermost element is {local(root.tag)[:LONGEST]}, not svg", file)
    unit = _unit(root)
    try:
        return Drawing(tuple(_all_traces(_shapes(_without_page(kept(root, file))), file)), unit, y_down=True)
    except STUMBLES:
        raise _unreadable("something in it is not as the standard has it", file) from None


def _all_traces(shapes: list[Shape], file: str | None) -> list[Trace]:
    with np.errstate(all="ignore"):  # places that are no numbers are named
        sag = FINENESS * _extent(shapes, file)
        found: list[Trace] = []
        held = 0
        for layers, name, path in shapes:
            for trace in _traces(path, sag, layers, name, file):
                held += len(trace.points)
                hold_number(held, MOST_POINTS, "points on its lines and curves", file)
                found.append(trace)
        return found


def _unreadable(why: str, file: str | None) -> MakersFault:
    what, remedy = "this is not an SVG drawing that can be read", "Save it again as plain SVG"
    return MakersFault([Fault(what=what, why=why, remedy=remedy, file=file)])


def _unit(root: ElementTree.Element) -> float | None:
    """How many mm a user unit is: the page's real size over its view box, the tighter of the two ways."""
    sizes = [_millimetres(root.get(side, "")) for side in ("width", "height")]
    if all(size is None for size in sizes):
        return None
    if not root.get("viewBox", "").strip():
        return PIXEL
    box = _view_box(root.get("viewBox", ""))
    if box is None:
        return None
    return min(size / units for size, units in zip(sizes, box, strict=True) if size is not None)


def _view_box(written: str) -> tuple[float, float] | None:
    """Width and height of a view box, or None where it means nothing."""
    try:
        box = [float(number) for number in re.split(r"[\s,]+", written.strip()) if number]
    except ValueError:
        return None
    return (box[2], box[3]) if len(box) == 4 and min(box[2:]) > 0 and np.isfinite(box).all() else None


def _millimetres(written: str) -> float | None:
    """A length in real units, or None where it has none (plain numbers, pixels, percentages), or is nothing."""
    match = re.fullmatch(r"\s*\+?((?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)\s*([a-zA-Z]+)\s*", written)
    unit = MILLIMETRES.get(match[2].lower()) if match else None
    length = float(match[1]) * unit if match and unit else 0.0
    return length if 0.0 < length < np.inf else None


def _without_page(root: ElementTree.Element) -> str:
    """The drawing with no page size or view box, so that its coordinates come out in its own user units."""
    for attribute in ("width", "height", "viewBox", "preserveAspectRatio"):
        root.attrib.pop(attribute, None)
    return ElementTree.tostring(root, encoding="unicode")


def _shapes(text: str) -> list[Shape]:
    """Each shape that shows, in the file's order."""
    # SVG's own: 96 pixels an inch, whatever the screen
    drawing = svgelements.SVG.parse(io.StringIO(text), reify=True, ppi=96)
    if not isinstance(drawing, svgelements.Group):
        raise TypeError("its outermost element is none of SVG's")
    return list(_within(drawing, ()))


def _within(group: svgelements.Group, about: tuple[str, ...]) -> Iterator[Shape]:
    for element in group:
        layers = (*about, *_names(element))
        if isinstance(element, svgelements.Group | svgelements.Use):
            yield from _within(element, layers)
        elif isinstance(element, svgelements.Shape) and not _hidden(element):
            yield layers, f"{type(element).__name__.lower()} {element.id or ''}".strip(), svgelements.Path(element)


def _names(element: svgelements.SVGElement) -> tuple[str, ...]:
    """By what an element can be picked out: its id, and the label that some drawing programs show for it."""
    labels = [str(value) for key, value in element.values.items() if str(key).endswith("}label")]
    return tuple(dict.fromkeys([*([str(element.id)] if element.id else []), *labels]))


def _hidden(element: svgelements.Shape) -> bool:
    return "none" in (element.values.get("display"), element.values.get("visibility")) or (
        element.values.get("visibility") == "hidden"
    )


def _extent(shapes: list[Shape], file: str | None) -> float:
    """The longer side of the box about all shapes: of the ends of straight pieces, and of places along curves."""
    boxes = []
    for _, name, path in shapes:
        for segment in path:
            if not isinstance(segment, svgelements.Move):
                places = _ends(segment) if isinstance(segment, STRAIGHT) else _at(segment, 8)
                hold_places(places, name, file)
                boxes.append((places.min(axis=0), places.max(axis=0)))
    return float(np.ptp(np.array(boxes).reshape(-1, 2), axis=0).max()) or 1.0 if boxes else 1.0


def _traces(
    path: svgelements.Path, sag: float, layers: tuple[str, ...], name: str, file: str | None
) -> Iterator[Trace]:
    """One trace a subpath."""
    for subpath in path.as_subpaths():
        steps, held = [], 0
        for segment in subpath:
            if not isinstance(segment, svgelements.Move):
                points, straight = _points(segment, sag)
                held += len(points) - 1
                hold_number(held, MOST_ON_A_LINE, f"points on one line ({name})", file)
                if np.ptp(points, axis=0).max() > 0:
                    steps.append((points, straight))
        if steps:
            points = np.vstack([steps[0][0][:1], *(points[1:] for points, _ in steps)])
            yield Trace(points, np.concatenate([np.full(len(each) - 1, flag) for each, flag in steps]), layers, name)


def _points(segment: svgelements.PathSegment, sag: float) -> tuple[Array, bool]:
    """Points on one segment, its ends included, and whether it is straight."""
    if isinstance(segment, STRAIGHT):
        return _ends(segment), True
    coarse = _at(segment, 16)
    bend = np.abs(np.diff(coarse, n=2, axis=0)).sum(axis=1).max() * 16**2
    # a cubic bends most at an end, and a sixteenth of it further in by up to an eighth less: 1.3 covers that
    count = max(4, int(min(np.ceil(np.sqrt(1.3 * bend / (8 * sag))), MOST_ON_A_LINE + 1)))
    return _at(segment, count), False


def _ends(segment: svgelements.PathSegment) -> Array:
    return np.array([tuple(segment.start), tuple(segment.end)], dtype=np.float64)


def _at(segment: svgelements.PathSegment, count: int) -> Array:
    return np.array(segment.npoint(np.linspace(0.0, 1.0, count + 1)), dtype=np.float64).reshape(-1, 2)
