"""A photograph of a plan: 12 megapixels from the file to the solved camera, and the line followed through it.

The photograph is reckoned by the tests, with strips round a body of ours. Processor time; set OPENBLAS_NUM_THREADS=1.
"""

from dataclasses import replace

from tests.photographs.rendered import Scene, body, strips_round

from benchmarks.timing import milliseconds, processor_seconds
from gramil.photographs.picture_file import read_picture
from gramil.photographs.pieces import strips
from gramil.photographs.plan import Laid, TraceInputs, grounds, traced

TWELVE = Scene(strips_round(), ((body(), 0.5),), size=(4000, 3000), focal=3600.0, distance=1150.0)


def run() -> None:
    content = TWELVE.jpeg()
    took = processor_seconds(lambda: read_picture(content), 3)
    print(f"a file of 12 megapixels read      {milliseconds(took)}")
    picture = read_picture(content)
    took = processor_seconds(lambda: grounds([picture], TraceInputs(strips())), 3)
    print(f"tags, camera and how sure         {milliseconds(took)}")
    took = processor_seconds(lambda: grounds([read_picture(content)], TraceInputs(strips())), 3)
    print(f"from file to solved camera        {milliseconds(took)}   (budget 3 s on one core)")
    ground = grounds([replace(picture)], TraceInputs(strips()))
    points = [Laid(float(x), float(y)) for x, y in TWELVE.seen(body(24))]
    took = processor_seconds(lambda: traced(ground, points), 3)
    print(f"the line followed, 24 points      {milliseconds(took)}   (budget 0.5 s)")
