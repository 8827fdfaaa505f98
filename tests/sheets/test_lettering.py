"""A drawing lettered larger: its lines stay, its figures grow, its dimension lines move out."""

from gramil import names as n
from gramil.drawings.marks import Drawing, Label, Line, Span, Words
from gramil.sheets.lettering import lettered


def test_only_letters_and_dimension_lines_change() -> None:
    line, words = Line((0.0, 0.0), (5.0, 0.0), "outline"), Words((1.0, 2.0), "head", 2.0)
    label, span = Label((3.0, 4.0), n.nut_width, height=2.5), Span((0.0, 0.0), (9.0, 0.0), -6.0, n.nut_width, 3.0)
    found = lettered(Drawing("plan", "plan", "the face", (line, words, label, span)), 2.0)
    same, large, figure, size = found.marks
    assert same == line
    assert (large.at, large.height) == ((1.0, 2.0), 4.0)
    assert (figure.at, figure.height) == ((3.0, 4.0), 5.0)
    assert (size.start, size.end, size.offset, size.height) == ((0.0, 0.0), (9.0, 0.0), -12.0, 6.0)
