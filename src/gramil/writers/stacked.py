"""Lines of words one under the other, set apart as their letters grow, so that they stay the lines that they were."""

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise

from gramil.drawings.marks import Label, Mark, Point, Span, Words

LINES = 3.0
"""Words that lie under others by no more than this many of their capitals stand in one stack with them."""
LEAST = 1.7
"""From one line of a stack to the next at the least, in heights of a capital."""

Written = Words | Label


def grown(marks: Sequence[Mark], height: float) -> list[Mark]:
    """The marks with letters at least so tall; a dimension line moves out with its figure, lines of words apart."""
    moved = {at: place for stack in _stacks(marks) for at, place in _apart(stack, height, _middle(marks))}
    return [_grown(mark, height, moved.get(at)) for at, mark in enumerate(marks)]


def _grown(mark: Mark, height: float, place: Point | None) -> Mark:
    if isinstance(mark, Span) and mark.height < height:
        return replace(mark, height=height, offset=mark.offset * height / mark.height)
    if isinstance(mark, Words | Label):
        return replace(mark, height=max(mark.height, height), at=place or mark.at)
    return mark


Stack = list[tuple[int, Written]]
"""Words by their place among the marks, from the top down."""


def _stacks(marks: Sequence[Mark]) -> list[Stack]:
    """Level words that begin at one place across, each close under the one before; those that stand alone left out."""
    level = [(at, mark) for at, mark in enumerate(marks) if isinstance(mark, Words | Label) and mark.angle == 0.0]
    stacks: list[Stack] = []
    for at, mark in sorted(level, key=lambda each: (each[1].anchor, each[1].at[0], -each[1].at[1])):
        if stacks and _under(mark, stacks[-1][-1][1]):
            stacks[-1].append((at, mark))
        else:
            stacks.append([(at, mark)])
    return [stack for stack in stacks if len(stack) > 1]


def _under(mark: Written, upper: Written) -> bool:
    down = upper.at[1] - mark.at[1]
    return mark.anchor == upper.anchor and mark.at[0] == upper.at[0] and 0.0 < down <= LINES * mark.height


def _apart(stack: Stack, height: float, middle: float) -> list[tuple[int, Point]]:
    """Where the words of a stack stand: the line that is nearest to the drawing's middle stays in its place."""
    lines = [mark.at[1] for _, mark in stack]
    least = LEAST * height if height > stack[0][1].height else 0.0
    steps = [max(upper - lower, least) for upper, lower in pairwise(lines)]
    downs = [sum(steps[:row]) for row in range(len(stack))]
    rise = downs[-1] - (lines[0] - lines[-1]) if lines[0] + lines[-1] > 2 * middle else 0.0
    return [(at, (mark.at[0], lines[0] + rise - down)) for (at, mark), down in zip(stack, downs, strict=True)]


def _middle(marks: Sequence[Mark]) -> float:
    """Half way up all words of the drawing."""
    heights = [mark.at[1] for mark in marks if isinstance(mark, Words | Label)]
    return (min(heights) + max(heights)) / 2 if heights else 0.0
