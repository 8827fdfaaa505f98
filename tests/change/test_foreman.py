"""The foreman's note: one screen, in the maker's words, in the order in which it is acted on."""

import re
from importlib.resources import files

import pytest

from gramil.change.as_made import as_made, with_readings
from gramil.change.foreman import foremans_note, readings_note
from gramil.change.shift import shift
from gramil.description.reading import parse_description, parse_shop
from gramil.description.writing import set_key
from gramil.graph import Figures, Pin
from gramil.prints.papers import papers_that_differ
from gramil.prints.whole import figures_of

EXAMPLES = files("gramil") / "data" / "examples"
ORDER = [
    "Changed",
    "On the body, toward the tail",
    "Already made",
    "What can be done",
    "Papers no longer true",
    "Dimensions",
]
CHANGES = (
    "scale.length=650mm",
    "scale.join=12",
    "board.thickness=5 mm",
    "neck.rod=none",
    "body.depth_neck=98 mm",
    "nut.width=44 mm",
)


def changed(name: str, change: str) -> tuple[Figures, Figures]:
    text = (EXAMPLES / f"{name}.toml").read_text(encoding="utf-8")
    shop = parse_shop((EXAMPLES / "shop.toml").read_text(encoding="utf-8"))
    key, _, value = change.partition("=")
    return figures_of(parse_description(text), shop), figures_of(parse_description(set_key(text, key, value)), shop)


@pytest.mark.parametrize("name", ["tarn", "fell"])
@pytest.mark.parametrize("change", CHANGES)
def test_it_fits_a_screen_and_speaks_in_words(name: str, change: str) -> None:
    before, after = changed(name, change)
    parts = foremans_note(shift(before, after, 0.05), before, after)
    assert [part.heading for part in parts] == [head for head in ORDER if head in {part.heading for part in parts}]
    assert sum(1 + len(part.lines) for part in parts) <= 40
    for part in parts[1:]:
        for line in part.lines:
            assert not re.search(r"[a-z]_[a-z]|\[|[{}]", line), line
            assert not re.search(r": (\S+ \S+), now \1\.", line), line
            assert line.endswith((".", "...")), line


def test_a_sheet_that_was_handed_out_is_told_first() -> None:
    before, after = changed("tarn", "scale.length=650mm")
    found = shift(before, after)
    sheet = next(paper for paper in papers_that_differ(before, after) if paper.kind == "sheet")
    (papers,) = (part for part in foremans_note(found, before, after, (), [sheet.name]) if "Papers" in part.heading)
    assert papers.lines[0] == f"Handed out: {sheet.title}. Print it again."


def test_what_moves_with_one_thing_is_one_sentence() -> None:
    """The join from 12 to 13 on 630 mm moves all that is held to the saddle by the same 17.70 mm toward the neck.

    By hand: 630 (2^(-13/12) - 2^(-12/12)) = 297.32 - 315 = -17.68 mm, and the set-back moves it by less than 0.1.
    """
    before, after = changed("tarn", "scale.join=12")
    (body,) = (part for part in foremans_note(shift(before, after, 0.05), before, after) if "body" in part.heading)
    assert len([line for line in body.lines if "held to the saddle" in line]) == 1
    by = float(re.search(r"([+-]?[\d.]+) mm, held to the saddle", body.lines[0])[1])  # type: ignore[index]
    assert by == pytest.approx(17.68, abs=0.1)


@pytest.mark.parametrize("reading", ["board_thickness=6.0", "slot_depth_setting=3.4", "fret_position[12]=315.4"])
def test_a_reading_is_told_in_the_same_order_and_words(reading: str) -> None:
    before, _ = changed("tarn", "scale.length=630mm")
    address, _, value = reading.partition("=")
    pins = {address: Pin(float(value), "today")}
    after = with_readings(before, pins)
    sheets = [paper for paper in papers_that_differ(before, after) if paper.kind == "sheet"]
    given = {paper.name for paper in sheets[1:2]}
    found = as_made(before, pins, "thicknessed")
    parts = {part.heading: part.lines for part in readings_note(found, before, after, sheets, given)}
    order = ["Measured", "On the body, toward the tail", "Already made", "What can be done", "Sheets to print again"]
    assert list(parts) == [head for head in (*order, "What follows, as made") if head in parts]
    assert f"{float(value):.2f} mm, wanted" in parts["Measured"][0]
    assert sum(1 + len(lines) for lines in parts.values()) <= 40
    for heading, lines in parts.items():
        for line in lines:
            assert line.endswith("."), line
            assert heading == "Already made" or not re.search(r"[a-z]_[a-z]|[{}]", line), line
    if given:
        assert parts["Sheets to print again"][0] == f"Handed out: {sheets[1].title}. Print it again."


def test_a_reading_as_wanted_moves_nothing() -> None:
    before, _ = changed("tarn", "scale.length=630mm")
    pins = {"board_thickness": Pin(before["board_thickness"], "today")}
    parts = readings_note(as_made(before, pins), before, with_readings(before, pins))
    assert [part.lines[-1] for part in parts] == [
        "Finished thickness at the crest at the tail end: 6.30 mm, wanted 6.30 mm, as it should be.",
        "Nothing else follows from it.",
    ]
