"""A page of a PDF as a picture in grey: as fine as is of use, and no larger than is held in memory.

pypdfium2 renders it, which comes with the extra `picture`; nothing else of the program loads it.
"""

from typing import Any

import numpy as np

from gramil.faults import MakersFault
from gramil.photographs.finding_tags import Grey

FINEST = 300.0
"""Dots to the inch: a pencil's line is three of them wide."""
MOST = 40_000_000
"""The most pixels, an A2 sheet at the finest: a larger page is drawn more coarsely."""
COARSEST = 60.0
"""Dots to the inch below which a line is lost."""
PER_INCH = 72.0
LARGEST_SIDE = 14_400.0
"""In points: 200 inches, what a PDF's page measures at the most."""


def is_pdf(content: bytes) -> bool:
    """Whether a file's content begins as a PDF's does."""
    return b"%PDF-" in content[:1024]


def rendered_page(content: bytes, name: str, number: int | None) -> Grey:
    """A page, counted from 1, in grey; None means the only one.

    Raises MakersFault, naming the file, if it is not a PDF.
    """
    try:
        import pypdfium2 as pdfium
    except ImportError:
        raise MakersFault.of(
            "PDF pages are read by the library pypdfium2, which is not installed",
            remedy='Install Gramil with "[picture]"',
        ) from None
    try:
        document = pdfium.PdfDocument(content)
    except pdfium.PdfiumError as error:
        raise _unread(name, str(error)) from None
    try:
        page = document[_chosen(len(document), number, name)]
        return _grey(page, name)
    except (pdfium.PdfiumError, MemoryError, OSError):
        raise MakersFault.of(
            f"that page of {name} cannot be drawn", remedy="Print it to a new PDF, and send that"
        ) from None
    finally:
        document.close()


def _unread(name: str, said: str) -> MakersFault:
    if "password" in said.lower():
        return MakersFault.of(
            f"{name} is locked with a password", remedy="Open it, and save it again without one; or print it to a PDF"
        )
    return MakersFault.of(f"{name} is cut short or damaged", remedy="Send it again")


def _chosen(pages: int, number: int | None, name: str) -> int:
    """The row of the page that is meant."""
    if number is None and pages > 1:
        raise MakersFault.of(f"{name} has {pages} pages", remedy="Say which of them holds the plan")
    if not 1 <= (number or 1) <= pages:
        several = "one page" if pages == 1 else f"{pages} pages"
        raise MakersFault.of(f"{name} has {several}, and no page {number}", remedy=f"Give 1 to {pages}")
    return (number or 1) - 1


def _grey(page: Any, name: str) -> Grey:
    """The page's light, finer the smaller it is."""
    width, height = page.get_size()
    if not 0 < max(width, height) <= LARGEST_SIDE or min(width, height) <= 0:
        raise MakersFault.of(f"that page of {name} has no size that can be meant", remedy="Print it to a new PDF")
    fine = min(FINEST, PER_INCH * float(np.sqrt(MOST / (width * height))))
    if fine < COARSEST:
        raise MakersFault.of(
            f"that page of {name} is {width / PER_INCH:.0f} by {height / PER_INCH:.0f} inches",
            "so large a page would be drawn too coarsely",
            "Print the part with the body on a page of its own",
        )
    bitmap = page.render(scale=fine / PER_INCH, grayscale=True)
    light = np.asarray(bitmap.to_numpy(), dtype=np.float32)
    return light.reshape(light.shape[0], light.shape[1])
