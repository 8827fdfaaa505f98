"""The order in which sheets are used: that of the operations' graph and, where it leaves a choice, the trade's.

Pack, build book and the bench's lists all use this one order.
"""

from collections.abc import Mapping, Sequence

from gramil.sheets.sheet import Sheet
from gramil.shop.operations import Operation, Work
from gramil.shop.operations_file import usual_work

STAGES: Sequence[tuple[str, ...]] = (
    ("wood",),
    ("board", "template", "wire"),
    ("neck",),
    ("mould", "form", "dishes", "rim", "blocks", "linings"),
    ("top", "braces"),
    ("back",),
    ("body",),
    ("binding",),
    ("bridge",),
    ("finish",),
    ("setting up", "nut", "saddle"),
    ("reading it", "refret", "neck reset", "bridge again", "new nut", "new saddle", "setting up again"),
    ("papers",),
)
"""Parts of operations in the order in which they are taken up where nothing waits."""
ON_THE_NECK = ("wood", "neck", "mould", "top", "body", "back", "binding", "board", "bridge", "finish", "setting up")
"""The same by the first part of each, for a body that is built on its neck: the board is made for what is built."""
BUILT_ON = "body_built_on"
"""The operation that an instrument has whose body is built on its neck."""


def in_order_of_work(sheets: Sequence[Sheet], work: Work) -> tuple[Sheet, ...]:
    """The sheets, each at the first of its operations, and none after a sheet whose first operation waits for its own.

    A sheet that this instrument does not need keeps its place in the trade's order.
    """
    firsts = {sheet.setup.name: _first(sheet.setup.name, work) for sheet in sheets}
    before = {each.name: _before(each.name, work) for each in firsts.values() if each is not None}
    places = {name: at for at, name in enumerate(work.operations)}

    def listed(sheet: Sheet) -> int:
        first = firsts[sheet.setup.name]
        return places[first.name] if first is not None else len(places)

    left, found = list(sheets), list[Sheet]()
    while left:
        waiting = [first for sheet in left if (first := firsts[sheet.setup.name]) is not None]
        open_ = [sheet for sheet in left if not _waits(firsts[sheet.setup.name], waiting, before)]
        chosen = min(open_, key=lambda sheet: (_stage(sheet, firsts, work), sheet.setup.order, listed(sheet)))
        found.append(chosen)
        left.remove(chosen)
    return tuple(found)


def _first(name: str, work: Work) -> Operation | None:
    """The first operation that uses a sheet: of those that share it, or the one that it is named after."""
    sharing = [each for each in work.operations.values() if each.sheet == name]
    if not sharing:
        return work.operations.get(name)
    names = {each.name for each in sharing}
    return next(each for each in sharing if not _before(each.name, work) & names)


def _before(name: str, work: Work) -> frozenset[str]:
    """Every operation that an operation waits for, directly or indirectly."""
    found: set[str] = set()
    ahead = list(work.operations[name].after)
    while ahead:
        each = ahead.pop()
        if each not in found:
            found.add(each)
            ahead += work.operations[each].after
    return frozenset(found)


def _waits(first: Operation | None, waiting: Sequence[Operation], before: Mapping[str, frozenset[str]]) -> bool:
    """Whether an operation waits for the first one of a sheet that is still to come."""
    return first is not None and any(each.name in before[first.name] for each in waiting)


def part_of(name: str, work: Work) -> str:
    """The part that a sheet or an operation is for, by the first of its stage; empty for one that is for none."""
    first = _first(name, work) or _first(name, usual_work())
    return next((parts[0] for parts in STAGES if first is not None and first.part in parts), "")


def parts_of() -> tuple[str, ...]:
    """The parts in the order in which they are taken up."""
    return tuple(parts[0] for parts in STAGES)


def _stage(sheet: Sheet, firsts: Mapping[str, Operation | None], work: Work) -> int:
    name = sheet.setup.name
    first = firsts[name] or _first(name, usual_work())
    stage = next((parts[0] for parts in STAGES if first is not None and first.part in parts), "")
    order = ON_THE_NECK if BUILT_ON in work.operations else parts_of()
    return order.index(stage) if stage in order else len(order)
