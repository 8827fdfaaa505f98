"""`gramil schema`: the JSON Schemas of the two descriptions and of every answer, laid where an editor finds them."""

from pathlib import Path

import click

from gramil.cli.json_option import json_option, write_answer
from gramil.faults import MakersFault


@click.command()
@click.option("--into", type=click.Path(path_type=Path), required=True, help="Folder to lay them into.")
@click.option("--answers", is_flag=True, help="Also the schemas of what the commands tell with --json.")
@json_option
def command(into: Path, answers: bool, as_json: bool) -> None:
    """Lay the JSON Schemas of the two descriptions beside them, so that an editor completes keys and checks them.

    \b
    gramil schema --into .
    gramil schema --into schemas --answers
    """
    from gramil.answers.schemas import schema_files

    if into.is_file():
        raise MakersFault.of(f"{into} is a file", remedy="name a folder")
    into.mkdir(parents=True, exist_ok=True)
    files = {str(into / name): text.encode("utf-8") for name, text in schema_files(answers).items()}
    for name, content in files.items():
        Path(name).write_bytes(content)
    if as_json:
        from gramil.answers.acts import FileAnswer, Packed

        write_answer("schema", (), Packed(tuple(FileAnswer(name, len(content)) for name, content in files.items()), ()))
        return
    for name in files:
        click.echo(name)
    click.echo("A description names its schema in its first line: #:schema ./instrument.schema.json")
