"""What the maker writes: an instrument and a shop, read from TOML, checked, and turned into base values."""
