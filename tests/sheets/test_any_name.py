"""Whatever a maker calls a brace, a hole or a port, every sheet and verdict can be said."""

import re
from collections.abc import Callable

from gramil.description.reading import parse_description
from gramil.formatter import Formatter
from gramil.graph import Figures
from gramil.prints.whole import findings_of
from gramil.sheets.own_sheet import every_sheet
from gramil.sheets.sheet_pages import sheet_text
from gramil.shop.operations import needed
from gramil.shop.operations_file import usual_work

HOLE = '\n[[opening]]\nname = "{} in it"\nshape = "round"\ndiameter = 12\ncentre = 250\naside = 90\n'


def called_oddly(text: str) -> str:
    """Every row's name with the sign by which the program marks the place of a figure, and with a quote."""
    instrument, rows = text.split("\n[[", 1)
    names = set(re.findall(r'(?m)^name = "([^"]+)"', rows))
    for name in sorted(names, key=len, reverse=True):
        rows = re.sub(rf'"{re.escape(name)}\b(?! \{{)', f'"{name} {{}}', rows)
    return f"{instrument}\n[[{rows}{HOLE}"


def test_names_that_look_like_the_programs_own_signs(
    text_of: Callable[[str], str], derive_text: Callable[..., Figures]
) -> None:
    text = called_oddly(text_of("corrie"))
    assert text.count(" {}") > 12
    figures = derive_text(text, text_of("shop"))
    show, work = Formatter(figures), needed(usual_work(), parse_description(text).instrument)
    said = [str(sheet_text(each, show)) for each in every_sheet(figures, work)]
    said += [show.filled(words) for each in findings_of(figures) for words in (each.says, each.remedy)]
    for name in ("port {}", "{} in it", "X {} bass", "ring {}"):
        assert any(name in each for each in said), name
