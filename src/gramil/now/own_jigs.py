"""Moulds, forms and dishes serve some instruments only: those of the outline or the radius that each was made for.

One that the shop lists serves the instruments that it names, or the radius that it has, and is not made again. One that
is made for an instrument serves the others of the same outline or radius. Everything else, clamps and go-bars, serves
any instrument.
"""

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from math import isclose

from gramil.description.instrument import Instrument
from gramil.description.shop.tables import JigTable
from gramil.shop.operations import Operation, Work, without

SAME_RADIUS = 0.01
"""Radii that differ by so small a share are worked in one dish: the sagittas over a body differ by some 0.05 mm."""
OF_OUTLINE, OF_TOP, OF_BACK = ("mould", "side form"), ("top dish",), ("back dish",)
Shape = tuple[object, ...]


@dataclass(frozen=True)
class Built:
    """An instrument by name: its description, its work (none if it is finished), and the operations done on it."""

    name: str
    described: Instrument
    work: Work
    done: frozenset[str]


def with_own_jigs(built: Sequence[Built], listed: Sequence[JigTable]) -> tuple[tuple[Work, ...], Mapping[str, int]]:
    """The work of each instrument, its jigs named after the instruments that they serve, without the making of jigs
    that exist already; and how many there are of each.
    """
    counted: Counter[str] = Counter()
    works = []
    for one in built:
        # what is finished has no work, and so no jigs: it may have made some that serve
        names: dict[str, str] = {}
        reasons: dict[str, str] = {}
        for kind in sorted(_kinds(one.work)):
            fitting = [each for each in listed if each.purpose == kind and _serves(each, one)]
            sharing = [other for other in built if _shape(kind, other.described) == _shape(kind, one.described)]
            names[kind] = _name(kind, fitting, sharing)
            counted[names[kind]] = max(1, len(fitting))
            reasons.update(_made(kind, one, fitting, sharing))
        works.append(_renamed(without(one.work, reasons) if reasons else one.work, names))
    return tuple(works), counted


def without_jigs_on_hand(one: Built, others: Sequence[Built], listed: Sequence[JigTable]) -> Work:
    """An instrument's work without the making of moulds, forms and dishes that the shop has or that serve another."""
    return with_own_jigs((one, *others), listed)[0][0]


def _kinds(work: Work) -> set[str]:
    used = {kind for each in work.operations.values() for kind in (*each.uses, *each.takes, *each.makes)}
    return used & {*OF_OUTLINE, *OF_TOP, *OF_BACK}


def _shape(kind: str, described: Instrument) -> Shape:
    """What a jig of a kind was made for: the outline as given, or a radius."""
    body = described.body
    if kind in OF_OUTLINE:
        halves = (
            body.treble_points,
            body.treble_corners,
            body.centreline,
            described.cutaway.shape,
        )
        return (body.outline, body.points, body.corners, body.file, body.layer, body.length, *halves)
    return (described.top.radius if kind in OF_TOP else body.back_radius,)


def _serves(jig: JigTable, one: Built) -> bool:
    if jig.serves:
        return one.name.casefold() in {each.casefold() for each in jig.serves}
    if jig.radius is None or jig.purpose in OF_OUTLINE:
        return True
    (radius,) = _shape(jig.purpose, one.described)
    return isinstance(radius, float) and isclose(radius, jig.radius, rel_tol=SAME_RADIUS)


def _name(kind: str, fitting: Sequence[JigTable], sharing: Sequence[Built]) -> str:
    """A kind named after the instruments that it serves; one that the shop lists for any keeps its name."""
    if any(not each.serves and each.radius is None for each in fitting):
        return kind
    if fitting:
        return f"{kind} {' or '.join(each.name for each in fitting)}"
    return f"{kind} for {' and '.join(each.name for each in sharing if each.work.operations)}"


def _made(kind: str, one: Built, fitting: Sequence[JigTable], sharing: Sequence[Built]) -> Iterator[tuple[str, str]]:
    """The operation that makes a kind, and why it is not needed if there is such a jig."""
    for each in one.work.operations.values():
        if kind not in each.makes or each.name in one.done:
            continue
        if fitting:
            yield each.name, f"the shop has it: {fitting[0].name}"
        elif maker := next((other for other in sharing if each.name in other.done), None):
            yield each.name, f"that of {maker.name} serves"


def _renamed(work: Work, names: Mapping[str, str]) -> Work:
    return replace(work, operations={key: _with(each, names) for key, each in work.operations.items()})


def _with(each: Operation, names: Mapping[str, str]) -> Operation:
    uses, takes, frees = (
        tuple(names.get(kind, kind) for kind in kinds) for kinds in (each.uses, each.takes, each.frees)
    )
    return replace(each, uses=uses, takes=takes, frees=frees)
