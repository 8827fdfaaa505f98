"""Real photographs, of a chessboard: some of its corners say where the camera stood, the others are held against it.

The 26 pictures of Debian's package `opencv-doc` (OpenCV's camera calibration example, squares of 25 mm), fetched where
the package can be had. Their corners are found by the vision library, so that the solved camera alone is judged.
"""

import re
import shutil
import subprocess
import tarfile
from pathlib import Path

import cv2
import numpy as np
import pytest
from numpy.typing import NDArray

from gramil.photographs.finding_tags import FoundTag
from gramil.photographs.picture_file import read_picture
from gramil.photographs.solving import Picture, solved
from gramil.photographs.tags import Piece

Array = NDArray[np.float64]
ACROSS, UP = 9, 6
PITCH = 25.0
PICTURES = 26
PHOTOGRAPH = re.compile(r"/data/(left|right)\d\d\.jpg$")
WINDOW = 0.38
"""Half of a corner's window as a share of the corners' spacing: a larger one reaches the next corner."""
BOARD = np.array([(PITCH * column, -PITCH * row) for row in range(UP) for column in range(ACROSS)])
RING = [
    row * ACROSS + column
    for column, row in (
        *((0, 0), (3, 0), (5, 0), (8, 0)),
        *((8, 2), (8, 3), (8, 5), (5, 5)),
        *((3, 5), (0, 5), (0, 3), (0, 2)),
    )
]
"""Twelve corners round the rim, as three tags of four; the other 42 are the truth."""


def pictures(folder: Path) -> list[Path]:
    """The photographs, fetched into a folder; none where Debian's packages cannot be had."""
    if shutil.which("apt-get") is None or shutil.which("dpkg-deb") is None:
        return []
    got = subprocess.run(["apt-get", "download", "opencv-doc"], cwd=folder, capture_output=True, timeout=300)
    packages = sorted(folder.glob("opencv-doc*.deb"))
    return _unpacked(packages[0], folder) if packages and not got.returncode else []


def _unpacked(package: Path, folder: Path) -> list[Path]:
    """The package's photographs; the rest of it, 270 MB of pages, is not even read."""
    found: list[Path] = []
    with subprocess.Popen(["dpkg-deb", "--fsys-tarfile", package], stdout=subprocess.PIPE) as unpacking:
        with tarfile.open(fileobj=unpacking.stdout, mode="r|") as archive:
            for member in archive:
                held = archive.extractfile(member) if PHOTOGRAPH.search(member.name) else None
                if held is not None:
                    path = folder / Path(member.name).name
                    path.write_bytes(held.read())
                    found.append(path)
                if len(found) == PICTURES:
                    break
        unpacking.kill()
    return sorted(found)


def corners(path: Path) -> tuple[tuple[int, int], Array]:
    """The picture's size, and the corners (54, 2) in pixels, row by row."""
    picture = read_picture(path.read_bytes(), path.name)
    grey = np.clip(np.round(picture.grey), 0, 255).astype(np.uint8)
    found, rough = cv2.findChessboardCorners(grey, (ACROSS, UP))
    assert found, path.name
    grid = rough.reshape(UP, ACROSS, 2)
    spacing = min(float(np.hypot(*np.moveaxis(np.diff(grid, axis=axis), 2, 0)).min()) for axis in (0, 1))
    half = max(2, int(WINDOW * spacing) - 1)
    stop = (cv2.TERM_CRITERIA_EPS | cv2.TERM_CRITERIA_MAX_ITER, 100, 1e-4)
    fine = cv2.cornerSubPix(grey, rough.astype(np.float32), (half, half), (-1, -1), stop)
    return picture.size, fine.reshape(-1, 2).astype(float)


def off_in_mm(path: Path) -> float:
    """What the corners that were not used are off, root mean square."""
    size, seen = corners(path)
    along, down = seen[ACROSS - 1] - seen[0], seen[-ACROSS] - seen[0]
    board = BOARD if along[0] * down[1] > along[1] * down[0] else BOARD * (1, -1)
    tags = {number: RING[4 * number : 4 * number + 4] for number in range(3)}
    found = tuple(FoundTag(number, seen[rows], False, PITCH, 1.0) for number, rows in tags.items())
    answer = solved([Piece({number: board[rows] for number, rows in tags.items()})], [Picture(size, found)])
    rest = np.setdiff1d(np.arange(len(board)), RING)
    off = answer.camera().on_plane(seen[rest]) - board[rest]
    return float(np.sqrt((off**2).sum(axis=1).mean()))


def test_the_corners_that_were_not_used_lie_where_the_camera_says(tmp_path: Path) -> None:
    found = pictures(tmp_path)
    if not found:
        pytest.skip("Debian's package opencv-doc cannot be had here")
    assert len(found) == PICTURES
    off = {path.name: off_in_mm(path) for path in found}
    assert max(off.values()) < 0.25, off
    assert np.median(list(off.values())) < 0.16, off
