"""A body of ours printed, rendered, stretched one way and traced: a flat scan of a plan is read right."""

import io
import subprocess
import sys
from collections.abc import Callable
from functools import cache
from pathlib import Path

import numpy as np
import pikepdf
import pypdfium2
import pytest
from numpy.typing import NDArray
from PIL import Image, ImageDraw

from gramil.description.plan.laid import LaidPlaces, laid_plan
from gramil.description.plan.parts import PlanBrace
from gramil.faults import MakersFault
from gramil.photographs.ground import KnownLength
from gramil.photographs.picture_file import read_picture
from gramil.photographs.plan import Grounds, Laid, TracedPlan, TraceInputs, grounds, traced

from .printed import TARN, on_page, pdf, ring_of
from .rendered import off_the_line

Array = NDArray[np.float64]
STRETCH = 1.006
"""A scanner that is 0.6 % out, across its bed."""
CLICKS = 24
OFF = 3.0
HALVES = np.array([(x - TARN.start, y) for x, y in TARN.half.place(TARN.half.sample(0.001, 0.2)).tolist()])


@cache
def scan(dots: int) -> tuple[bytes, float]:
    """The printed page as a scanner gives it (PNG), and pixels to the millimetre."""
    document = pypdfium2.PdfDocument(pdf())
    page = document[0].render(scale=dots / 72, grayscale=True).to_pil().convert("L")
    wide = page.resize((round(page.width * STRETCH), page.height), Image.Resampling.BICUBIC)
    out = io.BytesIO()
    wide.save(out, "PNG", compress_level=1)
    return out.getvalue(), dots / 25.4


def pixels(places: Array, per_mm: float) -> Array:
    """Where places of the page, mm from its lower left corner, lie on the scan."""
    _, (_, high) = on_page()
    return np.column_stack((places[:, 0] * per_mm * STRETCH, (high - places[:, 1]) * per_mm)) - 0.5


def near(places: Array, seed: int, off: float = OFF) -> Array:
    """Places as they are clicked, up to so many mm beside them."""
    random = np.random.default_rng(seed)
    angle, by = random.uniform(0, 2 * np.pi, len(places)), off * random.uniform(0, 1, len(places))
    return places + np.column_stack((np.cos(angle), np.sin(angle))) * by[:, None]


@cache
def read(dots: int) -> tuple[Grounds, TracedPlan]:
    content, per_mm = scan(dots)
    ring, _ = on_page()
    low, high = ring.min(axis=0), ring.max(axis=0)
    ends = pixels(np.array([(low[0], low[1]), (high[0], low[1]), (low[0], low[1]), (low[0], high[1])]), per_mm).tolist()
    along, across = (high - low).tolist()
    known = (KnownLength(tuple(ends[0]), tuple(ends[1]), along), KnownLength(tuple(ends[2]), tuple(ends[3]), across))
    ground = grounds([read_picture(content, "scan")], TraceInputs((), known))
    clicks = near(ring[np.linspace(0, len(ring), CLICKS, endpoint=False).astype(int)], dots)
    return ground, traced(ground, [Laid(x, y) for x, y in pixels(clicks, per_mm).tolist()])


def off_the_drawing(found: TracedPlan) -> Array:
    """How far each place of the outline that was traced is from the one that was drawn."""
    from gramil.shapes.outline_through import through_points

    corners = tuple(corner - 1 for corner in found.outline.corners)
    half = through_points(found.outline.points, corners).half
    return off_the_line(ring_of(half.place(half.sample(0.01, 1.0))), ring_of(HALVES))


@pytest.mark.parametrize(("dots", "rms"), [(150, 0.2), (300, 0.15)])
def test_a_printed_outline_comes_back_from_a_stretched_scan(dots: int, rms: float) -> None:
    _, found = read(dots)
    off = off_the_drawing(found)
    assert np.sqrt((off**2).mean()) < rms
    assert (np.abs(off) < found.outline.unsure).mean() > 0.95
    assert found.outline.unsure < 1.0
    assert found.outline.length == pytest.approx(TARN.length, abs=2**0.5 * found.outline.unsure)


def other(change: Callable[[Image.Image], Image.Image], move: Callable[[Array], Array]) -> TracedPlan:
    """The scan at 150 dots to the inch changed as a picture, and all places with it."""
    content, per_mm = scan(150)
    out = io.BytesIO()
    change(Image.open(io.BytesIO(content))).save(out, "PNG", compress_level=1)
    ring, _ = on_page()
    low, high = ring.min(axis=0), ring.max(axis=0)
    corners = np.array([(low[0], low[1]), (high[0], low[1]), (low[0], low[1]), (low[0], high[1])])
    ends, (along, across) = move(pixels(corners, per_mm)).tolist(), (high - low).tolist()
    known = (KnownLength(tuple(ends[0]), tuple(ends[1]), along), KnownLength(tuple(ends[2]), tuple(ends[3]), across))
    ground = grounds([read_picture(out.getvalue(), "scan")], TraceInputs((), known))
    clicks = move(pixels(near(ring[np.linspace(0, len(ring), CLICKS, endpoint=False).astype(int)], 3), per_mm))
    return traced(ground, [Laid(x, y) for x, y in clicks.tolist()])


def test_a_turned_scan_and_a_negative_are_read_alike() -> None:
    tall = Image.open(io.BytesIO(scan(150)[0])).height
    turned = other(
        lambda page: page.transpose(Image.Transpose.ROTATE_270), lambda at: at[:, ::-1] * (-1, 1) + (tall - 1, 0)
    )
    assert np.sqrt((off_the_drawing(turned) ** 2).mean()) < 0.15
    negative = other(lambda page: page.point(lambda light: 255 - light), lambda at: at)
    assert np.sqrt((off_the_drawing(negative) ** 2).mean()) < 0.15
    assert any("as a negative is" in line for line in negative.told)


def test_of_a_cropped_scan_what_is_not_there_is_told() -> None:
    wide = Image.open(io.BytesIO(scan(150)[0])).width
    with pytest.raises(MakersFault, match="outside the picture"):
        other(lambda page: page.crop((0, 0, wide // 2, page.height)), lambda at: at)
    ring, _ = on_page()
    cut = pixels(ring, scan(150)[1])[:, 0].max() - 40

    def blank(page: Image.Image) -> Image.Image:
        page.paste(255, (round(cut), 0, page.width, page.height))
        return page

    try:
        told = other(blank, lambda at: at).told
    except MakersFault as fault:
        told = tuple(each.what for each in fault.faults)
    assert any("No ink for over 15" in line or "halves differ" in line for line in told), told


def test_without_the_second_length_it_would_be_out() -> None:
    """The stretch is there: by one length alone the body would come out over 2 mm too long or too narrow."""
    ring, _ = on_page()
    laid = pixels(ring, scan(150)[1])
    shape = np.ptp(laid, axis=0) / np.ptp(ring, axis=0)
    assert abs(shape[0] / shape[1] - STRETCH) < 1e-3


def on_paper(along: Array) -> Array:
    """Places on the body (along from the neck end, across) where the printed page has them."""
    ring, _ = on_page()
    wide, tall = np.ptp(ring, axis=0)
    assert wide > tall  # it is printed lying, its neck end at the side on which it is narrower
    middle = (ring[:, 1].min() + ring[:, 1].max()) / 2
    at = ring[:, 0] - ring[:, 0].min()
    first = np.ptp(ring[at < wide / 4, 1]) < np.ptp(ring[at > 3 * wide / 4, 1])
    x = ring[:, 0].min() + along[:, 0] if first else ring[:, 0].max() - along[:, 0]
    return np.column_stack((x, middle + along[:, 1] * (1 if first else -1)))


def test_hole_braces_bridge_and_head_are_laid_over_the_scan() -> None:
    ground, found = read(150)
    per_mm = scan(150)[1]

    def laid(places: list[tuple[float, float]]) -> Array:
        there = pixels(on_paper(np.array(places)), per_mm)
        return ground.places([Laid(x, y) for x, y in there.tolist()])

    turns = np.linspace(0, 2 * np.pi, 8, endpoint=False)
    bar, hole = ((300.0, 40.0), (400.0, -60.0)), [(165 + 46 * np.cos(t), 46 * np.sin(t)) for t in turns]
    head = [(-230.0, 21.5), (-260.0, 32.0), (-300.0, 34.0), (-350.0, 35.0), (-393.0, 0.0)]
    corners = [(322.0, -76.0), (322.0, 76.0), (354.0, 76.0), (354.0, -76.0)]
    places = {"hole": laid(hole), "braces": laid(list(bar)), "bridge": laid(corners), "head": laid(head)}
    told = laid_plan(ground, found.outline, LaidPlaces(places))
    parts = told.parts
    assert parts.hole is not None
    assert (parts.hole.centre, parts.hole.diameter) == pytest.approx((165, 92), abs=0.4)
    (brace,) = parts.braces
    assert isinstance(brace, PlanBrace)
    assert np.array(brace.line) == pytest.approx(np.array(bar), abs=0.5)
    assert brace.held_to == "saddle"
    assert parts.bridge is not None
    assert (parts.bridge.length, parts.bridge.width) == pytest.approx((152, 32), abs=0.4)
    assert told.front_at == pytest.approx(322, abs=0.4)
    assert parts.head is not None
    assert np.array(parts.head.points) == pytest.approx(np.array([(-230 - x, y) for x, y in head]), abs=0.5)
    assert parts.outline is not None
    assert parts.outline.within == found.outline.unsure
    assert "within" in told.told[0]
    inside = laid_plan(ground, found.outline, LaidPlaces(places, from_inside=True)).parts.braces[0]
    assert np.array(inside.line) == pytest.approx(np.array(bar) * (1, -1), abs=0.5)
    for part, wrong, said in (
        ("braces", [(300.0, 40.0)], "one point alone"),
        ("hole", hole[:2], "2 points on the hole"),
        ("hole", [*hole[:6], (260.0, 30.0)], "off a circle"),
        ("bridge", corners[:1], "1 points on the bridge"),
        ("head", [(x, (-1) ** row * 30.0) for row, (x, _) in enumerate(head)], "both halves"),
    ):
        with pytest.raises(MakersFault, match=said):
            laid_plan(ground, found.outline, LaidPlaces({part: laid(wrong)}))


def locked() -> bytes:
    out = io.BytesIO()
    with pikepdf.open(io.BytesIO(pdf())) as file:
        file.save(out, encryption=pikepdf.Encryption(owner="a", user="b"))
    return out.getvalue()


def pages(count: int, wide: float = 600, tall: float = 800) -> bytes:
    out = io.BytesIO()
    with pikepdf.new() as file:
        for _ in range(count):
            file.add_blank_page(page_size=(wide, tall))
        file.save(out)
    return out.getvalue()


@pytest.mark.parametrize(
    ("content", "page", "said"),
    [
        (locked, None, "locked with a password"),
        (lambda: pages(3), None, "has 3 pages"),
        (lambda: pages(3), 4, "no page 4"),
        (lambda: pages(1), 2, "one page"),
        (lambda: pdf()[:400], None, "cut short"),
        (lambda: b"%PDF-1.7 nothing", None, "cut short"),
        (lambda: pages(1, 14_000, 14_000), None, "194 by 194 inches"),
    ],
)
def test_a_pdf_that_cannot_be_read_is_told(content: object, page: int | None, said: str) -> None:
    with pytest.raises(MakersFault, match=said):
        read_picture(content(), "plan.pdf", page)  # type: ignore[operator]


def test_a_page_of_a_pdf_is_as_fine_as_is_kept() -> None:
    assert read_picture(pages(3), "plan.pdf", 2).size == (2500, 3334)
    large = read_picture(pages(1, 3400, 2400), "plan.pdf")
    assert large.size[0] * large.size[1] <= 40_100_000


@pytest.mark.slow
def test_a_scan_of_a_hundred_megapixels_stays_within_500_megabytes(tmp_path: Path) -> None:
    picture = Image.new("L", (10_000, 10_000), 250)
    ImageDraw.Draw(picture).ellipse((500, 500, 9000, 9500), outline=20, width=12)
    path = tmp_path / "scan.png"
    picture.convert("RGB").save(path, compress_level=1)
    code = (
        "from pathlib import Path\n"
        "from gramil.photographs.picture_file import read_picture\n"
        "print(read_picture(Path(words[0]).read_bytes()).size)"
    )
    program = Path(__file__).parent.parent / "bounded_program.py"
    told = subprocess.run([sys.executable, str(program), code, str(path)], capture_output=True, text=True, check=True)
    size, held = told.stdout.splitlines()
    assert size == "(5000, 5000)"
    assert float(held) < 500
