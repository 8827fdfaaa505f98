"""Words and figures on the drawings stand clear of lines and of each other, on instruments small, large, fanned and
left-handed, as they are drawn and as the sheets show them.
"""

import itertools
import re
from collections.abc import Callable, Iterator
from math import radians
from xml.etree import ElementTree

import pytest
from shapely.geometry import Polygon
from tests.drawings.conftest import figures_for
from tests.lying_over import lying_over
from tests.twelve import in_courses

from gramil.change.overlay import differences, overlaid
from gramil.drawings.marks import Anchor, Circle, Line, Polyline
from gramil.formatter import Formatter
from gramil.graph import Figures
from gramil.pack import TALLEST
from gramil.prints.papers import is_template
from gramil.prints.whole import drawings_of, setups_of
from gramil.sheets.page_size import room_for_drawing
from gramil.writers.beside import labels_on
from gramil.writers.legible import legible
from gramil.writers.lettering import Lettering, corners
from gramil.writers.plain import Plain, plain

TOUCH = 0.5
"""In mm2: boxes of words are a little larger than the words."""
Changes = tuple[tuple[str, str], ...]
TRIALS: dict[str, tuple[str, Changes]] = {
    "tarn": ("tarn", ()),
    "left": ("tarn", (('handed = "right"', 'handed = "left"'),)),
    "inches": ("fell", ()),
    "fanned": ("tarn", (("length = 630 ", "bass = 690\ntreble = 660\nsquare_at = 7 "),)),
    "high": ("tarn", (("[markers]", "[heights]\naction_bass = 4.5\naction_treble = 3.2\n[markers]"),)),
    "twelve": (
        "tarn",
        (("width = 45.5", "width = 48"), ("spread = 38.5", "spread = 41"), ("width = 56 ", "width = 57.5 ")),
    ),
    "facets": ("tarn", (("[markers]", "[carve]\nfacets = 9\nstations = [1, 3, 5, 7, 9]\n[markers]"),)),
}


@pytest.fixture
def trial(text_of: Callable[[str], str], derive_text: Callable[..., Figures]) -> Callable[[str], Figures]:
    def derived(name: str) -> Figures:
        source, changes = TRIALS[name]
        text = text_of(source)
        for old, new in changes:
            assert old in text
            text = text.replace(old, new)
        return derive_text(in_courses(text) if name == "twelve" else text, text_of("shop"))

    return derived


def clashes(drawing, read) -> list[tuple[str, str]]:
    words = [(each.text, Polygon(corners(each))) for each in plain(drawing, read) if isinstance(each, Lettering)]
    return [
        (one, other)
        for (one, box), (other, beside) in itertools.combinations(words, 2)
        if box.intersection(beside).area > TOUCH
    ]


@pytest.mark.parametrize("name", TRIALS)
def test_no_words_lie_over_a_line_or_other_words(trial: Callable[[str], Figures], name: str) -> None:
    figures = trial(name)
    read = labels_on(drawings_of(figures), Formatter(figures, figures["instrument_units"]))
    found = {each.name: lying_over(plain(each, read)) for each in drawings_of(figures)}
    assert {name: pairs for name, pairs in found.items() if pairs} == {}


def test_no_difference_runs_into_other_words(
    trial: Callable[[str], Figures], text_of: Callable[[str], str], derive_text: Callable[..., Figures]
) -> None:
    after, before = trial("tarn"), derive_text(text_of("tarn-plan"), text_of("shop"))
    read = differences(Formatter(after).text, before, after)
    old = {each.name: each for each in drawings_of(before)}
    for new in drawings_of(after):
        if is_template(new) and new.name in old and new.name != "gauges":
            assert clashes(overlaid(old[new.name], new, before, after, 0.05), read) == [], new.name


@pytest.mark.parametrize("name", ["tarn", "fell", "scree", "mere", "corrie"])
def test_no_words_on_a_sheets_picture_lie_over_a_line_or_other_words(name: str) -> None:
    """As the page shows it: letters enlarged until they are read at arm's length, numbers for what finds no room; and
    the lower one, for a page with less room.
    """
    figures = figures_for(name)
    formatter = Formatter(figures, figures["instrument_units"])
    shown = {setup.drawing.address: figures[setup.drawing] for setup in setups_of(figures) if setup.drawing}
    found = {}
    for drawing in shown.values():
        read = labels_on((drawing,), formatter)
        picture = legible(drawing, read, (room_for_drawing("a4"), TALLEST), formatter.first)
        shapes = [each for each in (picture, picture.low) if each is not None]
        found[drawing.name] = [over for each in shapes for over in lying_over(list(marks_in(each.svg)))]
    assert {drawing: over for drawing, over in found.items() if over} == {}


def marks_in(svg: str) -> Iterator[Plain]:
    """The marks of an SVG document, y turned up again."""
    for group in ElementTree.fromstring(svg).iterfind("{*}g"):
        layer = group.get("id", "")
        for each in group:
            x, y, a, b, c, d, r = (float(each.get(key, 0)) for key in ("x", "y", "x1", "y1", "x2", "y2", "r"))
            match each.tag.rpartition("}")[2]:
                case "line":
                    yield Line((a, -b), (c, -d), layer)
                case "circle":
                    yield Circle((float(each.get("cx", 0)), -float(each.get("cy", 0))), r, layer)
                case "polygon" | "polyline" as kind:
                    pairs = [tuple(map(float, pair.split(","))) for pair in each.get("points", "").split()]
                    yield Polyline(tuple((px, -py) for px, py in pairs), layer, closed=kind == "polygon")
                case "text":
                    turn = re.match(r"rotate\((\S+)", each.get("transform", ""))
                    angle = -radians(float(turn[1])) if turn else 0.0
                    height = float(each.get("font-size", 0)) * CAPITAL
                    anchor = ANCHORS[each.get("text-anchor", "start")]
                    yield Lettering(
                        (x, -y), each.text or "", height, angle, anchor, layer, each.get("class") == "figure"
                    )


ANCHORS: dict[str, Anchor] = {"start": "left", "middle": "middle", "end": "right"}
CAPITAL = 0.76
"""Height of a capital over the size of the type, as measured on the shipped faces."""
