"""Base value of what the parts are made of, and what that requires: care with dust, permits for protected wood.

Every sheet on which a part is worked takes its cautions from here, by the species of that part.
"""

from collections.abc import Iterable, Iterator, Mapping

from gramil import names as n
from gramil.description.body.bindings import Material, material_of
from gramil.description.cautions import NO_WOOD
from gramil.description.instrument import Instrument
from gramil.description.normal_row import Normal, Values
from gramil.description.records import Stuff
from gramil.description.shop.tables import Shop
from gramil.description.wood.own_woods import own_woods
from gramil.wood.dust import dust_of
from gramil.wood.permits import STATUSES, permit_of
from gramil.wood.species import Species

Own = Mapping[str, Species]
NOT_SAID = "not said"
PARTS = (
    "board", "neck", "head veneer", "top", "braces", "bridge plate", "back", "sides", "linings", "blocks", "bridge",
    "board binding", "top binding", "back binding", "arm bevel", "rib bevel", *NO_WOOD,
)  # fmt: skip
"""Every part by the name of its stuff."""
STUFF_ROWS: tuple[Normal, ...] = (
    Normal(
        n.stuff_list,
        tuple[Stuff, ...],
        "what each part is made of, what its dust does, and whether that wood is protected",
        (
            "board.wood",
            "carve.wood",
            "head.veneer_wood",
            "top.wood",
            "top.brace_wood",
            "brace.wood",
            "bridge_plate.wood",
            "body.side_wood",
            "body.linings_wood",
            "body.block_wood",
            "bridge.wood",
            "binding.wood",
            "binding.material",
            "top_binding.wood",
            "top_binding.material",
            "back_binding.wood",
            "back_binding.material",
            "arm_bevel.veneer_wood",
            "rib_bevel.veneer_wood",
        ),
        "by the names of the woods",
    ),
)


def stuff_values(instrument: Instrument, shop: Shop) -> Values:
    """The value of `STUFF_ROWS`: the wooden parts in the order of the work, and then other materials."""
    own = own_woods(shop)
    told = _woods(instrument) if not instrument.repair.described else _as_known(instrument)
    woods = (_not_there(part) if names is None else _of_wood(part, names, own) for part, names in told)
    bevels = (_not_there(part) if names is None else _of_wood(part, names, own) for part, names in _veneers(instrument))
    return {n.stuff_list: (*woods, *_bindings(instrument, shop, own), *bevels, *_no_wood(instrument))}


def _as_known(instrument: Instrument) -> Iterator[tuple[str, tuple[str, ...] | None]]:
    """The same of a guitar that came in: a wood that is usual for a new one is not known of an old one."""
    given = {
        "board": (instrument.board, "wood", "not known"), "neck": (instrument.carve, "wood", None),
        "top": (instrument.top, "wood", None), "braces": (instrument.top, "brace_wood", None),
        "back": (instrument.body, "side_wood", None), "sides": (instrument.body, "side_wood", None),
    }  # fmt: skip
    for part, names in _woods(instrument):
        table, key, stand_in = given.get(part, (None, "", None))
        lost = table is not None and (key not in table.model_fields_set or getattr(table, key) == stand_in)
        yield part, () if lost and names is not None else names


def _woods(instrument: Instrument) -> Iterator[tuple[str, tuple[str, ...] | None]]:
    """The wooden parts, each with the names of its woods: an empty list if that is not said, None if there is no such
    part.
    """
    body, head, plate = instrument.body, instrument.head, instrument.bridge_plate
    yield "board", (instrument.board.wood,)
    yield "neck", (instrument.carve.wood,)
    yield "head veneer", _said(head.veneer_wood) if head.veneer else None
    yield "top", (instrument.top.wood,)
    yield "braces", tuple(dict.fromkeys(each.wood for each in instrument.brace)) or (instrument.top.brace_wood,)
    yield "bridge plate", _said(plate.wood) if plate.ahead is not None else None
    yield "back", (body.side_wood,)
    yield "sides", (body.side_wood,)
    yield "linings", _said(body.linings_wood)
    yield "blocks", _said(body.block_wood)
    yield "bridge", _said(instrument.bridge.wood)


def _veneers(instrument: Instrument) -> Iterator[tuple[str, tuple[str, ...] | None]]:
    """The veneers on the bevels."""
    for part, bevel in (("arm bevel", instrument.arm_bevel), ("rib bevel", instrument.rib_bevel)):
        yield part, (bevel.veneer_wood,) if bevel.veneered else None


def _not_there(part: str) -> Stuff:
    return Stuff(part, "", "", "", "not there", "")


def _said(wood: str | None) -> tuple[str, ...]:
    return () if wood is None else (wood,)


def _of_wood(part: str, names: Iterable[str], own: Own, doubt: str = "") -> Stuff:
    woods = tuple(names)
    if not woods:
        return Stuff(part, f"wood of the {part}, not said which", dust_of("", own), "", NOT_SAID, doubt)
    permits = [permit_of(wood, own) for wood in woods]
    gravest = min((each.status for each in permits), key=STATUSES.index)
    dusts = list(dict.fromkeys(dust_of(wood, own) for wood in woods))
    permit = " ".join(each.line for each in permits if each.line)
    return Stuff(part, " and ".join(woods), "; ".join(dusts), permit, gravest, doubt)


def _bindings(instrument: Instrument, shop: Shop, own: Own) -> Iterator[Stuff]:
    """Each edge's binding: wood, or what is taken for plastic and why; nothing if the edge is bare."""
    board, top, back = instrument.binding, instrument.top_binding, instrument.back_binding
    for table, row, bound in (
        ("binding", board, board.thickness > 0 or board.purfling > 0),
        ("top_binding", top, top.thickness > 0),
        ("back_binding", back, back.thickness > 0),
    ):
        part = {"binding": "board binding"}.get(table, table.replace("_", " "))
        if bound:
            yield _binding(part, table, row.wood, material_of(row.material, row.wood, shop), own)
        else:
            yield _not_there(part)


def _binding(part: str, table: str, wood: str | None, material: Material, own: Own) -> Stuff:
    if material == "wood":
        return _of_wood(part, (wood or "wood",), own)
    what, dust = NO_WOOD["plastic"]
    return Stuff(part, wood or what, dust, "", material, _doubt(table, wood, material))


def _doubt(table: str, wood: str | None, material: Material) -> str:
    """Why something is taken for plastic although nobody said so, and what would settle it."""
    if material == "not known":
        return (
            f"No wood called {wood} is known: it is taken for celluloid until its maker's sheet says otherwise. "
            f"`material` under [{table}] settles it."
        )
    if material == "not said":
        return (
            "What the board's binding is made of is not said: until it is, treat it as celluloid. `wood` or `material` "
            f"under [{table}] settles it."
        )
    return ""


def _no_wood(instrument: Instrument) -> Iterator[Stuff]:
    """Worked materials other than wood, by name; with bars if there are any."""
    for name, (what, dust) in NO_WOOD.items():
        there = name != "carbon" or instrument.neck.bars > 0
        yield Stuff(name, what if there else "", dust if there else "", "", "no wood", "")
