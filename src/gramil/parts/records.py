"""Records that several parts hand to one another: choices made from what the shop has."""

from dataclasses import dataclass

from gramil.quantities import Count, Mm, Mm2, Ratio


@dataclass(frozen=True)
class WireFit:
    """Wire in one saw's kerf. `gap` is kerf less tang, `bite` what each bead bites a side, wedges are a slot's."""

    name: str
    gap: Mm
    bite: Mm
    wedge_least: Mm
    wedge_most: Mm


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
