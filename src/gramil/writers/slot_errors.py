"""The errors of cut slots as a chart: each slot's, the limit as a band, and what the likely cause explains."""

from gramil import names as n
from gramil.change.slot_readings import SlotsReadback
from gramil.formatter import Formatter
from gramil.writers.chart import Band, Chart, Curve, chart_svg

INCH = 25.4


def slot_errors_svg(found: SlotsReadback, formatter: Formatter) -> str:
    """Errors over frets, in the maker's unit, as an SVG text."""
    inches = formatter.first == "in"
    scale, unit = (INCH / 1000, "thousandths of an inch") if inches else (1.0, "mm")
    frets = [float(each.fret) for each in found.slots]
    limit = formatter.figures[n.limit_slot_position] / scale
    errors = Curve("each slot", frets, [each.error / scale for each in found.slots], dots=True)
    explained = [each.explained / scale for each in found.slots]
    cause = Curve("likely cause", frets, explained, 0.25, (2.0, 1.0))
    return chart_svg(
        Chart(
            f"{formatter.figures[n.instrument_name]}: slots as cut, toward the bridge positive",
            "fret",
            unit,
            (errors, cause),
            (Band("good", -limit, limit),),
            tuple((fret, f"{fret:g}") for fret in frets),
        )
    )
