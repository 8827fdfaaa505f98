"""Which dimensions are listed (those of things that this instrument has), and with what remark."""

from collections.abc import Iterable, Iterator
from dataclasses import replace
from typing import Any

from gramil import names as n
from gramil.graph import Figures
from gramil.prints.extrapolated import extrapolation_remark
from gramil.reference import Ref
from gramil.rows import Heading, headings

OF_A_ROD = (n.rod_corner, n.rod_over)
"""Figures of the truss rod's channel with a row for each fret; without a rod they are not numbers."""
OF_A_CHANNEL = (n.neck_section_channel_depth, n.neck_section_under_channel)
"""The same of any channel, a rod's or a bar's."""
OF_THE_BOARD_S_BINDING = (n.core_inset, n.core_inset_across, n.swell_step_dry)
"""Nothing on a board without one."""


def on_this_instrument(figures: Figures, names: Iterable[str]) -> tuple[str, ...]:
    """The names, without those of channels, bindings and ears that the instrument does not have."""
    gone = {each.address for missing, of_it in _missing(figures) if missing for each in of_it}
    return tuple(name for name in names if name not in gone)


def _missing(figures: Figures) -> Iterator[tuple[bool, tuple[Ref[Any], ...]]]:
    """Whether the instrument lacks a thing, and the figures that are of it."""
    yield figures[n.neck_rod] == "none", OF_A_ROD
    yield figures[n.neck_section_channel_depth] == 0, OF_A_CHANNEL
    yield figures[n.core_inset] == 0, OF_THE_BOARD_S_BINDING
    yield figures[n.channel_edge_top].reach == 0, (n.channel_edge_top,)
    yield figures[n.channel_edge_back].reach == 0, (n.channel_edge_back,)
    yield not figures[n.carve_ears], (n.plank_ear,)
    yield figures[n.head_tuners] != "across", (n.head_entry, n.head_slot_room, n.head_slot_ramp)


def headings_of(figures: Figures, names: Iterable[str]) -> Iterator[Heading]:
    """The dimensions that hold figures, each with what it is and any remark on it."""
    for each in headings(figures, on_this_instrument(figures, names)):
        yield replace(each, remark=extrapolation_remark(figures, each.name))
