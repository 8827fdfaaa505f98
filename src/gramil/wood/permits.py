"""Whether trade in a wood is listed: once, for findings, sheets, quotes, labels and the owner's page alike.

The rows of the species' table are dated. A name under which protected woods are sold asks for the species.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from gramil.wood.species import Flag, Listing, PlainName, Species, plain_names
from gramil.wood.wood_words import named, words_of

Status = Literal["listed", "ask", "not known", "not listed"]
STATUSES: tuple[Status, ...] = ("listed", "ask", "not known", "not listed")
"""Gravest first."""
MONTHS = (
    "January", "February", "March", "April", "May", "June",
    "July", "August", "September", "October", "November", "December",
)  # fmt: skip
HOW: Mapping[Flag, str] = {"read": "read", "transcribed": "from a transcription", "memory": "from memory"}
"""How well a row is known, in a word."""
PAPERS = (
    "Papers before it is bought, sold or crosses a border. National timber laws ask besides where any wood came from; "
    "local law comes first."
)


LAW = "Papers before it is sold or crosses a border; local law first."
ASK = f"Of which species? Some woods of this name are protected. {LAW}"


@dataclass(frozen=True)
class Permit:
    """What is known of the trade in one wood: its name as the maker wrote it, its status, and a sentence that says
    why.
    """

    wood: str
    status: Status
    says: str
    brief: str = ""
    """The same in few words, for the label of a piece; empty where nothing is asked."""

    @property
    def line(self) -> str:
        """What is to be printed wherever the wood is worked, sold or handed over; empty if nothing is required."""
        return f"{self.says} {PAPERS}" if self.status in ("listed", "ask") else ""


def permit_of(wood: str, own: Mapping[str, Species] | None = None) -> Permit:
    """The status of trade in a wood of this name, the maker's `own` woods first."""
    found = named(wood, own) or _by_a_word(wood)
    if isinstance(found, PlainName) and found.ask:
        return Permit(wood, "ask", f"{wood}: of which species? {_sentence(found.ask)} Write its botanical name.", ASK)
    trade = found.trade if found is not None else None
    if found is None or trade is None:
        return Permit(wood, "not known", f"{wood}: whether it is protected is not known; ask for its botanical name.")
    if not trade.appendix:
        return Permit(wood, "not listed", f"{wood}: {trade.text} in CITES, {_looked_up(trade)}.")
    botanical = found.botanical if isinstance(found, Species) else found.name
    since = f"listed since {in_words(trade.since)}, {_looked_up(trade)}"
    return Permit(
        wood,
        "listed",
        f"{wood} ({botanical}): CITES Appendix {trade.appendix}, {since}: {trade.text}.",
        f"CITES Appendix {trade.appendix}, {since}. {LAW}",
    )


def _by_a_word(wood: str) -> PlainName | None:
    """What an unknown name asks for because of one of its words: Madagascar ebony is an ebony."""
    words = set(words_of(wood))
    return next((each for name, each in plain_names().items() if each.ask and name in words), None)


def _looked_up(trade: Listing) -> str:
    return f"looked up in {in_words(trade.looked_up)}, {HOW.get(trade.flag, trade.flag)}"


def in_words(month: str) -> str:
    """A month such as 2025-12 in words."""
    year, _, number = month.partition("-")
    return f"{MONTHS[int(number) - 1]} {year}"


def _sentence(text: str) -> str:
    return f"{text[:1].upper()}{text[1:]}."
