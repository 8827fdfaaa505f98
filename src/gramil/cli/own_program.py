"""A program of the maker's own choice, as the environment names it: a pager, a viewer."""

import shlex


def words_of(system: str, written: str) -> tuple[str, ...]:
    """The program and what is given to it. On Windows a path has backslashes; a quote that nothing ends is no quote."""
    try:
        words = shlex.split(written, posix=system != "win32")
    except ValueError:
        words = written.replace('"', " ").replace("'", " ").split()
    return tuple(word.strip('"') for word in words)
