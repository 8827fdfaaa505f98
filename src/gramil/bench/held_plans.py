"""Pictures of a plan while they are traced: held in memory, the last few, never written down, and gone with the bench.

Nothing of what reads pictures is loaded before one is sent.
"""

import secrets
from collections import OrderedDict
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from datetime import datetime
from io import BytesIO
from threading import Lock
from typing import TYPE_CHECKING

from gramil.faults import MakersFault

if TYPE_CHECKING:
    from gramil.photographs.picture_file import PictureRead
    from gramil.photographs.plan import Grounds

KEPT = 2
"""How many plans are kept; beyond that, the one looked at longest ago is forgotten."""
MOST_PICTURES = 4
LONGEST_SHOWN = 2400
"""Pixels of the longer side of what a browser is shown."""


@dataclass
class HeldPlan:
    """One plan: its pictures' names, their light, each as a browser is shown it (JPEG), whether it is flat (a page of a
    PDF), and what was last solved.
    """

    key: str
    names: tuple[str, ...]
    pictures: "tuple[PictureRead, ...]"
    shown: tuple[bytes, ...]
    since: datetime
    flat: bool = False
    solved: "tuple[object, Grounds] | None" = None
    lock: Lock = field(default_factory=Lock)

    @property
    def name(self) -> str:
        """What it is called: by its first picture."""
        return self.names[0]

    def size(self, number: int) -> tuple[int, int]:
        """Width and height of a picture's file in pixels."""
        each = self.pictures[number]
        width, height = each.size
        return width * each.shrunk, height * each.shrunk

    def ground(self, asked: object, solve: "Callable[[], Grounds]") -> "Grounds":
        """The pictures with places, solved anew only if something else is asked. Raises what `solve` raises."""
        with self.lock:
            if self.solved is None or self.solved[0] != asked:
                self.solved = (asked, solve())
            return self.solved[1]


@dataclass
class HeldPlans:
    """The plans that are held, the last looked at last."""

    known: OrderedDict[str, HeldPlan] = field(default_factory=OrderedDict)
    lock: Lock = field(default_factory=Lock)
    turn: Lock = field(default_factory=Lock)

    def hold(self, sent: Sequence[tuple[str, bytes]], now: datetime, page: int | None = None) -> HeldPlan:
        """Holds pictures of one plan, each its name and content, of a PDF that page. Raises MakersFault."""
        if not sent:
            raise MakersFault.of("no picture was chosen", remedy="choose one, or take one with the phone")
        if len(sent) > MOST_PICTURES:
            raise MakersFault.of(f"{len(sent)} pictures at once", remedy=f"send {MOST_PICTURES} at most")
        with self.turn:
            plan = _held(sent, now, page)
        with self.lock:
            self.known[plan.key] = plan
            while len(self.known) > KEPT:
                self.known.popitem(last=False)
        return plan

    def found(self, key: str) -> HeldPlan | None:
        """The plan of that key, if it is still held."""
        with self.lock:
            if key in self.known:
                self.known.move_to_end(key)
            return self.known.get(key)

    def forget(self, key: str) -> None:
        """Lets a plan go."""
        with self.lock:
            self.known.pop(key, None)

    def all(self) -> tuple[HeldPlan, ...]:
        """Every plan, the last looked at first."""
        with self.lock:
            return tuple(reversed(self.known.values()))


def _held(sent: Sequence[tuple[str, bytes]], now: datetime, page: int | None) -> HeldPlan:
    from gramil.photographs.pdf_page import is_pdf
    from gramil.photographs.picture_file import read_picture

    names = tuple(name or f"picture {number}" for number, (name, _) in enumerate(sent, start=1))
    pictures = tuple(read_picture(content, name, page) for name, (_, content) in zip(names, sent, strict=True))
    flat = any(is_pdf(content) for _, content in sent)
    return HeldPlan(secrets.token_hex(8), names, pictures, tuple(_as_shown(each) for each in pictures), now, flat)


def _as_shown(picture: "PictureRead") -> bytes:
    """The picture small enough to be looked at, in grey."""
    import numpy as np
    from PIL import Image

    whole = Image.fromarray(picture.grey.astype(np.uint8))
    whole.thumbnail((LONGEST_SHOWN, LONGEST_SHOWN))
    out = BytesIO()
    whole.save(out, "JPEG", quality=82)
    return out.getvalue()
