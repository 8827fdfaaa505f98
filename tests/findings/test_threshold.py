"""One way to hold a figure against its limits: on both sides of each, and not judged where anything is not known."""

import ast
import math
from collections.abc import Iterator
from importlib.resources import files

import pytest

from gramil import names as n
from gramil.findings.finding import Finding
from gramil.findings.threshold import UNKNOWN, Bounds, at_least, at_most, between, judged, saying
from gramil.reference import Ref

NOT = "not judged"
HAIR = 1e-6
LIMIT, OTHER, LOW, HIGH = n.limit_under_slot, n.limit_over_rod, n.limit_relief_least, n.limit_relief_most
STOP, CAUTION = n.limit_under_slot_least, n.limit_hole_edge
SIZES = ast.Lt | ast.LtE | ast.Gt | ast.GtE


def verdict(value: float | None, bounds: Bounds, remedy: str = "Mend it.") -> Finding:
    return judged("a figure", n.slot_need, value, bounds, "What it is.", remedy)


@pytest.mark.parametrize(
    ("value", "severity"),
    [(0.9, "fine"), (1.0, "fine"), (1.0 + HAIR, "caution"), (2.0, "caution"), (2.0 + HAIR, "stop"), (-9.0, "fine")],
)
def test_at_most(value: float, severity: str) -> None:
    assert verdict(value, at_most(LIMIT, 1.0, stop=2.0)).severity == severity


@pytest.mark.parametrize(
    ("value", "severity"),
    [(2.1, "fine"), (2.0, "fine"), (2.0 - HAIR, "caution"), (1.0, "caution"), (1.0 - HAIR, "stop"), (99.0, "fine")],
)
def test_at_least(value: float, severity: str) -> None:
    assert verdict(value, at_least(LIMIT, 2.0, stop=1.0)).severity == severity


@pytest.mark.parametrize(("value", "limit"), [(0.9, LOW), (1.0, HIGH), (2.0, HIGH), (2.1, HIGH)])
def test_between(value: float, limit: Ref[float]) -> None:
    found = verdict(value, between((LOW, 1.0), (HIGH, 2.0), "note"))
    assert (found.severity, found.limit) == ("fine" if 1.0 <= value <= 2.0 else "note", limit)


def test_on_a_limit_is_inside_it_however_it_was_worked_out() -> None:
    """0.1 + 0.2 is a hair more than 0.3 in the machine, and 0.3 at the bench."""
    assert verdict(0.1 + 0.2, at_most(LIMIT, 0.3)).severity == "fine"
    assert verdict(1.1 - 0.8, at_least(LIMIT, 0.3)).severity == "fine"


@pytest.mark.parametrize("value", [math.nan, math.inf, -math.inf, None])
@pytest.mark.parametrize("bounds", [at_most(LIMIT, 1.0, stop=2.0), at_least(LIMIT, 1.0, stop=0.0), ()])
def test_what_is_no_number_is_not_judged(value: float | None, bounds: Bounds) -> None:
    found = verdict(value, bounds)
    assert (found.severity, found.says) == (NOT, UNKNOWN)
    assert found.says.startswith("because ")
    assert found.remedy


@pytest.mark.parametrize("bounds", [at_most(LIMIT, math.nan), at_most(LIMIT, 1.0, of=math.nan)])
def test_nor_is_what_is_held_against_no_number(bounds: Bounds) -> None:
    assert verdict(0.5, bounds + at_least(OTHER, 0.0)).severity == NOT


def test_a_limit_without_end_is_none() -> None:
    assert verdict(1e9, at_most(LIMIT, math.inf)).severity == "fine"


def test_the_gravest_counts_whatever_the_order() -> None:
    stop, caution = at_most(STOP, 2.0, "stop"), at_most(CAUTION, 1.0)
    for bounds in (stop + caution, caution + stop):
        found = verdict(3.0, bounds)
        assert (found.severity, found.limit) == ("stop", STOP)
    assert verdict(3.0, at_most("least", 2.0, "stop") + at_most(LIMIT, 1.0)).limit == "least"


def test_another_figure_may_be_held_against_the_limit() -> None:
    """The sure end of a range, say: the finding still shows the likely one."""
    found = verdict(0.2, at_most(LIMIT, 1.0, of=1.5))
    assert (found.severity, found.value) == ("caution", 0.2)


def test_words_of_a_bound_take_the_place_of_the_findings_own() -> None:
    bounds = saying(at_least(LOW, 1.0), "Too little.", "More.") + at_most(HIGH, 2.0)
    told = [(each.says, each.remedy) for each in (verdict(value, bounds) for value in (0.5, 1.5, 2.5))]
    assert told == [("Too little.", "More."), ("What it is.", ""), ("What it is.", "Mend it.")]


def test_no_finding_compares_with_a_limit_by_itself() -> None:
    """Written out by hand such a comparison is false for no number, and so the figure fine, or a stop."""
    for path in sorted((files("gramil") / "findings").iterdir(), key=lambda each: each.name):
        if path.name.endswith(".py") and path.name != "threshold.py":
            found = [ast.unparse(each) for each in comparisons(ast.parse(path.read_text(encoding="utf-8")))]
            assert not found, f"{path.name}: {found}"


def comparisons(tree: ast.Module) -> Iterator[ast.Compare]:
    """Comparisons of size in which a limit stands."""
    for each in ast.walk(tree):
        if isinstance(each, ast.Compare) and any(
            isinstance(op, ast.Lt | ast.LtE | ast.Gt | ast.GtE) for op in each.ops
        ):
            names = {node.id for node in ast.walk(each) if isinstance(node, ast.Name)}
            if any(name.startswith("limit_") for name in names):
                yield each
