"""The shop's machines that cut by drawings, as the drawings need them: how wide each cuts, and who allows for it."""

from gramil import names as n
from gramil.drawings.kerf import Machine
from gramil.quantities import Mm

OWNS = ("piece_",)


def piece_laser(shop_laser_kerf: Mm, shop_laser_kerf_in: str) -> Machine:
    """The machine that cuts templates and cards from sheet."""
    return Machine(shop_laser_kerf, shop_laser_kerf_in, n.shop_laser_kerf)


def piece_router(shop_router_kerf: Mm, shop_router_kerf_in: str) -> Machine:
    """The machine that cuts parts and moulds out of wood."""
    return Machine(shop_router_kerf, shop_router_kerf_in, n.shop_router_kerf)
