"""What files brought into a store, line by line; for an instrument saved again, what is no longer right."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from shlex import quote as quoted

from gramil.acts.bringing_in import Brought
from gramil.answers.record import FileBrought
from gramil.answers.verdicts import MadeAnswer, made_answer
from gramil.change.made_in_store import standing_in_store
from gramil.change.made_words import lines, lost_pieces
from gramil.description.reading import parse_keys
from gramil.faults import MakersFault
from gramil.shop.instruments import Instrument, instrument, revision
from gramil.store.opening import Store
from gramil.wood.log_words import found_on_the_way


@dataclass(frozen=True)
class Spoilt:
    """What is made of an instrument and is no longer right: line by line, and as records; or why it is not judged."""

    lines: tuple[str, ...] = ()
    made: tuple[MadeAnswer, ...] = ()
    not_judged: str = ""


@dataclass(frozen=True)
class JudgedFile:
    """A file that was brought in, and what is no longer right by it."""

    brought: Brought
    spoilt: Spoilt = Spoilt()

    @property
    def told(self) -> FileBrought:
        """The file as a record."""
        each, report = self.brought, self.brought.report
        left_out = report.lines_left_out if report else 0
        return FileBrought(
            *(each.file, each.kind, each.whose, each.count, each.there_already, left_out),
            made=self.spoilt.made,
            not_judged=self.spoilt.not_judged,
        )


def judged_files(store: Store, brought: Iterable[Brought]) -> tuple[JudgedFile, ...]:
    """The files with what is no longer right of each instrument that was saved again."""
    return tuple(
        JudgedFile(each, spoilt(store, instrument(store, each.whose)) if each.kind == "revision" else Spoilt())
        for each in brought
    )


def lines_of_files(files: Iterable[JudgedFile]) -> Iterator[str]:
    """A line or more for each file."""
    for each in files:
        yield from _brought_line(each.brought)
        yield from each.spoilt.lines


def _brought_line(each: Brought) -> Iterator[str]:
    match each.kind:
        case "export":
            yield f"Brought in: {each.file}."
        case "shop":
            yield f"Brought in: {each.file}."
        case "rows":
            yield f"{each.file}: {each.count} rows."
        case "readings":
            yield f"{each.file}: {each.count} readings of the {each.whose}, {each.there_already} were there already."
            yield from found_on_the_way(each.report) if each.report is not None else ()
        case "operations":
            yield kept_words(each)
        case "instrument":
            yield f"{each.whose}: added."
        case "made":
            yield f"{each.whose}: {each.count} operations done."
        case "revision":
            yield f"{each.whose}: saved as a revision."


def kept_words(each: Brought) -> str:
    """That a list of operations is kept."""
    return f"{each.file}: kept as the operations of {each.whose}."


def spoilt(store: Store, owner: Instrument) -> Spoilt:
    """What is made of an instrument and is no longer right by its latest revision."""
    try:
        judged = standing_in_store(store, owner)
    except MakersFault as fault:
        why = str(fault.faults[0])
        return Spoilt((f"  What is made is not judged: {why}",), not_judged=why)
    first = parse_keys(revision(store, owner.id).text, owner.name).instrument.units
    said = [f"  {each.standing.upper():<8} {line}." for each, line in lines(judged, first)]
    for piece in lost_pieces(judged):
        command = f"gramil store anew {store.path.name} {quoted(owner.name)} {quoted(piece.name)}"
        said.append(f"  When {piece.what} is begun anew: {command}")
    return Spoilt(tuple(said), made_answer(judged, first))
