"""What is known of a guitar that came in, for its page: it is not drawn, since most of it is not known."""

from collections.abc import Iterator, Mapping
from typing import Any

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


def known_of(text: str, unit: LengthUnit) -> Iterator[tuple[str, str, str]]:
    """Each key of `TO_GIVE`, what it is in words that are in this unit, and its value as written; empty where it is not
    given.
    """
    data = tables_of(text)
    for key in TO_GIVE:
        yield key, _words(key, unit), _written(data, key)


def _words(key: str, unit: LengthUnit) -> str:
    table, name = key.split(".")
    model = table_in(Instrument.model_fields[table].annotation)
    assert model is not None
    what = own_words_in_shop_units(model.model_fields[name].description or "", unit)
    return f"{table} {name.replace('_', ' ')}, {what}"


def _written(data: Mapping[str, Any], key: str) -> str:
    table, name = key.split(".")
    value = data.get(table, {}).get(name)
    return "" if value is None else str(value).lower() if isinstance(value, bool) else str(value)
