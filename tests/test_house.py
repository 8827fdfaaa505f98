"""The house checks itself: rooms import only from floors below, modules keep to their nouns, sources are known."""

import ast
import re
import tomllib
from collections import defaultdict
from collections.abc import Iterator
from importlib.resources import files
from pathlib import Path
from typing import Any

import pytest
from tests.source_trees import nodes_of, tree_of

import gramil
from gramil.prints.solved import EVERY_ROOM, solved_graph
from gramil.prints.whole import modules
from gramil.reason import read_doc

ROOT = Path(gramil.__file__).parent
FLOORS = {
    "cli": 10, "bench": 10,
    "acts": 9,
    "answers": 8.5,
    "sheets": 8, "writers": 8, "now": 8,
    "change": 7,
    "prints": 6, "doorway": 6,
    "shop": 5,
    "top": 4.5,
    "findings": 4, "setups": 4, "drawings": 4, "air": 4,
    "parts": 3, "store": 3,
    "description": 2,
    "photographs": 1.5,
    "shapes": 1, "physics": 1, "wood": 1,
}  # fmt: skip
"""Floor of each room."""
GROUND = 0
NAMES = "names"
"""Made from the graph: what it imports is for the type checker and the editor alone."""
DOOR = "__init__"
"""Hands on the names that other programs use, each loaded when it is used."""
FILES = {"contents": 8.5, "pack": 9, "chosen": 9.25, "quote": 9, "api": 9.5}
"""Files in no room and yet not on the ground: what puts a pack or a quote together, and the names that other programs
use, stand between writers and commands."""
SIDEWAYS = {("wood", "physics")}
"""Rooms of one floor that may look into another: wood is moved by diffusion."""
SHARED_NOUNS = {"finding_", "drawing_", "piece_", "setup_"}
"""Leading nouns that a whole room owns together."""
TWO_HOMES = {"string_": ["gramil.parts.string_lines", "gramil.parts.tension"]}
"""A noun in two modules: where the strings run, and what they pull."""
PLAIN = ("photographs", "shapes", "physics", "wood")
"""Rooms that know no word of guitars."""
TRADE = re.compile(r"\b(guitars?|frets?|fretboards?|fingerboards?)\b", re.IGNORECASE)
SOURCE_KEYS = {"author", "title", "year", "flag"}
FLAGS = {"read", "transcribed", "memory"}


def code() -> list[Path]:
    return sorted(ROOT.rglob("*.py"))


def room_of(path: Path) -> str | None:
    """The folder that a file stands in, or None for the ground floor."""
    parts = path.relative_to(ROOT).parts
    return parts[0] if len(parts) > 1 else None


def imports(path: Path) -> Iterator[str]:
    """Every module of this package that a file imports, wherever in it."""
    for node in nodes_of(path):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names if alias.name.split(".")[0] == "gramil")
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{path.name} imports relatively"
            if (node.module or "").split(".")[0] == "gramil":
                yield from (f"{node.module}.{alias.name}" for alias in node.names)


def stands(module: str) -> str:
    """The room or ground-floor file of a module's dotted name."""
    return module.split(".")[1]


def floor_of(name: str) -> float:
    """The floor of a room or of a file outside all rooms."""
    return FLOORS.get(name, FILES.get(name, GROUND))


@pytest.mark.parametrize("path", code(), ids=lambda path: path.relative_to(ROOT).as_posix())
def test_a_room_imports_only_from_floors_below_or_itself(path: Path) -> None:
    here = room_of(path) or path.stem
    if here in (NAMES, DOOR):
        return
    for module in imports(path):
        there = stands(module)
        if there == here or (here, there) in SIDEWAYS or floor_of(here) == floor_of(there) == GROUND:
            continue
        assert floor_of(there) < floor_of(here), f"{path.relative_to(ROOT)} imports {module}"


def test_no_two_rooms_look_into_each_other() -> None:
    assert not SIDEWAYS & {(there, here) for here, there in SIDEWAYS}


def test_every_folder_of_code_has_a_floor() -> None:
    rooms = {room for path in code() if (room := room_of(path)) is not None}
    assert rooms <= set(FLOORS)


@pytest.mark.parametrize("path", code(), ids=lambda path: path.relative_to(ROOT).as_posix())
def test_parts_do_not_import_each_other(path: Path) -> None:
    """What one part needs of another it names as a parameter; records that several hand on are the exception."""
    if room_of(path) != "parts":
        return
    others = [module for module in imports(path) if module.split(".")[1] == "parts"]
    assert all(module.split(".")[2] in SHARED_RECORDS for module in others), others


SHARED_RECORDS = {"records", "body_records", "edge_records"}


@pytest.mark.parametrize("module", list(modules(EVERY_ROOM)), ids=lambda module: module.__name__)
def test_every_name_starts_with_a_noun_that_its_module_owns(module: Any) -> None:
    names = [
        name
        for name, value in vars(module).items()
        if getattr(value, "__module__", "") == module.__name__ and callable(value) and name.islower()
    ]
    for name in names:
        assert name.startswith(("_", *module.OWNS)), f"{module.__name__}.{name}"
    for noun in module.OWNS:
        assert noun.endswith("_"), noun
        assert any(name.startswith(noun) for name in names), f"{module.__name__} owns {noun} and has none"
    assert (module.__doc__ or "").strip(), f"{module.__name__} does not say what it settles"


def test_no_two_modules_own_one_noun() -> None:
    owners: dict[str, list[str]] = defaultdict(list)
    for module in modules(EVERY_ROOM):
        for noun in module.OWNS:
            owners[noun].append(module.__name__)
    shared = {noun: sorted(names) for noun, names in owners.items() if len(names) > 1 and noun not in SHARED_NOUNS}
    assert shared == TWO_HOMES


def test_no_noun_begins_anothers() -> None:
    """Else a name could belong to two modules."""
    nouns = {
        noun: module.__name__ for module in modules(EVERY_ROOM) for noun in module.OWNS if noun not in SHARED_NOUNS
    }
    for noun, owner in nouns.items():
        for other, second in nouns.items():
            assert noun == other or owner == second or not other.startswith(noun), f"{owner} {noun}, {second} {other}"


def known_sources() -> dict[str, dict[str, Any]]:
    found: dict[str, dict[str, Any]] = {}
    for file in (files("gramil") / "data" / "sources").iterdir():
        if file.name.endswith(".toml"):
            rows = tomllib.loads(file.read_text(encoding="utf-8"))
            assert not set(rows) & set(found), f"{file.name} gives a source that another file gives"
            found |= rows
    return found


def test_every_source_is_a_key_or_a_plain_statement() -> None:
    """A single word in small letters is a key, and the key has a row; anything else is read as it stands."""
    keys = known_sources()
    for dimension in solved_graph().dimensions.values():
        source = read_doc(dimension.what).source
        if re.fullmatch(r"[a-z0-9_]+", source):
            assert source in keys, f"{dimension.name}: {source}"
        if "_" in source:
            assert source in keys, f"{dimension.name}: {source} is neither a key nor plain words"


def test_every_source_says_who_what_and_how_it_was_seen() -> None:
    for key, row in known_sources().items():
        assert set(row) >= SOURCE_KEYS, key
        assert "where" in row or "table" in row, key
        assert row["flag"] in FLAGS or key == "common_practice", f"{key}: {row['flag']}"


@pytest.mark.parametrize("room", PLAIN)
def test_plain_rooms_know_no_word_of_guitars(room: str) -> None:
    for path in sorted((ROOT / room).rglob("*.py")):
        names = {
            name
            for node in nodes_of(path)
            if (name := getattr(node, "name", None) or getattr(node, "arg", None) or getattr(node, "id", None))
            and isinstance(name, str)
        }
        told = {name for name in names if TRADE.search(name.replace("_", " "))}
        assert not told, f"{path.name}: {told}"


@pytest.mark.parametrize("path", code(), ids=lambda path: path.relative_to(ROOT).as_posix())
def test_every_public_thing_says_what_it_is(path: Path) -> None:
    tree = tree_of(path)
    assert ast.get_docstring(tree), f"{path.name} does not say what it settles"
    for node in tree.body:
        if isinstance(node, ast.FunctionDef | ast.ClassDef) and not node.name.startswith("_"):
            assert ast.get_docstring(node), f"{path.relative_to(ROOT)}: {node.name}"


MOST_PARAMETERS = 6
"""More of them mean that a shape is missing: a record of what goes together.

Two kinds of functions have as many as they need. What is on the graph has a parameter for each figure that it follows
from: they are its wires. A command has one for each of its options, and hands them down as a record or a few.
"""


@pytest.mark.parametrize("path", code(), ids=lambda path: path.relative_to(ROOT).as_posix())
def test_no_function_has_so_many_parameters_that_a_shape_is_missing(path: Path) -> None:
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef):
            asked = [*node.args.posonlyargs, *node.args.args, *node.args.kwonlyargs]
            wired = room_of(path) in WIRED and node.name in solved_graph().dimensions
            command = room_of(path) == "cli" and any("click" in ast.unparse(each) for each in node.decorator_list)
            many = [each.arg for each in asked if each.arg not in ("self", "cls")]
            where = f"{path.relative_to(ROOT)}:{node.lineno} {node.name}"
            assert len(many) <= MOST_PARAMETERS or wired or command, where


WIRED = ("parts", "findings", "setups", "drawings", "top")


@pytest.mark.parametrize("path", code(), ids=lambda path: path.relative_to(ROOT).as_posix())
def test_text_is_written_alike_on_every_system(path: Path) -> None:
    """Its letters and its line ends are said, or the system's own would stand in the file."""
    for node in nodes_of(path):
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute):
            said = {each.arg for each in node.keywords}
            where = f"{path.relative_to(ROOT)}:{node.lineno}"
            if node.func.attr == "write_text":
                assert {"encoding", "newline"} <= said, where
            if node.func.attr == "read_text":
                assert "encoding" in said or node.args, where
            if node.func.attr == "open" and node.args and getattr(node.args[0], "value", "") in ("w", "x"):
                assert {"encoding", "newline"} <= said, where
