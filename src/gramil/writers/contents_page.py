"""The contents of a pack as one page for a browser: what is there, with small pictures, each file a link.

The page names its files by their place in the pack, so that the folder can be moved or sent as it is.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from html import escape
from urllib.parse import quote

from gramil.notice import NOTICE

STYLE = """
body { font: 16px/1.4 B612, sans-serif; color: #111; background: #fff; margin: 1.5rem; max-width: 76rem; }
h1 { font-size: 1.8rem; margin: 0; } h2 { border-top: 3px solid #111; margin-top: 2rem; padding-top: .4rem; }
a { color: inherit; } ul, ol { padding-left: 2.2rem; } .files { list-style: none; padding: 0; }
.drawings { display: grid; grid-template-columns: repeat(auto-fill, minmax(20rem, 1fr)); gap: 1rem; }
.drawings section { border: 1px solid #777; padding: .8rem; break-inside: avoid; }
.drawings h3 { margin: .3rem 0; font-size: 1.05rem; } .drawings p { margin: .3rem 0; }
.drawings img { width: 100%; height: 9rem; object-fit: contain; }
.how, footer { color: #555; }
@media print { body { margin: 0; font-size: 10pt; } }
""".strip()


@dataclass(frozen=True)
class FileRow:
    """A file of the pack by its place in it, and what it is for."""

    place: str
    what: str


@dataclass(frozen=True)
class DrawingRow:
    """A drawing of the pack: what it is, its picture by its place, its scale, where it is used, and its `files`.

    Each of its files is the words of a link and a place; a page within a PDF follows a number sign.
    """

    title: str
    what: str
    picture: str
    scale: str
    used: tuple[str, ...]
    files: tuple[tuple[str, str], ...]


def contents_html(
    title: str,
    notes: Sequence[str],
    folders: Sequence[tuple[str, Sequence[FileRow]]],
    drawings: Sequence[tuple[str, Sequence[DrawingRow]]],
    sheets: Sequence[str],
) -> bytes:
    """The page (UTF-8): `notes` under the title, files by folder, pictures by heading, titles of the sheets in order.

    The same input gives the same bytes.
    """
    body = [
        f"<h1>{escape(title)}</h1>",
        *(f"<p>{escape(note)}</p>" for note in notes),
        *(line for words, files in folders for line in _folder(words, files)),
        *(line for words, rows in drawings if rows for line in _drawings(words, rows)),
        *_sheets(sheets),
        f"<footer><p>{escape(NOTICE)}</p></footer>",
    ]
    head = f'<meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>{escape(title)}</title>'
    page = f'<!DOCTYPE html>\n<html lang="en"><head>{head}\n<style>{STYLE}</style></head>\n<body>\n'
    return (page + "\n".join(body) + "\n</body></html>\n").encode("utf-8")


def _folder(words: str, files: Sequence[FileRow]) -> Iterator[str]:
    yield f"<h2>{escape(words)}</h2>"
    yield '<ul class="files">'
    yield from (f"<li>{_link(each.place, each.place)}: {escape(each.what)}</li>" for each in files)
    yield "</ul>"


def _drawings(words: str, rows: Sequence[DrawingRow]) -> Iterator[str]:
    yield f"<h2>{escape(words)}</h2>"
    yield '<div class="drawings">'
    for row in rows:
        image = f'<img src="{_address(row.picture)}" alt="" loading="lazy">'
        yield f'<section><a href="{_address(row.picture)}">{image}</a>'
        yield f"<h3>{escape(row.title)}</h3><p>{escape(row.what)}</p>"
        yield f'<p class="how">{escape(row.scale)}</p>'
        if row.used:
            yield f"<p>Used at: {escape('; '.join(row.used))}.</p>"
        yield f"<p>{' · '.join(_link(words, place) for words, place in row.files)}</p></section>"
    yield "</div>"


def _sheets(titles: Sequence[str]) -> Iterator[str]:
    if titles:
        yield "<h2>The sheets, in the order of the work</h2>"
        yield "<ol>"
        yield from (f"<li>{escape(title)}</li>" for title in titles)
        yield "</ol>"


def _link(words: str, place: str) -> str:
    return f'<a href="{_address(place)}">{escape(words)}</a>'


def _address(place: str) -> str:
    return escape(quote(place, safe="/#="))
