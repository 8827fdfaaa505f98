"""A guitar that came in, on the bench: taken in by frets and strings, and every page of it stands."""

import re
from html import unescape
from importlib.resources import files

import httpx
import pytest

from .conftest import post, serving

PAGES = (
    *("", "/sheets", "/figures", "/heights", "/cents", "/top", "/files", "/print", "/cost", "/revisions", "/compare"),
    *("/moved", "/pack", "/part?name=board", "/figure?at=slot_need"),
)


@pytest.fixture(scope="module")
def client(tmp_path_factory: pytest.TempPathFactory):
    with serving(tmp_path_factory.mktemp("came-in")) as bench, bench.client() as found:
        yield found


def test_the_first_page_takes_a_guitar_in(client: httpx.Client) -> None:
    assert 'href="/new/came-in"' in client.get("/").text
    page = client.get("/new/came-in").text
    assert "How many frets" in page
    assert "not known yet" in page


def test_a_guitar_is_taken_in_by_frets_and_strings(client: httpx.Client) -> None:
    taken = post(client, "/new/came-in", **{"instrument.name": "Worn", "scale.frets": "19"})
    assert taken.status_code == 200
    assert taken.url.path.startswith("/instrument/")
    assert "Worn" in taken.text
    for page in PAGES:
        answer = client.get(f"{taken.url.path}{page}")
        assert answer.status_code == 200, (page, answer.text[:300])
        assert not re.search(r"\bnan\b", answer.text), page


def test_what_is_measured_of_it_is_given_and_kept(client: httpx.Client) -> None:
    page = post(client, "/new/came-in", **{"instrument.name": "Given", "scale.frets": "19"})
    here = page.url.path
    tried = client.get(here, params={"key": "scale.length", "value": "640 mm"})
    assert "640 mm" in tried.text
    fields = {"set": "scale.length=640 mm", "why": "by its frets", "version": "1", "base": "1", "at": "", "who": ""}
    version = re.search(r'name="version" value="(\d+)"', tried.text)
    assert version is not None
    kept = post(client, f"{here}/keep", **{**fields, "version": version[1]})
    assert kept.status_code == 200
    assert "Kept as revision 2" in kept.text


def test_what_is_known_is_typed_where_it_stands_and_nothing_reads_as_a_file(client: httpx.Client) -> None:
    """Each in its row: what is to be done by yes and no; no key, no bracket of a file, no name of the program's own."""
    taken = post(client, "/new/came-in", **{"instrument.name": "Plain", "scale.frets": "19"})
    page = client.get(taken.url.path).text
    nut = re.search(r'aria-label="Change Whether a new nut is made">.*?</details>', page, re.DOTALL)
    assert nut is not None
    assert 'name="key" value="repair.nut"' in nut[0]
    assert re.findall(r"<option[^>]*>(\w+)</option>", nut[0]) == ["yes", "no"]
    assert 'aria-label="Give Bridge: thickness at the saddle, on the centreline"' in page
    for path in (taken.url.path, f"{taken.url.path}/sheets", "/tools/form?kind=piece"):
        shown = unescape(re.sub(r"<[^>]+>", " ", client.get(path).text.partition("<main")[2]))
        assert re.findall(r"\b[a-z]+_[a-z_]+\b|\bfalse\b|[{}]|\[\[|\b[a-z]+\.[a-z]\w*", shown) == [], path


def test_frets_that_are_not_counted_are_asked_for_at_their_field(client: httpx.Client) -> None:
    answer = post(client, "/new/came-in", **{"instrument.name": "Other"})
    assert answer.status_code == 422
    assert "Count the frets" in answer.text
    answer = post(client, "/new/came-in", **{"instrument.name": "Other", "scale.frets": "many"})
    assert answer.status_code == 422
    assert 'data-field="scale.frets"' in answer.text or "aria-invalid" in answer.text


# ---------------------------------------------------------------------------------------------- a day on the bench

MOOR = (files("gramil") / "data" / "examples" / "moor.toml").read_text("utf-8")
SLOTS = (files("gramil") / "data" / "examples" / "moor-slots-invented.csv").read_text("utf-8")
AS_FOUND = {
    "found_relief": "0.45",
    "found_action_bass": "4.1",
    "found_action_treble": "3.3",
    "found_straightedge": "-2.4",
    "found_crown[1]": "0.62",
    "found_crown[7]": "0.78",
    "found_crown[12]": "0.86",
}
OLD_SLOTS = {
    "found_slot_width[1]": "0.56",
    "found_slot_width[7]": "0.58",
    "found_slot_width[12]": "0.60",
    "found_slot_depth[12]": "1.75",
}


def measured(readings: dict[str, str]) -> dict[str, str]:
    return {f"measured.{address}": written for address, written in readings.items()}


@pytest.fixture(scope="module")
def moor(tmp_path_factory: pytest.TempPathFactory):
    """The example, brought to the bench as a file; its address."""
    with serving(tmp_path_factory.mktemp("moor")) as bench, bench.client() as client:
        page = post(client, "/new/file", file=MOOR)
        assert page.status_code == 200
        yield client, re.search(r'href="(/instrument/\d+)">Moor<', client.get("/").text)[1]


def test_its_board_is_read_from_its_frets_alone(moor: tuple[httpx.Client, str]) -> None:
    client, here = moor
    fields = {f"fret.{row.split(',')[0]}": row.split(",")[1] for row in SLOTS.splitlines()[1:]}
    told = client.get(f"{here}/slots-measured", params=fields).text
    assert "Scale: 642.06 mm" in told
    assert "twelve equal steps" in told


def test_from_the_first_reading_to_the_quote(moor: tuple[httpx.Client, str]) -> None:
    client, here = moor
    page = client.get(f"{here}/operation/examined").text
    assert all(f'name="measured.{address}"' in page for address in AS_FOUND)
    assert "not known" not in page
    done = post(client, f"{here}/operation/examined", **measured(AS_FOUND), do="done")
    assert done.status_code == 200
    for name in ("old_finish_tried", "old_bridge_off", "old_frets_drawn"):
        post(client, f"{here}/operation/{name}", do="done")
    post(client, f"{here}/operation/old_slots_read", **measured(OLD_SLOTS), do="done")
    wires = client.get(f"{here}/operation/new_wire_chosen").text
    assert "loose in the widest slot" in wires
    reset = client.get(f"{here}/operation/heel_cut_back").text
    assert '<b class="number">1.32</b>' in reset
    assert "Old finish, glue and colours may hold lead" in reset
    cost = client.get(f"{here}/cost", params={"rate": "40"}).text
    assert "neck reset" in cost.lower()
    quote = client.get(f"{here}/quote.pdf", params={"rate": "40"})
    assert quote.content[:4] == b"%PDF"


def test_what_was_found_keeps_its_day_and_what_is_read_after_stands_beside_it(moor: tuple[httpx.Client, str]) -> None:
    client, here = moor
    found = client.get(f"{here}/operation/examined").text
    assert "4.10 mm" in found
    assert "2026-11-25" in found
    after = {"heights_action_bass": "2.4", "heights_relief": "0.15"}
    post(client, f"{here}/operation/read_as_it_goes_back", **measured(after), do="done")
    assert "4.10 mm" in client.get(f"{here}/operation/examined").text
    assert "4.10" not in client.get(f"{here}/operation/read_as_it_goes_back").text


def test_twelve_strings_in_pairs_come_in_too(client: httpx.Client) -> None:
    """What is asked for is offered, and strings that were not typed sound as such pairs do: no fault of another's."""
    page = unescape(client.get("/new/came-in").text)
    assert re.search(r'type="radio" name="strings.plain" value="twelve"', page) is not None
    answers = {"instrument.name": "Twelve", "scale.frets": "18", "strings.plain": "twelve"}
    taken = post(client, "/new/came-in", **answers)
    assert taken.status_code == 200, taken.text[:400]
    text = unescape(client.get(f"{taken.url.path}/files").text)
    assert text.count("[[course]]") == 6
    assert "strings = [11, 12]" in text
