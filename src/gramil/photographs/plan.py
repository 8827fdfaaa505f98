"""A plan traced from pictures: what the maker gives, and the outline that comes of it with how sure it is."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import hypot

import numpy as np
from numpy.typing import NDArray

from gramil.faults import MakersFault
from gramil.measure import LengthUnit, show
from gramil.photographs.finding_tags import sampled
from gramil.photographs.ground import (
    KnownLength,
    Photograph,
    Scan,
    Stretch,
    photographs,
    refuse_beyond,
    scanned,
    stretch_by,
)
from gramil.photographs.halves import FoundOutline, outline_of
from gramil.photographs.ink import GAP, REACH, Followed, What, followed
from gramil.photographs.picture_file import PictureRead, held
from gramil.photographs.surety import WAVING
from gramil.photographs.tags import Piece
from gramil.quantities import Mm

Array = NDArray[np.float64]
FEWEST = 8
"""Points on an outline: between fewer a smooth curve strays farther from the line than it is sought."""
DOUBTFUL: Mm = 0.2
"""Ink that scatters about the smooth line by more than this is pointed out."""


@dataclass(frozen=True)
class Laid:
    """A point that the maker laid on a picture (the first is 0), in the pixels of its file."""

    x: float
    y: float
    picture: int = 0


@dataclass(frozen=True)
class TraceInputs:
    """What the maker gives: printed pieces as measured, how the paper waves, how high what is traced lies over the tags
    (mm), known lengths of the plan on the first picture, and whether its line or an edge is traced.

    Without `pieces` the picture is taken as a flat scan. Lengths are told in `unit`.
    """

    pieces: Sequence[Piece]
    known: Sequence[KnownLength] = ()
    waving: Mm = WAVING
    height: Mm = 0.0
    what: What = "line"
    unit: LengthUnit = "mm"


@dataclass(frozen=True)
class TracedPlan:
    """The line in mm, the outline that it gives, and sentences that the maker should read."""

    line: Followed
    outline: FoundOutline
    told: tuple[str, ...]


@dataclass(frozen=True)
class Grounds:
    """The pictures of one plan, each with its places in the same millimetres; `shrunk` says how many pixels of its file
    each pixel that is held is, `unit` in what lengths are told.
    """

    each: tuple[Photograph | Scan, ...]
    shrunk: tuple[int, ...]
    unit: LengthUnit = "mm"

    def held(self, point: Laid) -> tuple[float, float]:
        """A point in the pixels that are held. Raises MakersFault for an unknown picture."""
        if not 0 <= point.picture < len(self.each):
            raise MakersFault.of(f"a point lies on picture {point.picture + 1}, of {len(self.each)}")
        return held(point.x, point.y, self.shrunk[point.picture])

    def in_file(self, number: int, places: Array) -> Array:
        """Where places (n, 2), mm, are seen in a picture, in the pixels of its file."""
        return np.asarray((self.each[number].seen(places) + 0.5) * self.shrunk[number] - 0.5)

    def light(self, places: Array) -> Array:
        """The light at places (n, 2): of several pictures that one which sees a place most squarely."""
        if len(self.each) == 1:
            return sampled(self.each[0].grey, self.each[0].seen(places))
        seen = [ground.seen(places) for ground in self.each]
        slants = np.array([_slant(ground, pixels) for ground, pixels in zip(self.each, seen, strict=True)])
        light = np.array([sampled(ground.grey, pixels) for ground, pixels in zip(self.each, seen, strict=True)])
        return np.asarray(np.take_along_axis(light, slants.argmin(axis=0)[None], axis=0)[0])

    def places(self, points: Sequence[Laid]) -> Array:
        """Where points that were laid lie, mm. Raises MakersFault for an unknown picture."""
        out = np.empty((len(points), 2))
        for row, point in enumerate(points):
            pixels = np.array([self.held(point)])
            out[row] = self.each[point.picture].on_plane(pixels)[0]
        return out

    def unsure(self, places: Array) -> Array:
        """One standard deviation of places (n), by the picture that knows each best."""
        return np.asarray(np.min([ground.unsure(ground.seen(places)) for ground in self.each], axis=0))


def _slant(ground: Photograph | Scan, pixels: Array) -> Array:
    """How far from square places are seen; without end where they lie outside the picture."""
    height, width = ground.grey.shape
    inside = (pixels >= 0).all(axis=1) & (pixels[:, 0] <= width - 1) & (pixels[:, 1] <= height - 1)
    slant = ground.camera.slant(pixels) if isinstance(ground, Photograph) else np.zeros(len(pixels))
    return np.where(inside, slant, np.inf)


def grounds(pictures: Sequence[PictureRead], asked: TraceInputs) -> Grounds:
    """The pictures with places. Raises MakersFault, each fault with what to do instead."""
    if not asked.pieces:
        if len(pictures) != 1:
            raise MakersFault.of(
                "a scan is one picture", remedy="Put its parts together first, or lay strips round the plan"
            )
        return Grounds((scanned(pictures[0], _held(pictures[0], asked.known)),), (pictures[0].shrunk,), asked.unit)
    found = photographs(pictures, asked.pieces, waving=asked.waving, height=asked.height, unit=asked.unit)
    stretch = _stretch(found[0], _held(pictures[0], asked.known))
    each = tuple(replace(each, stretch=stretch) for each in found)
    return Grounds(each, tuple(picture.shrunk for picture in pictures), asked.unit)


def _held(picture: PictureRead, known: Sequence[KnownLength]) -> list[KnownLength]:
    """Known lengths with their ends in the pixels that are held."""
    return [
        KnownLength(held(*each.start, picture.shrunk), held(*each.end, picture.shrunk), each.length) for each in known
    ]


def _stretch(photograph: Photograph, known: Sequence[KnownLength]) -> Stretch:
    """The plan's own stretch, none if no length of it is known."""
    if not known:
        return Stretch()
    ends = np.array([end for each in known[:2] for end in (each.start, each.end)])
    return stretch_by(known[:2], photograph.on_plane(ends))


def traced(ground: Grounds, points: Sequence[Laid], what: What = "line") -> TracedPlan:
    """The outline near points laid once round it. Raises MakersFault where it cannot be told."""
    if len(points) < FEWEST:
        raise MakersFault.of(f"{len(points)} points", f"an outline takes {FEWEST} at the least, better 20 to 24")
    for number, each in enumerate(ground.each):
        _refuse_outside(each, number, [ground.held(point) for point in points if point.picture == number])
        own = np.array([ground.held(point) for point in points if point.picture == number])
        if isinstance(each, Photograph) and len(own):
            refuse_beyond(each, own)
    line = followed(ground.light, ground.places(points), what=what)
    if not np.isfinite(line.scatter):
        raise MakersFault.of(
            "no line is found near the points",
            f"within {show(REACH, ground.unit)} of them nothing is dark",
            "Lay them on the line itself",
        )
    unsure = float(np.sqrt((ground.unsure(line.points) ** 2).mean()))
    outline = outline_of(line.points, 2 * hypot(unsure, line.scatter / 3))
    return TracedPlan(line, outline, (*_about(ground), *_doubts(line, outline, ground.unit)))


def _refuse_outside(ground: Photograph | Scan, number: int, held_there: Sequence[tuple[float, float]]) -> None:
    """Raises MakersFault for a point that lies on no pixel: a picture that was cropped shows nothing there."""
    height, width = ground.grey.shape
    for x, y in held_there:
        if not (-1 <= x <= width and -1 <= y <= height):
            raise MakersFault.of(
                f"a point lies outside picture {number + 1}",
                "of a plan that is cropped only what it shows can be traced",
                "Lay it on the picture, or scan all of the plan",
            )


def _about(ground: Grounds) -> tuple[str, ...]:
    """What is told of the pictures, each sentence once."""
    return tuple(dict.fromkeys(line for each in ground.each for line in each.told))


def _doubts(line: Followed, outline: FoundOutline, unit: LengthUnit) -> list[str]:
    """What is doubtful about the line, in sentences."""
    told = []
    if line.gaps:
        places = ", ".join(_at(gap.middle, unit) for gap in line.gaps[:4])
        told.append(f"No ink for over {show(GAP, unit)} at {places}: there the line is guessed between its neighbours")
    for each in line.beside[:4]:
        side = "left" if each.off > 0 else "right"
        told.append(
            f"Another line runs {show(abs(each.off), unit)} to the {side} near {_at(each.stretch.middle, unit)}, "
            f"for {show(each.stretch.end - each.stretch.start, unit)}: "
            "say which is meant by points that lie nearer to it"
        )
    if line.scatter > DOUBTFUL:
        told.append(f"The ink scatters by {show(line.scatter, unit)} about a smooth line: look at the picture of it")
    if outline.asymmetry > max(0.5, 2 * outline.unsure):
        told.append(f"The halves differ by {show(outline.asymmetry, unit)}: what is written lies half-way between them")
    return told


def _at(place: tuple[Mm, Mm], unit: LengthUnit) -> str:
    """A place in words, both lengths in the unit."""
    return f"({show(place[0], unit)}, {show(place[1], unit)})"
