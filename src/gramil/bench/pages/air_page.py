"""Wood and air: each place's air with its chart and the band for gluing, the meter written down, pieces' moisture."""

import re
from datetime import datetime
from html import unescape

from starlette.responses import Response

from gramil.acts.air import bring_in_air, name_place, read_meter
from gramil.acts.wood import lay as lay_down
from gramil.acts.wood import weigh as note_weight
from gramil.air.air_bands import limits_of
from gramil.air.air_in_store import places_in_store
from gramil.air.air_of_places import STALE, PlaceAir, Places
from gramil.air.air_view import HOURS_HELD, views
from gramil.air.pieces import PIECE, weight_tells
from gramil.air.pieces_now import pieces_now
from gramil.air.places import places
from gramil.air.readiness import gluing_band, gluing_humidity, readiness, when
from gramil.bench.ages import ago
from gramil.bench.field_words import all_read, at_field, at_fields_of_air
from gramil.bench.measuring import bare
from gramil.bench.numbers import meter_of
from gramil.bench.open_instruments import OpenInstruments
from gramil.bench.page_request import PageRequest, go
from gramil.bench.svg_in_page import inlined
from gramil.faults import MakersFault
from gramil.measure import read_mass
from gramil.shop.shop_in_store import shop_description
from gramil.store.items import items, shop_degrees
from gramil.wood.air_log import read_air_log
from gramil.wood.log_words import report_lines
from gramil.writers.wood_charts import air_svg

DAYS = 28.0
"""Days of air that a chart shows."""


def air_page(request: PageRequest, _: OpenInstruments) -> Response:
    """Every place and every piece whose moisture is followed."""
    now = request.now.replace(tzinfo=None)
    with request.record.opened() as store:
        described = shop_description(store)
        known = places_in_store(store, described, request.now, DAYS)
        named = places(store)
        weighed = [each.name for each in items(store, PIECE) if weight_tells(each)]
    band, aim = gluing_humidity(described.shop), limits_of(described.shop)["gluing_humidity"]
    charts = {
        each.name: inlined(air_svg(each, _drawn_to(each, now), DAYS, band))
        for each in known.known.values()
        if len(each.history.times) > 1
    }
    return request.page(
        "air.html",
        degrees=described.shop.shop.temperature,
        title="Wood and air",
        places=named,
        views={each.place.name: each for each in views(known, now, band, aim)},
        charts={name: (chart, _words(chart)) for name, chart in charts.items()},
        band=band,
        aim=aim,
        ages={each.name: ago(now, each.last) for each in known.known.values()},
        stale=ago(now, known.last) if known.last is not None and now - known.last > STALE else "",
        held=HOURS_HELD,
        gluing=known.gluing,
        pieces=_pieces(request, known, now),
        weighed=weighed,
        told=request.session.told if request.one("told") else (),
    )


def _drawn_to(place: PlaceAir, now: datetime) -> datetime:
    """Where a place's chart ends: now, or at the last reading if that is too old to stand for now."""
    return now if now - place.last < STALE else place.last


def _words(chart: str) -> str:
    """The chart in words, for those who cannot see it."""
    found = re.search("<desc>(.*?)</desc>", chart, re.DOTALL)
    return unescape(found[1]) if found else ""


def _pieces(request: PageRequest, known: Places, now: datetime) -> list[tuple[str, str, str, str]]:
    """Each piece: name, wood, moisture, and when it is ready; none if no air was read."""
    with request.record.opened() as store:
        described = shop_description(store)
    if not described.shop.piece or not known.known:
        return []
    band = gluing_band(described.shop, known, now)
    rows = []
    for each in pieces_now(described, known, now).known:
        found, mean = readiness(each, known, now, band), each.state.mean
        best = found.best
        ready = "settled" if found.settled else f"{best.place}: {when(best.ready, now)}" if best else "in no place here"
        moisture = f"{mean.likely:.1f} % ({mean.least:.1f} to {mean.most:.1f})"
        rows.append((each.row.name, each.row.wood, moisture, ready))
    return rows


def add_named_place(request: PageRequest, _: OpenInstruments) -> Response:
    """A new place."""
    with request.record.opened() as store, at_field("name"):
        name_place(store, request.one("name"), request.hand)
    return go("/air")


def write_reading(request: PageRequest, _: OpenInstruments) -> Response:
    """What the meter says, written down now."""
    with request.record.opened() as store:
        humidity, temperature = meter_of(request, shop_degrees(store))
        with at_fields_of_air():
            read_meter(store, request.one("place"), temperature, humidity, request.hand)
    return go(request.one("back") if request.one("back") in ("/", "/air") else "/air")


def weigh(request: PageRequest, _: OpenInstruments) -> Response:
    """What a piece weighs now."""
    (grams,) = all_read(mass=lambda: read_mass(bare(request.one("mass"))))
    with request.record.opened() as store:
        note_weight(store, request.one("piece"), grams, request.hand)
    return go("/air#pieces")


def lay(request: PageRequest, _: OpenInstruments) -> Response:
    """That a piece lies in a place from now on."""
    with request.record.opened() as store:
        lay_down(store, request.one("piece"), request.one("place"), request.hand)
    return go("/air#pieces")


def bring_in_log(request: PageRequest, _: OpenInstruments) -> Response:
    """Bring in a logger's file, whole or not at all."""
    text, name = request.one("log"), request.one("place")
    if not text:
        raise MakersFault.of("no file was chosen", remedy="choose the file that the logger wrote", where="log")
    with at_field("log"):
        history, report = read_air_log(text, "the logger's file")
    with request.record.opened() as store:
        bring_in_air(store, name, history, request.hand, file="from the bench")
    request.session.told = tuple(report_lines(history, report, "The logger's file"))
    return go("/air?told=1#told")
