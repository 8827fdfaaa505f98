"""Reading a text file that the maker names, with a plain message if that fails."""

from pathlib import Path

from gramil.faults import MakersFault
from gramil.plain_file import content_of

LARGEST = 20_000_000


def text_of(path: Path) -> str:
    """The text of a file; raises MakersFault if it does not exist, is not text, or is far too large."""
    try:
        return content_of(path, LARGEST).decode("utf-8-sig")
    except OSError as error:
        remedy = "Name a file that is there" if isinstance(error, FileNotFoundError) else ""
        raise MakersFault.of(f"{path.name} cannot be read", error.strerror or "", remedy) from None
    except UnicodeDecodeError:
        raise MakersFault.of(f"{path.name} is not text", "", "Save it as plain text or CSV, in UTF-8") from None
