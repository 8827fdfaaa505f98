"""One wiring: what a page shows is an edge of the graph, and no string names a figure."""

import ast
import importlib.util
import re
from collections.abc import Callable, Iterator
from pathlib import Path
from types import ModuleType

import pytest
from tests.source_trees import by_room, nodes_of, tree_of

import gramil
from gramil.address import parse_address
from gramil.change.made_rows import operations as made_rows
from gramil.drawings.marks import figures_in
from gramil.graph import Figures, WiringError
from gramil.prints.solved import checked_graph, solved_graph
from gramil.prints.whole import names_of, whole_graph
from gramil.reference import Ref, name_of, says
from gramil.setups.setup import figures_on
from gramil.shop.operations_file import usual_work
from gramil.shown_by import shown_by
from gramil.wiring import build, wired

ROOT = Path(gramil.__file__).parent
TOOL = ROOT.parents[1] / "tools" / "names.py"
ADDRESS = re.compile(r"([A-Za-z]\w*_\w+)(\[.*\]|\.\w+)*$")
LEFT: dict[tuple[str, str], str] = {
    ("description/board/tables.py", "crown_height"): "a key of [wire], as a maker writes it",
}
"""Strings that stand where they do and look like a figure's name, each with what it is; 20 at the most."""
FIGURES = {"figures", "made", "drawn", "now", "then", "wanted", "before", "after", "old", "new", "goes_by"}
"""What figures are called in the code; one looked up by a name put together from pieces is seen by no type checker."""


def tool() -> ModuleType:
    spec = importlib.util.spec_from_file_location("make_names", TOOL)
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


def test_the_names_are_what_the_graph_gives() -> None:
    assert (ROOT / "names.py").read_text(encoding="utf-8") == tool().written(checked_graph()), "run `make names`"


def test_the_wiring_that_is_written_down_is_the_checked_one() -> None:
    written, checked = solved_graph(), checked_graph()
    assert written.order == checked.order
    assert list(written.dimensions) == list(checked.dimensions)
    for name, each in checked.dimensions.items():
        assert written.dimensions[name].function is each.function
        assert written.parameters(name) == each.parameters
        assert written.annotation(name) == each.annotation


def test_a_wiring_that_is_out_of_date_is_refused() -> None:
    out_of_date = wired({__name__: {"slot_twice": ("saw_kerf",)}}, {}, {}).dimensions["slot_twice"]
    with pytest.raises(WiringError, match=r"slot_twice takes .*slot_need.* by .*saw_kerf.*: run `make names`"):
        _ = out_of_date.function


def slot_twice(slot_need: float) -> float:
    """A dimension that was wired by another parameter once."""
    return 2 * slot_need


def files() -> list[Path]:
    return [path for path in sorted(ROOT.rglob("*.py")) if path != ROOT / "names.py"]


ROOMS = by_room(files(), ROOT)


@pytest.mark.parametrize("room", ROOMS)
def test_no_string_names_a_figure(room: str) -> None:
    graph = solved_graph()
    known = set(graph.inputs) | set(graph.dimensions)
    for path in ROOMS[room]:
        here = path.relative_to(ROOT).as_posix()
        for text in strings(path):
            found = ADDRESS.match(text)
            assert found is None or found[1] not in known or (here, text) in LEFT, (here, text)
            holes = re.findall(r"\{([A-Za-z]\w*)[^{}]*\}", text)
            assert known.isdisjoint(holes), (here, text)


@pytest.mark.parametrize("room", ROOMS)
def test_no_figure_is_looked_up_by_a_name_put_together(room: str) -> None:
    for path in ROOMS[room]:
        for node in nodes_of(path):
            if isinstance(node, ast.Subscript) and isinstance(node.slice, ast.JoinedStr):
                looked_up_in = ast.unparse(node.value).rsplit(".", 1)[-1]
                assert looked_up_in not in FIGURES, (path.relative_to(ROOT).as_posix(), ast.unparse(node))


def test_what_is_left_is_there_and_is_little() -> None:
    assert len(LEFT) <= 20
    for (file, text), why in LEFT.items():
        assert why
        assert text in strings(ROOT / file), (file, text)


def strings(path: Path) -> Iterator[str]:
    """Every string of a module but its docstrings."""
    docs = {id(node.value) for node in nodes_of(path) if isinstance(node, ast.Expr)}
    for node in nodes_of(path):
        if isinstance(node, ast.Constant) and isinstance(node.value, str) and id(node) not in docs:
            yield node.value


@pytest.mark.parametrize("room", ROOMS)
def test_every_name_that_is_referred_to_is_on_the_graph(room: str) -> None:
    """The type checker sees it too; this holds for one who runs the tests alone."""
    graph, types = solved_graph(), classes_of_names()
    for path in ROOMS[room]:
        if "from gramil import names as n" in path.read_text(encoding="utf-8"):
            for node in nodes_of(path):
                if isinstance(node, ast.Attribute) and isinstance(node.value, ast.Name) and node.value.id == "n":
                    known = node.attr in graph.inputs or node.attr in graph.dimensions or node.attr in types
                    assert known, (path.relative_to(ROOT).as_posix(), node.attr)


def classes_of_names() -> set[str]:
    """The types that stand among the names: rows and fields of figures that have such."""
    return {node.name for node in tree_of(ROOT / "names.py").body if isinstance(node, ast.ClassDef)}


def test_every_figure_that_a_page_shows_is_read_off_its_code(example: Callable[[str], Figures]) -> None:
    """What stands on a sheet or a drawing, on any instrument, is among the edges: its own or those of its pieces."""
    graph = whole_graph()
    for figures in map(example, ("tarn", "fell", "scree", "mere")):
        pages = [(name, figures_on(figures[name])) for name in names_of(figures, "setup_")]
        pages += [(name, figures_in(figures[name].marks)) for name in names_of(figures, "drawing_")]
        for name, shown in pages:
            edges = {each for above in (name, *graph.above(name)) for each in graph.shows.get(above, ())}
            assert {name_of(each) for each in shown} <= edges, name


def test_a_page_that_shows_what_nothing_gives_is_refused() -> None:
    def setup_wrong() -> int:
        """Shows a figure that there is not."""
        return len(says("{}", WRONG).parts)

    assert shown_by(setup_wrong) == ("slot_depht",)
    with pytest.raises(WiringError, match="setup_wrong shows slot_depht, which nothing gives"):
        _ = build([setup_wrong], {}).shows


WRONG: Ref[float] = Ref("slot_depht")


def test_words_are_not_lost_in_an_f_string() -> None:
    with pytest.raises(TypeError, match="added with"):
        _ = f"{says('{} deep', WRONG)}"


def addresses_in_data() -> Iterator[tuple[str, str]]:
    """Every address that the package's data holds, with where it stands."""
    for name, operation in usual_work().operations.items():
        yield from ((f"operations.toml: {name}", address) for address in (*operation.figures, *operation.measure))
    for name, row in made_rows().items():
        yield from ((f"made.toml: {name}", fixed.figure) for fixed in row.fixes)


def test_every_address_in_data_leads_to_a_figure(example: Callable[[str], Figures]) -> None:
    """Its name is on the graph; its row and field are there on an example, or the example has no such thing."""
    graph = whole_graph()
    instruments = [example(name) for name in ("tarn", "fell", "scree", "mere")]
    for where, address in addresses_in_data():
        name, _ = parse_address(address)
        assert name in graph.inputs or name in graph.dimensions, f"{where}: {address}"
        assert any(leads(figures, address) for figures in instruments), f"{where}: {address}"


def leads(figures: Figures, address: str) -> bool:
    try:
        figures.at(address)
    except KeyError:
        return False
    return True
