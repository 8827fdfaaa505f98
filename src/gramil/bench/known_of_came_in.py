"""What is known of a guitar that came in, for its page: it is not drawn, since most of it is not known."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, Literal, get_args, get_origin

from gramil.description.instrument import Instrument
from gramil.description.problems import table_in
from gramil.description.toml_tables import tables_of
from gramil.in_shop_units import own_words_in_shop_units
from gramil.measure import LengthUnit

TO_GIVE = (
    *("repair.refret", "repair.nut", "repair.saddle", "repair.reset", "repair.bridge"),
    *("scale.length", "scale.join", "wire.use", "nut.width", "nut.spread", "bridge.spread", "bridge.thickness"),
    *("board.width", "board.width_at", "board.thickness", "board.arch", "board.beyond_last_fret", "board.wood"),
    *("neck.heel_depth", "neck.depth_at_1", "neck.depth_at_10", "neck.rod", "top.length", "top.rise"),
    *("saddle.thickness", "saddle.slot_depth", "saddle.exposed", "heights.action_bass", "heights.action_treble"),
    *("heights.relief", "heights.nut_bass", "heights.nut_treble", "work.neck_joint"),
)
"""What the work on an old guitar asks for most; any other key is given in its file."""
WORK = "repair."
YES_NO = (("true", "yes"), ("false", "no"))


OWN_WORDS = {
    "board.arch": "board: its arch, one radius, or flat",
    "board.width": "board: finished width where it is measured",
    "board.width_at": 'board: where that width is, such as "fret 12", "400 mm", or "fret 12 + 5 mm"',
}
"""What is said of a key here; of the others, what the description says of it."""


@dataclass(frozen=True)
class Known:
    """A key, what it is in words, its value for reading and as it is typed; both empty where it is not given."""

    key: str
    words: str
    shown: str
    typed: str
    choices: tuple[tuple[str, str], ...]


def known_of(text: str, unit: LengthUnit) -> tuple[tuple[str, tuple[Known, ...]], ...]:
    """The keys of `TO_GIVE` in three groups: what is to be done, what is known, and what is not known yet.

    Lengths are worded in this unit.
    """
    data = tables_of(text)
    found = [_known(data, key, unit) for key in TO_GIVE]
    work = tuple(each for each in found if each.key.startswith(WORK))
    rest = [each for each in found if each not in work]
    given = tuple(each for each in rest if each.typed)
    missing = tuple(each for each in rest if not each.typed)
    return (("What is to be done", work), ("Known", given), ("Not known yet", missing))


def _known(data: Mapping[str, Any], key: str, unit: LengthUnit) -> Known:
    table, name = key.split(".")
    model = table_in(Instrument.model_fields[table].annotation)
    assert model is not None
    field = model.model_fields[name]
    value = data.get(table, {}).get(name)
    typed = "" if value is None else str(value).lower() if isinstance(value, bool) else _plain(value)
    choices = YES_NO if field.annotation is bool else tuple((each, each) for each in _allowed(field.annotation))
    words = own_words_in_shop_units(_words(key, field.description or name), unit)
    return Known(key, words, dict(YES_NO).get(typed, typed), typed, choices)


def _words(key: str, what: str) -> str:
    table = key.split(".")[0]
    said = OWN_WORDS.get(key) or (what if table in what or key.startswith(WORK) else f"{table}: {what}")
    return said[:1].upper() + said[1:]


def _allowed(annotation: Any) -> tuple[str, ...]:
    return get_args(annotation) if get_origin(annotation) is Literal else ()


def _plain(value: Any) -> str:
    """What is written, without a file's brackets."""
    if isinstance(value, Mapping):
        return ", ".join(f"{name} {each}" for name, each in value.items())
    return ", ".join(map(str, value)) if isinstance(value, list) else str(value)
