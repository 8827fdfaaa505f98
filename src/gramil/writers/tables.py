"""Dimensions and findings as files, CSV and JSON; the same input gives the same bytes."""

import csv
import io
import json
import math
from collections.abc import Iterable
from typing import Any

from gramil.change.made import Judged
from gramil.change.made_words import said, spoilt, values_said
from gramil.findings.finding import Finding, in_words
from gramil.formatter import Formatter
from gramil.graph import Figures
from gramil.rows import rows


def dimensions_csv(figures: Figures, formatter: Formatter, names: Iterable[str]) -> str:
    """One row for each figure: part, address, value (lengths in mm), unit, and the figure shown in both units."""
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\n")
    writer.writerow(["part", "address", "value", "unit", "shown", "other"])
    for row in rows(figures, names):
        writer.writerow(
            [row.part, row.address, _plain(row.value), row.unit or "", *formatter.both_of(row.value, row.unit)]
        )
    return text.getvalue()


def dimensions_json(figures: Figures, formatter: Formatter, names: Iterable[str]) -> str:
    """A list of figures, each with part, address, value, unit, and the figure shown in both units."""
    keys = ("part", "address", "value", "unit", "shown", "other")
    found = [
        dict(
            zip(
                keys,
                (row.part, row.address, _plain(row.value), row.unit or "", *formatter.both_of(row.value, row.unit)),
                strict=True,
            )
        )
        for row in rows(figures, names)
    ]
    return json.dumps(found, indent=1, ensure_ascii=False) + "\n"


def findings_json(findings: Iterable[Finding], formatter: Formatter, judged: Iterable[Judged] = ()) -> str:
    """A list of findings, each with its limit's value and origin; then finished work that is no longer right."""
    found = [
        {
            "name": each.name,
            "severity": each.severity,
            "address": each.address,
            "value": _plain(each.value),
            "shown": each.shown,
            "limit": each.limit_shown,
            "limit_from": each.limit_from,
            "says": each.says,
            "remedy": each.remedy,
        }
        for each in (in_words(finding, formatter) for finding in findings)
    ]
    made = [_made(each, formatter) for each in spoilt(judged)]
    return json.dumps([*found, *made], indent=1, ensure_ascii=False) + "\n"


def _made(judged: Judged, formatter: Formatter) -> dict[str, Any]:
    """Finished work in the form of a finding: the severity is its verdict, the limit what it should be."""
    is_now, should_be = values_said(judged, formatter.first)
    return {
        "name": judged.what,
        "severity": judged.standing,
        "address": judged.address,
        "value": _plain(judged.is_now),
        "shown": is_now,
        "limit": should_be,
        "limit_from": "",
        "says": said(judged, formatter.first),
        "remedy": judged.remedy,
    }


def _plain(value: Any) -> Any:
    """A value that JSON can hold: nan and infinity become words."""
    if isinstance(value, float) and not math.isfinite(value):
        return "not known" if math.isnan(value) else "without end"
    return value
