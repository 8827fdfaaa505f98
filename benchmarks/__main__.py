"""`python -m benchmarks`: every benchmark, one after another."""

from benchmarks import board, intonation, store, wood

for subject in (board, intonation, store, wood):
    print(f"\n{subject.__doc__}")
    subject.run()
