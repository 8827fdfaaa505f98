"""A place's day as one small curve with the band for gluing behind it; the text beside it says what it shows."""

from datetime import datetime

from markupsafe import Markup

from gramil.air.air_of_places import PlaceAir, last_days

WIDE, HIGH, ROOM = 240.0, 44.0, 3.0
"""The drawing's own units, and how many per cent are left free over and under what is drawn."""


def day_span(place: PlaceAir, to: datetime) -> tuple[float, float]:
    """Least and most humidity (%) of the day up to a moment."""
    day = last_days(place, to, 1.0)
    return float(day.humidity.min()), float(day.humidity.max())


def day_curve(place: PlaceAir, to: datetime, band: tuple[float, float]) -> Markup:
    """The day's humidity up to a moment as an SVG without lettering; the words are its accessible name."""
    day, end = last_days(place, to, 1.0), place.history.seconds(to)
    least, most = day_span(place, to)
    low, high = min(least, band[0]) - ROOM, max(most, band[1]) + ROOM

    def across(seconds: float) -> float:
        return WIDE * (1.0 + (seconds - end) / 86400.0)

    def up(percent: float) -> float:
        return HIGH * (high - percent) / (high - low)

    times = [max(float(each), end - 86400.0) for each in day.times]
    pairs = [(across(second), up(float(percent))) for second, percent in zip(times, day.humidity, strict=True)]
    if len(pairs) == 1:
        pairs = [(max(pairs[0][0] - ROOM, 0.0), pairs[0][1]), pairs[0]]
    points = " ".join(f"{x:.1f},{y:.1f}" for x, y in pairs)
    words = f"{place.name}, the day to {to:%Y-%m-%d %H:%M}: {least:.0f} to {most:.0f} %"
    return Markup(
        '<svg class="day" role="img" aria-label="{words}" viewBox="0 0 {wide:g} {high:g}" preserveAspectRatio="none">'
        '<rect class="band" x="0" y="{top:.1f}" width="{wide:g}" height="{tall:.1f}"></rect>'
        '<polyline points="{points}"></polyline></svg>'
    ).format(words=words, wide=WIDE, high=HIGH, top=up(band[1]), tall=up(band[0]) - up(band[1]), points=points)
