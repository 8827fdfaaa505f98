"""Operations and sheets speak of what is described: no dish where a plate is flat, no rod in a neck that has none."""

import re
from importlib.resources import files

import pytest

from gramil.description.reading import parse_description, read_shop
from gramil.description.writing import set_key
from gramil.prints.whole import figures_of
from gramil.setups.setup import Setup
from gramil.shop.operations import Operation, needed
from gramil.shop.operations_file import usual_work

EXAMPLES = files("gramil") / "data" / "examples"
FLAT = {"top.radius": '"flat"', "body.back_radius": '"flat"'}
NOT_SAID = (
    ("tarn", FLAT, r"dish|dome"),
    ("tarn", {"top.radius": '"flat"'}, r"top's dome|top dish|the top's dish"),
    ("tarn", {"neck.rod": '"none"', "neck.bars": "2"}, r"\brod\b"),
    ("tarn", {"neck.bars": "0"}, r"the bars"),
    ("tarn", {"back_binding.thickness": "0 mm"}, r"back's binding"),
    ("mere", {}, r"thread still|washer|\brod\b|neck's joint"),
    ("scree", {}, r"\bWeigh top|body and neck|braces|inside and out"),
    ("fell", {}, r"^$"),
)
"""An example, keys of it that are changed, and words that then do not fit."""


def words(each: Operation) -> str:
    """All that a maker reads of an operation."""
    return " ".join((each.what, each.prove, *each.uses, *each.by))


@pytest.mark.parametrize(("name", "changed", "unfit"), NOT_SAID)
def test_no_operation_speaks_of_what_is_not_there(name: str, changed: dict[str, str], unfit: str) -> None:
    text = (EXAMPLES / f"{name}.toml").read_text(encoding="utf-8")
    for key, value in changed.items():
        text = set_key(text, key, value)
    whole = needed(usual_work(), parse_description(text, name).instrument)
    assert [each.name for each in whole.operations.values() if re.search(unfit, words(each))] == []


def test_the_words_that_do_not_fit_are_those_of_the_usual_instrument() -> None:
    """Each is looked for because some instrument's work does say it."""
    usual = " ".join(words(each) for each in usual_work().operations.values())
    for _, _, unfit in NOT_SAID[:-1]:
        assert re.search(unfit, usual), unfit


@pytest.mark.parametrize("flat", [True, False])
def test_a_flat_plate_is_braced_on_a_flat_board(flat: bool) -> None:
    text = (EXAMPLES / "tarn.toml").read_text(encoding="utf-8")
    for key, value in FLAT.items() if flat else ():
        text = set_key(text, key, value)
    figures = figures_of(parse_description(text), read_shop())
    for name in ("brace_top", "brace_back", "bridge_plate", "owner_air", "bridge"):
        page = figures[f"setup_{name}"]
        assert isinstance(page, Setup)
        said = re.search(r"\b(dome|dish)\b", repr(page))
        assert (said is None) == (flat or name == "bridge"), name


@pytest.mark.parametrize(("name", "weeks"), [("tarn", 3), ("mere", 2)])
def test_steel_strings_are_played_in_for_three_weeks_and_nylon_for_two(name: str, weeks: int) -> None:
    """Common practice, from memory: steel pulls about twice as hard."""
    described = parse_description((EXAMPLES / f"{name}.toml").read_text(encoding="utf-8"), name)
    assert needed(usual_work(), described.instrument).operations["played_in"].clamp == weeks * 7 * 24
