"""The instrument's page over HTTP: the cut, a change tried, kept, refused, and two who change the same thing."""

import json
import re
from html import unescape
from importlib.resources import files
from itertools import pairwise

import httpx
import pytest

from .conftest import Served, post, token_of


def test_the_demo_shop_is_in_the_middle_of_its_work(served: Served) -> None:
    """Its instruments come with what the files beside them say is done: by their own count, one row an operation."""
    client = served.client()
    page = post(client, "/demo").text
    for name in ("tarn", "fell", "scree"):
        written = (files("gramil") / "data" / "examples" / f"{name}.made.toml").read_text(encoding="utf-8")
        assert f"{written.count('[[done]]')} of " in page


def test_an_empty_bench_offers_the_demo_six_questions_and_a_ruler(served: Served) -> None:
    page = served.client().get("/").text
    assert "Lay out the demo shop" in page
    form = page[page.index('action="/new"') : page.index(">Begin</button>")]
    fields = set(re.findall(r'<input [^>]*?name="([^"]+)"', form)) - {"token"}
    ruler = {each for each in fields if each.startswith("body.")}
    assert len(fields - ruler) == 6
    assert len(ruler) == 6


def test_a_whole_guitar_begins_on_the_bench_with_a_body_by_the_ruler(served: Served) -> None:
    client = served.client()
    typed = {"instrument.name": "Moss", "start": "small", "body.length": "482 mm", "instrument.handed": "right"}
    page = post(client, "/new", **typed)
    assert page.status_code == 200
    number = re.search(r'href="/instrument/(\d+)', page.text)[1]
    text = client.get(f"/instrument/{number}/description.toml").text
    assert "[482, 0]," in text
    assert '"tone bar 2"' in text
    wrong = post(client, "/new", **typed | {"instrument.name": "Fen", "body.length": "900 mm", "body.waist": "slim"})
    assert wrong.status_code == 422
    assert "2 answers cannot be read" in wrong.text
    assert 'value="900 mm"' in wrong.text
    alone = typed | {"instrument.name": "Fen", "start": "board and neck alone, nylon"}
    assert "a board has no body" in post(client, "/new", **alone).text


def test_a_new_instrument_is_drawn_from_its_answers(served: Served) -> None:
    client = served.client()
    answers = {"instrument.name": "Moss", "scale.length": "24 3/4 in", "scale.join": "12", "nut.width": '1-3/4"'}
    answer = post(client, "/new", **answers)
    assert answer.status_code == 200
    assert "Moss" in answer.text
    assert "628.65" in answer.text, "24.75 x 25.4 = 628.65"


def test_a_browser_in_inches_begins_an_inch_file_and_nylon_strings_a_slotted_head(served: Served) -> None:
    client = served.client()
    post(client, "/unit", unit="in")
    assert 'placeholder="25 1/2 in"' in client.get("/new").text
    page = post(client, "/new", **{"instrument.name": "Moss", "strings.plain": "nylon"})
    assert page.status_code == 200
    number = re.search(r'href="/instrument/(\d+)', page.text)[1]
    text = client.get(f"/instrument/{number}/description.toml").text
    assert "25 5/8 in" in text


def test_an_answer_that_cannot_be_comes_back_with_what_was_typed(served: Served) -> None:
    client = served.client()
    answer = post(client, "/new", **{"instrument.name": "Moss", "scale.length": "long"})
    assert answer.status_code == 422
    assert 'value="long"' in answer.text
    assert 'value="Moss"' in answer.text
    assert "scale.length" in answer.text


def test_the_cut_is_told_where_it_is(demo: httpx.Client, tarn: str) -> None:
    assert "Cut across at fret 5" in demo.get(f"{tarn}?fret=5").text
    assert "Cut across between frets 5 and 6" in demo.get(f"{tarn}/cut?x=165").text
    tapped = demo.get(f"{tarn}/cut?x=160&tap=1").text
    assert "Cut across at fret 5" in tapped, "630 (1 - 2^(-5/12)) = 158.03 is the nearest"
    assert "158.03" in tapped
    assert "over the body" in demo.get(f"{tarn}/cut?x=500").text


@pytest.mark.parametrize("x", ["nan", "-1e9", "1e9", "x", ""])
def test_any_place_asked_for_gives_a_page(demo: httpx.Client, tarn: str, x: str) -> None:
    assert demo.get(f"{tarn}/cut", params={"x": x}).status_code == 200


def test_a_change_is_tried_and_nothing_is_saved(demo: httpx.Client, tarn: str) -> None:
    page = demo.get(f"{tarn}?fret=12&set=scale.length%3D650").text
    assert "325.00" in page, "half of 650"
    assert ">315.00 mm</del>" in page, "the old in grey under it: half of 630"
    assert "figures moved" in page
    assert "Nothing is saved yet" in page
    assert "figures moved" not in demo.get(tarn).text


def test_a_change_that_cannot_be_says_why_and_leaves_the_figures(demo: httpx.Client, tarn: str) -> None:
    page = demo.get(f"{tarn}?fret=12&key=scale.length&value=wide").text
    assert "That cannot be" in page
    assert 'aria-invalid="true"' in page
    assert 'value="wide"' in page
    assert "315.00" in page


def test_what_cannot_be_is_told_once_at_its_field_in_its_words(demo: httpx.Client, tarn: str) -> None:
    """The scale stands twice, for the bass and the treble string: one of the two says it, with no file and no key."""
    page = unescape(demo.get(f"{tarn}?fret=12&key=scale.length&value=wide").text)
    at_field = re.findall(r'<p class="fault" role="alert">(.*?)</p>', page)
    assert len(at_field) == 1
    assert at_field[0].startswith("“wide” cannot be read as a length")
    assert "scale length: “wide” cannot be read" in page
    assert "scale.length:" not in page
    assert "Tarn:10" not in page


def test_a_change_is_kept_with_its_reason_and_by_whom(demo: httpx.Client, tarn: str) -> None:
    answer = kept(demo, tarn, "scale.length=650", "a longer reach", "A")
    assert "Revision 2" in answer.text
    assert "A: a longer reach" in answer.text
    assert "325.00" in demo.get(f"{tarn}?fret=12").text


def fields_of(page: str) -> dict[str, str]:
    form = re.search(r'<form method="post" action="[^"]+/keep".*?</form>', page, re.DOTALL)
    assert form is not None
    return dict(re.findall(r'<input type="hidden" name="(version|base)" value="([^"]+)"', form[0]))


def kept(client: httpx.Client, at: str, change: str, why: str, who: str) -> httpx.Response:
    fields = fields_of(client.get(at, params={"set": change}).text)
    return post(client, f"{at}/keep", set=change, why=why, who=who, **fields)


def test_a_change_kept_after_the_cut_goes_on_saying_what_is_lost(served: Served, demo: httpx.Client, tarn: str) -> None:
    """*Tarn* is slotted at 630; at 650 the last of 19 frets lies (1 - 2^(-19/12)) x 20 = 13.33 mm further."""
    post(demo, f"{tarn}/operation/slotted", do="done")
    served.clock.later(hours=1)
    lost = "fret slots cut: too near the nut by 13.33 mm, fret 19"
    tried = demo.get(tarn, params={"set": "scale.length=650"}).text
    assert lost in tried
    assert lost not in demo.get(tarn).text
    answer = kept(demo, tarn, "scale.length=650", "longer", "A")
    assert lost in answer.text
    first = demo.get("/").text
    assert lost in first
    assert "Measure the slots" not in "".join(re.findall(r'<a class="next".*?</a>', first, re.DOTALL))
    number = tarn.rsplit("/", 1)[1]
    assert lost in demo.get(f"/instrument/{number}/compare?old=1&new=2").text
    assert f'href="/instrument/{number}/anew/board">Begin the board anew</a>' in answer.text
    assert f"{lost} (419.76 mm, wanted 433.09 mm)" in demo.get(f"{tarn}/operation/bridge_placed").text
    assert lost not in demo.get(f"{tarn}/operation/sides_bent").text
    kept(demo, tarn, "scale.length=630", "as it was", "A")
    assert lost not in demo.get(tarn).text


def test_a_lost_board_is_begun_anew_by_two_taps(served: Served, demo: httpx.Client, tarn: str) -> None:
    post(demo, f"{tarn}/operation/slotted", **{"do": "done", "measured.slot_depth_setting": "3.0"})
    served.clock.later(hours=1)
    kept(demo, tarn, "scale.length=650", "longer", "A")
    page = demo.get(f"{tarn}/anew/board").text
    assert "fret slots cut" in page
    seen = re.search(r'name="seen" value="([^"]+)"', page)
    assert seen is not None
    assert post(demo, f"{tarn}/anew/board", do="strike", seen="0:0").status_code != 200
    for _ in range(2):
        answer = post(demo, f"{tarn}/anew/board", do="strike", seen=seen[1])
        assert answer.status_code == 200
        assert "fret slots cut" not in answer.text
    assert demo.get(f"{tarn}/anew/lid").status_code == 404


def test_two_who_change_the_same_thing_get_a_choice_and_never_a_silent_overwrite(
    served: Served, demo: httpx.Client, tarn: str
) -> None:
    other = served.client()
    theirs = fields_of(other.get(tarn, params={"set": "nut.width=46"}).text)
    kept(demo, tarn, "scale.length=650", "longer", "A")
    answer = post(other, f"{tarn}/keep", set="nut.width=46", why="wider", who="B", **theirs)
    assert answer.status_code == 409
    assert "Nothing was saved" in answer.text
    assert "nut.width" in answer.text
    assert "longer" in answer.text
    page = other.get(f"{tarn}?fret=12").text
    assert "Revision 2," in page
    again = other.get(f"{tarn}?fret=12&set=nut.width%3D46").text
    assert "325.00" in again, "tried on top of what was kept"


def test_keeping_the_same_twice_is_kept_once(demo: httpx.Client, tarn: str) -> None:
    """A phone that lost the answer sends again."""
    fields = fields_of(demo.get(tarn, params={"set": "scale.length=650"}).text)
    for _ in range(2):
        answer = post(demo, f"{tarn}/keep", set="scale.length=650", why="longer", **fields)
        assert answer.status_code == 200
    assert "Revision 2," in demo.get(tarn).text


def test_comments_outlive_a_change(demo: httpx.Client, served: Served, tarn: str) -> None:
    from gramil.shop.instruments import instrument, revision
    from gramil.store.opening import open_store

    kept(demo, tarn, "scale.length=650", "longer", "")
    with open_store(served.store) as store:
        text = revision(store, instrument(store, "Tarn").id).text
    assert "# along the centreline" in text
    assert "length = 650" in text


def test_millimetres_and_inches_swap_anywhere(demo: httpx.Client, tarn: str) -> None:
    assert '<b class="number">158.03</b>' in demo.get(f"{tarn}?fret=5").text
    token = token_of(demo.get("/new"))
    answer = demo.post("/unit", data={"token": token, "unit": "in", "back": f"{tarn}?fret=5"})
    assert str(answer.url).endswith(f"{tarn}?fret=5")
    assert '<b class="number">6.222</b>' in answer.text, "158.03 / 25.4"


def test_nothing_leads_out_of_the_bench(demo: httpx.Client) -> None:
    token = token_of(demo.get("/new"))
    for back in ("//evil.example/", "https://evil.example/", "/\\evil.example"):
        answer = demo.post("/unit", data={"token": token, "unit": "mm", "back": back}, follow_redirects=False)
        assert answer.headers["location"] == "/"


def test_a_card_says_what_it_is_and_what_it_hangs_on_and_what_hangs_on_it(demo: httpx.Client, tarn: str) -> None:
    card = demo.get(f"{tarn}/figure", params={"at": "board_width_at_fret[12]"}).text
    assert "Follows from" in card
    assert "Hangs on it" in card
    assert "56.00" in card
    assert "45.50" in card, "the nut's width stands in the formula"
    for address in re.findall(r'href="([^"]+/figure\?[^"]+)"', card):
        assert demo.get(address.replace("&amp;", "&")).status_code == 200


def test_a_card_of_nothing_says_so(demo: httpx.Client, tarn: str) -> None:
    for address in ("nonsense", "board_width_at_fret[99]", "[", ""):
        assert demo.get(f"{tarn}/figure", params={"at": address}).status_code == 404


def test_pages_are_small(demo: httpx.Client, tarn: str) -> None:
    assert len(demo.get(f"{tarn}?set=scale.length%3D650").content) < 300_000


def test_the_stores_air_is_judged_on_the_page_and_moves_with_a_reading(demo: httpx.Client) -> None:
    """45 % lies in the usual band for gluing; the demonstration's winter air does not."""
    assert "Too dry to glue in." in demo.get("/instrument/1").text
    post(demo, "/air/reading", place="shop", humidity="45", temperature="20")
    assert "Too dry to glue in." not in demo.get("/instrument/1").text


def test_over_the_body_the_braces_that_are_cut_are_told(demo: httpx.Client, tarn: str) -> None:
    """Tarn's soundhole is 165 from the body's edge, which lies at fret 13: 630 (1 - 2^(-13/12)) = 332.66."""
    page = demo.get(f"{tarn}/cut?x=497.6").text
    assert "over the body, through the soundhole" in page
    assert "from the body&#39;s edge" in page or "from the body's edge" in page
    assert "hole side treble, high" in page
    assert "body-drawing" in page
    both = demo.get(f"{tarn}/cut?fret=17").text
    assert "Neck and board, seen from the tail" in both
    assert "Body, seen from the tail" in both
    assert "body-drawing" not in demo.get(f"{tarn}/cut?fret=7").text


def test_the_section_line_stops_at_frets_and_over_the_body_at_braces_and_soundhole(
    demo: httpx.Client, tarn: str
) -> None:
    """Tarn's body begins at fret 13, 630 (1 - 2^(-13/12)) = 332.66; soundhole 165 on, braces across the back at 185,
    290 and 395: all lie past fret 19, each leaning by the neck's set, less than 2 degrees."""
    found = re.search(r'data-stops="([^"]+)"', demo.get(tarn).text)
    assert found is not None
    stops = json.loads(found[1])
    assert stops == sorted(stops)
    assert stops[:2] == pytest.approx([0.0, 630 * (1 - 2 ** (-1 / 12))], abs=1e-4)
    for along in (165, 185, 290, 395, 490):
        assert min(abs(x - 332.66 - along) for x in stops) < 2.0, "at it, or at one hardly beside it"
    assert all(after - before > 1.9 for before, after in pairwise(stops))
    page = demo.get(f"{tarn}?fret=19").text
    on = re.search(r'name="x" value="([^"]+)" data-step="1"', page)
    assert on is not None
    assert float(on[1]) == pytest.approx(next(x for x in stops if x > 630 * (1 - 2 ** (-19 / 12)) + 0.1), abs=1e-3)


def test_what_moved_is_the_foreman_s_note_handed_out_sheets_first_and_after_keep(demo: httpx.Client) -> None:
    post(demo, "/instrument/1/sheet/layout/give")
    changed = {"set": "scale.length=650"}
    page = demo.get("/instrument/1/moved", params=changed).text
    papers = page[page.index("Papers no longer true") :]
    assert re.match(r"<li>(<a [^>]+>)?Handed out: ", papers[papers.index("<li>") :])
    assert papers.count("Handed out:") == 1
    assert page.index("Changed") < page.index("Papers no longer true") < page.index("Every figure that moved")
    drafted = demo.get("/instrument/1", params=changed).text
    assert drafted.index(">Keep</button>") < drafted.index(">What moved</a>") < drafted.index('id="list"')


def test_each_line_of_what_moved_leads_to_its_detail(demo: httpx.Client) -> None:
    page = demo.get("/instrument/1/moved?set=scale.length%3D650").text
    note = re.findall(r'<ul class="note">(.*?)</ul>', page, re.DOTALL)
    assert len(note) >= 5
    for lines in note:
        for line in re.findall(r"<li>(.*?)</li>", lines, re.DOTALL):
            to = re.match(r'<a href="([^"]+)">', line)
            assert to, line
            if to[1].startswith("#"):
                assert f'id="{to[1][1:]}"' in page, "on the same page"
            else:
                assert demo.get(unescape(to[1]).partition("#")[0]).status_code == 200
    rows = re.findall(r'<tr><th scope="row"><a href="([^"]+)"', page)
    assert len(rows) > 50
    assert demo.get(unescape(rows[0])).status_code == 200


def test_findings_are_a_line_each_and_notes_wait_folded(demo: httpx.Client, tarn: str) -> None:
    """What stops or cautions stands first, its reason a tap away; a phone had given thirteen of them four screens."""
    page = unescape(demo.get(f"{tarn}?set=slots.clearance%3D0.9").text)
    part = page[page.index('id="findings"') :]
    first = part[: part.index("</ol>")]
    folded = re.findall(r'<li class="([^"]+)" id="finding-\d+"[^>]*><details><summary>(.*?)</summary>', part, re.DOTALL)
    assert len(folded) == part.count('id="finding-')
    assert 'class="note"' not in first
    kinds = [kind for kind, _ in folded]
    assert kinds == sorted(kinds, key=["stop", "caution", "note"].index)
    assert all(line.count(". ") == 0 for _, line in folded)


def test_the_head_of_the_page_counts_what_stands_against_it_and_leads_there(demo: httpx.Client, tarn: str) -> None:
    """On a phone the findings lie screens below the drawing."""
    page = unescape(demo.get(tarn).text)
    link = re.search(r'<a href="#findings">(.*?)</a>', page[: page.index('class="desk"')])
    assert link is not None
    listed = re.findall(r'<li class="(stop|caution|note)" id="finding-', page)
    counted = {word.rstrip("s"): int(number) for number, word in re.findall(r"(\d+) (\w+)", link[1])}
    assert counted == {kind: listed.count(kind) for kind in set(listed)}
    assert 'id="findings"' in page
