"""The record: every change with who and when, the last one taken back, a copy to keep, and a proof."""

from dataclasses import dataclass
from pathlib import Path
from tempfile import TemporaryDirectory

from starlette.responses import Response

from gramil.acts import record
from gramil.bench.ages import clock
from gramil.bench.open_instruments import OpenInstruments
from gramil.bench.page_request import PageRequest, go, own_address
from gramil.doorway.backup import backup
from gramil.doorway.proof import Proof, proof_of
from gramil.doorway.verify import verify
from gramil.faults import Fault, MakersFault
from gramil.store.undo import last_change
from gramil.store.writing import Change, changes

SHOWN = 60
"""How many changes are listed."""


@dataclass(frozen=True)
class ChangeRow:
    """A change as listed: its moment in words, and whether it has been taken back since."""

    change: Change
    at: str
    taken_back: bool


def record_page(request: PageRequest, _: OpenInstruments) -> Response:
    """The changes, newest first; with `prove` also whether the record is sound and a copy of it can be put back."""
    proof: Proof | None = None
    faults: tuple[Fault, ...] = ()
    if request.one("prove"):
        faults = verify(request.record.path)
    with request.record.opened() as store:
        if request.one("prove") and not faults:
            proof = proof_of(store, request.now)
        found, last = changes(store, SHOWN), last_change(store)
    back = {each.undoes for each in found}
    rows = [ChangeRow(each, clock(each.at, request.now), each.id in back) for each in found]
    return request.page(
        "record.html",
        title="Record",
        rows=rows,
        last=last,
        proof=proof,
        faults=faults,
        file=request.record.path.name,
        told=request.session.told if request.one("told") else (),
    )


def undo_page(request: PageRequest, _: OpenInstruments) -> Response:
    """What would be taken back, before that is done."""
    with request.record.opened() as store:
        last = last_change(store)
    if last is None or str(last.id) != request.one("change"):
        raise MakersFault.of("this is not the last change any more", remedy="look at the record again")
    return request.page("undo.html", title="Take back", last=last, at=clock(last.at, request.now))


def take_back(request: PageRequest, _: OpenInstruments) -> Response:
    """Take back the last change, if it is still the one that was seen; sent twice, it is taken back once."""
    with request.record.opened() as store:
        record.take_back(store, request.number("change"), request.hand)
    return go(own_address(request.one("back"), "/record"))


def copy_of_record(request: PageRequest, _: OpenInstruments) -> Response:
    """The whole record as one file, proved before it is sent."""
    name = f"{request.record.path.stem}-{request.now:%Y-%m-%d}.gramil"
    with TemporaryDirectory() as folder, request.record.opened() as store:
        copy = Path(folder) / name
        backup(store, copy)
        content = copy.read_bytes()
    headers = {"content-disposition": f'attachment; filename="{_plain(name)}"'}
    return Response(content, media_type="application/octet-stream", headers=headers)


def _plain(name: str) -> str:
    """A file's name as a header can carry it."""
    return "".join(each if each.isascii() and (each.isalnum() or each in "-_. ") else "_" for each in name)
