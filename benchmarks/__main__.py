"""`python -m benchmarks`: every benchmark, one after another."""

from benchmarks import board

for subject in (board,):
    print(f"\n{subject.__doc__}")
    subject.run()
