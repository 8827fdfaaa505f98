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
from tests.source_trees import by_room, nodes_of, tree_of

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
DOOR, BY_MODULE = "__init__", "__main__"
"""One hands on the names that other programs use, each loaded when it is used; the other is the command line."""
FILES = {"contents": 8.5, "pack": 9, "print_choice": 9.25, "quote": 9, "api": 9.5}
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


ROOMS = by_room(code(), ROOT)
"""Its files by the rooms that they stand in."""


def where(path: Path, node: Any) -> str:
    """The line at which something stands in a file."""
    return f"{path.relative_to(ROOT)}:{node.lineno}"


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


@pytest.mark.parametrize("room", ROOMS)
def test_a_room_imports_only_from_floors_below_or_itself(room: str) -> None:
    for path in ROOMS[room]:
        here = room_of(path) or path.stem
        up = [module for module in imports(path) if not may_import(here, stands(module))]
        assert here in (NAMES, DOOR, BY_MODULE) or not up, f"{path.relative_to(ROOT)} imports {up}"


def may_import(here: str, there: str) -> bool:
    """Whether one room, or file of none, may import another."""
    same = here == there or floor_of(here) == floor_of(there) == GROUND
    return same or (here, there) in SIDEWAYS or floor_of(there) < floor_of(here)


def test_no_two_rooms_look_into_each_other() -> None:
    assert not SIDEWAYS & {(there, here) for here, there in SIDEWAYS}


def test_every_folder_of_code_has_a_floor() -> None:
    rooms = {room for path in code() if (room := room_of(path)) is not None}
    assert rooms <= set(FLOORS)


def test_parts_do_not_import_each_other() -> None:
    """What one part needs of another it names as a parameter; records that several hand on are the exception."""
    for path in ROOMS["parts"]:
        others = [module for module in imports(path) if module.split(".")[1] == "parts"]
        assert all(module.split(".")[2] in SHARED_RECORDS for module in others), (path.name, others)


SHARED_RECORDS = {"records", "bevel_records", "body_records", "edge_records", "opening_records"}


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


@pytest.mark.parametrize("room", ROOMS)
def test_every_public_thing_says_what_it_is(room: str) -> None:
    for path in ROOMS[room]:
        assert ast.get_docstring(tree_of(path)), f"{path.name} does not say what it settles"
        for node in tree_of(path).body:
            if isinstance(node, ast.FunctionDef | ast.ClassDef) and not node.name.startswith("_"):
                assert ast.get_docstring(node), f"{where(path, node)} {node.name}"


MOST_PARAMETERS = 6
"""More of them mean that a shape is missing: a record of what goes together.

Two kinds of functions have as many as they need. What is on the graph has a parameter for each figure that it follows
from: they are its wires. A command has one for each of its options, and hands them down as a record or a few.
"""


@pytest.mark.parametrize("room", ROOMS)
def test_no_function_has_so_many_parameters_that_a_shape_is_missing(room: str) -> None:
    for path in ROOMS[room]:
        for node in nodes_of(path):
            if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef) and parameters(node) > MOST_PARAMETERS:
                wired = room in WIRED and node.name in solved_graph().dimensions
                command = room == "cli" and any("click" in ast.unparse(each) for each in node.decorator_list)
                assert wired or command, f"{where(path, node)} {node.name}"


def parameters(node: ast.FunctionDef | ast.AsyncFunctionDef) -> int:
    """How many parameters a function asks for."""
    asked = [*node.args.posonlyargs, *node.args.args, *node.args.kwonlyargs]
    return len([each for each in asked if each.arg not in ("self", "cls")])


WIRED = ("parts", "findings", "setups", "drawings", "top")


@pytest.mark.parametrize("room", ROOMS)
def test_text_is_written_alike_on_every_system(room: str) -> None:
    """Its letters and its line ends are said, or the system's own would stand in the file."""
    for path in ROOMS[room]:
        for node in nodes_of(path):
            if isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute):
                assert says_how(node, node.func.attr), where(path, node)


def says_how(call: ast.Call, name: str) -> bool:
    """Whether a call that reads or writes a text says in which letters, and one that writes with which line ends."""
    said = {each.arg for each in call.keywords}
    if name == "read_text":
        return "encoding" in said or bool(call.args)
    opens = name == "open" and bool(call.args) and getattr(call.args[0], "value", "") in ("w", "x")
    return {"encoding", "newline"} <= said or not (name == "write_text" or opens)
