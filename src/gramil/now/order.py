"""Which of the work that can be done comes first: the one order, of the list of what is open and of plans."""

from gramil.shop.operations import Operation

LONG_CURE = 6.0
"""Hours of cure from which an operation goes on by itself while the hands do something else or sleep."""
FREES, CURES, LONGEST, OPENS = 300.0, 100.0, 50.0, 5.0
"""How much it counts that work frees a jig, that it cures long by itself, that the longest way to the instrument's end
begins with it, and each further operation that waits for it alone."""
WAY = 1e-4
"""How much a minute of the longest way to the end counts: it decides among what is otherwise alike."""


def preferred(each: Operation, way: float, longest: bool, opens: int) -> float:
    """How much an operation is preferred to others; `way` are the minutes of its longest way to the end, `longest`
    tells whether no other of its instrument is longer, and `opens` how many operations wait for it alone.
    """
    own = FREES * len(each.frees) + CURES * (each.clamp >= LONG_CURE)
    return own + LONGEST * longest + OPENS * opens + WAY * way
