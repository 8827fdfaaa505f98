"""A bad description gets one clear message per fault, all at once, each with its line."""

import os
from importlib.resources import files
from pathlib import Path

import pytest

from gramil.description.reading import parse_description, parse_shop, read_description, read_shop
from gramil.faults import Fault, MakersFault

EXAMPLES = files("gramil") / "data" / "examples"
TARN = (EXAMPLES / "tarn.toml").read_text(encoding="utf-8")
SCREE = (EXAMPLES / "scree.toml").read_text(encoding="utf-8")
SHOP = (EXAMPLES / "shop.toml").read_text(encoding="utf-8")


def faults(text: str) -> tuple[Fault, ...]:
    with pytest.raises(MakersFault) as raised:
        parse_description(text, "tarn.toml")
    return raised.value.faults


def line_with(text: str, words: str) -> int:
    return next(number for number, line in enumerate(text.splitlines(), 1) if words in line)


@pytest.mark.parametrize("name", ["tarn", "fell", "scree", "mere", "corrie"])
def test_the_examples_read(name: str) -> None:
    with_path = read_description(str(EXAMPLES / f"{name}.toml"))
    assert with_path.instrument.instrument.name == name.capitalize()
    assert with_path.file == f"{name}.toml"
    assert with_path.lines[("scale", "frets")] == line_with((EXAMPLES / f"{name}.toml").read_text(), "frets = ")


def test_the_example_shop_and_the_default_shop_read() -> None:
    assert read_shop(str(EXAMPLES / "shop.toml")).shop.shop.name.endswith("(invented)")
    default = read_shop()
    assert default.is_default
    assert not default.shop.blank
    assert not default.shop.jig


BAD = [
    ('handed = "right"', 'handed = "rigth"', "instrument.handed", '"rigth"', "right"),
    ("length = 630 ", 'length = "630 mil" ', "scale.length", "630 mil", "mm"),
    ("length = 630 ", "length = -1 ", "scale.length", "-1", "more than 0 mm"),
    ("length = 630 ", "length = inf ", "scale.length", "inf", "finite"),
    ("frets = 19", "frets = 61", "scale.frets", "61", "at most 60"),
    ("frets = 19", 'frets = "19"', "scale.frets", '"19"', "whole number"),
    ("frets = 19", "frets = true", "scale.frets", "true", "whole number"),
    ("join = 13", "join = 20", "scale.join", "20", "last fret, 19"),
    ('"12-equal"', '"12 equal"', "scale.temperament", "12 equal", "12-equal"),
    ('"12-equal"', '"../x.scl"', "scale.temperament", "../x.scl", "beside"),
    ("width = 45.5", "width = true", "nut.width", "true", "a length is text"),
    ("spread = 38.5", "spread = 45.5", "nut.spread", "45.5", "less than"),
    ("set_forward = 0", "set_forward = 0\nset_foward = 1", "nut.set_foward", "no such key", "set_forward"),
    ('width_at = "fret 12"', 'width_at = "fret twelve"', "board.width_at", "twelve", "fret 12 + 5 mm"),
    ('width_at = "fret 12"', 'width_at = "fret 30"', "board.width_at", "no fret 30", "19"),
    ('width_at = "fret 12"', 'width_at = "fret 0"', "board.width_at", "0.0 mm", "place on the board"),
    ('nut = "320 mm"', 'nut = "22.7 mm"', "board.arch.nut", "22.7", "half the board's width there, 22.75 mm"),
    ('nut = "320 mm"', 'nut = "flat"', "board.arch", "flat", "both flat"),
    ('end = "390 mm"', 'end = "flat"', "board.arch", "flat", "both flat"),
    ('end = "390 mm"', 'end = "60 mm"', "board.arch.end", "falls", "thicker"),
    ("thickness = 1.8", "thickness = 23", "binding.thickness", "23", "at most 20"),
    ("[0.012,", "[12,", "strings.gauges[1]", "12", "inches"),
    ("[0.012,", "[0.0012,", "strings.gauges[1]", "0.0012", "0.1 mm"),
    ("[3, 5,", "[3, 25,", "markers.frets[2]", "25", "1 to 19"),
    ("[3, 5,", "[3, 3,", "markers.frets", "twice", "once"),
    ("double = [12]", "double = [11]", "markers.double[1]", "11", "carry a marker"),
    ("set_forward = 0", "set_forward = 40", "nut.set_forward", "40", "10 mm"),
    ("beyond_last_fret = 8", "beyond_last_fret = 250", "board.beyond_last_fret", "669", "630.0 mm"),
]


@pytest.mark.parametrize(("old", "new", "where", "read", "allowed"), BAD)
def test_one_fault_with_its_line(old: str, new: str, where: str, read: str, allowed: str) -> None:
    text = TARN.replace(old, new, 1)
    assert text != TARN
    found = faults(text)
    (fault,) = [each for each in found if each.where == where]
    assert fault.file == "tarn.toml"
    assert fault.line == line_with(text, new.splitlines()[-1])
    assert read in fault.what
    assert allowed.lower() in str(fault).lower()


def test_all_faults_at_once_in_order_of_lines() -> None:
    text = (
        TARN.replace("frets = 19", "frets = 0")
        .replace("thickness = 6.3", "thicknes = 6.3")
        .replace("spread = 38.5", "spread = 55")
        .replace('use = "medium"', "")
        + "[slot]\nx = 1\n"
    )
    found = faults(text)
    assert [each.where for each in found] == [
        "scale.frets",
        "nut.spread",
        "board.thickness",
        "board.thicknes",
        "wire",
        "slot",
    ]
    assert [each.line for each in found] == sorted(each.line or 0 for each in found)
    assert "slots" in found[-1].remedy


def test_a_key_in_the_wrong_table_is_shown_its_place() -> None:
    (fault,) = faults(TARN.replace("[slots]", "[slots]\nwidth_at = 3"))
    assert "board.width_at" in fault.remedy


@pytest.mark.parametrize(
    ("text", "words", "line"),
    [
        ("", "empty", None),
        ("\n\n", "empty", None),
        ("gramil = 2\n[later]\nx = 1", "reads version 1", 1),
        ("gramil = true", "reads version 1", 1),
        ("gramil = 1\nx = ", "not TOML", 2),
        ("gramil = 1\n[scale\n", "not TOML", 2),
        ("x = " + "[" * 20000, "nested", None),
        (".".join(["a"] * 2000) + " = 1", "nested", None),
        ("x = " + "1" * 5000, "not TOML", None),
        ("x = 2026-99-99", "not TOML", 1),
    ],
)
def test_what_is_no_description(text: str, words: str, line: int | None) -> None:
    (fault,) = faults(text)
    assert words in str(fault)
    assert fault.line == line


def test_a_file_of_another_kind_is_told_by_what_it_describes() -> None:
    """One sentence, where every missing key had been told."""
    (told,) = faults(SHOP)
    assert "describes a shop, and an instrument is asked for" in str(told)
    (told,) = faults((EXAMPLES / "tarn.made.toml").read_text(encoding="utf-8"))
    assert "describes what is made of an instrument" in str(told)
    with pytest.raises(MakersFault, match="describes an instrument, and a shop is asked for"):
        parse_shop(TARN, "tarn.toml")


def test_files_that_cannot_be_read(tmp_path: Path) -> None:
    (tmp_path / "tarn.toml").write_text(TARN)
    (tmp_path / "junk.toml").write_bytes(b"gramil = 1\n\xff\xfe")
    (tmp_path / "large.toml").write_bytes(b"#" * 1_000_001)
    for name, words in (
        ("tran.toml", "nearest is tarn.toml"),
        ("junk.toml", "UTF-8"),
        ("large.toml", "1 MB"),
        ("", "folder"),
    ):
        with pytest.raises(MakersFault) as raised:
            read_description(tmp_path / name)
        assert words in str(raised.value)
        assert str(tmp_path) not in str(raised.value)


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="this system has no named pipes")
def test_a_named_pipe_is_refused_before_it_is_opened(tmp_path: Path) -> None:
    """Nothing ever writes into these pipes: to open one would wait for ever."""
    for name in ("tarn.toml", "body.dxf", "steps.scl"):
        os.mkfifo(tmp_path / name)
    with pytest.raises(MakersFault, match="pipe"):
        read_description(tmp_path / "tarn.toml")
    start = TARN.index("[body]")
    drawn = TARN[:start] + '[body]\nfile = "body.dxf"\nlength = 480\n'
    for text in (TARN.replace('"12-equal"', '"steps.scl"'), drawn):
        with pytest.raises(MakersFault, match="pipe"):
            parse_description(text, folder=tmp_path)


def test_windows_line_ends_and_a_byte_order_mark(tmp_path: Path) -> None:
    (tmp_path / "tarn.toml").write_bytes(b"\xef\xbb\xbf" + TARN.replace("\n", "\r\n").encode())
    assert read_description(tmp_path / "tarn.toml").instrument.scale.frets == 19


def test_a_scale_table_beside_the_description(tmp_path: Path) -> None:
    (tmp_path / "meantone.scl").write_text("! x\nquarter-comma\n 2\n!\n 76.04900\n 2/1\n")
    (tmp_path / "falling.scl").write_text("x\n2\n702.0\n3/2\n")
    for name, good in (("meantone.scl", True), ("falling.scl", False), ("none.scl", False)):
        text = TARN[: TARN.index("[markers]")].replace('"fret 12"', '"fret 5"')
        (tmp_path / "t.toml").write_text(
            text.replace("12-equal", name).replace("frets = 19\njoin = 13", "frets = 5\njoin = 5")
        )
        if good:
            assert read_description(tmp_path / "t.toml").tuning.at(3) == 1276.049
        else:
            with pytest.raises(MakersFault) as raised:
                read_description(tmp_path / "t.toml")
            assert raised.value.faults[0].where == "scale.temperament"


@pytest.mark.parametrize(
    ("written", "where"),
    [
        ("degrees = [76.049, 1200]", None),
        ("degrees = [1200, 76.049]", "scale.degrees"),
        ("degrees = [0, 1200]", "scale.degrees[1]"),
        ("degrees = []", "scale.degrees"),
        ('degrees = [100]\ntemperament = "12-equal"', "scale"),
    ],
)
def test_a_scale_table_written_out(written: str, where: str | None) -> None:
    """The frets stand at 76.049, 1200, 1276.049 cents and so on."""
    text = TARN[: TARN.index("[markers]")].replace('"fret 12"', '"fret 5"')
    text = text.replace('temperament = "12-equal"', written).replace("frets = 19\njoin = 13", "frets = 5\njoin = 5")
    if where is None:
        assert parse_description(text).tuning.at(3) == 1276.049
        return
    with pytest.raises(MakersFault) as raised:
        parse_description(text)
    assert raised.value.faults[0].where == where


@pytest.mark.parametrize(
    ("old", "new", "where"),
    [
        ("treble = 680", "treble = 400", "scale.treble"),
        ("treble = 680", "", "scale"),
        ("treble = 680", "treble = 680\nlength = 700", "scale"),
        ("square_at = 7", "square_at = 21", "scale.square_at"),
        ("tail = true", "tail = true # x\n[slots2]", "slots2"),
    ],
)
def test_faults_of_a_fanned_board(old: str, new: str, where: str) -> None:
    assert where in [each.where for each in faults(SCREE.replace(old, new, 1))]


def test_two_bindings_wider_than_the_board() -> None:
    (fault,) = faults(TARN.replace("purfling = 0 ", "purfling = 4 ").replace("thickness = 1.8", "thickness = 19"))
    assert (fault.where, fault.line) == ("binding.thickness", line_with(TARN, "thickness = 1.8"))
    assert "46" in fault.what
    assert "45.5" in fault.why


def test_a_zero_fret_leaves_the_nut_nothing_to_set_forward() -> None:
    found = faults(
        TARN.replace("zero_fret = false", "zero_fret = true").replace("set_forward = 0", "set_forward = 0.3")
    )
    assert [each.where for each in found] == ["nut.set_forward"]


def test_a_shop_with_faults() -> None:
    text = SHOP.replace("kerf = 0.58", "kerff = 0.58").replace('name = "large"', 'name = "medium"')
    text = text.replace("under_slot = 2.2", "under_slott = 2.2").replace("checked = 2026-10-14", 'checked = "Monday"')
    with pytest.raises(MakersFault) as raised:
        parse_shop(text, "shop.toml")
    found = {fault.where: fault for fault in raised.value.faults}
    assert set(found) == {"wire[2].name", "saw[1].kerf", "saw[1].kerff", "jig[1].checked", "limits.under_slott"}
    assert "under_slot" in found["limits.under_slott"].remedy
    assert found["saw[1].kerff"].line == line_with(text, "kerff")
    assert "year-month-day" in found["jig[1].checked"].why


def test_a_limit_that_cannot_be() -> None:
    with pytest.raises(MakersFault) as raised:
        parse_shop(SHOP.replace("under_slot = 2.2", "under_slot = -2.2\nwire_spare = inf"), "shop.toml")
    assert {fault.where for fault in raised.value.faults} == {"limits.under_slot", "limits.wire_spare"}


def test_the_fit_limit_may_be_tighter_than_the_tang() -> None:
    parse_shop(SHOP.replace("under_slot = 2.2", "fit_tightest = -0.02"))
