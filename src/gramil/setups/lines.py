"""Lines that several sheets share: a jig with the day it was checked, and the cautions for the tool in hand."""

from collections.abc import Mapping

from gramil import names as n
from gramil.description.records import Jig
from gramil.reference import Ref, Text, says

POWERED = "Guards on, push blocks in hand, eyes and ears covered. Local rules and the makers' manuals come first."
BY_HAND = "Work clamped, both hands behind the edge. Local rules and the makers' manuals come first."
DUST = says("{}", n.care_dust)
HOT = (
    "Hot iron, steam and wet wood: gloves, eyes covered, no live lead near water. The iron's and the mould's makers' "
    "manuals come first."
)
PLASTIC = (
    "Plastic gives off fumes when it is warmed, and celluloid burns fiercely: warm air or water, no iron, no flame, "
    "window open."
)
SOLVENT = "Glue for plastic is a solvent: window open, no flame, none of it on the finish or on bare spruce."

SAID: Mapping[str, tuple[str, ...]] = {
    "neck-blank": ("dust",),
    "neck-rod": ("router",),
    "neck-carve": ("edge", "dust"),
    "slot": ("face_down", "dust"),
    "taper": ("saw",),
    "ledge": ("router",),
    "board-binding": ("binding",),
    "arch": ("dust",),
    "saddle": ("dust",),
    "strings": ("strings",),
    "sides": ("heat",),
    "brace-stock": ("edge",),
    "binding-bend": ("binding",),
    "flush": ("router",),
    "channels": ("router",),
}
"""By set-up the cautions of its operation, by their keys in the list of operations, that its own lines say already."""


def unknown_stuff(name: Ref[str], table: str) -> Text:
    """Why something is taken for plastic that is not said to be, and where its maker says what it is.

    `name` is what it is called, `table` the description's.
    """
    return says(
        "No wood called {} is known: it is taken for celluloid until its maker's sheet says otherwise. "
        f"`material` under [{table}] settles it.",
        name,
    )


def jig_line(jig: "n.JigRef", used: Jig) -> Text:
    """The jig, its constant, and the day on which that was checked."""
    checked = says("checked {}", jig.checked) if used.checked else "never checked: measure it before use"
    return says("{}, constant {}, ", jig.name, jig.constant) + checked
