"""The body as the maker writes it: its tables, what is usual, and what cannot be."""
