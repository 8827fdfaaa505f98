"""`gramil shift`: what a change moves, which findings come and go, and what was made or drawn and is right no more."""

import itertools
import math
from collections.abc import Iterator
from pathlib import Path

import click

from gramil import names as n
from gramil.change.foreman import foremans_note, in_rows
from gramil.change.made import Judged, judge
from gramil.change.made_words import lines as made_lines
from gramil.change.overlay import differences, overlaid
from gramil.change.shift import Carried, Move, Shift, shift
from gramil.cli.changed import changed_text, figures_in
from gramil.cli.json_option import json_option, write_answer
from gramil.cli.kinds import Number
from gramil.cli.options import opened_with_work, shop_file, top_option, with_the_top
from gramil.cli.verdicts import verdict
from gramil.description.base import keys_of
from gramil.formatter import Formatter, formatter_of, shown
from gramil.graph import Figures
from gramil.prints.pages import words_of
from gramil.prints.papers import Kind, is_template
from gramil.prints.whole import drawings_of
from gramil.shop.made_file import Made, made_beside, read_made

PLAY = 0.05
"""How near to its place a shop puts things, in mm: less is no move to act on. Common practice, as on slots."""

LONGEST = 160
"""Letters that an input's old and new state may take; of a longer one it is said that it changed."""

PAPERS: tuple[tuple[str, tuple[Kind, ...]], ...] = (
    ("DRAWINGS AND TEMPLATES NO LONGER TRUE", ("template", "drawing")),
    ("FILES TO CUT BY NO LONGER TRUE", ("cut file",)),
    ("SHEETS AND SETTINGS NO LONGER TRUE", ("sheet",)),
    ("PAGES OF THE BUILD BOOK NO LONGER TRUE", ("page of the build book",)),
)


@click.command()
@click.argument("old", type=click.Path(path_type=Path))
@click.argument("new", type=click.Path(path_type=Path), required=False)
@click.option("--set", "changes", multiple=True, metavar="KEY=VALUE", help="Change OLD instead of naming a NEW file.")
@shop_file
@click.option(
    "--tolerance",
    type=Number(),
    metavar="FLOAT",
    default=PLAY,
    show_default=True,
    help="Moves up to this fold away: mm, cent, degrees; of other figures, a tenth of it as their share.",
)
@click.option(
    "--made", "made_file", type=click.Path(path_type=Path), help="What is made already; else OLD's own record."
)
@click.option("--every", is_flag=True, help="Every move, finding and paper, not the foreman's note alone.")
@top_option
@json_option
@click.option("--draw", type=click.Path(path_type=Path), help="Folder for the drawings, old in grey under new.")
def command(
    old: Path,
    new: Path | None,
    changes: tuple[str, ...],
    shop: Path | None,
    tolerance: float,
    made_file: Path | None,
    every: bool,
    with_top: bool,
    as_json: bool,
    draw: Path | None,
) -> None:
    """What moves from the description OLD to NEW, or when keys of OLD are set otherwise.

    \b
    gramil shift tarn-plan.toml tarn.toml --shop shop.toml
    gramil shift tarn.toml --set scale.length=650mm --set board.width=57
    """
    if not 0 <= tolerance < math.inf:  # this refuses nan too
        raise click.BadParameter("a tolerance is 0 or more", param_hint="--tolerance")
    if (new is None) == (not changes):
        raise click.UsageError("name a NEW description, or changes with --set, and not both")
    before, _, work = opened_with_work(old, shop)
    source = new or old
    after = figures_in(source, shop)(changed_text(source, changes))
    before, after = (with_the_top(each, with_top) for each in (before, after))
    record = made_file or made_beside(old)
    made = read_made(record) if made_file is not None or record.exists() else None
    found = shift(before, after, tolerance, work)
    if as_json:
        from gramil.answers.answer import whose
        from gramil.answers.changes import shift_answer

        judged = judged_by(made, before, after)
        write_answer("shift", [whose(before), whose(after)], shift_answer(found, before, after, judged))
    else:
        for line in report(found, before, after, made, every):
            click.echo(line)
    if draw is not None:
        for line in _drawn(draw, before, after, tolerance):
            click.echo(line, err=as_json)


def report(
    found: Shift, before: Figures, after: Figures, made: Made | None = None, every: bool = False
) -> Iterator[str]:
    """The foreman's note; with `every`, all that moved by part."""
    if not found.inputs:
        yield "Nothing differs."
    elif every:
        yield from _everything(found, before, after, made)
    else:
        judged = judged_by(made, before, after)
        for part in foremans_note(found, before, after, judged):
            yield click.style(part.heading.upper(), bold=True)
            yield from (row for line in part.lines for row in in_rows(line))
        yield "--every tells all of it."


def brief_report(found: Shift, before: Figures, after: Figures, made: Made | None) -> Iterator[str]:
    """The foreman's note with one line for each part, for an answer that has already said its own."""
    judged = judged_by(made, before, after)
    for part in foremans_note(found, before, after, judged):
        more = f" ({len(part.lines) - 1} more)" if len(part.lines) > 1 else ""
        yield f"{part.heading}: {part.lines[0]}{more}"
    yield "`gramil shift` tells all of it."


def _everything(found: Shift, before: Figures, after: Figures, made: Made | None) -> Iterator[str]:
    """What to act on first, then every dimension that moved, by part."""
    old, new = formatter_of(before), formatter_of(after)
    yield click.style("CHANGED", bold=True)
    for name in found.inputs:
        key = ", ".join(keys_of(name)) or name
        was, now = old.text(name), new.text(name)
        yield f"  {key:<30} " + (f"{was} -> {now}" if len(was) + len(now) < LONGEST else "not what it was")
    yield from _listed(
        "FEATURES THAT MOVED ALONG THE BODY, toward the tail positive", [_carried(each, new) for each in found.features]
    )
    yield from _listed("FINDINGS THAT COME", [line for each in found.came for line in verdict(each, new)])
    yield from _listed("FINDINGS THAT GO", [f"{each.severity}: {each.name}" for each in found.went])
    yield from made_report(made, before, after)
    for words, kinds in PAPERS:
        yield from _listed(words, [paper.title for paper in found.papers if paper.kind in kinds])
    yield from _dimensions(found, old, new)


def _dimensions(found: Shift, old: Formatter, new: Formatter) -> Iterator[str]:
    """Every dimension that moved, by part; moves too small to show in the last digit of the unit are counted."""
    unseen = 0
    if found.moves:
        yield click.style("\nEVERY DIMENSION THAT MOVED, by part, the biggest move first", bold=True)
    for part, moves in itertools.groupby(found.moves, key=lambda move: move.part):
        shows = [move for move in moves if _shows(move, new)]
        unseen += sum(1 for move in found.moves if move.part == part) - len(shows)
        if shows:
            yield click.style(f"\n{part.upper()}", bold=True)
            yield from (line for move in shows for line in _row(move, old, new))
    if found.folded + unseen:
        yield f"\n{found.folded + unseen} more moved by too little to matter: --tolerance 0 shows them."


def _shows(move: Move, new: Formatter) -> bool:
    """Whether a move shows in the last digit; lengths in inches are shown more coarsely than in mm."""
    by = _by(move, new)
    return not by or any(digit in "123456789" for digit in by)


def _carried(feature: Carried, new: Formatter) -> str:
    by = ("+" if feature.by > 0 else "") + shown(feature.by, "mm", new.first)
    return f"{feature.name:<24} {by:>12}   held to the {feature.held_to}"


def _row(move: Move, old: Formatter, new: Formatter) -> Iterator[str]:
    """A dimension in words, then its figures with its address."""
    owner = new if move.new is not None else old
    values = [
        "none" if value is None else formatter.text_of(move.address, value, move.unit)
        for value, formatter in ((move.old, old), (move.new, new))
    ]
    rest = f"   and {move.rows - 1} more" if move.rows > 1 else ""
    yield f"  {words_of(move.address, owner)}"
    yield f"      {values[0]:>14} -> {values[1]:<14} {_by(move, new):<14} [{move.address}]{rest}"


def _by(move: Move, new: Formatter) -> str:
    """The difference with its sign; nothing for words, curvatures, or if one of the two is flat or missing."""
    if not math.isfinite(move.difference) or move.unit == "1/mm":
        return ""
    return ("+" if move.difference > 0 else "") + new.text_of(move.address, move.difference, move.unit)


def _listed(heading: str, lines: list[str] | tuple[str, ...]) -> Iterator[str]:
    if lines:
        yield click.style(f"\n{heading}", bold=True)
        yield from (f"  {line}" for line in lines)


def judged_by(made: Made | None, before: Figures, after: Figures) -> tuple[Judged, ...] | None:
    """How everything recorded as made by the old description compares with the new one; None without a record."""
    return None if made is None else judge(dict.fromkeys(made.operations, made.pinned(before)), after)


def made_report(made: Made | None, before: Figures, after: Figures) -> Iterator[str]:
    """How what is already made compares after the change; without a record, a line that nothing is known of it."""
    if made is None:
        yield from _listed("ALREADY MADE", ["no record beside the old description: --made names one"])
        return
    judged = judged_by(made, before, after) or ()
    known = {each.operation for each in judged}
    right = [each.what for each in judged if each.standing == "still right"]
    rest = [name.replace("_", " ") for name in made.operations if name not in known]
    lines = [f"{each.standing.upper():<12} {line}" for each, line in made_lines(judged, formatter_of(after).first)]
    lines += [f"{'STILL RIGHT':<12} {', '.join(right)}"] if right else []
    lines += [f"{'NOT JUDGED':<12} {', '.join(rest)}: nothing of it hangs on a figure now"] if rest else []
    yield from _listed("ALREADY MADE", lines)


def _drawn(folder: Path, before: Figures, after: Figures, tolerance: float) -> Iterator[str]:
    """Every template that differs, old in grey under new; a new name of the instrument does not count."""
    from gramil.writers.svg import svg_bytes

    folder.mkdir(parents=True, exist_ok=True)
    read = differences(formatter_of(after).said, before, after)
    renamed = before.with_base({**before.base, n.instrument_name.address: after[n.instrument_name]})
    old = {drawing.name: drawing for drawing in drawings_of(renamed)}
    for new in drawings_of(after):
        if is_template(new) and new.name in old and old[new.name] != new:
            path = folder / f"{new.name}-shift.svg"
            path.write_bytes(
                svg_bytes(overlaid(old[new.name], new, before, after, tolerance), read, formatter_of(after).first)
            )
            yield f"{path}"
