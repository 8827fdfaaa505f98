"""What is read of holes and ports settles their description: all that follows is as if it had been described so."""

from collections.abc import Callable, Iterator
from dataclasses import fields, is_dataclass
from typing import Any

import numpy as np
import pytest
from tests.with_openings import opened

from gramil import names as n
from gramil.change.settled import sentence, settled, settled_by_readings
from gramil.change.settled_text import written_into
from gramil.description.reading import parse_description
from gramil.graph import Figures, Pin

READ = (
    ('opening_list["ear"].along', "opening[1].along", 31.5),
    ('opening_list["ear"].across', "opening[1].across", 34.0),
    ('opening_list["ear"].x', "opening[1].centre", 119.25),
    ('opening_list["ear"].y', "opening[1].aside", -82.5),
    ('opening_list["eye"].diameter', "opening[2].diameter", 25.5),
    ('opening_list["soundhole"].y', "soundhole.aside", 1.5),
    ("soundhole_along", "soundhole.along", 77.5),
    ('port_list["port"].along', "port[1].along", 62.0),
    ('port_list["port"].across', "port[1].across", 35.0),
    ('port_list["port"].centre', "port[1].centre", 212.0),
    ('port_list["port"].below', "port[1].below", 46.0),
    ('port_list["peep"].below', "port[2].below", 41.5),
    ('port_list["peep"].diameter', "port[2].diameter", 26.5),
    ('rosette_rings["ear ring"].inner', "rosette[2].gap", 43.0),
)
WRITTEN = {'rosette_rings["ear ring"].inner': (43.0 - 36.0) / 2}
"""What is written where it is not what was read: a ring's distance from a hole 36 mm across."""
FOLLOWS = (
    n.opening_list, n.opening_to_linings, n.opening_to_board, n.opening_to_others, n.opening_to_edge, n.rosette_rings,
    n.port_list, n.port_to_linings, n.port_to_blocks, n.port_bends, n.body_air_rigid, n.graduated_weight,
)  # fmt: skip


@pytest.fixture(scope="module")
def text(text_of: Callable[[str], str]) -> str:
    return opened(text_of("tarn"))


@pytest.fixture(scope="module")
def drawn(text: str, derive_text: Callable[..., Figures], text_of: Callable[[str], str]) -> Figures:
    return derive_text(text, text_of("shop"))


def plain(value: Any) -> Iterator[Any]:
    """Every number and word in a value, however deep."""
    if is_dataclass(value):
        for field in fields(value):
            yield from plain(getattr(value, field.name))
    elif isinstance(value, tuple | list | np.ndarray):
        for each in value:
            yield from plain(each)
    else:
        yield value


@pytest.mark.parametrize(("address", "key", "read"), READ, ids=[row[0] for row in READ])
def test_what_is_read_is_as_if_it_had_been_described_so(
    address: str,
    key: str,
    read: float,
    text: str,
    drawn: Figures,
    derive_text: Callable[..., Figures],
    text_of: Callable[[str], str],
) -> None:
    made = settled(drawn.with_pins({address: Pin(read, "today", "openings_cut")}))
    (found,) = settled_by_readings(made)
    instrument = parse_description(text).instrument
    written = written_into(text, instrument, (found,))
    described = parse_description(written).instrument
    table, _, field = key.partition(".")
    row = getattr(described, table.partition("[")[0])
    value = getattr(row[int(table[-2]) - 1] if "[" in table else row, field)
    assert value == pytest.approx(WRITTEN.get(address, read), abs=1e-3)
    wanted = derive_text(written, text_of("shop"))
    for name in FOLLOWS:
        pairs = zip(plain(made[name]), plain(wanted[name]), strict=True)
        for one, other in pairs:
            assert one == other if isinstance(other, str) else one == pytest.approx(other, abs=1e-6, nan_ok=True), name
    assert found.key in sentence(found, drawn, "mm")
    assert any(list(plain(made[name])) != list(plain(drawn[name])) for name in FOLLOWS)
