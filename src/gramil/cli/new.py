"""`gramil new`: asks the few questions that matter, or takes them as options, and writes a commented description."""

from collections.abc import Mapping
from dataclasses import replace
from functools import partial
from pathlib import Path

import click

from gramil.bare_numbers import length_unit
from gramil.cli.asked_again import until_right
from gramil.cli.new_plan import PlanGiven, Read, plan_options
from gramil.cli.new_shop import shop_text
from gramil.description.plan.taking import unit_of
from gramil.description.questions import FANNED, QUESTIONS, STRINGS, Question, usual_answer
from gramil.description.reading import file_text, read_shop
from gramil.description.repair.writing import FRETS, MAY_BE_EMPTY, NOT_KNOWN_YET, REPAIRED, repair_description
from gramil.description.whole.bevels import with_bevel
from gramil.description.whole.cutaway import with_cutaway
from gramil.description.whole.from_own import NAME as NAMED
from gramil.description.whole.from_own import from_own, present
from gramil.description.whole.openings import with_oval, with_port
from gramil.description.whole.questions import ASKED, RULER, STARTS, wrong_alone
from gramil.description.whole.starting import START, STARTING_POINTS
from gramil.description.whole.writing import usual_of, whole_description
from gramil.description.writing import new_description
from gramil.written_file import alone_with, put_text

FANNED_TOO = "fanned"
ALONE = frozenset(("instrument.units", STRINGS))
"""Answers by which others are read."""
SCHEMA = "#:schema ./instrument.schema.json"
SHOP_SCHEMA = "#:schema ./shop.schema.json"
"""The line by which an editor finds the schema that `gramil schema --into .` lays beside the file."""


def _option(question: Question) -> str:
    return question.key.replace(".", "_")


NAME, UNITS = (_option(each) for each in QUESTIONS[:2])
"""What a shop is asked too."""


def _flag(question: Question) -> str:
    if question.key == STRINGS:
        return "--strings"
    table, key = question.key.replace("_", "-").split(".")
    if table == "body":
        return f"--body-{key.replace('_', '-')}"
    return f"--{key}" if table in ("instrument", "scale", "board", "strings") and key != "width" else f"--{table}-{key}"


@click.argument("file", type=click.Path(path_type=Path))
@click.option("--usual", is_flag=True, help="Ask nothing: take the usual answer to what is not given as an option.")
@click.option("--whole", is_flag=True, help="A whole guitar: body, head, hole, braces and bridge too.")
@click.option("--start", type=click.Choice(list(STARTING_POINTS)), help="What a whole guitar begins from.")
@click.option("--cutaway", help="Depth, width of the horn and its radius, of a whole guitar: 95 mm, 50 mm, 32 mm.")
@click.option("--arm-bevel", help="Width, drop and length of a bevel for the arm, and its place: 25 mm, 15 mm, 300 mm.")
@click.option("--rib-bevel", help="The same of a bevel for the ribs, at the back's edge.")
@click.option("--oval", help="Sizes along and across of an oval hole in place of a round one: 84 mm, 104 mm.")
@click.option("--port", help="A port in a side: side, place along it, length and height: bass, 220 mm, 60 mm, 38 mm.")
@plan_options
@click.option("--shop", is_flag=True, help="Begin a shop: saws, wire, cutters, blocks, jigs, places, stock.")
@click.option("--repair", is_flag=True, help="A guitar that came in: frets and strings are enough.")
@click.option("--from", "other", type=click.Path(path_type=Path), help="Another instrument's file to begin from.")
def _new(
    file: Path,
    usual: bool,
    whole: bool,
    start: str | None,
    cutaway: str | None,
    arm_bevel: str | None,
    rib_bevel: str | None,
    oval: str | None,
    port: str | None,
    shop: bool,
    repair: bool,
    other: Path | None,
    plan: PlanGiven,
    **given: str | None,
) -> None:
    """Write a new description to FILE, a comment beside each key: board and neck, or a whole guitar.

    \b
    gramil new tarn.toml
    gramil new tarn.toml --whole
    gramil new tarn.toml --start small --body-length "482 mm" --usual
    gramil new tarn.toml --start small --offsets plan.csv --braces braces.csv --hole "152 mm, 98 mm"
    gramil new tarn.toml --start small --plan plan.dxf --take outline=BODY --take "top braces=BRACES"
    gramil new tarn.toml --whole --usual --cutaway "95 mm, 50 mm, 32 mm" --arm-bevel "25 mm, 15 mm, 300 mm"
    gramil new tarn.toml --whole --usual --oval "84 mm, 104 mm" --port "bass, 220 mm, 60 mm, 38 mm"
    gramil new shop.toml --shop
    gramil new old.toml --repair --frets 19 --usual
    gramil new wren.toml --from tarn.toml --name Wren --length "620 mm" --usual
    gramil new tarn.toml --name Tarn --length "630 mm" --frets 19 --usual
    gramil new mere.toml --name Mere --strings nylon --usual
    gramil new scree.toml --name Scree --bass "710 mm" --treble "680 mm" --square-at 7 --usual
    """
    if file.exists():
        raise click.BadParameter(f"{file} is there already; name a new file", param_hint="FILE")
    taken = {"cutaway": cutaway, "arm": arm_bevel, "rib": rib_bevel, "oval": oval, "port": port}
    shaped = any(taken.values())
    ruled = [each for each in RULER if given[_option(each)] is not None]
    if shop:
        _refuse_of_instruments(whole or start or other or plan.any or shaped or repair, given)
        text = shop_text(given[NAME], given[UNITS], usual)
        with alone_with(file):
            put_text(file, _with_schema(text, SHOP_SCHEMA), None)
        click.echo(f"{file} is written. Next: gramil check INSTRUMENT --shop {file}")
        return
    if repair:
        if whole or start or ruled or plan.any or shaped or other:
            raise click.UsageError(
                "--repair asks for frets and strings alone: what else is known is written into FILE."
            )
        text = _came_in(given, usual)
    elif other is not None:
        if whole or start or ruled or shaped:
            raise click.UsageError(
                "--from takes the whole of another instrument: leave out --whole, --start, --cutaway, "
                "--arm-bevel, --rib-bevel, --oval, --port and --body-..."
            )
        text = _from(other, given, usual, plan)
    else:
        of_body = whole or start or ruled or plan.any or shaped
        text = _whole(given, usual, start, plan) if of_body else _board(given, usual)
        text = _shaped(text, taken)
    with alone_with(file):
        put_text(file, _with_schema(text), None)
    click.echo(f"{file} is written. Next: gramil check {file} --shop SHOP")


def _with_schema(text: str, schema: str = SCHEMA) -> str:
    """The text with its schema in the first line, which ends as the others do."""
    ends = "\r\n" if "\r\n" in text else "\n"
    return text if text.startswith(schema) else f"{schema}{ends}{text}"


def _shaped(text: str, taken: Mapping[str, str | None]) -> str:
    """A whole guitar with a cutaway, bevels, an oval hole and a port, as far as they are given."""
    text = with_cutaway(text, taken["cutaway"]) if taken["cutaway"] else text
    for name in ("arm", "rib"):
        measures = taken[name]
        text = with_bevel(text, name, measures) if measures else text
    text = with_oval(text, taken["oval"]) if taken["oval"] else text
    return with_port(text, taken["port"]) if taken["port"] else text


def _came_in(given: Mapping[str, str | None], usual: bool) -> str:
    """A guitar that came in, from what is given and, unless no more is to be asked, from what is answered."""
    answers = {each.key: found for each in (*QUESTIONS, *FANNED) if (found := given[_option(each)]) is not None}
    for question in () if usual else REPAIRED:
        if question.key not in answers:
            answers[question.key] = _asked_of_old(question, answers)
    return repair_description(answers)


def _asked_of_old(question: Question, so_far: Mapping[str, str]) -> str:
    """The answer to a question about a guitar that came in; empty if that is not known yet."""
    before = {FRETS: "12"} | {key: text for key, text in so_far.items() if key in ALONE or key.startswith("scale.")}
    if question.key in MAY_BE_EMPTY:
        ask = partial(click.prompt, f"{question.ask} ({NOT_KNOWN_YET})", default="", show_default=False)
    elif question.key == FRETS:
        ask = partial(click.prompt, question.ask)
    else:
        ask = partial(click.prompt, question.ask, default=usual_answer(question, so_far))
    return until_right(question.key, ask, lambda answer: repair_description(before | {question.key: answer}))


def _refuse_of_instruments(of_whole: object, given: Mapping[str, str | None]) -> None:
    """Raise UsageError for options that a shop has no use for."""
    others = [key for key, found in given.items() if found is not None and key not in (NAME, UNITS)]
    if of_whole or others:
        raise click.UsageError("--shop goes with --name, --units and --usual alone: the rest is an instrument's.")


def _from(other: Path, given: Mapping[str, str | None], usual: bool, plan: PlanGiven) -> str:
    """Another instrument with what is given put in and, unless all else stays, the answers that differ from what it
    has.
    """
    text = file_text(other)
    answers = {each.key: found for each in (*QUESTIONS, *FANNED) if (found := given[_option(each)]) is not None}
    for question in () if usual else ASKED:
        has = present(text, question.key)
        if question.key not in answers and has is not None and question.key != "instrument.units":
            answer = until_right(
                question.key,
                partial(click.prompt, question.ask, default=has),
                partial(_made_from, text, other, answers, question.key),
            )
            answers |= {question.key: answer} if answer.strip() != has else {}
    made = from_own(text, str(other), other.parent, answers)
    return _with_plan(made, plan.read(unit_of(made), usual))


def _made_from(text: str, other: Path, so_far: Mapping[str, str], key: str, answer: str) -> None:
    """Raises MakersFault if an answer is impossible in an instrument begun from another; any name stands in while that
    is still to be asked for.
    """
    from_own(text, str(other), other.parent, {NAMED: "-", **so_far, key: answer})


def _with_plan(text: str, read: Read) -> str:
    """The description with what a plan gives in it, and what was taken told."""
    for line in read.told:
        click.echo(f"{line}.")
    if read.parts.empty:
        return text
    from gramil.acts.from_plan import taken_into

    taken = taken_into(text, read.parts, read_shop(), read.front_at)
    for line in taken.told:
        click.echo(f"{line}.")
    return taken.text


def _whole(given: Mapping[str, str | None], usual: bool, start: str | None, plan: PlanGiven) -> str:
    """A whole guitar from the answers that are given and, unless all is usual, from a dozen more."""
    if plan.body and any(given[_option(each)] is not None for each in RULER):
        raise click.UsageError("Give the body by --offsets or --plan, or by a ruler's measures, not by both.")
    answers = {each.key: found for each in (*QUESTIONS, *FANNED, *RULER) if (found := given[_option(each)]) is not None}
    if start is None and not usual:
        for point in STARTING_POINTS.values():
            click.echo(f"  {point.name.ljust(10)}{point.says}")
        start = click.prompt("Begin from", default=STARTS.usual, type=click.Choice(list(STARTING_POINTS)))
    answers[START] = start or STARTS.usual
    fans = any(each.key in answers for each in FANNED)
    for question in () if usual else ASKED:
        known = question.key in answers or (plan.body and question in RULER)
        if not known and not (fans and question.key == "scale.length"):
            answers[question.key] = _asked_whole(question, answers)
    unit = length_unit(answers.get("instrument.units", "").strip())
    read = plan.read(unit, usual)
    outline = read.parts.outline
    text = whole_description(
        answers, () if outline is None else outline.points if outline.by_stations else outline.stations
    )
    if outline is not None and outline.by_stations and not outline.corners:
        read = replace(read, parts=replace(read.parts, outline=None))  # it stands in the text already
    return _with_plan(text, read)


def _asked_whole(question: Question, so_far: Mapping[str, str]) -> str:
    """The answer to a question about a whole guitar, asked for until it is a possible one."""
    usual = usual_of(question.key, so_far) or usual_answer(question, so_far)
    while True:
        answer: str = click.prompt(question.ask, default=usual)
        fault = wrong_alone(question.key, answer, so_far)
        if fault is None:
            return answer
        click.echo(str(fault), err=True)


def _board(given: Mapping[str, str | None], usual: bool) -> str:
    """Board and neck from the answers that are given and, unless all is usual, from those that are asked for."""
    answers = {each.key: found for each in FANNED if (found := given[_option(each)]) is not None}
    fans = bool(answers)
    for question in QUESTIONS:
        if question.key == "scale.length" and given[_option(question)] is None:
            answers |= _scale(question, given, answers, fans, usual)
        else:
            answers |= _answer(question, given, answers, usual)
    return new_description(answers)


def _scale(
    question: Question, given: Mapping[str, str | None], so_far: Mapping[str, str], fans: bool, usual: bool
) -> dict[str, str]:
    """One length or, for fanned frets, the two scales and the square fret."""
    if not fans:
        answer = "" if usual else _asked(question, f"{question.ask}, or {FANNED_TOO}", so_far)
        if answer.strip().lower() != FANNED_TOO:
            return {question.key: answer} if answer else {}
    return {key: answer for each in FANNED for key, answer in _answer(each, given, so_far, usual).items()}


def _asked(question: Question, words: str, so_far: Mapping[str, str]) -> str:
    """The answer to a question, asked for until it is a possible one."""
    ask = partial(click.prompt, words, default=usual_answer(question, so_far))
    return until_right(question.key, ask, partial(_made_with, question, so_far))


def _made_with(question: Question, so_far: Mapping[str, str], answer: str) -> None:
    """Raises MakersFault if an answer is impossible; two scales are judged together, once both are known."""
    if answer.strip().lower() != FANNED_TOO and question not in FANNED:
        new_description({key: text for key, text in so_far.items() if key in ALONE} | {question.key: answer})


def _answer(
    question: Question, given: Mapping[str, str | None], so_far: Mapping[str, str], usual: bool
) -> dict[str, str]:
    """The answer to a question, given or asked for; none if the usual one will do."""
    answer = given[_option(question)]
    if answer is None and not usual:
        return {question.key: _asked(question, question.ask, so_far)}
    return {} if answer is None else {question.key: str(answer)}


def _with_options() -> click.Command:
    function = _new
    for question in reversed((*QUESTIONS, *FANNED, *RULER)):
        function = click.option(_flag(question), _option(question), help=f"{question.ask}.")(function)
    return click.command("new")(function)


command = _with_options()
