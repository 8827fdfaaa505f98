"""What the commands answer in an inch shop that reads Fahrenheit: no millimetre, no newton, no degree Celsius."""

import re
from collections.abc import Callable
from pathlib import Path
from subprocess import CompletedProcess

import pytest
from tests.conftest import EXAMPLES
from tests.in_process import gramil

METRIC = re.compile(r"\d\s*(?:mm|cm|MPa|GPa|N|N m|N mm)(?![\w-])|\bmm\b|millimet|\bnewton|°\s?C\b|\d C\b")
SIZES = re.compile(
    r"^(template_pin|pin_clearance|laser_kerf|crown_width|crown_height|tang_thickness|bead_thickness|tang_depth|kerf|"
    r"diameter|scale|pin|constant|length|width|thickness|under_slot) = ([\d.]+)",
    re.MULTILINE,
)
"""Bare lengths of the example shop."""
BEARINGS = re.compile(r"^bearings = \[(.*)\]", re.MULTILINE)
SHOP = ("--shop", "shop.toml")
AT = ("--at", "2026-01-19T09:00")
NOW = ("--now", "2026-01-19T09:00")
COMMANDS = [
    ("dims", "fell.toml", "--every"),
    ("why", "slot_depth_setting", "fell.toml"),
    ("why", "fret_cents_per_tenth", "fell.toml", "--deep"),
    ("why", "string_pull_total", "fell.toml", "--deep"),
    ("check", "fell.toml"),
    ("shift", "fell.toml", "--set", "scale.length=26 in"),
    ("turn", "board.thickness", "fell.toml", "--until", "slot_left_least[19]=0.16 in"),
    ("air", "show", *SHOP, *NOW),
    ("wood", "Sitka spruce", *SHOP),
    ("ready", "fell.toml", *SHOP, *NOW),
    ("if-glued", "board", *SHOP, "--piece", "persimmon 2", *NOW),
    ("if-glued", "top", "--wood", "Sitka spruce", "--rh", "60", "--temperature", "70", *SHOP),
    ("now", "fell.toml", *SHOP, *AT),
    ("weeks", "fell.toml", *SHOP, *AT),
    ("match", "fell.toml", *SHOP, *AT),
    ("cost", "fell.toml", *SHOP, "--rate", "40"),
    ("done", "thicknessed", "fell.toml", "--measured", "blank_thickness=0.25"),
]


@pytest.fixture(scope="module")
def told(tmp_path_factory: pytest.TempPathFactory) -> Callable[..., CompletedProcess[str]]:
    """Commands in a folder with the example shop, as an inch shop, and the instrument that is in inches."""
    folder = tmp_path_factory.mktemp("inches")
    inch_shop(folder)
    return lambda *words: gramil(folder, *words)


def inch_shop(folder: Path) -> None:
    """The example shop as an inch shop that reads Fahrenheit, its air, and the instrument that is in inches."""
    for file in EXAMPLES.iterdir():
        if file.name.endswith(".csv") or file.name == "fell.toml":
            (folder / file.name).write_bytes(file.read_bytes())
    text = SIZES.sub(r'\1 = "\2 mm"', (EXAMPLES / "shop.toml").read_text(encoding="utf-8"))
    text = BEARINGS.sub(lambda found: f"bearings = [{re.sub('[0-9.]+', _written, found[1])}]", text)
    text = text.replace('units = "mm"', 'units = "in"\ntemperature = "F"')
    (folder / "shop.toml").write_text(text, encoding="utf-8")


def _written(number: re.Match[str]) -> str:
    return f'"{number[0]} mm"'


@pytest.mark.parametrize("words", COMMANDS, ids=lambda words: " ".join(words[:2]))
def test_no_command_says_a_millimetre(told: Callable[..., CompletedProcess[str]], words: tuple[str, ...]) -> None:
    answer = told(*words)
    said = answer.stdout + answer.stderr
    assert answer.returncode in (0, 1, False)
    assert len(said) > 100
    assert [line for line in said.splitlines() if METRIC.search(line)] == []


def test_temperatures_are_told_and_read_in_fahrenheit(told: Callable[..., CompletedProcess[str]]) -> None:
    """68 F is 20 C; the air of the example shop lies between freezing and 30 C."""
    named = told("wood", "persimmon", *SHOP, "--temperature", "20 C").stdout
    assert told("wood", "persimmon", *SHOP, "--temperature", "68").stdout == named
    assert "68 F" in named
    found = [float(each) for each in re.findall(r"% at (-?[\d.]+) F", told("air", "show", *SHOP, *NOW).stdout)]
    assert found
    assert all(32 < each < 86 for each in found)


def test_a_room_that_is_none_is_refused(told: Callable[..., CompletedProcess[str]]) -> None:
    answer = told("wood", "persimmon", *SHOP, "--temperature", "300")
    assert answer.returncode == 2
    assert "°F" in answer.stderr


def test_wood_to_buy_is_told_as_a_rule_says_it(told: Callable[..., CompletedProcess[str]]) -> None:
    """Each size is no less than what is wanted, and less than a 64th more."""
    said = told("match", "fell.toml", *SHOP, *AT).stdout
    to_buy = said.partition("To buy")[2]
    assert re.search(r"\d+ \d+/\d+ in x ", to_buy)


def test_the_proof_bar_is_typed_in_inches(told: Callable[..., CompletedProcess[str]]) -> None:
    assert told("pack", "fell.toml", "--out", "out", "--just", "slot", "--printer-scale", "3.99,4.01").returncode == 0
    refused = told("pack", "fell.toml", "--out", "out", "--just", "slot", "--printer-scale", "3 in,4.01 in")
    assert refused.returncode == 2
    assert "no printer's" in refused.stderr


def test_readings_of_the_record_are_typed_and_told_in_fahrenheit(tmp_path: Path) -> None:
    """68 F is 20 C, 69.8 F is 21 C."""
    inch_shop(tmp_path)
    assert gramil(tmp_path, "store", "new", "shop.gramil", "--shop", "shop.toml").returncode == 0
    when = "2026-02-01T08:00"
    read = gramil(tmp_path, "air", "shop", "68", "44", "--store", "shop.gramil", "--at", when)
    assert "68.0 F, 44 %" in read.stdout
    right = gramil(tmp_path, "store", "reading", "shop.gramil", "shop", when, "--right", "44", "21 C", "--at", when)
    assert "44 % 68 F: 44 % 69.8 F now." in right.stdout
