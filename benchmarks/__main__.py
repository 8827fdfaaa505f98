"""`python -m benchmarks`: every benchmark, one after another."""

from benchmarks import begun, bench, board, intonation, now, photograph, plate, starts, store, wood

for subject in (board, intonation, plate, photograph, store, wood, now, bench, begun, starts):
    print(f"\n{subject.__doc__}")
    subject.run()
