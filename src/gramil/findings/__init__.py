"""Verdicts: whether each figure can be made, here, with what the shop has; and what would mend it."""
