"""The set-up for gluing the binding to the board: as wood or as plastic, or both ways if it is not said which."""

from gramil import names as n
from gramil.quantities import Count, Mm
from gramil.reference import says
from gramil.setups.lines import stuff
from gramil.setups.setup import BigFigure, Setup, skipped

OWNS = ("setup_",)


def setup_board_binding(
    core_inset: Mm,
    binding_purfling: Mm,
    binding_tail: bool,
    binding_material: str,
    station_middle_fret: Count,
) -> Setup:
    """Glue binding and its lines to the board's edges.

    Method: dry first; the widths with the binding on are the finished ones. Plastic is glued with its solvent.
    Source: common practice.
    """
    title = "Glue the binding to the board"
    if not core_inset:
        return skipped("board-binding", title, 7, "the board is not bound")
    near, middle = says("± {}", n.limit_tolerance_width), n.board_width_at_fret[station_middle_fret]
    return Setup(
        "board-binding",
        title,
        7,
        (
            BigFigure(
                n.core_inset, "Binding, with any line inside it", says("± {}", n.limit_tolerance_height), "calipers"
            ),
            BigFigure(n.board_width_at_fret[0], "Width at the zero line, bound", near, "calipers"),
            BigFigure(middle, says("Width at fret {}, bound", n.station_middle_fret), near, "calipers"),
            BigFigure(n.limit_gluing_humidity, "Air for gluing, relative humidity", "", "hygrometer"),
        ),
        (
            "Lay every strip in dry"
            + (", its line against the ledge's wall," if binding_purfling else "")
            + " and tape it along.",
            *(
                ("Mitre the corners at the tail: the strip across the tail first, then both edges to it.",)
                if binding_tail
                else ()
            ),
            *_glued(binding_material),
            "Scrape it flush with face and edge once it is hard, never file across it.",
        ),
        says(
            "Dry, no light shows between strip and ledge, and the width at the zero line reads {} or a little more.",
            n.board_width_at_fret[0],
        ),
        ("glue", "clamps", "scraper", *_by(binding_material)),
        (says("binding {}, purfling {}", n.binding_thickness, n.binding_purfling), "tape, cauls, scraper"),
        None,
        (n.board_width_at_fret[0], middle),
        on=stuff("board binding", "board"),
    )


def _glued(material: str) -> tuple[str, ...]:
    """How it is glued, depending on its material."""
    wood = "Wood: glue on both faces, tape every finger's breadth, and leave it as long as the glue asks for."
    plastic = "Plastic: its own cement, a stretch at a time, pressed until it holds; a day before it is scraped."
    return {"wood": (wood,), "not said": (wood, plastic)}.get(material, (plastic,))


def _by(material: str) -> tuple[str, ...]:
    """What wood is bent with, what plastic is glued with, and both if it is not said which it is."""
    wood, plastic = ("bending iron",), ("warm plastic", "plastic cement")
    return {"wood": wood, "not said": (*wood, *plastic)}.get(material, plastic)
