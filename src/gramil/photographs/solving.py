"""Cameras and the places of loose printed pieces solved together from where their tags are seen.

Least squares on the corners' places in pixels, hard against single outliers; the lens is held loosely to what lenses
are, so that few tags do not bend it. The first piece lies at zero: nothing else says where zero is.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import NDArray
from scipy.optimize import least_squares

from gramil.photographs.camera import LENS, POSE, Camera, placed
from gramil.photographs.finding_tags import FoundTag, plane_to_picture, through_perspective
from gramil.photographs.tags import Piece

Array = NDArray[np.float64]
PLACE = 3
"""How many numbers say where a loose piece lies: x and y (mm) and its turn."""
CORNER_ERROR = 0.15
"""How far off a corner is expected to be, px: the measure of how loosely the lens is held."""
LENS_SPREAD = (0.7, 0.01, 0.01, 0.3, 0.3)
"""How far lenses differ: log focal length, centre (share of half the diagonal), k1, k2."""
USUAL_FOCAL = 0.85
"""Usual focal length as a share of the picture's longer side."""
FOCAL_TRIED = (0.6, 0.85, 1.3, 2.2)
ROBUST = 3 * CORNER_ERROR
"""Residuals well over this count less, px."""
FREEDOM_LEAST = 4


@dataclass(frozen=True)
class Picture:
    """What is seen in one picture: its size in pixels (width, height), and its tags."""

    size: tuple[int, int]
    tags: tuple[FoundTag, ...]


@dataclass(frozen=True)
class Solved:
    """The cameras, one a picture, and where each piece lies (x, y, turn; None if no picture shows it).

    `numbers` are all of these in a row, `spread` their covariance; `off` is by picture and tag what its corners are
    off (px, root mean square); `error` is what a corner is off, px.
    """

    pieces: tuple[Piece, ...]
    pictures: tuple[Picture, ...]
    numbers: Array
    spread: Array
    off: Mapping[tuple[int, int], float]
    error: float

    def camera(self, picture: int = 0) -> Camera:
        """The camera of a picture."""
        return camera_of(self.numbers, picture)

    def place(self, piece: int) -> Array:
        """Where a piece lies: x, y (mm), turn (rad)."""
        return place_of(self.numbers, len(self.pictures), piece)

    def corners(self, number: int) -> Array:
        """Where a tag's corners lie on the plane (4, 2), mm."""
        piece = _piece_of(self.pieces, number)
        return laid(self.place(piece), self.pieces[piece].tags[number])


def camera_of(numbers: Array, picture: int) -> Camera:
    """The camera of a picture, out of all numbers (..., numbers)."""
    start = picture * (LENS + POSE)
    return Camera(numbers[..., start : start + LENS], numbers[..., start + LENS : start + LENS + POSE])


def place_of(numbers: Array, pictures: int, piece: int) -> Array:
    """Where a piece lies, out of all numbers; the first lies at zero."""
    start = pictures * (LENS + POSE) + (piece - 1) * PLACE
    return numbers[start : start + PLACE] if piece else np.zeros(PLACE)


def laid(place: Array, points: Array) -> Array:
    """Points (n, 2) of a piece where it lies."""
    cosine, sine = np.cos(place[2]), np.sin(place[2])
    return points @ np.array([(cosine, sine), (-sine, cosine)]) + place[:2]


class NotSolvedError(Exception):
    """The tags do not say where the camera stood: too few of them, or pieces that no picture shows together."""


def solved(pieces: Sequence[Piece], pictures: Sequence[Picture], start: Array | None = None) -> Solved:
    """The cameras and the places of the pieces that best explain where all tags are seen.

    Only pieces that are seen may be given; `start` is where to begin, if something near is known. Raises
    NotSolvedError.
    """
    terms = _Terms.of(pieces, pictures)
    near = start
    if near is None:
        fits = (_fit(terms, each, "linear") for each in _beginnings(pieces, pictures))
        near = min(fits, key=lambda each: each[1])[0]
    best = _fit(terms, near, "soft_l1")[0]
    off = terms.off(best)
    jacobian = _slopes(terms, best)
    weight = 1 / np.sqrt(1 + (terms.residuals(best) / ROBUST) ** 2)
    free = len(off) - len(best) + terms.priors
    error = float(np.sqrt((weight[: len(off)] * off**2).sum() / max(free, FREEDOM_LEAST)))
    inner = (jacobian * weight[:, None]).T @ jacobian
    spread = np.asarray(np.linalg.pinv(inner, hermitian=True), dtype=np.float64) * max(error, CORNER_ERROR / 3) ** 2
    rms = {key: float(np.sqrt((off[rows] ** 2).mean() * 2)) for key, rows in terms.rows.items()}
    return Solved(tuple(pieces), tuple(pictures), best, spread, rms, error)


@dataclass(frozen=True)
class _Terms:
    """What is fitted: the corners where they are seen, each with its picture and the piece that it belongs to."""

    pictures: tuple[Picture, ...]
    picture: NDArray[np.intp]
    piece: NDArray[np.intp]
    own: Array
    pixels: Array
    rows: Mapping[tuple[int, int], slice]

    @classmethod
    def of(cls, pieces: Sequence[Piece], pictures: Sequence[Picture]) -> "_Terms":
        """Every tag of every picture."""
        seen = [(number, tag) for number, picture in enumerate(pictures) for tag in picture.tags]
        of = [_piece_of(pieces, tag.number) for _, tag in seen]
        return cls(
            tuple(pictures),
            np.repeat([number for number, _ in seen], 4),
            np.repeat(of, 4),
            np.concatenate([pieces[piece].tags[tag.number] for piece, (_, tag) in zip(of, seen, strict=True)]),
            np.concatenate([tag.corners for _, tag in seen]),
            {(number, tag.number): slice(8 * row, 8 * row + 8) for row, (number, tag) in enumerate(seen)},
        )

    @property
    def priors(self) -> int:
        """How many residuals hold the lenses."""
        return LENS * len(self.pictures)

    def off(self, numbers: Array) -> Array:
        """By how much every corner is seen elsewhere than it should be, px; of several sets of numbers at once."""
        several = numbers.shape[:-1]
        loose = numbers[..., len(self.pictures) * (LENS + POSE) :].reshape(*several, -1, PLACE)
        places = np.concatenate((np.zeros((*several, 1, PLACE)), loose), axis=-2)[..., self.piece, :]
        x, y, turn = np.moveaxis(places, -1, 0)
        cosine, sine = np.cos(turn), np.sin(turn)
        across, up = self.own.T
        flat = np.stack((x + cosine * across - sine * up, y + sine * across + cosine * up), axis=-1)
        seen = np.empty_like(flat)
        for picture in range(len(self.pictures)):
            of = self.picture == picture
            seen[..., of, :] = camera_of(numbers, picture).seen(flat[..., of, :])
        return (seen - self.pixels).reshape(*several, -1)

    def residuals(self, numbers: Array) -> Array:
        """The same, and after it how unusual each lens is."""
        held = []
        for number, picture in enumerate(self.pictures):
            lens, usual, spread = camera_of(numbers, number).lens, *_usual_lens(picture.size)
            held.append((lens - usual) / spread * CORNER_ERROR)
        return np.concatenate((self.off(numbers), *held), axis=-1)


def _usual_lens(size: tuple[int, int], focal: float = USUAL_FOCAL) -> tuple[Array, Array]:
    """The usual lens of a picture of that size, and how far lenses differ from it."""
    width, height = size
    half = np.hypot(width, height) / 2
    usual = np.array([np.log(focal * max(size)), (width - 1) / 2, (height - 1) / 2, 0, 0])
    return usual, np.array(LENS_SPREAD) * (1, half, half, 1, 1)


def _fit(terms: _Terms, start: Array, loss: Literal["linear", "soft_l1"]) -> tuple[Array, float]:
    """The fit from a beginning, and what is left of its residuals."""

    def slopes(numbers: Array) -> Array:
        return _slopes(terms, numbers)

    found = least_squares(terms.residuals, start, slopes, loss=loss, f_scale=ROBUST, x_scale="jac", max_nfev=40)
    return found.x, float(found.cost)


def _slopes(terms: _Terms, numbers: Array) -> Array:
    """How the residuals move with each number."""
    steps = np.maximum(np.abs(numbers), 1e-2) * 1e-6
    moved = terms.residuals(numbers + np.diag(steps)) - terms.residuals(numbers - np.diag(steps))
    return np.asarray((moved / (2 * steps[:, None])).T)


def _piece_of(pieces: Sequence[Piece], number: int) -> int:
    """Which piece carries a tag. Raises NotSolvedError if none does."""
    for index, piece in enumerate(pieces):
        if number in piece.tags:
            return index
    raise NotSolvedError(f"no piece carries tag {number}")


def _beginnings(pieces: Sequence[Piece], pictures: Sequence[Picture]) -> list[Array]:
    """Where to begin, for several focal lengths: pieces laid out one after the other by pictures that share them."""
    places: dict[int, Array] = {0: np.zeros(PLACE)}
    views: dict[int, Array] = {}
    while len(views) < len(pictures) or len(places) < len(pieces):
        grown = _one_more(pieces, pictures, places, views)
        if not grown:
            raise NotSolvedError("pieces and pictures do not hang together")
    loose = [places[piece] for piece in range(1, len(pieces))]
    begins = []
    for focal in FOCAL_TRIED:
        row = []
        for number, picture in enumerate(pictures):
            lens = _usual_lens(picture.size, focal)[0]
            row += [lens, placed(views[number], lens)]
        begins.append(np.concatenate((*row, *loose)))
    return begins


def _one_more(
    pieces: Sequence[Piece], pictures: Sequence[Picture], places: dict[int, Array], views: dict[int, Array]
) -> bool:
    """One more picture whose view is known from pieces laid out, and from it every piece that it shows; else False."""
    for number, picture in enumerate(pictures):
        if number in views:
            continue
        shown = [(tag, _piece_of(pieces, tag.number)) for tag in picture.tags]
        laid_out = [(tag, piece) for tag, piece in shown if piece in places]
        if not laid_out:
            continue
        flat = np.concatenate([laid(places[piece], pieces[piece].tags[tag.number]) for tag, piece in laid_out])
        views[number] = plane_to_picture(flat, np.concatenate([tag.corners for tag, _ in laid_out]))
        _lay_out(pieces, shown, places, views[number])
        # A view from all that is now laid out is better than one from a single piece.
        flat = np.concatenate([laid(places[piece], pieces[piece].tags[tag.number]) for tag, piece in shown])
        views[number] = plane_to_picture(flat, np.concatenate([tag.corners for tag, _ in shown]))
        return True
    return False


def _lay_out(
    pieces: Sequence[Piece], shown: Sequence[tuple[FoundTag, int]], places: dict[int, Array], view: Array
) -> None:
    """Where pieces that a view shows, and that are not laid out yet, lie by it."""
    back: Array = np.asarray(np.linalg.inv(view), dtype=np.float64)
    for piece in sorted({piece for _, piece in shown} - places.keys()):
        tags = [tag for tag, of in shown if of == piece]
        own = np.concatenate([pieces[piece].tags[tag.number] for tag in tags])
        places[piece] = _moved_onto(own, through_perspective(back, np.concatenate([tag.corners for tag in tags])))


def _moved_onto(own: Array, there: Array) -> Array:
    """The place (x, y, turn) that brings points nearest to others."""
    one, other = own - own.mean(axis=0), there - there.mean(axis=0)
    turn = np.arctan2((one[:, 0] * other[:, 1] - one[:, 1] * other[:, 0]).sum(), (one * other).sum())
    place = np.array([0.0, 0.0, turn])
    return np.array([*(there.mean(axis=0) - laid(place, own.mean(axis=0)[None])[0]), turn])
