"""Wood and its air as the maker writes them: places, pieces, own woods, and what stuff each part is of."""
