"""The shop's jig for each operation, with the constant that goes into a setting and when it was checked."""

import math

from gramil.description.records import Jig

OWNS = ("jig_",)

NO_JIG = Jig("none", "", math.nan, "")


def jig_taper(shop_jigs: tuple[Jig, ...]) -> Jig:
    """The carriage for tapering; its constant is from its reference face to the cutter's near side.

    Method: the first jig of the shop that is for "taper", or none.
    Source: the shop's own measurement.
    """
    return next((jig for jig in shop_jigs if jig.purpose == "taper"), NO_JIG)


def jig_slots(shop_jigs: tuple[Jig, ...]) -> Jig:
    """The jig for slots; its constant is pin less blade along the board.

    Method: the first jig of the shop that is for "slots", or none.
    Source: the shop's own measurement.
    """
    return next((jig for jig in shop_jigs if jig.purpose == "slots"), NO_JIG)
