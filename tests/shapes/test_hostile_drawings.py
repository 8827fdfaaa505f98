"""Drawings that no drawing program should write: what takes a machine with it is refused before it is opened.

All are read one after the other, each in a branch of one program with limits of its own.
"""

import io
import json
import math
from collections.abc import Callable, Iterable, Iterator
from typing import Any

import ezdxf
import pytest
from ezdxf.document import Drawing
from tests.walks import these

HEAD = (
    '<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="400mm" height="300mm" '
)
READ = """
import resource
from pathlib import Path
import gramil.shapes.traced_dxf, gramil.shapes.traced_svg
from gramil.faults import MakersFault
from gramil.shapes.traced_outline import Reading, read_outline

def reading(file):
    resource.setrlimit(resource.RLIMIT_CPU, (int(words[1]), int(words[1])))
    try:
        text = file.read_bytes().decode("utf-8", errors="replace")
        outline = read_outline(text, file.name, Reading(file=file.name)).outline
        return f"READ {outline.length:.1f} x {outline.width:.1f}"
    except MakersFault as fault:
        return str(fault)

in_branches(reading, sorted(Path(words[0]).iterdir()))
"""
LINE = "  0\nLINE\n  5\n{:X}\n100\nAcDbEntity\n  8\n0\n100\nAcDbLine\n 10\n{}\n 20\n{}\n 11\n{}\n 21\n{}\n"
"""A line as it stands in a drawing: its handle, and the places of its ends."""
MOST = 500
"""MB for any drawing, the program itself among them."""
SECONDS = 10
"""Of the processor, for any drawing: twice what the slowest takes on a slow machine."""


def svg(body: str, page: str = 'viewBox="0 0 400 300"', before: str = "") -> str:
    return f"{before}{HEAD}{page}>{body}</svg>"


def dxf(draw: Callable[[Drawing], object], lines: Iterable[tuple[float, float, float, float]] = ()) -> str:
    """What is drawn as a file; `lines`, by the places of both ends, are written into it one after the other."""
    document = ezdxf.new("R2010")
    document.header["$INSUNITS"] = 4
    draw(document)
    stream = io.StringIO()
    document.write(stream)
    before, entities, rest = stream.getvalue().partition("  2\nENTITIES\n")
    return before + entities + "".join(LINE.format(0x10000 + row, *ends) for row, ends in enumerate(lines)) + rest


def ring(count: int, long: float = 200.0, wide: float = 100.0) -> list[tuple[float, float]]:
    return [(long * math.cos(math.tau * k / count), wide * math.sin(math.tau * k / count)) for k in range(count)]


def nested_blocks(document: Drawing) -> None:
    """Ten lines ten blocks deep, each showing the next ten times."""
    for level in range(10):
        block = document.blocks.new(f"B{level}")
        for each in range(10):
            block.add_line((0, each), (9, each)) if level == 0 else block.add_blockref(f"B{level - 1}", (each, 0))
    document.modelspace().add_blockref("B9", (0, 0))


def block_in_itself(document: Drawing) -> None:
    for one, other in (("A", "B"), ("B", "A")):
        document.blocks.new(one).add_blockref(other, (0, 0))
    document.modelspace().add_blockref("A", (0, 0))


def block_array(document: Drawing) -> None:
    document.blocks.new("A").add_line((0, 0), (1, 1))
    places = {"row_count": 30000, "column_count": 30000, "row_spacing": 0, "column_spacing": 0}
    document.modelspace().add_blockref("A", (0, 0), dxfattribs=places)


def loose_lines(count: int) -> str:
    places = ((row % 100 * 3, row // 100 * 3 + 300) for row in range(count))
    return dxf(
        lambda d: d.modelspace().add_lwpolyline(ring(360), close=True), ((x, y, x + 2, y + 1) for x, y in places)
    )


def one_place() -> str:
    return dxf(lambda _: None, ((0, 0, math.cos(row), math.sin(row)) for row in range(9000)))


def star(count: int) -> list[tuple[float, float]]:
    corners = ring(count)
    return [corners[k * (count // 2) % count] for k in range(count)]


def zigzag(count: int) -> list[tuple[float, float]]:
    """A comb of long teeth, aslant, that never crosses itself; every piece's box overlaps every other's."""
    teeth = [(k * 0.01 + (200 if k % 2 else 0), -k * 0.01 + (200 if k % 2 else 0)) for k in range(count)]
    return [*teeth, (count * 0.005 - 50, -count * 0.005 - 50)]


def used(levels: int, each: int) -> str:
    groups = "".join(f'<g id="g{n}">' + f'<use href="#g{n - 1}"/>' * each + "</g>" for n in range(1, levels))
    return f'<defs><path id="g0" d="M0 0 H9 V9 Z"/>{groups}</defs><use href="#g{levels - 1}"/>'


def laughs() -> str:
    entities = "".join(f'<!ENTITY e{n} "{f"&e{n - 1};" * 10}">' for n in range(1, 9))
    return f'<!DOCTYPE svg [<!ENTITY e0 "M0 0 H9 V9 Z ">{entities}]>'


def big_entity() -> str:
    return f'<!DOCTYPE svg [<!ENTITY e "{"M0 0 H9 V9 Z " * 8000}">]>'


def extruded(document: Drawing) -> None:
    document.modelspace().add_lwpolyline(
        [(k, k % 7, 0.9) for k in range(19_000)], format="xyb", dxfattribs={"extrusion": (0.1, 0.2, 1)}
    )


HOSTILE: dict[str, tuple[Callable[[], str], str]] = {
    "nested blocks.dxf": (lambda: dxf(nested_blocks), "more than 25000 shapes"),
    "block in itself.dxf": (lambda: dxf(block_in_itself), "shows itself"),
    "block array.dxf": (lambda: dxf(block_array), "more than 25000 shapes"),
    "lines of text.dxf": (lambda: "0\nLINE\n" * 700_000, "more than 1200000 lines of text"),
    "loose lines.dxf": (lambda: loose_lines(10_000), "READ 400.0 x 200.0"),
    "one place.dxf": (one_place, "three lines or more end at (0.000, 0.000)"),
    "to and fro.dxf": (
        lambda: dxf(lambda d: d.modelspace().add_lwpolyline(zigzag(16_001), close=True)), "so often that its crossings"
    ),
    "many crossings.dxf": (
        lambda: dxf(lambda d: d.modelspace().add_lwpolyline(star(9001), close=True)),
        "crosses itself",
    ),
    "far place.dxf": (
        lambda: dxf(lambda d: d.modelspace().add_lwpolyline([*ring(90), (1e300, 0)], close=True)), "1e+300 units"
    ),
    "far circle.dxf": (lambda: dxf(lambda d: d.modelspace().add_circle((0, 0), 1e200)), "1e+200 units"),
    "long polyline.dxf": (
        lambda: dxf(lambda d: d.modelspace().add_lwpolyline(ring(20_400), close=True)), "more than 20000 points"
    ),
    "many arcs.dxf": (lambda: dxf(extruded), "more than 20000 points"),
    "many circles.dxf": (
        lambda: dxf(lambda d: [d.modelspace().add_circle((k % 9, k % 7), 90) for k in range(9000)]),
        "more than 400000 points",
    ),
    "digits.dxf": (
        lambda: dxf(lambda d: d.modelspace().add_circle((0, 0), 90)).replace("90.0", "9" * 400_000),
        "more than 40 digits",
    ),
    "spline.dxf": (
        lambda: dxf(lambda d: d.modelspace().add_open_spline(ring(500), degree=400)), "more than 25 bends"
    ),
    "wild.dxf": (
        lambda: dxf(lambda d: d.modelspace().add_lwpolyline(ring(19_999, 200, 0.2), close=True)), "READ 400.0 x 0.4"
    ),
    "teeth.dxf": (
        lambda: dxf(lambda d: d.modelspace().add_lwpolyline(zigzag(5001), close=True)), "so often that its crossings"
    ),
    "just under.dxf": (lambda: loose_lines(24_900), "READ 400.0 x 200.0"),
    "just under.svg": (
        lambda: svg(f'<path d="M0 0{"c9 0 0 9 1 1" * 59_000}"/>' + '<ellipse rx="90" ry="60"/>'),
        "more than 20000 points",
    ),
    "many shapes.svg": (
        lambda: svg('<path d="M500 1h1"/>' * 24_900 + '<ellipse rx="90" ry="60"/>'), "three lines or more end"
    ),
    "nested uses.svg": (lambda: svg(used(10, 10)), "more than 25000 shapes"),
    "laughs.svg": (lambda: svg('<path d="&e8;"/>', before=laughs()), "entities in it are made of entities"),
    "big entity.svg": (lambda: svg('<path d="&e;"/>' * 90, before=big_entity()), "letters in its entities"),
    "long path.svg": (lambda: svg(f'<path d="M0 0{"h1v1" * 300_000}Z"/>'), "more than 60000 lines and curves"),
    "letters.svg": (lambda: svg(f'<path d="M0 0{" 10.25,20.25" * 200_000}Z"/>'), "more than 1500000 letters"),
    "used path.svg": (
        lambda: svg(f'<path id="p" d="M0 0{" 9,9" * 9000}"/>' + '<use href="#p"/>' * 900),
        "counted as often as they show",
    ),
    "transforms.svg": (
        lambda: svg(f'<g transform="{"translate(0,0)" * 9000}">' + '<circle r="9"/>' * 900 + "</g>"),
        "counted as often as they show",
    ),
    "open brackets.svg": (lambda: svg(f'<circle r="9" transform="{"matrix(" * 200_000}"/>'), "not closed"),
    "style.svg": (
        lambda: svg(f"<style>{'a' * 400_000}{'/*' * 400_000}</style>" + '<ellipse rx="90" ry="60"/>'),
        "READ 180",
    ),
    "style rules.svg": (
        lambda: svg("<style>" + ".a{display:inline}" * 9000 + "</style>" + '<circle r="90"/>'),
        "letters in its style sheet",
    ),
    "elements.svg": (lambda: svg("<g/>" * 400_000), "more than 250000 elements"),
    "deep.svg": (lambda: svg("<g>" * 100_000 + "</g>" * 100_000), "too deep"),
    "far path.svg": (lambda: svg('<path d="M0 0 C 1e300 0 0 1e300 9 9 Z"/>'), "units from the drawing's origin"),
    "digits.svg": (lambda: svg(f'<circle r="{"9" * 400_000}"/>'), "more than 40 digits"),
    "spaces.svg": (lambda: svg(f'<polygon points="{"1" * 40}{" " * 900_000}"/>'), "no lines"),
}  # fmt: skip


NEAR_ANOTHER = {"loose lines.dxf", "teeth.dxf", "many shapes.svg", "just under.svg"}
"""Those that differ from another by their count alone, or that another limit refuses: left to a long walk."""
TRIED = these([*HOSTILE], [name for name in HOSTILE if name not in NEAR_ANOTHER])


@pytest.fixture(scope="module")
def readings(
    tmp_path_factory: pytest.TempPathFactory, bounded: Callable[..., Any]
) -> dict[str, tuple[str, int, float, float]]:
    folder = tmp_path_factory.mktemp("hostile")
    for name in TRIED:
        (folder / name).write_text(HOSTILE[name][0](), encoding="utf-8")
    return dict(_read(bounded(READ, folder, SECONDS).said))


def _read(said: str) -> Iterator[tuple[str, tuple[str, int, float, float]]]:
    for line in said.splitlines():
        name, *rest = json.loads(line)
        yield name, tuple(rest)


@pytest.mark.slow
@pytest.mark.parametrize("name", TRIED)
def test_a_hostile_drawing_is_read_or_refused(name: str, readings: dict[str, tuple[str, int, float, float]]) -> None:
    said, status, peak, _ = readings[name]
    assert (status, HOSTILE[name][1] in said) == (0, True), said[:500]
    assert peak < MOST
