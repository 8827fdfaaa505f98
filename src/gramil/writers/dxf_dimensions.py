"""Dimension lines as the DXF's own dimensions: two places measured, and a block with the lines and the figure.

The block holds what paper shows, so that every program that only draws it shows the same; one that works dimensions out
anew finds the sizes of ticks, gaps and letters in the style.
"""

from collections.abc import Callable
from math import cos, hypot, sin

from ezdxf.document import Drawing as Document
from ezdxf.layouts.blocklayout import BlockLayout
from ezdxf.layouts.layout import Modelspace

from gramil.drawings.marks import Drawing, Line, Point, Span
from gramil.writers.lettering import Lettering
from gramil.writers.plain import Plain, has_place
from gramil.writers.spans import BEYOND, CLEAR, GAP, TICK, Resolve, drawn

Add = Callable[[BlockLayout, Line | Lettering], None]


def measuring(drawing: Drawing) -> tuple[Span, ...]:
    """The drawing's dimensions whose places lie as far apart as they say: none of a sketch or a stretched drawing."""
    if drawing.scale == 0.0 or drawing.stretch != 1.0:
        return ()
    spans = (mark for mark in drawing.marks if isinstance(mark, Span))
    return tuple(span for span in spans if has_place(span) and span.start != span.end)


def without_pieces(marks: tuple[Plain, ...], spans: tuple[Span, ...], resolve: Resolve) -> tuple[Plain, ...]:
    """The plain marks without those that these dimensions are drawn with."""
    pieces: set[Plain] = set()
    for span in spans:
        lines, figure = drawn(span, resolve)
        pieces |= {*lines, figure}
    return tuple(mark for mark in marks if mark not in pieces)


def add_dimension(space: Modelspace, span: Span, resolve: Resolve, scale: float, add: Add) -> None:
    """One dimension in the file, its block filled by `add`; `scale` is drawn size over true size."""
    document = space.doc
    assert document is not None
    lines, figure = drawn(span, resolve)
    made = space.add_aligned_dim(
        span.start,
        span.end,
        span.offset,
        text=figure.text.replace("<>", "< >"),
        dimstyle=_style(document, span.height, scale),
        dxfattribs={"layer": span.layer},
    ).dimension
    block = document.blocks.new_anonymous_block(type_char="D")
    for line in lines:
        add(block, line)
    add(block, figure)
    made.dxf.geometry = block.name
    made.dxf.defpoint = _aside(span)
    made.dxf.text_midpoint = _middle(figure)
    made.dxf.actual_measurement = hypot(span.end[0] - span.start[0], span.end[1] - span.start[1]) / scale


def _style(document: Document, height: float, scale: float) -> str:
    """The name of the style for figures this tall, made when first asked for."""
    name = f"figures-{height:g}"
    if name not in document.dimstyles:
        style = document.dimstyles.add(name).dxf
        style.dimtxt, style.dimtxsty, style.dimtad, style.dimgap = height, "figures", 1, CLEAR * height
        style.dimtsz, style.dimexo, style.dimexe, style.dimdec = TICK, GAP, BEYOND, 2
        style.dimlfac = 1.0 / scale
    return name


def _aside(span: Span) -> Point:
    """Where the dimension line ends, beside the second place."""
    along = (span.end[0] - span.start[0], span.end[1] - span.start[1])
    out = span.offset / hypot(*along)
    return (span.end[0] - along[1] * out, span.end[1] + along[0] * out)


def _middle(figure: Lettering) -> Point:
    half = figure.height / 2
    return (figure.at[0] - half * sin(figure.angle), figure.at[1] + half * cos(figure.angle))
