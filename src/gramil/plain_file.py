"""A file that the maker names, read whole: never a pipe that would wait for ever, nor more of it than makes sense."""

import errno
import stat
from pathlib import Path


def content_of(path: Path, largest: int) -> bytes:
    """The bytes of a file of at most `largest`. Raises OSError, with the reason in `strerror`, and ValueError for a
    name that cannot be one.
    """
    refuse_unless_plain(path)
    with path.open("rb") as stream:
        content = stream.read(largest + 1)
    if len(content) > largest:
        raise OSError(errno.EFBIG, f"it is larger than {largest / 1e6:g} MB")
    return content


def refuse_unless_plain(path: Path) -> None:
    """Raises OSError for what is no plain file: whoever opens a named pipe is kept waiting."""
    kind = path.stat().st_mode
    if stat.S_ISDIR(kind):
        raise IsADirectoryError(errno.EISDIR, "it is a folder")
    if not stat.S_ISREG(kind):
        raise OSError(errno.EINVAL, "it is a pipe or a device, not a file: save what it gives as a file, and name that")
