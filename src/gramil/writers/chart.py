"""Charts as SVG: lines named at their ends, named bands, axes in the maker's unit; no legend.

Everything is black on white, told apart by weight and dash, so that a grey print reads as well. Sizes are in mm.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from xml.sax.saxutils import escape

from gramil.notice import NOTICE
from gramil.writers.svg import number

WIDTH, HEIGHT = 180.0, 94.0
LEFT, RIGHT, TOP, BOTTOM = 16.0, 34.0, 10.0, 18.0
LETTER, NOTICE_LETTER = 2.6, 2.5
"""Sizes of type in mm: seven points are 2.47."""


@dataclass(frozen=True)
class Curve:
    """A line through points; `dots` marks each point, `dashes` in mm tell one line from another."""

    name: str
    x: Sequence[float]
    y: Sequence[float]
    weight: float = 0.35
    dashes: tuple[float, ...] = ()
    dots: bool = False


@dataclass(frozen=True)
class Band:
    """A range of y across the whole chart, named at its right end."""

    name: str
    low: float
    high: float


@dataclass(frozen=True)
class Moment:
    """A place on the x axis that is named, and drawn as a line from top to bottom."""

    name: str
    x: float


@dataclass(frozen=True)
class Chart:
    """A chart: `x_ticks` are places and words on the x axis, or empty to let round numbers be chosen."""

    title: str
    x_name: str
    y_name: str
    curves: tuple[Curve, ...]
    bands: tuple[Band, ...] = ()
    x_ticks: tuple[tuple[float, str], ...] = ()
    moments: tuple[Moment, ...] = ()


@dataclass(frozen=True)
class _Frame:
    """Where a chart's figures fall on the page."""

    x_low: float
    x_high: float
    y_low: float
    y_high: float

    def x(self, value: float) -> float:
        return LEFT + (value - self.x_low) / (self.x_high - self.x_low) * (WIDTH - LEFT - RIGHT)

    def y(self, value: float) -> float:
        return HEIGHT - BOTTOM - (value - self.y_low) / (self.y_high - self.y_low) * (HEIGHT - TOP - BOTTOM)


def chart_svg(chart: Chart) -> str:
    """The chart as an SVG text; its title and a table of its points are in it as words for those who cannot see it."""
    frame = _frame(chart)
    lines = [
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{number(WIDTH)}mm" height="{number(HEIGHT)}mm" '
        f'viewBox="0 0 {number(WIDTH)} {number(HEIGHT)}" font-family="B612, sans-serif" font-size="{LETTER}" '
        'role="img">',
        f"<title>{escape(chart.title)}</title>",
        f"<desc>{escape(twin(chart))}</desc>",
        _text(LEFT, TOP - 4, chart.title, "start", 'font-weight="bold"'),
        *_bands(chart, frame),
        *_axes(chart, frame),
        *_moments(chart, frame),
        *(line for curve in chart.curves for line in _curve(curve, frame)),
        *_names(chart, frame),
        _text(LEFT, HEIGHT - 1.0, NOTICE, "start", f'font-size="{NOTICE_LETTER}"'),
        "</svg>",
    ]
    return "\n".join(lines) + "\n"


def twin(chart: Chart) -> str:
    """The chart in words: its bands, and the first, last, least and greatest values of its lines."""
    said = [f"{band.name}: {band.low:g} to {band.high:g}." for band in chart.bands]
    for curve in chart.curves:
        known = [value for value in curve.y if math.isfinite(value)]
        if known:
            said.append(
                f"{curve.name}: from {known[0]:.3g} to {known[-1]:.3g}, least {min(known):.3g}, most {max(known):.3g}."
            )
    return f"{chart.y_name} by {chart.x_name}. " + " ".join(said)


def _frame(chart: Chart) -> _Frame:
    xs = [value for curve in chart.curves for value in curve.x] or [0.0, 1.0]
    ys = [value for curve in chart.curves for value in curve.y if math.isfinite(value)]
    ys += [edge for band in chart.bands for edge in (band.low, band.high)]
    y_low, y_high = _roomy(min(ys, default=0.0), max(ys, default=1.0))
    x_low, x_high = min(xs), max(xs)
    return _Frame(x_low, x_high if x_high > x_low else x_low + 1, y_low, y_high)


def _roomy(low: float, high: float) -> tuple[float, float]:
    room = 0.06 * (high - low) or 1.0  # no curve runs along the frame
    return low - room, high + room


def round_numbers(low: float, high: float, wanted: int = 6) -> list[float]:
    """Round numbers, 1, 2 or 5 times a power of ten apart, about `wanted` of them between `low` and `high`."""
    rough = (high - low) / wanted
    power = 10.0 ** math.floor(math.log10(rough))
    step = next(factor * power for factor in (1, 2, 5, 10) if factor * power >= rough)
    return [index * step for index in range(math.ceil(low / step), math.floor(high / step) + 1)]


def _axes(chart: Chart, frame: _Frame) -> Iterator[str]:
    bottom, right = HEIGHT - BOTTOM, WIDTH - RIGHT
    yield f'<path d="M{LEFT} {TOP}V{bottom}H{right}" fill="none" stroke="#000" stroke-width="0.25"/>'
    for value in round_numbers(frame.y_low, frame.y_high):
        at = number(frame.y(value))
        yield f'<path d="M{LEFT} {at}h-1.2" stroke="#000" stroke-width="0.18"/>'
        yield _text(LEFT - 2, frame.y(value) + 0.9, f"{value:g}", "end", 'font-family="B612 Mono, monospace"')
    ticks = chart.x_ticks or tuple((value, f"{value:g}") for value in round_numbers(frame.x_low, frame.x_high, 10))
    for value, word in ticks:
        yield f'<path d="M{number(frame.x(value))} {bottom}v1.2" stroke="#000" stroke-width="0.18"/>'
        yield _text(frame.x(value), bottom + 4.2, word, "middle", 'font-family="B612 Mono, monospace"')
    yield _text(right, HEIGHT - 5.5, chart.x_name, "end")
    yield _text(LEFT, TOP - 0.8, chart.y_name, "start")


def _bands(chart: Chart, frame: _Frame) -> Iterator[str]:
    for band in chart.bands:
        top, bottom = frame.y(band.high), frame.y(band.low)
        yield (
            f'<rect x="{LEFT}" y="{number(top)}" width="{number(WIDTH - LEFT - RIGHT)}" '
            f'height="{number(bottom - top)}" fill="#000" fill-opacity="0.07" stroke="#000" stroke-width="0.13" '
            'stroke-dasharray="1.5 1"/>'
        )


def _moments(chart: Chart, frame: _Frame) -> Iterator[str]:
    for moment in chart.moments:
        at = frame.x(moment.x)
        yield f'<path d="M{number(at)} {TOP}V{HEIGHT - BOTTOM}" stroke="#000" stroke-width="0.18"/>'
        yield _text(at, TOP - 0.8, moment.name, "middle")


def _curve(curve: Curve, frame: _Frame) -> Iterator[str]:
    runs: list[list[str]] = [[]]
    for x, y in zip(curve.x, curve.y, strict=True):
        if math.isfinite(y):
            runs[-1].append(f"{frame.x(x):.2f} {frame.y(y):.2f}")
        elif runs[-1]:
            runs.append([])
    dashes = f' stroke-dasharray="{" ".join(map(number, curve.dashes))}"' if curve.dashes else ""
    for run in runs:
        if len(run) > 1:
            yield f'<path d="M{"L".join(run)}" fill="none" stroke="#000" stroke-width="{curve.weight}"{dashes}/>'
        if curve.dots:
            yield from (f'<circle cx="{at.split()[0]}" cy="{at.split()[1]}" r="0.7"/>' for at in run)


def _names(chart: Chart, frame: _Frame) -> Iterator[str]:
    """Names at the right, pushed apart if they would overlap."""
    wanted = [(frame.y(_last(curve.y)), curve.name) for curve in chart.curves if curve.name]
    wanted += [(frame.y((band.low + band.high) / 2), band.name) for band in chart.bands]
    below = -math.inf
    for at, name in sorted(wanted):
        place = max(at + 0.9, below + LETTER + 0.6)  # 0.9: half a letter, small or capital, as words stand on it
        below = place
        yield _text(WIDTH - RIGHT + 1.5, place, name, "start")


def _last(values: Sequence[float]) -> float:
    return next((value for value in reversed(values) if math.isfinite(value)), 0.0)


def _text(x: float, y: float, text: str, anchor: str, more: str = "") -> str:
    return f'<text x="{number(x)}" y="{number(y)}" text-anchor="{anchor}" {more}>{escape(text)}</text>'
