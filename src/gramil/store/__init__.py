"""The engine of the shop's record: one SQLite file, its schema, its rows, one change at a time, and what undo needs."""
