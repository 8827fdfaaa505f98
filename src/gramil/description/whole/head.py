"""A head of our own plain shape: half of its outline from the nut's end, and posts where rollers lie across slots."""

from dataclasses import dataclass

from gramil.quantities import Mm

FIRST, STEP = 45.0, 35.0
"""The first roller from the nut, and from one to the next: common practice."""
ASIDE = (15.5, 14.0, 12.5, 11.5, 11.0, 10.5)
"""Where the strings reach their rollers, from the middle, the first from the nut on: near enough to it that none of six
cuts into the wood between its slot and the other, on the usual width. Common practice."""


@dataclass(frozen=True)
class Head:
    """Half of the outline (along, across), the rows (from 1) that are corners, and the posts with rollers."""

    outline: tuple[tuple[Mm, Mm], ...]
    corners: tuple[int, ...]
    posts_x: tuple[Mm, ...] = ()
    posts_y: tuple[Mm, ...] = ()


def upright(nut_width: Mm, strings: int, paired: bool = False) -> Head:
    """For posts through the face, half of them a side; those of pairs stand further out, and nearer together."""
    half, rows = nut_width / 2, (strings + 1) // 2
    longer = 26.0 * (rows - 4) if paired else 40.0 * max(0, rows - 3)
    wide = half + 15.5 if paired else max(half + 12.5, 34.5)
    outline = (
        (0.0, half), (10.0, half + 1.5), (24.0, wide - 2.5), (70.0, wide), (124.0 + longer, wide + 1),
        (156.0 + longer, wide - 1), (161.0 + longer, 18.0), (163.0 + longer, 0.0),
    )  # fmt: skip
    return Head(outline, (3, 6))


def slotted(nut_width: Mm, strings: int) -> Head:
    """For rollers across two slots; of an odd number of strings one more lies on the bass side."""
    treble, bass = strings // 2, strings - strings // 2
    half, longer = nut_width / 2, STEP * max(0, bass - 3)
    outline = (
        (0.0, half), (10.0, half + 2), (24.0, half + 8), (90.0, half + 9.5), (160.0 + longer, half + 10),
        (174.0 + longer, half - 2), (180.0 + longer, 0.0),
    )  # fmt: skip
    sides = [(FIRST + STEP * each, ASIDE[min(each, len(ASIDE) - 1)]) for each in range(bass)]
    posts = [*sides[:treble], *((x, -y) for x, y in reversed(sides))]
    return Head(outline, (3, 5), tuple(x for x, _ in posts), tuple(y for _, y in posts))
