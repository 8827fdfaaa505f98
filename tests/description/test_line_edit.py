"""A key set on its own line: the same text as by taking the whole apart, and nothing done where it is not so plain."""

import tomllib
from importlib.resources import files

import pytest
import tomlkit

from gramil.description.line_edit import added_in_table, set_in_line

EXAMPLES = ("tarn.toml", "fell.toml", "scree.toml")


def text_of(name: str) -> str:
    return (files("gramil") / "data" / "examples" / name).read_text(encoding="utf-8")


def plain_keys(name: str) -> list[str]:
    """Every table's keys with a single value."""
    data = tomllib.loads(text_of(name))
    tables = {table: rows for table, rows in data.items() if isinstance(rows, dict)}
    return [
        f"{table}.{key}"
        for table, rows in tables.items()
        for key, value in rows.items()
        if not isinstance(value, list | dict)
    ]


@pytest.mark.parametrize("name", EXAMPLES)
@pytest.mark.parametrize("value", [641.5, 12, True, 'a "word" # or two', "25 1/2 in"])
def test_just_that_key_is_changed(name: str, value: object) -> None:
    text = text_of(name)
    for key in plain_keys(name):
        table, last = key.split(".")
        found = set_in_line(text, key, value)
        assert found is not None, key
        wanted = tomllib.loads(text)
        wanted[table][last] = value
        assert tomllib.loads(found) == wanted
        assert found.count("\n") == text.count("\n"), "every other line stays"
        assert found.count("#") >= text.count("#"), "every comment stays"


def test_it_is_written_as_the_whole_would_be() -> None:
    text = '[scale]\nlength = 630 # mm\nname = "x"\n'
    document = tomlkit.parse(text)
    document["scale"]["length"] = 641.25  # type: ignore[index]
    assert set_in_line(text, "scale.length", 641.25) == tomlkit.dumps(document)


@pytest.mark.parametrize(
    "text",
    [
        "scale.length = 630\n",
        "[scale]\nlength = { bass = 1, treble = 2 }\n",
        "[scale]\nlength = [1, 2]\n",
        '[scale]\nname = """\n[board]\nlength = 5\n"""\n',
        '[scale]\n"length" = 630\n',
        "[scale]\nframes = 3\n",
        "[[scale]]\nlength = 630\n",
        "[scale]\r\nlength = 630\r\n",
        '[other]\ntext = """\n[scale]\nlength = 5\n"""\n[scale]\nlength = 6\n',
    ],
)
def test_what_is_not_plain_is_left_to_the_whole(text: str) -> None:
    assert set_in_line(text, "scale.length", 640) is None


@pytest.mark.parametrize("key", ["scale", "board.arch.nut", "jig[1].constant", "scale.length[1]"])
def test_other_places_are_left_to_the_whole(key: str) -> None:
    assert set_in_line(text_of("tarn.toml"), key, 1) is None


def test_a_number_stays_a_number_and_a_flag_a_flag() -> None:
    assert set_in_line("[scale]\nlength = 1\n", "scale.length", True) == "[scale]\nlength = true\n"
    assert set_in_line("[scale]\nlength = true\n", "scale.length", 1) == "[scale]\nlength = 1\n"


@pytest.mark.parametrize("name", EXAMPLES)
def test_a_key_is_added_as_the_whole_would_have_it(name: str) -> None:
    """To every table of an example, before what stands between it and the next; or to a new one."""
    text = text_of(name)
    tables = [table for table, rows in tomllib.loads(text).items() if isinstance(rows, dict)]
    for table in (*tables, "another"):
        document = tomlkit.parse(text)
        document.setdefault(table, tomlkit.table())["added"] = "25 mm"  # type: ignore[index]
        assert added_in_table(text, f"{table}.added", "25 mm") == tomlkit.dumps(document), table


@pytest.mark.parametrize(
    "text",
    [
        "[scale]\nlength.bass = 3\n",
        "[scale.more]\nlength = 3\n[scale]\nwide = 1\n",
        "[[scale]]\nwide = 3\n",
        "scale.wide = 630\n",
        "[board]\nscale = 3\n\n",
        "[board]\nscale = 3",
        "[scale]\r\nwide = 630\r\n",
        '[scale]\nname = """\n[board]\n"""\n[board]\nlength = 5\n',
        '[other]\ntext = """\n[scale]\nwide = 5\n"""\n',
        "[scale\n",
    ],
)
def test_where_no_table_in_one_piece_lacks_it_a_key_is_left_to_the_whole(text: str) -> None:
    assert added_in_table(text, "scale.length", 640) is None
