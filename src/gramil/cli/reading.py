"""A text file that the maker names, read and put back, with a plain message where either cannot be done."""

import os
import shutil
from pathlib import Path

from gramil.faults import Fault, MakersFault
from gramil.plain_file import content_of

LARGEST = 20_000_000


def text_of(path: Path) -> str:
    """The text of a file; raises MakersFault where there is none, it is no text, or it is far too large."""
    try:
        return content_of(path, LARGEST).decode("utf-8-sig")
    except OSError as error:
        remedy = "Name a file that is there" if isinstance(error, FileNotFoundError) else ""
        raise MakersFault.of(f"{path.name} cannot be read", error.strerror or "", remedy) from None
    except UnicodeDecodeError:
        raise MakersFault.of(f"{path.name} is not text", "", "Save it as plain text or CSV, in UTF-8") from None


def put_text(path: Path, text: str) -> None:
    """The text in the place of a file's own, whole or not at all; raises MakersFault where it cannot be written."""
    place = path.resolve()
    staged = place.with_name(f".{path.name}.new")
    try:
        if place.exists():
            place.open("a").close()  # a file that is kept from being written stays as it is
        staged.write_text(text, encoding="utf-8", newline="")
        if place.exists():
            shutil.copymode(place, staged)
        os.replace(staged, place)
    except OSError as error:
        staged.unlink(missing_ok=True)
        raise MakersFault([Fault(what="cannot be written", why=error.strerror or "", file=path.name)]) from None
