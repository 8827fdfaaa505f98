"""The body's edges enlarged for the sheet of their channels: the wood as it is cut, the strips, what is left.

Each edge lies as it does under the cutter: its plate on top, the side's face to the right.
"""

from dataclasses import replace
from math import isnan

from gramil import names as n
from gramil.drawings.marks import Drawing, Marks, Point, Words
from gramil.drawings.pen import View, level, lines_of_words, upright
from gramil.drawings.rim import Rim
from gramil.parts.edge_records import Cut, Edge
from gramil.quantities import Mm

OWNS = ("drawing_", "piece_")

LARGE = 3.5
"""How many times as large as life an edge is drawn."""
APART = 58.0
"""From the one edge's side to the other's, in mm of the drawing."""
INWARD, BELOW = 1.4, 3.0
"""How much of the plate inside the lining, and of the side below the binding, is shown, in mm of the real thing."""


def piece_edge_top(
    channel_edge_top: Edge, channel_cuts: tuple[Cut, ...], body_wall: Mm, body_linings: Mm, body_linings_height: Mm
) -> Marks:
    """The top's edge with its channels."""
    return _edge(channel_edge_top, channel_cuts, (body_wall, body_linings, body_linings_height), 0.0)


def piece_edge_back(
    channel_edge_back: Edge, channel_cuts: tuple[Cut, ...], body_wall: Mm, body_linings: Mm, body_linings_height: Mm
) -> Marks:
    """The back's edge with its channels, beside the top's."""
    return _edge(channel_edge_back, channel_cuts, (body_wall, body_linings, body_linings_height), APART)


def _edge(edge: Edge, cuts: tuple[Cut, ...], rim: tuple[Mm, Mm, Mm], across: Mm) -> Marks:
    """An edge and its figures; `rim`: the side's thickness, the lining's width and height. Nothing where it is bare."""
    mine = {each.name.removeprefix(f"{edge.name} "): each for each in cuts if each.name.startswith(f"{edge.name} ")}
    if not mine:
        return ()
    view = View((across, 0.0), LARGE, LARGE)
    cut = _as_cut(edge, mine["binding"], mine.get("purfling"), rim)
    return (
        *_wood(view, cut),
        *_strips(view, edge, cut),
        *_cut_sizes(view, edge, cut),
        *_left_sizes(view, edge, cut),
        Words((across, 17.0), f"the {edge.name}'s edge", 2.2, anchor="right"),
    )


def _as_cut(edge: Edge, binding: Cut, purfling: Cut | None, rim: tuple[Mm, Mm, Mm]) -> Rim:
    """The edge as cutter and bearing leave it; by its wanted insets where the shop has no cutter."""
    wall, linings, height = rim
    wide = _inset(binding)
    lines, deep = (_inset(purfling) - wide, purfling.depth) if purfling else (0.0, 0.0)
    cut = replace(edge, thickness=wide, height=binding.depth, purfling=lines, purfling_depth=deep)
    return Rim(cut, lambda _: 0.0, 0.0, -wide, -wide - lines, -wall, -wall - linings, height)


def _inset(cut: Cut) -> Mm:
    return cut.inset if isnan(cut.ledge) else cut.ledge


def _wood(view: View, cut: Rim) -> Marks:
    """Plate, side and lining with the channels cut out of them."""
    inside, low = cut.lined - INWARD, cut.floor - BELOW
    plate = ((inside, 0.0), *cut.plate_end(), (inside, -cut.edge.plate))
    side = (*cut.side_top(), (0.0, low), (cut.bare, low))
    lining = (view.shape(cut.lining(low), "outline"),) if cut.lined < cut.bare and cut.lining_height else ()
    return (
        view.shape(plate, "outline", "across the grain"),
        view.shape(side, "outline", "along the grain"),
        *lining,
    )


def _strips(view: View, edge: Edge, cut: Rim) -> Marks:
    """Binding and purfling lying in their channels, standing proud to be scraped."""
    foot = (cut.bound, -cut.edge.height)
    marks: Marks = (view.box(foot, (foot[0] + edge.thickness, foot[1] + edge.height), "cut", "bone"),)
    if edge.purfling:
        foot = (cut.purfled, -cut.edge.purfling_depth)
        marks += (view.box(foot, (cut.bound, foot[1] + edge.purfling_depth), "cut", "along the grain"),)
    return marks


def _cut_sizes(view: View, edge: Edge, cut: Rim) -> Marks:
    """What the channels are to be: how far in from the side's face, how deep from the plate's."""
    at, (right, top) = n.channel_cuts[f"{edge.name} binding"], view.at(0.0, 0.0)
    marks: Marks = (
        *level((view.at(cut.bound, 0.0)[0], top + 6.0), (right, top + 6.0), at.inset, "binding ", "left"),
        *upright(_out(view, -cut.edge.height), _out(view, 0.0), at.depth),
    )
    if edge.purfling:
        at = n.channel_cuts[f"{edge.name} purfling"]
        x, floor = view.at(cut.purfled, -cut.edge.purfling_depth)
        marks += (
            *level((x, top + 12.0), (right, top + 12.0), at.inset, "purfling ", "left"),
            *upright((x - 3.0, floor), (x - 3.0, top), at.depth, side="left"),
        )
    return marks


def _out(view: View, z: Mm) -> Point:
    """Beside the side's face, clear of the binding that stands proud of it."""
    x, y = view.at(0.0, z)
    return (x + 4.0, y)


def _left_sizes(view: View, edge: Edge, cut: Rim) -> Marks:
    """The side's thickness, and the wood that is left behind the channel's foot."""
    foot, behind = view.at(0.0, cut.floor - BELOW)[1] - 5.0, n.channel_list[edge.name].behind
    return (
        *level((view.at(cut.bare, 0.0)[0], foot), (view.at(0.0, 0.0)[0], foot), n.body_wall),
        *level(view.at(cut.slope(cut.floor), cut.floor), view.at(cut.bound, cut.floor), behind, side="left"),
    )


def drawing_setup_channels(instrument_name: str, piece_edge_top: Marks, piece_edge_back: Marks) -> Drawing:
    """Both edges with their channels, enlarged; words alone on a body that is not bound."""
    title = f"{instrument_name}, channels for the bindings"
    if not (piece_edge_top or piece_edge_back):
        words = lines_of_words((0.0, 0.0), "The body is not bound: no channels to cut.")
        return Drawing("setup-channels", title, "the end", words, scale=0.0)
    return Drawing("setup-channels", title, "the end", (*piece_edge_top, *piece_edge_back), scale=LARGE)
