"""`python -m benchmarks`: every benchmark, one after another."""

from benchmarks import board, store, wood

for subject in (board, store, wood):
    print(f"\n{subject.__doc__}")
    subject.run()
