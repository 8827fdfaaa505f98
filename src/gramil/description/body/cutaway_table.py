"""The table for a cutaway, out of the treble side of an outline that is alike left and right."""

from collections.abc import Mapping
from typing import Any, Self

from pydantic import model_validator

from gramil.description.fields import Length, usual
from gramil.description.table import Table
from gramil.shapes.cutaway import Cutaway


class CutawayTable(Table):
    """A cutaway on the treble side, by a few measures; leave the table out for none.

    From the neck's end the side runs level with the centreline, round a hollow, over the horn and back onto the
    outline. The hollow's radius follows from the rest. What these measures do not draw, treble_points in [body] do.
    """

    depth: Length | None = usual(
        None, "no cutaway", "along, from the body's edge at the neck to the hollow's deepest place", gt=0, le=400
    )
    horn: Length | None = usual(
        None, "no cutaway", "the horn's width: across, from the hollow's deepest place to the outline", gt=0, le=300
    )
    radius: Length = usual(0.0, "pointed", "radius of the horn's end; 0 for a point", ge=0, le=100)
    heel: Length = usual(
        30.0,
        "common practice, from memory: 29 to 32 mm",
        "from the centreline to where the cutaway begins: room for the heel",
        gt=0,
    )

    @model_validator(mode="before")
    @classmethod
    def _on_the_treble_side(cls, given: Any) -> Any:
        if isinstance(given, Mapping) and "side" in given:
            raise ValueError(
                "a cutaway by measures is on the treble side: leave side out. One on the bass side, or on both, is "
                "drawn: body.points with it for the bass half, body.treble_points for the treble half"
            )
        return given

    @model_validator(mode="after")
    def _together(self) -> Self:
        if (self.depth is None) != (self.horn is None):
            raise ValueError("give depth and horn together")
        return self

    @property
    def described(self) -> bool:
        """Whether there is a cutaway by measures."""
        return self.depth is not None

    @property
    def shape(self) -> Cutaway | None:
        """Its measures, or None where there is none."""
        if self.depth is None or self.horn is None:
            return None
        return Cutaway(self.depth, self.horn, self.radius, self.heel)
