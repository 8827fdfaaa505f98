"""A piece of wood that was tapped or pushed, as its stiffness: fitted by the plate or the bar, carried to another air.

Nothing is wired here. Anything impossible is reported as a fault, and nothing of the piece is used then.
"""

import math
from dataclasses import dataclass, replace

from gramil.description.wood.timbers import TimberKnown, Tried
from gramil.faults import Fault
from gramil.physics.plates.blank import HANDBOOK_SPREAD, Blank, Identified, Way, identified
from gramil.physics.plates.timber import Timber
from gramil.physics.tried_bar import Rod, modulus_pushed, modulus_tapped, shear_over_bending
from gramil.quantities import Mm, MPa, Percent, Ratio
from gramil.wood.stiffness import carried_within, stiffness_share

AGAIN = "tap again, see where each note's resting lines lie, and weigh and measure again"
LEAST, MOST = 3000.0, 30000.0
"""Between which the stiffness of woods along the grain lies, MPa, generously: outside, something was measured wrong."""
NOTE, SIZE, GIVEN = 0.005, 0.01, 0.03
"""How far off a note, a thickness and a deflection under a weight may be, shares."""


@dataclass(frozen=True)
class TriedWood:
    """What a piece came to: its wood at `moisture`, how far off each stiffness may be (a share; a handbook's where it
    was not tried), how much stiffer it is there than where it was tried, how much of a push is shear, and faults.
    """

    name: str
    known: TimberKnown
    along_within: Ratio
    across_within: Ratio
    twist_within: Ratio
    carried: Ratio
    shear_share: Ratio
    faults: tuple[Fault, ...]


def fitted(piece: Tried, settled: Percent) -> TriedWood:
    """The stiffness of a tried piece, carried to the moisture `settled` (%) of the air that gluing aims for."""
    moisture = settled if math.isnan(piece.moisture) else piece.moisture
    carried = stiffness_share(settled, moisture, piece.group)
    own = carried_within(settled, moisture)
    if piece.part == "brace" or sum(map(math.isfinite, (piece.along, piece.across, piece.twist))) < 2:
        return _of_a_bar(piece, settled, carried, own)
    return _of_a_board(piece, settled, carried, own)


def _of_a_board(piece: Tried, settled: Percent, carried: Ratio, own: Ratio) -> TriedWood:
    notes: dict[Way, float] = {"along": piece.along, "across": piece.across, "twist": piece.twist}
    tapped = {way: note for way, note in notes.items() if math.isfinite(note)}
    blank = Blank(piece.length, piece.width, piece.thickness, 1e-3 * piece.mass)
    found = identified(blank, tapped, piece.like.timber)
    if found.faults and not any(each.measured for each in (found.along, found.across, found.twist)):
        return _nothing(piece, found.faults)
    if not LEAST < found.wood.longitudinal < MOST:
        why = f"it would be {found.wood.longitudinal:.0f} MPa along the grain, which no wood is; two may be swapped"
        fault = Fault(where=piece.name, what="the notes do not go with weight and sizes", why=why, remedy=AGAIN)
        return _nothing(piece, (fault,))
    along, across, twist = (math.hypot(each.within, own) for each in (found.along, found.across, found.twist))
    told = (f"{piece.name}: tapped, {_named(found)}", *piece.like.told)
    known = TimberKnown(_times(found.wood, carried), max(along, across), True, told, settled)
    return TriedWood(piece.name, known, along, across, twist, carried, 0.0, found.faults)


def _named(found: Identified) -> str:
    words = {"along": found.along, "across": found.across, "twist": found.twist}
    return " and ".join(way for way, each in words.items() if each.measured)


def _of_a_bar(piece: Tried, settled: Percent, carried: Ratio, own: Ratio) -> TriedWood:
    """From its note along the grain, or from a push; all else in proportion, as its wood has it."""
    like = piece.like.timber
    rod, ratio = Rod(piece.length, piece.width, piece.thickness), like.longitudinal / like.shear_lt
    density = 1e6 * piece.mass / (piece.length * piece.width * piece.thickness)
    if math.isfinite(piece.along):
        modulus = modulus_tapped(rod, 1e-3 * piece.mass, piece.along, ratio)
        within, shear, how = math.hypot(2 * NOTE, 2 * SIZE), 0.0, "tapped"
    else:
        modulus = modulus_pushed(rod, piece.span, piece.force, piece.given, ratio)
        within, shear, how = math.hypot(GIVEN, 3 * SIZE), shear_over_bending(rod, piece.span, ratio), "pushed"
    if not LEAST < modulus < MOST or not 150.0 < density < 1400.0:  # kg/m3: from balsa to the heaviest woods that sink
        why = f"it would be {modulus:.0f} MPa along the grain and weigh {density:.0f} kg/m3, which no wood does"
        return _nothing(piece, (Fault(where=piece.name, what="weight, sizes and note do not go together", why=why,
                                      remedy=AGAIN),))  # fmt: skip
    along = math.hypot(within, own)
    share = modulus / like.longitudinal
    wood = replace(_times(like, share * carried), density=density)
    known = TimberKnown(wood, along, True, (f"{piece.name}: {how} along", *piece.like.told), settled)
    return TriedWood(piece.name, known, along, HANDBOOK_SPREAD, HANDBOOK_SPREAD, carried, shear, ())


def _nothing(piece: Tried, faults: tuple[Fault, ...]) -> TriedWood:
    """Nothing was found: the piece counts as its wood in the handbook."""
    spread = HANDBOOK_SPREAD
    return TriedWood(piece.name, piece.like, spread, spread, spread, 1.0, 0.0, faults)


def _times(wood: Timber, share: float) -> Timber:
    return replace(
        wood, longitudinal=wood.longitudinal * share, radial=wood.radial * share, tangential=wood.tangential * share,
        shear_lr=wood.shear_lr * share, shear_lt=wood.shear_lt * share, shear_rt=wood.shear_rt * share,
    )  # fmt: skip


def thickness_like(wanted: Mm, of: MPa, own: MPa, within: Ratio) -> tuple[Mm, Mm]:
    """How thick a plate of `own` stiffness must be to bend like one of thickness `wanted` and stiffness `of`: least and
    most.

    Bending goes with the thickness's third power; the range is that of the own stiffness.
    """
    least, most = (wanted * (of / (own * (1 + side * within))) ** (1 / 3) for side in (1, -1))
    return least, most
