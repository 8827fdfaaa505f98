"""Marks to SVG in true millimetres: a group for each layer, words as words, and the text of every figure."""

from collections.abc import Iterable, Sequence
from functools import lru_cache
from html import escape
from math import cos, degrees, sin

from gramil.drawings.marks import Arc, Circle, Drawing, Line, Point, Polyline
from gramil.layers import LAYERS, LayerInk, Stroke, strokes
from gramil.measure import LengthUnit
from gramil.writers.arcs import Run, pieces_of, run_of
from gramil.writers.extents import Box, bounds, sweep
from gramil.writers.hatches import RUNS
from gramil.writers.ink import ink_name, under
from gramil.writers.lettering import Lettering, clean, type_size
from gramil.writers.plain import Plain, caption, figures, kerf_of, plain, seen_from, true_or_stretched
from gramil.writers.single_lines import single
from gramil.writers.spans import Resolve

MARGIN = 5.0
"""Blank paper round the drawing, in mm."""
WORD_FACE, FIGURE_FACE = "B612, sans-serif", "'B612 Mono', B612, monospace"
ANCHORS = {"left": "start", "middle": "middle", "right": "end"}


def svg_text(drawing: Drawing, resolve: Resolve, captioned: bool = True, unit: LengthUnit = "mm") -> str:
    """The drawing as an SVG document: one unit is one millimetre, y turned over, words upright.

    `captioned` writes the title and the view below the drawing; a page that says both itself turns this off. `unit` is
    the maker's: an inch shop's drawing does not say that it is in millimetres.
    Raises KeyError for a mark on a layer that is not in `LAYERS`.
    """
    marks = plain(drawing, resolve)
    return svg_of(drawing, (*marks, *caption(drawing, marks, resolve, unit)) if captioned else marks, resolve, unit)


def svg_of(
    drawing: Drawing,
    marks: Sequence[Plain],
    resolve: Resolve,
    unit: LengthUnit = "mm",
    *,
    arcs: bool = False,
    own: Iterable[LayerInk] = (),
) -> str:
    """Marks made from a drawing as an SVG document, with the drawing's title and its description in words.

    With `arcs` curves are true arcs, as a machine wants them; a page on a screen has them as polylines, with corners to
    snap to. The shop's `own` layers are inked as it says.
    """
    inks = strokes(own)
    lines = [
        _opening(bounds(marks)),
        f"<title>{_escaped(drawing.title)}</title>",
        f"<desc>{_escaped(described(drawing, resolve, unit))}</desc>",
        *(line for name, layer in _by_layer(marks).items() for line in _group(name, layer, arcs, inks[name])),
        "</svg>",
    ]
    return "\n".join(lines) + "\n"


def svg_bytes(drawing: Drawing, resolve: Resolve, unit: LengthUnit = "mm", own: Iterable[LayerInk] = ()) -> bytes:
    """The drawing as a complete SVG file (UTF-8), caption included, each line in it once.

    A machine may go by the colours and weights of the shop's `own` layers; without them it is as on paper.
    """
    shown = plain(drawing, resolve)
    marks = (*single(shown), *caption(drawing, shown, resolve, unit))
    whole = svg_of(drawing, marks, resolve, unit, arcs=True, own=own)
    return ('<?xml version="1.0" encoding="UTF-8"?>\n' + whole).encode("utf-8")


def described(drawing: Drawing, resolve: Resolve, unit: LengthUnit = "mm") -> str:
    """The drawing in words: what it is, from where it is seen, and every figure on it with its address."""
    listed = "; ".join(f"{figure.address}: {figure.text}" for figure in figures(drawing, resolve))
    scale = true_or_stretched(drawing, unit)
    said = f"{drawing.title}. {seen_from(drawing)} {scale} {kerf_of(drawing, resolve)}".rstrip()
    return f"{said} Figures: {listed}." if listed else said


def _by_layer(marks: Iterable[Plain]) -> dict[str, list[Plain]]:
    """The marks by layer, the layers in drawing order, pale ones first."""
    layers: dict[str, list[Plain]] = {name: [] for name in sorted(LAYERS, key=under, reverse=True)}
    for mark in marks:
        layers[mark.layer].append(mark)
    return {name: layer for name, layer in layers.items() if layer}


def _opening(box: Box) -> str:
    left, low, right, high = box[0] - MARGIN, box[1] - MARGIN, box[2] + MARGIN, box[3] + MARGIN
    wide, tall = number(right - left), number(high - low)
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{wide}mm" height="{tall}mm" '
        f'viewBox="{number(left)} {number(-high)} {wide} {tall}" role="img" class="drawing">'
    )


def _group(name: str, marks: Iterable[Plain], arcs: bool, stroke: Stroke) -> list[str]:
    ink = ink_name(name, stroke)
    inked = _inked(stroke, ink)
    return [f'<g id="{name}" class="layer" {inked}>', *(_element(mark, arcs, ink) for mark in marks), "</g>"]


def _inked(stroke: Stroke, ink: str) -> str:
    dashes = f' stroke-dasharray="{" ".join(number(dash) for dash in stroke.dashes)}"' if stroke.dashes else ""
    return f'fill="none" stroke="{ink}" stroke-width="{number(stroke.weight)}"{dashes}'


def number(value: float) -> str:
    """A coordinate in mm to the millionth, without needless zeros."""
    text = f"{value:.6f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def _xy(point: Point) -> str:
    return f"{number(point[0])} {number(-point[1])}"


@lru_cache(maxsize=512)
def _corners(points: tuple[Point, ...]) -> str:
    """Cached: a bench draws the saved outlines, of hundreds of points each, in grey under every draft."""
    return " ".join([f"{number(x)},{number(-y)}" for x, y in points])


def _element(mark: Plain, arcs: bool, ink: str) -> str:
    match mark:
        case Line():
            (x1, y1), (x2, y2) = mark.start, mark.end
            return f'<line x1="{number(x1)}" y1="{number(-y1)}" x2="{number(x2)}" y2="{number(-y2)}"/>'
        case Circle():
            x, y = mark.centre
            return f'<circle cx="{number(x)}" cy="{number(-y)}" r="{number(mark.radius)}"/>'
        case Arc():
            return f'<path d="{_arc_path(mark)}"/>'
        case Polyline() if arcs and any((run := run_of(mark)).bulges):
            return _path(run, mark)
        case Polyline():
            kind = "polygon" if mark.closed else "polyline"
            material = _material(mark)
            return f'<{kind} points="{_corners(mark.points)}"{material}/>'
        case Lettering():
            return _text(mark, ink)


def _material(mark: Polyline) -> str:
    return f' data-material="{mark.hatch}"' if RUNS.get(mark.hatch) or mark.hatch == "void" else ""


def _path(run: Run, mark: Polyline) -> str:
    """A polyline with arcs in it; an arc that turns left still does so when y is flipped (sweep 0)."""
    ends = (*run.points[1:], *run.points[: run.closed])
    written = [f"M {_xy(run.points[0])}"]
    for end, bulge, piece in zip(ends, run.bulges, pieces_of(run, mark.layer), strict=True):
        if isinstance(piece, Arc):
            written.append(f"A {number(piece.radius)} {number(piece.radius)} 0 0 {0 if bulge > 0 else 1} {_xy(end)}")
        else:
            written.append(f"L {_xy(end)}")
    material = _material(mark)
    return f'<path d="{" ".join(written)}{" Z" if run.closed else ""}"{material}/>'


def _arc_path(arc: Arc) -> str:
    """The arc in pieces of less than half a turn; an anticlockwise arc stays so when y is flipped (sweep 0)."""
    turn = sweep(arc)
    pieces = 1 if turn < 3.0 else 3
    (x, y), r = arc.centre, arc.radius
    angles = [arc.start_angle + turn * i / pieces for i in range(pieces + 1)]
    start, *rest = [(x + r * cos(angle), y + r * sin(angle)) for angle in angles]
    radius = number(r)
    return f"M {_xy(start)}" + "".join(f" A {radius} {radius} 0 0 0 {_xy(point)}" for point in rest)


def _text(mark: Lettering, ink: str) -> str:
    x, y = mark.at
    turn = f' transform="rotate({number(-degrees(mark.angle))} {_xy(mark.at)})"' if number(mark.angle) != "0" else ""
    face, kind = (FIGURE_FACE, "figure") if mark.figure else (WORD_FACE, "words")
    return (
        f'<text x="{number(x)}" y="{number(-y)}" class="{kind}" font-family="{face}" '
        f'font-size="{number(type_size(mark.height))}" text-anchor="{ANCHORS[mark.anchor]}" '
        f'fill="{ink}" stroke="none"{turn}>{_escaped(mark.text)}</text>'
    )


def _escaped(text: str) -> str:
    return escape(clean(text))
