"""Every command that tells something tells it as JSON too, in the shape that its schema says."""

import json
import re
import shutil
import sqlite3
from collections.abc import Callable
from contextlib import closing
from functools import cache
from pathlib import Path
from typing import Any

import click
import pytest
from jsonschema import Draft202012Validator

from gramil import __version__
from gramil.answers.schemas import ACTS, ANSWERS, answer_schema
from gramil.cli import COMMANDS
from gramil.cli import gramil as program
from gramil.store.migrating import migrate, migrations

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


@pytest.fixture(scope="module")
def asked(bench: Path) -> Callable[[str], dict[str, Any]]:
    """What a command answers to its question, asked once: to be looked at, never changed."""
    return cache(lambda command: answer(bench, *ASKED[command]))


def answer(bench: Path, *words: str) -> dict[str, Any]:
    done = gramil(bench, *words, "--json")
    assert done.returncode in (0, 1), done.stderr
    found: dict[str, Any] = json.loads(done.stdout)
    return found


def test_a_question_is_asked_of_every_command_that_has_an_answer() -> None:
    assert sorted(ASKED) == sorted(ANSWERS)


@pytest.mark.parametrize("command", ASKED)
def test_an_answer_has_the_shape_that_its_schema_says(asked: Callable[[str], dict[str, Any]], command: str) -> None:
    found = asked(command)
    schema = answer_schema(command)
    Draft202012Validator.check_schema(schema)
    Draft202012Validator(schema).validate(found)
    assert (found["form"], found["gramil"], found["command"]) == (1, __version__, command)
    assert set(found) == {"form", "gramil", "command", "instruments", "told"}


def test_the_page_for_programs_names_every_command_and_its_examples_have_their_shapes() -> None:
    page = (Path(__file__).parents[2] / "docs" / "programs.md").read_text(encoding="utf-8")
    assert [name for name in ASKED if name != "readback old-board" and f"`{name}`" not in page] == []
    assert [name for name in ACTS if not name.startswith("store ") and f"`{name}`" not in page] == []
    examples = [json.loads(text) for text in re.findall(r"```json\n(.*?)```", page, re.DOTALL)]
    assert len(examples) == 2
    for each in examples:
        Draft202012Validator(answer_schema(each["command"])).validate(each)


def test_an_answer_says_whose_it_is_and_whether_as_made(bench: Path, asked: Callable[[str], dict[str, Any]]) -> None:
    assert asked("dims")["instruments"] == [{"instrument": "Fell", "revision": None, "figures": "made"}]
    store = ("--store", "shop.gramil")
    assert gramil(bench, "store", "new", "shop.gramil", *SHOP, "tarn.toml").returncode == 0
    assert answer(bench, "check", "Tarn", *store)["instruments"][0]["revision"] == 1
    assert answer(bench, "now", *store, "--at", AT)["instruments"][0]["revision"] == 1


def test_several_instruments_are_checked_in_one_answer(bench: Path) -> None:
    files = ("fell.toml", "shop.toml", "mere.toml")
    found = answer(bench, "check", *files, *SHOP)
    Draft202012Validator(answer_schema("check")).validate(found)
    assert [each["instrument"] for each in found["instruments"]] == ["Fell", "Mere"]
    alone = [answer(bench, "check", name, *SHOP)["told"] for name in ("fell.toml", "mere.toml")]
    assert found["told"] == {"stops": any(each["stops"] for each in alone), "each": alone}


def test_the_schema_refuses_another_shape(bench: Path) -> None:
    found = answer(bench, *ASKED["check"])
    check = Draft202012Validator(answer_schema("check"))
    del found["told"]["findings"][0]["severity"]
    assert not check.is_valid(found)


def test_text_and_answer_tell_the_same(bench: Path, asked: Callable[[str], dict[str, Any]]) -> None:
    """Every sentence of a verdict that stops or cautions stands in the text, word for word."""
    text = gramil(bench, *ASKED["check"]).stdout
    told = asked("check")["told"]
    grave = [each for each in told["findings"] if each["severity"] in ("stop", "caution")]
    assert grave
    assert all(each["says"] in text and each["shown"] in text for each in grave)


def test_a_number_without_end_is_null_and_said_in_words(bench: Path) -> None:
    """*Mere* has a flat board."""
    found = answer(bench, "dims", "mere.toml", *SHOP)["told"]["dimensions"]
    radius = next(each for each in found if each["address"] == "arch_radius_at_fret[0]")
    assert (radius["value"], radius["shown"]) == (None, "flat")


STORE = "acts.gramil"
IN = ("--store", STORE)
DAY = "2026-01-19T10:00"
DOING = (
    ("store", "new", STORE, *SHOP, "tarn.toml", "fell.toml"),
    ("store", "import", STORE, "scree.toml"),
    ("store", "verify", STORE),
    ("store", "backup", STORE, "copies/acts.gramil"),
    ("store", "export", STORE, "exported"),
    ("done", "wood_chosen", "Tarn", *IN),
    ("store", "not-done", STORE, "Tarn", "wood_chosen"),
    ("store", "mark", STORE, "Fell", "waiting"),
    ("store", "mark", STORE, "Fell", "open"),
    ("store", "place", STORE, "loft", "--room", "30"),
    ("air", "read", "loft", "19", "45", *IN, "--at", DAY),
    ("air", "outlook", "loft", "+1 66 F 44 %", *IN, "--at", DAY),
    ("store", "reading", STORE, "loft", DAY, "--right", "44", "18"),
    ("air", "log", "shop", "shop-air-invented.csv", *SHOP, "--dry-run"),
    ("done", "thicknessed", "Tarn", *IN, "--measured", "blank_thickness=6.6mm"),
    ("store", "measured", STORE, "Tarn", "blank_thickness", "6.5mm"),
    ("sheet", "slotted", "Tarn", *IN, "--out", "slotted.pdf"),
    ("store", "jig", STORE, "taper sled", "62.5 mm", "--as-read"),
    ("store", "sheets", STORE, "Tarn"),
    ("store", "anew", STORE, "Tarn", "board"),
    ("store", "import", STORE, "longer.toml"),
    ("store", "return", STORE, "Tarn", "1"),
    ("store", "split", STORE, "persimmon 1", "bridge=160 x 40 x 7", "left over=160 x 30 x 7"),
    ("store", "lay", STORE, "left over", "loft"),
    ("store", "split", STORE, "left over", "a=70 x 30 x 7", "b=70 x 30 x 7"),
    ("store", "join", STORE, "a", "b"),
    ("store", "part", STORE, "sides of May", "bent sides", "length=760mm", "--wood", "walnut"),
    ("store", "strike", STORE, "sides of May"),
    ("store", "operations", STORE, "own.toml"),
    ("store", "operations", STORE, "--remove"),
    ("store", "undo", STORE, "--yes"),
    ("store", "restore", STORE, "copies/acts.gramil", "--yes"),
    ("sheet", "slotted", "tarn.toml", *SHOP, "--out", "slot.pdf"),
)
"""Acts, one after another in one record; `store upgrade` wants one that an older program wrote, and has it below."""
Told = dict[str, list[dict[str, Any]]]


@pytest.fixture(scope="module")
def acted(tmp_path_factory: pytest.TempPathFactory) -> Told:
    """What each act told, by its command."""
    folder = tmp_path_factory.mktemp("acts")
    for file in EXAMPLES.iterdir():
        if ".made." not in file.name:
            shutil.copy(file, folder)
    longer = (EXAMPLES / "tarn.toml").read_text(encoding="utf-8").replace("length = 630 ", "length = 632 ", 1)
    (folder / "longer.toml").write_text(longer, encoding="utf-8")
    own = '[operation.heron_let_in]\nwhat = "Let the heron in"\npart = "board"\nhands = 60\nafter = ["slotted"]\n'
    (folder / "own.toml").write_text(own, encoding="utf-8")
    told: Told = {}
    for words in DOING:
        name = " ".join(words[:2]) if words[0] in ("store", "air") else words[0]
        told.setdefault(name, []).append(answer(folder, *words))
    return told


def did(acted: Told, command: str, at: int = 0) -> Any:
    return acted[command][at]["told"]["did"]


def test_every_act_is_tried() -> None:
    tried = {" ".join(words[:2]) if words[0] in ("store", "air") else words[0] for words in DOING}
    assert sorted(tried | {"store upgrade"}) == sorted(ACTS)


@pytest.mark.parametrize("command", sorted(set(ACTS) - {"store upgrade"}))
def test_an_act_tells_a_program_what_it_did_in_the_shape_that_its_schema_says(acted: Told, command: str) -> None:
    schema = answer_schema(command)
    Draft202012Validator.check_schema(schema)
    for found in acted[command]:
        Draft202012Validator(schema).validate(found)
        assert found["command"] == command
        assert found["told"]["lines"]
        without = {**found, "told": {**found["told"], "did": {"lines": found["told"]["lines"]}}}
        assert not Draft202012Validator(schema).is_valid(without)


def test_so_does_a_store_that_is_brought_up(tmp_path: Path) -> None:
    with closing(sqlite3.connect(tmp_path / "old.gramil", isolation_level=None)) as connection:
        migrate(connection, migrations()[:1])
    found = answer(tmp_path, "store", "upgrade", "old.gramil")
    Draft202012Validator(answer_schema("store upgrade")).validate(found)
    assert found["told"]["did"]["store"] == "old.gramil"
    assert (tmp_path / found["told"]["did"]["kept"]).exists()


def test_acts_say_whose_they_are(acted: Told) -> None:
    assert acted["store mark"][0]["instruments"] == [{"instrument": "Fell", "revision": 1, "figures": "made"}]
    assert acted["store verify"][0]["instruments"] == []
    assert acted["sheet"][-1]["instruments"] == [{"instrument": "Tarn", "revision": None, "figures": "drawn"}]


def test_records_hold_what_was_given(acted: Told) -> None:
    """Each value as it was typed above: 19 C, 45 %, 62.5 mm, a bridge of 160 x 40 x 8 mm."""
    files = {each["file"]: (each["kind"], each["whose"]) for each in did(acted, "store new")["files"]}
    assert files["tarn.toml"] == ("instrument", "Tarn")
    assert did(acted, "store mark")["standing"] == "waiting"
    assert did(acted, "store place") == {"place": "loft", "figures": {"room": 30.0}}
    read = did(acted, "air read")
    assert (read["place"], read["air"]) == ("loft", {"humidity": 45.0, "temperature": 19.0})
    assert read["within"] == (read["band"][0] <= 45 <= read["band"][1])
    spell = did(acted, "air outlook")["spells"][0]
    assert (spell["begins"], spell["humidity"]) == ("2026-01-20T00:00:00", 44.0)
    assert spell["temperature"] == pytest.approx(18.89, abs=0.005)
    right = did(acted, "store reading")
    assert (right["was"], right["right"]) == (read["air"], {"humidity": 44.0, "temperature": 18.0})
    assert did(acted, "store jig")["constant"] == 62.5
    bridge = {"name": "bridge", "length": 160.0, "width": 40.0, "thickness": 7.0}
    assert did(acted, "store split")["parts"][0] == bridge
    assert did(acted, "store join") == {"piece": "a", "count": 2}
    assert did(acted, "store lay") == {"piece": "left over", "place": "loft"}
    assert did(acted, "store part")["figures"] == {"length": "760mm"}
    assert "Let the heron in" in did(acted, "store operations")["text"]
    assert did(acted, "store operations", 1)["text"] is None
    assert did(acted, "air log")["written"] is False
    assert did(acted, "air log")["new"] == 0


def test_work_is_told_with_its_readings(acted: Told) -> None:
    """6.6 mm, put right to 6.5 mm; what is wanted is the blank's own figure."""
    noted = did(acted, "done", 1)
    (reading,) = noted["meant"]["readings"]
    assert (noted["operation"], noted["kept_in"]) == ("thicknessed", STORE)
    assert (reading["address"], reading["measured"], reading["unit"]) == ("blank_thickness", 6.6, "mm")
    assert reading["difference"] == pytest.approx(6.6 - reading["wanted"])
    assert did(acted, "done")["meant"] is None
    corrected = did(acted, "store measured")
    assert (corrected["was"], corrected["right"]) == (6.6, 6.5)
    assert did(acted, "store not-done")["operation"] == "wood_chosen"
    assert "thicknessed" in did(acted, "store anew")["open_again"]
    handed, drawn = (did(acted, "sheet", at)[0] for at in (0, 1))
    assert (handed["handed_out"], drawn["handed_out"]) == (True, None)
    assert {"blank", "slot"} <= set(did(acted, "store sheets")["sheets"])


def test_revisions_and_copies_are_told_by_their_names(acted: Told) -> None:
    returned, gone = did(acted, "store return"), did(acted, "store restore")["gone"]
    assert (returned["as_in"], returned["revision"]) == (1, 3)
    assert did(acted, "store undo")["what"] not in [each["what"] for each in gone[:1]]
    assert any("thicknessed" in each["what"] for each in gone)
    assert did(acted, "store backup")["copy"].endswith("acts.gramil")
    assert did(acted, "store verify") == {"store": STORE, "sound": True}


def test_files_written_are_told_with_their_sizes(bench: Path, asked: Callable[[str], dict[str, Any]]) -> None:
    for command in ("book", "schema"):
        files = asked(command)["told"]["files"]
        assert files
        assert all((bench / each["path"]).stat().st_size == each["bytes"] > 0 for each in files)


def test_every_command_that_says_what_it_did_says_it_to_programs_too() -> None:
    """All but those that ask a person, show a person something, or run until stopped."""
    for_people = {"new", "bench", "day", "show", "follow", "completion", "demo"}
    context = click.Context(program)
    for name in set(COMMANDS) - for_people:
        command = program.get_command(context, name)
        each = command.commands.values() if isinstance(command, click.Group) else [command]
        assert all("--json" in [word for option in one.params for word in option.opts] for one in each), name
