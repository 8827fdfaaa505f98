"""Records that several parts hand to one another: choices made from what the shop has."""

from dataclasses import dataclass

from gramil.quantities import Count, Mm, Mm2, Ratio
from gramil.shapes.profile import Profile


@dataclass(frozen=True)
class WireFit:
    """Wire in one saw's kerf. `gap` is kerf less tang, `bite` how deep each bead goes into either side of the slot;
    wedges are those that fill one slot.
    """

    name: str
    gap: Mm
    bite: Mm
    wedge_least: Mm
    wedge_most: Mm


@dataclass(frozen=True)
class FitInOld:
    """A wire of the shop in old slots: slot less tang at the `narrowest` and the `widest` slot, what each bead bites a
    side in the widest, and the room under the tang in the shallowest.
    """

    name: str
    narrowest: Mm
    widest: Mm
    bite: Mm
    room: Mm


@dataclass(frozen=True)
class VerdictOnOld:
    """What speaks against a wire in old slots, in words."""

    name: str
    words: str


@dataclass(frozen=True)
class CrownOnOld:
    """A wire's crown against old ones: its size, how far it stands over the highest old one before dressing, and how
    much `higher` it is dressed than the old one at fret 12 (the action there falls by that much).
    """

    name: str
    width: Mm
    height: Mm
    over_old: Mm
    higher: Mm


@dataclass(frozen=True)
class WedgeInOld:
    """How far a wire wedges the mean old slot open: by its tang alone, and with a share of its beads."""

    name: str
    least: Mm
    most: Mm


@dataclass(frozen=True)
class BowOfOld:
    """The back-bow that a whole row of a wire gives the neck, at the least and at the most."""

    name: str
    least: Mm
    most: Mm


@dataclass(frozen=True)
class LedgeChoice:
    """A cutter with one of its bearings: the ledge it leaves, and how far binding and purfling stand proud."""

    name: str
    diameter: Mm
    bearing: Mm
    ledge: Mm
    proud: Mm


@dataclass(frozen=True)
class BlankChoice:
    """A piece in stock that yields the board: what it has over on each side, and the wood wasted, in plan."""

    name: str
    wood: str
    length_over: Mm
    width_over: Mm
    thickness_over: Mm
    waste: Mm2


@dataclass(frozen=True)
class BlockChoice:
    """A sanding block against the arch at one station: `misfit` is the gap at the board's edge, hollow positive."""

    name: str
    radius: Mm
    misfit: Mm


@dataclass(frozen=True)
class SlotOption:
    """One way of cutting the slots: what to set from where, what it leaves, the stiffness kept at the worst slot."""

    name: str
    bottom: str
    cut: str
    setting: Mm
    measured_from: str
    then: str
    left_at_crest: Mm
    left_at_end: Mm
    pilot_at_end: Mm
    stiffness_kept: Ratio
    stiffness_kept_with_neck: Ratio


@dataclass(frozen=True)
class TemplateMatch:
    """An index template on hand held against this scale: the most that any notch is out, and whether it serves."""

    name: str
    frets: Count
    worst: Mm
    serves: bool


@dataclass(frozen=True)
class Run:
    """A line in straight pieces, as points in mm; empty where there is none."""

    points: tuple[tuple[float, float], ...] = ()


@dataclass(frozen=True)
class CarveShape:
    """The back's shape at fret 1 and at fret 10, each one wide and one deep."""

    first: Profile
    tenth: Profile


@dataclass(frozen=True)
class CarveStation:
    """The neck's back where it is gauged: half a superellipse below the board, as wide as that.

    `depth` is of the neck's own wood, `whole` with the board at its crest; `mix` weighs `blend` against `exponent`.
    """

    name: str
    fret: Ratio
    position: Mm
    width: Mm
    depth: Mm
    whole: Mm
    exponent: Ratio
    blend: Ratio
    mix: Ratio

    @property
    def profile(self) -> Profile:
        """The back's curve below the joint of board and neck."""
        return Profile(self.width / 2, self.depth, self.exponent, self.blend, self.mix)


@dataclass(frozen=True)
class CarveLine:
    """An edge between two flats at one station: how far it lies from the centreline, and below the joint."""

    name: str
    station: str
    number: Count
    centre: Mm
    joint: Mm


@dataclass(frozen=True)
class NeckPiece:
    """One piece of wood that a neck is made of, as it is to be cut."""

    name: str
    length: Mm
    width: Mm
    thickness: Mm


@dataclass(frozen=True)
class NeckYield:
    """A piece in stock: how many whole necks it gives, and what it has over in thickness."""

    name: str
    necks: Count
    length: Mm
    width: Mm
    thickness: Mm
    thickness_over: Mm
    used: Ratio


@dataclass(frozen=True)
class PieceOnStock:
    """Where a piece of the neck lies on the stock that it is cut from: its near corner, and its size."""

    name: str
    along: Mm
    across: Mm
    length: Mm
    width: Mm
