"""The graph with the solved top on it, for those who ask: everything else does without it, and loads nothing of it."""

from dataclasses import replace
from functools import cache

import gramil.top
from gramil.description.base import INPUTS
from gramil.graph import Figures, Graph
from gramil.prints.whole import ROOMS, functions, graph_of
from gramil.wiring import build

EVERY_ROOM = (*ROOMS, gramil.top)
"""The rooms of the graph, the solved top's among them."""


@cache
def solved_graph() -> Graph:
    """The whole graph and the solved top's figures, by the wiring that `names.py` holds."""
    return graph_of(EVERY_ROOM)


def checked_graph() -> Graph:
    """The same graph, wired anew from the functions themselves and checked at every edge."""
    return build(functions(EVERY_ROOM), INPUTS)


def with_top(figures: Figures) -> Figures:
    """The same figures with those of the solved top among them; what is known already is not worked out again.

    What is worked out of the top stays with these figures: the others' graph could not say when it is out of date.
    """
    return replace(figures, graph=solved_graph(), known=dict(figures.known.copy()))
