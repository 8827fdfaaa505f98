"""Charts of wood and air: a place's air with the band for gluing, a piece's moisture with what it will be, and what a
year of the owner's air does to a width.
"""

import math
from collections.abc import Sequence
from datetime import datetime, timedelta

import numpy as np

from gramil.air.air_of_places import PlaceAir, Places
from gramil.air.pieces_now import kept_of
from gramil.air.readiness import Readiness
from gramil.faults import MakersFault
from gramil.measure import LengthUnit
from gramil.physics.arrays import FloatArray
from gramil.wood.equilibrium import equilibrium_moisture
from gramil.wood.moisture import follow, forecast, times_followed
from gramil.wood.piece import PACES, Pace
from gramil.wood.species import Direction, Species
from gramil.writers.chart import Band, Chart, Curve, Moment, chart_svg

DAY = 86400.0
POINTS = 700
"""Most points that a line is drawn through."""
PAST_DAYS, AHEAD_DAYS = 35.0, 28.0
"""Days drawn before and after now."""
INCH = 25.4


def air_svg(place: PlaceAir, now: datetime, days: float, band: tuple[float, float]) -> str:
    """Relative humidity of a place over the days before a moment, with the band for gluing; an SVG text."""
    history, here = place.history, place.history.seconds(now)
    since = (history.times - here) / DAY
    inside = (since >= -days) & (since <= 0.0)
    x, y = _thinned(since[inside], history.humidity[inside])
    humidity = Curve(f"{place.name}, {y[-1]:.0f} %" if y else place.name, x, y, 0.35)
    return chart_svg(
        Chart(
            f"Air of the {place.name} to {now:%Y-%m-%d %H:%M}",
            "",
            "relative humidity, %",
            (humidity,),
            (Band("for gluing", *band),),
            _days(now, x[0] if x else -days, 0.0),
        )
    )


def piece_svg(found: Readiness, places: Places, now: datetime, band: tuple[float, float]) -> str:
    """A piece's moisture up to now and from now on, where it lies and in the best place; an SVG text."""
    piece = found.piece
    curves = [*_past(found, places, now), *_ahead(found), *_weighed(found, now)]
    low = min((min(curve.x) for curve in curves if curve.x), default=-1.0)
    return chart_svg(
        Chart(
            f"{piece.row.name}, {piece.row.wood}, {piece.row.thickness:g} mm: mean moisture (its middle dotted), "
            "ahead at three paces",
            "",
            "% of dry mass",
            tuple(curves),
            (Band("for gluing", *band),),
            _days(now, low, AHEAD_DAYS),
            (Moment("now", 0.0),),
        )
    )


def movement_svg(
    wood: Species, width: float, from_rh: float, temperature: float, units: LengthUnit, year: tuple[float, float]
) -> str:
    """Change of a width (mm) through a year whose air swings between two humidities (%), driest in February; SVG.

    The wood is taken to have settled in each month's air, which thin pieces do.
    """
    months = np.linspace(0.0, 12.0, 73)  # six steps a month: no corner shows on the curve
    middle, swing = 0.5 * (year[0] + year[1]), 0.5 * (year[1] - year[0])
    humidity = middle - swing * np.cos(2.0 * math.pi * (months - 1.5) / 12.0)  # 1.5: the middle of February
    steps = equilibrium_moisture(temperature, humidity) - equilibrium_moisture(temperature, from_rh)
    scale, unit = (INCH, "in") if units == "in" else (1.0, "mm")
    ways: tuple[tuple[Direction, str, tuple[float, ...]], ...] = (
        ("radial", "quartersawn", ()),
        ("tangential", "flatsawn", (2.0, 1.0)),
    )
    curves = [
        Curve(name, months.tolist(), (width * figure.value * steps / scale).tolist(), 0.35, dashes)
        for way, name, dashes in ways
        if (figure := wood.movement(way)) is not None
    ]
    if not curves:
        raise MakersFault.of(f"no source gives how {wood.name} moves", "", "give its movement under [[wood]]")
    names = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")
    title = f"{wood.name}, {width / scale:g} {unit} wide at {from_rh:g} %, in a year from {year[0]:g} to {year[1]:g} %"
    ticks = tuple((month + 0.5, name) for month, name in enumerate(names))
    zero = Curve(f"as made, {from_rh:g} %", [0.0, 12.0], [0.0, 0.0], 0.18)
    return chart_svg(Chart(title, "", f"change of width, {unit}", (*curves, zero), (), ticks))


def _past(found: Readiness, places: Places, now: datetime) -> list[Curve]:
    """Mean and middle up to now, at the likely pace; none if it is not known where it lay."""
    try:
        kept = kept_of(found.piece.row, places, now)
    except MakersFault:
        return []
    run = follow([found.piece.state.piece], [kept], now)
    since = (times_followed([kept], now) + (kept.begins - now).total_seconds()) / DAY
    late = since >= -PAST_DAYS
    x, mean = _thinned(since[late], run.mean[late, 0])
    _, middle = _thinned(since[late], run.centre[late, 0])
    return [Curve("", x, mean, 0.5), Curve("", x, middle, 0.18, (0.8, 0.8))]


def _ahead(found: Readiness) -> list[Curve]:
    """The mean from now on: at three paces in the best place, and at the likely one where it lies if that differs."""
    curves, best, here = [], found.best or found.here, found.here
    days = np.linspace(0.0, AHEAD_DAYS, 120)
    state = found.piece.state
    if best is not None:
        for pace in PACES:
            mean = forecast(state, best.air, days * DAY, pace).mean[:, 0]
            curves.append(_line(f"in the {best.place}" if pace == "likely" else "", days, mean, pace))
    if here is not None and best is not None and here.place != best.place:
        mean = forecast(state, here.air, days * DAY, "likely").mean[:, 0]
        curves.append(Curve(f"left in the {here.place}", days.tolist(), mean.tolist(), 0.35, (0.6, 1.2)))
    return curves


def _line(name: str, days: FloatArray, mean: FloatArray, pace: Pace) -> Curve:
    weight, dashes = (0.5, (3.0, 1.0)) if pace == "likely" else (0.18, (3.0, 1.0))
    return Curve(name, days.tolist(), mean.tolist(), weight, dashes)


def _weighed(found: Readiness, now: datetime) -> list[Curve]:
    """Dots where it was weighed, if its dry mass is known."""
    row = found.piece.row
    if row.dry_mass is None or not row.weighings:
        return []
    past = [each for each in row.weighings if each.at <= now]
    x = [(each.at - now).total_seconds() / DAY for each in past]
    return [Curve("", x, [100.0 * (each.mass / row.dry_mass - 1.0) for each in past], 0.0, (), True)]


def _thinned(x: FloatArray, y: FloatArray) -> tuple[list[float], list[float]]:
    """Means over runs of neighbours, so that a line has POINTS points at most."""
    run = max(1, math.ceil(x.size / POINTS))
    starts = np.arange(0, x.size, run)
    if run == 1:
        return x.tolist(), y.tolist()
    counts = np.diff(np.append(starts, x.size))
    return (np.add.reduceat(x, starts) / counts).tolist(), (np.add.reduceat(y, starts) / counts).tolist()


def _days(now: datetime, first: float, last: float) -> tuple[tuple[float, str], ...]:
    """Midnights on the x axis (days from now), a week apart or less, with their dates."""
    step = next(each for each in (1, 2, 7, 14, 28, 91) if (last - first) / each <= 10 or each == 91)
    midnight = datetime(now.year, now.month, now.day)
    offset = (midnight - now).total_seconds() / DAY
    wanted: Sequence[int] = range(math.ceil((first - offset) / step) * step, math.floor(last - offset) + 1, step)
    return tuple((offset + each, f"{midnight + timedelta(days=each):%d %b}") for each in wanted)
