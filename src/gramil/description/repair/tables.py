"""The table for a guitar that came in: what is to be done to it.

With this table nothing of the guitar is required but its frets and strings: what is not given is not known, and is
not judged.
"""

from typing import Literal

from gramil.description.fields import usual
from gramil.description.table import Table


class Repair(Table):
    """A guitar that came in for repair. With this table, whatever is not given is unknown, and not judged."""

    refret: bool = usual(False, "the frets stay", "whether the frets are drawn and new ones pressed")
    nut: bool = usual(False, "the nut stays", "whether a new nut is made")
    saddle: bool = usual(False, "the saddle stays", "whether a new saddle is made")
    reset: bool = usual(False, "the neck stays", "whether the neck is taken off and set anew")
    bridge: Literal["stays", "reglued", "moved"] = usual(
        "stays", "the bridge stays", "whether the bridge is taken off and glued where it was, or elsewhere"
    )

    @property
    def described(self) -> bool:
        """Whether the guitar came in for repair; lists of operations ask it as `repair.described`."""
        return bool(self.model_fields_set)
