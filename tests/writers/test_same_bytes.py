"""The same marks are the same bytes, in another process and with another order of hashing."""

import os
import subprocess
import sys

from gramil.drawings.marks import Drawing, Polyline
from gramil.writers.arcs import run_of
from gramil.writers.dxf import dxf_bytes

SCRIPT = """
import sys, hashlib
from gramil import names as n
from gramil.drawings.marks import *
from gramil.layers import LAYERS
from gramil.writers.dxf import dxf_bytes
from gramil.writers.svg import svg_bytes
from gramil.writers.pdf import tiled_pdf
marks = tuple(Line((i, 0.0), (i, 50.0 + i), name) for i, name in enumerate(LAYERS))
drawing = Drawing("a", "A", "the face", (*marks, Label((3.0, 3.0), n.b), Span((0.0, 0.0), (90.0, 0.0), 5.0, n.b)))
for data in (dxf_bytes(drawing, str), svg_bytes(drawing, str), tiled_pdf([drawing], str, "a4", heading="A")):
    print(hashlib.sha256(data).hexdigest())
"""


def test_the_same_bytes_in_another_process():
    def run(seed: str) -> str:
        environment = {**os.environ, "PYTHONHASHSEED": seed}
        done = subprocess.run(
            [sys.executable, "-c", SCRIPT], env=environment, capture_output=True, text=True, check=True
        )
        return done.stdout

    first = run("1")
    assert len(first.split()) == 3
    assert {run(seed) for seed in "2345"} == {first}


def test_a_drawing_is_the_same_bytes_whatever_was_written_before_it():
    """Zero and minus zero are equal, so a run that is remembered must not carry the sign of the one before."""

    def bent(zero: float) -> Drawing:
        return Drawing("a", "A", "the face", (Polyline(((zero, 5.0), (9.0, zero), (9.0, 9.0)), "outline"),))

    plus, minus = (dxf_bytes(bent(zero), str) for zero in (0.0, -0.0))
    run_of.cache_clear()
    assert dxf_bytes(bent(-0.0), str) == minus
    assert dxf_bytes(bent(0.0), str) == plus
