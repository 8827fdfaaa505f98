"""The published values: how many there are, that each is held against, and that what is checked makes figures."""

import ast
import importlib.util
import re
import sys
from pathlib import Path
from types import ModuleType

import gramil

ROOT = Path(__file__).parent.parent
PUBLISHED, SOURCE = ROOT / "tests" / "published", Path(gramil.__file__).parent
SOURCES, VALUES = 16, 580
"""Never fewer than these."""
WAITING = ("gramil.physics.plates", "gramil.physics.tried_bar")
"""The solved plate and the tapped bar: held against the outside already, no figure goes through them yet."""


def counter() -> ModuleType:
    """The counter that `make published` runs."""
    found = importlib.util.spec_from_file_location("published_counter", ROOT / "tools" / "published.py")
    assert found is not None
    assert found.loader is not None
    module = importlib.util.module_from_spec(found)
    sys.modules[found.name] = module
    found.loader.exec_module(module)
    return module


def test_there_are_no_fewer_sources_and_values_than_there_were() -> None:
    tool = counter()
    sources, values = tool.counted(list(tool.published()))
    assert sources >= SOURCES
    assert values >= VALUES


def test_a_value_counts_once() -> None:
    tool = counter()
    found = list(tool.published())
    assert tool.counted([*found, *found]) == tool.counted(found)
    assert tool.counted(found)[1] == len(found), "none stands there twice"


def test_every_source_says_who_and_what_and_when_and_is_read_by_a_test() -> None:
    tests = "".join(path.read_text(encoding="utf-8") for path in PUBLISHED.glob("test_*.py"))
    for file in (PUBLISHED / "values").glob("*.toml"):
        text = file.read_text(encoding="utf-8")
        assert all(re.search(rf"^{key} = \S", text, re.MULTILINE) for key in ("author", "title", "year")), file.name
        assert f'"{file.stem}"' in tests, file.name


def test_nothing_that_counts_comes_from_the_program() -> None:
    """The counter imports the standard library alone."""
    tree = ast.parse((ROOT / "tools" / "published.py").read_text(encoding="utf-8"))
    names = {node.module for node in ast.walk(tree) if isinstance(node, ast.ImportFrom)}
    names |= {alias.name for node in ast.walk(tree) if isinstance(node, ast.Import) for alias in node.names}
    assert all(str(name).split(".")[0] in sys.stdlib_module_names for name in names)


def imported(path: Path, known: dict[str, Path]) -> set[str]:
    """The modules of the program that a file imports, wherever in it."""
    found: set[str] = set()
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            found |= {alias.name for alias in node.names}
        elif isinstance(node, ast.ImportFrom) and node.module:
            found |= {node.module, *(f"{node.module}.{alias.name}" for alias in node.names)}
    return found & known.keys()


def reached(known: dict[str, Path]) -> set[str]:
    """Every module that a command, the bench, the program's own names for others, or a figure leads to."""
    graph = {name: imported(path, known) for name, path in known.items()}
    waiting = [name for name in known if name.startswith(("gramil.cli", "gramil.bench", "gramil.api"))]
    waiting += [name for name, path in known.items() if "\nOWNS = " in path.read_text(encoding="utf-8")]
    found: set[str] = set()
    while waiting:
        name = waiting.pop()
        if name not in found:
            found.add(name)
            waiting += graph[name]
    return found


def test_what_is_held_against_the_outside_makes_figures() -> None:
    """Code that only tests reach is the tests' own, and stands among their textbooks."""
    known = {
        ".".join(("gramil", *path.relative_to(SOURCE).with_suffix("").parts)).removesuffix(".__init__"): path
        for path in SOURCE.rglob("*.py")
    }
    live = reached(known)
    for test in PUBLISHED.glob("test_*.py"):
        unused = {name for name in imported(test, known) - live if not name.startswith(WAITING) and name != "gramil"}
        assert not {name for name in unused if known[name].name != "__init__.py"}, test.name
