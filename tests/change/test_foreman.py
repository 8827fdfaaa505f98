"""The foreman's note: one screen, in the maker's words, in the order in which it is acted on."""

import re
from collections import Counter
from collections.abc import Callable
from importlib.resources import files
from pathlib import Path

import pytest

from gramil.change.as_made import as_made, with_readings
from gramil.change.changed_keys import changed_lines
from gramil.change.foreman import foremans_note, in_rows, readings_note
from gramil.change.made import judge
from gramil.change.shift import shift
from gramil.description.reading import parse_description, parse_shop
from gramil.description.writing import set_key
from gramil.formatter import formatter_of
from gramil.graph import Figures, Pin
from gramil.prints.pages import words_of
from gramil.prints.papers import papers_that_differ
from gramil.prints.whole import dimensions_of, figures_of
from gramil.shop.made_file import read_made

EXAMPLES = Path(str(files("gramil") / "data" / "examples"))
SHOP = parse_shop((EXAMPLES / "shop.toml").read_text(encoding="utf-8"))
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
    key, _, value = change.partition("=")
    return figures_of(parse_description(text), SHOP), figures_of(parse_description(set_key(text, key, value)), SHOP)


@pytest.mark.parametrize("name", ["tarn", "fell"])
@pytest.mark.parametrize("change", CHANGES)
def test_it_fits_a_screen_and_speaks_in_words(name: str, change: str) -> None:
    before, after = changed(name, change)
    parts = foremans_note(shift(before, after, 0.05), before, after)
    assert [part.heading for part in parts] == [head for head in ORDER if head in {part.heading for part in parts}]
    assert sum(1 + len(in_rows(line)) for part in parts for line in part.lines) <= 40 + len(parts)
    for part in parts[1:]:
        for line in part.lines:
            assert not re.search(r"[a-z]_[a-z]|\[|[{}]", line), line
            assert not re.search(r": (\S+ \S+), now \1\.", line), line
            assert line.endswith("."), line
            assert not line.endswith("..."), line


@pytest.mark.parametrize(
    ("was", "is_now", "lines"),
    [
        ('wood = "persimmon"               #', 'wood = "ebony" #', ["board.wood: persimmon, now ebony."]),
        ("[95, 133]", "[95, 134]", ["body.outline is not what it was."]),
        ('"A2", "E2"', '"A2", "D2"', ["strings.tuning: 82.41 to 329.63 Hz, now 73.42 to 329.63 Hz."]),
        ("length = 630 ", "length = 640 ", ["scale.length: 630.00 mm, now 640.00 mm."]),
        ("height = 12\n", "height = 13\n", ["brace, back 3, height: 12.00 mm, now 13.00 mm (and 1 more)."]),
        ('use = "medium"', 'use = "large"', ["wire.use: medium, now large."]),
        ('nut = "320 mm"', 'nut = "330 mm"', ["board.arch.nut: radius 320.00 mm, now radius 330.00 mm."]),
    ],
)
def test_what_was_changed_is_told_by_the_key_that_was_written(was: str, is_now: str, lines: list[str]) -> None:
    """What follows from that key (the wood's stiffness, the strings' pitch standard) is not told as changed."""
    text = (EXAMPLES / "tarn.toml").read_text(encoding="utf-8")
    assert was in text
    before, after = (figures_of(parse_description(each), SHOP) for each in (text, text.replace(was, is_now)))
    names = shift(before, after).inputs
    assert list(changed_lines(names, formatter_of(before), formatter_of(after))) == lines


def test_a_table_that_was_left_out_is_told_by_the_keys_that_it_had() -> None:
    text = (EXAMPLES / "tarn.toml").read_text(encoding="utf-8")
    head, _, rest = text.partition("[binding]")
    before, after = (figures_of(parse_description(each), SHOP) for each in (text, head + rest[rest.index("\n[") :]))
    lines = list(changed_lines(shift(before, after).inputs, formatter_of(before), formatter_of(after)))
    assert lines == ["binding.thickness: 1.80 mm, now 0.00 mm.", "binding.wood: maple, now nothing."]


@pytest.mark.parametrize("change", ["scale.join=12", "scale.length=640mm", "carve.wood=mahogany"])
def test_what_mends_finished_work_is_told_to_its_end(change: str) -> None:
    """Each verdict on what is made says what to do, whole; where there is no room, the figures in brackets go."""
    before, after = changed("fell", change)
    made = read_made(EXAMPLES / "fell.made.toml")
    judged = judge(dict.fromkeys(made.operations, made.pinned(before)), after)
    (part,) = (
        part for part in foremans_note(shift(before, after, 0.05), before, after, judged) if "made" in part.heading
    )
    off = [each for each in judged if each.standing != "still right" and not each.along]
    told = [line for line in part.lines if line.startswith(("Lost:", "Rework:")) and "Lost: with" not in line]
    assert len(told) >= min(len(off), 4)
    remedies = {each.remedy.rstrip(".").lower() for each in off}
    for line in told:
        assert any(line.lower().endswith(f"{remedy}.") for remedy in remedies), line


def test_much_that_changes_at_once_still_fits_a_screen() -> None:
    """Finished work lost and reworked, verdicts, and every sheet of it handed out: forty rows, headings included."""
    text = (EXAMPLES / "fell.toml").read_text(encoding="utf-8")
    other = text
    for key, value in (("scale.length", "640mm"), ("board.wood", "ebony"), ("body.depth_tail", "90mm"), *FURTHER):
        other = set_key(other, key, value)
    before, after = (figures_of(parse_description(each), SHOP) for each in (text, other))
    made = read_made(EXAMPLES / "fell.made.toml")
    judged, found = judge(dict.fromkeys(made.operations, made.pinned(before)), after), shift(before, after, 0.05)
    parts = foremans_note(found, before, after, judged, [paper.name for paper in found.papers])
    assert [part.heading for part in parts] == ORDER
    assert sum(part.rows for part in parts) <= 40
    assert any(line.startswith("And ") for part in parts for line in part.lines), "more than has room was to be told"


FURTHER = (("nut.width", "44 mm"), ("board.thickness", "5 mm"), ("neck.rod", "none"), ("soundhole.diameter", "95 mm"))
"""Further keys of *Fell*, whose change brings verdicts."""


def test_no_two_figures_are_called_alike(example: Callable[[str], Figures]) -> None:
    """A move is told by what its figure is called: two of one name would be two lines that cannot be told apart."""
    formatter = formatter_of(example("tarn"))
    called = Counter(words_of(name, formatter) for name in dimensions_of(formatter.figures))
    assert [words for words, count in called.items() if count > 1 or words.startswith("The same")] == []


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
