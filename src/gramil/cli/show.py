"""`gramil show`: a drawing, a pack's folder or any file of it, opened in the viewer that the system has."""

import tempfile
from pathlib import Path

import click

from gramil.cli.options import opened, shop_file
from gramil.cli.viewer import look_at
from gramil.description.problems import did_you_mean, nearest
from gramil.faults import MakersFault

FIRST = "board"
"""The drawing that is shown of an instrument if none is named."""


@click.command()
@click.argument("file", type=click.Path(path_type=Path))
@click.argument("drawing", required=False)
@shop_file
def command(file: Path, drawing: str | None, shop: Path | None) -> None:
    """Open a DRAWING of the instrument in FILE; or, if FILE is a folder or not a description, open that as it is.

    \b
    gramil show tarn.toml
    gramil show tarn.toml mould
    gramil show out
    """
    if file.suffix.lower() == ".toml" and file.is_file():
        shown = _drawn(file, drawing or FIRST, shop)
    elif drawing is not None or not file.exists():
        raise MakersFault.of(f"{file} is not a description", remedy="name a description, a folder or a file to look at")
    else:
        shown = file
    click.echo(str(shown))
    look_at(shown)


def _drawn(file: Path, name: str, shop: Path | None) -> Path:
    """The drawing as an SVG in a folder of its own. Raises MakersFault if there is none of that name."""
    from gramil.prints.whole import drawings_of
    from gramil.writers.svg import svg_bytes

    figures, formatter = opened(file, shop)
    drawings = {each.name: each for each in drawings_of(figures)}
    if name not in drawings:
        near = did_you_mean(nearest(name, drawings)) or f"its drawings are {', '.join(sorted(drawings))}"
        raise MakersFault.of(f"there is no drawing {name}", remedy=near)
    path = Path(tempfile.mkdtemp(prefix="gramil-")) / f"{name}.svg"
    path.write_bytes(svg_bytes(drawings[name], formatter.text))
    return path
