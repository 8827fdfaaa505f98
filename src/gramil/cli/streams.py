"""What the commands write, on every system: UTF-8 into a pipe, and on a console whatever its letters allow."""

import errno
import io
import sys


def settle_streams() -> None:
    """Output that goes to a file or another program is UTF-8 with plain line ends, the same bytes everywhere.

    A console with fewer letters (cp437, cp850, cp1252) shows a question mark for a letter it does not have.
    """
    for stream in (sys.stdout, sys.stderr):
        if not isinstance(stream, io.TextIOWrapper):
            continue  # another program runs ours inside itself, with streams of its own
        if not stream.isatty():
            stream.reconfigure(encoding="utf-8", errors="backslashreplace", newline="\n")
        elif not stream.encoding.lower().replace("-", "").startswith("utf"):
            stream.reconfigure(errors="replace")


def nobody_reads_on(error: BaseException | None) -> bool:
    """Whether the reader of our output has gone, as `| head` does; some systems report that as an invalid argument."""
    if isinstance(error, BrokenPipeError):
        return True
    return isinstance(error, OSError) and error.errno == errno.EINVAL and error.filename is None
