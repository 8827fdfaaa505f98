"""The program's own files as syntax trees, each parsed once however many tests look at it."""

import ast
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
