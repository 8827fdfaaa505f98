"""Files taken out and brought in over HTTP: descriptions with their drawings, the pack, the record as plain files."""

import io
import re
import tomllib
import zipfile
from html import unescape

import httpx
import pytest

from gramil.doorway.export import export_files
from gramil.shop.instruments import instrument, revision
from gramil.store.opening import open_store

from ..conftest import EXAMPLES
from .conftest import Served, post, token_of

TARN = (EXAMPLES / "tarn.toml").read_text(encoding="utf-8")
OUTLINE = '<svg xmlns="http://www.w3.org/2000/svg" width="480mm" height="300mm" viewBox="0 0 480 300">'
OUTLINE += '<path d="M 0 150 L 20 40 L 200 60 L 460 10 L 480 150 L 460 290 L 200 240 L 20 260 Z"/></svg>'


def sent(client: httpx.Client, path: str, files: dict[str, str], **fields: str) -> httpx.Response:
    """A form with files in it."""
    content = {key: (key, text.encode(), "application/octet-stream") for key, text in files.items()}
    return client.post(path, data={"token": token_of(client.get("/new")), **fields}, files=content)


def names(answer: httpx.Response) -> list[str]:
    with zipfile.ZipFile(io.BytesIO(answer.content)) as archive:
        assert archive.testzip() is None
        return archive.namelist()


def test_a_description_goes_out_and_comes_back_as_it_was(served: Served, demo: httpx.Client) -> None:
    text = demo.get("/instrument/1/description.toml")
    assert text.headers["content-disposition"] == 'attachment; filename="tarn.toml"'
    assert text.text == TARN
    other = text.text.replace('name = "Tarn"', 'name = "Beck"')
    page = sent(demo, "/new/file", {"file": other})
    assert "<h1>Beck</h1>" in page.text
    with open_store(served.store) as store:
        assert revision(store, instrument(store, "Beck").id).text.strip() == other.strip()


def test_a_changed_description_shows_what_it_moves_before_it_is_kept(
    served: Served, demo: httpx.Client, tarn: str
) -> None:
    page = demo.get(f"{tarn}/files").text
    version = re.search(r'name="version" value="(\d+)"', page)
    assert version is not None
    text = unescape(re.search(r'<textarea name="text"[^>]*>(.*?)</textarea>', page, re.DOTALL)[1])  # type: ignore[index]
    longer = re.sub(r"(?m)^length = \S+", "length = 650", text, count=1)
    assert longer != text
    tried = post(demo, f"{tarn}/files", text=longer, do="try", version=version[1])
    assert re.search(r"\d+ figures moved", tried.text)
    with open_store(served.store) as store:
        assert revision(store, instrument(store, "Tarn").id).number == 1
    kept = post(demo, f"{tarn}/files", text=longer, do="keep", version=version[1], why="longer reach")
    assert "Revision 2" in kept.text
    again = post(demo, f"{tarn}/files", text=text, do="keep", version=version[1], why="no")
    assert again.status_code == 422
    assert "meanwhile" in again.text


def test_a_faulty_description_is_told_with_its_lines_and_what_was_typed_stays(demo: httpx.Client, tarn: str) -> None:
    answer = post(demo, f"{tarn}/files", text="gramil = 1\n[scale]\nlength = 'wide'", do="try", version="1")
    assert answer.status_code == 422
    assert "the description:3" in answer.text
    assert "wide" in answer.text
    assert sent(demo, "/new/file", {"file": ""}).status_code == 422
    assert sent(demo, "/new/file", {"file": "x" * 2_100_000}).status_code == 413


def test_a_drawing_of_the_body_becomes_points_in_the_description(served: Served, demo: httpx.Client) -> None:
    board = TARN.partition("[head]")[0].partition("[body]")[0].replace('name = "Tarn"', 'name = "Beck"')
    text = f'{board}\n[body]\nfile = "body.svg"\n'
    refused = sent(demo, "/new/file", {"file": text})
    assert "no such file beside the description" in refused.text
    page = sent(demo, "/new/file", {"file": text, "drawing": OUTLINE})
    assert page.status_code == 200
    with open_store(served.store) as store:
        body = tomllib.loads(revision(store, instrument(store, "Beck").id).text)["body"]
    assert "file" not in body
    assert [0.0, 0.0] in body["points"]
    assert [480.0, 0.0] in body["points"]


def test_a_scale_table_becomes_cents_in_the_description(served: Served, demo: httpx.Client) -> None:
    """Nineteen equal steps to the octave, the twelfth at 12 * 1200 / 19 cents; the readings of cents go by it."""
    text = TARN.replace('name = "Tarn"', 'name = "Beck"').replace('"12-equal"', '"nineteen.scl"')
    refused = sent(demo, "/new/file", {"file": text})
    assert "no such file beside the description" in refused.text
    table = "nineteen\n19\n" + "\n".join(f"{n * 1200 / 19:.6f}" for n in range(1, 20))
    page = sent(demo, "/new/file", {"file": text, "scale_table": table})
    assert page.status_code == 200
    with open_store(served.store) as store:
        scale = tomllib.loads(revision(store, instrument(store, "Beck").id).text)["scale"]
    assert "temperament" not in scale
    assert scale["degrees"][11] == pytest.approx(12 * 1200 / 19, abs=1e-6)


def test_a_drawing_is_laid_nowhere_but_beside_its_description(demo: httpx.Client) -> None:
    board = TARN.partition("[head]")[0].partition("[body]")[0].replace('name = "Tarn"', 'name = "Beck"')
    for name in ("../body.svg", "/etc/body.svg", ".."):
        answer = sent(demo, "/new/file", {"file": f'{board}\n[body]\nfile = "{name}"\n', "drawing": OUTLINE})
        assert answer.status_code == 422


@pytest.mark.slow
def test_the_whole_pack_comes_in_one_file(demo: httpx.Client, numbers: dict[str, int]) -> None:
    found = names(demo.get(f"/instrument/{numbers['Scree']}/pack.zip"))
    for name in ("cut/board.dxf", "print/templates-a4.pdf", "read/build-book.pdf", "contents.html"):
        assert name in found


def test_the_record_comes_as_plain_files(served: Served, demo: httpx.Client) -> None:
    answer = demo.get("/record/files")
    found = names(answer)
    assert {"work/shop.toml", "work/tarn.toml", "whole/store.toml", "whole/air.csv"} <= set(found)
    with zipfile.ZipFile(io.BytesIO(answer.content)) as archive, open_store(served.store) as store:
        assert archive.read("whole/store.toml").decode() == export_files(store)["store.toml"]


def test_what_is_made_comes_as_its_record(demo: httpx.Client) -> None:
    post(demo, "/instrument/1/operation/slotted", **{"measured.slot_depth_setting": "2.91", "do": "done"})
    made = tomllib.loads(demo.get("/instrument/1/made.toml").text)
    assert made["done"][0]["operation"] == "slotted"


@pytest.mark.parametrize("path", ["description.toml", "made.toml", "pack.zip", "files", "cost"])
def test_what_there_is_not_is_not_there(demo: httpx.Client, path: str) -> None:
    assert demo.get(f"/instrument/99/{path}").status_code == 404
