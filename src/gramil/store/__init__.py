"""The engine of the shop's record: one SQLite file, its form, its rows, one change at a time, and what undo needs."""
