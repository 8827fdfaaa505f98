"""Drawings of a plan while it is said which line is what: held in memory, the last few, and gone with the bench."""

import secrets
from collections import OrderedDict
from dataclasses import dataclass, field
from threading import Lock

from gramil.description.plan.lines import PlanLines, plan_lines

KEPT = 4
"""How many are kept; beyond that, the one looked at longest ago is forgotten."""


@dataclass
class HeldDrawings:
    """The drawings that are held by their keys, the last looked at last."""

    known: OrderedDict[str, PlanLines] = field(default_factory=OrderedDict)
    lock: Lock = field(default_factory=Lock)

    def hold(self, text: str, name: str) -> str:
        """Holds a drawing and gives its key. Raises MakersFault if it is not a drawing."""
        lines, key = plan_lines(text, name), secrets.token_hex(8)
        with self.lock:
            self.known[key] = lines
            while len(self.known) > KEPT:
                self.known.popitem(last=False)
        return key

    def found(self, key: str) -> PlanLines | None:
        """The drawing of that key, if it is still held."""
        with self.lock:
            if key in self.known:
                self.known.move_to_end(key)
            return self.known.get(key)
