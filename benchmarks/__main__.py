"""`python -m benchmarks`: every benchmark, one after another."""

from benchmarks import board, intonation, now, store, wood

for subject in (board, intonation, store, wood, now):
    print(f"\n{subject.__doc__}")
    subject.run()
