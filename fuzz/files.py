"""Files of other programs: loggers' in many dialects, drawings, and exports of the store brought in again."""

import io
import math
import random
from contextlib import suppress
from datetime import UTC, datetime, timedelta
from functools import cache
from importlib.resources import as_file
from pathlib import Path

import ezdxf.filemanagement
from tests.every_key.descriptions import EXAMPLES

from fuzz.descriptions import astray
from fuzz.kind import Kind
from gramil.description.reading import read_description
from gramil.doorway.bringing_in import import_files
from gramil.doorway.export import export_files
from gramil.doorway.verify import verify_open
from gramil.faults import MakersFault
from gramil.shapes.traced_outline import Reading, read_outline
from gramil.shop.instruments import add_instrument
from gramil.shop.shop_in_store import bring_in_shop
from gramil.shop.stock import Blank, add_blank
from gramil.store.opening import create_store
from gramil.store.writing import Hand
from gramil.wood.air_log import read_air_log

NOW = datetime(2026, 11, 2, 9, 30, tzinfo=UTC)
TIMES = (
    "%Y-%m-%d %H:%M:%S",
    "%d.%m.%Y %H:%M",
    "%m/%d/%Y %I:%M %p",
    "%d/%m/%y %H:%M",
    "%Y-%m-%dT%H:%M:%SZ",
    "%Y%m%d %H%M",
)
COLUMNS = (
    ("time", "TempC", "Hum(%)"),
    ("Datum", "temperature F", "rh"),
    ("#", "Date-Time", "humidity %", "temperature C"),
    (),
)
MISSING = ("", "--", "NaN", "ERR", "-999", "9" * 50)


def _log(chance: random.Random) -> bytes:
    """A log in some dialect: separator, decimal mark, order, step, marks of missing values, lines ahead."""
    separator, shown, columns = chance.choice(",;\t"), chance.choice(TIMES), chance.choice(COLUMNS)
    start, step = datetime(2025, 10, 25, 20), timedelta(minutes=chance.choice((1, 5, 10, 30, 60, 120)))
    rows = []
    for row in range(chance.choice((1, 2, 20, 120))):
        values = [f"{chance.gauss(19, 2):.1f}", f"{chance.gauss(45, 9):.0f}"]
        cells = [(start + row * step).strftime(shown), *values]
        if chance.random() < 0.05:
            cells[chance.randrange(3)] = chance.choice(MISSING)
        rows.append(separator.join(cell.replace(".", ",") if separator == ";" else cell for cell in cells))
    chance.choice((lambda: None, rows.reverse, lambda: chance.shuffle(rows), lambda: rows.extend(rows[-9:])))()
    ahead = chance.choice(([], ["Logger 7", ""], ["# made here"] * 30))
    content = "\n".join([*ahead, separator.join(columns), *rows]).encode(
        chance.choice(("utf-8", "utf-8-sig", "utf-16", "latin-1"))
    )
    return astray(chance, content, 2) if chance.random() < 0.5 else content


def _reads_log(content: bytes, folder: Path) -> None:
    for log in (content.decode("utf-8", errors="replace"), io.BytesIO(content)):
        with suppress(MakersFault):
            read_air_log(log, "x.csv")


SVG = (
    '<svg xmlns="http://www.w3.org/2000/svg" width="400mm" height="300mm" viewBox="0 0 400 300">'
    "<style>.a{{display:{}}}</style>"
    '<defs><path id="p" d="M50 20 L250 20 A50 50 0 0 1 250 120 L50 120 A50 50 0 0 1 50 20 Z"/></defs>'
    '<g id="g" transform="translate(9 {}) scale({})"><use href="#p"/></g><circle class="a" r="{}"/></svg>'
)


def _svg(chance: random.Random) -> bytes:
    odd = (1, 0, -1, 90, "1e308", "nan", "none", "1e-300", "9" * 60)
    return astray(chance, SVG.format(*(chance.choice(odd) for _ in range(4))).encode(), 4)


@cache
def _plan() -> bytes:
    document = ezdxf.filemanagement.new("R2010")
    document.header["$INSUNITS"] = 4
    space = document.modelspace()
    block = document.blocks.new("A")
    block.add_arc((250, 70), 50, 270, 90)
    block.add_lwpolyline([(50, 120, 0.2), (250, 120, 0)], format="xyb")
    space.add_blockref("A", (0, 0))
    space.add_line((50, 20), (250, 20))
    space.add_spline([(50 + 9 * math.sin(k), 20 + k, 0) for k in range(9)])
    space.add_ellipse((20, 30), major_axis=(150, 0), ratio=0.6)
    stream = io.StringIO()
    document.write(stream)
    return stream.getvalue().encode()


def _dxf(chance: random.Random) -> bytes:
    """Values of the drawing's own part changed: its tables before are the library's business."""
    head, mark, body = _plan().partition(b"BLOCKS")
    lines = body.split(b"\n")
    for _ in range(chance.randint(1, 5)):
        row = chance.randrange(len(lines))
        lines[row] = chance.choice(
            (b"0", b"-1", b"1e300", b"nan", b"99999999999", b"A", b"INSERT", b"", lines[row] * 2)
        )
    return head + mark + b"\n".join(lines)


def _reads_drawing(name: str, content: bytes) -> None:
    for reading in (Reading(), Reading(length=500.0), Reading(layer="p")):
        with suppress(MakersFault):
            assert read_outline(content.decode("utf-8", errors="replace"), name, reading).outline.area > 0


@cache
def _export(folder: Path) -> dict[str, str]:
    (folder / "whole.gramil").unlink(missing_ok=True)
    with create_store(folder / "whole.gramil") as store, as_file(EXAMPLES) as examples:
        bring_in_shop(store, (examples / "shop.toml").read_text("utf-8"), "shop.toml", Hand(NOW))
        text = (examples / "tarn.toml").read_text("utf-8")
        add_instrument(
            store, read_description(examples / "tarn.toml").instrument.instrument.name, text, Hand(NOW, why="made")
        )
        add_blank(store, Blank("top", "spruce", 560.0, 220.0, 4.2), Hand(NOW))
        return export_files(store)


def _imports(content: bytes, folder: Path) -> None:
    """What is brought in passes `verify`; what is refused leaves the store as it was."""
    chance = random.Random(content)
    files = dict(_export(folder))
    text = files["store.toml"].encode()
    lines = text.split(b"\n")
    for _ in range(chance.randint(1, 3)):
        row = chance.randrange(len(lines))
        key, sign, _ = lines[row].partition(b" = ")
        odd = (
            b"0",
            b"-1",
            b"9223372036854775808",
            b'""',
            b'"x"',
            b"nan",
            b"[]",
            b"{}",
            b'"0001-01-01T00:00:00+14:00"',
            b"1e400",
        )
        lines[row] = key + sign + chance.choice(odd) if sign and chance.random() < 0.7 else b""
    files["store.toml"] = b"\n".join(lines).decode("utf-8", errors="replace")
    path = folder / "x.gramil"
    path.unlink(missing_ok=True)
    with create_store(path) as store:
        with suppress(MakersFault):
            import_files(store, files, Hand(NOW))
        assert verify_open(store) == ()


KINDS = (
    Kind("logs", _log, _reads_log, 1.5),
    Kind("svg", _svg, lambda content, _: _reads_drawing("x.svg", content)),
    Kind("dxf", _dxf, lambda content, _: _reads_drawing("x.dxf", content)),
    Kind("imports", lambda chance: str(chance.random()).encode(), _imports),
)
