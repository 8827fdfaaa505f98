"""Pictures of the solved top: its modes laid over the braces, and where a shaving does most."""

import numpy as np

from gramil import names as n
from gramil.drawings.marks import Circle, Drawing, Label, Mark, Marks, Point, Polyline, Words, mirrored
from gramil.drawings.pen import View, handed
from gramil.parts.body_records import Brace, Shell
from gramil.physics.plates.nodal_lines import Belly
from gramil.quantities import Mm
from gramil.top.modes import ModePicture
from gramil.top.shaving import Shaving

OWNS = ("drawing_", "piece_")
WIDE = 34.0
"""How long the body is drawn in a picture of a mode, mm."""
GAP, FOOT = 4.0, 7.0
"""Between pictures, and for the words under each, mm."""
IN_A_ROW = 5
OUTLINE_STEPS = 120
SIGN = 2.2
"""How large a sign for up or down is drawn, mm."""
LARGE = 26.0
"""The same in the body's own size."""


def piece_top_small(body_shells: tuple[Shell, ...], brace_list: tuple[Brace, ...], body_length: Mm) -> Marks:
    """The top with its braces, drawn small: the ground that a mode is laid over."""
    view = View((0.0, 0.0), WIDE / body_length, WIDE / body_length) if body_shells else View((0.0, 0.0))
    braces = [view.shape(each.footprint, "dimensions") for each in brace_list if each.plate == "top"]
    return tuple(mark for shell in body_shells for mark in (view.shape(_round(shell), "old"), *braces))


def _round(shell: Shell) -> list[Point]:
    outline = shell.side.outline
    points = outline.point(np.linspace(0.0, outline.perimeter, OUTLINE_STEPS + 1)[:-1])
    return [(float(x), float(y)) for x, y in points]


def drawing_top_modes(
    instrument_name: str,
    instrument_handed: str,
    piece_top_small: Marks,
    mode_pictures: tuple[ModePicture, ...],
    body_length: Mm,
    body_width: Mm,
) -> Drawing:
    """The modes over the braces: thick lines where the top stays at rest, signs where it moves most."""
    marks: list[Mark] = []
    for number, picture in enumerate(mode_pictures):
        row, column = divmod(number, IN_A_ROW)
        share = WIDE / body_length
        tall = body_width * share + GAP + FOOT
        view = View((column * (WIDE + GAP), -row * tall), share, share)
        marks += [_moved(mark, view.origin) for mark in piece_top_small]
        marks += [view.run([(float(x), float(y)) for x, y in line], "outline") for line in picture.lines]
        marks += [mark for each in picture.bellies for mark in _sign(view, each)]
        foot = (view.origin[0] + WIDE / 2, view.origin[1] - body_width * share / 2 - 4.2)
        marks.append(Label(foot, n.mode_list[picture.name].hertz, f"{number + 1}:  ", height=2.2, anchor="middle"))
    title = f"{instrument_name}, the top's modes over its braces"
    return handed(Drawing("setup-top-modes", title, "the face", tuple(marks), scale=0.0), instrument_handed)


def piece_top_mode_signs(mode_pictures: tuple[ModePicture, ...]) -> tuple[Drawing, ...]:
    """Each mode's lines at rest and signs alone, in the body's own size, to be laid over what is drawn there."""
    view = View((0.0, 0.0))
    found = []
    for picture in mode_pictures:
        lines = [view.run([(float(x), float(y)) for x, y in line], "outline") for line in picture.lines]
        signs = [mark for each in picture.bellies for mark in _sign(view, each, LARGE)]
        found.append(Drawing(picture.name, picture.name, "the face", (*lines, *signs), scale=0.0))
    return tuple(found)


def _moved(mark: Mark, by: Point) -> Mark:
    assert isinstance(mark, Polyline)
    return Polyline(tuple((x + by[0], y + by[1]) for x, y in mark.points), mark.layer, mark.closed)


def _sign(view: View, belly: Belly, large: float = SIGN) -> Marks:
    """A plus where a part moves up, a minus where it moves down, the larger the farther it moves."""
    x, y = view.at(belly.x, belly.y)
    half = large * (0.4 + 0.6 * abs(belly.share)) / 2
    across = Polyline(((x - half, y), (x + half, y)), "outline")
    return (across, Polyline(((x, y - half), (x, y + half)), "outline")) if belly.share > 0 else (across,)


def drawing_setup_voice(
    instrument_name: str,
    instrument_handed: str,
    body_shells: tuple[Shell, ...],
    brace_list: tuple[Brace, ...],
    shaving_list: tuple[Shaving, ...],
    body_length: Mm,
) -> Drawing:
    """The top from the inside with its braces named, and where a shaving of each turns the bridge most."""
    share = 110.0 / body_length if body_shells else 1.0
    view = View((0.0, 0.0), share, share)
    marks: list[Mark] = [view.shape(_round(shell), "outline") for shell in body_shells]
    marks += [view.shape(each.footprint, "core") for each in brace_list if each.plate == "top" and body_shells]
    for number, each in enumerate(shaving_list, 1):
        place = view.at(each.place_x, each.place_y)
        marks += [Circle(place, 1.6, "pins"), Words((place[0] + 2.2, place[1] + 1.0), str(number), 2.6)]
    title = f"{instrument_name}, the top from the inside: where a shaving turns the bridge most"
    drawing = Drawing("setup-voice", title, "the inside", tuple(marks), scale=0.0)
    return handed(mirrored(drawing), instrument_handed)
