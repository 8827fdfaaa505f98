"""The documentation as a site: every page that it is made of is there, and its links lead somewhere."""

import json
import re
import runpy
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from tests.in_a_browser import Page, left_behind

ROOT = Path(__file__).parents[1]


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Any]:
    """The site's builder, which puts its pictures into a folder of the test's own."""
    builder = runpy.run_path(str(ROOT / "tools" / "site.py"))
    builder["pages"].__globals__["SOURCE"] = tmp_path_factory.mktemp("source")
    return builder


@pytest.fixture(scope="module")
def pages(made: dict[str, Any]) -> dict[str, str]:
    """Every page by its name in the site."""
    written = {path.relative_to(ROOT / "docs").as_posix(): path for path in (ROOT / "docs").rglob("*.md")}
    found = {name: path.read_text(encoding="utf-8") for name, path in written.items()} | dict(made["pages"]())
    return {name: made["within"](text) for name, text in found.items()}


def test_every_page_that_the_site_lists_is_there(pages: dict[str, str]) -> None:
    listed = re.findall(r": (\S+\.md)$", (ROOT / "mkdocs.yml").read_text(encoding="utf-8"), re.MULTILINE)
    assert listed
    assert [name for name in listed if name not in pages] == []


def test_every_page_that_there_is_is_listed() -> None:
    listed = (ROOT / "mkdocs.yml").read_text(encoding="utf-8")
    pages = (path.relative_to(ROOT / "docs").as_posix() for path in (ROOT / "docs").rglob("*.md"))
    assert [name for name in pages if f": {name}\n" not in listed] == []


SECTIONS = [
    {"location": "wire.html#tang", "title": "Tang", "text": "The tang goes into the slot; its tang is 0.5 mm thick."},
    {"location": "slots.html", "title": "Slots", "text": "A slot holds the tang. Half <b>of</b> it is glue."},
    {"location": "neck.html", "title": "Neck", "text": "Nothing of the kind: rectangular."},
]


def test_a_site_opened_as_a_file_is_searched(
    made: dict[str, Any], page_at: Callable[[str, str], Page], tmp_path: Path
) -> None:
    """No server: the builder's own search asked for one. Words find what begins so, those in a title first."""
    field = '<form><input id="mkdocs-search-query"></form><div id="mkdocs-search-results"></div>'
    page = f'<script>var base_url = "..";</script><script src="main.js"></script>{field}'
    (tmp_path / "main.js").write_text(made["search_script"](json.dumps({"docs": SECTIONS})), encoding="utf-8")
    (tmp_path / "page.html").write_text(page, encoding="utf-8")
    shown = page_at("wide", "")
    shown.goto((tmp_path / "page.html").as_uri())
    links = {}
    for asked in ("tang", "slot gl", "of</b>", "a.b", "kindling"):
        shown.fill("#mkdocs-search-query", asked)
        links[asked] = [each.get_attribute("href") for each in shown.locator("article a").all()]
    said = shown.inner_text("#mkdocs-search-results")
    left_behind(shown)
    assert links["tang"] == ["../wire.html#tang", "../slots.html"]
    assert links["slot gl"] == links["of</b>"] == ["../slots.html"]
    assert links["a.b"] == links["kindling"] == []
    assert said == "Nothing is found."


def test_links_between_pages_lead_somewhere(pages: dict[str, str], made: dict[str, Any]) -> None:
    there = {*pages, *(path.relative_to(ROOT / "docs").as_posix() for path in (ROOT / "docs").rglob("*"))}
    source = made["pages"].__globals__["SOURCE"]
    there |= {path.relative_to(source).as_posix() for path in source.rglob("*")}
    for name, text in pages.items():
        for target in re.findall(r"\]\((?!https?:)([^)#]+)[^)]*\)", re.sub(r"`[^`]*`", "", text)):
            place = (Path("/") / Path(name).parent / target).as_posix()
            assert _flat(place) in there, f"{name} leads to {target}"


def _flat(path: str) -> str:
    steps: list[str] = []
    for step in path.strip("/").split("/"):
        steps = steps[:-1] if step == ".." else [*steps, step]
    return "/".join(steps)


def test_the_gallery_shows_every_bundled_instrument(pages: dict[str, str], made: dict[str, Any]) -> None:
    for name in made["INSTRUMENTS"]:
        assert f"gallery/{name}-board.svg" in pages["gallery.md"]


def test_nothing_is_fetched_from_elsewhere() -> None:
    for name in ("mkdocs.yml", "docs/look.css"):
        assert "http" not in (ROOT / name).read_text(encoding="utf-8")


def test_the_files_agree_on_the_version() -> None:
    version = re.search(r'^version = "(.*)"$', (ROOT / "pyproject.toml").read_text(encoding="utf-8"), re.MULTILINE)
    assert version is not None
    cited = (ROOT / "CITATION.cff").read_text(encoding="utf-8")
    assert f"\nversion: {version[1]}\n" in cited
    assert f'__version__ = "{version[1]}"' in (ROOT / "src" / "gramil" / "__init__.py").read_text(encoding="utf-8")
    assert f"## {version[1]}\n" in (ROOT / "CHANGELOG.md").read_text(encoding="utf-8")


def test_the_source_that_is_handed_on_has_its_tests() -> None:
    """Every folder and file at the top is named in the list of what goes along; `src` goes by itself."""
    listed = set((ROOT / "MANIFEST.in").read_text(encoding="utf-8").split()) | {"src", "pyproject.toml", "MANIFEST.in"}
    made = {"out", "build", "dist", "site"}
    there = {path.name for path in ROOT.iterdir() if not path.name.startswith(".") and path.name not in made}
    assert sorted(name for name in there - listed if not name.endswith(".egg-info")) == ["__pycache__"] * (
        "__pycache__" in there
    )
