"""A store to try things in, as the rooms about the record share it."""

from ..in_a_store import figures, now, path, stocked, store

__all__ = ["figures", "now", "path", "stocked", "store"]
