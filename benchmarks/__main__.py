"""`python -m benchmarks`: every benchmark, one after another."""

from benchmarks import board, store

for subject in (board, store):
    print(f"\n{subject.__doc__}")
    subject.run()
