"""What several sheets share: the stuff worked, and a jig with the day it was checked."""

from gramil import names as n
from gramil.description.records import Jig
from gramil.reference import Text, says


def stuff(*parts: str) -> tuple["n.StuffRef", ...]:
    """The stuff that a set-up works, by the parts' names: their dust and their permits go onto its sheet."""
    return tuple(n.stuff_list[part] for part in parts)


def jig_line(jig: "n.JigRef", used: Jig) -> Text:
    """The jig, its constant, and the day on which the constant was checked."""
    checked = says("checked {}", jig.checked) if used.checked else "never checked: measure it before use"
    return says("{}, constant {}, ", jig.name, jig.constant) + checked
