"""The weeks ahead as a picture of the load: a row a day by the clock, each block of work in it by its instrument's
letter, cures as a line that runs on under it, and how many of the day's hours are taken.
"""

from collections.abc import Mapping, Sequence
from datetime import date, datetime, time, timedelta
from html import escape

from gramil.now.blocks import Block, label
from gramil.writers.svg import number

WIDE, LEFT, RIGHT, TALL = 640.0, 92.0, 96.0, 30.0
"""Of the picture, of the days' names, of the hours taken, and of a row, in its own units (a px when shown whole)."""


def load_picture(blocks: Sequence[Block], hours: Mapping[date, float]) -> str:
    """The picture as SVG; `hours` are the hands' hours of each day. Empty without blocks."""
    if not blocks:
        return ""
    days = sorted({*hours, *(each.begins.date() for each in blocks)})
    first = min(each.begins.time() for each in blocks).hour
    last = max((each.ends - timedelta(minutes=1)).hour + 1 for each in blocks)
    letters = letters_of(blocks)
    rows = "".join(_row(row, day, blocks, hours, (first, last), letters) for row, day in enumerate(days))
    tall = TALL * (len(days) + 1)
    ticks = "".join(_tick(hour, (first, last), tall) for hour in range(first, last + 1))
    head = f'<svg class="load" viewBox="0 0 {number(WIDE)} {number(tall)}" role="img"'
    return f'{head} aria-label="The load of each day by the clock, as in the list">{ticks}{rows}</svg>'


def letters_of(blocks: Sequence[Block]) -> Mapping[str, str]:
    """For each instrument, the fewest of its first letters that tell it from the others."""
    names = sorted({each.instrument for each in blocks})
    return {name: _letters(name, names) for name in names}


def _letters(name: str, names: Sequence[str]) -> str:
    starts = (name[:size] for size in range(1, len(name)))
    return next((start for start in starts if sum(each.startswith(start) for each in names) == 1), name)


def taken(blocks: Sequence[Block], day: date) -> float:
    """Hours of work on a day."""
    return sum((each.ends - each.begins).total_seconds() for each in blocks if each.begins.date() == day) / 3600.0


def _x(moment: datetime | time, span: tuple[int, int]) -> float:
    hour = moment.hour + moment.minute / 60.0
    return LEFT + (hour - span[0]) / (span[1] - span[0]) * (WIDE - LEFT - RIGHT)


def _tick(hour: int, span: tuple[int, int], tall: float) -> str:
    x = number(LEFT + (hour - span[0]) / (span[1] - span[0]) * (WIDE - LEFT - RIGHT))
    return (
        f'<path class="hour" d="M{x} {number(TALL * 0.8)}V{number(tall)}"/>'
        f'<text x="{x}" y="{number(TALL * 0.6)}" text-anchor="middle">{hour}</text>'
    )


def _row(
    row: int,
    day: date,
    blocks: Sequence[Block],
    hours: Mapping[date, float],
    span: tuple[int, int],
    letters: Mapping[str, str],
) -> str:
    top = TALL * (row + 1)
    drawn = "".join(_block(each, top, span, letters) for each in blocks if each.begins.date() == day)
    has = f" of {hours[day]:.0f}" if day in hours else ""
    foot = number(top + 0.65 * TALL)
    return (
        f'<text x="0" y="{foot}">{day:%a} {day.day} {day:%b}</text>{drawn}'
        f'<text x="{number(WIDE - 6)}" y="{foot}" text-anchor="end">{taken(blocks, day):.1f}{has} h</text>'
    )


def _block(block: Block, top: float, span: tuple[int, int], letters: Mapping[str, str]) -> str:
    left, right = _x(block.begins, span), _x(block.ends, span)
    kind = sorted(letters).index(block.instrument) % 3
    words = f"{block.begins:%H:%M} to {block.ends:%H:%M}, {block.instrument}: {label(block)}"
    middle, room = (left + right) / 2, right - left
    letter = letters[block.instrument]
    name = f'<text x="{number(middle)}" y="{number(top + 0.65 * TALL)}" text-anchor="middle">{escape(letter)}</text>'
    end = block.cures if block.cures and block.cures.date() == block.begins.date() else None
    to = min(_x(end, span), WIDE - RIGHT) if end else WIDE - RIGHT
    cure = f'<path class="cures" d="M{number(right)} {number(top + TALL - 5)}H{number(to)}"/>' if block.cures else ""
    return (
        f'<g class="block of-{kind}"><title>{escape(words)}</title><rect x="{number(left)}" y="{number(top + 3)}" '
        f'width="{number(room)}" height="{number(TALL - 9)}"/>{name if room > 9 * len(letter) else ""}{cure}</g>'
    )
