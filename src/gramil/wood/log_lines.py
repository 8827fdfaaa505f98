"""A logger's file line by line, so that no more of it is held in memory than needed, in whatever encoding it was
written.
"""

import codecs
import io
from collections.abc import Iterator
from typing import BinaryIO

from gramil.faults import Fault, MakersFault

LONGEST_LINE = 50_000
"""In letters: a longer line is not a logger's."""
_BLOCK = 1 << 20


def lines_of(log: BinaryIO, file: str | None) -> Iterator[str]:
    """The lines of a file without line ends; loggers write UTF-8, UTF-16 with a byte order mark, or a Windows code
    page.

    Raises MakersFault for a line that no logger writes.
    """
    stream = io.TextIOWrapper(log, encoding=_letters(log), errors="replace")
    number = 0
    while line := stream.readline(LONGEST_LINE + 1):
        number += 1
        if len(line) > LONGEST_LINE:
            what = f"a line of more than {LONGEST_LINE} letters"
            raise MakersFault([Fault(number, "", what, "no logger writes lines like that", "see what is in it", file)])
        yield line.rstrip("\n")


def _letters(log: BinaryIO) -> str:
    try:
        if log.read(2) in (codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE):
            return "utf-16"
        log.seek(0)
        decoder = codecs.getincrementaldecoder("utf-8")()
        while block := log.read(_BLOCK):
            decoder.decode(block)
        decoder.decode(b"", True)
    except UnicodeDecodeError:
        return "cp1252"
    finally:
        log.seek(0)
    return "utf-8-sig"
