"""Descriptions: bytes astray, odd values one and two at a time, and valid instruments at random."""

import random
import tomllib
from contextlib import suppress
from functools import cache
from importlib.resources import as_file
from pathlib import Path

import tomlkit
from tests.every_key.descriptions import (
    EXAMPLES,
    INSTRUMENTS,
    Place,
    at,
    lay_out_drawings,
    places_in,
    shop_text,
    text_of,
)
from tests.every_key.odd_values import odd_instruments, odd_values, odd_values_of_shop, with_value
from tests.findings.test_no_number import no_number_is_judged, no_sheet_prints_one

from fuzz.kind import Kind
from gramil import names as n
from gramil.description.reading import parse_description, parse_shop, read_description, read_shop
from gramil.faults import MakersFault
from gramil.graph import Figures
from gramil.prints.whole import drawings_of, figures_of
from gramil.shop.made_file import read_made
from gramil.shop.operations_file import work_with

SIGNS = [b'"', b"[", b"]", b"{", b"}", b"=", b"\n", b"\0", b"\xff", b"#", b"1e400", b"nan", b"'''", b"\xe2\x80\xa8"]


def astray(chance: random.Random, content: bytes, most: int = 6) -> bytes:
    """The bytes with a few runs cut, doubled, moved or put in."""
    for _ in range(chance.randint(1, most)):
        start = chance.randrange(len(content) + 1)
        end = min(len(content), start + chance.choice((0, 1, 3, 40)))
        put = chance.choice((b"", chance.choice(SIGNS), chance.randbytes(3), content[start:end] * 2))
        content = content[:start] + put + content[end:]
    return content


def _bytes(chance: random.Random) -> bytes:
    text = chance.choice([*map(text_of, INSTRUMENTS), shop_text()])
    return astray(chance, text.encode())


def _odd(chance: random.Random) -> bytes:
    name, place, value = chance.choice(odd_instruments())
    return with_value(text_of(name), place, value).encode()


def _pair(chance: random.Random) -> bytes:
    """Two odd values at once in one description, or one odd and something else taken away."""
    name = chance.choice(INSTRUMENTS)
    odd = _odd_by_place(name)
    first, second = chance.sample(list(odd), 2)
    text = with_value(text_of(name), first, chance.choice(odd[first]))
    if chance.random() < 0.3:
        return _without_one(text, chance).encode()
    with suppress(KeyError, IndexError, TypeError):  # the first may have left it no place
        text = with_value(text, second, chance.choice(odd[second]))
    return text.encode()


@cache
def _odd_by_place(name: str) -> dict[Place, list[object]]:
    found: dict[Place, list[object]] = {}
    for place, value in odd_values(name):
        found.setdefault(place, []).append(value)
    return found


def _without_one(text: str, chance: random.Random) -> str:
    """The text with one of its keys left out."""
    whole = tomllib.loads(text)
    *table, key = chance.choice(list(places_in(whole)))
    del at(whole, tuple(table))[key]
    return tomlkit.dumps(whole)


def _valid(chance: random.Random) -> bytes:
    """An instrument each of whose plain numbers may be a little off, some of it left out: most of these are read."""
    whole = tomllib.loads(text_of(chance.choice(INSTRUMENTS)))
    for place in list(places_in(whole)):
        with suppress(KeyError, IndexError):
            value = at(whole, place)
            if type(value) is float and chance.random() < 0.3:
                at(whole, place[:-1])[place[-1]] = value * chance.uniform(0.93, 1.07)
            elif len(place) > 1 and chance.random() < 0.03:
                del at(whole, place[:-1])[place[-1]]
    return tomlkit.dumps(whole).encode()


def _shop(chance: random.Random) -> bytes:
    return with_value(shop_text(), *chance.choice(odd_values_of_shop())).encode()


@cache
def _laid_out(folder: Path) -> Path:
    with as_file(EXAMPLES) as examples:
        for file in examples.iterdir():
            (folder / file.name).write_bytes(file.read_bytes())
    lay_out_drawings(folder)
    return folder


def _reads(content: bytes, folder: Path) -> None:
    text = content.decode("utf-8", errors="replace")
    for parse in (parse_description, parse_shop):
        with suppress(MakersFault):
            parse(text, "x.toml")


def _derives(content: bytes, folder: Path) -> None:
    """All that follows, in words; a figure that is no number is never fine."""
    file = _laid_out(folder) / "x.toml"
    file.write_bytes(content)
    with suppress(MakersFault):
        figures = figures_of(read_description(file), read_shop(folder / "shop.toml"))
        no_number_is_judged(figures)
        no_sheet_prints_one(figures)
        came_in = figures[n.repair_described]
        assert came_in or drawings_of(figures), "a guitar that came in may have no drawing, no other"


def _derives_in(content: bytes, folder: Path) -> None:
    file = _laid_out(folder) / "x-shop.toml"
    file.write_bytes(content)
    with suppress(MakersFault):
        no_number_is_judged(figures_of(read_description(folder / "tarn.toml"), read_shop(file)))


def _made(chance: random.Random) -> bytes:
    return astray(chance, (EXAMPLES / "tarn.made.toml").read_bytes())


def _reads_made(content: bytes, folder: Path) -> None:
    file = _laid_out(folder) / "x.made.toml"
    file.write_bytes(content)
    with suppress(MakersFault):
        read_made(file).pins(_tarn(folder))


@cache
def _tarn(folder: Path) -> Figures:
    return figures_of(read_description(folder / "tarn.toml"), read_shop(folder / "shop.toml"))


OPERATIONS = b"""gramil = 1
[operation.top_jointed]
hands = 50
[operation.head_inlaid]
what = "Let the inlay into the head"
part = "neck"
after = ["head_veneered", { operation = "arched", "slots.cut" = "after arching" }]
hands = 240
[operation.markers_set]
leave_out = true
"""


def _works(content: bytes, folder: Path) -> None:
    with suppress(MakersFault):
        work_with([("x.operations.toml", content.decode("utf-8", errors="replace"))])


KINDS = (
    Kind("bytes", _bytes, _reads),
    Kind("odd", _odd, _derives, 3.0),
    Kind("pairs", _pair, _derives, 2.0),
    Kind("valid", _valid, _derives, 3.0),
    Kind("shop", _shop, _derives_in, 1.5),
    Kind("made", _made, _reads_made),
    Kind("operations", lambda chance: astray(chance, OPERATIONS), _works),
)
