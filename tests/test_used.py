"""Nothing in the program is there for tests alone: what is defined is used, what is derived is read or shown."""

import ast
import re
from collections.abc import Iterator
from functools import cache
from pathlib import Path

from tests.source_trees import tree_of
from tests.test_published import WAITING

import gramil
from gramil.cli import COMMANDS
from gramil.prints.whole import NOT_DIMENSIONS, whole_graph
from gramil.shop.operations_file import usual_work

SOURCE, ROOT = Path(gramil.__file__).parent, Path(__file__).parent.parent
WORKSHOP = ("docs", "tools", "benchmarks", "fuzz", "season")
"""What else is run: the pages of docs, the tools of the house, what measures and what tries to break it."""

WAITS = {
    "gramil.air.places.remove_place": "a place that was never used taken away",
    "gramil.shop.operations_done.update_done": "a note or the hours of work done put right",
    "gramil.shop.stock.update_part": "a part made ahead moved to another place",
}
"""What the maker does in the record and has no act for yet, and what it is."""

Definition = ast.FunctionDef | ast.AsyncFunctionDef | ast.ClassDef
Owned = tuple[str, str]
"""A module and a name at its top."""


@cache
def trees() -> dict[str, ast.Module]:
    """Every module of the program but the generated names, by its dotted name."""
    paths = (path for path in SOURCE.rglob("*.py") if path.name != "names.py")
    return {
        ".".join(("gramil", *path.relative_to(SOURCE).with_suffix("").parts)).removesuffix(".__init__"): tree_of(path)
        for path in paths
    }


@cache
def definitions(tree: ast.Module) -> dict[str, Definition]:
    """The functions and classes at a module's top."""
    return {each.name: each for each in tree.body if isinstance(each, Definition)}


def imports(tree: ast.AST) -> dict[str, Owned]:
    """What a name in a file stands for: a module's own name, or the module as a whole with an empty one."""
    found: dict[str, Owned] = {}
    for node in ast.walk(tree):
        if isinstance(node, ast.ImportFrom) and node.module:
            for alias in node.names:
                whole = f"{node.module}.{alias.name}"
                found[alias.asname or alias.name] = (whole, "") if whole in trees() else (node.module, alias.name)
    return found


def uses(node: ast.AST, module: str, imported: dict[str, Owned]) -> Iterator[Owned]:
    """What a statement reads: names of its own file, names that the file imports, and names within modules."""
    nodes = [*ast.walk(node)]
    own = {each.arg for each in nodes if isinstance(each, ast.arg)}
    own |= {each.id for each in nodes if isinstance(each, ast.Name) and isinstance(each.ctx, ast.Store)}
    for each in nodes:
        if isinstance(each, ast.Name) and each.id not in own:
            yield imported.get(each.id, (module, each.id))
        elif isinstance(each, ast.Attribute) and isinstance(each.value, ast.Name):
            whole, name = imported.get(each.value.id, ("", ""))
            if whole and not name:
                yield (whole, each.attr)
        elif isinstance(each, ast.Constant) and isinstance(each.value, str) and each.value.isidentifier():
            yield imported.get(each.value, (module, each.value))  # a type in quotes


@cache
def is_on_graph(tree: ast.Module) -> bool:
    """Whether a module says which leading nouns its figures have."""
    return any(isinstance(one, ast.Assign) and "OWNS" in ast.unparse(one.targets[0]) for one in tree.body)


def begins(module: str, tree: ast.Module, each: ast.stmt) -> bool:
    """Whether a statement is run by itself: a command, a dimension, or what a module does as it is read."""
    if not isinstance(each, Definition):
        return not isinstance(each, ast.ImportFrom)
    on_line = bool(each.decorator_list) and module.startswith("gramil.cli")
    return on_line or (is_on_graph(tree) and not each.name.startswith("_")) or each.name.startswith("__")


def reached() -> set[Owned]:
    """Every function and class that something run leads to."""
    imported = {module: imports(tree) for module, tree in trees().items()}
    waiting = [owned for path in run_beside() for owned in used_beside(path)]
    waiting += [("gramil.api", name) for name in definitions(trees()["gramil.api"])]
    waiting += [(module, "command") for module, _ in COMMANDS.values()]
    for module, tree in trees().items():
        for each in tree.body:
            if begins(module, tree, each):
                waiting += uses(each, module, imported[module])
                if isinstance(each, Definition):
                    waiting.append((module, each.name))
    found: set[Owned] = set()
    while waiting:
        owned = module, name = waiting.pop()
        if owned in found or module not in trees():
            continue
        found.add(owned)
        if name in imported[module]:
            waiting.append(imported[module][name])
        elif definition := definitions(trees()[module]).get(name):
            waiting += uses(definition, module, imported[module])
    return found


def run_beside() -> list[Path]:
    """What is run and is no module of the program's own, and the names of all figures, which are made by a tool."""
    return [SOURCE / "names.py", *(path for room in WORKSHOP for path in (ROOT / room).rglob("*.py"))]


def used_beside(path: Path) -> Iterator[Owned]:
    """What a file beside the program reads of it."""
    tree = ast.parse(path.read_text(encoding="utf-8"))
    imported = imports(tree)
    yield from uses(tree, "", imported)
    yield from imported.values()


def left_over() -> set[str]:
    """Every function and class that nothing run leads to, but those that wait and say so."""
    live = reached()
    return {
        f"{module}.{name}"
        for module, tree in trees().items()
        for name in definitions(tree)
        if (module, name) not in live and not module.startswith(WAITING)
    }


def test_every_function_is_used_by_what_is_run() -> None:
    """What only tests read stands among their textbooks, or nowhere; what has its act by now waits no longer."""
    assert sorted(left_over()) == sorted(WAITS)


def named() -> set[str]:
    """What the program reads by name: `n.body_area` in its code, keys in its data, figures of its work."""
    attributes = (each for tree in trees().values() for each in ast.walk(tree) if isinstance(each, ast.Attribute))
    code = {each.attr for each in attributes if isinstance(each.value, ast.Name) and each.value.id == "n"}
    made = re.findall(r"\w+", (SOURCE / "data" / "made.toml").read_text(encoding="utf-8"))
    work = (address for each in usual_work().operations.values() for address in (*each.figures, *each.measure))
    return code | set(made) | {address.partition("[")[0] for address in work}


def test_every_dimension_is_read_or_shown() -> None:
    """By another dimension, by what a page shows, or by a list of figures of the book and the bench."""
    graph = whole_graph()
    left = {
        name
        for name in graph.dimensions
        if not (name.startswith(NOT_DIMENSIONS) or graph.followers[name] or graph.shown_on[name])
    }
    assert sorted(left - named()) == []
