"""Writes the faces that the bench sends to a browser: the letters of Western languages and of our own pages, no more.

Run as `make fonts`. A letter outside these is read from the whole face, which a browser loads when it meets one.
"""

import io
from pathlib import Path

from fontTools import subset

SOURCE = Path(__file__).parent.parent / "src" / "gramil"
FACES = ("B612-Regular", "B612-Bold", "B612Mono-Regular", "B612Mono-Bold")
LETTERS = (
    "U+20-7E, U+A0-FF, U+2010-2026, U+2030, U+2032-2033, U+2044, U+20AC, U+2153-2154, U+215B-215E, U+2190-2193, "
    "U+2212, U+221A, U+2248, U+2264-2265, U+25B8, U+2713"
)
"""As the style sheet's `unicode-range` has them."""


def main() -> None:
    for face in FACES:
        (SOURCE / "bench" / "static" / f"{face}.woff").write_bytes(_small(SOURCE / "fonts" / f"{face}.ttf"))


def _small(whole: Path) -> bytes:
    """A face's letters alone, compressed as browsers read it."""
    options = subset.Options()
    options.flavor, options.layout_features = "woff", ["kern", "tnum"]
    font = subset.load_font(str(whole), options)
    chosen = subset.Subsetter(options)
    chosen.populate(unicodes=subset.parse_unicodes(LETTERS))
    chosen.subset(font)
    made = io.BytesIO()
    font.flavor = "woff"
    font.save(made, reorderTables=False)
    return made.getvalue()


if __name__ == "__main__":
    main()
