"""Lines that several sheets share: a jig with the day it was checked, and the cautions for the tool in hand."""

from gramil import names as n
from gramil.description.records import Jig
from gramil.reference import Text, says

POWERED = "Guards on, push blocks in hand, eyes and ears covered. Local rules and the makers' manuals come first."
BY_HAND = "Work clamped, both hands behind the edge. Local rules and the makers' manuals come first."
DUST = says("{}", n.care_dust)


def jig_line(jig: "n.JigRef", used: Jig) -> Text:
    """The jig, its constant, and the day on which that was checked."""
    checked = says("checked {}", jig.checked) if used.checked else "never checked: measure it before use"
    return says("{}, constant {}, ", jig.name, jig.constant) + checked
