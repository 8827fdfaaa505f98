"""The body as the maker writes it: its tables, usual values, and checks."""
