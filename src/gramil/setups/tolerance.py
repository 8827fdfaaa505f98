"""How near is near enough at the bench, where no limit of the shop's says so."""

from gramil.quantities import Mm

OWNS = ("tolerance_",)


def tolerance_height() -> Mm:
    """How near a thickness, a depth or a fall under the arch is worked.

    Source: common practice.
    """
    return 0.1


def tolerance_outline() -> Mm:
    """How near an outline or a marker is worked, where a binding or a hand's eye is the judge.

    Source: common practice.
    """
    return 0.5


def tolerance_width() -> Mm:
    """How near a board's finished width is worked: half of it goes to either edge.

    Source: common practice.
    """
    return 0.2


def tolerance_radius() -> Mm:
    """How near wire is bent to its radius.

    Source: common practice.
    """
    return 10.0


def tolerance_bridge() -> Mm:
    """How near a bridge is placed along the strings: the saddle's thickness takes up the rest.

    Source: common practice.
    """
    return 0.3
