"""`gramil follow`: whenever a description is saved it is derived and drawn again, and what moved is said."""

import time
from collections.abc import Callable, Iterator, Sequence
from pathlib import Path

import click

from gramil.change.shift import shift
from gramil.cli.options import shop_file
from gramil.cli.shift import PLAY, brief_report
from gramil.description.reading import read_description, read_shop
from gramil.faults import MakersFault
from gramil.graph import Figures
from gramil.prints.whole import drawings_of, figures_of
from gramil.shop.made_file import Made, made_beside, read_made

WAIT = 0.5
"""Seconds from one look at the files to the next."""
Stamp = tuple[int, int] | None


@click.command()
@click.argument("file", type=click.Path(path_type=Path))
@shop_file
@click.option("--draw", type=click.Path(path_type=Path), help="Folder for the drawings (SVG), drawn again each time.")
def command(file: Path, shop: Path | None, draw: Path | None) -> None:
    """Follow the description in FILE and its shop: whenever one is saved, say what moved. Ctrl-C ends it.

    What cannot be read is told, and the next save is awaited.

    \b
    gramil follow tarn.toml --shop shop.toml
    gramil follow tarn.toml --draw drawings
    """
    files = [file] if shop is None else [file, shop]
    record = made_beside(file)

    def read() -> tuple[Figures, Made | None]:
        made = read_made(record) if record.exists() else None
        return figures_of(read_description(file), read_shop(shop)), made

    for line in followed(read, saves(files, time.sleep), draw):
        click.echo(line)


def saves(files: Sequence[Path], wait: Callable[[float], None]) -> Iterator[None]:
    """Once at the beginning, then each time that one of the files is another than at the last look."""
    before = [_stamp(file) for file in files]
    yield
    while True:
        wait(WAIT)
        now = [_stamp(file) for file in files]
        if now != before and None not in now:  # an editor that puts a new file in the old one's place leaves a gap
            before = now
            yield


def _stamp(file: Path) -> Stamp:
    try:
        stat = file.stat()
    except OSError:
        return None
    return stat.st_mtime_ns, stat.st_size


def followed(
    read: Callable[[], tuple[Figures, Made | None]], saved: Iterator[None], draw: Path | None
) -> Iterator[str]:
    """What is to be said after each save: what moved since the last one that could be read, what that means for what is
    made, or what is wrong.
    """
    last: Figures | None = None
    for _ in saved:
        try:
            now, made = read()
        except MakersFault as fault:
            yield "\n\n".join(map(str, fault.faults))
            continue
        yield from _what_moved(last, now, made)
        if draw is not None:
            yield f"{_drawn(now, draw)} drawings in {draw}."
        last = now


def _what_moved(last: Figures | None, now: Figures, made: Made | None) -> Iterator[str]:
    if last is None:
        yield "Read. Every save is followed from here; Ctrl-C ends it."
        return
    found = shift(last, now, PLAY)
    yield ""
    yield from brief_report(found, last, now, made) if found.inputs else ["Nothing that was saved moves a figure."]


def _drawn(figures: Figures, folder: Path) -> int:
    """Write every drawing anew; gives how many. A viewer that has one open sees the next at once."""
    from gramil.formatter import formatter_of
    from gramil.writers.svg import svg_bytes

    folder.mkdir(parents=True, exist_ok=True)
    read, drawings = formatter_of(figures).text, drawings_of(figures)
    for drawing in drawings:
        (folder / f"{drawing.name}.svg").write_bytes(svg_bytes(drawing, read))
    return len(drawings)
