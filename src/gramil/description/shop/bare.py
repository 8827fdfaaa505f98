"""A shop's description with nothing in it, so that one row or a few can be read and checked as in a whole one."""

from gramil.measure import LengthUnit


def bare_shop(unit: LengthUnit = "mm") -> str:
    """The head of a shop's description, whose bare lengths are in `unit`; tables may follow it."""
    return f'gramil = 1\n\n[shop]\nname = "the shop"\nunits = "{unit}"\n'
