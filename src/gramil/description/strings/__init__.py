"""Strings, saddle and bridge as the maker writes them: their tables, usual values, and checks."""
