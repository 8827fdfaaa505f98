"""What a page says in the title block of its drawing: its revision, and how large the paper is."""

from hashlib import sha256

from gramil.drawings.marks import Drawing
from gramil.measure import LengthUnit
from gramil.paper_sizes import INCH, SIZES, roll_width, sides
from gramil.writers.lettering import Lettering
from gramil.writers.plain import Plain

HEIGHT = 2.6
"""Of a capital, in mm."""


def with_revision(drawing: Drawing, marks: tuple[Plain, ...], paper: str, unit: LengthUnit) -> tuple[Plain, ...]:
    """The marks, with revision and paper at the drawing's own place for them; as they are where it has none.

    The revision changes whenever anything on the drawing does.
    """
    if drawing.told_at is None:
        return marks
    # six letters: two states of a drawing in 16 million are alike, and a maker can read it out
    revision = sha256(repr(marks).encode()).hexdigest()[:6]
    text = f"revision {revision}, paper {paper_in_words(paper, unit)}"
    return (*marks, Lettering(drawing.told_at, text, HEIGHT, 0.0, "left", "text"))


def paper_in_words(paper: str, unit: LengthUnit) -> str:
    """A paper as a maker reads it: by its name, or by its sides in the unit of the shop's rule."""
    if (wide := roll_width(paper)) is not None:
        return f"a roll {_said(wide, unit)} {unit} wide"
    if paper in SIZES:
        return paper.upper() if paper.startswith("a") else paper
    return f"{' x '.join(_said(side, unit) for side in sides(paper))} {unit}"


def _said(length: float, unit: LengthUnit) -> str:
    return f"{length:g}" if unit == "mm" else f"{length / INCH:.1f}"
