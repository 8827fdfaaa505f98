"""Wood and its moisture: kinds of wood, what the air does to them, and the stress if a piece cannot move."""
