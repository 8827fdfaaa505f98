"""The table for how an instrument is built: choices that no drawing shows, and by which the list of work goes."""

from typing import Literal

from gramil.description.fields import usual
from gramil.description.table import Table

CLOSED_PORED = ("maple", "cherry", "beech", "birch", "poplar", "basswood", "lime", "linden", "spruce", "cypress")
"""Woods, by the last word of their names, whose pores are too fine to fill: common practice, from memory."""


class WorkTable(Table):
    """How it is built. The list of work and its sheets depend on these; no figure does."""

    wood: Literal["new", "settled"] = usual(
        "new", "common practice", "whether its wood has yet to settle in the shop, for weeks, before it is cut"
    )
    neck_joint: Literal["glued", "bolted", "dowelled", "built on"] = usual(
        "glued", "common practice", "what holds the neck; built on: the sides are let into its heel"
    )
    neck_set: Literal["after the finish", "before the finish"] = usual(
        "after the finish", "common practice", "when the neck is set for good"
    )
    heel_cap: bool = usual(True, "most have one", "whether the heel has a cap")
    head_mark: bool = usual(True, "most bear one", "whether a mark or inlay is let into the head")
    back_strip: bool = usual(False, "most go without", "whether an ornament is let into the back's joint, outside")
    side_strips: Literal["between the linings", "before the linings", "none"] = usual(
        "between the linings", "common practice", "when strips are glued across the sides, against splits"
    )
    linings: Literal["bought", "made here"] = usual(
        "bought", "common practice", "whether the linings are bought with their kerfs"
    )
    finish: Literal["lacquer", "shellac", "oil"] = usual(
        "lacquer", "common practice", "lacquer or varnish in coats, shellac rubbed on by hand, or oil rubbed in"
    )
    end_pin: Literal["fitted", "none"] = usual("fitted", "steel strings", "whether there is a pin for a strap")


def open_pored(wood: str) -> bool:
    """Whether a wood of this name has pores that a finish would sink into."""
    return not wood.strip().lower().endswith(CLOSED_PORED)
