"""Events as an iCalendar file (RFC 5545): CRLF lines folded at 75 octets, text escaped, the stamp passed in.

Times are floating: by the clock on the wall, wherever that is, as a shop's hours are.
"""

import hashlib
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import UTC, datetime

FOLD = 75
"""Octets of a line, its end not counted (section 3.1)."""


@dataclass(frozen=True)
class Event:
    """One event by the clock on the wall; `busy` if it needs the maker's hands, not if something only cures."""

    name: str
    begins: datetime
    ends: datetime
    summary: str
    description: str = ""
    category: str = ""
    busy: bool = True


def icalendar_bytes(events: Iterable[Event], stamp: datetime, title: str) -> bytes:
    """The calendar as a file. `stamp`, with its offset, is when it was made; the same input gives the same bytes.

    An event's UID follows from its name and its calendar's title, so that a plan imported again replaces the old one.
    """
    lines = ["BEGIN:VCALENDAR", "VERSION:2.0", "PRODID:-//gramil//weeks//EN", f"X-WR-CALNAME:{escaped(title)}"]
    for event in events:
        lines += _event(event, stamp, title)
    lines.append("END:VCALENDAR")
    return b"".join(folded(line) for line in lines)


def _event(event: Event, stamp: datetime, title: str) -> Iterator[str]:
    # by its name: taken in again, it is moved in the calendar and not added
    uid = hashlib.sha256(f"{title}\n{event.name}".encode()).hexdigest()[:32]
    yield "BEGIN:VEVENT"
    yield f"UID:{uid}@gramil.invalid"
    yield f"DTSTAMP:{stamp.astimezone(UTC):%Y%m%dT%H%M%SZ}"
    yield f"DTSTART:{event.begins:%Y%m%dT%H%M%S}"
    yield f"DTEND:{event.ends:%Y%m%dT%H%M%S}"
    yield f"SUMMARY:{escaped(event.summary)}"
    if event.description:
        yield f"DESCRIPTION:{escaped(event.description)}"
    if event.category:
        yield f"CATEGORIES:{escaped(event.category)}"
    yield f"TRANSP:{'OPAQUE' if event.busy else 'TRANSPARENT'}"
    yield "END:VEVENT"


def escaped(text: str) -> str:
    """Text as a value (section 3.3.11): backslash, semicolon, comma and line breaks escaped, no other controls."""
    text = text.replace("\r\n", "\n").replace("\\", "\\\\").replace(";", "\\;").replace(",", "\\,")
    printable = (character for character in text if character >= " " or character in "\n\t")
    return "".join(printable).replace("\n", "\\n")


def folded(line: str) -> bytes:
    """A content line in UTF-8, folded so that no line is longer than 75 octets and no character is cut."""
    parts, part, room = [], b"", FOLD
    for character in line:
        octets = character.encode()
        if len(part) + len(octets) > room:
            parts.append(part)
            part, room = b"", FOLD - 1
        part += octets
    return b"\r\n ".join([*parts, part]) + b"\r\n"
