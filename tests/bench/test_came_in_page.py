"""A guitar that came in, on the bench: taken in by frets and strings, and every page of it stands."""

import re

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


def test_frets_that_are_not_counted_are_asked_for_at_their_field(client: httpx.Client) -> None:
    answer = post(client, "/new/came-in", **{"instrument.name": "Other"})
    assert answer.status_code == 422
    assert "Count the frets" in answer.text
    answer = post(client, "/new/came-in", **{"instrument.name": "Other", "scale.frets": "many"})
    assert answer.status_code == 422
    assert 'data-field="scale.frets"' in answer.text or "aria-invalid" in answer.text
