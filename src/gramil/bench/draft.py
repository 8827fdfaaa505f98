"""A draft: keys set differently from the saved ones, carried in the page's address and nowhere else, until kept or
dropped.
"""

from dataclasses import dataclass
from functools import cached_property
from urllib.parse import urlencode

from gramil import names as n
from gramil.bench.chosen import Written
from gramil.bench.open_instruments import OpenInstrument, changed
from gramil.bench.page_request import PageRequest
from gramil.description.toml_tables import tables_of
from gramil.description.writing import set_key
from gramil.faults import Fault, MakersFault
from gramil.graph import Figures

SET = "set"
MOST = 40
"""A draft changes at most this many keys at once."""


@dataclass(frozen=True)
class Draft:
    """What is set, and the text and figures that follow; if there are faults, the figures are the saved ones."""

    sets: tuple[tuple[str, str], ...]
    text: str
    figures: Figures
    faults: tuple[Fault, ...] = ()

    @cached_property
    def data(self) -> Written:
        """The text's tables, for looking up what is written."""
        return tables_of(self.text)

    @property
    def changed(self) -> bool:
        """Whether there is anything to keep."""
        return bool(self.sets) and not self.faults

    @cached_property
    def query(self) -> str:
        """The draft as part of an address, with a leading & unless it is empty."""
        return "".join("&" + urlencode({SET: f"{key}={value}"}) for key, value in self.sets)

    def written(self, key: str) -> str | None:
        """What the draft sets a key to, or None if it does not set it."""
        return dict(self.sets).get(key)


def draft_of(request: PageRequest, held: OpenInstrument) -> Draft:
    """The draft that a request carries: each `set` is `key=value`; a field `key` with `value` is set last."""
    sets = dict(_pair(each) for each in request.many(SET)[:MOST])
    if request.one("key"):
        sets[request.one("key")] = request.one("value")
    return drafted(held, tuple(sets.items()))


def _pair(written: str) -> tuple[str, str]:
    key, _, value = written.partition("=")
    return key.strip(), value.strip()


def drafted(held: OpenInstrument, sets: tuple[tuple[str, str], ...]) -> Draft:
    """The draft with these keys set."""
    text = held.revision.text
    try:
        for key, value in sets:
            text = set_key(text, key, value)
        figures = changed(held, text) if sets else held.figures
        figures[n.fret_position]
    except MakersFault as fault:
        return Draft(sets, held.revision.text, held.figures, fault.faults)
    return Draft(sets, text, figures)
