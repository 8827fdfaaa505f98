"""A picture's light out of a file: bounded, turned upright as its camera noted, in grey.

Pillow reads it, which comes with the extra `picture`; nothing else of the program loads it.
"""

from dataclasses import dataclass
from io import BytesIO

import numpy as np

from gramil.faults import MakersFault
from gramil.photographs.finding_tags import Grey

LARGEST_FILE = 100_000_000
MOST_PIXELS = 130_000_000
"""A picture of more pixels is refused unread; one of more than `KEPT` is halved as it is read."""
KEPT = 30_000_000
SMALLEST_SIDE = 300
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


def read_picture(content: bytes, name: str = "the picture") -> PictureRead:
    """A picture from a file's content. Raises MakersFault, naming it, for what is no picture or too large a one."""
    try:
        from PIL import Image, ImageOps, UnidentifiedImageError
    except ImportError:
        raise MakersFault.of(
            "pictures are read by the library Pillow, which is not installed", remedy='Install Gramil with "[picture]"'
        ) from None
    if len(content) > LARGEST_FILE:
        raise MakersFault.of(f"{name} has over {LARGEST_FILE // 1_000_000} MB", remedy="Save it smaller, as a JPEG")
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
            upright = ImageOps.exif_transpose(picture)
            if shrunk > 1:
                upright = upright.convert("L").reduce(max(round(max(upright.size) * shrunk / max(width, height)), 1))
            return PictureRead(np.asarray(upright.convert("L"), dtype=np.float32), shrunk)
    except UnidentifiedImageError:
        raise MakersFault.of(
            f"{name} is no picture of a kind that is read", remedy="Save it as JPEG, PNG or TIFF"
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
