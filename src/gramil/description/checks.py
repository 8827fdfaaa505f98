"""What is written correctly but impossible: a nut wider than the board, an arch tighter than the board is wide.

Each check is a function of the tables that it needs, by their names in `Instrument`, and stands with its subject; it
is run if those tables could be read, whatever is wrong with the others, and returns the problems that it finds.
"""

from collections.abc import Callable, Iterator, Mapping, Sequence
from typing import Any

from gramil.description.board.checks import BOARD_CHECKS
from gramil.description.board.scala_scale import ScalaScale
from gramil.description.body.bevel_checks import BEVEL_CHECKS
from gramil.description.body.checks import BODY_CHECKS
from gramil.description.body.edge_checks import EDGE_CHECKS
from gramil.description.neck.checks import NECK_CHECKS
from gramil.description.problems import Problem
from gramil.description.strings.checks import STRING_CHECKS
from gramil.signature import parameters_of

CHECKS: Sequence[Callable[..., Iterator[Problem]]] = (
    *BOARD_CHECKS,
    *NECK_CHECKS,
    *STRING_CHECKS,
    *BODY_CHECKS,
    *EDGE_CHECKS,
    *BEVEL_CHECKS,
)


def problems_in(tables: Mapping[str, Any], tuning: ScalaScale | None) -> list[Problem]:
    """Run every check whose tables could be read; `tuning` is None if the temperament could not."""
    known = {**tables, "tuning": tuning}
    found: list[Problem] = []
    for check in CHECKS:
        names = parameters_of(check)
        if all(known.get(name) is not None for name in names):
            found.extend(check(**{name: known[name] for name in names}))
    return found
