"""A piece of stock written down or changed by form, with faults beside their fields; removed after a question."""

from collections.abc import Mapping
from dataclasses import replace

from starlette.responses import Response

from gramil.acts.wood import keep_wood, strike_wood
from gramil.air.places import places
from gramil.bench.open_instruments import OpenInstruments
from gramil.bench.page_request import Missing, PageRequest, go, whole_number
from gramil.bench.pages.correcting import Correction, question_page
from gramil.bench.pages.stock_acts_page import PARTS_EXAMPLE
from gramil.bench.pages.tools_page import unit_of_shop
from gramil.bench.row_form import Entry
from gramil.description.marks import bounds_of
from gramil.description.records import SIZES
from gramil.description.shop.tables import BlankTable
from gramil.faults import Fault, MakersFault
from gramil.formatter import shown
from gramil.measure import LengthUnit, read_length
from gramil.now.costs import cost_written
from gramil.shop.stock import Blank, blanks
from gramil.store.items import length_text
from gramil.store.opening import Store

BOUNDS = {key: bounds_of(BlankTable, key) for key in (*SIZES, "count")}
"""The least and the most of each, as a file takes them; sizes in mm."""
NEW = Blank("", "", 0.0, 0.0, 0.0)


def blank_page(request: PageRequest, _: OpenInstruments) -> Response:
    """The form of a new piece, or of an existing one (`blank`)."""
    with request.record.opened() as store:
        blank = _blank(request, store)
        return _form(request, store, blank, _typed(blank, store, unit_of_shop(request, store)))


def _blank(request: PageRequest, store: Store) -> Blank:
    if not request.one("blank"):
        return NEW
    found = next((each for each in blanks(store) if str(each.id) == request.one("blank")), None)
    if found is None:
        raise Missing("piece of that number")
    return found


def _typed(blank: Blank, store: Store, unit: LengthUnit) -> Mapping[str, str]:
    """What a piece's fields hold; a length in mm is shown exactly as it is kept."""
    names = {each.id: each.name for each in places(store)}
    sizes = {key: _size(getattr(blank, key), unit) for key in SIZES}
    return {
        "name": blank.name,
        "wood": blank.wood,
        **sizes,
        "count": str(blank.count),
        "grain": blank.grain,
        "place": names.get(blank.place or 0, ""),
        "cost": "" if blank.cost is None else f"{blank.cost:g}",
        "note": blank.note,
    }


def _size(length: float, unit: LengthUnit) -> str:
    if not length:
        return ""
    return length_text(length).removesuffix(" mm").removesuffix(".0") if unit == "mm" else length_text(length)


def _form(
    request: PageRequest, store: Store, blank: Blank, typed: Mapping[str, str], faults: tuple[Fault, ...] = ()
) -> Response:
    found = {each.where: str(replace(each, where="")) for each in faults}
    unit, named = unit_of_shop(request, store), [each.name for each in places(store)]
    lies = (("", "not noted"), *((name, name) for name in named))
    words = {
        "name": ("Name or number written on it", True, "", ()),
        "wood": ("Wood", True, "", ()),
        "length": (f"Length along the grain, {unit}", True, "", ()),
        "width": (f"Width, {unit}", True, "", ()),
        "thickness": (f"Thickness, {unit}", True, "", ()),
        "count": ("How many alike", True, "", ()),
        "grain": ("Face and grain", False, "Such as: quartersawn, pith side marked, run-out 3 in 100.", ()),
        "place": ("Where it lies", False, "", lies),
        "cost": ("What one cost", False, "", ()),
        "note": ("Note", False, "", ()),
    }
    fields = [
        Entry(key, said, typed.get(key, ""), choices, needed, hint, found.get(key, ""))
        for key, (said, needed, hint, choices) in words.items()
    ]
    return request.page(
        "blank.html",
        422 if faults else 200,
        title=f"Change {blank.name}" if blank.id else "A piece more",
        blank=blank,
        entries=fields,
        faults=[each for each in faults if each.where not in words],
        count=len(faults),
        version=request.one("version", str(blank.version)),
        named=named,
        shop_unit=unit,
        alike=[each for each in blanks(store) if each.id != blank.id and _sort(each) == _sort(blank)],
        example=PARTS_EXAMPLE,
    )


def _sort(blank: Blank) -> tuple[object, ...]:
    """What makes two pieces alike, so that they can be counted together."""
    return (blank.wood, blank.grain, blank.length, blank.width, blank.thickness)


def keep_blank(request: PageRequest, _: OpenInstruments) -> Response:
    """Save the piece as typed; if anything is wrong, it is said beside its field and nothing is saved. Sent twice, it
    is added once.
    """
    with request.record.opened() as store:
        blank = _blank(request, store)
        typed = {key: texts[-1].strip() for key, texts in request.form.items()}
        try:
            keep_wood(store, _read(request, store, blank, typed), request.hand)
        except MakersFault as fault:
            return _form(request, store, blank, typed, fault.faults)
    return go("/stock")


def _read(request: PageRequest, store: Store, blank: Blank, typed: Mapping[str, str]) -> Blank:
    """The piece as typed. Raises MakersFault with every fault, each with its field."""
    faults: list[Fault] = []
    unit, named = unit_of_shop(request, store), {each.name: each.id for each in places(store)}
    sizes = {key: _length(typed.get(key, ""), key, unit, faults) for key in SIZES}
    count, cost = typed.get("count", "1") or "1", typed.get("cost", "").replace(",", ".")
    faults += [Fault(None, key, "nothing is written here") for key in ("name", "wood") if not typed.get(key)]
    alike = whole_number(count)
    if alike is None or not BOUNDS["count"].holds(alike):
        faults.append(Fault(None, "count", f'"{count}" is no count', "", "write a whole number"))
    if cost and cost_written(cost) is None:
        faults.append(Fault(None, "cost", f'"{cost}" is no amount', "", "write a number such as 12.5"))
    if blank.id and typed.get("version") != str(blank.version):
        faults.append(Fault(None, "", "somebody else changed it meanwhile", "nothing was saved", "open it again"))
    if faults:
        raise MakersFault(faults)
    return replace(
        blank,
        name=typed["name"],
        wood=typed["wood"],
        length=sizes["length"],
        width=sizes["width"],
        thickness=sizes["thickness"],
        count=int(count),
        grain=typed.get("grain", ""),
        place=named.get(typed.get("place", "")),
        cost=cost_written(cost),
        note=typed.get("note", ""),
    )


def _length(text: str, key: str, unit: LengthUnit, faults: list[Fault]) -> float:
    try:
        length = float(read_length(text.replace(",", "."), unit))
    except ValueError as error:
        faults.append(Fault(None, key, str(error) if text else "nothing is written here"))
        return 0.0
    if not BOUNDS[key].holds(length):
        most = shown(BOUNDS[key].most, "mm", unit)
        faults.append(Fault(None, key, f"read {text}", f"more than 0, at most {most}"))
    return length


def remove_blank_page(request: PageRequest, _: OpenInstruments) -> Response:
    """The question before a piece is removed from the list."""
    with request.record.opened() as store:
        blank = _blank(request, store)
    wrong = Correction(
        f"Remove {blank.name}?",
        blank.wood,
        (),
        (("blank", str(blank.id)), ("version", str(blank.version))),
        "/stock/remove",
        "/stock",
        "Remove it",
        "It is no longer listed. A piece that was ever promised stays: set its count instead.",
    )
    return question_page(request, wrong)


def remove_from_stock(request: PageRequest, _: OpenInstruments) -> Response:
    """Remove a piece, if it is still as it was seen."""
    with request.record.opened() as store:
        seen = replace(_blank(request, store), version=request.number("version"))
        strike_wood(store, seen, request.hand)
    return go("/stock")
