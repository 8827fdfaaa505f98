"""The text of a drawing that lies beside a description."""

from pathlib import Path

from gramil.description.problems import quoted
from gramil.faults import MakersFault
from gramil.plain_file import content_of

LARGEST_DRAWING = 20_000_000
"""A drawing of more bytes than this is something else."""


def drawing_beside(file: str, folder: Path | None) -> str:
    """What the drawing `file` in `folder` holds.

    Raises MakersFault if its name leads elsewhere, or there is no such file.
    """
    name = Path(file)
    if folder is None or name.name != file or "\0" in file:
        raise MakersFault.of(f"read {quoted(file)}", "it is the bare name of a drawing beside the description")
    try:
        return content_of(folder / name, LARGEST_DRAWING).decode("utf-8", errors="replace")
    except FileNotFoundError:
        raise MakersFault.of(f"read {quoted(file)}", "there is no such file beside the description") from None
    except OSError as error:
        raise MakersFault.of(f"{quoted(file)} cannot be read", error.strerror or "") from None
