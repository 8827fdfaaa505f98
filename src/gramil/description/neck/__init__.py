"""The neck and head as the maker writes them: their tables, what is usual, and what cannot be."""
