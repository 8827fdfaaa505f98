"""No iron and no flame comes near a binding that is not known to be wood, on the body and on the board."""

from collections.abc import Callable

import pytest

from gramil.description.writing import set_key
from gramil.formatter import Formatter
from gramil.graph import Figures
from gramil.sheets.own_sheet import sheet_named
from gramil.sheets.sheet_pages import sheet_text
from gramil.shop.operations_file import usual_work
from gramil.wood.wood_words import is_wood

PLASTICS = (
    "ivoroid",
    "nitrocellulose",
    "acrylic",
    "tortoise",
    "pearloid",
    "celluloid, black",
    "white ABS",
    "cellulose acetate",
    "PVC",
    "cream plastic",
    "tortoiseshell",
    "imitation ebony",
    "cherry red",
    "black/white/black",
)
"""Trade words, and names that only sound like a wood's."""
WOODS = (
    "maple",
    "curly maple",
    "bird's-eye maple",
    "Indian rosewood",
    "rosewood",
    "Macassar ebony",
    "ebony",
    "black walnut",
    "koa",
    "mahogany",
    "cherry, quartersawn",
    "persimmon",
)
"""Names of woods, by kind, figure and origin."""
IRON, NO_IRON, SOLVENT = "ot iron, steam and wet wood", "no iron, no flame", "is a solvent"
BODY, BOARD = ("top_binding", "back_binding"), ("binding",)
OWN = '\n[[wood]]\nname = "hedge thorn"\ngroup = "dense hardwood"\n'


@pytest.fixture(scope="module")
def cautions(text_of: Callable[[str], str], derive_text: Callable[..., Figures]) -> Callable[..., str]:
    """What the sheet of an operation cautions of, some keys of Tarn set: `cautions("bound", {...})`."""

    def found(operation: str, keys: dict[str, str], shop: str = "") -> str:
        text = text_of("tarn").replace('wood = "maple"                   # what', "# what")
        for key, value in keys.items():
            text = set_key(text, key, value)
        figures = derive_text(text, text_of("shop") + shop)
        sheet = sheet_named(operation, figures, usual_work())
        assert sheet is not None
        return " ".join(sheet_text(sheet, Formatter(figures))["caution"]).replace("\N{NO-BREAK SPACE}", " ")

    return found


def all_of(tables: tuple[str, ...], key: str, value: str) -> dict[str, str]:
    return {f"{table}.{key}": value for table in tables}


@pytest.mark.parametrize("name", PLASTICS)
def test_no_iron_comes_near_plastic(name: str, cautions: Callable[..., str]) -> None:
    for operation, tables in (("binding_bent", BODY), ("bound", BOARD)):
        said = cautions(operation, all_of(tables, "wood", name))
        assert NO_IRON in said
        assert IRON not in said
    for operation, tables in (("back_bound", BODY), ("top_bound", BODY), ("bound", BOARD)):
        assert SOLVENT in cautions(operation, all_of(tables, "wood", name))


@pytest.mark.parametrize("name", WOODS)
def test_wood_is_bent_on_an_iron(name: str, cautions: Callable[..., str]) -> None:
    for operation, tables in (("binding_bent", BODY), ("bound", BOARD)):
        said = cautions(operation, all_of(tables, "wood", name))
        assert IRON in said
        assert NO_IRON not in said
    assert SOLVENT not in cautions("back_bound", all_of(BODY, "wood", name))


@pytest.mark.parametrize(("tables", "operation"), [(BODY, "binding_bent"), (BOARD, "bound")])
def test_what_its_maker_says_it_is_settles_it(
    tables: tuple[str, ...], operation: str, cautions: Callable[..., str]
) -> None:
    for name, material, iron in (
        ("hornbeam", "wood", True),
        ("maple", "plastic", False),
        ("ivoroid", "wood", True),
        ("celluloid", "plastic", False),
    ):
        said = cautions(operation, {**all_of(tables, "wood", name), **all_of(tables, "material", material)})
        assert (IRON in said, NO_IRON in said) == (iron, not iron)
        assert "settles it" not in said


@pytest.mark.parametrize(("tables", "operation"), [(BODY, "binding_bent"), (BOARD, "bound")])
def test_a_wood_of_the_shop_is_wood_and_one_that_nobody_knows_is_not(
    tables: tuple[str, ...], operation: str, cautions: Callable[..., str]
) -> None:
    known = cautions(operation, all_of(tables, "wood", "hedge thorn"), OWN)
    assert (IRON in known, NO_IRON in known) == (True, False)
    unknown = cautions(operation, all_of(tables, "wood", "hedge thorn"))
    assert (IRON in unknown, NO_IRON in unknown) == (False, True)
    assert "No wood called hedge thorn is known: it is taken for celluloid" in unknown


def test_on_a_board_of_which_nothing_is_said_both_hold(cautions: Callable[..., str]) -> None:
    said = cautions("bound", {})
    assert IRON in said
    assert NO_IRON in said
    assert SOLVENT in said
    assert "is not said" in said
    assert "is not said" not in cautions("bound", {"binding.material": "plastic"})


def test_one_edge_of_wood_and_one_of_plastic_get_their_own_steps(
    text_of: Callable[[str], str], derive_text: Callable[..., Figures], cautions: Callable[..., str]
) -> None:
    text = set_key(text_of("tarn"), "back_binding.wood", "ivoroid")
    sheet = sheet_named("binding_bent", derive_text(text, text_of("shop")), usual_work())
    assert sheet is not None
    steps = " ".join(map(str, sheet.setup.steps))
    assert "The top binding: try an offcut" in steps
    assert "The back binding: warm the strips" in steps
    said = cautions("binding_bent", {"back_binding.wood": "ivoroid"})
    assert IRON in said
    assert NO_IRON in said


@pytest.mark.parametrize("name", WOODS)
def test_a_woods_name_is_one(name: str) -> None:
    assert is_wood(name)
    assert is_wood(name.upper())


@pytest.mark.parametrize("name", [*PLASTICS, "", "red", "ash grey", "faux maple", "maple plastic", "érable", "7"])
def test_anything_else_is_none(name: str) -> None:
    assert not is_wood(name)


@pytest.mark.parametrize(
    ("name", "asked"),
    [("plastic", ""), ("cream plastic", ""), ("celluloid, black", ""), ("tortoloid", "tortoloid"),
     ("", "board binding, not said what of")],
)  # fmt: skip
def test_nobody_asks_whether_plastic_is_a_protected_wood(
    name: str, asked: str, text_of: Callable[[str], str], derive_text: Callable[..., Figures]
) -> None:
    """The template says "or plastic": whoever wrote that was asked for its botanical name."""
    text = text_of("tarn").replace('wood = "maple"                   # what', "# what")
    figures = derive_text(set_key(text, "binding.wood", name) if name else text, text_of("shop"))
    said = " ".join(Formatter(figures).filled(each.says) for each in figures["finding_permits"])
    assert "plastic" not in said
    assert "celluloid" not in said
    assert asked in said
