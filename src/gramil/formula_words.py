"""A formula as a maker reads it: roots and powers as they are written by hand, and words where a program has signs.

The names of figures stay as they are, so that each can be turned into its words, a link or its number.
"""

import ast
from collections.abc import Callable, Mapping
from typing import Any

PLUS, TIMES, POWER, WHOLE = range(1, 5)
"""How closely a piece holds together; what holds less closely than its neighbours is put in brackets."""
SIGNS: Mapping[type[ast.AST], tuple[str, int]] = {
    ast.Add: (" + ", PLUS),
    ast.Sub: (" - ", PLUS),
    ast.Mult: (" × ", TIMES),
    ast.Div: (" / ", TIMES),
    ast.BitAnd: (" and ", 0),
    ast.BitOr: (" or ", 0),
}
COMPARED: Mapping[type[ast.cmpop], str] = {
    ast.Eq: "is",
    ast.NotEq: "is not",
    ast.Gt: ">",
    ast.GtE: "≥",
    ast.Lt: "<",
    ast.LtE: "≤",
}
RAISED = str.maketrans("-0123456789", "⁻⁰¹²³⁴⁵⁶⁷⁸⁹")
NAMED = {"nan": "not known", "inf": "without end", "pi": "π", "True": "yes", "False": "no"}
OF_ONE = {
    "max": "the greatest {}",
    "min": "the least {}",
    "mean": "the mean {}",
    "sum": "the sum of {}",
    "len": "how many {}",
    "round": "{} rounded",
    "floor": "{} rounded down",
    "sign": "the sign of {}",
    "diff": "the steps of {}",
    "isnan": "{} is not known",
    "isfinite": "{} is finite",
    "nan_to_num": "{}",
    "arange": "the number in the row",
    "abs": "|{}|",
    "log": "ln {}",
    "array": "{}",
    "concatenate": "{}",
}
"""Functions of one thing, in words."""
OF_TWO = {
    "maximum": "the greater of {} and {}",
    "minimum": "the lesser of {} and {}",
    "fmin": "the lesser of {} and {}",
    "append": "{} and {}",
    "arange": "the number in the row",
    "hypot": "√({}² + {}²)",
}
CALLED = {"sqrt", "log2", *("sin", "cos", "tan", "arcsin", "arccos", "arctan", "arctan2")}
"""Functions that stay what they are called, but for the root."""
CLOSE = ("√", "|")
"""What begins so holds together by itself."""


def formula_in_words(formula: str) -> str:
    """A formula in Python's notation, as a dimension's docstring has it, in words; the names of figures stay.

    Empty for a line of the program that is not a formula: it says nothing to a maker.
    """
    try:
        return _Words().said(ast.parse(formula, mode="eval").body)[0] if formula else ""
    except _NoFormulaError:
        return ""


def decided(formula: str, values: Mapping[str, Any]) -> str:
    """The formula without its conditions, if what they depend on is known: of each, the part that holds."""
    return ast.unparse(_Decided(values).visit(ast.parse(formula, mode="eval")).body)


class _NoFormulaError(Exception):
    """It calls or builds something that is not arithmetic."""


class _Decided(ast.NodeTransformer):
    def __init__(self, values: Mapping[str, Any]) -> None:
        self.values = {name: each for name, each in values.items() if isinstance(each, str | int | float)}

    def visit_IfExp(self, node: ast.IfExp) -> ast.AST:
        asked = {each.id for each in ast.walk(node.test) if isinstance(each, ast.Name)}
        if not asked <= self.values.keys():
            return self.generic_visit(node)
        question = compile(ast.Expression(node.test), "formula", "eval")
        holds = eval(question, {"__builtins__": {}}, dict(self.values))
        return self.visit(node.body if holds else node.orelse)


class _Words:
    """Each piece in words, with how closely it holds together."""

    def said(self, node: ast.AST) -> tuple[str, int]:
        teller: Callable[[Any], tuple[str, int]] | None = getattr(self, f"_{type(node).__name__.lower()}", None)
        if teller is None:
            raise _NoFormulaError
        return teller(node)

    def close(self, node: ast.AST, wanted: int) -> str:
        text, holds = self.said(node)
        return text if holds >= wanted else f"({text})"

    def _name(self, node: ast.Name) -> tuple[str, int]:
        return NAMED.get(node.id, node.id), WHOLE

    def _constant(self, node: ast.Constant) -> tuple[str, int]:
        written = NAMED.get(str(node.value), f"{node.value:g}" if isinstance(node.value, float) else str(node.value))
        if isinstance(node.value, float) and "e" in written:
            front, power = written.split("e")
            ten = f"10{str(int(power)).translate(RAISED)}"
            return (ten, WHOLE) if front == "1" else (f"{front} × {ten}", TIMES)
        return written, WHOLE

    def _unaryop(self, node: ast.UnaryOp) -> tuple[str, int]:
        if isinstance(node.op, ast.Not):
            return f"not {self.close(node.operand, WHOLE)}", 0
        return f"-{self.close(node.operand, POWER)}", TIMES

    def _binop(self, node: ast.BinOp) -> tuple[str, int]:
        if isinstance(node.op, ast.Pow):
            return self._power(node)
        if isinstance(node.op, ast.Mult) and isinstance(node.left, ast.Constant) and node.left.value == 0:
            return "0", WHOLE
        sign, holds = SIGNS[type(node.op)]
        left, right = self.close(node.left, holds), self.close(node.right, holds + 1 if holds else 0)
        if isinstance(node.op, ast.Add | ast.Sub) and right == "0":
            return self.said(node.left)
        return f"{left}{sign}{right}", holds

    def _power(self, node: ast.BinOp) -> tuple[str, int]:
        base = self.close(node.left, WHOLE)
        if isinstance(node.right, ast.Constant) and isinstance(node.right.value, int):
            return f"{base}{str(node.right.value).translate(RAISED)}", POWER
        return f"{base} ^ {self.close(node.right, WHOLE)}", POWER

    def _compare(self, node: ast.Compare) -> tuple[str, int]:
        pieces = [self.close(node.left, PLUS)]
        for sign, other in zip(node.ops, node.comparators, strict=True):
            pieces += [COMPARED[type(sign)], self.close(other, PLUS)]
        return " ".join(pieces), 0

    def _boolop(self, node: ast.BoolOp) -> tuple[str, int]:
        word = " and " if isinstance(node.op, ast.And) else " or "
        return word.join(self.close(each, 0) for each in node.values), 0

    def _ifexp(self, node: ast.IfExp) -> tuple[str, int]:
        return f"{self.close(node.body, PLUS)} where {self.said(node.test)[0]}, else {self.said(node.orelse)[0]}", 0

    def _call(self, node: ast.Call) -> tuple[str, int]:
        if isinstance(node.func, ast.Attribute):
            given = " and ".join(self.said(each)[0] for each in node.args)
            return f"{self.said(node.func)[0]} at {given}", 0
        called = ast.unparse(node.func)
        if called == "where":
            asked, one, other = node.args
            return self._ifexp(ast.IfExp(asked, one, other))
        if called == "interp":
            at, along, read = node.args
            return f"{self.close(read, PLUS)} at {self.close(at, PLUS)}, read along {self.close(along, PLUS)}", 0
        return self._worded(called, node.args)

    def _worded(self, called: str, given: list[ast.expr]) -> tuple[str, int]:
        known = OF_TWO if len(given) == 2 else OF_ONE
        if called not in known:
            if called not in CALLED:
                raise _NoFormulaError
            inside = ", ".join(self.said(each)[0] for each in given)
            return f"{'√' if called == 'sqrt' else called}({inside})", WHOLE
        if (form := known[called]) == "{}":
            return self.said(given[0])
        holding = 0 if form.startswith("|") else WHOLE if "²" in form or called == "log" else TIMES
        text = form.format(*(self.close(each, holding) for each in given)).replace("(1²", "(1")
        return text, WHOLE if text.startswith(CLOSE) else 0

    def _tuple(self, node: ast.Tuple | ast.List) -> tuple[str, int]:
        return " and ".join(self.close(each, PLUS) for each in node.elts), 0

    _list = _tuple

    def _starred(self, node: ast.Starred) -> tuple[str, int]:
        return self.said(node.value)

    def _attribute(self, node: ast.Attribute) -> tuple[str, int]:
        return f"{self.close(node.value, WHOLE)}'s {node.attr.replace('_', ' ')}", WHOLE

    def _subscript(self, node: ast.Subscript) -> tuple[str, int]:
        places = node.slice.elts if isinstance(node.slice, ast.Tuple) else [node.slice]
        text = self.close(node.value, WHOLE)
        for place in places:
            text = _placed(text, place, self)
        return text, WHOLE


def _placed(text: str, place: ast.expr, words: _Words) -> str:
    """One row of a figure, or those from one on; a place that keeps all rows adds no words."""
    if isinstance(place, ast.Constant):
        at = ast.unparse(place)
        return {"None": text, "0": f"the first {text}"}.get(at, f"{text} at {at}")
    if isinstance(place, ast.UnaryOp) and ast.unparse(place) == "-1":
        return f"the last {text}"
    if not isinstance(place, ast.Slice):
        return f"{text} at {words.said(place)[0]}"
    return _part_of(text, ast.unparse(place))


def _part_of(text: str, cut: str) -> str:
    begins, _, ends = cut.partition(":")
    known = {"": text, ":1": f"the first {text}", "-1:": f"the last {text}"}
    known |= {":-1": f"{text} but the last", "1:": f"{text} but the first"}
    return known.get(cut if cut != ":" else "", f"{text} from {begins} on" if not ends else f"{text} to {ends}")
