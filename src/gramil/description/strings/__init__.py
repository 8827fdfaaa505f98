"""Strings, saddle and bridge as the maker writes them: their tables, what is usual, and what cannot be."""
