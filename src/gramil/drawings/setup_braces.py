"""Every brace on its sheet: from the side and made small, its name before it and its length behind it."""

from dataclasses import replace

from gramil import names as n
from gramil.drawings.marks import Drawing, Label, Marks, Words
from gramil.drawings.pen import View, fitted
from gramil.parts.body_records import Brace, Crossing, notches_in
from gramil.quantities import Mm

OWNS = ("drawing_", "piece_")

ROOM, NAMES = 54.0, 48.0
"""How long the longest brace is drawn, and the room for names before it, in mm."""
ROW, TALL = 5.2, 2.6
"""From one brace to the next, and how tall its words are, in mm."""


def piece_small_braces(brace_list: tuple[Brace, ...], brace_crossings: tuple[Crossing, ...]) -> Marks:
    """One row for each brace, all at one scale, foot down, in the order of the cards at true size."""
    braces = tuple(each for each in brace_list if each.length > 0)
    longest = max((each.length for each in braces), default=Mm(1.0))
    return tuple(
        mark
        for row, brace in enumerate(braces)
        for mark in _row(brace, brace_crossings, -ROW * row, float(ROOM / longest))
    )


def _row(brace: Brace, crossings: tuple[Crossing, ...], y: float, share: float) -> Marks:
    view = View((0.0, y), share, share)
    outline = brace.bar.laid(brace.bar.outline(notches_in(brace, crossings).values()))
    return (
        replace(fitted((-NAMES, y), f"{brace.name} ({brace.plate})", NAMES - 7.0, TALL), anchor="left"),
        view.shape(outline, "outline"),
        Label((ROOM + 3.0, y), n.brace_list[brace.name].length, "long ", height=TALL),
    )


def drawing_setup_braces(instrument_name: str, piece_small_braces: Marks) -> Drawing:
    """What is sawn out, brace by brace; the cards at true size are for marking."""
    marks = piece_small_braces or (Words((0.0, 0.0), "no brace is described", TALL),)
    return Drawing("setup-braces", f"{instrument_name}, braces to saw out", "the side", marks, scale=0.0)
