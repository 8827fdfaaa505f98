"""A picture's light out of a file: bounded, turned upright as its camera noted, in grey.

Pillow reads it, which comes with the extra `picture`; nothing else of the program loads it.
"""

from dataclasses import dataclass
from io import BytesIO
from typing import Any

import numpy as np
from numpy.typing import NDArray

from gramil.faults import MakersFault
from gramil.photographs.finding_tags import Grey
from gramil.photographs.pdf_page import is_pdf, rendered_page

LARGEST_FILE = 100_000_000
MOST_PIXELS = 130_000_000
"""A picture of more pixels is refused unread; one of more than `KEPT` is halved as it is read."""
KEPT = 40_000_000
SMALLEST_SIDE = 300
BYTES = {"1": 1, "L": 1, "P": 1, "I;16": 2, "I;16B": 2}
"""Bytes that a pixel takes in memory while it is read; in colour four."""
MOST_BYTES = 400_000_000
STRIP = 64
"""How many rows, as kept, are made grey at once: memory would not hold the whole picture twice."""
TURNED = 0x0112
"""Where a camera notes how it was held (Exif: orientation)."""
READ = ("JPEG", "PNG", "TIFF", "WEBP", "BMP")
"""Kinds of files that are read."""


@dataclass(frozen=True)
class PictureRead:
    """A picture: its light, and how many pixels of the file one of its pixels is (1, 2, 4 ...)."""

    grey: Grey
    shrunk: int = 1

    @property
    def size(self) -> tuple[int, int]:
        """Width and height in pixels as held."""
        return self.grey.shape[1], self.grey.shape[0]


def held(x: float, y: float, shrunk: int) -> tuple[float, float]:
    """Where a place of the file, in its pixels, lies among those that are held."""
    return (x + 0.5) / shrunk - 0.5, (y + 0.5) / shrunk - 0.5


def read_picture(content: bytes, name: str = "the picture", page: int | None = None) -> PictureRead:
    """A picture from a file's content, or a page of a PDF, counted from 1.

    Raises MakersFault, naming it, if it is not a picture, or too large a one.
    """
    if len(content) > LARGEST_FILE:
        raise MakersFault.of(f"{name} has over {LARGEST_FILE // 1_000_000} MB", remedy="Save it smaller, as a JPEG")
    if is_pdf(content):
        return PictureRead(rendered_page(content, name, page))
    light, shrunk = _light_of(content, name)
    return PictureRead(light.astype(np.float32), shrunk)  # only now: the whole picture is let go by here


def _light_of(content: bytes, name: str) -> tuple[NDArray[np.uint8], int]:
    """A picture's light, upright, and how many pixels of the file one of its pixels is."""
    try:
        from PIL import Image, UnidentifiedImageError
    except ImportError:
        raise MakersFault.of(
            "pictures are read by the library Pillow, which is not installed", remedy='Install Gramil with "[picture]"'
        ) from None
    Image.MAX_IMAGE_PIXELS = None  # what is too large is refused below, in the maker's words
    try:
        with Image.open(BytesIO(content), formats=READ) as picture:
            width, height = picture.size
            if width * height > MOST_PIXELS:
                raise MakersFault.of(
                    f"{name} has {width * height / 1e6:.0f} megapixels",
                    f"more than {MOST_PIXELS // 1_000_000} are not held",
                    "Save it at half its size",
                )
            if min(width, height) < SMALLEST_SIDE:
                raise MakersFault.of(
                    f"{name} is only {width} by {height} pixels", remedy="Send it as it was taken, not a small copy"
                )
            shrunk = 1
            while width * height / shrunk**2 > KEPT:
                shrunk *= 2
            if shrunk > 1:
                picture.draft("L", (width // shrunk, height // shrunk))
            bytes_held = picture.width * picture.height * BYTES.get(picture.mode, 4)
            if bytes_held > MOST_BYTES:
                raise MakersFault.of(
                    f"{name} would take {bytes_held / 1e6:.0f} MB", remedy="Save it in grey, or at half its size"
                )
            by = max(round(picture.width * shrunk / width), 1)
            turn, grey = picture.getexif().get(TURNED, 1), _reduced(picture, by)
        return _upright(grey, turn), shrunk
    except UnidentifiedImageError:
        raise MakersFault.of(
            f"{name} is not a kind of picture that can be read", remedy="Save it as JPEG, PNG or TIFF"
        ) from None
    except MemoryError:
        raise MakersFault.of(f"{name} needs more memory than there is", remedy="Save it at half its size") from None
    except (
        OSError,
        ValueError,
        SyntaxError,
        EOFError,
        OverflowError,
        ZeroDivisionError,
        TypeError,
        KeyError,
        IndexError,
    ):
        raise MakersFault.of(f"{name} is cut short or damaged", remedy="Send it again") from None


def _reduced(picture: Any, by: int) -> NDArray[np.uint8]:
    """A picture in grey, each of its pixels the mean of `by` times `by`."""
    width, height = picture.size
    grey = np.empty((-(-height // by), -(-width // by)), dtype=np.uint8)
    for top in range(0, len(grey), STRIP):
        strip = picture.crop((0, by * top, width, min(by * (top + STRIP), height))).convert("L")
        grey[top : top + STRIP] = np.asarray(strip.reduce(by) if by > 1 else strip)
    return grey


def _upright(grey: NDArray[np.uint8], turn: int) -> NDArray[np.uint8]:
    """The picture as the camera's note says it is to be looked at (Exif's eight ways, 1 is as it stands)."""
    if turn in (5, 6, 7, 8):
        grey = grey.T
    if turn in (2, 3, 6, 7):
        grey = grey[:, ::-1]
    return grey[::-1] if turn in (3, 4, 7, 8) else grey
