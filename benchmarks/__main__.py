"""`python -m benchmarks`: every benchmark, one after another."""

from benchmarks import bench, board, intonation, now, plate, store, wood

for subject in (board, intonation, plate, store, wood, now, bench):
    print(f"\n{subject.__doc__}")
    subject.run()
