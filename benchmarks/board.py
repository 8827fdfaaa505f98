"""The board: the graph against direct calls, DXF writing against the bare library, the whole pack."""

import io
import resource
from collections.abc import Callable, Mapping
from importlib.resources import as_file, files

import ezdxf.filemanagement

from benchmarks.timing import milliseconds, processor_seconds, seconds
from gramil.change.shift import shift
from gramil.description.reading import read_description, read_shop
from gramil.drawings.marks import Arc, Circle, Line, Polyline
from gramil.formatter import Formatter
from gramil.graph import Figures, derive
from gramil.pack import CONTENTS, TYPESET, build_book, pack_makers, whole_pack
from gramil.prints.whole import dimensions_of, drawings_of, figures_of, findings_of
from gramil.shop.operations_file import usual_work
from gramil.writers.dxf import dxf_bytes


def example(name: str) -> Figures:
    """Fresh figures of a bundled instrument."""
    with as_file(files("gramil") / "data" / "examples") as folder:
        return figures_of(read_description(folder / f"{name}.toml"), read_shop(folder / "shop.toml"))


def run() -> None:
    figures = example("tarn")
    plain = _graph(figures)
    other = example("fell")
    took = processor_seconds(lambda: shift(fresh(figures), fresh(other)), 3)
    times = f"{took / plain:.1f} times the dimensions called directly"
    print(f"shift of two instruments, processor {milliseconds(took)} (budget 250)   {times}")
    _dxf(figures)
    _pack(figures)


def fresh(figures: Figures) -> Figures:
    """The same instrument with nothing worked out yet."""
    return derive(figures.graph, figures.base, figures.origins, figures.pins, figures.lengths)


def _graph(figures: Figures) -> float:
    """Seconds of a processor that the dimensions take, called one by one without the graph."""
    names = dimensions_of(figures)
    calls = [(name, figures.graph.dimensions[name]) for name in figures.graph.order if name in set(names)]

    def direct() -> None:
        known = dict(figures.base)
        for name, dimension in calls:
            known[name] = dimension.function(*[known[parameter] for parameter in dimension.parameters])

    def by_graph() -> None:
        new = fresh(figures)
        for name in names:
            new[name]

    plain, wired = processor_seconds(direct), processor_seconds(by_graph)
    print(f"{len(names)} dimensions called directly      {milliseconds(plain)}")
    print(f"the same by the graph             {milliseconds(wired)}   {wired / plain:.2f} times")
    judged = processor_seconds(lambda: findings_of(fresh(figures)))
    print(f"findings, with what they hang on  {milliseconds(judged)}")
    return plain


def _dxf(figures: Figures) -> None:
    drawing = next(each for each in drawings_of(figures) if each.name == "board")
    formatter = Formatter(figures)

    def bare() -> None:
        document = ezdxf.filemanagement.new("R2010")
        space = document.modelspace()
        for mark in drawing.marks:
            match mark:
                case Line():
                    space.add_line(mark.start, mark.end)
                case Arc():
                    space.add_arc(mark.centre, mark.radius, mark.start_angle, mark.end_angle)
                case Circle():
                    space.add_circle(mark.centre, mark.radius)
                case Polyline():
                    space.add_lwpolyline(mark.points, close=mark.closed)
                case _:
                    space.add_text("figure")
        document.write(io.StringIO())

    ours, theirs = seconds(lambda: dxf_bytes(drawing, formatter.text)), seconds(bare)
    print(f"board.dxf by the bare library     {milliseconds(theirs)}")
    print(f"board.dxf                         {milliseconds(ours)}   {ours / theirs:.2f} times")


STAGES: Mapping[str, Callable[[str], bool]] = {
    "DXF": lambda name: name.endswith(".dxf"),
    "SVG": lambda name: name.endswith(".svg"),
    "tiles and plans": lambda name: name.startswith("print/") and name not in TYPESET,
    "sheets and book, before typesetting": lambda name: name in TYPESET,
    "tables": lambda name: name.endswith((".csv", ".json")),
    "contents": lambda name: name == CONTENTS,
}
"""The stages of a pack by the names of its files."""


def _pack(figures: Figures) -> None:
    def makers() -> Mapping[str, Callable[[], bytes]]:
        new = fresh(figures)
        return pack_makers(new, Formatter(new), usual_work(), "a4")

    print(f"the whole pack                    {milliseconds(seconds(lambda: dict(whole_pack(makers())), 2))}")
    for whose, who in (("peak memory so far", resource.RUSAGE_SELF), ("of the typesetter", resource.RUSAGE_CHILDREN)):
        print(f"{whose:<33} {resource.getrusage(who).ru_maxrss / 1024:8.0f} MB")
    print("its stages, by the processor")
    print(f"  drawings, worked out            {milliseconds(processor_seconds(makers, 2))}")
    made = makers()
    for stage, is_in in STAGES.items():
        own = [make for name, make in made.items() if is_in(name)]
        print(f"  {stage:<31} {milliseconds(processor_seconds(lambda own=own: [make() for make in own], 2))}")  # type: ignore[misc]
    print(f"  typesetter                      {milliseconds(_typesetter(made))}")
    book = seconds(lambda: build_book(fresh(figures), Formatter(figures), usual_work(), "a4"), 2)
    print(f"the build book with its sheets    {milliseconds(book)}")


def _typesetter(made: Mapping[str, Callable[[], bytes]]) -> float:
    """Seconds of a processor that the typesetter takes for sheets and book, in its own processes."""
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    for name in TYPESET:
        made[name]()
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime
