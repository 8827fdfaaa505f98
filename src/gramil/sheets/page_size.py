"""How large a sheet is and how large it is set: the one place that turns a paper into a page to be typeset."""

from typing import TypedDict

from gramil.paper_sizes import for_sheets, roll_width, sides

USUAL = (210.0, 297.0)
"""The page that sheets are laid out for, in mm; on a much larger one everything grows with it."""
GROWS_FROM, LESS = 1.2, 0.976
"""From how many times that page on all grows, and how much less than the page does, so that no line falls short."""
MARGINS = 28.0
"""Left and right margin of a sheet together, in mm."""


class PageSize(TypedDict):
    """A page in mm, and how many times larger than usual everything on it is set."""

    wide: float
    tall: float
    times: float


def page_size(paper: str) -> PageSize:
    """The page of a paper, upright; on a roll the usual single sheet."""
    wide, tall = sides(paper if roll_width(paper) is None else for_sheets(paper, "mm"))
    room = min(wide / USUAL[0], tall / USUAL[1])
    return PageSize(wide=wide, tall=tall, times=1.0 if room < GROWS_FROM else round(room * LESS, 2))


def room_for_drawing(paper: str) -> float:
    """How wide a drawing on a sheet may be, in mm."""
    page = page_size(paper)
    return page["wide"] - MARGINS * page["times"]
