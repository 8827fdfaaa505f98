"""The binding's ledge: which cutter and bearing make it, and how far the binding then stands proud."""

import math

from gramil.description.records import Cutter
from gramil.parts.records import LedgeChoice
from gramil.quantities import Mm

OWNS = ("ledge_",)


def ledge_options(shop_cutters: tuple[Cutter, ...], core_inset: Mm) -> tuple[LedgeChoice, ...]:
    """Every cutter with every bearing that the shop has for it, nearest to the binding first.

    Method: a bearing on the finished outline leaves a ledge of (cutter - bearing) / 2; the binding stands proud of it
    by binding and purfling less the ledge.
    Source: common practice.
    """
    found = [
        LedgeChoice(
            f"{cutter.name}, bearing {bearing:g}",
            cutter.diameter,
            bearing,
            (cutter.diameter - bearing) / 2,
            core_inset - (cutter.diameter - bearing) / 2,
        )
        for cutter in shop_cutters
        for bearing in cutter.bearings
        if bearing < cutter.diameter
    ]
    return tuple(sorted(found, key=lambda option: abs(option.proud)))


def ledge_choice(ledge_options: tuple[LedgeChoice, ...], limit_binding_proud_most: Mm) -> LedgeChoice:
    """The cutter and bearing to use: the binding flush or proud within the limit; failing that, the nearest.

    Method: the first option with 0 <= proud <= limit, taking the proudest of them; otherwise the least |proud|.
    Source: common practice.
    """
    tolerance = 1e-9
    able = [each for each in ledge_options if -tolerance <= each.proud <= limit_binding_proud_most + tolerance]
    if able:
        return max(able, key=lambda option: option.proud)
    none = LedgeChoice("none", math.nan, math.nan, math.nan, math.nan)
    return next(iter(ledge_options), none)
