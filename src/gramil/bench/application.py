"""The application: every page of the bench at its address, behind the guard."""

from collections.abc import Callable, Iterable
from functools import partial
from importlib.resources import files
from pathlib import Path
from typing import TYPE_CHECKING

from starlette.applications import Starlette
from starlette.middleware.gzip import GZipMiddleware
from starlette.requests import Request
from starlette.responses import PlainTextResponse, Response
from starlette.routing import Mount, Route
from starlette.staticfiles import StaticFiles
from starlette.types import ASGIApp

from gramil.bench.guard import Guard
from gramil.bench.held_drawings import HeldDrawings
from gramil.bench.held_plans import HeldPlans
from gramil.bench.later_pages import later_pages
from gramil.bench.long_work import LongWorks
from gramil.bench.open_instruments import OpenInstruments
from gramil.bench.page_request import Missing, PageRequest, endpoint
from gramil.bench.pages import pairing_page
from gramil.bench.sessions import Clock, Sessions
from gramil.bench.shop_record import ShopRecord

if TYPE_CHECKING:
    from gramil.bench.pages import (
        air_page,
        anew_page,
        beginning,
        came_in_page,
        card_page,
        chosen_page,
        correcting,
        cost_page,
        demonstration,
        describe_page,
        drawing_page,
        figures_page,
        files_page,
        find_page,
        first_page,
        if_glued_page,
        instrument_page,
        labels_page,
        new_shop_page,
        noting,
        operations_page,
        pack_page,
        part_page,
        photograph_files,
        photograph_page,
        picture_pages,
        place_page,
        plan_page,
        print_page,
        put_back_page,
        readback_page,
        record_page,
        return_page,
        revisions_page,
        sheet_page,
        standing_page,
        stock_acts_page,
        stock_form_page,
        stock_page,
        today_page,
        tool_form_page,
        tools_page,
        top_page,
        turn_page,
        weeks_page,
    )
else:
    # the same names: two score modules, of which the first page needs one
    globals().update({name: pages for name, pages in later_pages().items() if name not in globals()})

ShelfPage = Callable[[PageRequest, OpenInstruments], Response]

GETS: tuple[tuple[str, ShelfPage], ...] = (
    ("/", first_page.first_page),
    ("/new", beginning.new_page),
    ("/new/came-in", came_in_page.came_in_page),
    ("/find", find_page.find_page),
    ("/keys", find_page.keys_page),
    ("/today", today_page.today_page),
    ("/weeks", weeks_page.weeks_page),
    ("/weeks.pdf", weeks_page.printed_weeks),
    ("/weeks.ics", weeks_page.weeks_calendar),
    ("/stock", stock_page.stock_page),
    ("/stock/form", stock_form_page.blank_page),
    ("/stock/remove", stock_form_page.remove_blank_page),
    ("/stock/labels.pdf", labels_page.labels_file),
    ("/tools", tools_page.tools_page),
    ("/tools/form", tool_form_page.tool_page),
    ("/tools/remove", tool_form_page.remove_page),
    ("/air", air_page.air_page),
    ("/air/readings", correcting.readings_page),
    ("/air/reading", correcting.reading_page),
    ("/air/weighings", correcting.weighings_page),
    ("/air/weighing", correcting.weighing_page),
    ("/record", record_page.record_page),
    ("/record/undo", record_page.undo_page),
    ("/record/copy", record_page.copy_of_record),
    ("/record/put-back", put_back_page.copies_page),
    ("/instrument/{instrument}/measured/{measurement}", correcting.measurement_page),
    ("/instrument/{instrument}/operation/{operation}/not-done", correcting.not_done_page),
    ("/instrument/{instrument}/anew/{piece}", anew_page.anew_page),
    ("/record/files", files_page.record_files),
    ("/operations", operations_page.operations_page),
    ("/operations/remove", operations_page.remove_operations_page),
    ("/if-glued", if_glued_page.if_glued_page),
    ("/instrument/{instrument}/cost", cost_page.cost_page),
    ("/instrument/{instrument}/quote.pdf", cost_page.quote_file),
    ("/instrument/{instrument}/files", files_page.files_page),
    ("/instrument/{instrument}/description.toml", files_page.description_file),
    ("/instrument/{instrument}/made.toml", files_page.made_file),
    ("/instrument/{instrument}/pack", pack_page.pack_page),
    ("/instrument/{instrument}/pack.zip", pack_page.pack_file),
    ("/instrument/{instrument}", instrument_page.instrument_page),
    ("/instrument/{instrument}/cut", instrument_page.cut_page),
    ("/instrument/{instrument}/between", instrument_page.measured_part),
    ("/instrument/{instrument}/part", part_page.part_page),
    ("/instrument/{instrument}/describe", describe_page.describe_page),
    ("/instrument/{instrument}/found", part_page.found_page),
    ("/instrument/{instrument}/moved", instrument_page.moved_page),
    ("/instrument/{instrument}/figure", card_page.card_page),
    ("/instrument/{instrument}/turn", turn_page.turn_page),
    ("/instrument/{instrument}/figures", figures_page.figures_page),
    ("/instrument/{instrument}/sheets", sheet_page.sheets_page),
    ("/instrument/{instrument}/sheet/{setup}", sheet_page.sheet_page),
    ("/instrument/{instrument}/operation/{operation}", sheet_page.work_page),
    ("/instrument/{instrument}/verdict", sheet_page.verdict_part),
    ("/instrument/{instrument}/print", print_page.print_page),
    ("/instrument/{instrument}/print/{file}", print_page.printed_file),
    ("/instrument/{instrument}/print-chosen", chosen_page.printed_chosen),
    ("/instrument/{instrument}/revisions", revisions_page.revisions_page),
    ("/instrument/{instrument}/compare", revisions_page.compare_page),
    ("/instrument/{instrument}/return/{revision}", return_page.return_page),
    ("/instrument/{instrument}/slots-measured", readback_page.slots_readback),
    ("/instrument/{instrument}/set-up-measured", readback_page.set_up_readback),
    ("/instrument/{instrument}/heights", picture_pages.heights_page),
    ("/instrument/{instrument}/cents", picture_pages.cents_page),
    ("/instrument/{instrument}/top", top_page.top_page),
    ("/shop/new", new_shop_page.new_shop_page),
    ("/plan", plan_page.plan_page),
    ("/drawing", drawing_page.drawings_page),
    ("/drawing/{drawing}", drawing_page.drawing_page),
    ("/picture", photograph_page.pictures_page),
    ("/picture/strips.pdf", photograph_files.strips_file),
    ("/picture/frame.pdf", photograph_files.frame_file),
    ("/picture/{plan}", photograph_page.plan_page),
    ("/picture/{plan}/shown-{number}.jpg", photograph_files.shown_file),
    ("/picture/{plan}/straightened.png", photograph_files.straightened_file),
)
POSTS: tuple[tuple[str, ShelfPage], ...] = (
    ("/shop/new", new_shop_page.make_shop),
    ("/plan", plan_page.take_plan),
    ("/plan/seen", plan_page.seen_plan),
    ("/drawing", drawing_page.send_drawing),
    ("/drawing/{drawing}", drawing_page.take_drawing),
    ("/picture", photograph_page.send_pictures),
    ("/picture/{plan}", photograph_page.go_on),
    ("/picture/{plan}/forget", photograph_page.forget_plan),
    ("/new", beginning.make_new),
    ("/new/came-in", came_in_page.take_in),
    ("/new/file", files_page.new_from_file),
    ("/demo", demonstration.lay_out_demo),
    ("/unit", beginning.swap_unit),
    ("/air/place", air_page.add_named_place),
    ("/air/reading", air_page.write_reading),
    ("/air/log", air_page.bring_in_log),
    ("/air/reading/correct", correcting.correct_reading),
    ("/air/weighing", correcting.correct_weight),
    ("/record/undo", record_page.take_back),
    ("/record/put-back", put_back_page.put_back),
    ("/operations", operations_page.keep_operations),
    ("/operations/remove", operations_page.remove_operations),
    ("/instrument/{instrument}/files", files_page.try_description),
    ("/instrument/{instrument}/measured/{measurement}", correcting.correct_measured),
    ("/instrument/{instrument}/operation/{operation}/not-done", correcting.take_done_back),
    ("/instrument/{instrument}/anew/{piece}", anew_page.begin_anew),
    ("/air/weigh", air_page.weigh),
    ("/air/lay", air_page.lay),
    ("/stock/form", stock_form_page.keep_blank),
    ("/stock/remove", stock_form_page.remove_from_stock),
    ("/stock/promise", stock_page.promise_found),
    ("/stock/cut", stock_acts_page.cut_into_parts),
    ("/stock/join", stock_acts_page.count_together),
    ("/stock/move", stock_acts_page.lay_elsewhere),
    ("/stock/made", stock_acts_page.keep_part),
    ("/weeks", weeks_page.keep_this_week),
    ("/air/place/known", place_page.keep_place),
    ("/instrument/{instrument}/mark", standing_page.mark_it),
    ("/stock/release", stock_page.take_back),
    ("/tools/jig", tools_page.check_jig),
    ("/tools/saw", tools_page.try_saw),
    ("/tools/bring-in", tools_page.bring_in),
    ("/tools/form", tool_form_page.keep_tool),
    ("/tools/remove", tool_form_page.remove_tool),
    ("/instrument/{instrument}/pack", pack_page.begin_pack),
    ("/instrument/{instrument}/pack/stop", pack_page.stop_pack),
    ("/instrument/{instrument}/top/stop", top_page.stop_top),
    ("/instrument/{instrument}/keep", instrument_page.keep),
    ("/instrument/{instrument}/return/{revision}", return_page.return_to_it),
    ("/instrument/{instrument}/operation/{operation}", noting.note_work),
    ("/instrument/{instrument}/sheet/{setup}/give", noting.give),
)
QUICK = 3
"""How hard pages are compressed: the hardest (9) takes four times as long for a fifteenth less."""


def application(record: ShopRecord, sessions: Sessions, clock: Clock, hosts: Iterable[str], lan: str = "") -> ASGIApp:
    """The bench for a record; `hosts` are its own Host headers, `lan` is the address for phones (or empty)."""
    open_instruments = OpenInstruments()
    routes = [
        *(_route(path, page, open_instruments, "GET") for path, page in GETS),
        *(_route(path, page, open_instruments, "POST") for path, page in POSTS),
        Route("/pair", pairing_page.pairing_page, methods=["GET"]),
        Route("/pair/{code}", pairing_page.pairing_page, methods=["GET"]),
        Route("/pair", pairing_page.pair, methods=["POST"]),
        Route("/pair/out", pairing_page.put_out, methods=["POST"]),
        Mount("/static/fonts", StaticFiles(directory=_folder("fonts"))),
        Mount("/static", StaticFiles(directory=_folder("bench", "static"))),
        Route("/{anywhere:path}", endpoint(_nothing), methods=["GET", "POST"]),
    ]
    inner = Starlette(routes=routes, exception_handlers={Exception: _own_fault})
    inner.state.record, inner.state.sessions = record, sessions
    inner.state.clock, inner.state.lan, inner.state.works = clock, lan, LongWorks()
    inner.state.plans, inner.state.drawings = HeldPlans(), HeldDrawings()
    return Guard(GZipMiddleware(inner, compresslevel=QUICK), sessions, frozenset(each.lower() for each in hosts))


def _route(path: str, page: ShelfPage, open_instruments: OpenInstruments, method: str) -> Route:
    return Route(path, endpoint(partial(_with, page, open_instruments)), methods=[method], name=f"{method} {path}")


def _with(page: ShelfPage, open_instruments: OpenInstruments, request: PageRequest) -> Response:
    return page(request, open_instruments)


def _nothing(_: PageRequest) -> Response:
    raise Missing("page")


async def _own_fault(_: Request, __: Exception) -> Response:
    """What the page says about a bug in the program; the traceback goes to the terminal."""
    return PlainTextResponse(
        "The bench made a mistake of its own; nothing was saved by it. Go back and try again.", 500
    )


def _folder(*names: str) -> Path:
    """A folder of the installed package."""
    return Path(str(files("gramil").joinpath(*names)))
