"""A sheet's print as it is kept when it is handed out, and what has changed on it since, in words."""

import json
import math
from collections.abc import Sequence
from typing import Any

from gramil.prints.papers import Print, alike

PLACES = 5
"""Figures behind the point of a mark's coordinates, in mm: a hundredth of what counts as another place."""


def kept_text(printed: Print) -> str:
    """What a sheet says, as JSON: the same text for the same sheet."""
    return json.dumps(
        _plain((*printed.printed, printed.drawn)), ensure_ascii=False, separators=(",", ":"), allow_nan=False
    )


def what_differs(kept: str, printed: Print) -> str:
    """What would be printed differently now than on the kept sheet, in words; empty if nothing would."""
    before, now = json.loads(kept), json.loads(kept_text(printed))
    if alike(before, now):
        return ""
    figures = _figures(before), _figures(now)
    for what, said in figures[1].items():
        if what in figures[0] and figures[0][what] != said:
            return f"{what}: {figures[0][what]} on it, now {said}"
    return "its drawing is another" if before[0] == now[0] else "other words and figures stand on it now"


def _figures(page: list[Any]) -> dict[str, str]:
    """The big figures of a kept page, by what each is."""
    return {each["what"]: f"{each['number']} {each['unit']}".strip() for each in page[0]["figures"]}


def _plain(value: Any) -> Any:
    """A print in the form of JSON; a coordinate that is not a number becomes a word."""
    if isinstance(value, float):
        return round(value, PLACES) if math.isfinite(value) else str(value)
    if isinstance(value, Sequence) and not isinstance(value, str):
        return [_plain(each) for each in value]
    return {key: _plain(each) for key, each in value.items()} if isinstance(value, dict) else value
