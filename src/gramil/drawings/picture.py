"""A drawing ready to be set on a page."""

from dataclasses import dataclass

Row = tuple[str, str]
"""A number on a drawing, and what it stands for."""


@dataclass(frozen=True)
class Picture:
    """A drawing as a page shows it: SVG text, the least height in mm that it must have, and its table."""

    svg: str
    least: float = 0.0
    key: tuple[Row, ...] = ()
