"""The base values that need more than their key: what they are, which keys set them, and how.

After this no part has to handle missing values: there is always a bass and a treble scale, a curvature at each end
(flat is 0), a wire with its measures, and a list of markers.
"""

from collections.abc import Iterator

from gramil import names as n
from gramil.description.board.scala_scale import ScalaScale
from gramil.description.board.usual import BOARD_ROWS, MARKER_ROWS, board_values, curvature
from gramil.description.body.bindings import BINDING_ROWS, binding_values
from gramil.description.body.usual import BODY_ROWS, body_values
from gramil.description.instrument import Instrument
from gramil.description.neck.usual import CARVE_ROWS, NECK_ROWS, carve_values, neck_values
from gramil.description.normal_row import Normal, Values
from gramil.description.records import Blank, Block, Cutter, IndexTemplate, Jig, KeptPiece, Saw, Wire, piece_of_wood
from gramil.description.repair.usual import REPAIR_ROWS, repair_values
from gramil.description.shop.tables import Shop
from gramil.description.strings.usual import STRING_ROWS, string_values
from gramil.description.wood.stuff import STUFF_ROWS, stuff_values
from gramil.layers import LayerInk
from gramil.quantities import Mm
from gramil.shapes.outline import Outline

PIN_OFFSET = 60.0
"""Pin less blade along the board, in mm, for a shop that has no jig for slots: common practice."""


NORMALISED: tuple[Normal, ...] = (
    *BOARD_ROWS,
    *STRING_ROWS,
    *BODY_ROWS,
    *BINDING_ROWS,
    *STUFF_ROWS,
    *CARVE_ROWS,
    *MARKER_ROWS,
    *NECK_ROWS,
    *REPAIR_ROWS,
    Normal(n.shop_is_default, bool, "whether no shop was given and the usual one stands in", (), "set by the program"),
    Normal(n.shop_pin_offset, Mm, "index pin less saw blade along the board", ("jig",), "common practice: 60 mm"),
    Normal(n.shop_saws, tuple[Saw, ...], "saws for slots", ("saw",), "none"),
    Normal(n.shop_cutters, tuple[Cutter, ...], "bearing-guided cutters", ("cutter",), "none"),
    Normal(n.shop_blocks, tuple[Block, ...], "sanding blocks", ("block",), "none"),
    Normal(n.shop_templates, tuple[IndexTemplate, ...], "index templates on hand", ("template",), "none"),
    Normal(n.shop_jigs, tuple[Jig, ...], "jigs and their constants", ("jig",), "none"),
    Normal(n.shop_blanks, tuple[Blank, ...], "wood in stock", ("blank",), "none"),
    Normal(n.shop_kept, tuple[KeptPiece, ...], "pieces of wood that no other instrument's are", ("piece",), "none"),
    Normal(n.shop_wires, tuple[Wire, ...], "fret wires on hand", ("wire",), "none"),
    Normal(n.shop_layers, tuple[LayerInk, ...], "layers inked in the shop's own way", ("layer",), "none"),
)
"""Every base value that is not simply one key."""


def normalised(
    instrument: Instrument,
    tuning: ScalaScale,
    outlines: tuple[Outline, ...],
    shop: Shop,
    wire: Wire,
    shop_is_default: bool,
) -> Values:
    """The values of `NORMALISED`: mm, 1/mm, cents; arrays as their annotations say."""
    return {
        **board_values(instrument, tuning, wire),
        **neck_values(instrument),
        **string_values(instrument),
        **body_values(instrument, outlines),
        **binding_values(instrument, shop),
        **stuff_values(instrument, shop),
        **carve_values(instrument),
        **repair_values(instrument),
        **_shop_values(shop),
        n.shop_kept: tuple(_kept(shop, instrument.instrument.name)),
        n.shop_is_default: shop_is_default,
    }


def _kept(shop: Shop, name: str) -> Iterator[KeptPiece]:
    """Pieces that are not listed as blanks, and are kept for the instrument of this name or for none."""
    blanks = {row.name for row in shop.blank}
    for row in shop.piece:
        if row.name not in blanks and row.instrument in (None, name):
            yield KeptPiece(**piece_of_wood(row), part=row.part, kept=row.instrument == name)


def _shop_values(shop: Shop) -> Values:
    offsets = [jig.constant for jig in shop.jig if jig.purpose == "slots"]
    return {
        n.shop_pin_offset: offsets[0] if offsets else PIN_OFFSET,
        n.shop_saws: tuple(Saw(**row.model_dump()) for row in shop.saw),
        n.shop_cutters: tuple(Cutter(**row.model_dump()) for row in shop.cutter),
        n.shop_blocks: tuple(Block(row.name, curvature(row.radius)) for row in shop.block),
        n.shop_templates: tuple(IndexTemplate(**row.model_dump()) for row in shop.template),
        n.shop_jigs: tuple(
            Jig(row.name, row.purpose, row.constant, row.checked.isoformat() if row.checked else "") for row in shop.jig
        ),
        n.shop_blanks: tuple(Blank(**row.model_dump()) for row in shop.blank),
        n.shop_wires: tuple(Wire(**row.model_dump()) for row in shop.wire),
        n.shop_layers: tuple(LayerInk(**row.model_dump()) for row in shop.layer),
    }
