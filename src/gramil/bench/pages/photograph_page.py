"""From a picture of the plan to the body's outline: pictures sent, points laid on them, the line followed and told."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING

from starlette.responses import Response

from gramil.bench.field_words import at_field
from gramil.bench.held_plans import HeldPlan
from gramil.bench.open_instruments import OpenInstruments
from gramil.bench.page_request import Missing, PageRequest, go, whole_number
from gramil.bench.pages.photograph_files import plan_of
from gramil.bench.pages.plan_page import shown_plan
from gramil.bench.pages.tools_page import unit_of_shop
from gramil.bench.plan_typed import fields_of, read_plan
from gramil.bench.tracing import KNOWN, Typed, edge_or_line, laid_places, points_in, trace_inputs, typed_in
from gramil.description.reading import parse_description
from gramil.description.self_contained import with_outline
from gramil.faults import Fault, MakersFault
from gramil.measure import LengthUnit, show
from gramil.shop.instruments import Instrument, instruments, revision
from gramil.store.opening import Store

if TYPE_CHECKING:
    from gramil.photographs.plan import Grounds, Laid, TracedPlan

TITLE = "From a picture"
SCALE_FIRST = (
    "A scan may be stretched one way: lay the two ends of a length that you know along the plan, then of one across "
    "it, and type both below."
)


@dataclass(frozen=True)
class Answer:
    """What the pictures gave: sentences about them, about the line, its path on the picture shown (SVG points), other
    lines as choices (what is said, number), the outline's keys, and how sure it is.
    """

    about: tuple[str, ...] = ()
    told: tuple[str, ...] = ()
    path: str = ""
    choices: tuple[tuple[str, int], ...] = ()
    keys: str = ""
    size: str = ""
    unsure: str = ""
    drafts: tuple[tuple[Instrument, str], ...] = ()
    faults: tuple[Fault, ...] = ()


def pictures_page(request: PageRequest, _: OpenInstruments) -> Response:
    """How to take the picture, the form that sends it, and the plans that are held."""
    return _sending(request)


def send_pictures(request: PageRequest, _: OpenInstruments) -> Response:
    """Holds the pictures that were sent, of one plan, and leads to them."""
    sent = [(each.name, each.content) for each in request.pictures if each.content]
    try:
        with at_field("picture"):
            plan = request.plans.hold(sent, request.now, whole_number(request.one("page")))
    except MakersFault as fault:
        return _sending(request, fault.faults)
    return go(f"/picture/{plan.key}{'?laid=nothing' if plan.flat else ''}")


def _sending(request: PageRequest, faults: tuple[Fault, ...] = ()) -> Response:
    """The form that sends pictures, its sizes suggested in the shop's unit."""
    with request.record.opened() as store:
        unit = unit_of_shop(request, store)
    held = request.plans.all()
    return request.page(
        "photograph_send.html", 422 if faults else 200, title=TITLE, plans=held, faults=faults, unit=unit
    )


def forget_plan(request: PageRequest, _: OpenInstruments) -> Response:
    """Lets a plan's pictures go."""
    request.plans.forget(request.words["plan"])
    return go("/picture")


def plan_page(request: PageRequest, _: OpenInstruments) -> Response:
    """The picture with its points, and what comes of them; with `take` the other line is taken first."""
    plan, typed = plan_of(request), typed_in(request)
    shown = request.number("shown", 1)
    if not 1 <= shown <= len(plan.names):
        raise Missing("picture of that number")
    with request.record.opened() as store:
        unit = unit_of_shop(request, store)
        try:
            if request.one("take"):
                typed = _taken(plan, typed, unit, request.number("take"))
                return go(f"/picture/{plan.key}?{typed.query}&shown={shown}")
            answer = _answer(store, plan, typed, unit, shown - 1)
        except MakersFault as fault:
            answer = Answer(faults=fault.faults)
    return request.page(
        "photograph.html",
        422 if answer.faults else 200,
        title=TITLE,
        plan=plan,
        typed=typed,
        shown=shown,
        size=plan.size(shown - 1),
        answer=answer,
        known=KNOWN,
        unit=unit,
    )


def go_on(request: PageRequest, _: OpenInstruments) -> Response:
    """Outline, braces, hole, bridge and head as they were laid, on the page of the plan, to be put right and taken."""
    from gramil.description.plan.laid import laid_plan
    from gramil.photographs.plan import traced

    plan, typed = plan_of(request), typed_in(request)
    with request.record.opened() as store:
        unit = unit_of_shop(request, store)
        ground = _ground(plan, typed, unit)
        with at_field("points"):
            found = traced(ground, _points(typed), edge_or_line(typed))
        laid = laid_plan(ground, found.outline, laid_places(typed, ground, unit))
        on_page = read_plan(fields_of(laid.parts, unit, laid.front_at), frozenset(), unit)
        outline = f"Outline: followed, within {show(found.outline.unsure, unit)}"
        return shown_plan(request, store, on_page, unit, told=(outline, *laid.told))


def _ground(plan: HeldPlan, typed: Typed, unit: LengthUnit) -> "Grounds":
    from gramil.photographs.plan import grounds

    asked = trace_inputs(typed, unit)
    return plan.ground((typed.of_ground, unit), lambda: grounds(plan.pictures, asked))


def _taken(plan: HeldPlan, typed: Typed, unit: LengthUnit, number: int) -> Typed:
    """The points moved onto another line that was found, counted from 1."""
    from gramil.photographs.choosing import moved_beside
    from gramil.photographs.plan import traced

    ground, points = _ground(plan, typed, unit), _points(typed)
    line = traced(ground, points, edge_or_line(typed)).line
    if not 1 <= number <= len(line.beside):
        raise MakersFault.of("that other line is not there any more", remedy="Follow the line again")
    return typed.with_points(moved_beside(ground, line, points, line.beside[number - 1]))


def _points(typed: Typed) -> "list[Laid]":
    with at_field("points"):
        return points_in(typed.points)


def _answer(store: Store, plan: HeldPlan, typed: Typed, unit: LengthUnit, shown: int) -> Answer:
    from gramil.description.plan.laid import laid_plan
    from gramil.photographs.keys import about_pictures
    from gramil.photographs.plan import traced

    if typed.laid == "nothing" and not typed.along and not typed.across and not typed.points:
        return Answer((SCALE_FIRST,))
    ground, points = _ground(plan, typed, unit), _points(typed)
    about = tuple(_with_bar(about_pictures(ground), typed))
    if not points:
        return Answer(about)
    try:
        with at_field("points"):
            found = traced(ground, points, edge_or_line(typed))
    except MakersFault as fault:
        return Answer(about, faults=fault.faults)
    try:
        beside = laid_plan(ground, found.outline, laid_places(typed, ground, unit)).told
    except MakersFault as fault:
        return Answer(about, faults=fault.faults)
    return _traced_page(store, ground, found, (*about, *(f"{line}." for line in beside)), unit, shown)


def _with_bar(about: Iterator[str], typed: Typed) -> Iterator[str]:
    yield from about
    if typed.laid != "nothing" and not typed.bar:
        yield "The bar was not measured: it is taken as printed. Measure it, and type it."


def _traced_page(
    store: Store, ground: "Grounds", found: "TracedPlan", about: tuple[str, ...], unit: LengthUnit, shown: int
) -> Answer:
    from gramil.photographs.keys import body_keys
    from gramil.photographs.keys import shown as in_unit

    outline = found.outline
    pixels = ground.in_file(shown, found.line.points)
    return Answer(
        about=about,
        told=tuple(f"{line}." for line in found.told if f"{line}." not in about),
        path=" ".join(f"{x:.1f},{y:.1f}" for x, y in pixels.tolist()),
        choices=tuple(_choices(found)),
        keys="\n".join(body_keys(outline, unit)),
        size=f"{in_unit(outline.length, unit)} long, {in_unit(outline.widest, unit)} wide",
        unsure=in_unit(outline.unsure, unit),
        drafts=tuple(_drafts(store, found)),
    )


def _choices(found: "TracedPlan") -> Iterator[tuple[str, int]]:
    for number, each in enumerate(found.line.beside[:4], start=1):
        x, y = each.stretch.middle
        yield f"Take the line {abs(each.off):.1f} mm beside it near ({x:.0f}, {y:.0f})", number


def _drafts(store: Store, found: "TracedPlan") -> Iterator[tuple[Instrument, str]]:
    """Each instrument that is at work with its description, this outline in it."""
    corners = [corner - 1 for corner in found.outline.corners]
    for each in instruments(store):
        if each.standing != "done":
            text = revision(store, each.id).text
            unit = parse_description(text).instrument.instrument.units
            yield each, with_outline(text, found.outline.points, corners, found.outline.unsure, unit)
