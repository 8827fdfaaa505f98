"""`python -m benchmarks`: every benchmark, one after another."""

from benchmarks import board, now, store, wood

for subject in (board, store, wood, now):
    print(f"\n{subject.__doc__}")
    subject.run()
