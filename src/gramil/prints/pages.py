"""What each sheet says, as plain text: set-ups with every address in them replaced by its figure.

Nothing here knows how a page looks; `sheet.typ` sets what this gives it.
"""

import re
from collections.abc import Mapping, Sequence
from typing import Any, TypedDict

from gramil import names as n
from gramil.address import Field, Step, parse_address
from gramil.description.shop.tolerances import tolerance_of
from gramil.formatter import NOT_KNOWN, Formatter, parted
from gramil.in_shop_units import in_shop_units
from gramil.prints.cautions import caution_lines
from gramil.quantities import axes_of
from gramil.reference import Ref, Text, in_row
from gramil.setups.setup import BigFigure, Setup, Table

LONGEST_WORD = 30
"""A word longer than this may be broken, so that it does not run off the page."""
TOO_LONG = re.compile(f"[^ ]{{{LONGEST_WORD + 1},}}")
KEPT_TOGETHER = re.compile(r"(?<=\d) (?=(?:mm|in|cent)\b)|(?<=±) ")
"""The space between a figure and its unit: they stay on one line."""
BREAK = "\N{ZERO WIDTH SPACE}"


class FigureText(TypedDict):
    """A big figure: number and unit apart, the other unit, what was made, how near, and what measures it."""

    what: str
    number: str
    unit: str
    other: str
    made: str
    tolerance: str
    tool: str


class BoxText(TypedDict):
    """A box for a measurement: what is measured, what it should be and how near, and its unit."""

    what: str
    wanted: str
    near: str
    unit: str


class TableText(TypedDict):
    """A table: its title, the heading and the unit of each column, and the rows."""

    title: str
    heads: list[str]
    units: list[str]
    rows: list[list[str]]


class PageText(TypedDict):
    """One operation's page; `made` is what was made of figures that are not among the big ones."""

    title: str
    drawing: str
    figures: list[FigureText]
    steps: list[str]
    prove: str
    caution: list[str]
    notes: list[str]
    tools: list[str]
    boxes: list[BoxText]
    made: list[str]
    tables: list[TableText]


class FrontTable(TypedDict):
    """A table of a front page: `widths` are fractions of the page's width, `words` means that it holds words, to be set
    left.
    """

    title: str
    heads: list[str]
    widths: list[float]
    words: bool
    rows: list[list[str]]


class FrontPage(TypedDict):
    """A page of the build book ahead of the sheets: drawings each at most `tall` mm high, lines, and tables.

    Tables may be worked out as they are asked for; the last few, as many as `together` says, stand on one page if it
    holds them.
    """

    title: str
    together: int
    drawings: list[str]
    tall: float
    lines: list[str]
    tables: Sequence[FrontTable]


def page_text(setup: Setup, formatter: Formatter) -> PageText:
    """What one sheet says, with the figures of `formatter`; measured values are on it if there are any."""
    return PageText(
        title=setup.title,
        drawing="" if setup.drawing is None else formatter.figures[setup.drawing].name,
        figures=[_figure(each, formatter) for each in setup.figures],
        steps=_filled(setup.steps, formatter),
        prove=safe(formatter.filled_near(setup.prove)),
        caution=[safe(line) for line in caution_lines(setup.by, setup.on, formatter)],
        notes=_filled(setup.notes, formatter),
        tools=_filled(setup.tools, formatter),
        boxes=[_box(box, setup, formatter) for box in setup.boxes],
        made=[],
        tables=[_table(each, formatter) for each in setup.tables],
    )


def _filled(texts: Sequence[Text], formatter: Formatter) -> list[str]:
    """Each text with its figures filled in; empty ones are left out."""
    return [text for text in (safe(formatter.filled_near(each)) for each in texts) if text.strip()]


def _figure(figure: BigFigure, formatter: Formatter) -> FigureText:
    shown, other = formatter.both(figure.figure)
    number, unit = parted(shown)
    return FigureText(
        what=safe(formatter.filled(figure.what)),
        number=safe(number),
        unit=unit,
        other=other,
        made="",
        tolerance=safe(formatter.filled_near(figure.tolerance)),
        tool=safe(formatter.filled(figure.measured_with)),
    )


_SAID: Mapping[Ref[Any], Ref[Any]] = {n.string_pull_total: n.string_pull_said}
"""What is known only about, by the figure that says so: a box asks for no more than its page tells."""


def _box(box: Ref[Any], setup: Setup, formatter: Formatter) -> BoxText:
    big = next((each for each in setup.figures if each.figure == box), None)
    near = big.tolerance if big else setup.box_near or tolerance_of(box.address).words
    return BoxText(
        what=safe(named_on(setup, box, formatter)),
        wanted=_wanted(formatter.text(_SAID.get(box, box))),
        near=safe(formatter.filled_near(near)),
        unit=_unit(box, formatter),
    )


def _wanted(text: str) -> str:
    """What a box should be; nothing for what is read as it is found."""
    return "" if text == NOT_KNOWN else safe(text)


def _unit(box: Ref[Any], formatter: Formatter) -> str:
    """The unit of what goes into a box: of a length that is not known yet, the one shown first."""
    text = formatter.text(box)
    if text != NOT_KNOWN:
        return parted(text)[1]
    unit = formatter.figures.unit_at(box.address)
    return formatter.first if unit == "mm" else unit or ""


def named_on(setup: Setup, figure: Ref[Any], formatter: Formatter) -> str:
    """What a set-up calls a figure, or else the graph."""
    named = next((each.what for each in setup.figures if each.figure == figure), "")
    return formatter.filled(named) if named else words_of(figure, formatter)


def near_text(address: str, formatter: Formatter) -> str:
    """How near a figure must be, as it is printed: `± 0.10 mm`, or in words if practice has no tolerance."""
    return safe(formatter.filled(tolerance_of(address).words))


def words_of(figure: Ref[Any] | str, formatter: Formatter) -> str:
    """What a figure is called if no big figure names it: the beginning of what the graph says about it.

    That is up to the first comma, or as far as tells it from every other figure.
    """
    name, steps = parse_address(str(figure))
    graph = formatter.figures.graph
    words = in_shop_units(graph.short_names[name], formatter.first)
    return words[:1].upper() + words[1:] + steps_in_words(steps, axes_of(graph.annotation(name)))


def with_its_sign(figure: Ref[Any] | str, formatter: Formatter) -> str:
    """What a figure is called where it may be set: its whole sentence if that says what a negative one means."""
    name, _ = parse_address(str(figure))
    graph = formatter.figures.graph
    dimension = graph.dimensions.get(name)
    told = dimension.what if dimension else graph.inputs[name].what
    sentence = in_shop_units(" ".join(told.split()).split(". ")[0].rstrip("."), formatter.first)
    return sentence if "negative" in sentence else words_of(figure, formatter)


def steps_in_words(steps: tuple[Step, ...], axes: tuple[str, ...] = ()) -> str:
    """The rows and fields of an address as they are read out: `, fret 7`, `, X treble, height`."""
    return "".join(map(_step, steps, (*axes, *("" for _ in steps))))


def _step(step: Step, axis: str) -> str:
    if isinstance(step, Field):
        return f", {step.name.replace('_', ' ')}"
    if axis == "fret":
        return f", fret {step}" if step else ", zero line"
    return f", {axis} {step}" if axis and axis != "any" else f", {step}"


def _table(table: Table, formatter: Formatter) -> TableText:
    columns = [(head, figure, False) for head, figure in table.columns]
    if table.both_units:
        columns = [each for column in columns for each in _doubled(*column, table, formatter)]
    cells = [[_cell(in_row(figure, row), other, formatter) for row in table.rows] for _, figure, other in columns]
    units = [
        "in" if other and formatter.first == "in" else _common_unit(column)
        for (_, _, other), column in zip(columns, cells, strict=True)
    ]
    rows = [
        [
            f"{line + 1} {row}" if table.numbered else str(row),
            *(parted(column[line])[0] if units[number] else column[line] for number, column in enumerate(cells)),
        ]
        for line, row in enumerate(table.rows)
    ]
    return TableText(
        title=safe(formatter.filled(table.title)),
        heads=[table.row_name, *(head for head, _, _ in columns)],
        units=["", *units],
        rows=rows,
    )


def _doubled(
    head: str, figure: Ref[Any], _: bool, table: Table, formatter: Formatter
) -> list[tuple[str, Ref[Any], bool]]:
    """A column of lengths given in both units; any other column once."""
    is_length = formatter.figures.unit_at(in_row(figure, table.rows[0])) == "mm"
    return [(head, figure, False), (head, figure, True)] if is_length else [(head, figure, False)]


def _cell(figure: Ref[Any], other: bool, formatter: Formatter) -> str:
    return _other_cell(figure, formatter) if other else formatter.text(figure)


def _other_cell(figure: Ref[Any], formatter: Formatter) -> str:
    """The same length in the other unit; an inch shop has 64ths there, with what is left over, down a whole column.

    64ths leave their unit to the column's heading, so that a fraction and what is left over keep to one line.
    """
    return formatter.other(figure) if formatter.first == "mm" else formatter.in_64ths(figure).replace(" in", "", 1)


def _common_unit(cells: Sequence[str]) -> str:
    """The unit that a whole column shares, to be printed in its heading; empty if they differ."""
    units = {parted(cell)[1] for cell in cells}
    return units.pop() if len(units) == 1 else ""


def safe(text: str) -> str:
    """Text that can be typeset: without control characters, and with break points in words that are too long."""
    if not text.isprintable():
        text = "".join(character if character.isprintable() else " " for character in text)
    if " " in text:
        text = KEPT_TOGETHER.sub("\N{NO-BREAK SPACE}", text)
    return TOO_LONG.sub(lambda word: _breakable(word[0]), text)


def _breakable(word: str) -> str:
    return BREAK.join(word[start : start + LONGEST_WORD] for start in range(0, len(word), LONGEST_WORD))
