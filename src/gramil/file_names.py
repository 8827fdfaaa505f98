"""Files named after what the maker calls a thing, on every system."""

DEVICES = frozenset(
    ("con", "prn", "aux", "nul", *(f"{port}{number}" for port in ("com", "lpt") for number in range(1, 10)))
)
"""What some systems take for a device, whatever stands after the point."""


def file_name(name: str) -> str:
    """A name's letters and digits, with a dash between its words; empty if it has neither.

    The result never leads to another folder, and is never a device's name.
    """
    plain = "-".join("".join(each if each.isalnum() else " " for each in name).split())
    return f"{plain}-" if plain.lower() in DEVICES else plain
