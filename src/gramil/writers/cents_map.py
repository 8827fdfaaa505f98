"""The cents of every string and fret as one picture: a cell for each note, before any set-back and as filed.

Each cell holds its figure and a bar as long as the error: along its top where the note is sharp, along its foot where
it is flat. The darker the cell, the more audible the error; a grey print loses nothing.
"""

from collections.abc import Iterator
from html import escape

from gramil import names as n
from gramil.graph import Figures
from gramil.notice import NOTICE
from gramil.prints.cents import LONGEST, PANELS, Cell, cents_lines
from gramil.reference import Rows

CELL = (9.0, 7.0)
"""Width and height of a cell, in mm."""
LEFT, TOP, BETWEEN = 24.0, 16.0, 8.0
"""Room in mm for the strings' names, for the title, and between the two panels."""
DARKEST = 0.35
"""Share of black in the darkest cell: figures still read on it."""
BAR = 0.9
"""Height of a cell's bar, in mm."""


def cents_map_svg(figures: Figures) -> str:
    """The picture as an SVG document in millimetres, treble on top, frets that count underlined."""
    strings, frets = figures[n.strings_count], figures[n.scale_frets]
    wide = LEFT + (frets + 2) * CELL[0] + 8.0
    panel = TOP + strings * CELL[1] + BETWEEN
    tall = 12.0 + panel * len(PANELS)
    lines = [
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{wide:g}mm" height="{tall:g}mm" '
        f'viewBox="0 0 {wide:g} {tall:g}" role="img" font-family="B612, sans-serif">',
        f"<title>{escape(figures[n.instrument_name])}, cents by string and fret</title>",
        _text(4.0, 8.0, f"{figures[n.instrument_name]}, cents by string and fret", 4.5),
    ]
    for row, panel_names in enumerate(PANELS):
        lines += _panel(figures, 12.0 + row * panel, *panel_names)
    lines.append(_text(4.0, tall - 1.5, NOTICE, 2.5))
    return "\n".join([*lines, "</svg>"]) + "\n"


def cents_map_bytes(figures: Figures) -> bytes:
    """The picture as a complete file of its own."""
    return ('<?xml version="1.0" encoding="UTF-8"?>\n' + cents_map_svg(figures)).encode("utf-8")


def _panel(figures: Figures, top: float, title: str, name: Rows, rms: Rows) -> Iterator[str]:
    first = top + TOP
    yield _text(4.0, top + 6.0, title, 3.5)
    yield from _heads(figures, first)
    for row, line in enumerate(cents_lines(figures, name, rms)):
        y = first + row * CELL[1]
        yield _text(LEFT - 2.0, y + 4.8, line.string, 3.0, "end")
        for number, note in enumerate(line.notes):
            yield from _cell(LEFT + number * CELL[0], y, note)
        yield _text(LEFT + (len(line.notes) + 0.5) * CELL[0], y + 4.8, line.mean, 3.0, "middle")


def _heads(figures: Figures, first: float) -> Iterator[str]:
    counts = figures[n.intonation_weights]
    for fret in range(1, len(counts)):
        x = LEFT + (fret - 0.5) * CELL[0]
        yield _text(x, first - 2.0, str(fret), 3.0, "middle")
        if counts[fret]:
            run = f'x1="{x - 2:g}" y1="{first - 1:g}" x2="{x + 2:g}" y2="{first - 1:g}"'
            yield f'<line {run} stroke="#000" stroke-width="0.25"/>'
    yield _text(LEFT + (len(counts) - 0.5) * CELL[0], first - 2.0, "RMS", 3.0, "middle")


def _cell(x: float, y: float, note: Cell) -> Iterator[str]:
    yield (
        f'<rect x="{x:g}" y="{y:g}" width="{CELL[0]:g}" height="{CELL[1]:g}" fill="{_grey(note.share)}" '
        'stroke="#fff" stroke-width="0.3"/>'
    )
    long = note.share * LONGEST
    if long > 0:
        edge = y + 0.3 if note.sharp else y + CELL[1] - BAR - 0.3
        word = "sharp" if note.sharp else "flat"
        yield f'<path class="{word}" d="M{x + 0.5:g} {edge:g}h{long:.3g}v{BAR:g}h{-long:.3g}z"/>'
    yield _text(x + CELL[0] / 2, y + 4.7, note.text, 2.7, "middle")


def _grey(share: float) -> str:
    level = round(255 * (1 - DARKEST * share))
    return f"#{level:02x}{level:02x}{level:02x}"


def _text(x: float, y: float, words: str, height: float, anchor: str = "start") -> str:
    return f'<text x="{x:g}" y="{y:g}" font-size="{height:g}" text-anchor="{anchor}" fill="#111">{escape(words)}</text>'
