"""Keeps a reference of every drawing of the bundled instruments: `make keep`, after looking at what changed."""

from collections.abc import Iterator
from importlib.resources import as_file, files
from pathlib import Path

from gramil.formatter import Formatter
from gramil.prints.whole import drawings_of, figures_of_files
from gramil.writers.beside import labels_on
from gramil.writers.svg import svg_text

KEPT = Path(__file__).parent / "kept"
INSTRUMENTS = ("tarn", "fell", "scree", "mere")


def drawn() -> Iterator[tuple[str, str]]:
    """The file name and SVG text of every drawing of every bundled instrument."""
    with as_file(files("gramil") / "data" / "examples") as examples:
        for name in INSTRUMENTS:
            figures = figures_of_files(examples / f"{name}.toml", examples / "shop.toml")
            drawings = drawings_of(figures)
            labels = labels_on(drawings, Formatter(figures, figures["instrument_units"]))
            for drawing in drawings:
                yield f"{name}-{drawing.name}.svg", svg_text(drawing, labels)


if __name__ == "__main__":
    KEPT.mkdir(exist_ok=True)
    wanted = dict(drawn())
    for stale in KEPT.glob("*.svg"):
        if stale.name not in wanted:
            stale.unlink()
    for file, text in wanted.items():
        (KEPT / file).write_text(text, encoding="utf-8")
