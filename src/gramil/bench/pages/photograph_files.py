"""The files of a plan's page of pictures: strips or a frame to lay round it, a picture, and the plan as it was read."""

from starlette.responses import Response

from gramil.bench.field_words import at_field
from gramil.bench.held_plans import HeldPlan
from gramil.bench.open_instruments import OpenInstruments
from gramil.bench.page_request import Missing, PageRequest, whole_number
from gramil.bench.pages.tools_page import unit_of_shop
from gramil.bench.tracing import edge_or_line, points_in, trace_inputs, typed_in
from gramil.shop.shop_in_store import shop_description


def plan_of(request: PageRequest) -> HeldPlan:
    """The plan that the address names. Raises Missing if it is no longer held."""
    found = request.plans.found(request.words["plan"])
    if found is None:
        raise Missing("picture: pictures are held only while they are traced, so send it again. There")
    return found


def strips_file(request: PageRequest, _: OpenInstruments) -> Response:
    """The strips on the shop's paper."""
    from gramil.writers.photo_strips import strips_pdf

    with request.record.opened() as store:
        own = shop_description(store).shop.shop
    return Response(strips_pdf(own.paper, unit=own.units), media_type="application/pdf")


def frame_file(request: PageRequest, _: OpenInstruments) -> Response:
    """A frame of the size that is asked for."""
    from gramil.photographs.pieces import frame_sides
    from gramil.writers.photo_strips import frame_pdf

    with request.record.opened() as store:
        unit = unit_of_shop(request, store)
    with at_field("frame"):
        sides = frame_sides(request.one("frame"), unit)
    return Response(frame_pdf(*sides), media_type="application/pdf")


def shown_file(request: PageRequest, _: OpenInstruments) -> Response:
    """A picture as a browser is shown it."""
    plan, number = plan_of(request), whole_number(request.words["number"])
    if number is None or not 1 <= number <= len(plan.shown):
        raise Missing("picture")
    return Response(plan.shown[number - 1], media_type="image/jpeg")


def straightened_file(request: PageRequest, _: OpenInstruments) -> Response:
    """The plan as it was read: straightened, with the line that was followed."""
    from gramil.photographs.plan import grounds, traced
    from gramil.photographs.straightened import straightened_png

    plan, typed = plan_of(request), typed_in(request)
    with request.record.opened() as store:
        unit = unit_of_shop(request, store)
    ground = plan.ground((typed.of_ground, unit), lambda: grounds(plan.pictures, trace_inputs(typed, unit)))
    points = points_in(typed.points)
    found = traced(ground, points, edge_or_line(typed)) if points else None
    return Response(straightened_png(ground, found), media_type="image/png")
