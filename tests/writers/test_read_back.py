"""Every drawing of the four examples read back from its files, by readers that had no part in writing them.

At the gate each drawing once, of one example or another, and two of the eight packs of templates.

DXF by two libraries (the one that wrote it, and GDAL), to a millionth of a millimetre; SVG and PDF to 0.005 mm.
"""

import math
from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import cache
from io import StringIO
from pathlib import Path
from typing import Any
from xml.etree import ElementTree

import ezdxf
import numpy as np
import pytest
import shapely
from ezdxf.document import Drawing as Document
from ezdxf.entities import DXFEntity
from svgelements import Arc as SvgArc
from svgelements import Path as SvgPath
from tests.drawings.conftest import figures_for
from tests.walks import one_of_each, these
from tests.writers.test_pdf import read as read_pdf

from gramil.drawings.marks import Arc, Circle, Drawing, Line, Polyline, Span
from gramil.formatter import Formatter
from gramil.graph import Figures
from gramil.pack import PLANS
from gramil.prints.papers import is_template
from gramil.prints.whole import drawings_of
from gramil.writers.dxf import dxf_bytes
from gramil.writers.lettering import Lettering
from gramil.writers.pdf import laid_out, templates_pdf, whole_pdf
from gramil.writers.plain import Plain, has_place, plain
from gramil.writers.spans import Resolve
from gramil.writers.svg import svg_bytes

MILLIONTH, PRINTED = 1e-6, 0.005
ON_ARC = 0.0035
"""In mm: how far a point that was drawn may lie from the arc that stands for it, 0.003, and a reader's chord."""
pytestmark = pytest.mark.slow
NAMES = ["tarn", "fell", "scree", "mere"]
CHORD = 0.05
"""In mm: how far a chord in which a drawing gives a curve lies from it at the most."""
EDGE, FOOT = 8.0, 26.0
"""What a page keeps blank in mm, at each edge and at its foot."""


@cache
def drawn(name: str) -> tuple[Figures, Resolve, tuple[Drawing, ...]]:
    figures = figures_for(name)
    return figures, Formatter(figures, figures["instrument_units"]).text, tuple(drawings_of(figures))


@cache
def written(name: str, drawing: str) -> bytes:
    _, text, drawings = drawn(name)
    return dxf_bytes(next(each for each in drawings if each.name == drawing), text)


@cache
def every_drawing() -> list[tuple[str, Drawing]]:
    """Drawings with the names of their instruments: of all of them, or each of one."""
    found = [(name, drawing) for name in NAMES for drawing in drawn(name)[2]]
    return one_of_each(found, lambda each: each[1].name)


def drawings_to_read(name: str) -> list[Drawing]:
    """Those of an instrument that are read back."""
    return [drawing for whose, drawing in every_drawing() if whose == name]


def test_there_is_something_to_read_of_each_instrument() -> None:
    assert all(len(drawings_to_read(name)) > 5 for name in NAMES)


@cache
def document_of(name: str, drawing: str) -> Document:
    """A drawing's file as the library that wrote it reads it: to be looked at, never changed."""
    return ezdxf.read(StringIO(written(name, drawing).decode("utf-8")))


@dataclass(frozen=True)
class Lines:
    """What is drawn: straight runs, and circles and arcs by their middle and radius."""

    straight: list[Any]
    round: list[tuple[float, float, float]]

    def furthest(self, points: Any) -> float:
        """How far the furthest of some points lies from the nearest line."""
        if not len(points):
            return 0.0
        spots = np.asarray(points, dtype=float)
        away = np.full(len(spots), np.inf)
        if self.straight:
            rows, found = shapely.STRtree(in_pieces(self.straight)).query_nearest(
                shapely.points(spots), return_distance=True, all_matches=False
            )
            away[rows[0]] = found
        for x, y, radius in self.round:
            away = np.minimum(away, np.abs(np.hypot(spots[:, 0] - x, spots[:, 1] - y) - radius))
        return float(away.max())


def in_pieces(shapes: list[Any]) -> Any:
    """Lines in pieces of two points, and points as they are: a tree finds the nearest of short ones far sooner."""
    places, whose = shapely.get_coordinates(shapes, return_index=True)
    on_one = whose[1:] == whose[:-1]
    pieces = shapely.linestrings(np.stack((places[:-1], places[1:]), axis=1)[on_one])
    return np.concatenate((pieces, shapely.points(places[np.bincount(whose)[whose] == 1])))


def lines_of(marks: tuple[Plain, ...]) -> Lines:
    straight, rounds = [], []
    for mark in marks:
        match mark:
            case Line():
                straight.append(shapely.LineString([mark.start, mark.end]))
            case Polyline() if len(mark.points) > 1:
                straight.append(shapely.LineString([*mark.points, *mark.points[: mark.closed]]))
            case Circle() | Arc():
                rounds.append((*mark.centre, mark.radius))
    return Lines(straight, rounds)


def corners_of(marks: tuple[Plain, ...]) -> list[tuple[float, float]]:
    found: list[tuple[float, float]] = []
    for mark in marks:
        match mark:
            case Line():
                found += [mark.start, mark.end]
            case Polyline():
                found += mark.points
            case Circle():
                found.append((mark.centre[0] + mark.radius, mark.centre[1]))
    return found


@cache
def shapes_of(name: str, drawing: str) -> tuple[DXFEntity, ...]:
    """The lines and texts of a file, dimensions taken apart into theirs."""
    found: list[DXFEntity] = []
    for entity in document_of(name, drawing).modelspace():
        found += entity.virtual_entities() if entity.dxftype() == "DIMENSION" else (entity,)
    return tuple(found)


@cache
def letters_of(name: str, drawing: str) -> Counter[str]:
    return Counter(each.plain_text() for each in shapes_of(name, drawing) if each.dxftype() == "TEXT")


@cache
def lines_of_file(name: str, drawing: str) -> tuple[list[tuple[float, float]], "Lines"]:
    """The places and the lines of a file, its texts left out."""
    shapes = [each for each in shapes_of(name, drawing) if each.dxftype() != "TEXT"]
    return [end for each in shapes for end in ends_of(each)], lines_in(shapes)


def ends_of(entity: DXFEntity) -> list[tuple[float, float]]:
    match entity.dxftype():
        case "LINE":
            return [tuple(entity.dxf.start)[:2], tuple(entity.dxf.end)[:2]]
        case "LWPOLYLINE":
            return [(float(x), float(y)) for x, y in entity.get_points("xy")]
        case "ARC":
            return [tuple(entity.start_point)[:2], tuple(entity.end_point)[:2]]
        case "CIRCLE":
            return [(entity.dxf.center.x + entity.dxf.radius, entity.dxf.center.y)]
    return []


def lines_in(entities: Iterable[DXFEntity]) -> Lines:
    """The lines of a file, arcs in chords within 1e-5 mm of them."""
    straight, rounds = [], []
    for entity in entities:
        for each in entity.virtual_entities() if entity.dxftype() == "LWPOLYLINE" else (entity,):
            match each.dxftype():
                case "LINE":
                    straight.append(shapely.LineString(ends_of(each)))
                case "ARC":
                    straight.append(shapely.LineString([(p.x, p.y) for p in each.flattening(1e-5)]))
                case "CIRCLE":
                    rounds.append((each.dxf.center.x, each.dxf.center.y, each.dxf.radius))
    return Lines(straight, rounds)


@pytest.mark.parametrize("name", NAMES)
def test_dxf_by_the_library_that_wrote_it(name: str) -> None:
    """Every place in the file lies on what is drawn to a millionth, and everything drawn is there."""
    _, text, _ = drawn(name)
    for drawing in drawings_to_read(name):
        marks = plain(drawing, text)
        assert not document_of(name, drawing.name).audit().errors, drawing.name
        ends, lines = lines_of_file(name, drawing.name)
        assert lines_of(marks).furthest(ends) < MILLIONTH, drawing.name
        assert lines.furthest(corners_of(marks)) < ON_ARC, drawing.name


@pytest.mark.parametrize("name", NAMES)
def test_dxf_texts_and_dimensions_are_their_own_kinds(name: str) -> None:
    """Words are TEXT where they stand; each dimension is one DIMENSION that measures what it says."""
    figures, text, _ = drawn(name)
    for drawing in drawings_to_read(name):
        found = list(document_of(name, drawing.name).modelspace().query("DIMENSION"))
        spans = [mark for mark in drawing.marks if isinstance(mark, Span) and has_place(mark)]
        true = drawing.scale > 0 and drawing.stretch == 1
        assert len(found) == (len([each for each in spans if each.start != each.end]) if true else 0), drawing.name
        for dimension, span in zip(found, [each for each in spans if each.start != each.end], strict=False):
            assert dimension.dxf.text == f"{span.before}{text(span.figure)}"
            measured = dimension.dxf.defpoint2.distance(dimension.dxf.defpoint3) / drawing.scale
            assert measured == pytest.approx(float(figures.at(span.figure.address)), abs=PRINTED), span.figure
            assert dimension.get_measurement() / drawing.scale == pytest.approx(measured)
        letters = Counter(mark.text for mark in plain(drawing, text) if isinstance(mark, Lettering))
        assert letters <= letters_of(name, drawing.name), drawing.name


@pytest.mark.parametrize("name", NAMES)
def test_no_line_is_doubled_and_none_has_no_length(name: str) -> None:
    """Straight pieces of a file, dimensions left out: no two lie on one another by more than a millionth."""
    for drawing in drawings_to_read(name):
        pieces = []
        for entity in document_of(name, drawing.name).modelspace():
            parts = entity.virtual_entities() if entity.dxftype() == "LWPOLYLINE" else (entity,)
            pieces += [ends_of(each) for each in parts if each.dxftype() == "LINE"]
        lines = [shapely.LineString(piece) for piece in pieces]
        assert all(line.length > MILLIONTH for line in lines), drawing.name
        for one, other in shapely.STRtree(lines).query(lines).T if lines else ():
            assert one == other or shared(pieces[one], pieces[other]) <= 2 * MILLIONTH, (drawing.name, pieces[one])


def shared(one: list[tuple[float, float]], other: list[tuple[float, float]]) -> float:
    """The length on which two straight pieces lie on one another."""
    (x0, y0), (x1, y1) = one
    long = math.dist(*one)
    ux, uy = (x1 - x0) / long, (y1 - y0) / long
    if any(abs((x - x0) * uy - (y - y0) * ux) > MILLIONTH for x, y in other):
        return 0.0
    low, high = sorted((x - x0) * ux + (y - y0) * uy for x, y in other)
    return min(high, long) - max(low, 0.0)


@pytest.mark.parametrize("name", NAMES)
def test_dxf_by_a_second_reader(name: str, tmp_path: Path) -> None:
    """GDAL finds every place, every text and every layer that the first reader does, and draws nothing else."""
    raw = pytest.importorskip("pyogrio", reason="GDAL is not here: no wheel of pyogrio for this machine").raw
    for drawing in drawings_to_read(name):
        (tmp_path / "drawing.dxf").write_bytes(written(name, drawing.name))
        meta, _, shapes, fields = raw.read(tmp_path / "drawing.dxf")
        layers, texts = (fields[list(meta["fields"]).index(field)] for field in ("Layer", "Text"))
        ends, lines = lines_of_file(name, drawing.name)
        found = shapely.from_wkb(shapes)
        assert letters_of(name, drawing.name) == Counter(text for text in texts if text), drawing.name
        assert {each.dxf.layer for each in shapes_of(name, drawing.name)} <= set(layers), drawing.name
        places = shapely.get_coordinates(found[shapely.get_type_id(found) != 0])
        assert Lines(list(shapely.points(places)), []).furthest(ends) < MILLIONTH, drawing.name
        assert lines.furthest(places) < 2e-5, drawing.name


def svg_lines(data: bytes) -> Iterator[Any]:
    """Every line of an SVG file, y turned up again."""
    for group in ElementTree.fromstring(data).iterfind("{*}g"):
        for each in group:
            match each.tag.rpartition("}")[2]:
                case "line":
                    x0, y0, x1, y1 = (float(each.get(key, 0)) for key in ("x1", "y1", "x2", "y2"))
                    yield shapely.LineString([(x0, -y0), (x1, -y1)])
                case "circle":
                    x, y, radius = (float(each.get(key, 0)) for key in ("cx", "cy", "r"))
                    yield shapely.Point(x, -y).buffer(radius, quad_segs=200).exterior
                case "path":
                    yield shapely.LineString(np.vstack(list(along(SvgPath(each.get("d", ""))))) * (1, -1))
                case "polygon" | "polyline" as kind:
                    pairs = [tuple(map(float, pair.split(","))) for pair in each.get("points", "").split()]
                    points = [(x, -y) for x, y in pairs]
                    yield shapely.LineString([*points, *points[: kind == "polygon"]])


def along(path: SvgPath) -> Iterator[Any]:
    for segment in path:
        if isinstance(segment, SvgArc):
            yield segment.npoint(np.linspace(0.0, 1.0, 400))
        elif segment.end is not None:
            yield np.array([[segment.end.x, segment.end.y]])


def laid_on(corners: list[tuple[float, float]], runs: list[Any]) -> Any:
    """By how much a page is to be moved so that its lines lie on the drawing: the middle of what single corners say."""
    pieces = in_pieces(runs)
    spots, tree = np.asarray(corners, dtype=float), shapely.STRtree(pieces)
    moved = spots.min(axis=0) - np.min([shapely.bounds(run)[:2] for run in runs], axis=0)
    for _ in range(6):
        at = shapely.points(spots - moved)
        ways = shapely.get_coordinates(shapely.shortest_line(np.take(pieces, tree.nearest(at)), at)).reshape(-1, 2, 2)
        moved = moved + np.median(ways[:, 1] - ways[:, 0], axis=0)
    return moved


@pytest.mark.parametrize("name", these(NAMES, ("scree", "mere")))
def test_svg_and_pdf(name: str) -> None:
    """Everything drawn is in the SVG and on a page as large as itself to 0.005 mm."""
    _, text, _ = drawn(name)
    for drawing in drawings_to_read(name):
        marks = plain(drawing, text)
        corners = corners_of(marks)
        found = [each for each in svg_lines(svg_bytes(drawing, text)) if each.length]
        assert Lines(found, []).furthest(corners) < PRINTED, drawing.name
        (page,) = [page for page in read_pdf(whole_pdf(drawing, text, heading=name)) if page.drawn or not corners]
        if corners:
            runs = [shapely.LineString(run) for run in page.drawn if len(run) > 1]
            there = np.asarray(corners, dtype=float) - laid_on(corners, runs)
            assert Lines(runs, []).furthest(there) < PRINTED, drawing.name


PACKS = list(zip(NAMES * 2, ["letter"] * 4 + ["a4"] * 4, strict=True))


@pytest.mark.parametrize(("name", "paper"), one_of_each(PACKS, lambda pack: pack[1]))
def test_every_page_of_every_template(name: str, paper: str) -> None:
    """What is drawn is on each page that it reaches into, to 0.005 mm, small cards included, and nothing else is.

    What is printed between two points that were drawn may leave their chord by as much as the chord leaves the curve.
    """
    _, text, drawings = drawn(name)
    templates = laid_out([each for each in drawings if is_template(each) and each.name not in PLANS], text, paper)
    pages = [page for page in read_pdf(templates_pdf(templates, name)) if page.clip is not None]
    tiles = [(each, tile) for each in templates for tile in each.tiling.tiles]
    assert len(pages) == len(tiles)
    for page, (template, tile) in zip(pages, tiles, strict=True):
        to_page = np.array(tile.window[:2]) - (EDGE, EDGE + FOOT)
        runs = [shapely.LineString(run + to_page) for run in page.drawn if len(run) > 1]
        spots = inside(corners_of(template.marks), tile.window)
        assert Lines(runs, []).furthest(spots) < PRINTED, (template.names, tile.name)
        printed = inside(shapely.get_coordinates(runs), tile.window)
        assert lines_of(template.marks).furthest(printed) < CHORD + PRINTED, (template.names, tile.name)


def inside(spots: Any, window: tuple[float, float, float, float]) -> Any:
    """The points that lie in a page's window."""
    at = np.asarray(spots, dtype=float).reshape(-1, 2)
    return at[((at > window[:2]) & (at < window[2:])).all(axis=1)]
