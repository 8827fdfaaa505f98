"""What a plan gives to a new description: tables as CSV; a half-width that stands out is asked about."""

from collections.abc import Callable
from dataclasses import dataclass, fields, replace
from pathlib import Path
from typing import Any, TypeVar

import click

from gramil.description.plan.drawn import DrawnPlan, HowToRead, drawn_plan
from gramil.description.plan.lines import PARTS, by_layers, guessed, listed, plan_lines
from gramil.description.plan.parts import PlanOutline, PlanParts
from gramil.description.plan.tables import braces_of, bridge_of, head_of, hole_of, outline_of
from gramil.description.whole.offsets import question_about_offset, standing_out
from gramil.faults import Fault, MakersFault
from gramil.measure import LengthUnit, MeasureError, read_length, show
from gramil.plain_file import content_of
from gramil.quantities import Mm
from gramil.text_file import text_of

LARGEST = 20_000_000
ALIKE: Mm = 0.5
F = TypeVar("F", bound=Callable[..., Any])
TABLES = {
    "--offsets": "CSV (station,half_width) of the body, off a plan.",
    "--braces": "CSV of braces off a plan: name,plate,held_to,along_1,across_1,along_2,across_2.",
    "--head": "CSV (station,half_width) of the head, from the nut's face.",
}
PAIRS = {
    "--hole": "The hole off a plan: 'centre from the neck end, diameter'.",
    "--bridge": "The bridge off a plan: 'length, width', or 'length, width, front edge to saddle'.",
}


DRAWING = "A DXF or SVG drawing of the plan: outline, braces, hole, bridge and head off its layers."


@dataclass(frozen=True)
class Read:
    """What is read of a plan: its parts, sentences on what a drawing gave, and where its bridge's front edge lies."""

    parts: PlanParts
    told: tuple[str, ...] = ()
    front_at: Mm | None = None


@dataclass(frozen=True)
class PlanGiven:
    """What was given of a plan, as it was written."""

    offsets: Path | None = None
    braces: Path | None = None
    head: Path | None = None
    hole: str | None = None
    bridge: str | None = None
    plan: Path | None = None
    take: tuple[str, ...] = ()
    inside: bool = False
    alike: str | None = None

    @property
    def any(self) -> bool:
        """Whether anything was."""
        return self != PlanGiven()

    @property
    def body(self) -> bool:
        """Whether it has the body's outline."""
        return self.offsets is not None or self.plan is not None

    def read(self, unit: LengthUnit, usual: bool) -> Read:
        """All of it; what is typed takes precedence over what is drawn. Raises MakersFault."""
        drawn = DrawnPlan(PlanParts(), ()) if self.plan is None else self._drawn(self.plan, unit)
        typed = self._typed(unit, usual)
        keys = [each.name for each in fields(PlanParts)]
        parts = PlanParts(*(getattr(typed, key) or getattr(drawn.parts, key) for key in keys))
        return Read(parts, drawn.told, drawn.front_at)

    def _drawn(self, path: Path, unit: LengthUnit) -> DrawnPlan:
        lines = plan_lines(content_of(path, LARGEST).decode("utf-8", errors="replace"), path.name)
        taken = by_layers(lines, [_named(each) for each in self.take]) if self.take else guessed(lines)
        if not taken:
            layers = "; ".join(listed(lines))
            raise MakersFault.of(
                f"no layer of {path.name} is called as a part of a guitar",
                f"It has {layers}",
                f"Say which is which: --take 'outline=LAYER', also for {', '.join(PARTS[1:])}",
            )
        alike = ALIKE if self.alike is None else read_length(self.alike, unit)
        return drawn_plan(lines, HowToRead(taken, None, alike, self.inside, unit))

    def _typed(self, unit: LengthUnit, usual: bool) -> PlanParts:
        """What is typed; where nothing may be asked, a half-width that stands out is refused. Raises MakersFault."""
        return PlanParts(
            None if self.offsets is None else _meant(self.offsets, unit, usual),
            () if self.braces is None else braces_of(text_of(self.braces), self.braces.name, unit),
            None if self.hole is None else hole_of(_split(self.hole, "--hole", 2), unit),
            None if self.bridge is None else bridge_of(_split(self.bridge, "--bridge", 3, 2), unit),
            None if self.head is None else head_of(text_of(self.head), self.head.name, unit),
        )


def plan_options(function: F) -> F:
    """The options by which a plan is given, gathered into the parameter `plan`."""

    def gathered(*values: Any, **named: Any) -> Any:
        given = PlanGiven(**{key: named.pop(key) for key in PlanGiven.__dataclass_fields__})
        return function(*values, plan=given, **named)

    gathered.__doc__ = function.__doc__
    gathered.__dict__.update(function.__dict__)
    found: Any = gathered
    found = click.option("--alike", metavar="LENGTH", help="How far the drawing's halves may differ (0.5 mm).")(found)
    found = click.option("--inside", is_flag=True, help="The drawing shows the guitar from the inside.")(found)
    found = click.option("--take", multiple=True, metavar="PART=LAYER", help="What a layer is; repeat it.")(found)
    found = click.option("--plan", type=click.Path(path_type=Path), help=DRAWING)(found)
    for flag, what in reversed(PAIRS.items()):
        found = click.option(flag, metavar="LENGTHS", help=what)(found)
    for flag, what in reversed(TABLES.items()):
        found = click.option(flag, type=click.Path(path_type=Path), help=what)(found)
    return found


def _named(written: str) -> tuple[str, str]:
    """A part and the layer that holds it."""
    part, _, layer = (each.strip() for each in written.partition("="))
    if not layer:
        raise click.BadParameter(f"{written!r}: write PART=LAYER, such as 'outline=BODY'", param_hint="--take")
    return part.lower().replace("_", " "), layer


def _split(written: str, flag: str, most: int, least: int | None = None) -> list[str]:
    """Lengths with commas between, an empty one for each that may be left out."""
    found = [each.strip() for each in written.split(",")]
    if not (least or most) <= len(found) <= most or not all(found):
        raise click.BadParameter(
            f"{written!r}: write lengths with commas between, such as '152 mm, 98 mm' or '6 in, 3 7/8 in'",
            param_hint=flag,
        )
    return [*found, *[""] * (most - len(found))]


def _meant(path: Path, unit: LengthUnit, usual: bool) -> PlanOutline:
    outline = outline_of(text_of(path), path.name, unit)
    points = list(outline.points)
    doubtful = standing_out(points)
    if usual and doubtful:
        remedy = "measure there once more; or leave out --usual, and say that it is meant"
        raise MakersFault(
            Fault(what=question_about_offset(points[row], there, unit), remedy=remedy, file=path.name)
            for row, there in doubtful
        )
    for row, there in doubtful:
        click.echo(f"{question_about_offset(points[row], there, unit)}.")
        points[row] = (points[row][0], _half_width(show(points[row][1], unit), unit))
    return replace(outline, points=tuple(points))


def _half_width(typed: str, unit: LengthUnit) -> float:
    """What a half-width is meant to be; the typed one stays if that is the answer."""
    while True:
        try:
            return read_length(click.prompt("What is it (Enter keeps it)", default=typed), unit)
        except MeasureError as fault:
            click.echo(str(fault), err=True)
