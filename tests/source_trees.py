"""The program's own files, by their rooms and as syntax trees, each parsed once however many tests look at it."""

import ast
from collections import defaultdict
from collections.abc import Iterable
from functools import cache
from pathlib import Path


@cache
def tree_of(path: Path) -> ast.Module:
    """A file's syntax tree: to be looked at, never changed."""
    return ast.parse(path.read_text(encoding="utf-8"))


@cache
def nodes_of(path: Path) -> tuple[ast.AST, ...]:
    """Every node of it."""
    return tuple(ast.walk(tree_of(path)))


def by_room(files: Iterable[Path], root: Path) -> dict[str, list[Path]]:
    """The files of each room under `root`; those that stand in none under "no room"."""
    rooms: dict[str, list[Path]] = defaultdict(list)
    for path in files:
        parts = path.relative_to(root).parts
        rooms[parts[0] if len(parts) > 1 else "no room"].append(path)
    return dict(rooms)
