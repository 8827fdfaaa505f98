"""What a maker typed and laid on the page of a plan's pictures, carried in the page's address and nowhere else."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING
from urllib.parse import urlencode

from gramil.bench.field_words import at_field
from gramil.bench.page_request import PageRequest
from gramil.faults import MakersFault
from gramil.measure import LengthUnit, read_length, show
from gramil.quantities import Mm

if TYPE_CHECKING:
    from gramil.description.plan.laid import LaidPlaces
    from gramil.photographs.ground import KnownLength
    from gramil.photographs.ink import What
    from gramil.photographs.plan import Grounds, Laid, TraceInputs
    from gramil.photographs.tags import Piece

MOST_POINTS = 200
FARTHEST = 1e6
"""No pixel of a picture is farther from its corner."""
HIGHEST: Mm = 100.0
FIELDS = (
    "laid",
    "frame",
    "bar",
    "waving",
    "height",
    "what",
    "along",
    "along_length",
    "across",
    "across_length",
    "points",
    "braces",
    "hole",
    "bridge",
    "head",
    "follow",
    "inside",
)
OF_GROUND = FIELDS[: FIELDS.index("points")]
"""What the pictures are solved by."""
KNOWN = ("along", "across")
Place = tuple[float, float]


@dataclass(frozen=True)
class Typed:
    """The page's fields as they were typed; `laid` is what was laid round the plan: strips, frame or nothing."""

    laid: str
    frame: str
    bar: str
    waving: str
    height: str
    what: str
    along: str
    along_length: str
    across: str
    across_length: str
    points: str
    braces: str
    hole: str
    bridge: str
    head: str
    follow: str
    inside: str

    @property
    def query(self) -> str:
        """All of it as an address's query; what is empty is left out."""
        return urlencode({key: value for key, value in self.fields if value})

    @property
    def fields(self) -> tuple[tuple[str, str], ...]:
        """Each field with what was typed."""
        return tuple((key, getattr(self, key)) for key in FIELDS)

    @property
    def of_ground(self) -> tuple[str, ...]:
        """What the pictures are solved by."""
        return tuple(str(getattr(self, key)) for key in OF_GROUND)

    def with_points(self, points: "list[Laid]") -> "Typed":
        """The same with other points."""
        return replace(self, points="\n".join(_written(each) for each in points))


def typed_in(request: PageRequest) -> Typed:
    """What the page's address carries."""
    usual = {"laid": "strips", "what": "line"}
    typed = {key: request.one(key, usual.get(key, "")) for key in FIELDS}
    return Typed(**{**typed, "follow": " ".join(each for each in request.many("follow") if each)})


def trace_inputs(typed: Typed, unit: LengthUnit) -> "TraceInputs":
    """What is asked of the pictures. Raises MakersFault, each fault at its field."""
    from gramil.photographs.plan import TraceInputs
    from gramil.photographs.surety import WAVING

    waving = _length(typed.waving, "waving", unit, WAVING)
    height = _length(typed.height, "height", unit, 0.0)
    return TraceInputs(_pieces(typed, unit), tuple(_known(typed, unit)), waving, height, edge_or_line(typed), unit)


def laid_places(typed: Typed, ground: "Grounds", unit: LengthUnit) -> "LaidPlaces":
    """What was laid beside the outline. Raises MakersFault, each fault at its field."""
    from gramil.description.plan.laid import FOLLOWED, LAID, LaidPlaces

    places = {}
    for key in LAID:
        with at_field(key):
            if laid := points_in(getattr(typed, key)):
                places[key] = ground.places(laid)
    followed = frozenset(typed.follow.split()) & frozenset(FOLLOWED)
    return LaidPlaces(places, followed, typed.inside == "yes", unit)


def edge_or_line(typed: Typed) -> "What":
    """What is followed."""
    return "edge" if typed.what == "edge" else "line"


def _pieces(typed: Typed, unit: LengthUnit) -> "tuple[Piece, ...]":
    from gramil.photographs.pieces import APART, as_measured, frame_piece, frame_sides, strips

    if typed.laid == "nothing":
        return ()
    with at_field("frame"):
        sides = frame_sides(typed.frame, unit) if typed.laid == "frame" else None
    printed = sides[0] if sides else APART
    with at_field("bar"):
        bar = as_measured(float(read_length(typed.bar, unit)) if typed.bar else printed, printed, unit)
    return (frame_piece(*sides, bar),) if sides else strips(bar)


def _length(written: str, field: str, unit: LengthUnit, usual: Mm) -> Mm:
    with at_field(field):
        value = float(read_length(written, unit)) if written else usual
        if not 0 <= value <= HIGHEST:
            raise MakersFault.of("no such height", remedy=f"it is 0 to {show(HIGHEST, unit)}")
    return value


def _known(typed: Typed, unit: LengthUnit) -> "Iterator[KnownLength]":
    """The known lengths of the plan: those whose ends were laid."""
    from gramil.photographs.ground import KnownLength

    for key in KNOWN:
        ends, length = getattr(typed, key), getattr(typed, f"{key}_length")
        if not ends and not length:
            continue
        with at_field(key):
            laid = points_in(ends)
            if len(laid) != 2:
                raise MakersFault.of(f"{len(laid)} ends are laid", "a length has two", "Lay both on the first picture")
        with at_field(f"{key}_length"):
            size = float(read_length(length, unit))
        start, end = ((each.x, each.y) for each in laid)
        yield KnownLength(start, end, size)


def points_in(written: str) -> "list[Laid]":
    """Points as they are written: x,y and, from the second picture on, its number; one to a line, or parted by blanks.

    Raises MakersFault.
    """
    from gramil.photographs.plan import Laid

    found = []
    for number, each in enumerate(written.split(), start=1):
        parts = each.split(",")
        try:
            x, y = float(parts[0]), float(parts[1])
            picture = int(parts[2]) - 1 if len(parts) == 3 else 0
            sound = len(parts) < 4 and abs(x) < FARTHEST and abs(y) < FARTHEST
        except (ValueError, IndexError, OverflowError):
            sound = False
        if not sound:
            raise MakersFault.of(f"place {number} is not a pair of pixels", remedy="write x,y such as 1240,655")
        found.append(Laid(x, y, picture))
    if len(found) > MOST_POINTS:
        raise MakersFault.of(f"{len(found)} points", remedy=f"{MOST_POINTS} are the most, and 20 to 24 are enough")
    return found


def _written(point: "Laid") -> str:
    own = f"{point.x:.1f},{point.y:.1f}"
    return own if point.picture == 0 else f"{own},{point.picture + 1}"
