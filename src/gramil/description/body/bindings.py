"""Base values of the bindings: what each is made of, wood or plastic, as far as that is known.

A material that is neither a wood by its name nor a wood of the shop is taken for celluloid: a hot iron on a plastic
binding starts a fire, while handling a wooden one like plastic does no harm.
"""

from typing import Literal

from gramil import names as n
from gramil.description.instrument import Instrument
from gramil.description.normal_row import Normal, Values
from gramil.description.shop.tables import Shop
from gramil.description.wood.own_woods import own_woods
from gramil.wood.wood_words import is_wood, words_of

Material = Literal["wood", "plastic", "not known", "not said"]
"""What a binding is: "not known" is of a name that no known wood has, "not said" of no name at all."""
PLASTIC = frozenset(("plastic", "celluloid"))
"""Words that say by themselves that something is no wood: nobody is asked for its species."""
_WHAT = "what {} is: wood, plastic, not known (of a name that no known wood has), or not said"
_REASON = "by its name"

BINDING_ROWS: tuple[Normal, ...] = (
    Normal(n.binding_wood, str, "what the board's binding is made of; empty where that is not said", ("binding.wood",)),
    Normal(n.binding_material, str, _WHAT.format("the board's binding"), ("binding.material", "binding.wood"), _REASON),
    Normal(
        n.top_binding_material,
        str,
        _WHAT.format("the top's binding"),
        ("top_binding.material", "top_binding.wood"),
        _REASON,
    ),
    Normal(
        n.back_binding_material,
        str,
        _WHAT.format("the back's binding"),
        ("back_binding.material", "back_binding.wood"),
        _REASON,
    ),
)


def binding_values(instrument: Instrument, shop: Shop) -> Values:
    """The values of `BINDING_ROWS`."""
    board, top, back = instrument.binding, instrument.top_binding, instrument.back_binding
    bound = board.thickness > 0 or board.purfling > 0
    return {
        n.binding_wood: (board.wood or "") if bound else "",
        n.binding_material: material_of(board.material, board.wood, shop) if bound else "not said",
        n.top_binding_material: material_of(top.material, top.wood, shop),
        n.back_binding_material: material_of(back.material, back.wood, shop),
    }


def material_of(said: Literal["wood", "plastic"] | None, name: str | None, shop: Shop) -> Material:
    """What something is made of, as its maker says, or else by its name."""
    if said is not None:
        return said
    if name is None:
        return "not said"
    if PLASTIC & set(words_of(name)):
        return "plastic"
    return "wood" if is_wood(name, own_woods(shop)) else "not known"
