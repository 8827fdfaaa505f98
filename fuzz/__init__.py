"""Inputs that nobody would write, made at random and kept by their seeds: `python -m fuzz --seconds 60`."""
