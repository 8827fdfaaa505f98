"""A whole guitar begun from a dozen answers: starting points, the body by a ruler, bracing by common practice."""
