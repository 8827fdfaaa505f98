"""The braced plate, solved: a first answer and the one that is kept, one bar changed, what a shaving changes.

The plate is *Tarn*'s top as the program makes it of the description. Processor time, for a fair share of a busy
machine; set OPENBLAS_NUM_THREADS=1, or idle threads are counted too.
"""

import os
from dataclasses import replace
from importlib.resources import files

import numpy as np

from benchmarks.timing import milliseconds, processor_seconds
from gramil import names as n
from gramil.physics.plates.sensitivity import bar_changes
from gramil.physics.plates.solving import factor_of
from gramil.physics.plates.surety import FINAL, QUICK
from gramil.prints.solved import with_top
from gramil.prints.whole import figures_of_files
from gramil.top.advice import raised
from gramil.top.braced import Solved, solved
from gramil.top.derivatives import movements_between

RATIO_ALLOWED = 2.5


def run() -> None:
    examples = files("gramil") / "data" / "examples"
    figures = with_top(figures_of_files(str(examples / "tarn.toml"), str(examples / "shop.toml")))
    took = processor_seconds(lambda: replace(figures, known={})[n.braced_top], 3)
    print(f"the plate of a description        {milliseconds(took)}")
    (top,) = figures[n.braced_top]

    def answered(found: Solved) -> Solved:
        _ = found.moved, found.modes
        return found

    threads = os.environ.get("OPENBLAS_NUM_THREADS", "all")
    for name, size, allowed in (("a first answer", QUICK, 1.0), ("the answer that is kept", FINAL, 2.0)):

        def answer(size: float = size) -> Solved:
            return answered(solved(top, size))

        took = processor_seconds(answer, 3)
        print(f"{name:<33} {milliseconds(took)}   (budget {allowed:g} s on one core; BLAS threads here: {threads})")
    for size in (QUICK, FINAL):
        _ratio(solved(top, size))
    found = answered(solved(top, QUICK))
    heights = iter(np.linspace(0.1, 1.0, 20))
    took = processor_seconds(lambda: answered(raised(found, ("tone bar 1",), -float(next(heights)))), 3)
    print(f"one bar changed, answered again   {milliseconds(took)}   (budget 0.5 s)")
    took = processor_seconds(lambda: bar_changes(found.whole, movements_between(found)), 3)
    print(f"what shaving each bar changes     {milliseconds(took)}   (budget 0.2 s)")


def _ratio(found: Solved) -> None:
    stiffness = found.whole.stiffness, found.whole.mass
    alone = processor_seconds(lambda: factor_of(stiffness[0]), 3)

    def all_three() -> None:
        fresh = replace(found.whole)
        fresh.__dict__.update(stiffness=stiffness[0], mass=stiffness[1])
        again = replace(found, whole=fresh)
        _ = again.moves, again.modes

    together = processor_seconds(all_three, 3)
    print(
        f"factor alone, {stiffness[0].shape[0]} unknowns    {milliseconds(alone)}; with load and ten modes "
        f"{milliseconds(together)}: {together / alone:.2f} times (less than {RATIO_ALLOWED})"
    )
