"""Which dimensions are listed (those of things that this instrument has), and with what remark."""

from collections.abc import Iterable, Iterator
from dataclasses import replace

from gramil import names as n
from gramil.graph import Figures
from gramil.prints.carried_on import carried_on
from gramil.rows import Heading, headings

OF_A_ROD = (n.rod_corner, n.rod_over)
"""Figures with a row a fret that are of the truss rod's channel; without one they are no numbers."""
OF_A_CHANNEL = (n.neck_section_under_channel,)
"""The same of any channel, a rod's or a bar's."""


def there(figures: Figures, names: Iterable[str]) -> tuple[str, ...]:
    """The names without those of a channel that does not exist."""
    gone = {each.address for each in OF_A_ROD if figures[n.neck_rod] == "none"}
    gone |= {each.address for each in OF_A_CHANNEL if figures[n.neck_section_channel_depth] == 0}
    return tuple(name for name in names if name not in gone)


def headings_of(figures: Figures, names: Iterable[str]) -> Iterator[Heading]:
    """The dimensions that hold figures, each with what it is and any remark on it."""
    for each in headings(figures, there(figures, names)):
        yield replace(each, remark=carried_on(figures, each.name))
