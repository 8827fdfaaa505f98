"""Lines that several sheets share: a jig with the day it was checked, and the cautions for the tool in hand."""

from gramil.description.records import Jig

POWERED = "Guards on, push blocks in hand, eyes and ears covered. Local rules and the makers' manuals come first."
BY_HAND = "Work clamped, both hands behind the edge. Local rules and the makers' manuals come first."
DUST = "{care_dust}"


def jig_line(address: str, jig: Jig) -> str:
    """The jig at an address, its constant, and the day on which that was checked."""
    checked = f"checked {{{address}.checked}}" if jig.checked else "never checked: measure it before use"
    return f"{{{address}.name}}, constant {{{address}.constant}}, {checked}"
