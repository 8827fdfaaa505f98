"""`gramil trace`: the body's outline from a photograph of its plan, or from a flat scan of it."""

from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

import click

from gramil.cli.json_option import json_option, write_answer
from gramil.cli.kinds import UNITS, length, size
from gramil.cli.options import file_to_make, paper
from gramil.cli.trace_slots import tell_slots
from gramil.csv_text import named_rows
from gramil.faults import Fault, MakersFault
from gramil.measure import LengthUnit, show
from gramil.plain_file import content_of
from gramil.text_file import text_of

if TYPE_CHECKING:
    from gramil.photographs.ground import KnownLength
    from gramil.photographs.plan import Grounds, Laid, TracedPlan, TraceInputs
    from gramil.photographs.tags import Piece

LARGEST = 100_000_000


@dataclass(frozen=True)
class _Printed:
    """What was printed to be laid round the plan: strips, or a frame of a size; what its bar measures, as written."""

    frame: str | None
    bar: str | None
    unit: LengthUnit

    def pieces(self) -> "tuple[Piece, ...]":
        """The printed pieces as they measure."""
        from gramil.photographs.pieces import APART, as_measured, frame_piece, strips

        measured = None if self.bar is None else size(self.bar, self.unit, "--bar")
        if self.frame is None:
            return strips(as_measured(measured or APART, APART, self.unit))
        wide, tall = self.sides()
        return (frame_piece(wide, tall, as_measured(measured or wide, wide, self.unit)),)

    def sides(self) -> tuple[float, float]:
        """Width and height of the frame, mm."""
        from gramil.photographs.pieces import frame_sides

        return frame_sides(self.frame or "", self.unit)


@click.command()
@click.argument("pictures", nargs=-1, type=click.Path(path_type=Path), metavar="PICTURE...")
@click.option("--points", type=click.Path(path_type=Path), help="CSV (x,y) of points on the outline, in pixels.")
@click.option("--bar", help="What the bar on a strip measures (220 mm as printed).")
@click.option("--frame", help="The printed frame was laid out, not the strips: its size, such as '700 x 500 mm'.")
@click.option("--waving", default="1 mm", show_default=True, help="How high the plan stands off the table.")
@click.option("--height", default="0 mm", show_default=True, help="How high what is traced lies over the strips.")
@click.option("--known", multiple=True, metavar="X,Y,X,Y,LENGTH", help="A known length of the plan; twice at most.")
@click.option("--scan", is_flag=True, help="The picture is a flat scan: its scale is by two known lengths.")
@click.option("--page", type=click.IntRange(min=1), help="Which page of a PDF.")
@click.option("--edge", is_flag=True, help="An edge of wood is traced, not a drawn line.")
@click.option("--slots", type=click.Path(path_type=Path), help="Check the slots of this description's board instead.")
@click.option("--unit", type=UNITS, default="mm", show_default=True, help="The unit of the description's lengths.")
@file_to_make("--strips", ending=".pdf", what="Write the strips (or the frame) to print into this file.")
@paper("--paper", "Paper of the strips")
@file_to_make("--picture", ending=".png", what="Also draw how the picture was read: plan straightened, with the line.")
@json_option
def command(
    pictures: tuple[Path, ...],
    points: Path | None,
    bar: str | None,
    frame: str | None,
    waving: str,
    height: str,
    known: tuple[str, ...],
    scan: bool,
    page: int | None,
    edge: bool,
    slots: Path | None,
    unit: LengthUnit,
    strips: Path | None,
    paper: str | None,
    picture: Path | None,
    as_json: bool,
) -> None:
    """The body's outline from photographs of its plan with printed strips round it: keys of the description.

    Without points it says what it makes of the pictures. Pictures stay on this machine.

    \b
    gramil trace --strips strips.pdf --paper letter
    gramil trace plan.jpg --bar "219.8 mm" --points outline.csv
    gramil trace scan.png --scan --known "120,80,120,5990,500 mm" --known "90,400,4210,400,350 mm" --points outline.csv
    gramil trace board.jpg --slots tarn.toml --height "6.1 mm" --points slots.csv
    """
    printed = _Printed(frame, bar, unit)
    if strips is not None:
        _print(strips, printed, paper)
    if not pictures:
        if strips is None:
            raise click.UsageError("Name a picture, or --strips FILE.pdf to print what is laid round the plan.")
        return
    from gramil.photographs.plan import TraceInputs, traced

    asked = TraceInputs(
        () if scan else printed.pieces(),
        _known(known, unit),
        length(waving, unit, "--waving"),
        length(height, unit, "--height"),
        "edge" if edge else "line",
        unit,
    )
    ground = _read(pictures, asked, page)
    if slots is not None:
        if points is None:
            raise click.UsageError("Give --points, a CSV with a place on each slot from the first fret on.")
        tell_slots(slots, ground, _points(points), as_json)
        return
    found = None if points is None else traced(ground, _points(points), asked.what)
    if picture is not None:
        from gramil.photographs.straightened import straightened_png

        picture.write_bytes(straightened_png(ground, found))
    if as_json:
        from gramil.answers.traced import trace_answer

        write_answer("trace", (), trace_answer(ground, found, unit))
        return
    for line in _lines(ground, found, bar is None and not scan, unit):
        click.echo(line)
    if picture is not None:
        click.echo(f"How the picture was read is drawn in {picture}.")


def _print(path: Path, printed: _Printed, paper: str | None) -> None:
    """Write what is laid round a plan."""
    from gramil.writers.photo_strips import frame_pdf, strips_pdf

    path.write_bytes(strips_pdf(paper or "a4") if printed.frame is None else frame_pdf(*printed.sides()))
    click.echo(f"{path} is written. Print it at 100 %, and measure the bar.")


def _read(pictures: tuple[Path, ...], asked: "TraceInputs", page: int | None) -> "Grounds":
    """The pictures, with places."""
    from gramil.photographs.picture_file import read_picture
    from gramil.photographs.plan import grounds

    return grounds([read_picture(content_of(each, LARGEST), each.name, page) for each in pictures], asked)


def _known(written: tuple[str, ...], unit: LengthUnit) -> "tuple[KnownLength, ...]":
    """Known lengths as written, each `x,y,x,y,length`."""
    from gramil.photographs.ground import KnownLength

    found = []
    for each in written:
        parts = each.split(",", 4)
        try:
            x, y, u, v = map(float, parts[:4])
            found.append(KnownLength((x, y), (u, v), size(parts[4], unit, "--known")))
        except (ValueError, IndexError):
            raise click.BadParameter(
                f"{each}: write x,y,x,y,length, the places in pixels", param_hint="--known"
            ) from None
    if len(found) > 2:
        raise click.BadParameter("two at most: one along the plan, one across", param_hint="--known")
    return tuple(found)


def _points(path: Path) -> "list[Laid]":
    """Points out of a CSV file; the column `picture`, counted from 1, may be left out."""
    from gramil.photographs.plan import Laid

    found = []
    for line, row in named_rows(text_of(path), path.name, ("x", "y")):
        try:
            found.append(Laid(float(row["x"]), float(row["y"]), int(row.get("picture") or 1) - 1))
        except ValueError:
            raise MakersFault([Fault(line, "x,y", "is not a pair of numbers", file=path.name)]) from None
    return found


def _lines(ground: "Grounds", found: "TracedPlan | None", unmeasured: bool, unit: LengthUnit) -> list[str]:
    """What is told in words; the keys come last, so that they can be copied."""
    from gramil.photographs.keys import about_pictures, body_keys
    from gramil.photographs.pieces import APART

    told_of = list(about_pictures(ground))
    if unmeasured:
        told_of.append(
            f"The bar was not measured: it is taken as printed, {show(APART, unit)}. Measure it, and give --bar."
        )
    if found is None:
        return [*told_of, "Give --points, a CSV of 20 to 24 places once round the outline, to trace it."]
    return [*told_of, *(f"{line}." for line in found.told), "", *body_keys(found.outline, unit)]
