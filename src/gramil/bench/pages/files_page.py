"""Files taken out and brought in: a description, with the files that it names; the whole pack; the whole record."""

import io
import zipfile
from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path
from tempfile import TemporaryDirectory

from starlette.responses import Response

from gramil import names as n
from gramil.acts.descriptions import begin, keep
from gramil.bench.field_words import at_field
from gramil.bench.made_here import made_on
from gramil.bench.moved import moved_between
from gramil.bench.open_instruments import OpenInstrument, OpenInstruments, changed, named
from gramil.bench.page_request import PageRequest, go
from gramil.bench.pages.instrument_page import instrument_id
from gramil.bench.pages.sheet_page import work_for
from gramil.bench.stale_here import given_on
from gramil.bench.units import formatter_for
from gramil.description.reading import parse_description, toml_of
from gramil.description.self_contained import self_contained
from gramil.doorway.export import export_files
from gramil.doorway.working_files import made_of, working_files
from gramil.faults import Fault, MakersFault
from gramil.shop.instruments import revision
from gramil.shop.made_file import made_text
from gramil.store.failures import Conflict
from gramil.store.opening import Store

LARGEST_TEXT = 1_000_000
"""Letters of a description."""
BESIDE = (("body", "file", "drawing"), ("head", "file", "head_drawing"), ("scale", "temperament", "scale_table"))
"""Files that a description may name: the table and key that name it, the field it is sent in."""
SAME_DAY = (1980, 1, 1, 0, 0, 0)
"""The day that stands on files within an archive: the same pack is the same bytes."""


def files_page(request: PageRequest, open_instruments: OpenInstruments) -> Response:
    """What can be exported of an instrument, and its description in a form to be edited."""
    with request.record.opened() as store:
        seen = named(store, instrument_id(request))
        latest = revision(store, seen.id)
    del open_instruments
    return request.page(
        "files.html", title=f"{seen.name}, files", seen=seen, latest=latest, text=latest.text, faults=()
    )


def description_file(request: PageRequest, _: OpenInstruments) -> Response:
    """The latest description as the maker's own file."""
    with request.record.opened() as store:
        seen = named(store, instrument_id(request))
        text = revision(store, seen.id).text
    return file_answer(f"{plain(seen.name)}.toml", text.encode(), "text/plain; charset=utf-8")


def made_file(request: PageRequest, _: OpenInstruments) -> Response:
    """What is made of an instrument, as its record would say it."""
    with request.record.opened() as store:
        seen = named(store, instrument_id(request))
        text = made_text(made_of(store, seen))
    return file_answer(f"{plain(seen.name)}.made.toml", text.encode(), "text/plain; charset=utf-8")


def record_files(request: PageRequest, _: OpenInstruments) -> Response:
    """Everything in the record as plain files: to work with, and to bring back whole."""
    with request.record.opened() as store:
        texts = {f"work/{name}": text for name, text in working_files(store).items()}
        texts |= {f"whole/{name}": text for name, text in export_files(store).items()}
    content = {name: text.encode() for name, text in texts.items()}
    return file_answer(
        f"{request.record.path.stem}-files-{request.now:%Y-%m-%d}.zip", zipped(content), "application/zip"
    )


def zipped(content: Mapping[str, bytes]) -> bytes:
    """Files in one archive, the same bytes for the same files."""
    made = io.BytesIO()
    with zipfile.ZipFile(made, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, each in content.items():
            archive.writestr(zipfile.ZipInfo(name, SAME_DAY), each, zipfile.ZIP_DEFLATED)
    return made.getvalue()


def plain(name: str) -> str:
    """A name turned into a file name of letters that every machine knows."""
    return "".join(each if each.isascii() and each.isalnum() else "-" for each in name.lower()).strip("-") or "file"


def file_answer(name: str, content: bytes, kind: str) -> Response:
    """A file to be saved under a name."""
    headers = {"content-disposition": f'attachment; filename="{plain_file(name)}"'}
    return Response(content, media_type=kind, headers=headers)


def plain_file(name: str) -> str:
    """A file's name as a header can carry it."""
    return "".join(each if each.isascii() and (each.isalnum() or each in "-_.") else "_" for each in name)


def new_from_file(request: PageRequest, _: OpenInstruments) -> Response:
    """A new instrument from a description that was brought in."""
    with at_field("file"):
        text = _brought(request, "the description")
        name = parse_description(text, "the description").instrument.instrument.name
    with request.record.opened() as store:
        made = begin(store, name, text, replace(request.hand, why="brought in"))
    return go(f"/instrument/{made.id}")


def try_description(request: PageRequest, open_instruments: OpenInstruments) -> Response:
    """What an imported description would move; with `do=keep` it becomes the next revision."""
    number = instrument_id(request)
    with request.record.opened() as store:
        held = open_instruments.held(store, number)
        try:
            text = _brought(request, "the description")
            if request.one("do") != "keep":
                return tried(request, open_instruments, store, held, text)
            changed(held, text)[n.fret_position]
        except MakersFault as fault:
            return _again(request, held, fault.faults)
        try:
            seen = replace(held.seen, version=request.number("version"))
            keep(store, seen, text, request.hand)
        except Conflict:
            return _again(request, held, (_meanwhile(held),))
        return go(f"/instrument/{number}?kept=1")


def tried(
    request: PageRequest,
    open_instruments: OpenInstruments,
    store: Store,
    held: OpenInstrument,
    text: str,
    told: tuple[str, ...] = (),
) -> Response:
    """What a text would move on an instrument; `told` says what the text was made from.

    Raises MakersFault for its faults.
    """
    figures = changed(held, text)
    figures[n.fret_position]
    made, given, work = made_on(store, open_instruments, held), given_on(store, held), work_for(store, held)
    moves = moved_between(held.figures, figures, formatter_for(request.session, figures), made, given, work)
    return request.page("files_try.html", title=held.seen.name, held=held, text=text, moved=moves, told=told)


def _meanwhile(held: OpenInstrument) -> Fault:
    what = f"somebody kept revision {held.latest} meanwhile"
    return Fault(what=what, why="nothing was saved", remedy="look at theirs, then try yours again")


def _again(request: PageRequest, held: OpenInstrument, faults: tuple[Fault, ...]) -> Response:
    """The page again, with what was typed and what is wrong with it."""
    text = request.one("file") or request.one("text")
    return request.page(
        "files.html",
        422,
        title=f"{held.seen.name}, files",
        seen=held.seen,
        latest=held.revision,
        text=text,
        faults=faults,
    )


def _brought(request: PageRequest, name: str) -> str:
    """The description that was sent, as a file or typed, with the files that it names put into it. Raises
    MakersFault.
    """
    text = request.one("file") or request.one("text")
    if not text:
        raise MakersFault.of("no description was chosen", remedy="choose the file, or paste its text")
    if len(text) > LARGEST_TEXT:
        raise MakersFault.of("that is no description", f"it is longer than {LARGEST_TEXT} letters")
    text = text.replace("\r\n", "\n")
    with TemporaryDirectory() as folder:
        for table, key, field in BESIDE:
            _laid_beside(Path(folder), toml_of(text, name).get(table), key, request.one(field))
        return self_contained(text + "\n", name, Path(folder))


def _laid_beside(folder: Path, table: object, key: str, sent: str) -> None:
    """The uploaded file under the name that the description gives it."""
    named_in = table.get(key) if isinstance(table, dict) else None
    if sent and isinstance(named_in, str) and named_in == plain_file(named_in) and named_in.strip("."):
        (folder / named_in).write_text(sent, encoding="utf-8", newline="\n")
