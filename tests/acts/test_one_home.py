"""Acts have one home: neither the command line nor the bench writes to the record but through the room of acts."""

import ast
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import gramil

ROOT = Path(gramil.__file__).parent
BELOW = ("store", "air", "shop", "doorway", "change", "now", "prints", "sheets", "description")
"""Rooms below the acts in which a function might write to the record."""
WRITES = {"gramil.store.writing.writing", "gramil.store.writing.transaction"}
"""What every change of the record goes through; what calls it writes, and what calls that."""
ALSO = {"gramil.doorway.backup.restore"}
"""What writes the record's file in another way."""
ALLOWED = {
    (
        "pages/record_page.py",
        "gramil.doorway.proof.proof_of",
    ): "it puts a copy back in a folder that is gone afterwards",
}
"""Functions that a command or a page may call all the same, each with its reason."""


def imported(path: Path) -> dict[str, str]:
    """What each imported name of a file stands for, with its module."""
    found = {}
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.ImportFrom) and node.module:
            found |= {each.asname or each.name: f"{node.module}.{each.name}" for each in node.names}
    return found


def calls(path: Path) -> Iterator[tuple[str, set[str]]]:
    """Each function of a file, by its dotted name, with the dotted names of what it calls."""
    module = ".".join(path.relative_to(ROOT.parent).with_suffix("").parts)
    tree, known = ast.parse(path.read_text(encoding="utf-8")), imported(path)
    for node in tree.body:
        if isinstance(node, ast.FunctionDef):
            names = {each.id for each in ast.walk(node) if isinstance(each, ast.Name)}
            yield f"{module}.{node.name}", {known.get(name, f"{module}.{name}") for name in names}


@cache
def writers() -> frozenset[str]:
    """Every function below the acts that writes to the record, directly or through others."""
    functions = dict(each for room in BELOW for path in (ROOT / room).rglob("*.py") for each in calls(path))
    found = WRITES | ALSO
    while more := {name for name, called in functions.items() if called & found} - found:
        found |= more
    return frozenset(found)


def test_what_writes_to_the_record_is_known() -> None:
    assert writers() >= {
        "gramil.shop.stock.add_blank",
        "gramil.shop.operations_done.mark_done",
        "gramil.shop.tools.set_constant",
        "gramil.air.pieces.weigh_piece",
        "gramil.store.undo.undo",
        "gramil.doorway.working_files.bring_in_made",
    }
    assert not {each for each in writers() if each.rpartition(".")[2] in ("operations_done", "blanks", "pins_for")}


def test_commands_and_pages_write_through_acts_alone() -> None:
    found = {
        (f"{path.parent.name}/{path.name}", name)
        for room in ("cli", "bench")
        for path in (ROOT / room).rglob("*.py")
        for name in imported(path).values()
        if name in writers()
    }
    assert found == set(ALLOWED)


def test_commands_and_pages_take_no_whole_module_of_the_record() -> None:
    """What is called through a module would not be seen."""
    modules = {
        f"gramil.{room}.{path.stem}"
        for room in ("store", "air", "shop", "doorway")
        for path in (ROOT / room).rglob("*.py")
    }
    for room in ("cli", "bench"):
        for path in (ROOT / room).rglob("*.py"):
            assert not modules & set(imported(path).values()), path.name
