"""Why a figure is what it is: its formula with the numbers put in, its source, and the tree of what it follows from.

A dimension that is one expression shows that expression, read from its own syntax tree, so that the two cannot
disagree; a longer one has a `Formula:` line in its docstring (checked by a test), or a `Method:` line if no formula
would do.
"""

import ast
import inspect
import re
import textwrap
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace
from functools import cache
from typing import Any

import numpy as np

from gramil.address import Field, parse_address
from gramil.formula_words import decided, formula_in_words
from gramil.graph import Figures, Origin
from gramil.in_shop_units import in_shop_units
from gramil.measure import LengthUnit
from gramil.quantities import axes_of


@dataclass(frozen=True)
class Doc:
    """A docstring taken apart: what the thing is, and its Formula, Method and Source lines (empty if absent).

    Of a drawing `used_at` names the operations at which it is taken up.
    """

    what: str
    formula: str
    method: str
    source: str
    used_at: tuple[str, ...] = ()


@dataclass(frozen=True)
class Reason:
    """One step of a `why`. `numbers` is the formula with values in it; `origin` is set for a base value only.

    `drawn` is the figure that a measurement replaced, and `pinned` says when that was measured (and
    by which reading, if another figure's reading settled it).
    """

    address: str
    value: Any
    what: str
    formula: str
    numbers: str
    method: str
    source: str
    origin: Origin | None
    pinned: str
    drawn: Any
    follows: tuple["Reason", ...]

    def said_in(self, first: LengthUnit) -> "Reason":
        """This step with the measures in its words in the maker's unit.

        A formula with a factor in it is written for mm, N and g: inches and pounds put into it would not give the
        figure.
        """
        if first == "mm":
            return self
        what, method = (in_shop_units(each, first) for each in (self.what, self.method))
        numbers = self.formula if FACTOR.search(self.formula) else self.numbers
        return replace(self, what=what, method=method, numbers=numbers)


FACTOR = re.compile(r"(?<![\w.])\d+(?:\.\d+(?:e[-+]?\d+)?|e[-+]?\d+)")
"""A decimal or a power of ten in a formula: it may have a unit of its own."""
LINE = re.compile(r"^(Formula|Method|Source|Used at):\s*", re.MULTILINE)


@cache
def read_doc(text: str) -> Doc:
    """Split a docstring at its Formula:, Method:, Source: and Used at: lines."""
    pieces = LINE.split(inspect.cleandoc(text))
    lines = {label: " ".join(body.split()) for label, body in zip(pieces[1::2], pieces[2::2], strict=True)}
    return Doc(
        pieces[0].strip(),
        lines.get("Formula", ""),
        lines.get("Method", ""),
        lines.get("Source", "").rstrip("."),
        tuple(re.findall(r"\w+", lines.get("Used at", ""))),
    )


@cache
def formula_of(function: Callable[..., Any]) -> str:
    """The formula of a dimension in Python's notation: its `Formula:` line, else its one expression, else empty."""
    doc = read_doc(inspect.getdoc(function) or "")
    if doc.formula or doc.method:
        return doc.formula
    (definition,) = ast.parse(textwrap.dedent(inspect.getsource(function))).body
    assert isinstance(definition, ast.FunctionDef)
    body = [statement for statement in definition.body if not _is_docstring(statement)]
    if len(body) == 1 and isinstance(body[0], ast.Return) and body[0].value is not None:
        return ast.unparse(_without_numpy(body[0].value))
    return ""


def _is_docstring(statement: ast.stmt) -> bool:
    return isinstance(statement, ast.Expr) and isinstance(statement.value, ast.Constant)


class _Plain(ast.NodeTransformer):
    """Writes np.sqrt(x) as sqrt(x) and float(x) as x."""

    def visit_Attribute(self, node: ast.Attribute) -> ast.AST:
        self.generic_visit(node)
        if isinstance(node.value, ast.Name) and node.value.id == "np":
            return ast.Name(node.attr)
        return node

    def visit_Call(self, node: ast.Call) -> ast.AST:
        self.generic_visit(node)
        if isinstance(node.func, ast.Name) and node.func.id == "float":
            return node.args[0]
        return node


def _without_numpy(expression: ast.expr) -> ast.expr:
    return ast.fix_missing_locations(_Plain().visit(expression))


def with_numbers(formula: str, values: Mapping[str, str]) -> str:
    """The formula with the names of figures replaced by their values, as given."""
    names = sorted(values, key=len, reverse=True)
    if not names:
        return formula
    pattern = re.compile(r"\b(" + "|".join(map(re.escape, names)) + r")\b")
    return pattern.sub(lambda match: values[match.group(1)], formula)


def readable(formula: str) -> str:
    """The formula as people read it: × for times, ^ for powers, and words for `and` and `or`."""
    return formula.replace("**", "^").replace(" * ", " × ")


def numbers_in_words(reason: Reason, figures: Figures, number: Callable[[str], str]) -> str:
    """The formula in words with its numbers in it, for each condition, the part that holds; empty if that adds nothing.

    `number` shows the figure at an address in words.
    """
    if reason.numbers == reason.formula or not formula_in_words(reason.formula):
        return ""
    parents = {parse_address(each.address)[0]: each.address for each in reason.follows}
    values = {name: figures.at(at) for name, at in parents.items() if _plain(figures, at)}
    shown = {name: str(value) if isinstance(value, str) else number(parents[name]) for name, value in values.items()}
    return with_numbers(formula_in_words(decided(reason.formula, values)), shown)


def why(figures: Figures, address: str, number: Callable[[str], str]) -> Reason:
    """The reason for the figure at an address, with all that it follows from.

    `number` shows the figure at an address in words; it is used to put the numbers into formulas.
    Raises KeyError with the address if there is no such figure.
    """
    known: dict[str, Reason] = {}

    def step(at: str) -> Reason:
        if at not in known:
            known[at] = _reason(figures, at, number, step)
        return known[at]

    return step(address)


def _reason(figures: Figures, address: str, number: Callable[[str], str], step: Callable[[str], Reason]) -> Reason:
    name, steps = parse_address(address)
    value = figures.at(address)
    dimension = figures.graph.dimensions.get(name)
    if dimension is None:
        what = figures.graph.inputs[name].what
        return Reason(address, value, what, "", "", "", "", figures.origins.get(name), *_pin(figures, name), ())
    doc = read_doc(dimension.what)
    formula = formula_of(dimension.function)
    parents = tuple(_beside(figures, parent, name, steps) for parent in dimension.parameters)
    shown = {
        parent: f'"{figures.at(at)}"' if isinstance(figures.at(at), str) else number(at)
        for parent, at in zip(dimension.parameters, parents, strict=True)
        if _plain(figures, at)
    }
    follows = tuple(step(each) for each in parents)
    numbers = with_numbers(formula, shown)
    return Reason(
        address, value, doc.what, formula, numbers, doc.method, doc.source, None, *_pin(figures, name), follows
    )


def _pin(figures: Figures, name: str) -> tuple[str, Any]:
    for address, pin in figures.pins.items():
        if parse_address(address)[0] == name:
            return pin.when + (f", by {pin.settled_by}" if pin.settled_by else ""), figures.drawn(name)
    return "", None


def _beside(figures: Figures, parent: str, child: str, steps: tuple[int | str | Field, ...]) -> str:
    """The address of a parent's figure in the same row as the child's, if both run over the same axes."""
    rows = dict(zip(axes_of(figures.graph.annotation(child)), steps, strict=False))
    wanted = axes_of(figures.graph.annotation(parent))
    found = [str(rows[axis]) for axis in wanted if axis in rows]
    return f"{parent}[{', '.join(found)}]" if found and len(found) == len(wanted) else parent


def _plain(figures: Figures, address: str) -> bool:
    return isinstance(figures.at(address), int | float | str | np.number)


def walk(reason: Reason) -> Iterator[tuple[int, Reason]]:
    """Every step of a reason with its depth, top first; a figure seen before is not expanded again."""
    met: set[str] = set()

    def visit(step: Reason, depth: int) -> Iterator[tuple[int, Reason]]:
        yield depth, step
        if step.address not in met:
            met.add(step.address)
            for each in step.follows:
                yield from visit(each, depth + 1)

    return visit(reason, 0)
