"""Any text at all gives a description or a clear message."""

import re
from collections.abc import Callable
from importlib.resources import files
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from gramil.description.base import INPUTS, base_values
from gramil.description.board.scala_scale import parse_scl
from gramil.description.locate import locate
from gramil.description.reading import parse_description, parse_shop, read_description, read_shop
from gramil.description.writing import set_key
from gramil.faults import Fault, MakersFault

EXAMPLES = files("gramil") / "data" / "examples"
TEXTS = [(EXAMPLES / f"{name}.toml").read_text(encoding="utf-8") for name in ("tarn", "fell", "scree", "shop")]
VALUES = st.one_of(
    st.sampled_from(
        ['"flat"', "0", "-1", "1e308", "nan", "inf", "true", "[]", "{}", '""', '"x"', "2026-11-02", "[[1]]"]
    ),
    st.sampled_from(
        ['"1 7/8 in"', '"18,3 mm"', '"fret 1e9"', '"9999999-equal"', "[0.01]", "99999999999999999999", '"\\u0000.scl"']
    ),
    st.floats().map(repr),
    st.integers().map(str),
)


def reads_or_says(text: str) -> None:
    for parse in (parse_description, parse_shop):
        for each in faults_in(parse, text):
            assert each.what
            assert each.file == "x.toml"
            assert each.line is None or 1 <= each.line <= text.count("\n") + 1


def faults_in(parse: Callable[[str, str], object], text: str) -> tuple[Fault, ...]:
    try:
        parse(text, "x.toml")
    except MakersFault as fault:
        return fault.faults
    return ()


@given(st.text())
def test_any_text(text: str) -> None:
    reads_or_says(text)
    reads_or_says("gramil = 1\n" + text)
    locate(text)


@given(st.binary())
@settings(suppress_health_check=[HealthCheck.function_scoped_fixture])
def test_any_bytes(tmp_path: Path, content: bytes) -> None:
    (tmp_path / "x.toml").write_bytes(content)
    with pytest.raises(MakersFault):
        read_description(tmp_path / "x.toml")


@given(st.sampled_from(TEXTS), st.data())
def test_a_slip_of_the_hand(text: str, data: st.DataObject) -> None:
    start = data.draw(st.integers(0, len(text)))
    end = data.draw(st.integers(start, min(len(text), start + 12)))
    reads_or_says(text[:start] + data.draw(st.text(max_size=6)) + text[end:])


@given(st.sampled_from(TEXTS), st.data())
def test_any_value_at_any_key(text: str, data: st.DataObject) -> None:
    lines = text.splitlines()
    rows = [row for row, line in enumerate(lines) if " = " in line]
    for row in data.draw(st.lists(st.sampled_from(rows), min_size=1, max_size=3)):
        lines[row] = lines[row].split(" = ")[0] + " = " + data.draw(VALUES)
    reads_or_says("\n".join(lines))


@given(st.sampled_from(TEXTS[:3]), st.data())
def test_what_reads_has_base_values(text: str, data: st.DataObject) -> None:
    lines = text.splitlines()
    row = data.draw(st.sampled_from([row for row, line in enumerate(lines) if " = " in line]))
    lines[row] = lines[row].split(" = ")[0] + " = " + data.draw(VALUES)
    try:
        base = base_values(parse_description("\n".join(lines)), read_shop())
    except MakersFault:
        return
    assert set(base.values) == set(INPUTS)


@given(st.text())
def test_any_scale_table(text: str) -> None:
    try:
        parse_scl(text)
    except ValueError as error:
        said = str(error)
    else:
        said = "line 1: nothing wrong"
    assert re.match(r"line \d+: ", said)


@given(
    st.text(max_size=20) | st.sampled_from(["board.arch.nut", "strings.gauges[2]", "neck.modulus"]),
    st.text(max_size=20),
)
def test_any_key_and_value_to_set(key: str, value: str) -> None:
    try:
        written = set_key(TEXTS[0], key, value)
    except MakersFault:
        return
    reads_or_says(written)


def test_every_key_has_its_line_as_the_parser_sees_it() -> None:
    text = "\n".join(
        [
            "# x",
            "a.b = 1",
            '"c d" = """',
            "[no]",
            'x = 1"""',
            "[[t]]",
            "k = [",
            " 1, # [2]",
            " {z = 3, \"y\" = '#'},",
            "]",
            "[t.u]",
            "v = 1",
            "[[t]]",
            "k = {m = 1}",
        ]
    )
    lines = locate(text)
    assert lines == {
        ("a",): 2,
        ("a", "b"): 2,
        ("c d",): 3,
        ("t",): 6,
        ("t", 0): 6,
        ("t", 0, "k"): 7,
        ("t", 0, "k", 0): 8,
        ("t", 0, "k", 1): 9,
        ("t", 0, "k", 1, "z"): 9,
        ("t", 0, "k", 1, "y"): 9,
        ("t", 0, "u"): 11,
        ("t", 0, "u", "v"): 12,
        ("t", 1): 13,
        ("t", 1, "k"): 14,
        ("t", 1, "k", "m"): 14,
    }
