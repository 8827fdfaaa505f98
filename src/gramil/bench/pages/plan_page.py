"""A plan typed off paper: tables whose curve appears as they are typed, taken into an instrument or a new one."""

from collections.abc import Iterator
from dataclasses import replace

from starlette.responses import Response

from gramil.acts.descriptions import begin
from gramil.acts.from_plan import taken_into
from gramil.bench.field_words import at_field
from gramil.bench.open_instruments import OpenInstruments
from gramil.bench.page_request import PageRequest, go
from gramil.bench.pages.files_page import tried
from gramil.bench.pages.tools_page import unit_of_shop
from gramil.bench.plan_picture import plan_picture
from gramil.bench.plan_typed import COLUMNS, TypedPlan, meant_line, read_plan, typed_plan, with_half_width
from gramil.description.plan.parts import PlanParts
from gramil.description.reading import parse_description
from gramil.description.whole.offsets import question_about_offset
from gramil.description.whole.starting import START, STARTING_POINTS
from gramil.description.whole.writing import whole_description
from gramil.faults import Fault, MakersFault
from gramil.measure import LengthUnit, show
from gramil.shop.instruments import instruments
from gramil.shop.shop_in_store import shop_description
from gramil.store.opening import Store

TITLE = "Off a plan"


def plan_page(request: PageRequest, _: OpenInstruments) -> Response:
    """The tables; with a form, what was typed stands in them."""
    with request.record.opened() as store:
        unit = unit_of_shop(request, store)
        return shown_plan(request, store, typed_plan(request, unit), unit)


def seen_plan(request: PageRequest, _: OpenInstruments) -> Response:
    """The part of the page that follows what is typed: the curve, and what is asked about."""
    with request.record.opened() as store:
        unit = unit_of_shop(request, store)
    plan = typed_plan(request, unit)
    return request.page("plan_seen.html", **_seen(plan, unit))


def take_plan(request: PageRequest, open_instruments: OpenInstruments) -> Response:
    """What the maker does with what is typed: an answer to what is asked, or taken into an instrument."""
    with request.record.opened() as store:
        unit = unit_of_shop(request, store)
        plan = typed_plan(request, unit)
        try:
            if request.one("mean") or request.one("right"):
                return shown_plan(request, store, _answered(request, plan, unit), unit)
            if request.one("into"):
                return _into(request, open_instruments, store, plan)
            if request.one("begin"):
                return _begun(request, store, plan, unit)
        except MakersFault as fault:
            found = tuple(replace(each, line=None, file=None) for each in fault.faults)
            return shown_plan(request, store, plan, unit, found)
        return shown_plan(request, store, plan, unit)


def shown_plan(
    request: PageRequest,
    store: Store,
    plan: TypedPlan,
    unit: LengthUnit,
    faults: tuple[Fault, ...] = (),
    told: tuple[str, ...] = (),
) -> Response:
    """The page with what is typed; `told` is what was taken and what was left where a drawing gave it."""
    return request.page(
        "plan.html",
        422 if faults else 200,
        title=TITLE,
        faults=faults,
        told=told,
        columns=COLUMNS,
        starts=STARTING_POINTS,
        name=request.one("name"),
        start=request.one("start") or "middle",
        at_work=[each for each in instruments(store) if each.standing != "done"],
        **_seen(plan, unit),
    )


def _seen(plan: TypedPlan, unit: LengthUnit) -> dict[str, object]:
    return {
        "plan": plan,
        "picture": plan_picture(plan),
        "asked": list(_asked(plan, unit)),
        "unit": unit,
    }


def _asked(plan: TypedPlan, unit: LengthUnit) -> Iterator[tuple[int, str, str]]:
    """Each half-width that stands out: its row, what is asked, and what the others have there."""
    for each in plan.doubts:
        yield each.row, question_about_offset(each.place, each.others, unit), show(each.others, unit)


def _answered(request: PageRequest, plan: TypedPlan, unit: LengthUnit) -> TypedPlan:
    """Answers to what was asked about: the half-width is set as the other stations suggest, or noted as meant."""
    rows = {str(each.row): each for each in plan.doubts}
    fields, meant = plan.fields, plan.meant
    if (right := rows.get(request.one("right"))) is not None:
        fields = {**fields, "outline": with_half_width(fields["outline"], right.row, right.others, unit)}
    if (kept := rows.get(request.one("mean"))) is not None:
        meant = meant | {meant_line(kept.place, unit)}
    return read_plan(fields, meant, unit)


def _sound(plan: TypedPlan) -> PlanParts:
    """What is typed, if all of it can be read and nothing is asked. Raises MakersFault."""
    if plan.faults:
        raise MakersFault(plan.faults)
    if plan.doubts:
        raise MakersFault.of(
            "a half-width stands out", remedy="say below the drawing whether it is meant", where="outline"
        )
    return plan.parts


def _into(request: PageRequest, open_instruments: OpenInstruments, store: Store, plan: TypedPlan) -> Response:
    """What it would move on an instrument."""
    held = open_instruments.held(store, request.number("into"))
    taken = taken_into(held.revision.text, _sound(plan), held.shop, plan.front_at)
    return tried(request, open_instruments, store, held, taken.text, taken.told)


def _begun(request: PageRequest, store: Store, plan: TypedPlan, unit: LengthUnit) -> Response:
    """A new instrument: a starting point with the plan in it."""
    parts, name = _sound(plan), request.one("name")
    with at_field("name"):
        if not name:
            raise MakersFault.of("the new instrument has no name", remedy="give it one")
    answers = {"instrument.name": name, "instrument.units": unit, START: request.one("start") or "middle"}
    text = whole_description(answers, () if parts.outline is None else parts.outline.stations)
    if not parts.empty:
        text = taken_into(text, parts, shop_description(store), plan.front_at).text
    name = parse_description(text).instrument.instrument.name
    made = begin(store, name, text, replace(request.hand, why="off a plan"))
    return go(f"/instrument/{made.id}")
