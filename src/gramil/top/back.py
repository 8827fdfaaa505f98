"""The back by the same code as the top: a plate with its own braces and dome, no hole and no load, and its modes."""

import math

from gramil.description.wood.timbers import TimberKnown
from gramil.parts.body_records import Brace, Crossing, Shell
from gramil.physics.plates.bar import Bar
from gramil.physics.plates.plate import Plate, spherical
from gramil.physics.plates.plies import Ply
from gramil.physics.plates.surety import FINAL, QUICK, within
from gramil.quantities import Mm, Ratio
from gramil.top.bars import bar_of, outline_of
from gramil.top.braced import Attempt, Braced, attempted
from gramil.top.mode import Mode

OWNS = ("rear_",)


def rear_bars(
    brace_list: tuple[Brace, ...], brace_crossings: tuple[Crossing, ...], fitted_braces: TimberKnown
) -> tuple[Bar, ...]:
    """The back's braces as bars: as high along their length as they are cut, notched where they cross.

    Method: as the top's.
    Source: common practice.
    """
    return tuple(bar_of(each, brace_crossings, fitted_braces) for each in brace_list if each.plate == "back")


def rear_plate(
    body_shells: tuple[Shell, ...],
    body_back_thickness: Mm,
    body_back_radius: Mm,
    body_length: Mm,
    rear_bars: tuple[Bar, ...],
    timber_back: TimberKnown,
) -> tuple[Braced, ...]:
    """The braced back, ready to be solved; none without a body.

    Method: inside the linings, arched as its dome, clamped round its edge.
    Source: common practice.
    """
    rise = spherical(body_back_radius, (body_length / 2, 0.0)) if math.isfinite(body_back_radius) else None
    return tuple(
        Braced(
            "back", Plate(outline_of(shell), Ply(timber_back.timber), body_back_thickness, (), rise), rear_bars, (), (),
            math.nan, math.nan, math.nan,
        )
        for shell in body_shells
    )  # fmt: skip


def rear_coarse(rear_plate: tuple[Braced, ...]) -> tuple[Attempt, ...]:
    """The back on coarse triangles, or why it cannot be solved.

    Method: triangles of 14 mm.
    Source: common practice in such calculations.
    """
    return tuple(attempted(each, QUICK) for each in rear_plate)


def rear_fine(rear_plate: tuple[Braced, ...]) -> tuple[Attempt, ...]:
    """The back on the triangles that answers are given by, or why it cannot be solved.

    Method: triangles of 10 mm.
    Source: common practice in such calculations.
    """
    return tuple(attempted(each, FINAL) for each in rear_plate)


def rear_modes(
    rear_coarse: tuple[Attempt, ...], rear_fine: tuple[Attempt, ...], timber_back: TimberKnown
) -> tuple[Mode, ...]:
    """The back's lowest modes, on a rigid rim, with nothing but the back moving.

    Method: the braced plate's lowest ten; the band is that of its stiffness, by its root.
    Source: as the top's.
    """
    found = []
    tops = zip((top for each in rear_coarse for top in each.tops), (top for each in rear_fine for top in each.tops),
               strict=False)  # fmt: skip
    for quick, final in tops:
        pairs = zip(quick.modes.frequencies.tolist(), final.modes.frequencies.tolist(), strict=True)
        for number, (coarse, fine) in enumerate(pairs, 1):
            off = float(within(coarse, fine))
            found.append(_mode(f"mode {number}", fine, off, timber_back.spread))
    return tuple(found)


def _mode(name: str, hertz: float, off: float, spread: Ratio) -> Mode:
    least, most = (hertz * math.sqrt(1 + side * spread) + side * off for side in (-1, 1))
    return Mode(name, hertz, off, least, most)
