"""What was changed in a description, by the maker's own keys: each key once, with what it was and what it is now.

One key may set several base values (the length of the scale sets both its ends), and a base value may follow from
several keys. What was not written follows from something that was: it is told only if nothing else is.
"""

from collections.abc import Iterable, Iterator, Mapping

from gramil.address import parse_address
from gramil.change.shift import BuiltOtherwise, side_by_side
from gramil.description.base import keys_of
from gramil.formatter import Formatter, shown
from gramil.prints.pages import steps_in_words, words_of

ROOM = 100
"""Letters that a value before and after may take with their key; of longer ones it is said where they differ."""


def changed_lines(names: Iterable[str], old: Formatter, new: Formatter) -> Iterator[str]:
    """A sentence for each key that differs between two instruments; `names` are the base values that differ."""
    names = tuple(names)
    told = _keys(names, old, new) or {words_of(name, new): name for name in names}
    yield from (f"{key}{_change(name, ROOM - len(key), old, new)}." for key, name in told.items())


def _keys(names: Iterable[str], old: Formatter, new: Formatter) -> Mapping[str, str]:
    """The keys that are written otherwise, each with the base value that follows from the fewest of them."""
    written = {name: key for name in names if (key := _written(name, old, new))}
    told: dict[str, str] = {}
    meant: set[str] = set()
    for name in sorted(written, key=lambda name: (len(keys_of(name)), _place(name, written[name]))):
        if not meant.intersection(keys_of(name)):
            told[written[name]] = name
            meant.add(keys_of(name)[_place(name, written[name])])
    return {written[name]: told[written[name]] for name in written if told.get(written[name]) == name}


def _written(name: str, old: Formatter, new: Formatter) -> str:
    """The key that sets a base value in the description; as it was written before, if it stands there no more."""
    now, before = (each.figures.origins.get(name) for each in (new, old))
    return (now.key if now else "") or (before.key if before else "") if keys_of(name) else ""


def _place(name: str, key: str) -> int:
    """Which of a base value's keys it is."""
    keys = keys_of(name)
    return next((place for place, each in enumerate(keys) if key == each or key.startswith(f"{each}.")), len(keys) - 1)


def _change(name: str, room: int, old: Formatter, new: Formatter) -> str:
    """What a base value was and is: whole if it has room, else the first place where it differs."""
    was, now = (each.text(name) or "nothing" for each in (old, new))
    if was != now and len(was) + len(now) <= room:
        return f": {was}, now {now}"
    try:
        differing = list(side_by_side(name, old.figures[name], new.figures[name], None))
    except BuiltOtherwise:
        differing = []
    if not differing:
        return " is not what it was"
    address, before, after, unit = differing[0]
    more = f" (and {len(differing) - 1} more)" if len(differing) > 1 else ""
    where = steps_in_words(parse_address(address)[1])
    return f"{where}: {shown(before, unit, old.first)}, now {shown(after, unit, new.first)}{more}"
