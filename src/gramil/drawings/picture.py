"""A drawing ready to be set on a page."""

from dataclasses import dataclass

Row = tuple[str, str]
"""A number on a drawing, and what it stands for; without a number, what is said of the whole drawing."""


@dataclass(frozen=True)
class Picture:
    """A drawing as a page shows it: SVG text, the least height in mm that it must have, and its table.

    `low` is the same for a page with less room, if it can be lower.
    """

    svg: str
    least: float = 0.0
    key: tuple[Row, ...] = ()
    low: "Picture | None" = None
