"""How fast the work is, as ratios measured in one run: `make speed`."""
