"""The documentation as a site that is read without a network: `make site` puts it into `out/site`.

The pages are those of `docs/`; beside them a page for each part with its dimensions, one for each published source with
what was checked against it, and a gallery of drawings, made anew each time.
"""

import ast
import json
import re
import shutil
import subprocess
import sys
import tomllib
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

import gramil
from gramil.formatter import formatter_of
from gramil.prints.whole import drawings_of, figures_of_files
from gramil.writers.svg import svg_text

ROOT = Path(__file__).parent.parent
SOURCE = ROOT / "out" / "site-source"
SITE = ROOT / "out" / "site"
PACKAGE = Path(gramil.__file__).parent
EXAMPLES = PACKAGE / "data" / "examples"
VALUES = ROOT / "tests" / "published" / "values"
"""What published sources say, as the tests have it."""
SHOWN = ("board", "index-template", "mould", "face-plan", "bridge", "neck")
"""Drawings of each instrument that the gallery shows, those of them that it has."""
INSTRUMENTS = {
    "tarn": "Tarn, steel strings",
    "fell": "Fell, in inches",
    "scree": "Scree, fanned",
    "mere": "Mere, nylon",
}
SEARCH = Path(__file__).with_name("site_search.js")
LOOK = ("B612-Regular", "B612-Bold", "B612Mono-Regular")


def main() -> None:
    """Gather the pages, and have them built."""
    shutil.rmtree(SOURCE, ignore_errors=True)
    shutil.copytree(ROOT / "docs", SOURCE, ignore=shutil.ignore_patterns("*.py", "__pycache__"))
    (SOURCE / "fonts").mkdir()
    for font in LOOK:
        shutil.copy(PACKAGE / "fonts" / f"{font}.ttf", SOURCE / "fonts")
    for name, text in pages().items():
        path = SOURCE / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8", newline="\n")
    for page in SOURCE.rglob("*.md"):
        text = page.read_text(encoding="utf-8")
        page.write_text(within(text), encoding="utf-8", newline="\n")
    command = [
        sys.executable,
        "-m",
        "mkdocs",
        "build",
        "--strict",
        "--quiet",
        "--config-file",
        str(ROOT / "mkdocs.yml"),
    ]
    built = subprocess.run(command, check=False).returncode
    if built == 0:
        search = SITE / "search"
        script = search_script((search / "search_index.json").read_text(encoding="utf-8"))
        (search / "main.js").write_text(script, encoding="utf-8", newline="\n")
    sys.exit(built)


def search_script(index: str) -> str:
    """The script that searches the site, with all that is searched in it: a page that is opened as a file cannot fetch
    that from beside it, as the builder's own does.
    """
    gathered = json.dumps(json.loads(index)["docs"], ensure_ascii=False)
    return f"const gathered = {gathered};\n{SEARCH.read_text(encoding='utf-8')}"


def pages() -> Mapping[str, str]:
    """The pages that are made for the site alone, by file name."""
    return {"index.md": _readme(), "gallery.md": "\n".join(_gallery()), **dict(_parts()), **dict(_sources())}


def within(text: str) -> str:
    """A page whose links to files that are not in the site are words."""
    return re.sub(r"\[([^\]]+)\]\(\.\./(?:\.\./)?(?:src|tests|tools|benchmarks)[^)]*\)", r"\1", text)


def _readme() -> str:
    text = (ROOT / "README.md").read_text(encoding="utf-8")
    text = text.replace("](docs/", "](").split("\n## Licence")[0]
    return re.sub(r"\[([^\]]+)\]\((?:src|tests|[A-Z]+\.(?:md|cff))[^)]*\)", r"\1", text)


def _gallery() -> Iterator[str]:
    """Drawings of the bundled instruments, as they are drawn today, each in a file beside the page."""
    folder = SOURCE / "gallery"
    folder.mkdir(parents=True, exist_ok=True)
    yield "# Gallery\n\nDrawings of the bundled instruments, made when this site was built."
    for name, title in INSTRUMENTS.items():
        figures = figures_of_files(EXAMPLES / f"{name}.toml", EXAMPLES / "shop.toml")
        read = formatter_of(figures).text
        yield f"\n## {title}\n"
        for drawing in drawings_of(figures):
            if drawing.name in SHOWN:
                (folder / f"{name}-{drawing.name}.svg").write_text(
                    svg_text(drawing, read), encoding="utf-8", newline="\n"
                )
                yield f"![{drawing.title}](gallery/{name}-{drawing.name}.svg)\n\n*{drawing.title}*\n"


def _parts() -> Iterator[tuple[str, str]]:
    """The page of dimensions, a page a part."""
    whole = (ROOT / "docs" / "dimensions.md").read_text(encoding="utf-8")
    listed = []
    for section in whole.split("\n## ")[1:]:
        part, _, body = section.partition("\n")
        name = f"{part.replace(' ', '-')}.md"
        yield f"parts/{name}", f"# {part.capitalize()}\n\n{body.strip()}\n"
        listed.append(f"- [{part}]({name})")
    yield (
        "parts/index.md",
        "# Part by part\n\nEvery dimension with its formula, a page a part.\n\n" + "\n".join(listed) + "\n",
    )


def _sources() -> Iterator[tuple[str, str]]:
    """How formulas and figures were checked: a page for each published source, with its tables and the tests that hold
    the program against them; and a page that lists these.
    """
    listed = []
    for file in sorted(VALUES.glob("*.toml")):
        source = tomllib.loads(file.read_text(encoding="utf-8"))
        named = f"{source['author']}: *{source['title']}*, {source['year']}"
        tests = [
            each for each in sorted(VALUES.parent.glob("test_*.py")) if f'"{file.stem}"' in each.read_text("utf-8")
        ]
        told = [f"- {_what(each)} ({each.name})" for each in tests]
        tables = "\n".join(line for table in source["table"] for line in _table(table))
        body = f"# {source['title']}\n\n{source['author']}, {source['year']}\n\n" + "\n".join(told) + f"\n{tables}\n"
        yield f"checked/{file.stem}.md", body
        listed.append(f"- [{named}]({file.stem}.md)")
    yield "checked/index.md", "# How it was checked\n\nA page for each published source.\n\n" + "\n".join(listed) + "\n"


def _what(test: Path) -> str:
    """The first sentence of a file of tests."""
    return (ast.get_docstring(ast.parse(test.read_text(encoding="utf-8"))) or "").split("\n")[0]


def _table(table: Mapping[str, Any]) -> Iterator[str]:
    """One table of a source, as it is held in the tests."""
    heads = [*table["given"], *table["values"]]
    yield f"\n## {table['name'].capitalize()}\n\n{table['where']}: {table['flag']}. {table.get('note', '')}\n"
    yield f"| {' | '.join(heads)} |"
    yield f"|{' --- |' * len(heads)}"
    yield from (f"| {' | '.join(map(str, row))} |" for row in table["rows"])


if __name__ == "__main__":
    main()
