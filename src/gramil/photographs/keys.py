"""What was traced, as keys of a description; and what the pictures show, in words."""

from collections.abc import Iterator

import numpy as np

from gramil.decimals import fixed
from gramil.measure import LengthUnit
from gramil.photographs.ground import Photograph
from gramil.photographs.halves import FoundOutline
from gramil.photographs.plan import Grounds
from gramil.quantities import Mm

PLACES = {"mm": 2, "in": 4}
ON_A_LINE = 5


def body_keys(outline: FoundOutline, unit: LengthUnit) -> Iterator[str]:
    """The lines of `[body]`, in the description's unit."""
    yield "[body]"
    source = f"# From a photograph or scan: {shown(outline.length, unit)} long, {shown(outline.widest, unit)} wide"
    yield f"{source}, within {shown(outline.unsure, unit)}"
    yield "points = [   # half of the outline, from the neck end: along, across"
    rows = [f"[{', '.join(_number(each, unit) for each in point)}]," for point in outline.points]
    for first in range(0, len(rows), ON_A_LINE):
        yield f"  {' '.join(rows[first : first + ON_A_LINE])}"
    yield "]"
    if outline.corners:
        yield f"corners = {list(outline.corners)}"
    yield f"traced_within = {_number(outline.unsure, unit)}"


def about_pictures(ground: Grounds) -> Iterator[str]:
    """What each picture shows, a line each, then what is to be known of them."""
    for number, each in enumerate(ground.each, start=1):
        if isinstance(each, Photograph):
            tags = [str(tag.number + 1) for tag in each.tags]
            stand = each.camera.stands()
            corners = np.concatenate([each.view.answer.corners(tag.number) for tag in each.tags])
            span = float(np.hypot(*np.ptp(each.camera.seen(corners), axis=0)) / np.hypot(*np.ptp(corners, axis=0)))
            yield (
                f"Picture {number}: tags {', '.join(tags)}; taken from {_from_above(float(stand[2]), ground.unit)}, "
                f"{_fineness(float(span), ground.unit)}"
            )
        else:
            scale = np.sqrt(np.linalg.svd(each.stretch.matrix, compute_uv=False))
            yield f"Scan: {fixed(25.4 / float(scale.prod()), 1)} pixels to the inch"
    yield from dict.fromkeys(f"{line}." for each in ground.each for line in each.told)


def _from_above(height: Mm, unit: LengthUnit) -> str:
    return f"{height / 10:.0f} cm above" if unit == "mm" else f"{height / 25.4:.0f} in above"


def _fineness(pixels: float, unit: LengthUnit) -> str:
    return f"{pixels:.1f} pixels to the millimetre" if unit == "mm" else f"{25.4 * pixels:.0f} pixels to the inch"


def shown(value: Mm, unit: LengthUnit) -> str:
    """A length in the unit, with its sign."""
    return f"{_number(value, unit)} {unit}"


def _number(value: Mm, unit: LengthUnit) -> str:
    return fixed(value if unit == "mm" else value / 25.4, PLACES[unit])
