"""From nothing to a guitar of one's own on the bench: shop, body, head, hole, braces and bridge off a scan of its plan.

What the hands do is counted, and reckoned at the rates of S. K. Card, T. P. Moran and A. Newell, "The keystroke-level
model for user performance time with interactive systems", Communications of the ACM 23, 1980 (from memory): a key
0.28 s (a typist of 40 words a minute), a place pointed at 1.1 s, a thought before each 1.35 s. A number read off the
plan with a ruler takes 8 s more, which is a guess. What the machine takes is measured.
"""

import re
import tempfile
from collections.abc import Sequence
from dataclasses import dataclass
from html import unescape
from pathlib import Path
from time import perf_counter
from urllib.error import HTTPError
from urllib.request import HTTPCookieProcessor, OpenerDirector, Request, build_opener
from uuid import UUID

import numpy as np

from benchmarks.bench import _served, _token
from gramil.bench.plan_typed import COLUMNS, FIELDS, MORE_FIELDS
from gramil.description.reading import parse_description, read_description, read_shop
from gramil.description.shop.new_shop import KINDS, usual_names
from gramil.drawings.body import piece_body_outline
from gramil.drawings.marks import Drawing
from gramil.prints.whole import figures_of, findings_of
from gramil.writers.pdf import whole_pdf

KEY, POINT, THOUGHT, RULER = 0.28, 1.1, 1.35, 8.0
EDGE = "----" + UUID(int=7).hex
BRACES = (
    ("X left", ((227, -66.6), (407, 133.2)), "7", "13"),
    ("X right", ((227, 66.6), (407, -133.2)), "7", "13"),
    ("bar 1", ((415, 30), (470, -60)), "6", "10"),
    ("bar 2", ((440, 30), (476, -30)), "6", "9"),
    ("upper", ((60, -50), (60, 50)), "12", "13"),
)
"""Name, two points on its middle line (along from the neck end, across), width and height, in mm."""
HOLE = [(165 + 46 * np.cos(turn), 46 * np.sin(turn)) for turn in np.linspace(0, 2 * np.pi, 6, endpoint=False)]
BRIDGE = [(322, -76), (322, 76), (354, 76), (354, -76)]
HEAD = [(-225, 21.5), (-235, 23), (-249, 32), (-295, 34.5), (-349, 35.5), (-381, 33.5), (-386, 18), (-388, 0)]
"""Half of the head, from the nut on; the nut lies so far before the body."""


@dataclass
class Hands:
    """What was typed and pointed at, how many numbers a ruler gave, and how long the machine took."""

    keys: int = 0
    points: int = 0
    thoughts: int = 0
    measured: int = 0
    machine: float = 0.0

    def types(self, *written: str, ruled: int = 0) -> None:
        """Fields that are typed, each with a key to go on, and how many of them a ruler gave."""
        self.keys += sum(len(each) + 1 for each in written)
        self.thoughts += len(written)
        self.measured += ruled

    def taps(self, count: int = 1) -> None:
        """Places or buttons that are tapped."""
        self.points += count
        self.thoughts += count

    @property
    def seconds(self) -> float:
        """All of it together."""
        hands = KEY * self.keys + POINT * self.points + THOUGHT * self.thoughts + RULER * self.measured
        return hands + self.machine


def run() -> None:
    """Print how long it takes, and what `check` then says."""
    with tempfile.TemporaryDirectory() as folder, _served(Path(folder)) as (address, _):
        opener, hands = build_opener(HTTPCookieProcessor()), Hands()
        _shop(opener, address, hands)
        page = _laid(opener, address, hands)
        text = _begun(opener, address, hands, page)
    found = findings_of(figures_of(parse_description(text, "the new guitar"), read_shop()))
    stops = [each.name for each in found if each.severity == "stop"]
    print(f"keys {hands.keys}, places {hands.points}, thoughts {hands.thoughts}, by ruler {hands.measured}")
    print(f"the machine                       {hands.machine:8.1f} s")
    print(f"a guitar of one's own, all of it  {hands.seconds / 60:8.1f} min (budget 10); stops: {stops or 'none'}")


def _shop(opener: OpenerDirector, address: str, hands: Hands) -> None:
    """A shop of one saw and one wire, with a jig and a piece of wood."""
    typed = {"name": "The barn", "jig slots": "63.5", "checked slots": "2026-11-02", "places": "shop, loft"}
    piece = {"piece 1": "A7", "wood 1": "red maple", "length 1": "760", "width 1": "90", "thickness 1": "25"}
    hands.types(*typed.values(), *piece.values(), ruled=4)
    hands.taps(4)
    asked = {**typed, **piece, "units": "mm", "paper": "a4"}
    kept = [(kind, None, name.encode()) for kind in KINDS for name in usual_names(kind)]
    _sent_parts(
        opener, address, "/shop/new", hands, [*kept, *((key, None, text.encode()) for key, text in asked.items())]
    )


def _laid(opener: OpenerDirector, address: str, hands: Hands) -> str:
    """The scan sent, its scale and its outline laid, and gone on with; gives the page of the plan."""
    (outline,) = read_description(_example()).outlines
    pdf = whole_pdf(Drawing("body", "Body", "the face", piece_body_outline((outline,)), scale=1.0), str, heading="Body")
    hands.taps(3)
    where, first = _sent_file(opener, address, "/picture", hands, "plan.pdf", pdf)
    size = re.search(r'viewBox="0 0 (\d+) (\d+)"', first)
    assert size is not None
    ring = _on_page(opener, where, int(size[1]), int(size[2]))
    low, high = ring.min(axis=0), ring.max(axis=0)
    along, across = outline.length, 2 * max(y for _, y in outline.points)
    lengths = sorted((along, across), reverse=bool(high[0] - low[0] > high[1] - low[1]))
    fields = {
        "laid": "nothing",
        "points": _places(ring[np.linspace(0, len(ring), 24, endpoint=False).astype(int)]),
        "along": _places(np.array([low, (high[0], low[1])])),
        "across": _places(np.array([low, (low[0], high[1])])),
        "along_length": f"{lengths[0]:.2f} mm",
        "across_length": f"{lengths[1]:.2f} mm",
        "braces": _places(_on_body([place for _, line, *_ in BRACES for place in line], ring, along)),
        "hole": _places(_on_body(HOLE, ring, along)),
        "bridge": _places(_on_body(BRIDGE, ring, along)),
        "head": _places(_on_body(HEAD, ring, along)),
    }
    hands.taps(24 + 4 + 2 * len(BRACES) + len(HOLE) + len(BRIDGE) + len(HEAD) + 8)
    hands.types(fields["along_length"], fields["across_length"], ruled=2)
    return _sent(opener, address, where.removeprefix(address), hands, fields)


def _begun(opener: OpenerDirector, address: str, hands: Hands, page: str) -> str:
    """Braces given their names and sizes beside all that was laid, and a new instrument begun with it."""
    fields = {key: _value(page, key) for key in (*FIELDS, *MORE_FIELDS)}
    fields |= {key: unescape(_of(rf'name="{key}"[^>]*>(.*?)</textarea>', page)) for key in COLUMNS}
    rows = []
    for row, (name, _, width, height) in zip(fields["braces"].splitlines(), BRACES, strict=True):
        _, rest = row.split(",", 1)
        rows.append(f"{name},{rest}, {width}, {height}")
        hands.types(name, width, height, ruled=2)
    hands.types("Moss")
    hands.taps(6)
    _sent(
        opener, address, "/plan", hands,
        {**fields, "braces": "\n".join(rows), "name": "Moss", "start": "small", "begin": "1"},
    )  # fmt: skip
    with opener.open(f"{address}/instrument/1/description.toml") as answer:
        return str(answer.read().decode())


def _on_body(places: Sequence[tuple[float, float]], ring: np.ndarray, length: float) -> np.ndarray:
    """Where places on the body are seen on the page, which lies along or across it."""
    low, high = ring.min(axis=0), ring.max(axis=0)
    lies = int(np.argmin(high - low) == 0)  # the row in which the body runs along the page
    per_mm = (high - low)[lies] / length
    at = (ring[:, lies] - low[lies]) / (high - low)[lies]
    ends = [np.ptp(ring[near, 1 - lies]) for near in (at < 0.2, at > 0.8)]
    forward = bool(ends[0] < ends[1])
    body = np.array(places, dtype=float)
    seen = np.empty_like(body)
    seen[:, lies] = low[lies] + per_mm * body[:, 0] if forward else high[lies] - per_mm * body[:, 0]
    treble = -1 if forward != bool(lies) else 1
    seen[:, 1 - lies] = (low + high)[1 - lies] / 2 + treble * per_mm * body[:, 1]
    return seen


def _example() -> Path:
    from importlib.resources import files

    return Path(str(files("gramil").joinpath("data", "examples", "tarn.toml")))


def _on_page(opener: OpenerDirector, where: str, wide: int, tall: int) -> np.ndarray:
    """Places on the outline as it is seen on the rendered page, in its pixels: the darkest ring's own rim."""
    from io import BytesIO

    from PIL import Image
    from scipy import ndimage

    shown = np.asarray(Image.open(BytesIO(opener.open(where.split("?")[0] + "/shown-1.jpg").read())).convert("L"))
    ink, _ = ndimage.label(shown < 128, structure=np.ones((3, 3)))
    largest = max(
        ndimage.find_objects(ink), key=lambda box: (box[0].stop - box[0].start) * (box[1].stop - box[1].start)
    )
    number = np.bincount(ink[largest][ink[largest] > 0]).argmax()
    rows, columns = np.nonzero(ink == number)
    places = np.column_stack((columns * wide / shown.shape[1], rows * tall / shown.shape[0]))
    about = places - (places.min(axis=0) + places.max(axis=0)) / 2
    return places[np.argsort(np.arctan2(about[:, 1], about[:, 0]))]


def _places(points: np.ndarray) -> str:
    return " ".join(f"{x:.1f},{y:.1f}" for x, y in points.tolist())


def _value(page: str, key: str) -> str:
    return _of(rf'name="{key}" value="([^"]*)"', page)


def _of(pattern: str, page: str) -> str:
    found = re.search(pattern, page, re.DOTALL)
    return found[1] if found else ""


def _sent(opener: OpenerDirector, address: str, path: str, hands: Hands, fields: dict[str, str]) -> str:
    return _sent_parts(opener, address, path, hands, [(key, None, value.encode()) for key, value in fields.items()])[1]


def _sent_file(
    opener: OpenerDirector, address: str, path: str, hands: Hands, name: str, content: bytes
) -> tuple[str, str]:
    return _sent_parts(opener, address, path, hands, [("picture", name, content)])


def _sent_parts(
    opener: OpenerDirector, address: str, path: str, hands: Hands, parts: list[tuple[str, str | None, bytes]]
) -> tuple[str, str]:
    """A form sent as a browser sends it; gives the address and the text of the page that answers."""
    body = b""
    for key, name, content in [("token", None, _token(opener, address).encode()), *parts]:
        file = f'; filename="{name}"' if name else ""
        body += f'--{EDGE}\r\nContent-Disposition: form-data; name="{key}"{file}\r\n\r\n'.encode() + content + b"\r\n"
    kind = {"content-type": f"multipart/form-data; boundary={EDGE}", "origin": address}
    started = perf_counter()
    try:
        answer = opener.open(Request(address + path, body + f"--{EDGE}--\r\n".encode(), kind))
    except HTTPError as refused:
        raise SystemExit(f"{path}: {re.findall('<li.*?</li>', refused.read().decode())}") from None
    text = answer.read().decode()
    hands.machine += perf_counter() - started
    return answer.geturl(), text
