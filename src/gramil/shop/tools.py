"""What is measured on tools: the widths of test cuts, and jigs' constants with the day of the check.

A saw's measured kerf is kept beside the one on its label, and is the one used.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date
from statistics import fmean

from gramil.faults import MakersFault
from gramil.measure import read_length
from gramil.quantities import Mm
from gramil.store.items import Item, length_text, shop_unit, update_item
from gramil.store.moments import moment_text
from gramil.store.opening import Store, Value
from gramil.store.rows import insert, records
from gramil.store.writing import Hand, writing


@dataclass(frozen=True)
class Cut:
    """The width of one test cut, measured, and when; `tool` is the saw's number."""

    tool: int
    at: str
    width: Mm
    note: str
    id: int


@dataclass(frozen=True)
class Kerf:
    """What a saw cuts: as its label says, and by its latest test cuts: their mean, span and day (None without any)."""

    label: Mm
    measured: Mm | None
    span: Mm
    cuts: int
    at: str

    @property
    def used(self) -> Mm:
        """The kerf to use: the measured one if there is one."""
        return self.label if self.measured is None else self.measured


def length_figure(store: Store, tool: Item, name: str) -> Mm:
    """A tool's figure that is a length, in mm; raises MakersFault if there is none or it cannot be read."""
    written = tool.figures.get(name)
    if isinstance(written, bool) or not isinstance(written, str | int | float):
        raise MakersFault.of(f"{tool.kind} {tool.name} has no {name}")
    return read_length(written, shop_unit(store))


def set_constant(store: Store, jig: Item, constant: Mm, checked: date, hand: Hand) -> Item:
    """A jig's constant as just measured, and the day; raises Conflict if the store holds another version."""
    figures = {**jig.figures, "constant": length_text(constant), "checked": checked.isoformat()}
    return update_item(store, replace(jig, figures=figures), hand)


def add_cuts(store: Store, tool: int, widths: Sequence[Mm], hand: Hand, *, note: str = "") -> None:
    """The widths of test cuts made together; from now on they are used instead of the label."""
    with writing(store, "test cuts", hand):
        for width in widths:
            row: dict[str, Value] = {"tool": tool, "at": moment_text(hand.now), "width": float(width), "note": note}
            insert(store, "test_cut", row)


def cuts(store: Store, tool: int) -> list[Cut]:
    """Every test cut of a tool, in the order in which they were noted."""
    return records(store, Cut, "test_cut", "WHERE tool = ? ORDER BY id", (tool,))


def kerf(store: Store, saw: Item) -> Kerf:
    """What a saw cuts, by its label and by its latest test cuts."""
    label = length_figure(store, saw, "kerf")
    made = cuts(store, saw.id)
    if not made:
        return Kerf(label, None, 0.0, 0, "")
    latest = [cut.width for cut in made if cut.at == made[-1].at]
    return Kerf(label, fmean(latest), max(latest) - min(latest), len(latest), made[-1].at)
