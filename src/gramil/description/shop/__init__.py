"""The shop as the maker writes it: its tools and stock, its limits, and how near a figure must come."""
