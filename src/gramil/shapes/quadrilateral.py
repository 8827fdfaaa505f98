"""A tapered strip's outline: two straight edges, symmetric about the x axis, cut off by a line at either end."""

from dataclasses import dataclass

from gramil.quantities import Mm

Corner = tuple[float, float]


@dataclass(frozen=True)
class Quadrilateral:
    """Four corners, in mm; `upper` is at positive y."""

    start_lower_x: Mm
    start_lower_y: Mm
    start_upper_x: Mm
    start_upper_y: Mm
    end_upper_x: Mm
    end_upper_y: Mm
    end_lower_x: Mm
    end_lower_y: Mm

    @property
    def corners(self) -> tuple[Corner, Corner, Corner, Corner]:
        """Start lower, start upper, end upper, end lower: once round."""
        return (
            (self.start_lower_x, self.start_lower_y),
            (self.start_upper_x, self.start_upper_y),
            (self.end_upper_x, self.end_upper_y),
            (self.end_lower_x, self.end_lower_y),
        )

    @property
    def length(self) -> Mm:
        """From the foremost corner to the hindmost, along x."""
        return max(self.end_lower_x, self.end_upper_x) - min(self.start_lower_x, self.start_upper_x)

    @property
    def width(self) -> Mm:
        """From the lowest corner to the highest, across."""
        return max(self.start_upper_y, self.end_upper_y) - min(self.start_lower_y, self.end_lower_y)

    @staticmethod
    def tapered(width: float, growth: float, start: tuple[float, float], end: tuple[float, float]) -> "Quadrilateral":
        """Edges at y = +-(width + growth x) / 2; each end a line x = position + slant y, given as (position, slant)."""
        lower_start, upper_start = _ends(width, growth, *start)
        lower_end, upper_end = _ends(width, growth, *end)
        return Quadrilateral(*lower_start, *upper_start, *upper_end, *lower_end)


def _ends(width: float, growth: float, position: float, slant: float) -> tuple[Corner, Corner]:
    half = (width + growth * position) / 2
    upper = half / (1 - growth / 2 * slant)
    lower = -half / (1 + growth / 2 * slant)
    return (position + slant * lower, lower), (position + slant * upper, upper)
