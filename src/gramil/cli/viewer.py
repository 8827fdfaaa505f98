"""Which program of the system opens a file for the maker to look at."""

import os
import shutil
import subprocess
import sys
from collections.abc import Callable, Mapping, Sequence
from pathlib import Path

from gramil.cli.own_program import words_of
from gramil.faults import MakersFault

VIEWER = "GRAMIL_VIEWER"
"""The environment's name for a viewer of the maker's own choice."""
OPENERS = {"darwin": ("open",), "linux": ("xdg-open", "gio open", "wslview")}


def viewer_of(system: str, around: Mapping[str, str], found: Callable[[str], str | None]) -> Sequence[str] | None:
    """The command that opens a file: the maker's own, else the system's; None on Windows, which opens files itself.

    `found` says where a program is. Raises MakersFault if there is none.
    """
    if own := around.get(VIEWER, "").strip():
        return words_of(system, own)
    if system == "win32":
        return None
    for opener in OPENERS.get(system, OPENERS["linux"]):
        words = opener.split()
        if found(words[0]):
            return words
    remedy = f"open it yourself, or set {VIEWER} to a program that does"
    raise MakersFault.of("this system has no program that opens files", remedy=remedy)


def look_at(path: Path) -> None:
    """Open a file or folder. Raises MakersFault, which names the path, if nothing here can."""
    try:
        viewer = viewer_of(sys.platform, os.environ, shutil.which)
    except MakersFault as fault:
        raise MakersFault.of(f"{path}: {fault.faults[0].what}", remedy=fault.faults[0].remedy) from None
    if viewer is None:
        os.startfile(path)  # type: ignore[attr-defined, unused-ignore]  # Windows alone has it
        return
    try:
        subprocess.Popen([*viewer, str(path)], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    except OSError as error:
        raise MakersFault.of(f"{viewer[0]} cannot be started", str(error.strerror), f"open {path} yourself") from None
