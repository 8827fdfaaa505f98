"""`gramil shift`: what a change moves, which findings come and go, and what was made or drawn and is right no more."""

import itertools
from collections.abc import Iterator
from pathlib import Path

import click

from gramil.change.made import Judged, judge
from gramil.change.overlay import differences, overlaid
from gramil.change.shift import SMALL, Carried, Move, Shift, shift
from gramil.change.whole import drawings_of
from gramil.cli.changed import changed_text, figures_of_text
from gramil.cli.options import opened, shop_file, shower_of
from gramil.description.base import keys_of
from gramil.graph import Figures
from gramil.pack import is_template
from gramil.shop.made_file import Made, made_beside, read_made
from gramil.show import Shower, shown


@click.command()
@click.argument("old", type=click.Path(path_type=Path))
@click.argument("new", type=click.Path(path_type=Path), required=False)
@click.option("--set", "changes", multiple=True, metavar="KEY=VALUE", help="Change OLD instead of naming a NEW file.")
@shop_file
@click.option("--tolerance", type=float, default=SMALL, show_default=True, help="Moves up to this fold away.")
@click.option(
    "--made", "made_file", type=click.Path(path_type=Path), help="What is made already; else OLD's own record."
)
@click.option("--draw", type=click.Path(path_type=Path), help="Folder for the drawings, old in grey under new.")
def command(
    old: Path,
    new: Path | None,
    changes: tuple[str, ...],
    shop: Path | None,
    tolerance: float,
    made_file: Path | None,
    draw: Path | None,
) -> None:
    """What moves from the description OLD to NEW, or when keys of OLD are set otherwise.

    \b
    gramil shift tarn-plan.toml tarn.toml --shop shop.toml
    gramil shift tarn.toml --set scale.length=650mm --set board.width=57
    """
    if not tolerance >= 0:  # not a number is refused too
        raise click.BadParameter("a tolerance is nothing or more", param_hint="--tolerance")
    if (new is None) == (not changes):
        raise click.UsageError("name a NEW description, or changes with --set, and not both")
    before, _ = opened(old, shop)
    source = new or old
    after = figures_of_text(changed_text(source, changes), source, shop)
    for line in report(shift(before, after, tolerance), before, after):
        click.echo(line)
    record = made_file or made_beside(old)
    if made_file is not None or record.exists():
        for line in made_report(read_made(record), before, after):
            click.echo(line)
    if draw is not None:
        for line in _drawn(draw, before, after):
            click.echo(line)


def report(found: Shift, before: Figures, after: Figures) -> Iterator[str]:
    """The lines of the page: inputs, moves by part, findings, drawings and sheets."""
    if not found.inputs:
        yield "Nothing differs."
        return
    old, new = shower_of(before), shower_of(after)
    yield click.style("CHANGED", bold=True)
    for name in found.inputs:
        key = ", ".join(keys_of(name)) or name
        yield f"  {key:<30} {old.text(name)} -> {new.text(name)}"
    yield from _listed(
        "FEATURES THAT MOVED ALONG THE BODY, toward the tail positive", [_carried(each, new) for each in found.features]
    )
    for part, moves in itertools.groupby(found.moves, key=lambda move: move.part):
        yield click.style(f"\n{part.upper()}", bold=True)
        yield from (_row(move, old, new) for move in moves)
    if found.folded:
        yield f"\n{found.folded} more moved by too little to matter."
    yield from _listed("FINDINGS THAT COME", [f"{each.severity}: {each.name}. {each.says}" for each in found.came])
    yield from _listed("FINDINGS THAT GO", [f"{each.severity}: {each.name}" for each in found.went])
    yield from _listed("DRAWINGS AND TEMPLATES NO LONGER TRUE", found.drawings)
    yield from _listed("SHEETS AND SETTINGS NO LONGER TRUE", found.setups)


def _carried(feature: Carried, new: Shower) -> str:
    by = ("+" if feature.by > 0 else "") + shown(feature.by, "mm", new.first)
    return f"{feature.name:<24} {by:>12}   held to the {feature.held_to}"


def _row(move: Move, old: Shower, new: Shower) -> str:
    values = [
        "none" if value is None else shown(value, move.unit, shower.first)
        for value, shower in ((move.old, old), (move.new, new))
    ]
    by = ""
    if move.difference == move.difference:
        by = ("+" if move.difference > 0 else "") + shown(move.difference, move.unit, new.first)
    rest = f"   and {move.rows - 1} more rows" if move.rows > 1 else ""
    return f"  {move.address:<36} {values[0]:>12} -> {values[1]:<12} {by}{rest}"


def _listed(heading: str, lines: list[str] | tuple[str, ...]) -> Iterator[str]:
    if lines:
        yield click.style(f"\n{heading}", bold=True)
        yield from (f"  {line}" for line in lines)


def made_report(made: Made, before: Figures, after: Figures) -> Iterator[str]:
    """How what is already made stands after the change."""
    old = made.pinned(before)
    shower = shower_of(after)
    yield from _listed(
        "ALREADY MADE", [line for each in judge(made.operations, old, after) for line in _standing(each, shower)]
    )


def _standing(each: Judged, shower: Shower) -> Iterator[str]:
    yield f"{each.standing.upper():<16} {each.what}"
    if each.standing != "still right":
        unit = shower.figures.unit_at(each.address)
        is_now, should_be = (shown(value, unit, shower.first) for value in (each.is_now, each.should_be))
        yield f"                 {each.address} is {is_now}, should be {should_be}. {each.remedy}".rstrip()


def _drawn(folder: Path, before: Figures, after: Figures) -> Iterator[str]:
    from gramil.writers.svg import svg_bytes

    folder.mkdir(parents=True, exist_ok=True)
    read = differences(shower_of(after).text, before, after)
    old = {drawing.name: drawing for drawing in drawings_of(before)}
    for new in drawings_of(after):
        if is_template(new) and new.name in old and old[new.name] != new:
            path = folder / f"{new.name}-shift.svg"
            path.write_bytes(svg_bytes(overlaid(old[new.name], new, before, after), read))
            yield f"{path}"
