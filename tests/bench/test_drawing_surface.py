"""The drawing as the surface that one works on: parts to tap, dimensions and findings on it, distances measured."""

import re
from html import unescape

import httpx
import pytest

from gramil import names as n
from gramil.bench.between import Caught, caught, distance
from gramil.bench.plan_view import side_down
from gramil.bench.things import things_on
from gramil.drawings.marks import Circle, Line, Polyline

from .conftest import post


class Drawn:
    """A thing as `caught` reads it: words and lines."""

    def __init__(self, words: str, *marks: object) -> None:
        self.words, self.marks = words, marks


LOW = Drawn("the low rule", Line((0.0, 0.0), (100.0, 0.0), "slots"))
HIGH = Drawn("the high rule", Line((0.0, 10.0), (100.0, 10.0), "slots"))
LEANING = Drawn("the leaning rule", Line((0.0, 0.0), (30.0, 40.0), "slots"))
HOLE = Drawn("the hole", Circle((50.0, 50.0), 10.0, "cut"))


def test_an_end_or_a_centre_is_caught_before_an_edge_and_an_edge_before_nothing() -> None:
    assert caught([LOW], (1.0, 0.5), 3.0).at == (0.0, 0.0)
    assert caught([LOW], (1.0, 0.5), 3.0).words == "the end of the low rule"
    assert caught([LOW], (40.0, 2.0), 3.0).at == (40.0, 0.0)
    assert caught([HOLE], (51.0, 51.0), 3.0).words == "the centre of the hole"
    assert caught([HOLE], (62.0, 50.0), 3.0).at == pytest.approx((60.0, 50.0))
    far = caught([LOW], (40.0, 20.0), 3.0)
    assert (far.at, far.words) == ((40.0, 20.0), "where nothing is drawn")


def test_between_two_edges_that_run_alike_the_distance_is_square_to_them() -> None:
    """Tapped 30 along on one and 80 along on the other, 10 apart."""
    found = distance(caught([LOW, HIGH], (30.0, 1.0), 2.0), caught([LOW, HIGH], (80.0, 9.0), 2.0))
    assert found.length == pytest.approx(10.0, abs=1e-12)
    assert found.words == "the edge of the low rule to the edge of the high rule"


def test_from_a_point_to_an_edge_the_distance_is_square_to_the_edge() -> None:
    """The rule leans 3 along to 4 up; from its far end's level at (50, 0): the foot is at (18, 24), 40 away (3-4-5)."""
    found = distance(Caught((50.0, 0.0), "a pin"), caught([LEANING], (18.0, 24.0), 1.0))
    assert found.end == pytest.approx((18.0, 24.0))
    assert found.length == pytest.approx(40.0, abs=1e-12)
    turned = distance(caught([LEANING], (18.0, 24.0), 1.0), Caught((50.0, 0.0), "a pin"))
    assert turned.length == pytest.approx(40.0, abs=1e-12)


def test_a_curve_in_chords_has_no_corners_and_a_box_has_four() -> None:
    """A ring of 64 chords turns by 5.6 degrees at each; a box by 90."""
    from math import cos, pi, sin

    ring = Polyline(tuple((10 * cos(2 * pi * k / 64), 10 * sin(2 * pi * k / 64)) for k in range(64)), "outline", True)
    assert caught([Drawn("a ring", ring)], (10.0, 0.1), 1.0).words == "the edge of a ring"
    box = Polyline(((0.0, 0.0), (8.0, 0.0), (8.0, 4.0), (0.0, 4.0)), "outline", True)
    assert caught([Drawn("a box", box)], (7.8, 3.9), 1.0).at == (8.0, 4.0)


def test_measured_between_fret_lines_it_is_what_the_scale_says(example) -> None:
    """*Tarn*, 630: from fret 5 to fret 7, 630 (2^(-5/12) - 2^(-7/12)) = 51.4943 mm, each caught half a mm beside it."""
    figures = example("tarn")
    things = things_on(figures, side_down(figures))
    five, seven = (630 * (1 - 2 ** (-fret / 12)) for fret in (5, 7))
    found = distance(caught(things, (five + 0.5, 8.0), 2.0), caught(things, (seven - 0.5, -12.0), 2.0))
    assert found.words == "fret 5 to fret 7"
    assert found.length == pytest.approx(630 * (2 ** (-5 / 12) - 2 ** (-7 / 12)), abs=1e-3)


def test_a_measured_distance_is_the_dimension_that_it_measures(example) -> None:
    """The nut is written as 45.5 wide, the soundhole as 92 across, its centre 165 from the body's edge."""
    figures = example("tarn")
    things = things_on(figures, side_down(figures))
    nut = caught(things, (-0.2, 22.0), 2.0), caught(things, (-0.2, -22.0), 2.0)
    assert distance(*nut).length == pytest.approx(45.5, abs=1e-3)
    edge = float(figures[n.body_edge])
    centre = caught(things, (edge + 164.0, 0.5), 3.0)
    assert centre.words == "the centre of the soundhole"
    rim = caught([each for each in things if each.name == "soundhole"], (edge + 165 + 45.0, 0.0), 3.0)
    assert distance(centre, rim).length == pytest.approx(46.0, abs=1e-3)


def test_what_is_measured_stands_in_the_page_and_its_address_in_the_makers_unit(demo: httpx.Client) -> None:
    """The address is all that there is: opened anew, on another device too, it says the same; 630 / 2 = 315, / 25.4."""
    at = {"measure": ["0,0,0", "315,0,0"]}
    page = demo.get("/instrument/1", params=at).text
    assert '<b class="number">315.00 mm</b>' in page
    assert "12.402 in" in page
    assert page.count('class="measure-line"') == 1
    part = demo.get("/instrument/1/between", params=at, headers={"hx-request": "true"}).text
    assert '<b class="number">315.00 mm</b>' in part
    assert "Now tap the other place" in demo.get("/instrument/1/between", params={"measure": "0,0,0"}).text
    post(demo, "/unit", unit="in")
    assert '<b class="number">12.402 in</b>' in demo.get("/instrument/1", params=at).text


@pytest.mark.parametrize("written", ["", "x", "1,2", "nan,0,0", "1e9,0,0", "0,0,-5", "1,2,3,4"])
def test_any_place_in_the_address_gives_a_page(demo: httpx.Client, written: str) -> None:
    assert demo.get("/instrument/1/between", params={"measure": [written, written]}).status_code == 200


def test_every_part_on_the_drawing_opens_its_card(demo: httpx.Client) -> None:
    page = demo.get("/instrument/1").text
    shapes = {
        unescape(name): unescape(to) for to, name in re.findall(r'href="([^"]+)" data-card data-part="([^"]+)"', page)
    }
    assert {"head", "board", "nut", "neck", "top", "rim", "soundhole", "bridge", "bridge plate"} <= shapes.keys()
    assert {"X treble", "tone bar 1", "neck block", "tail block"} <= shapes.keys()
    for name, to in shapes.items():
        answer = demo.get(to)
        assert answer.status_code == 200, name
        assert answer.text.count('<li class="figure') >= 2, name
        assert "Its work and papers" in answer.text, name
    board = demo.get(shapes["board"]).text
    assert "Saw the fret slots" in board or "slot" in board.lower()
    assert demo.get("/instrument/1/part", params={"name": "lid"}).status_code == 404


def test_dimensions_that_a_maker_asks_for_stand_on_the_drawing(demo: httpx.Client) -> None:
    """As *Tarn*'s file has them: scale 630, nut 45.5, body 490 long; frets' thirteenth at 630 (1 - 2^(-13/12))."""
    page = demo.get("/instrument/1").text
    sizes = "".join(re.findall(r'<g class="sizes \w+">.*?</g>\s*</g>', page, re.DOTALL))
    for words in ("scale 630.00 mm", "45.50 mm", "body 490.00 mm", "to the join 332.6"):
        assert words in sizes, words


def test_each_finding_stands_once_where_it_applies_and_opens(demo: httpx.Client) -> None:
    page = demo.get("/instrument/1").text
    listed = re.findall(r'id="finding-(\d+)"', page)
    for level in ("near", "whole"):
        marks = re.search(rf'<g class="marks {level}">(.*?)</g></g></a></g>', page, re.DOTALL)[1]
        numbers = " ".join(re.findall(r'data-numbers="([^"]+)"', marks)).split()
        assert sorted(numbers) == sorted(listed)
        for to in re.findall(r'href="([^"]+)"', marks):
            assert 'class="word">' in demo.get(unescape(to)).text
    assert len(listed) > 0
    assert demo.get("/instrument/1/found", params={"n": "99"}).status_code == 404


def test_a_finding_on_a_brace_stands_at_the_brace(example) -> None:
    from gramil.bench.placing import spot_of

    figures = example("tarn")
    things = things_on(figures, side_down(figures))
    brace = next(each for each in figures[n.brace_list] if each.name == "tone bar 1")
    x, y = spot_of(figures, 'brace_list["tone bar 1"].height', things)
    across = sorted(each[1] for each in brace.footprint)
    assert across[0] < y < across[-1]
    assert x > float(figures[n.body_edge])


def test_a_draft_can_be_flicked_between_old_and_new(demo: httpx.Client) -> None:
    page = demo.get("/instrument/1?set=bridge.length%3D170").text
    assert '<g class="gone">' in page
    assert '<g class="new">' in page
    assert '<g class="stays">' in page
    assert 'class="gone"' not in demo.get("/instrument/1").text


def test_keep_and_drop_come_before_what_moved_in_a_bar_of_their_own(demo: httpx.Client) -> None:
    page = demo.get("/instrument/1?set=scale.length%3D650").text
    bar = page.index('class="keepbar"')
    assert bar < page.index(">Keep</button>") < page.index(">Drop</a>") < page.index("Nothing is saved yet")
    assert "<details" not in page[page.index('id="moved"') : bar]


def test_after_keep_the_page_offers_to_take_it_back(demo: httpx.Client) -> None:
    from .test_instrument_page import kept

    page = kept(demo, "/instrument/1", "scale.length=650", "longer", "A").text
    assert "Kept as revision 2." in page
    change = re.search(r'action="/record/undo".*?name="change" value="(\d+)"', page, re.DOTALL)[1]
    back = post(demo, "/record/undo", change=change, back="/instrument/1?x=0")
    assert "Revision 1," in back.text
    assert back.url.path == "/instrument/1"
    assert "Kept as revision" not in demo.get("/instrument/1?kept=1").text


@pytest.mark.parametrize("name", ["tarn", "fell", "mere"])
def test_upright_figures_on_the_drawing_stand_clear_of_one_another(name: str, example) -> None:
    """As the page draws them: 13 px tall, at 1.2 mm to a px as on a screen 1500 px wide; 8 px a letter at most."""
    from gramil.bench.plan_layers import sizes_svg
    from gramil.formatter import formatter_of

    tall, wide = 13 * 1.2, 8 * 1.2
    figures = example(name)
    svg = sizes_svg(figures, side_down(figures), formatter_of(figures))
    found = re.findall(r'<text x="([-\d.]+)" y="([-\d.]+)"[^>]*rotate\(-90 [^>]*>([^<]+)<', svg)
    boxes = [
        (float(x) - tall, float(x), float(y) - wide * len(text) / 2, float(y) + wide * len(text) / 2)
        for x, y, text in found
    ]
    assert len(boxes) >= 5
    for row, one in enumerate(boxes):
        for other in boxes[row + 1 :]:
            clear = one[1] <= other[0] or other[1] <= one[0] or one[3] <= other[2] or other[3] <= one[2]
            assert clear, (found[row], one, other)


def test_an_upright_figure_goes_to_the_other_side_where_one_stands_near() -> None:
    from gramil.bench.plan_layers import APART, lane

    assert lane(100.0, []) == -1
    assert lane(100.0, [(100.0 + APART, -1)]) == -1
    assert lane(100.0, [(110.0, -1)]) == 1
    assert lane(100.0, [(110.0, -1), (95.0, 1)]) == -1, "no third side"


def test_a_phone_tells_the_body_and_the_join_on_the_whole_drawing_too(demo: httpx.Client, tarn: str) -> None:
    """What is asked of a whole plan first: scale, width, the body's length and the neck's to the join."""
    page = demo.get(tarn).text
    main = re.search(r'<g class="sizes main">(.*?)<g class="sizes rest">', page, re.DOTALL)
    assert main is not None
    for words in ("scale ", "to the join ", "body "):
        assert f">{words}" in main[1], words
