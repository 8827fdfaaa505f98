"""A set of files put into a folder: all of them whole or none, and nothing overwritten that Gramil did not write.

A small list in the folder remembers what was written by its SHA-256. A file that is not as listed
is somebody's own work, or ours changed by hand, and is left alone unless the maker says otherwise.
"""

import json
from collections.abc import Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass
from hashlib import sha256
from pathlib import Path, PurePosixPath

from gramil.faults import Fault, MakersFault
from gramil.writers.one_step import end_step, take_step
from gramil.written_file import alone_with

LIST = ".gramil-pack.json"


@dataclass(frozen=True)
class Written:
    """What happened in the folder, by relative names: written now, removed as no longer made, left because it was
    changed.
    """

    written: tuple[str, ...]
    removed: tuple[str, ...]
    left: tuple[str, ...]


def write_files(folder: Path, files: Mapping[str, bytes], overwrite: bool = False, beside: bool = False) -> Written:
    """Write the files (relative name with forward slashes to content) and their list into the folder, made if need be.

    Files of an earlier list that are no longer made are removed if they are as they were written, else left; with
    `beside` all of them are left, and stay on the list.
    `overwrite` also replaces what Gramil did not write. Raises MakersFault, naming each file, for a file that is not
    Gramil's and for a folder or disk that refuses; the folder is then as it was. Raises ValueError for a name that
    leads out of the folder.
    """
    for name in files:
        _check_name(name)
    made: list[Path] = []
    try:
        _make_folders([folder / LIST], made)
        with alone_with(folder / folder.name):
            return _into_folders(folder, files, overwrite, beside)
    except OSError as error:
        _remove(made)
        raise _unwritten(folder, error) from error
    except BaseException:
        _remove(made)
        raise


def _into_folders(folder: Path, files: Mapping[str, bytes], overwrite: bool, beside: bool) -> Written:
    """The same, alone with the folder: another program may have just taken an emptied folder away, or made one."""
    made: list[Path] = []
    try:
        _make_folders([folder / name for name in files], made)
        return _written(folder, files, overwrite, beside)
    except BaseException:
        _remove(made)
        raise


def _written(folder: Path, files: Mapping[str, bytes], overwrite: bool, beside: bool) -> Written:
    """The same, alone with the folder; what was begun there and cut short is ended first. Raises OSError too."""
    end_step(folder)
    listed = _listed(folder)
    if not overwrite:
        _refuse_strangers(folder, files, listed)
    stale = [] if beside else sorted(listed.keys() - files.keys())
    gone = tuple(name for name in stale if _digest_at(folder / name) == listed[name])
    take_step(folder, {**files, LIST: _list_of({**(listed if beside else {}), **_digests(files)})}, gone)
    _remove_emptied(folder, gone)
    left = tuple(name for name in stale if name not in gone and (folder / name).exists())
    return Written(tuple(sorted(files)), gone, left)


def _remove_emptied(folder: Path, gone: Sequence[str]) -> None:
    """Remove the folders in which a file that went was the last."""
    parents = {folder / parent for name in gone for parent in PurePosixPath(name).parents if parent.name}
    for each in sorted(parents, key=lambda each: -len(each.parts)):
        with suppress(OSError):  # something else is still in it
            each.rmdir()


def _unwritten(folder: Path, error: OSError) -> MakersFault:
    return MakersFault.of(
        f"the files could not be written into {folder}",
        f"{error.strerror or error}; what was there before is as it was",
        "check that the folder can be written to and that the disk has room",
    )


def _check_name(name: str) -> None:
    path = PurePosixPath(name)
    if path.is_absolute() or ".." in path.parts or not path.parts or name == LIST or set(name) & set("\\:"):
        raise ValueError(f"not a name inside the folder: {name!r}")


def _listed(folder: Path) -> dict[str, str]:
    """What the folder's list says: name to digest; empty if there is no list or it cannot be read."""
    try:
        listed = json.loads((folder / LIST).read_bytes())["files"]
        safe = {name: digest for name, digest in listed.items() if isinstance(digest, str)}
        for name in safe:
            _check_name(name)
    except (OSError, ValueError, KeyError, TypeError, AttributeError):
        return {}
    return safe


def _list_of(digests: Mapping[str, str]) -> bytes:
    """The list as it is kept: sorted, so that the same files give the same bytes."""
    return (json.dumps({"gramil": 1, "files": dict(sorted(digests.items()))}, indent=1) + "\n").encode("utf-8")


def _digests(files: Mapping[str, bytes]) -> dict[str, str]:
    return {name: sha256(content).hexdigest() for name, content in files.items()}


def _digest_at(path: Path) -> str | None:
    return sha256(path.read_bytes()).hexdigest() if path.is_file() else None


def _refuse_strangers(folder: Path, files: Mapping[str, bytes], listed: Mapping[str, str]) -> None:
    """Raises MakersFault, naming every file in the way that is neither as listed nor already what is to be written."""
    faults = []
    for name, content in files.items():
        path = folder / name
        ours = {listed.get(name, ""), sha256(content).hexdigest()}
        if (path.exists() or path.is_symlink()) and _digest_at(path) not in ours:
            faults.append(_stranger(path, name in listed))
    if faults:
        raise MakersFault(faults)


def _stranger(path: Path, was_ours: bool) -> Fault:
    what = "has been changed since Gramil wrote it" if was_ours else "is not a file that Gramil wrote"
    return Fault(
        what=f"{path} {what}",
        why="it would be lost",
        remedy="move it away, choose another folder, or say that it may be overwritten",
    )


def _make_folders(places: Sequence[Path], made: list[Path]) -> None:
    """Makes the missing folders of these places, and adds each to `made`, outermost first."""
    for place in places:
        missing = [parent for parent in place.parents if not parent.is_dir()]
        for parent in reversed(missing):
            try:
                parent.mkdir()
                made.append(parent)
            except FileExistsError:
                if not parent.is_dir():  # else another program has just made it
                    raise


def _remove(made: Sequence[Path]) -> None:
    """Remove folders that were made for nothing."""
    for new in reversed(made):
        with suppress(OSError):
            new.rmdir()
