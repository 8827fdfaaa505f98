"""The tags: told apart however they are turned, known as mirrored, and printed where the code thinks they are."""

from collections.abc import Iterator
from io import BytesIO

import numpy as np
import pikepdf
import pytest

from gramil.faults import MakersFault
from gramil.photographs.pieces import APART, TAG, frame_middles, strips
from gramil.photographs.tags import ACROSS, PATTERNS, Known, black_cells, known, pattern
from gramil.writers.paper import MARGIN
from gramil.writers.photo_strips import STEP, TALL, frame_pdf, hold_strips, strips_pdf

TURNS = range(4)
PT = 72 / 25.4


def test_no_tag_is_taken_for_another_until_five_cells_are_misread() -> None:
    seen = [(number, np.rot90(pattern(number), turn)) for number in range(len(PATTERNS)) for turn in TURNS]
    for at, (number, cells) in enumerate(seen):
        for other, others in seen[at + 1 :]:
            assert (cells != others).sum() >= 5, (number, other)


def test_no_mirrored_tag_is_taken_for_one_until_four_cells_are_misread() -> None:
    for number in range(len(PATTERNS)):
        for other in range(len(PATTERNS)):
            for turn in TURNS:
                assert (pattern(number)[:, ::-1] != np.rot90(pattern(other), turn)).sum() >= 4, (number, other)


@pytest.mark.parametrize("turned", TURNS)
def test_a_tag_is_known_turned_and_mirrored(turned: int) -> None:
    for number in range(len(PATTERNS)):
        cells = np.rot90(pattern(number), -turned).copy()
        found = known(cells)
        assert found == Known(number, turned)
        behind = known(cells[:, ::-1].copy())
        assert behind is not None
        assert (behind.number, behind.mirrored) == (number, True)


def test_what_is_no_pattern_is_no_tag() -> None:
    assert known(np.zeros((4, 4), dtype=bool)) is None
    one_wrong = pattern(0).copy()
    one_wrong[0, 0] ^= True
    assert known(one_wrong) is None


Run = list[tuple[float, float]]


def _paths(page: pikepdf.Page) -> Iterator[tuple[str, float, Run]]:
    """How every straight path of a page is drawn (`S`, `f`), the grey that it is filled with, and its points in mm."""
    now, kept, grey, path = np.eye(3), [], 0.0, list[tuple[float, float]]()
    for operands, operator in pikepdf.parse_content_stream(page):
        match str(operator):
            case "q":
                kept.append((now, grey))
            case "Q":
                now, grey = kept.pop()
            case "cm":
                a, b, c, d, e, f = map(float, operands)
                now = np.array([[a, b, 0.0], [c, d, 0.0], [e, f, 1.0]]) @ now
            case "scn":
                grey = float(operands[0])
            case "m" | "l" as name:
                x, y, _ = np.array([float(operands[0]), float(operands[1]), 1.0]) @ now / PT
                path = [*path, (x, y)] if name == "l" else [(x, y)]
            case "S" | "f" | "f*" as name:
                yield name[0], grey, path


def _squares(document: bytes) -> list[list[tuple[float, float, float, float, float]]]:
    """By page, every filled rectangle as left, low, right, high (mm) and its grey, as the file has it."""
    with pikepdf.open(BytesIO(document)) as pdf:
        return [
            [(*np.min(path, axis=0), *np.max(path, axis=0), grey) for how, grey, path in _paths(page) if how == "f"]
            for page in pdf.pages
        ]


@pytest.mark.parametrize(("paper", "long", "short"), [("a4", 297.0, 210.0), ("letter", 279.4, 215.9)])
def test_the_printed_strips_carry_the_tags_where_the_code_thinks(paper: str, long: float, short: float) -> None:
    pages = _squares(strips_pdf(paper))
    for strip, piece in enumerate(strips()):
        blacks = [each for each in pages[strip // 2] if each[4] == 0.0 and abs(each[2] - each[0] - TAG) < 0.01]
        middle = (long / 2, short - MARGIN - STEP * (strip % 2) - TALL / 2)
        for number, corners in piece.tags.items():
            (left, high), (right, low) = corners[0] + middle, corners[2] + middle
            near = min(blacks, key=lambda each: abs(each[0] - left) + abs(each[1] - low))
            assert near[:4] == pytest.approx((left, low, right, high), abs=0.005), number
            assert left > 0, "all of a strip lies on its page"
            assert right < long, "all of a strip lies on its page"
            _holds_cells([each for each in pages[strip // 2] if each[4] == 1.0], number, (left, high))


def _holds_cells(
    whites: list[tuple[float, float, float, float, float]], number: int, top_left: tuple[float, float]
) -> None:
    """Every white cell of a tag is covered by a white square, no black one is."""
    black, cell = set(black_cells(number)), TAG / ACROSS
    for column in range(ACROSS):
        for row in range(ACROSS):
            x, y = top_left[0] + (column + 0.5) * cell, top_left[1] - (row + 0.5) * cell
            covered = any(left < x < right and low < y < high for left, low, right, high, _ in whites)
            assert covered is ((column, row) not in black), (number, column, row)


def test_the_printed_frame_carries_the_tags_where_the_code_thinks() -> None:
    squares = [each for each in _squares(frame_pdf(700.0, 500.0))[0] if each[4] == 0.0 and each[2] - each[0] > 30]
    middles = np.array([((left + right) / 2, (low + high) / 2) for left, low, right, high, _ in squares])
    assert len(middles) == 12
    about = middles - middles.mean(axis=0)
    for middle in frame_middles(700.0, 500.0).values():
        assert np.hypot(*(about - middle).T).min() < 0.005


def test_the_bar_is_as_long_as_it_says() -> None:
    with pikepdf.open(BytesIO(strips_pdf("a4"))) as pdf:
        lines = [path for how, _, path in _paths(pdf.pages[0]) if how == "S" and len(path) == 2]
    level = [abs(end[0] - start[0]) for start, end in lines if abs(end[1] - start[1]) < 1e-6]
    assert sum(abs(each - APART) < 0.005 for each in level) == 2


def test_a_paper_on_which_the_strips_would_be_cut_off_is_refused() -> None:
    """Two strips of 268 mm with their words take 180 mm of height; the shortest roll is cut as long as they are."""
    assert [each for each in ("a4", "letter", "a0", "roll") if not hold_strips(each)] == []
    assert not hold_strips("180 x 200 mm")
    with pytest.raises(MakersFault, match="too small"):
        strips_pdf("180 x 200 mm")
