"""Every command that tells something tells it as JSON too, in the shape that its schema says."""

import json
import shutil
from pathlib import Path
from typing import Any

import click
import pytest
from jsonschema import Draft202012Validator

from gramil import __version__
from gramil.answers.schemas import ANSWERS, answer_schema
from gramil.cli import COMMANDS
from gramil.cli import gramil as program

from ..conftest import EXAMPLES
from ..in_process import gramil
from ..photographs.rendered import Scene, body, strips_round

SHOP = ("--shop", "shop.toml")
AT = "2026-01-19T09:00"
ASKED = {
    "air show": ("air", "show", *SHOP, "--now", AT),
    "book": ("book", "scree.toml", "--out", "scree.pdf"),
    "check": ("check", "tarn.toml", *SHOP),
    "cost": ("cost", "tarn.toml", *SHOP, "--rate", "40", "--material", "tuners=85"),
    "dims": ("dims", "fell.toml", *SHOP, "--made"),
    "if-glued": ("if-glued", "top", "--wood", "Sitka spruce", "--rh", "60"),
    "match": ("match", "tarn.toml", *SHOP),
    "now": ("now", "tarn.toml", *SHOP, "--at", AT),
    "readback old-board": ("readback", "slots", "old-board.csv"),
    "readback setup": ("readback", "setup", "tarn.toml", "set-up.csv", *SHOP),
    "readback slots": ("readback", "slots", "tarn.toml", "slots.csv", *SHOP),
    "pack": ("pack", "tarn.toml", *SHOP, "--out", "today", "--just", "taper"),
    "ready": ("ready", "tarn.toml", *SHOP, "--now", AT),
    "schema": ("schema", "--into", "schemas"),
    "shift": ("shift", "tarn.toml", *SHOP, "--set", "scale.length=632 mm"),
    "tap": (
        "tap",
        "billet",
        "--part",
        "brace",
        "--wood",
        "Sitka spruce",
        "--length",
        "500mm",
        "--width",
        "20mm",
        "--thickness",
        "20mm",
        "--mass",
        "86 g",
        "--along",
        "420",
    ),
    "top": ("top", "tarn.toml", *SHOP),
    "trace": ("trace", "plan.jpg", "--points", "outline.csv"),
    "turn": ("turn", "board.thickness", "tarn.toml", *SHOP, "--until", "slot_left_least[19]=3.2 mm"),
    "weeks": ("weeks", "tarn.toml", *SHOP, "--at", AT, "--weeks", "1"),
    "why": ("why", "slot_depth_setting", "tarn.toml", *SHOP),
    "wood": ("wood", "Sitka spruce"),
}
"""A question of each command that has an answer."""


@pytest.fixture(scope="module")
def bench(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("bench")
    for file in EXAMPLES.iterdir():
        shutil.copy(file, folder)
    (folder / "slots.csv").write_text("fret,position\n1,35.4\n2,68.8\n3,100.3\n12,315.1\n", encoding="utf-8")
    old = "fret,position\n1,35.9\n3,102.3\n5,161.6\n7,213.4\n9,259.6\n12,319.9\n19,427.0\n"
    (folder / "old-board.csv").write_text(old, encoding="utf-8")
    (folder / "set-up.csv").write_text("string,what,value\n1,cents@12,4\n6,cents@12,6\n,relief,0.2\n", encoding="utf-8")
    scene = Scene(strips_round(), ((body(), 0.5),), size=(1500, 1125), focal=1350.0)
    (folder / "plan.jpg").write_bytes(scene.jpeg())
    places = "".join(f"{x:.1f},{y:.1f}\n" for x, y in scene.seen(body(24)).tolist())
    (folder / "outline.csv").write_text(f"x,y\n{places}", encoding="utf-8")
    return folder


def answer(bench: Path, *words: str) -> dict[str, Any]:
    done = gramil(bench, *words, "--json")
    assert done.returncode in (0, 1), done.stderr
    found: dict[str, Any] = json.loads(done.stdout)
    return found


def test_a_question_is_asked_of_every_command_that_has_an_answer() -> None:
    assert sorted([*ASKED, "said"]) == sorted(ANSWERS)


@pytest.mark.parametrize("command", ASKED)
def test_an_answer_has_the_shape_that_its_schema_says(bench: Path, command: str) -> None:
    found = answer(bench, *ASKED[command])
    schema = answer_schema(command)
    Draft202012Validator.check_schema(schema)
    Draft202012Validator(schema).validate(found)
    assert (found["form"], found["gramil"], found["command"]) == (1, __version__, command)
    assert set(found) == {"form", "gramil", "command", "instruments", "told"}


def test_an_answer_says_whose_it_is_and_whether_as_made(bench: Path) -> None:
    assert answer(bench, *ASKED["dims"])["instruments"] == [{"instrument": "Fell", "revision": None, "figures": "made"}]
    store = ("--store", "shop.gramil")
    assert gramil(bench, "store", "new", "shop.gramil", *SHOP, "tarn.toml").returncode == 0
    assert answer(bench, "check", "Tarn", *store)["instruments"][0]["revision"] == 1
    assert answer(bench, "now", *store, "--at", AT)["instruments"][0]["revision"] == 1


def test_the_schema_refuses_another_shape(bench: Path) -> None:
    found = answer(bench, *ASKED["check"])
    check = Draft202012Validator(answer_schema("check"))
    del found["told"]["findings"][0]["severity"]
    assert not check.is_valid(found)


def test_text_and_answer_tell_the_same(bench: Path) -> None:
    """Every sentence of a verdict that stops or cautions stands in the text, word for word."""
    text = gramil(bench, *ASKED["check"]).stdout
    told = answer(bench, *ASKED["check"])["told"]
    grave = [each for each in told["findings"] if each["severity"] in ("stop", "caution")]
    assert grave
    assert all(each["says"] in text and each["shown"] in text for each in grave)


def test_a_number_without_end_is_null_and_said_in_words(bench: Path) -> None:
    """*Mere* has a flat board."""
    found = answer(bench, "dims", "mere.toml", *SHOP)["told"]["dimensions"]
    radius = next(each for each in found if each["address"] == "arch_radius_at_fret[0]")
    assert (radius["value"], radius["shown"]) == (None, "flat")


STORE = "acts.gramil"
ACTS = (
    ("store", "new", STORE, *SHOP, "tarn.toml", "fell.toml"),
    ("store", "import", STORE, "scree.toml"),
    ("store", "verify", STORE),
    ("store", "backup", STORE, "copies/acts.gramil"),
    ("store", "export", STORE, "exported"),
    ("done", "wood_chosen", "Tarn", "--store", STORE),
    ("store", "not-done", STORE, "Tarn", "wood_chosen"),
    ("store", "mark", STORE, "Fell", "done"),
    ("store", "place", STORE, "loft"),
    ("air", "read", "loft", "19", "45", "--store", STORE),
    ("store", "sheets", STORE, "Tarn"),
    ("store", "undo", STORE, "--yes"),
    ("store", "restore", STORE, "copies/acts.gramil", "--yes"),
    ("done", "thicknessed", "tarn.toml", *SHOP, "--measured", "blank_thickness=6.6mm"),
    ("sheet", "slotted", "tarn.toml", *SHOP, "--out", "slot.pdf"),
)
"""Acts, one after another in one record."""


def test_what_is_done_says_so_to_a_program_line_by_line(tmp_path: Path) -> None:
    for file in EXAMPLES.iterdir():
        if ".made." not in file.name:
            shutil.copy(file, tmp_path)
    check = Draft202012Validator(answer_schema("said"))
    told = {}
    for words in ACTS:
        found = answer(tmp_path, *words)
        check.validate(found)
        name = " ".join(words[:2]) if words[0] in ("store", "air") else words[0]
        assert found["command"] == name
        assert found["told"]["lines"], words
        told[name] = found
    assert told["store mark"]["instruments"] == [{"instrument": "Fell", "revision": 1, "figures": "made"}]
    assert told["store verify"]["instruments"] == []
    assert told["done"]["instruments"] == [{"instrument": "Tarn", "revision": None, "figures": "made"}]
    assert told["sheet"]["told"]["lines"][0].endswith("slot.pdf")


def test_files_written_are_told_with_their_sizes(tmp_path: Path) -> None:
    shutil.copy(EXAMPLES / "scree.toml", tmp_path)
    for command in ("book", "schema"):
        files = answer(tmp_path, *ASKED[command])["told"]["files"]
        assert files
        assert all((tmp_path / each["path"]).stat().st_size == each["bytes"] > 0 for each in files)


def test_every_command_that_says_what_it_did_says_it_to_programs_too() -> None:
    """All but those that ask a person, show a person something, or run until stopped."""
    for_people = {"new", "bench", "show", "follow", "completion", "demo"}
    context = click.Context(program)
    for name in set(COMMANDS) - for_people:
        command = program.get_command(context, name)
        each = command.commands.values() if isinstance(command, click.Group) else [command]
        assert all("--json" in [word for option in one.params for word in option.opts] for one in each), name
