"""The braced plate, solved: a first answer and the one that is kept, one bar changed, what a shaving changes.

Processor time, for a fair share of a busy machine; set OPENBLAS_NUM_THREADS=1, or idle threads are counted too.
"""

import importlib.util
import os
import sys
from dataclasses import replace
from pathlib import Path
from types import ModuleType

import numpy as np
from scipy.sparse import csr_matrix, vstack

from benchmarks.timing import milliseconds, processor_seconds
from gramil.physics.arrays import FloatArray
from gramil.physics.plates.loads import spread
from gramil.physics.plates.rows import Z, reading
from gramil.physics.plates.sensitivity import bar_changes, movements_of
from gramil.physics.plates.solving import factor_of
from gramil.physics.plates.surety import FINAL, QUICK
from gramil.physics.plates.whole import Whole, whole_of, with_bar

DESCRIBED = Path(__file__).parent.parent / "tests" / "published" / "solids" / "described.py"
MODES, RATIO_ALLOWED = 10, 2.5


def run() -> None:
    top = _described().described("tarn", domed=True)

    def made(size: float) -> Whole:
        return whole_of(top.plate, size, top.bars, top.blocks)

    def load(whole: Whole) -> FloatArray:
        return spread(whole.mesh, top.area, top.force, top.couple)

    def answered(whole: Whole) -> Whole:
        whole.under(load(whole))
        whole.modes(MODES)
        return whole

    threads = os.environ.get("OPENBLAS_NUM_THREADS", "all")
    for name, size, allowed in (("a first answer", QUICK, 1.0), ("the answer that is kept", FINAL, 2.0)):

        def answer(size: float = size) -> Whole:
            return answered(made(size))

        took = processor_seconds(answer, 3)
        print(f"{name:<33} {milliseconds(took)}   (budget {allowed:g} s on one core; BLAS threads here: {threads})")
    for size in (QUICK, FINAL):
        _ratio(made(size), answered)
    whole = answered(made(QUICK))
    bar = whole.bars[2].bar
    heights = iter(np.linspace(0.1, 1.0, 20))
    took = processor_seconds(lambda: answered(with_bar(whole, bar.raised(-float(next(heights))))), 3)
    print(f"one bar changed, answered again   {milliseconds(took)}   (budget 0.5 s)")
    loaded, modes = whole.under(load(whole)), whole.modes(MODES)
    took = processor_seconds(lambda: bar_changes(whole, movements_of(whole, loaded, _asked(whole, top.area), modes)), 3)
    print(f"what shaving each bar changes     {milliseconds(took)}   (budget 0.2 s)")


def _ratio(whole: Whole, answered: object) -> None:
    stiffness = whole.stiffness, whole.mass
    alone = processor_seconds(lambda: factor_of(stiffness[0]), 3)

    def all_three() -> None:
        fresh = replace(whole)
        fresh.__dict__.update(stiffness=stiffness[0], mass=stiffness[1])
        answered(fresh)  # type: ignore[operator]

    together = processor_seconds(all_three, 3)
    unknowns = stiffness[0].shape[0]
    print(
        f"factor alone, {unknowns} unknowns    {milliseconds(alone)}; with load and ten modes {milliseconds(together)}:"
        f" {together / alone:.2f} times (less than {RATIO_ALLOWED})"
    )


def _asked(whole: Whole, area: FloatArray) -> csr_matrix:
    low, high = area[:, 0].min(), area[:, 0].max()
    read = reading(whole.mesh, np.array([[low + 0.5, 0.0], [high - 0.5, 0.0], [low - 45.0, 0.0]]), {Z: 1.0})
    return csr_matrix(vstack([read[1] - read[0], read[0], read[2]]))


def _described() -> ModuleType:
    """How the tests describe a top to the plate and to solid elements alike."""
    specification = importlib.util.spec_from_file_location("described", DESCRIBED)
    assert specification is not None
    assert specification.loader is not None
    module = importlib.util.module_from_spec(specification)
    sys.modules["described"] = module
    specification.loader.exec_module(module)
    return module
