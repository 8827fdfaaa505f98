"""The calendar against RFC 5545: lines, folding, escaping, and what an event must have."""

from datetime import UTC, datetime, timedelta, timezone

from hypothesis import given
from hypothesis import strategies as st

from gramil.writers.icalendar import Event, escaped, folded, icalendar_bytes

STAMP = datetime(2026, 1, 19, 10, 0, tzinfo=timezone(timedelta(hours=1)))
EVENT = Event("Tarn slotted", datetime(2026, 1, 19, 9), datetime(2026, 1, 19, 10), "Slot; cut, and \\ more", "one\ntwo")


def unfolded(content: bytes) -> list[str]:
    """Content lines as section 3.1 reads them."""
    return content.replace(b"\r\n ", b"").decode().removesuffix("\r\n").split("\r\n")


def test_a_calendar_has_what_it_must() -> None:
    lines = unfolded(icalendar_bytes([EVENT], STAMP, "Weeks"))
    assert lines[0] == "BEGIN:VCALENDAR"
    assert lines[-1] == "END:VCALENDAR"
    for required in ("VERSION:2.0", "DTSTAMP:20260119T090000Z", "DTSTART:20260119T090000", "DTEND:20260119T100000"):
        assert required in lines
    assert sum(line.startswith("PRODID:") for line in lines) == 1
    assert sum(line.startswith("UID:") for line in lines) == 1


def test_text_is_escaped_as_section_3_3_11_says() -> None:
    lines = unfolded(icalendar_bytes([EVENT], STAMP, "Weeks"))
    assert r"SUMMARY:Slot\; cut\, and \\ more" in lines
    assert r"DESCRIPTION:one\ntwo" in lines
    assert escaped("a\r\nb\x07") == r"a\nb"


@given(st.text(st.characters(blacklist_characters="\r\n", blacklist_categories=["Cs"]), max_size=400))
def test_folding_keeps_the_text_and_no_line_is_longer_than_75_octets(text: str) -> None:
    content = folded(text)
    assert content.replace(b"\r\n ", b"") == text.encode() + b"\r\n"
    for line in content.removesuffix(b"\r\n").split(b"\r\n"):
        assert len(line) <= 75
        line.decode()  # no character is cut


def test_the_same_plan_again_replaces_the_old_one() -> None:
    later = Event(EVENT.name, datetime(2026, 1, 20, 9), datetime(2026, 1, 20, 10), "moved")
    uid = [
        [line for line in unfolded(icalendar_bytes([each], STAMP, "Weeks")) if line[:4] == "UID:"]
        for each in (EVENT, later)
    ]
    assert uid[0] == uid[1]
    assert icalendar_bytes([EVENT], STAMP, "W") == icalendar_bytes([EVENT], STAMP.astimezone(UTC), "W")
