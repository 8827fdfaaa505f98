"""What files brought into a store, line by line; for an instrument saved again, what is no longer right."""

from collections.abc import Iterable, Iterator
from shlex import quote as quoted

from gramil.acts.bringing_in import Brought
from gramil.change.made_in_store import standing_in_store
from gramil.change.made_words import lines, lost_pieces
from gramil.description.reading import parse_keys
from gramil.faults import MakersFault
from gramil.shop.instruments import Instrument, instrument, revision
from gramil.store.opening import Store
from gramil.wood.log_words import found_on_the_way


def lines_of_files(store: Store, brought: Iterable[Brought]) -> Iterator[str]:
    """A line or more for each file."""
    for each in brought:
        yield from _brought_line(store, each)


def _brought_line(store: Store, each: Brought) -> Iterator[str]:
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
            yield from spoilt(store, instrument(store, each.whose))


def kept_words(each: Brought) -> str:
    """That a list of operations is kept."""
    return f"{each.file}: kept as the operations of {each.whose}."


def spoilt(store: Store, owner: Instrument) -> Iterator[str]:
    """What is made of an instrument and is no longer right by its latest revision."""
    try:
        judged = standing_in_store(store, owner)
    except MakersFault as fault:
        yield f"  What is made is not judged: {fault.faults[0]}"
        return
    first = parse_keys(revision(store, owner.id).text, owner.name).instrument.units
    for each, line in lines(judged, first):
        yield f"  {each.standing.upper():<8} {line}."
    for piece in lost_pieces(judged):
        command = f"gramil store anew {store.path.name} {quoted(owner.name)} {quoted(piece.name)}"
        yield f"  When {piece.what} is begun anew: {command}"
