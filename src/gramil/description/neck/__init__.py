"""The neck and head as the maker writes them: their tables, usual values, and checks."""
