"""What several tests share: the example instruments, and boards drawn at random, written as a maker writes them.

A drawn board is a dictionary of tables. Its lengths are whole thousandths of an inch (`Thou`), so that the same board
can be written exactly in millimetres (0.0254 mm each) and in inches.
"""

import gc
import subprocess
import sys
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from decimal import Decimal
from importlib.resources import files
from pathlib import Path
from typing import Any

import pytest
from hypothesis import settings
from hypothesis import strategies as st
from tests.in_a_browser import Browser, Page, chromium_started, pages_of
from tests.walks import fewer
from tests.worked_out_once import worked_out_once

from gramil.description.reading import parse_description, parse_shop, read_shop
from gramil.graph import Figures
from gramil.prints.whole import figures_of

gc.set_threshold(20_000, 10, 5)  # at Python's usual 700 objects a twentieth of the tests' time goes by on looking


def pytest_collection_finish() -> None:
    """What was read in by now stays until the end: to look through it for what is no longer used finds nothing."""
    gc.freeze()


@pytest.hookimpl(tryfirst=True)
def pytest_unconfigure() -> None:
    """What is no longer used goes, and is told if it ends badly; what is left is looked through once, not thrice."""
    gc.collect()
    gc.freeze()


settings.register_profile("gramil", deadline=None, derandomize=True, database=None, max_examples=fewer(100, 25))
settings.load_profile("gramil")

EXAMPLES = files("gramil") / "data" / "examples"
Tables = dict[str, Any]
TUNING = ["E4", "B3", "G3", "D3", "A2", "E2", "B1", "F#1"]


@dataclass(frozen=True)
class Thou:
    """A length of whole thousandths of an inch; `grown` is a factor on it."""

    count: int
    grown: int = 1

    def written(self, unit: str) -> str:
        """The length as a bare number in a unit, exact."""
        return str(Decimal(self.count * self.grown) * Decimal("0.0254" if unit == "mm" else "0.001"))


def toml(value: Any, unit: str) -> str:
    """A value as TOML; lengths as bare numbers in `unit`, radii that are None as "flat"."""
    if isinstance(value, Thou):
        return value.written(unit)
    if isinstance(value, dict):
        return "{ " + ", ".join(f"{key} = {toml(each, unit)}" for key, each in value.items()) + " }"
    if isinstance(value, list):
        return "[" + ", ".join(toml(each, unit) for each in value) + "]"
    if isinstance(value, bool):
        return str(value).lower()
    return f'"{value}"' if isinstance(value, str) else str(value)


def written(tables: Tables, unit: str = "mm") -> str:
    """A description (or a shop) as a maker writes it, bare numbers in `unit`."""
    lines = ["gramil = 1"]
    for name, rows in tables.items():
        for row in rows if isinstance(rows, list) else [rows]:
            lines.append(f"[[{name}]]" if isinstance(rows, list) else f"[{name}]")
            lines.extend(f"{key} = {toml(value, unit)}" for key, value in row.items())
    return "\n".join(lines)


def derived(text: str, shop: str | None = None) -> Figures:
    """The figures of a description in a shop, or in the package's own."""
    return figures_of(parse_description(text), parse_shop(shop) if shop else read_shop())


@st.composite
def _boards(draw: Callable[..., Any], fanned: bool | None = None) -> Tables:
    def thou(least: int, most: int) -> Thou:
        return Thou(draw(st.integers(least, most)))

    fan = draw(st.booleans()) if fanned is None else fanned
    length, frets = draw(st.integers(21000, 29000)), draw(st.integers(12, 24))
    scale: Tables = {"frets": frets, "join": draw(st.integers(10, 12)), "zero_fret": draw(st.booleans())}
    if fan:
        square = draw(st.integers(0, 4 * frets)) / 4
        scale |= {"bass": Thou(length + draw(st.integers(-200, 1200))), "treble": Thou(length), "square_at": square}
    else:
        scale["length"] = Thou(length)
    width = draw(st.integers(1500, 2100))
    spread = width - draw(st.integers(230, 330))
    radius = draw(st.integers(7250, 20000))
    arch = draw(
        st.sampled_from(
            ["flat", Thou(radius), {"nut": Thou(radius), "end": Thou(radius + draw(st.integers(-1000, 9000)))}]
        )
    )
    return {
        "instrument": {"name": "Drawn", "handed": draw(st.sampled_from(["right", "left"]))},
        "scale": scale,
        "nut": {
            "width": Thou(width),
            "spread": Thou(spread),
            "spacing": draw(st.sampled_from(["equal gaps", "equal centres"])),
            "set_forward": Thou(0 if scale["zero_fret"] else draw(st.integers(0, 25))),
            "behind": thou(100, 250),
        },
        "bridge": {"spread": Thou(spread + draw(st.integers(300, 700)))},
        "board": {
            "wood": "persimmon",
            "width": Thou(width + draw(st.integers(300, 550))),
            "width_at": draw(st.sampled_from(["fret 12", "fret 11.5"])),
            "thickness": thou(220, 320),
            "beyond_last_fret": Thou(draw(st.integers(150, 500)) + 700 * fan),
            "arch": arch,
            "level_underside": draw(st.booleans()),
        },
        "binding": {"thickness": thou(0, 80), "purfling": thou(0, 30), "tail": draw(st.booleans())},
        "slots": {
            "bottom": draw(st.sampled_from(["straight", "follows the arch"])),
            "cut": draw(st.sampled_from(["before arching", "after arching"])),
            "clearance": thou(0, 12),
            "crest_loss": thou(0, 15),
        },
        "wire": {
            "name": "measured",
            "crown_width": thou(75, 110),
            "crown_height": thou(35, 55),
            "tang_thickness": thou(18, 24),
            "bead_thickness": thou(25, 33),
            "tang_depth": thou(50, 70),
            "on_hand": thou(0, 400000),
        },
        "strings": {
            "gauges": [Thou(each) for each in sorted(draw(st.lists(st.integers(9, 60), min_size=4, max_size=8)))]
        },
        "markers": {"frets": [3, 5, 7, 9, 12], "diameter": thou(150, 300), "side_diameter": thou(60, 100)},
        "neck": {"depth_at_1": thou(780, 870), "depth_at_10": thou(860, 990)},
    }


def in_unit(tables: Tables, unit: str) -> str:
    """A drawn board as a file in "mm" or "in"; gauges carry their unit, since bare ones are always inches."""
    gauges = [f"{each.written('in')} in" for each in tables["strings"]["gauges"]]
    head = tables["instrument"] | {"units": unit}
    strings = {"gauges": gauges, "tuning": TUNING[: len(gauges)]}
    return written(tables | {"instrument": head, "strings": strings}, unit)


@pytest.fixture(scope="session", autouse=True)
def _worked_out_once() -> Iterator[None]:
    with worked_out_once():
        yield


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """Chromium, started for the first test that wants it."""
    with chromium_started() as started:
        yield started


@pytest.fixture(scope="session")
def page_at(browser: Browser) -> Callable[[str, str], Page]:
    """The page of a kind, "phone" or "wide", at a bench's address."""
    return pages_of(browser)


@pytest.fixture(scope="session")
def boards() -> Callable[..., st.SearchStrategy[Tables]]:
    """Boards at random: `boards()`, or only fanned or only square ones."""
    return _boards


@pytest.fixture(scope="session")
def as_file() -> Callable[[Tables, str], str]:
    """A drawn board as the text of a file in a unit."""
    return in_unit


@pytest.fixture(scope="session")
def as_toml() -> Callable[..., str]:
    """Any tables as TOML."""
    return written


@pytest.fixture(scope="session")
def derive_text() -> Callable[..., Figures]:
    """The figures of a description's text, in the text of a shop or the package's own."""
    return derived


@pytest.fixture(scope="session")
def text_of() -> Callable[[str], str]:
    """The text of an example file by its name: "tarn", "fell", "scree", "mere", "corrie" or "shop"."""
    return lambda name: (EXAMPLES / f"{name}.toml").read_text(encoding="utf-8")


@pytest.fixture(scope="session")
def example(text_of: Callable[[str], str]) -> Callable[[str], Figures]:
    """An example instrument's figures in the example shop."""
    return lambda name: derived(text_of(name), text_of("shop"))


HANGS = 300
"""Seconds, many times what anything here takes: a program that is still at it then would be so for ever."""


@dataclass(frozen=True)
class Bounded:
    """What a program said that ran under limits, and how many MB it held at the most."""

    said: str
    peak: float


@pytest.fixture(scope="session")
def bounded() -> Callable[..., Bounded]:
    """Runs Python code in a program of its own, under a limit of memory; a traceback or a hang fails the test."""
    pytest.importorskip("resource", reason="this system knows no limits")

    def run(code: str, *words: object) -> Bounded:
        program = Path(__file__).with_name("bounded_program.py")
        command = [sys.executable, str(program), code, *map(str, words)]
        done = subprocess.run(command, capture_output=True, text=True, timeout=HANGS, check=False)
        assert done.returncode == 0, done.stderr[-2000:]
        *said, peak = done.stdout.splitlines()
        return Bounded("\n".join(said), float(peak))

    return run
