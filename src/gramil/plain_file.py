"""A file that the maker names, read whole, but never a pipe, which would wait for ever, nor more than makes sense."""

import errno
import os
import stat
from pathlib import Path
from typing import BinaryIO


def content_of(path: Path, largest: int) -> bytes:
    """The bytes of a file of at most `largest`. Raises OSError, with the reason in `strerror`, and ValueError for a
    name that cannot be one.
    """
    with opened(path, largest) as stream:
        content = stream.read(largest + 1)
    _refuse_larger(len(content), largest)
    return content


def opened(path: Path, largest: int) -> BinaryIO:
    """A file of at most `largest` bytes, open to be read piece by piece. Raises what `content_of` raises."""
    refuse_unless_plain(path)
    stream = path.open("rb")
    try:
        _refuse_larger(os.fstat(stream.fileno()).st_size, largest)
    except OSError:
        stream.close()
        raise
    return stream


def refuse_unless_plain(path: Path) -> None:
    """Raises OSError for anything but a plain file: opening a named pipe would block."""
    kind = path.stat().st_mode
    if stat.S_ISDIR(kind):
        raise IsADirectoryError(errno.EISDIR, "it is a folder")
    if not stat.S_ISREG(kind):
        raise OSError(errno.EINVAL, "it is a pipe or a device, not a file: save what it gives as a file, and name that")


def _refuse_larger(size: int, largest: int) -> None:
    if size > largest:
        raise OSError(errno.EFBIG, f"it is larger than {largest / 1e6:g} MB")
