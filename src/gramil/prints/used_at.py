"""At which operations each drawing is used, as the function that draws it says: its docstring's `Used at:` line."""

from gramil.drawings.marks import Drawing
from gramil.graph import Figures
from gramil.reason import Doc, read_doc
from gramil.shop.operations import Operation, Work


def used_at(drawing: Drawing, figures: Figures, work: Work) -> tuple[Operation, ...]:
    """The operations of an instrument's work at which a drawing is taken up, in the order of the work."""
    wanted = told_of(drawing, figures).used_at
    return tuple(each for name, each in work.operations.items() if name in wanted)


def told_of(drawing: Drawing, figures: Figures) -> Doc:
    """What the function that draws it says of a drawing."""
    return read_doc(figures.graph.dimensions[f"drawing_{drawing.name.replace('-', '_')}"].what)
