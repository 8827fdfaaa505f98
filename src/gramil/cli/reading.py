"""Reading a text file that the maker names, with a plain message where it cannot be read."""

from pathlib import Path

from gramil.faults import MakersFault

LARGEST = 20_000_000


def text_of(path: Path) -> str:
    """The text of a file; raises MakersFault where there is none, it is no text, or it is far too large."""
    try:
        with path.open("rb") as stream:
            content = stream.read(LARGEST + 1)
        if len(content) > LARGEST:
            raise MakersFault.of(
                f"{path.name} is larger than 20 MB", "that is no list of readings", "Name another file"
            )
        return content.decode("utf-8-sig")
    except OSError as error:
        raise MakersFault.of(f"{path.name} cannot be read", error.strerror or "", "Name a file that is there") from None
    except UnicodeDecodeError:
        raise MakersFault.of(f"{path.name} is not text", "", "Save the readings as CSV, in UTF-8") from None
