"""A description that needs no file beside it: the drawings and the scale table that it names become points and cents
in its own text.

The store keeps one text for each instrument; what is in the text is kept with every revision.
"""

from collections.abc import Sequence
from pathlib import Path as FilePath
from typing import Any

import tomlkit
from tomlkit.exceptions import TOMLKitError

from gramil.description.board.scala_scale import ScalaScale
from gramil.description.board.temperament import names_file
from gramil.description.reading import parse_description
from gramil.faults import MakersFault
from gramil.measure import LengthUnit
from gramil.shapes.outline import Outline

_OF_DRAWING = ("file", "layer", "length", "corners", "alike", "centreline", "traced_within")
"""Keys of a table that say how its drawing is read."""
Point = tuple[float, float]


def self_contained(text: str, file: str, folder: FilePath | None) -> str:
    """The text with the drawings and scale table in `folder` replaced by points and cents; the same
    text if it names none.

    Raises MakersFault with every fault of the description and its files.
    """
    described = parse_description(text, file, folder)
    body, head = described.instrument.body, described.instrument.head
    of_body = body is not None and body.file is not None
    of_scale = names_file(described.instrument.scale)
    if not of_body and head.file is None and not of_scale:
        return text
    unit = described.instrument.instrument.units
    document: Any = tomlkit.parse(text)
    if of_body:
        (outline,) = described.outlines
        _put_outline(document["body"], outline, described.instrument.cutaway.described, unit)
    if head.file is not None:
        _put(document["head"], "outline", described.head.points, described.head.corners, unit)
    if of_scale:
        _put_degrees(document["scale"], described.tuning)
    return tomlkit.dumps(document)


def with_outline(text: str, points: Sequence[Point], corners: Sequence[int], within: float, unit: LengthUnit) -> str:
    """The text with the body's outline in it, in place of the one that it has, if any; `corners` count from 0, and
    the points come within so many mm of what was traced.

    Raises MakersFault for a text that is not TOML.
    """
    try:
        document: Any = tomlkit.parse(text)
    except (TOMLKitError, ValueError, RecursionError) as error:
        raise MakersFault.of("the description is not TOML", str(error)) from None
    table = document.setdefault("body", tomlkit.table())
    for gone in ("outline", "treble_points", "treble_corners"):
        table.pop(gone, None)
    _put(table, "points", points, corners, unit)
    table["traced_within"] = _length(round(within, 2), unit)
    return tomlkit.dumps(document)


def _put_outline(table: Any, outline: Outline, cut_away: bool, unit: LengthUnit) -> None:
    """The outline as points: of one half where the other is alike or cut out of it by measures, else of both."""
    alike = outline.alike
    half = (outline.points, outline.corners) if alike else (outline.bass, outline.bass_corners)
    _put(table, "points", *half, unit)
    if alike or cut_away:
        return
    table["treble_points"] = _rows(outline.points, unit)
    if outline.corners:
        table["treble_corners"] = [corner + 1 for corner in outline.corners]


def _put_degrees(table: Any, tuning: ScalaScale) -> None:
    degrees = tomlkit.array()
    degrees.extend(tuning.cents)
    table["degrees"] = degrees.comment(f"from {table.pop('temperament').strip()}")


def _put(table: Any, key: str, points: Sequence[Point], corners: Sequence[int], unit: LengthUnit) -> None:
    for gone in _OF_DRAWING:
        table.pop(gone, None)
    table[key] = _rows(points, unit)
    if corners:
        table["corners"] = [corner + 1 for corner in corners]


def _rows(points: Sequence[Point], unit: LengthUnit) -> Any:
    rows = tomlkit.array()
    for along, across in points:
        rows.append([_length(along, unit), _length(across, unit)])
    return rows.multiline(True)


def _length(millimetres: float, unit: LengthUnit) -> float | str:
    """A length that reads back exactly the same: a bare number in a file in millimetres, else with its unit."""
    return float(millimetres) if unit == "mm" else f"{float(millimetres)!r} mm"
