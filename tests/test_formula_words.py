"""Formulas in words: written out by hand here, and of every dimension none that reads as a program's line."""

import re

import pytest

from gramil.formula_words import decided, formula_in_words
from gramil.prints.solved import solved_graph
from gramil.reason import formula_of

BY_HAND = {
    "need + (fall if bottom == 'straight' else 0)": "need + (fall where bottom is straight, else 0)",
    "weight * (2 * length * pitch) ** 2 * 1e-9": "weight × (2 × length × pitch)² × 10⁻⁹",
    "sqrt(width ** 2 - aside ** 2)": "√(width² - aside²)",
    "2 ** (-n / 12)": "2 ^ (-n / 12)",
    "a - (b - c) / d * e": "a - (b - c) / d × e",
    "maximum(a - b, 0) + min(c)": "(the greater of (a - b) and 0) + (the least c)",
    "y[0] * hypot(1, slant[0])": "the first y × √(1 + the first slant²)",
    "top[:, join] - top[:, -1:]": "top at join - the last top",
    "where(isnan(given), best, given)": "best where given is not known, else given",
    "depth if rod != 'none' and not flat else nan": "depth where rod is not none and not flat, else not known",
    "high + 0 * slope": "high",
    "(*main, *further)": "main and further",
    "log(2) * abs(lean) / 1200": "(ln 2) × |lean| / 1200",
    "station.fret + surface.fall(x, y)": "station's fret + (surface's fall at x and y)",
}
CODE = re.compile(r"==|!=|>=|<=|\*|(?<!\w)['\"]|[\[\]]|\b(if|nan|None|np)\b|\de-|[a-z]\w*\(")
"""Signs and words of a program; sines and tangents stay what they are called."""
TRIG = re.compile(r"\b(arc)?(sin|cos|tan|tan2)\(|\blog2\(")


@pytest.mark.parametrize("formula", BY_HAND)
def test_a_formula_reads_as_it_is_written_by_hand(formula: str) -> None:
    assert formula_in_words(formula) == BY_HAND[formula]


def test_no_dimension_s_formula_reads_as_code() -> None:
    """Nor is one of a part left out: what has no words is a line of another room, of findings or of drawings."""
    functions = {name: each.function for name, each in solved_graph().dimensions.items()}
    words = {name: formula_in_words(formula_of(each)) for name, each in functions.items() if formula_of(each)}
    assert {name: text for name, text in words.items() if CODE.search(TRIG.sub("(", text))} == {}
    wordless = {name for name, text in words.items() if not text}
    assert {name for name in wordless if functions[name].__module__.startswith("gramil.parts.")} == set()
    assert all(text.count("(") == text.count(")") for text in words.values())


@pytest.mark.parametrize(
    ("bottom", "left"), [("straight", "need + fall"), ("follows the arch", "need + 0"), (None, "need + (fall if ")]
)
def test_a_condition_whose_answer_is_known_leaves_the_part_that_holds(bottom: str | None, left: str) -> None:
    formula = "need + (fall if bottom == 'straight' else 0)"
    assert decided(formula, {"bottom": bottom} if bottom else {}).startswith(left)
