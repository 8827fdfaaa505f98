"""How dark a layer is inked on paper and on screen: near black, and grey for what lies underneath (hatch, old
state).
"""

from gramil.layers import COLOURS, LAYERS, Stroke

PALE_COLOUR = 9
"""The light grey of the DXF standard's colour index: a layer of this colour lies under the others."""
DARK, PALE = 0.1, 0.55


def under(layer: str) -> bool:
    """Whether the layer is drawn beneath the rest, in grey."""
    return LAYERS[layer].colour == PALE_COLOUR


def grey(layer: str) -> float:
    """Grey of the layer's ink, 0 black to 1 white."""
    return PALE if under(layer) else DARK


def grey_name(layer: str) -> str:
    """The same grey in the web's notation."""
    return in_grey(grey(layer))


def in_grey(shade: float) -> str:
    """A grey from 0 (black) to 1 (white) in the web's notation."""
    return "#" + f"{round(shade * 255):02x}" * 3


def ink_name(layer: str, stroke: Stroke) -> str:
    """The layer's colour in the web's notation: the shop's own, or else its grey.

    The index's seventh colour, black or white by what it lies on, is black here.
    """
    if not stroke.own or stroke.own.startswith("#"):
        return stroke.own or grey_name(layer)
    if stroke.own == str(COLOURS["black"]):
        return "#000000"
    from ezdxf.colors import aci2rgb

    return aci2rgb(int(stroke.own)).to_hex()
