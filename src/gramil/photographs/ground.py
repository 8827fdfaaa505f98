"""What lies under a drawing to be traced: a picture whose pixels have places in millimetres, and how sure these are.

A photograph gets its places from printed tags, a flat scan from two known lengths. Known lengths of the plan itself,
along and across, take out by how much its paper has stretched since it was drawn.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray
from scipy.spatial import ConvexHull

from gramil.decimals import fixed
from gramil.faults import MakersFault
from gramil.measure import LengthUnit, show
from gramil.photographs.camera import Camera
from gramil.photographs.cropped import cropped
from gramil.photographs.finding_tags import FoundTag, Grey, tags_in
from gramil.photographs.picture_file import PictureRead
from gramil.photographs.solving import NotSolvedError, Picture, solved
from gramil.photographs.surety import WAVING, View, off_when_left_out, out_of_place, unsure
from gramil.photographs.tags import Piece
from gramil.quantities import Mm

Array = NDArray[np.float64]
LEAST_TAGS = 4
SMALL_TAG = 50.0
"""In pixels: smaller ones are found less surely, and the maker is told so."""
BLURRED = 6.0
"""In pixels: the width of an edge from which its place is uncertain."""
TOO_FAR_OFF: Mm = 1.5
"""Tags that lie so far from where the others say are in no flat picture: one that was stitched, or bent."""
FIT_BADLY: Mm = 0.6
"""Tags that lie typically this far from where the others say are pointed out: flat strips of one print do not."""
BURNT = 254.0
BURNT_TOLD, BURNT_REFUSED = 0.05, 0.4
"""Share of the picture that is as bright as can be: thin lines are gone there."""
NARROWEST = 0.3
"""Tags all on one side: what they span across, as a share of along."""
OUTSIDE = 0.10
"""How far beyond the tags a place may lie, as a share of what they span."""
DARK = 90.0
"""A scan whose paper is darker than this is a negative."""
INVERTED = "The scan is light on dark, as a negative is: it is read the other way round"
STRETCHED_MOST = 0.03
"""Two known lengths that want more of the paper than this contradict each other, or one of them is mistyped."""


@dataclass(frozen=True)
class KnownLength:
    """A length of the plan that is known: between two places of the picture (pixels), in mm."""

    start: tuple[float, float]
    end: tuple[float, float]
    length: Mm


@dataclass(frozen=True)
class Stretch:
    """The plan's own stretch: places (n, 2) times this are what was drawn; `unsure` is a share of a length."""

    matrix: Array = field(default_factory=lambda: np.eye(2))
    unsure: float = 0.0

    def drawn(self, places: Array) -> Array:
        """Places on the plan as it was drawn."""
        return np.asarray(places @ self.matrix)

    def lying(self, places: Array) -> Array:
        """Places of the drawing where they lie on the table."""
        return np.asarray(places @ np.linalg.inv(self.matrix))


@dataclass(frozen=True)
class Photograph:
    """A photograph with tags round the plan. `told` are sentences that its maker should read."""

    grey: Grey
    view: View
    stretch: Stretch = Stretch()
    told: tuple[str, ...] = ()

    @property
    def camera(self) -> Camera:
        """The camera that took it."""
        return self.view.answer.camera(self.view.picture)

    @property
    def tags(self) -> tuple[FoundTag, ...]:
        """The tags that it shows."""
        return self.view.answer.pictures[self.view.picture].tags

    def on_plane(self, pixels: Array) -> Array:
        """Places in mm, y up, as drawn."""
        return self.stretch.drawn(self.camera.on_plane(pixels, self.view.height))

    def seen(self, places: Array) -> Array:
        """Where places are seen."""
        lying = self.stretch.lying(places)
        return self.camera.seen(np.column_stack((lying, np.full(len(lying), self.view.height))))

    def unsure(self, pixels: Array) -> Array:
        """One standard deviation of each place, mm, the known lengths with it."""
        span = float(np.ptp(self.on_plane(pixels), axis=0).max())
        return np.asarray(np.hypot(unsure(self.view, pixels), self.stretch.unsure * span / 2))


@dataclass(frozen=True)
class Scan:
    """A flat scan, or a page of a PDF: square to look at, its scale from known lengths."""

    grey: Grey
    stretch: Stretch
    told: tuple[str, ...] = ()

    def on_plane(self, pixels: Array) -> Array:
        """Places in mm, y up."""
        return self.stretch.drawn(pixels * (1, -1))

    def seen(self, places: Array) -> Array:
        """Where places are seen."""
        return np.asarray(self.stretch.lying(places) * (1, -1))

    def unsure(self, pixels: Array) -> Array:
        """One standard deviation of each place, mm: the lengths' ends, and the place's own pixel."""
        span = float(np.ptp(self.on_plane(pixels), axis=0).max())
        pixel = float(np.sqrt(abs(np.linalg.det(self.stretch.matrix))))
        return np.full(len(pixels), np.hypot(0.3 * pixel, self.stretch.unsure * span / 2))


def photographs(
    pictures: Sequence[PictureRead],
    pieces: Sequence[Piece],
    *,
    waving: Mm = WAVING,
    height: Mm = 0.0,
    unit: LengthUnit = "mm",
) -> tuple[Photograph, ...]:
    """The pictures of one plan solved together, by pieces of which any may be missing.

    `waving` is how high the paper stands off the table, `height` how high what is traced lies over the tags; lengths
    are told in `unit`. Raises MakersFault for pictures that do not say where the camera stood, each with what to do
    instead.
    """
    seen = [_tags_of(each, pieces) for each in pictures]
    shown = {tag.number for picture in seen for tag in picture.tags}
    used = [piece for piece in pieces if shown & piece.tags.keys()]
    _refuse_few(seen, used)
    try:
        answer = solved(used, seen)
    except NotSolvedError:
        raise MakersFault.of(
            "the photographs do not hang together",
            "no strip is seen in two of them",
            "Let each show a strip of another",
        ) from None
    left_out = off_when_left_out(answer)
    _refuse_bent(left_out, unit)
    burnt = [line for each in pictures for line in _burnt(each)]
    about = [line for each in seen for line in _about(each)]
    fit = _fit_badly(left_out, unit) or cropped(answer)  # tags that do not fit put the lens's middle anywhere
    told = (*_out_of_place(left_out, unit), *fit, *burnt, *about)
    return tuple(
        Photograph(picture.grey, View(answer, left_out, number, waving, height), told=told)
        for number, picture in enumerate(pictures)
    )


def _tags_of(picture: PictureRead, pieces: Sequence[Piece]) -> Picture:
    """What tags of the pieces a picture shows. Raises MakersFault where it shows none, or shows them mirrored."""
    found = tags_in(picture.grey)
    known = {number for piece in pieces for number in piece.tags}
    ours = tuple(tag for tag in found if tag.number in known)
    if ours and sum(tag.mirrored for tag in ours) * 2 > len(ours):
        raise MakersFault.of(
            "the picture is mirrored", "its tags are seen from behind", "Turn it over, or take it anew"
        )
    ours = tuple(tag for tag in ours if not tag.mirrored)
    if not ours:
        raise MakersFault.of(
            "no printed tag is found in the picture",
            "none is there, or they are blurred, covered, burnt out, or smaller than some 25 pixels",
            "Lay the four strips round the plan, all of each in the picture, in even light",
        )
    if np.median([tag.blur for tag in ours]) > BLURRED:
        raise MakersFault.of("the picture is blurred", remedy="Hold the phone still, or lean it on something")
    return Picture(picture.size, ours)


def _refuse_few(seen: Sequence[Picture], pieces: Sequence[Piece]) -> None:
    """Raises MakersFault where the tags are too few to tell the lens, or all at one side."""
    for picture in seen:
        if len(picture.tags) < LEAST_TAGS:
            raise MakersFault.of(
                f"only {len(picture.tags)} tags are found",
                "fewer than four do not tell where the camera stood",
                "Lay all four strips round the plan, each whole in the picture",
            )
        middles = np.array([tag.corners.mean(axis=0) for tag in picture.tags])
        spread = np.linalg.svd(middles - middles.mean(axis=0), compute_uv=False)
        if spread[1] < NARROWEST * spread[0]:
            raise MakersFault.of(
                "all tags lie on one side", "what lies away from them cannot be measured", "Lay the strips all round"
            )


def _refuse_bent(off: Mapping[int, Mm], unit: LengthUnit) -> None:
    """Raises MakersFault where the tags fit no flat sheet seen by one lens."""
    typical = float(np.median(list(off.values()))) if off else 0.0
    if typical > TOO_FAR_OFF:
        raise MakersFault.of(
            f"the tags do not fit together: most lie {show(typical, unit)} from where the others say",
            "a picture put together of several, a scanned or straightened one, or strips of different prints do that",
            "Take one photograph, and print all strips together at 100 %",
        )


def _burnt(picture: PictureRead) -> tuple[str, ...]:
    """A sentence if part of the picture is overexposed. Raises MakersFault if too much of it is."""
    share = float((picture.grey[::4, ::4] >= BURNT).mean())
    if share > BURNT_REFUSED:
        raise MakersFault.of(
            f"the picture is burnt out over {100 * share:.0f} % of it",
            "thin lines are gone there",
            "Take it anew in softer light, or tap the paper on the phone and draw its brightness down",
        )
    if share < BURNT_TOLD:
        return ()
    return (f"{100 * share:.0f} % of the picture is burnt out, and thin lines are gone there: use softer light",)


def _fit_badly(off: Mapping[int, Mm], unit: LengthUnit) -> tuple[str, ...]:
    """A sentence where all tags fit one another worse than flat strips of one print do."""
    typical = float(np.median(list(off.values()))) if off else 0.0
    if typical < FIT_BADLY:
        return ()
    return (
        f"The tags lie typically {show(typical, unit)} from where the others say: strips that wave, or that were "
        "printed at different scales, do that. Lay them flat, and print them all together",
    )


def _out_of_place(off: Mapping[int, Mm], unit: LengthUnit) -> tuple[str, ...]:
    """A sentence for each tag that lies elsewhere than the others say."""
    return tuple(
        f"Tag {number + 1} lies {show(off[number], unit)} from where the others say: it is bent, creased or covered. "
        f"Lay its strip flat and take the picture anew"
        for number in out_of_place(off)
    )


def _about(picture: Picture) -> tuple[str, ...]:
    """What is to be known of a picture: small tags, few of them, burnt-out paper."""
    told = []
    small = [tag for tag in picture.tags if tag.side < SMALL_TAG]
    if small:
        told.append(
            f"Tags are only {min(tag.side for tag in small):.0f} pixels wide: go nearer, or send the whole picture"
        )
    if len(picture.tags) < 6:
        told.append("Under six tags hardly tell how the lens bends: show all strips")
    return tuple(told)


def beyond_tags(photograph: Photograph, pixels: Array) -> float:
    """How far the farthest of these pixels' places lies outside the tags, as a share of what these span."""
    corners = np.concatenate([photograph.view.answer.corners(tag.number) for tag in photograph.tags])
    hull = ConvexHull(corners)
    places = photograph.camera.on_plane(pixels, photograph.view.height)
    out = (places @ hull.equations[:, :2].T + hull.equations[:, 2]).max()
    return max(float(out), 0.0) / float(np.ptp(corners, axis=0).max())


def refuse_beyond(photograph: Photograph, pixels: Array) -> None:
    """Raises MakersFault for places too far outside the tags."""
    if beyond_tags(photograph, pixels) > OUTSIDE:
        raise MakersFault.of(
            "the line lies outside the strips",
            "out there nothing holds it",
            "Lay the strips farther out, round all of it",
        )


def stretch_by(known: Sequence[KnownLength], places: Array) -> Stretch:
    """The plan's stretch from one or two known lengths; `places` (2 n, 2) are their ends in mm as they lie, start by
    start, end by end.

    One length stretches all ways alike; two, that run along and across, each way by itself. Raises MakersFault for
    lengths that contradict each other or run alike.
    """
    runs = places[1::2] - places[::2]
    measured = np.hypot(*runs.T)
    if (measured <= 0).any() or any(each.length <= 0 for each in known):
        raise MakersFault.of("a known length has no length", remedy="Lay its ends apart, and type how long it is")
    unsure_of = max(1.0 / each.length for each in known) * 0.2
    if len(known) == 1:
        return Stretch(np.eye(2) * known[0].length / measured[0], unsure_of)
    along = runs[0] / measured[0]
    axes = np.array([along, (-along[1], along[0])])
    square = (runs[:2] @ axes.T) ** 2
    if abs(np.linalg.det(square / measured[:2, None] ** 2)) < 0.5:
        raise MakersFault.of("the two known lengths run alike", remedy="Take one along the plan and one across it")
    shares = np.linalg.solve(square, np.array([each.length**2 for each in known[:2]]))
    if (shares <= 0).any():
        raise MakersFault.of("the two known lengths contradict each other", remedy="Measure them again")
    each_way = np.sqrt(shares)
    apart = abs(float(each_way[0] / each_way[1] - 1))
    if apart > STRETCHED_MOST:
        raise MakersFault.of(
            f"the two known lengths contradict each other by {fixed(100 * apart, 1)} %",
            "no paper or scanner stretches so much more one way than the other",
            "Measure both again, and lay their ends anew",
        )
    return Stretch(axes.T @ np.diag(each_way) @ axes, unsure_of)


def scanned(picture: PictureRead, known: Sequence[KnownLength]) -> Scan:
    """A flat scan by one known length each way. Raises MakersFault."""
    if len(known) < 2:
        raise MakersFault.of(
            "a scan needs two known lengths", "a scanner may stretch one way", "Give one along, one across"
        )
    height, width = picture.grey.shape
    ends = np.array([end for each in known[:2] for end in (each.start, each.end)])
    if (ends < -1).any() or (ends > (width, height)).any():
        raise MakersFault.of("an end of a known length lies outside the picture", remedy="Lay it on the picture")
    stretch = stretch_by(known, ends * (1, -1))
    if float(np.median(picture.grey[::8, ::8])) < DARK:
        return Scan(255.0 - picture.grey, stretch, (INVERTED,))
    return Scan(picture.grey, stretch)
