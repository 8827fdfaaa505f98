"""Wood and air: each place's air with its chart and the band for gluing, the meter written down, pieces' moisture."""

import re
from datetime import datetime
from html import unescape

from starlette.responses import Response

from gramil.acts.air import bring_in_air, name_place, read_meter
from gramil.acts.wood import lay as lay_down
from gramil.acts.wood import weigh as note_weight
from gramil.bench.ages import ago
from gramil.bench.asking import Asked, go
from gramil.bench.measuring import bare
from gramil.bench.numbers import number_of
from gramil.bench.shelf import Shelf
from gramil.bench.svg_in_page import inlined
from gramil.faults import MakersFault
from gramil.measure import read_mass
from gramil.shop.air_bands import limits_of
from gramil.shop.air_in_store import places_in_store
from gramil.shop.air_of_places import STALE, PlaceAir, Places
from gramil.shop.air_view import HOURS_HELD, views
from gramil.shop.items import items
from gramil.shop.on_hand import shop_description
from gramil.shop.pieces import PIECE, weight_tells
from gramil.shop.pieces_now import pieces_now
from gramil.shop.places import places
from gramil.shop.readiness import gluing_band, gluing_humidity, readiness, when
from gramil.wood.air_log import read_air_log
from gramil.wood.log_words import told
from gramil.writers.wood_charts import air_svg

DAYS = 28.0
"""Days of air that a chart shows."""


def air_page(asked: Asked, _: Shelf) -> Response:
    """Every place and every piece whose moisture is followed."""
    now = asked.now.replace(tzinfo=None)
    with asked.keeping.opened() as store:
        described = shop_description(store)
        known = places_in_store(store, described, asked.now, DAYS)
        named = places(store)
        weighed = [each.name for each in items(store, PIECE) if weight_tells(each)]
    band, aim = gluing_humidity(described.shop), limits_of(described.shop)["gluing_humidity"]
    charts = {
        each.name: inlined(air_svg(each, _drawn_to(each, now), DAYS, band))
        for each in known.known.values()
        if len(each.history.times) > 1
    }
    return asked.page(
        "air.html",
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
        pieces=_pieces(asked, known, now),
        weighed=weighed,
        told=asked.session.told if asked.one("told") else (),
    )


def _drawn_to(place: PlaceAir, now: datetime) -> datetime:
    """Up to when a place's chart goes: now, or the last reading where that is too old to stand for now."""
    return now if now - place.last < STALE else place.last


def _words(chart: str) -> str:
    """What a chart says of itself for who cannot see it."""
    found = re.search("<desc>(.*?)</desc>", chart, re.DOTALL)
    return unescape(found[1]) if found else ""


def _pieces(asked: Asked, known: Places, now: datetime) -> list[tuple[str, str, str, str]]:
    """Each piece: name, wood, moisture, and when it is ready; none where no air was read."""
    with asked.keeping.opened() as store:
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


def add_named_place(asked: Asked, _: Shelf) -> Response:
    """A new place."""
    with asked.keeping.opened() as store:
        name_place(store, asked.one("name"), asked.now, asked.session.who)
    return go("/air")


def write_reading(asked: Asked, _: Shelf) -> Response:
    """What the meter says, written down now."""
    temperature, humidity = number_of(asked, "temperature"), number_of(asked, "humidity")
    with asked.keeping.opened() as store:
        read_meter(store, asked.one("place"), temperature, humidity, asked.now, asked.session.who)
    return go(asked.one("back") if asked.one("back") in ("/", "/air") else "/air")


def weigh(asked: Asked, _: Shelf) -> Response:
    """What a piece weighs now."""
    grams = read_mass(bare(asked.one("mass")))
    with asked.keeping.opened() as store:
        note_weight(store, asked.one("piece"), grams, asked.now, asked.session.who)
    return go("/air#pieces")


def lay(asked: Asked, _: Shelf) -> Response:
    """That a piece lies in a place from now on."""
    with asked.keeping.opened() as store:
        lay_down(store, asked.one("piece"), asked.one("place"), asked.now, asked.session.who)
    return go("/air#pieces")


def bring_in_log(asked: Asked, _: Shelf) -> Response:
    """A logger's file, whole or not at all."""
    text, name = asked.one("log"), asked.one("place")
    if not text:
        raise MakersFault.of("no file was chosen", remedy="choose the file that the logger wrote")
    history, report = read_air_log(text, "the logger's file")
    with asked.keeping.opened() as store:
        bring_in_air(store, name, history, asked.now, file="from the bench", who=asked.session.who)
    asked.session.told = tuple(told(history, report, "The logger's file"))
    return go("/air?told=1#told")
