"""`gramil new`: asks the few questions that matter, or takes them as options, and writes a commented description."""

from pathlib import Path

import click

from gramil.description.writing import QUESTIONS, Question, new_description


def _option(question: Question) -> str:
    return question.key.replace(".", "_")


def _flag(question: Question) -> str:
    table, key = question.key.split(".")
    return f"--{key}" if table in ("instrument", "scale", "board", "strings") and key != "width" else f"--{table}-{key}"


@click.argument("file", type=click.Path(path_type=Path))
@click.option("--usual", is_flag=True, help="Ask nothing: take the usual answer to what is not given as an option.")
def _new(file: Path, usual: bool, **given: str | None) -> None:
    """Write a new description to FILE, a comment beside each key.

    \b
    gramil new tarn.toml
    gramil new tarn.toml --name Tarn --length "630 mm" --frets 19 --usual
    """
    if file.exists():
        raise click.BadParameter(f"{file} is there already; name a new file", param_hint="FILE")
    answers = {}
    for question in QUESTIONS:
        answer = given[_option(question)]
        if answer is None and not usual:
            answer = click.prompt(question.ask, default=question.usual)
        if answer is not None:
            answers[question.key] = answer
    file.write_text(new_description(answers), encoding="utf-8")
    click.echo(f"{file} is written. Next: gramil check {file} --shop SHOP")


def _with_options() -> click.Command:
    function = _new
    for question in reversed(QUESTIONS):
        function = click.option(_flag(question), _option(question), help=f"{question.ask}.")(function)
    return click.command("new")(function)


command = _with_options()
