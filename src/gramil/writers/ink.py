"""How dark a layer is inked on paper and on screen: near black, and grey for what lies underneath (hatch, old
state).
"""

from gramil.drawings.marks import LAYERS

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
    return f"#{round(grey(layer) * 255):02x}" + f"{round(grey(layer) * 255):02x}" * 2
