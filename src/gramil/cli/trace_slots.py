"""`gramil trace --slots`: a finished board's slots in a photograph, held roughly against the drawn ones."""

from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

import click
import numpy as np

from gramil import names as n
from gramil.cli.json_option import write_answer
from gramil.cli.options import opened
from gramil.faults import MakersFault
from gramil.measure import LengthUnit, show
from gramil.quantities import Mm

if TYPE_CHECKING:
    from gramil.photographs.plan import Grounds, Laid
    from gramil.photographs.slots import SlotsSeen


def tell_slots(file: Path, ground: "Grounds", points: "list[Laid]", as_json: bool) -> None:
    """What the photograph says of the slots of FILE's board, printed. Raises MakersFault."""
    from gramil.photographs.slots import slots_seen

    figures, formatter = opened(file, None)
    drawn = figures[n.fret_position][1:]
    if np.abs(figures[n.fret_slant]).max() > 0:
        raise MakersFault.of("fanned slots are not checked from a photograph", remedy="Measure them with calipers")
    found = slots_seen(ground, points, drawn)
    if as_json:
        from gramil.answers.answer import whose
        from gramil.answers.traced import slots_answer

        write_answer("trace", [whose(figures)], slots_answer(ground, found))
        return
    for line in _lines(found, formatter.first, float(figures[n.scale_treble])):
        click.echo(line)


def _lines(found: "SlotsSeen", unit: LengthUnit, scale: Mm) -> Iterator[str]:
    def shown(length: Mm) -> str:
        return show(length, unit)

    yield f"A rough check by a photograph, within {shown(found.within)}: no reading of the slots themselves."
    if found.other_scale:
        like, within = shown(scale * (1 + found.longer)), shown(scale * found.longer_within)
        yield f"The slots lie as for a scale of {like} (within {within}), not {shown(scale)}."
    for fret in found.astray:
        off = float(found.off[fret - 1])
        toward = "the bridge" if off > 0 else "the nut"
        yield f"Slot {fret} lies {shown(abs(off))} nearer to {toward} than the others say: measure it."
    unseen = [str(row + 1) for row in np.flatnonzero(np.isnan(found.off))]
    if unseen:
        yield f"No dark line is seen at the point of slot {', '.join(unseen)}."
    if not found.astray and not found.other_scale:
        yield "All that are seen lie where they are drawn, as far as a photograph tells."
