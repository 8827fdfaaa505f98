"""A top solved beside the pages in steps, each of which gives some figures of the solved top; it can be stopped between
two.
"""

from collections.abc import Iterator

from gramil import names as n
from gramil.bench.long_work import LongWork, LongWorks
from gramil.bench.open_instruments import OpenInstruments
from gramil.graph import Figures

STEPS = (
    n.braced_plate,
    n.braced_coarse,
    n.rear_coarse,
    n.rear_fine,
    n.braced_fine,
    n.rear_modes,
    n.mode_first_supported,
    n.pulled_turn_supported,
    n.mode_pictures,
    n.pulled_said,
    n.mode_list,
    n.shaving_list,
)
"""What takes long of it, in the order in which it is worked out."""


def begin_top(works: LongWorks, open_instruments: OpenInstruments, figures: Figures) -> LongWork:
    """Begins to solve an instrument's top; once solved, the open instruments know it."""
    from gramil.prints.solved import with_top

    solving = with_top(figures)

    def steps() -> Iterator[tuple[str, bytes]]:
        for each in STEPS:
            solving[each]
            yield str(each), b""

    def known(_: object) -> bytes:
        open_instruments.keep_top(figures, solving)
        return b"solved"

    return works.begin(len(STEPS), steps(), known)
