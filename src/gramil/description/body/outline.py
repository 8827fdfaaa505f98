"""The body's outline from what the maker gave: stations, points, or a drawing beside the description."""

from collections.abc import Iterable
from dataclasses import replace
from functools import lru_cache
from pathlib import Path as FilePath

from gramil.description.body.cutaway_table import CutawayTable
from gramil.description.body.tables import Body
from gramil.description.body.two_halves import check_reach, one_half, with_treble_half
from gramil.description.drawing_beside import drawing_beside
from gramil.description.locate import Path
from gramil.description.problems import Problem
from gramil.faults import Fault, MakersFault
from gramil.shapes.cutaway import Cutaway, cut_away
from gramil.shapes.offset import moved_in
from gramil.shapes.outline import Outline
from gramil.shapes.traced_outline import Reading, read_outline


def read_body(
    body: Body | None, cutaway: CutawayTable | None, folder: FilePath | None
) -> tuple[tuple[Outline, ...], list[Problem]]:
    """The outline with its neck end at x = 0, or nothing, and what is wrong; `folder` is where a drawing may lie."""
    key = next((key for key in ("outline", "points", "file") if body is not None and getattr(body, key)), None)
    if body is None or key is None:
        return (), []
    try:
        outline = _read(body, key, folder)
    except MakersFault as error:
        return (), list(_problems(error.faults, key))
    try:
        outline = with_treble_half(outline, body)
        check_reach(outline)
    except MakersFault as error:
        return (), list(_problems(error.faults, "treble_points" if body.treble_points else key))
    shape = None if cutaway is None else cutaway.shape
    path: Path = ("body", key) if shape is None else ("cutaway",)
    try:
        outline = outline if shape is None else _cut(outline, shape)
        moved_in(outline, body.wall + body.linings)
    except MakersFault as error:
        return (), [Problem(path, each.what, each.why, each.remedy) for each in error.faults]
    return (outline,), []


@lru_cache(maxsize=16)
def _cut(outline: Outline, shape: Cutaway) -> Outline:
    """The outline with a cutaway taken out; cached, as `_shaped` is."""
    return cut_away(outline, shape)


def _read(body: Body, key: str, folder: FilePath | None) -> Outline:
    given = getattr(body, key)
    if key == "file":
        return at_start(_traced(body, folder))
    corners = tuple(corner - 1 for corner in body.corners)
    return _shaped(key == "outline", tuple(tuple(each) for each in given), corners)


@lru_cache(maxsize=16)
def _shaped(by_width: bool, given: tuple[tuple[float, float], ...], corners: tuple[int, ...]) -> Outline:
    """The outline through stations or points. Cached, so that equal figures give the same outline with all it has
    worked out.
    """
    return at_start(one_half(by_width, given, corners))


def at_start(outline: Outline) -> Outline:
    """The outline with its neck end at x = 0."""
    shift = outline.start
    if abs(shift) < 1e-12:
        return outline
    points, bass = (tuple((x - shift, y) for x, y in each) for each in (outline.points, outline.bass))
    return replace(outline, points=points, bass=bass)


def _traced(body: Body, folder: FilePath | None) -> Outline:
    file = body.file or ""
    text = drawing_beside(file, folder)
    reading = Reading(
        body.length, body.layer, asymmetry=body.alike, centreline=body.centreline, mirrors=True, file=file
    )
    return read_outline(text, file, reading).outline


def _problems(faults: Iterable[Fault], key: str) -> Iterable[Problem]:
    """Faults of the shape as problems of the key; a drawing is named, and where in it the fault lies."""
    for each in faults:
        what = f"in {each.file}, {each.what}" if each.file else each.what
        yield Problem(("body", key), what, each.why, each.remedy)
