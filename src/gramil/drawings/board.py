"""The board to be cut, in plan, at true scale: everything measured from the zero line at x = 0."""

from gramil.drawings.kerf import FINISHED
from gramil.drawings.marks import Drawing, Marks
from gramil.drawings.pen import handed

OWNS = ("drawing_", "piece_")


def piece_board(piece_outline: Marks, piece_slots: Marks, piece_zero_line: Marks, piece_strings: Marks) -> Marks:
    """The lines of the board itself."""
    return (*piece_outline, *piece_slots, *piece_zero_line, *piece_strings)


def piece_furniture(piece_markers: Marks, piece_side_dots: Marks, piece_pins: Marks) -> Marks:
    """Everything that is drilled: markers, side dots and the locating pins' holes, with the centreline through them."""
    return (*piece_markers, *piece_side_dots, *piece_pins)


def piece_words(
    piece_head_words: Marks,
    piece_fret_numbers: Marks,
    piece_side_words: Marks,
    piece_sizes: Marks,
    piece_tail_size: Marks,
) -> Marks:
    """What is written on the plan."""
    return (*piece_head_words, *piece_fret_numbers, *piece_side_words, *piece_sizes, *piece_tail_size)


def drawing_board(
    instrument_name: str, instrument_handed: str, piece_board: Marks, piece_furniture: Marks, piece_words: Marks
) -> Drawing:
    """The fretboard from the face, head to the left, treble up; turned over once for a left-handed instrument.

    Used at: board_laid_out, nut_end_cut, tail_end_cut, tapered.
    """
    marks = (*piece_board, *piece_furniture, *piece_words)
    drawing = Drawing("board", f"{instrument_name}, fretboard", "the face", marks, kerf=FINISHED)
    return handed(drawing, instrument_handed)
