"""Gramil: one description of a guitar, and every dimension that follows from it."""

__version__ = "0.1.0"
