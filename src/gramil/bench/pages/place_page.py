"""What is known of a place, written down by form: its room, its changes of air, its humidifier."""

from collections.abc import Mapping
from dataclasses import replace
from functools import partial
from typing import Any

from starlette.responses import Response

from gramil.acts.air import change_place
from gramil.air.places import place
from gramil.bench.field_words import all_read
from gramil.bench.open_instruments import OpenInstruments
from gramil.bench.page_request import PageRequest, go
from gramil.faults import MakersFault

NUMBERS = ("room", "humidifier", "dehumidifier")
CHANGES = ("least", "most")


def keep_place(request: PageRequest, _: OpenInstruments) -> Response:
    """The figures of a place as typed; an empty field takes its figure away. Raises what a description would refuse."""
    with request.record.opened() as store:
        seen = place(store, request.one("place"))
        typed = _typed(request)
        kept = {key: value for key, value in {**seen.figures, **typed}.items() if value is not None}
        if kept != seen.figures:
            change_place(store, replace(seen, version=request.number("version", seen.version)), kept, request.hand)
    return go("/air")


def _typed(request: PageRequest) -> Mapping[str, Any]:
    """Every figure of the form; None for an empty field."""
    keys = (*NUMBERS, *CHANGES)
    numbers = dict(zip(keys, all_read(**{key: partial(_number, request, key) for key in keys}), strict=True))
    least, most = (numbers.pop(key) for key in CHANGES)
    changes = None if least is None and most is None else [least or 0.0, most if most is not None else least]
    return {**numbers, "air_changes": changes, "air_from": request.one("air_from") or None}


def _number(request: PageRequest, key: str) -> float | None:
    text = request.one(key).replace(",", ".")
    if not text:
        return None
    try:
        return float(text)
    except ValueError:
        raise MakersFault.of(f'"{text}" is no number', remedy="write a number such as 45", where=key) from None
