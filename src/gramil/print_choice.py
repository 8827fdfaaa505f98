"""What a maker chooses to print: templates and sheets by name, by part, or those of the day; one PDF for each paper.

The command line names them, the bench has a list to tick: both come here.
"""

from collections.abc import Callable, Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property, partial

from gramil.description.problems import did_you_mean, nearest
from gramil.drawings.marks import Drawing
from gramil.faults import MakersFault
from gramil.formatter import Formatter
from gramil.graph import Figures
from gramil.pack import PLANS, as_drawn, printed, sheet_paper, slug, title_of
from gramil.prints.papers import headed, is_template
from gramil.prints.used_at import used_at
from gramil.prints.whole import drawing_names, file_of
from gramil.sheets.bench_sheets import bench_sheets_pdf
from gramil.sheets.own_sheet import every_sheet
from gramil.sheets.sheet import Sheet
from gramil.sheets.work_order import part_of, parts_of
from gramil.shop.operations import Work
from gramil.writers.beside import labels_on
from gramil.writers.pdf import Template, laid_out, leaves, templates_pdf


@dataclass(frozen=True)
class PrintChoice:
    """What is to be printed: the names of templates and of sheets."""

    templates: frozenset[str] = frozenset()
    sheets: frozenset[str] = frozenset()

    def __or__(self, other: "PrintChoice") -> "PrintChoice":
        return PrintChoice(self.templates | other.templates, self.sheets | other.sheets)


@dataclass(frozen=True)
class Choice:
    """Something that can be chosen: its name, its title, and the part that it is taken up for (empty: none)."""

    name: str
    title: str
    part: str


@dataclass(frozen=True)
class Choices:
    """All that can be printed of an instrument; `drawn` are its figures as drawn, which its templates show.

    Whoever names one template waits for that one alone.
    """

    figures: Figures
    drawn: Figures
    work: Work

    @cached_property
    def drawings(self) -> tuple[Drawing, ...]:
        """Every template."""
        return self._drawn_of(drawing_names(self.drawn))

    @cached_property
    def every_sheet(self) -> tuple[Sheet, ...]:
        """Every sheet that this instrument needs, in the order of the work."""
        return tuple(each for each in every_sheet(self.figures, self.work) if not each.setup.closed)

    def drawings_named(self, names: Collection[str]) -> tuple[Drawing, ...]:
        """The templates of these names; no other is drawn for it."""
        return self._drawn_of(name for name in drawing_names(self.drawn) if file_of(name) in names)

    def _drawn_of(self, names: Iterable[str]) -> tuple[Drawing, ...]:
        found = (self.drawn[name] for name in names)
        return tuple(each for each in found if each.marks and is_template(each))

    @property
    def templates(self) -> tuple[Choice, ...]:
        """The templates, each with the part of its first operation; the plans, which are hung up whole, have none."""
        return tuple(Choice(each.name, headed(self.figures, each), self._part(each)) for each in self.drawings)

    @property
    def sheets(self) -> tuple[Choice, ...]:
        """The sheets, in the order of the work."""
        return tuple(
            Choice(each.setup.name, each.setup.title, part_of(each.setup.name, self.work)) for each in self.every_sheet
        )

    @property
    def parts(self) -> tuple[str, ...]:
        """The parts that have something to print, in the order in which they are taken up."""
        met = {each.part for each in (*self.templates, *self.sheets)}
        return tuple(part for part in parts_of() if part in met)

    @property
    def all(self) -> PrintChoice:
        """Every sheet, and every template but the plans."""
        return self.of_parts(self.parts)

    def named(self, names: Collection[str]) -> PrintChoice:
        """What is meant by these names: a template's, a sheet's, an operation's. Raises MakersFault for another."""
        chosen = PrintChoice()
        for name in names:
            chosen |= self._named(name)
        return chosen

    def of_parts(self, parts: Collection[str]) -> PrintChoice:
        """Everything that is taken up for these parts. Raises MakersFault if one of them does not exist."""
        if not parts:
            return PrintChoice()
        for part in parts:
            if part not in self.parts:
                remedy = did_you_mean(nearest(part, self.parts)) or f"there are {', '.join(self.parts)}"
                raise MakersFault.of(f"there is nothing to print for the part {part}", remedy=remedy)
        return PrintChoice(
            *(frozenset(e.name for e in kind if e.part in parts) for kind in (self.templates, self.sheets))
        )

    def of_operations(self, operations: Collection[str]) -> PrintChoice:
        """The sheets of these operations; those without one are left out."""
        known = {each.setup.name for each in self.every_sheet}
        return PrintChoice(sheets=frozenset(_sheets_of(operations, self.work)) & known)

    def _named(self, name: str) -> PrintChoice:
        templates = {each.name for each in self.drawings_named((name,))}
        sheets = {each.setup.name for each in self.every_sheet} & {name, *_sheets_of((name,), self.work)}
        if not templates and not sheets:
            known = sorted({*(each.name for each in self.drawings), *(each.setup.name for each in self.every_sheet)})
            remedy = did_you_mean(nearest(name, known)) or f"there are {', '.join(known)}"
            raise MakersFault.of(f"there is no template and no sheet {name}", remedy=remedy)
        return PrintChoice(frozenset(templates), frozenset(sheets))

    def _part(self, drawing: Drawing) -> str:
        first = next(iter(used_at(drawing, self.figures, self.work)), None) if drawing.name not in PLANS else None
        return part_of(first.name, self.work) if first is not None else ""


def choices(figures: Figures, formatter: Formatter, work: Work) -> Choices:
    """All templates, as drawn, and all sheets that this instrument needs."""
    return Choices(figures, as_drawn(formatter, figures).figures, work)


def chosen_makers(
    formatter: Formatter,
    choices: Choices,
    chosen: PrintChoice,
    paper: str,
    printer_scale: tuple[float, float] = (1.0, 1.0),
    sheets_on: str = "",
) -> Mapping[str, Callable[[], bytes]]:
    """One PDF for each paper with what is chosen, in the formatter's figures: its place in a pack, and the function
    that makes it.

    Sheets stand first, in the order of the work, then templates. `paper` is that of the templates, `sheets_on` that of
    the sheets; left out, it is the shop's own.
    """
    figures = formatter.figures
    title, drawn = title_of(figures, formatter), as_drawn(formatter, figures)
    own = sheets_on or sheet_paper(figures, paper)
    to_cut = choices.drawings_named(chosen.templates)
    sheets = [each for each in choices.every_sheet if each.setup.name in chosen.sheets] if chosen.sheets else []
    lay = partial(laid_out, to_cut, labels_on(to_cut, drawn), paper, printer_scale, drawn.first)
    papers = (*([own] if sheets else []), *([paper] if to_cut else []))
    return {
        f"print/chosen-{slug(each)}.pdf": partial(
            _pdf, sheets if each == own else [], lay if each == paper else tuple, formatter, title, each
        )
        for each in dict.fromkeys(papers)
    }


def _pdf(
    sheets: list[Sheet], lay: Callable[[], tuple[Template, ...]], formatter: Formatter, title: str, paper: str
) -> bytes:
    """The sheets, and after them the templates that `lay` lays out."""
    templates = lay()
    if not sheets:
        return templates_pdf(templates, title)
    ready = [printed(sheet, formatter, paper) for sheet in sheets]
    return bench_sheets_pdf(ready, formatter, title, paper, leaves(templates, title))


def _sheets_of(operations: Collection[str], work: Work) -> Iterator[str]:
    for name in operations:
        if (operation := work.operations.get(name)) is not None:
            yield operation.sheet or operation.name
