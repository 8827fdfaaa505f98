"""A value as it is written in a description, by its unit."""

import math


def written(value: float, unit: str | None, places: int = 5) -> str:
    """A value with its unit, to a number of decimals of a mm, degree or MPa; a curvature is written as its radius.

    A search that puts its values into a description needs more decimals than a reader does.
    """
    match unit:
        case "mm" if math.isinf(value):
            return "flat"
        case "mm" | "MPa":
            return f"{value:.{places}f} {unit}"
        case "1/mm":
            return "flat" if value == 0 else f"{1 / value:.{places}f} mm"
        case "rad":
            return f"{math.degrees(value):.{places}f}"
        case _:
            return f"{value:.{places + 2}g}"
