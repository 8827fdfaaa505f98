"""The PDF read back from its operators, laid together by its crosses as a maker would, and measured."""

import re
from dataclasses import dataclass, field
from io import BytesIO
from itertools import pairwise
from math import hypot, pi

import numpy as np
import pikepdf
import pytest

from gramil.drawings.marks import Arc, Circle, Drawing, Line, Polyline, Words
from gramil.faults import MakersFault
from gramil.notice import NOTICE
from gramil.writers.pdf import tiled_pdf

HEADING = "Tarn, scale length 630.00 mm"
MM = 25.4 / 72.0
TRUE = 0.005
HAIR = 0.1
SHEETS = {"a4": (210.0, 297.0), "letter": (215.9, 279.4), "a3": (297.0, 420.0)}
PAPERS = [*SHEETS, "roll"]


@dataclass
class Page:
    """A page in mm as printed: paths on the drawing (clipped) and beside it, boxes of the map, words and where."""

    size: tuple[float, float]
    drawn: list[np.ndarray] = field(default_factory=list)
    beside: list[np.ndarray] = field(default_factory=list)
    map: list[np.ndarray] = field(default_factory=list)
    words: list[tuple[str, np.ndarray]] = field(default_factory=list)
    clip: np.ndarray | None = None

    def says(self, words: str) -> bool:
        return any(words in text for text, _ in self.words)


def matrix(operands):
    a, b, c, d, e, f = map(float, operands)
    return np.array([[a, b, 0], [c, d, 0], [e, f, 1]])


def characters(font):
    """From a font's codes, of two bytes each, to characters, by the table that the file itself carries."""
    table = font.ToUnicode.read_bytes().decode("latin1")
    found = {}
    for block in re.findall(r"beginbfchar(.*?)endbfchar", table, re.DOTALL):
        for code, char in re.findall(r"<(\w+)>\s*<(\w+)>", block):
            found[int(code, 16)] = bytes.fromhex(char).decode("utf-16-be")
    return found


def said(parts, font):
    """The characters of a piece of text, whose letters may be moved between."""
    codes = b"".join(bytes(part) for part in parts if isinstance(part, pikepdf.String))
    return "".join(font.get(int.from_bytes(codes[at : at + 2], "big"), "\ufffd") for at in range(0, len(codes), 2))


def bezier(p, q, r, s):
    t = np.linspace(0, 1, 97)[1:, None]
    return (1 - t) ** 3 * p + 3 * (1 - t) ** 2 * t * q + 3 * (1 - t) * t**2 * r + t**3 * s


def in_the_foot(run, box):
    """Whether this is a page of the map: a rectangle in the strip of 26 mm above the margin of 8."""
    level = all(min(abs(b - a)) < 1e-4 for a, b in pairwise(np.array(run)))
    return len(run) == 5 and level and box[1][1] < 34.0 * 1.11


def read_page(page, stretch):
    """The page as a printer with this stretch along x and y puts it on paper."""
    x0, y0, x1, y1 = map(float, page.MediaBox)
    found = Page(((x1 - x0) * MM * stretch[0], (y1 - y0) * MM * stretch[1]))
    fonts = {name: characters(font) for name, font in page.Resources.Font.items()}
    now, stack, clip = np.eye(3), [], None
    path, pending, text_at, font = [], False, np.eye(3), None

    def at(x, y, frame):
        point = np.array([float(x), float(y), 1.0]) @ frame
        return point[:2] * MM * np.array(stretch)

    for operands, operator in pikepdf.parse_content_stream(page):
        name = str(operator)
        if name == "q":
            stack.append((now, clip))
        elif name == "Q":
            now, clip = stack.pop()
        elif name == "cm":
            now = matrix(operands) @ now
        elif name == "m":
            path.append([at(*operands, now)])
        elif name == "l":
            path[-1].append(at(*operands, now))
        elif name == "c":
            points = [at(*operands[i : i + 2], now) for i in (0, 2, 4)]
            path[-1].extend(bezier(path[-1][-1], *points))
        elif name == "h":
            path[-1].append(path[-1][0])
        elif name in ("W", "W*"):
            pending = True
        elif name in ("S", "s", "n"):
            for run in path:
                box = np.array([np.min(run, axis=0), np.max(run, axis=0)])
                if pending:
                    if np.any(np.ptp(box, axis=0) < np.array(found.size) - HAIR):
                        clip = found.clip = box
                elif name != "n" and clip is None and in_the_foot(run, box):
                    found.map.append(box)
                elif name != "n":
                    (found.beside if clip is None else found.drawn).append(np.array(run))
            path, pending = [], False
        elif name == "BT":
            text_at = np.eye(3)
        elif name == "Tm":
            text_at = matrix(operands)
        elif name == "Tf":
            font = fonts[str(operands[0])]
        elif name in ("Tj", "TJ"):
            parts = operands[0] if name == "TJ" else operands
            found.words.append((said(parts, font), at(0, 0, text_at @ now)))
    return found


def read(data, printer_scale=(1.0, 1.0)):
    """Every page as printed by a printer that is off by `printer_scale` along the sheet's short and long side."""
    pages = []
    for page in pikepdf.open(BytesIO(data)).pages:
        x0, y0, x1, y1 = map(float, page.MediaBox)
        wide, tall = (x1 - x0) * MM, (y1 - y0) * MM
        upright = abs(wide - 610.0) < 0.01 or (wide < tall and abs(tall - 610.0) > 0.01)
        pages.append(read_page(page, printer_scale if upright else printer_scale[::-1]))
    return pages


def clipped(page):
    """The straight runs that the page's window leaves of what is drawn."""
    (left, low), (right, high) = page.clip
    for run in page.drawn:
        for a, b in pairwise(run):
            t0, t1 = 0.0, 1.0
            for p, q in (
                (a[0] - b[0], a[0] - left),
                (b[0] - a[0], right - a[0]),
                (a[1] - b[1], a[1] - low),
                (b[1] - a[1], high - a[1]),
            ):
                if p == 0:
                    t0 = t0 if q >= 0 else 2.0
                elif p < 0:
                    t0 = max(t0, q / p)
                else:
                    t1 = min(t1, q / p)
            if t0 <= t1:
                yield a + (b - a) * t0, a + (b - a) * t1


def crosses(page):
    """The registration crosses: the names of the sheets that meet there, and where each lies on the page."""
    found = {}
    for run in page.beside:
        if len(run) == 5 and np.allclose(np.ptp(run, axis=0), 3.0, atol=1e-3):
            middle = (run.min(axis=0) + run.max(axis=0)) / 2
            names = [
                (hypot(*(at - middle)), text) for text, at in page.words if re.fullmatch(r"([A-Z]\d+ ?){2,}", text)
            ]
            found.setdefault(min(names)[1], []).append(middle)
    return {name: sorted(places, key=lambda place: place[1]) for name, places in found.items()}


def laid_together(pages):
    """All straight runs in the frame of the first page, each page shifted until the crosses that it shares meet."""
    shifts = {0: np.zeros(2)}
    marks = [crosses(page) for page in pages]
    while len(shifts) < len(pages):
        before = len(shifts)
        for i, mine in enumerate(marks):
            for j in [j for j in shifts if i not in shifts]:
                shared = [
                    (a, b)
                    for name in mine.keys() & marks[j].keys()
                    for a, b in zip(mine[name], marks[j][name], strict=True)
                ]
                if shared:
                    moves = np.array([b + shifts[j] - a for a, b in shared])
                    assert np.ptp(moves, axis=0).max() < TRUE, "the crosses of two sheets do not meet"
                    shifts[i] = moves.mean(axis=0)
                    break
        assert len(shifts) > before, "a sheet shares no cross with the others"
    return [(a + shifts[i], b + shifts[i]) for i, page in enumerate(pages) for a, b in clipped(page)]


def along(pieces, start, end):
    """The pieces that lie on a straight line within the tolerance, as shares of its length."""
    start, end = np.array(start), np.array(end)
    length = hypot(*(end - start))
    unit = (end - start) / length
    found = []
    for a, b in pieces:
        off = [abs(unit[0] * (p - start)[1] - unit[1] * (p - start)[0]) for p in (a, b)]
        if max(off) < TRUE and hypot(*(b - a)) > 1e-9:
            found.append(sorted((float((a - start) @ unit), float((b - start) @ unit))))
    return sorted(found), length


def covers(pieces, start, end):
    """Whether pieces on the line from start to end reach its ends within the tolerance and leave no gap."""
    found, length = along(pieces, start, end)
    found = [piece for piece in found if piece[1] > TRUE and piece[0] < length - TRUE]
    reached = 0.0
    for low, high in found:
        if low - TRUE > reached:
            return False
        reached = max(reached, high)
    return bool(found) and abs(found[0][0]) < TRUE and abs(reached - length) < TRUE


@pytest.mark.parametrize("printer_scale", [(1.0, 1.0), (0.996, 1.004)])
@pytest.mark.parametrize("paper", PAPERS)
def test_the_whole_board_laid_together(board, resolve, paper, printer_scale):
    pages = read(tiled_pdf([board], resolve, paper, printer_scale, heading=HEADING), printer_scale)
    pieces = laid_together(pages)
    upright = [(a, b) for a, b in pieces if abs(a[0] - b[0]) < TRUE and abs(abs(a[1] - b[1]) - 45.5) < TRUE]
    nut = max(((a + b) / 2 for a, b in upright), key=lambda middle: middle[0])
    pieces = [(a - nut, b - nut) for a, b in pieces]
    corners = board.marks[0].points
    for start, end in zip(corners, (*corners[1:], corners[0]), strict=True):
        assert covers(pieces, start, end)
    for slot in [mark for mark in board.marks if mark.layer == "slots"]:
        assert covers(pieces, slot.start, slot.end)
    assert not covers(pieces, (0.0, -22.75), (500.0, -30.05))


def squares(page):
    """Closed squares beside the drawing, larger than a cross: their sides along x and y."""
    sides = [np.ptp(run, axis=0) for run in page.beside if len(run) == 5 and np.allclose(run[0], run[-1])]
    return [(float(x), float(y)) for x, y in sides if min(x, y) > 45.0]


def bars(page):
    """Level lines beside the drawing that are meant to be 100 mm."""
    runs = [np.ptp(run, axis=0) for run in page.beside if len(run) == 2]
    return [float(x) for x, y in runs if y < 1e-6 and 80.0 < x < 120.0]


@pytest.mark.parametrize("printer_scale", [(1.0, 1.0), (0.985, 1.02)])
@pytest.mark.parametrize("paper", PAPERS)
def test_bars_and_squares_are_exact(board, section, resolve, paper, printer_scale):
    for drawing in (board, section):
        pages = read(tiled_pdf([drawing], resolve, paper, printer_scale, heading=HEADING), printer_scale)
        for page in pages:
            assert bars(page) == [pytest.approx(100.0, abs=1e-3)]
        (proven,) = [page for page in pages if squares(page)]
        assert proven is pages[0]
        ((wide, tall),) = squares(proven)
        assert min(abs(wide - 50.0), abs(wide - 100.0)) < 1e-3
        assert tall == pytest.approx(wide, abs=2e-3)


@pytest.mark.parametrize("paper", PAPERS)
def test_an_inch_shop_proves_its_prints_by_four_inches(board, section, resolve, paper):
    """4 in are 101.6 mm, 2 in are 50.8 mm; a tick each quarter of an inch, the whole inches twice as tall."""
    for drawing in (board, section):
        pages = read(tiled_pdf([drawing], resolve, paper, (0.985, 1.02), heading=HEADING, unit="in"), (0.985, 1.02))
        for page in pages:
            assert bars(page) == [pytest.approx(101.6, abs=1e-3)]
            assert page.says("4 in along") or page.says("4 in across")
            assert not page.says("100 mm")
            assert not page.says("millimet")
        ((wide, tall),) = squares(pages[0])
        assert min(abs(wide - 50.8), abs(wide - 101.6)) < 1e-3
        assert tall == pytest.approx(wide, abs=2e-3)


def test_an_uncorrected_print_measures_what_the_printer_does(board, resolve):
    (page, *_) = read(tiled_pdf([board], resolve, "a4", heading=HEADING), (0.99, 1.01))
    assert bars(page) == [pytest.approx(101.0, abs=1e-3)]


@pytest.mark.parametrize("paper", PAPERS)
def test_pages_are_the_paper(board, resolve, paper):
    for page in read(tiled_pdf([board], resolve, paper, heading=HEADING)):
        if paper == "roll":
            assert any(side == pytest.approx(610.0, abs=1e-3) for side in page.size)
        else:
            assert sorted(page.size) == pytest.approx(SHEETS[paper], abs=1e-3)


def test_a_roll_is_one_page_however_long(resolve):
    long = Drawing("a", "Long", "the face", (Line((0.0, 0.0), (1900.0, 40.0), "outline"),))
    (page,) = read(tiled_pdf([long], resolve, "roll", heading=HEADING))
    assert page.size[0] > 1900.0
    assert page.size[1] == pytest.approx(610.0, abs=1e-3)


def test_it_asks_for_no_scaling_and_carries_its_faces(board, resolve):
    with pikepdf.open(BytesIO(tiled_pdf([board], resolve, "a4", heading=HEADING))) as document:
        assert document.Root.ViewerPreferences.PrintScaling == "/None"
        for page in document.pages:
            for font in page.Resources.Font.values():
                assert "/FontFile2" in font.DescendantFonts[0].FontDescriptor


def test_every_page_says_whose_it_is_and_how_to_print_it(board, resolve):
    pages = read(tiled_pdf([board], resolve, "a4", heading=HEADING))
    assert len(pages) == 2
    for page, name in zip(pages, ("A1", "A2"), strict=True):
        assert page.says(HEADING)
        assert page.says("Print at 100 %, no fit to page.")
        assert page.says(f"sheet {name}, ")
        assert page.says("Seen from the face.")
        assert [text for text, _ in page.words].count(name) == 2
    assert pages[0].says("depth 3.25 mm.")
    assert any(page.says("500.00 mm") for page in pages)


def test_a_corrected_page_says_what_it_was_corrected_for(board, resolve):
    (page, *_) = read(tiled_pdf([board], resolve, "a4", (0.996, 1.002), heading=HEADING))
    assert page.says(
        "Corrected for a printer that makes 100 mm 100.20 mm along the long side (Y) and 99.60 mm along the"
    )


def test_an_inch_page_says_in_inches_what_it_was_corrected_for(board, resolve):
    """4 in times 1.002 and 0.996."""
    (page, *_) = read(tiled_pdf([board], resolve, "letter", (0.996, 1.002), heading=HEADING, unit="in"))
    assert page.says("Corrected for a printer that makes 4 in 4.0080 in along the long side (Y) and 3.9840 in along")


def test_a_stretched_drawing_says_so(section, resolve):
    (page,) = read(tiled_pdf([section], resolve, "a4", heading=HEADING))
    assert page.says("Not true scale: heights are drawn 4 times too tall.")
    assert not page.says("True scale")


def test_the_way_round_that_takes_fewest_pages(resolve):
    tall = Drawing("a", "Tall", "the face", (Line((0.0, 0.0), (150.0, 230.0), "outline"),))
    (page,) = read(tiled_pdf([tall], resolve, "a4", heading=HEADING))
    assert page.size[0] < page.size[1]
    lying = Drawing("a", "Lying", "the face", (Line((0.0, 0.0), (260.0, 60.0), "outline"),))
    (page,) = read(tiled_pdf([lying], resolve, "a4", heading=HEADING))
    assert page.size[0] > page.size[1]


def test_pages_with_nothing_on_them_are_left_out(resolve):
    far = Drawing("a", "Far", "the face", (Circle((0.0, 0.0), 20.0, "pins"), Circle((900.0, 900.0), 20.0, "pins")))
    pages = read(tiled_pdf([far], resolve, "a4", heading=HEADING))
    assert len(pages) <= 4
    assert all(list(clipped(page)) for page in pages)
    assert all(len(page.map) == len(pages) for page in pages)


def test_a_full_drawing_gets_a_page_to_prove_the_print(resolve):
    marks = [Line((0.0, 20.0 * i), (540.0, 20.0 * i), "slots") for i in range(24)]
    first, *rest = read(tiled_pdf([Drawing("a", "Full", "the face", tuple(marks))], resolve, "a4", heading=HEADING))
    assert squares(first) == [(pytest.approx(100.0, abs=1e-3), pytest.approx(100.0, abs=1e-3))]
    assert first.clip is None
    assert not any(squares(page) for page in rest)
    assert first.says("so that the crosses of one name meet")


def test_ink_on_the_edge_of_a_window_keeps_its_width(board, resolve):
    """What is clipped reaches half a millimetre past the window, on each side: 281 by 168 mm on A4, lying."""
    (page, *_) = read(tiled_pdf([board], resolve, "a4", heading=HEADING))
    assert np.ptp(page.clip, axis=0) == pytest.approx([297.0 - 16.0 + 1.0, 210.0 - 16.0 - 26.0 + 1.0], abs=1e-3)


@pytest.mark.parametrize("radius", [3.0, 90.0])
def test_circles_and_arcs_are_round(resolve, radius):
    round_marks = (Circle((0.0, 0.0), radius, "pins"), Arc((0.0, 0.0), radius, -0.3, 0.5 + pi, "cut"))
    (page,) = read(tiled_pdf([Drawing("a", "Round", "the face", round_marks)], resolve, "a3", heading=HEADING))
    whole, part = page.drawn
    middle = (whole.min(axis=0) + whole.max(axis=0)) / 2
    for run in (whole, part):
        assert np.hypot(*(run - middle).T) == pytest.approx(radius, abs=1e-3)
    assert part[0] - middle == pytest.approx([radius * np.cos(-0.3), radius * np.sin(-0.3)], abs=1e-3)
    assert part[-1] - middle == pytest.approx([radius * np.cos(0.5 + pi), radius * np.sin(0.5 + pi)], abs=1e-3)


@pytest.mark.parametrize("scale", [(9.96, 1.0), (1.0, 0.0), (float("nan"), 1.0), (1.0, float("inf"))])
def test_a_scale_that_no_printer_has_is_refused(board, resolve, scale):
    with pytest.raises(MakersFault, match="printer scale"):
        tiled_pdf([board], resolve, "a4", scale, heading=HEADING)


def test_any_words_leave_a_whole_file(resolve):
    odd = Drawing(
        "a", "\x00(\\) \ud800 é ⅛ 木 " * 40, "the face", (Words((0.0, 0.0), ")\n(\\"), Polyline((), "outline"))
    )
    (page,) = read(tiled_pdf([odd], resolve, "letter", heading="(\\\n" * 200))
    assert page.says(") (\\")


def test_no_drawing_line_is_changed_by_the_page_before_it(board, section, resolve):
    """The second drawing is the same page whether or not another comes first."""
    alone = read(tiled_pdf([section], resolve, "a4", heading=HEADING))[-1]
    after = read(tiled_pdf([board, section], resolve, "a4", heading=HEADING))[-1]
    assert len(alone.drawn) == len(after.drawn)
    assert all(np.allclose(a, b) for a, b in zip(alone.drawn, after.drawn, strict=True))


@pytest.mark.parametrize("paper", ["a4", "a3", "letter", "roll"])
def test_every_page_says_that_nothing_is_promised(board, resolve, paper):
    for page in read(tiled_pdf([board], resolve, paper, heading=HEADING)):
        assert NOTICE in [words for words, _ in page.words]
