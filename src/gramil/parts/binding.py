"""The binding's ledge: which cutter and bearing make it, and how far the binding then stands proud."""

from gramil.description.records import Cutter
from gramil.parts.edge_records import best_ledge, ledges
from gramil.parts.records import LedgeChoice
from gramil.quantities import Mm

OWNS = ("ledge_",)


def ledge_options(shop_cutters: tuple[Cutter, ...], core_inset: Mm, shop_units: str) -> tuple[LedgeChoice, ...]:
    """Every cutter with every bearing that the shop has for it, nearest to the binding first; none without a binding.

    Method: a bearing on the finished outline leaves a ledge of (cutter - bearing) / 2; the binding stands proud of it
    by binding and purfling less the ledge.
    Source: common practice.
    """
    return ledges(shop_cutters, core_inset, shop_units) if core_inset > 0 else ()


def ledge_choice(ledge_options: tuple[LedgeChoice, ...], limit_binding_proud_most: Mm) -> LedgeChoice:
    """The cutter and bearing to use: the binding flush or proud within the limit; failing that, what misses by least.

    Method: the proudest option with 0 <= proud <= limit; otherwise the one that lies least under 0 or over the limit.
    Source: common practice.
    """
    return best_ledge(ledge_options, limit_binding_proud_most)
