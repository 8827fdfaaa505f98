"""A piece that was tapped or pushed, as an answer."""

from dataclasses import dataclass

from gramil.top.tapped import TriedWood


@dataclass(frozen=True)
class Tap:
    """What a piece came to: stiffness along and across the grain and in twist (shear) in MPa at a `moisture` (%), each
    with how far off it may be (a share), its density (kg/m3), by how many times it was `carried` to that moisture, and
    faults in words. Not `measured`: a handbook's figures are used.
    """

    name: str
    measured: bool
    along: float
    along_within: float
    across: float
    across_within: float
    twist: float
    twist_within: float
    density: float
    moisture: float
    carried: float
    faults: tuple[str, ...]


def tap_answer(found: TriedWood) -> Tap:
    """What a piece came to."""
    wood, known = found.known.timber, found.known
    return Tap(
        found.name, known.measured, wood.longitudinal, found.along_within, wood.radial, found.across_within,
        wood.shear_lr, found.twist_within, wood.density, known.moisture, found.carried, tuple(map(str, found.faults)),
    )  # fmt: skip
