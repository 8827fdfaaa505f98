"""Marks to DXF R2010 in millimetres: true lines, arcs and circles on named layers, to be cut by.

The library stamps each file with the time and two random names; they are pinned, so that the same drawing is the
same bytes.
"""

from collections.abc import Iterable, Iterator, Mapping
from contextlib import contextmanager
from io import StringIO
from math import degrees, dist

from ezdxf import colors, options, units  # type: ignore[attr-defined]  # public, but not marked as exported
from ezdxf.document import Drawing as Document
from ezdxf.enums import TextEntityAlignment
from ezdxf.filemanagement import new
from ezdxf.layouts.blocklayout import BlockLayout
from ezdxf.layouts.layout import Modelspace
from ezdxf.lldxf.const import VALID_DXF_LINEWEIGHTS

from gramil.drawings.marks import Arc, Circle, Drawing, Line, Polyline
from gramil.layers import MOST, LayerInk, Stroke, strokes
from gramil.writers.arcs import Run, run_of
from gramil.writers.dxf_dimensions import add_dimension, measuring, without_pieces
from gramil.writers.extents import Box, bounds, sweep
from gramil.writers.lettering import Lettering
from gramil.writers.plain import Plain, caption, plain
from gramil.writers.single_lines import single
from gramil.writers.spans import Resolve

WORDS, FIGURES = "words", "figures"
STYLES = ((WORDS, "B612-Regular.ttf"), (FIGURES, "B612Mono-Regular.ttf"))
ALIGNMENTS = {
    "left": TextEntityAlignment.LEFT,
    "middle": TextEntityAlignment.CENTER,
    "right": TextEntityAlignment.RIGHT,
}


def dxf_bytes(drawing: Drawing, resolve: Resolve, own: Iterable[LayerInk] = ()) -> bytes:
    """The drawing as a DXF file (UTF-8). Only the layers that it uses are in it, by their names in `LAYERS`,
    in their usual colours and weights or in the shop's `own`.

    Raises KeyError for a mark on a layer that is not in `LAYERS`.
    """
    shown = plain(drawing, resolve)
    spans = measuring(drawing)
    marks = (*single(without_pieces(shown, spans, resolve)), *caption(drawing, shown, resolve))
    with _pinned():
        document = new("R2010", units=units.MM)
        used = {mark.layer for mark in (*marks, *spans)} | ({"text"} if spans else set())
        inks = strokes(own)
        _set_up(document, {name: inks[name] for name in sorted(used)})  # a set's order differs from run to run
        _set_extents(document, bounds((*shown, *marks)))
        space = document.modelspace()
        for mark in marks:
            _add(space, mark)
        for span in spans:
            add_dimension(space, span, resolve, drawing.scale, _add)
        _order_classes(document)
        stream = StringIO()
        document.write(stream)
    return stream.getvalue().encode("utf-8")


def _order_classes(document: Document) -> None:
    """The library keeps the classes that a file must name in a set, whose order changes from run to run: give them an
    order.
    """
    document.classes.add_required_classes(document.dxfversion)
    document.classes.classes = dict(sorted(document.classes.classes.items()))


@contextmanager
def _pinned() -> Iterator[None]:
    """The library's clock and random names, fixed while a file is written."""
    before = options.write_fixed_meta_data_for_testing
    options.write_fixed_meta_data_for_testing = True
    try:
        yield
    finally:
        options.write_fixed_meta_data_for_testing = before


def _set_up(document: Document, used: Mapping[str, Stroke]) -> None:
    for name, font in STYLES:
        document.styles.add(name, font=font)
    for name, stroke in used.items():
        layer = document.layers.add(name, color=_index(stroke), linetype=_linetype(document, stroke))
        layer.dxf.lineweight = min(VALID_DXF_LINEWEIGHTS, key=lambda each: abs(each - stroke.weight * 100))
        if stroke.own.startswith("#"):
            layer.rgb = colors.RGB.from_hex(stroke.own)


def _index(stroke: Stroke) -> int:
    """The layer's colour in the standard's index: for any other the nearest, which readers of the index alone take."""
    if not stroke.own.startswith("#"):
        return int(stroke.own or stroke.colour)
    wanted = colors.RGB.from_hex(stroke.own)
    return min(range(1, MOST + 1), key=lambda each: dist(wanted, colors.aci2rgb(each)))


def _linetype(document: Document, stroke: Stroke) -> str:
    """The name of the line type for these dashes, made when first asked for; a gap is a negative length."""
    if not stroke.dashes:
        return "Continuous"
    name = "dash-" + "-".join(f"{dash:g}" for dash in stroke.dashes)
    if name not in document.linetypes:
        pattern = [dash if i % 2 == 0 else -dash for i, dash in enumerate(stroke.dashes)]
        document.linetypes.add(name, pattern=[sum(stroke.dashes), *pattern])
    return name


def _set_extents(document: Document, box: Box) -> None:
    left, low, right, high = box
    space = document.modelspace()
    space.reset_extents((left, low, 0.0), (right, high, 0.0))
    # as screens are, 16 by 10: all of it shows when it is opened
    document.set_modelspace_vport(max(high - low, (right - left) / 1.6, 1.0), ((left + right) / 2, (low + high) / 2))


def _add(space: Modelspace | BlockLayout, mark: Plain) -> None:
    on = {"layer": mark.layer}
    match mark:
        case Line():
            space.add_line(mark.start, mark.end, on)
        case Circle():
            space.add_circle(mark.centre, mark.radius, on)
        case Arc():
            start = degrees(mark.start_angle)
            space.add_arc(mark.centre, mark.radius, start, start + degrees(sweep(mark)), dxfattribs=on)
        case Polyline():
            _add_run(space, run_of(mark), on)
        case Lettering():
            _add_text(space, mark)


def _add_run(space: Modelspace | BlockLayout, run: Run, on: dict[str, str]) -> None:
    """A polyline whose pieces are straight or true arcs, by their bulges."""
    bulges = run.bulges if run.closed else (*run.bulges, 0.0)
    corners = [(x, y, bulge) for (x, y), bulge in zip(run.points, bulges, strict=True)]
    space.add_lwpolyline(corners, "xyb", close=run.closed, dxfattribs=on)


def _add_text(space: Modelspace | BlockLayout, mark: Lettering) -> None:
    on = {"layer": mark.layer, "style": FIGURES if mark.figure else WORDS}
    text = space.add_text(_escaped(mark.text), height=mark.height, rotation=degrees(mark.angle), dxfattribs=on)
    text.set_placement(mark.at, align=ALIGNMENTS[mark.anchor])


def _escaped(text: str) -> str:
    """Text with the two signs that the format reads as codes (caret, double percent) escaped, and two written as codes.

    A degree and a plus-or-minus have codes of their own, which also those programs know that take a file's letters for
    the code page named in its head, though the format says that they are UTF-8.
    """
    text = text.replace("^", "^ ")
    text = text.replace("%%", "%%%%%%") if "%%" in text else text
    return text.replace("°", "%%d").replace("±", "%%p")
