"""Set-ups for the board's edges: the taper, and the ledge for the binding."""

from gramil import names as n
from gramil.description.records import Jig
from gramil.parts.records import LedgeChoice
from gramil.quantities import Mm
from gramil.reference import says
from gramil.setups.lines import jig_line, stuff
from gramil.setups.setup import BigFigure, Setup, skipped

OWNS = ("setup_",)


def setup_taper(jig_taper: Jig, taper_edge_nut: Mm, taper_edge_tail: Mm) -> Setup:
    """Cut both finished edges: carriage settings from its own constant, or marks where there is no carriage.

    Method: face up first the edge on which a cutter from below is fed against its turn down the taper, from the
    centreline; then the other, turned over, from the centreline again, or from the finished edge with the whole taper.
    Source: common practice.
    """
    has_jig = bool(jig_taper.purpose)
    fits = min(taper_edge_nut, taper_edge_tail) > 0
    return Setup(
        "taper",
        "Taper the edges",
        5,
        _carriage() if has_jig else _marks(),
        _carriage_steps(fits) if has_jig else _mark_steps(),
        says(
            "After the first edge, measure from the centreline square across to it: {} at the nut end, "
            "{} at the tail end. A taper set the wrong way round, or doubled, shows here.",
            n.taper_half_width_nut,
            n.taper_half_width_tail,
        ),
        ("table saw",) if has_jig else ("band saw", "edge tools"),
        (
            jig_line(n.jig_taper, jig_taper) + ": its reference face to the cutter's near side",
            says("half taper {}, whole taper {}", n.board_half_taper_angle, n.board_taper_angle),
        )
        if has_jig
        else (
            "no jig for the taper is listed: saw outside the marks and plane to them",
            says("half taper {}", n.board_half_taper_angle),
        ),
        n.drawing_setup_taper,
        (n.taper_half_width_nut, n.taper_half_width_tail, n.nut_width, n.board_width_at_tail),
        box_near=says("± {}", n.limit_tolerance_height),
        on=stuff("board"),
        instead=() if has_jig else ("table saw",),
    )


def _carriage() -> tuple[BigFigure, ...]:
    near, tool = says("± {}", n.limit_tolerance_height), "calipers from the reference face"
    return (
        BigFigure(n.taper_centre_nut, "Reference face to the centreline at the nut end, either edge", near, tool),
        BigFigure(n.taper_centre_tail, "Reference face to the centreline at the tail end, either edge", near, tool),
        BigFigure(n.taper_edge_nut, "Or, second edge: face to the finished edge's corner at the nut end", near, tool),
        BigFigure(n.taper_edge_tail, "Or, second edge: face to the finished edge's corner at the tail end", near, tool),
        BigFigure(n.nut_width, "Finished width at the zero line", says("± {}", n.limit_tolerance_width), "calipers"),
        BigFigure(
            n.board_width_at_tail, "Finished width at the tail end", says("± {}", n.limit_tolerance_width), "calipers"
        ),
    )


def _marks() -> tuple[BigFigure, ...]:
    near = says("± {}", n.limit_tolerance_height)
    return (
        BigFigure(n.taper_half_width_nut, "Centreline to either edge at the nut end", near, "calipers"),
        BigFigure(n.taper_half_width_tail, "Centreline to either edge at the tail end", near, "calipers"),
        BigFigure(n.nut_width, "Finished width at the zero line", says("± {}", n.limit_tolerance_width), "calipers"),
        BigFigure(
            n.board_width_at_tail, "Finished width at the tail end", says("± {}", n.limit_tolerance_width), "calipers"
        ),
    )


def _carriage_steps(fits: bool) -> tuple[str, ...]:
    narrow = "A figure here is negative: this carriage is too narrow for this board; use a wider one."
    return (
        says(
            "The {} edge first, face up: set the centreline from the reference face at both ends, clamp, cut.",
            n.feed_other_edge,
        ),
        says(
            "The {} edge, board turned over on its long axis: the same two distances from the centreline "
            "on its back; or lay the two corners of the finished {} edge to their own figures.",
            n.feed_agreeing_edge,
            n.feed_other_edge,
        ),
        "Both edges go from the wide end to the narrow: the tail meets the cutter first, against its turn, and the "
        "grain runs out downhill.",
        *(() if fits else (narrow,)),
    )


def _mark_steps() -> tuple[str, ...]:
    return (
        "Mark both distances to either side of the centreline at both ends, and join them with a knife.",
        "Saw a little outside the lines; plane to them, or run a bearing along a clamped straightedge.",
        "Plane both edges from the wide end to the narrow, tail to nut, so that the grain runs out downhill.",
    )


def setup_ledge(core_inset: Mm, ledge_choice: LedgeChoice) -> Setup:
    """Cut the ledge for the binding with a bearing on the finished edge.

    Method: cutter and bearing leave (cutter - bearing) / 2; feed by the router's turn and by the grain.
    Source: common practice.
    """
    title = "Cut the ledge for the binding"
    if not core_inset:
        return skipped("ledge", title, 6, "the board is not bound")
    if ledge_choice.name == "none":
        return _ledge_by_hand(title)
    return Setup(
        "ledge",
        title,
        6,
        (
            BigFigure(n.ledge_choice.diameter, "Cutter", "as measured", "calipers"),
            BigFigure(n.ledge_choice.bearing, "Bearing, on the finished edge", "as measured", "calipers"),
            BigFigure(
                n.ledge_choice.ledge,
                "Ledge that they leave",
                says("± {}", n.limit_slot_position),
                "calipers in an offcut",
            ),
            BigFigure(
                n.ledge_choice.proud,
                "Binding then stands proud by",
                says("{} to {}", n.limit_binding_proud_least, n.limit_binding_proud_most),
                "straightedge and feeler",
            ),
        ),
        (
            "Take off in two passes or more; the last one light.",
            says(
                "Router on the face, or the board face down at the table: on the {} edge go from tail to "
                "nut. There the cutter's turn and the grain agree.",
                n.feed_agreeing_edge,
            ),
            says(
                "On the {} edge they disagree. Turn the board over, face away from the motor: then it too "
                "goes from tail to nut, against the cutter's turn.",
                n.feed_other_edge,
            ),
            "If it cannot be turned: score the ledge's wall with a knife in a gauge, then go from nut to tail, against "
            "the turn, in light passes.",
            "Where the grain rises toward the cutter, stop short and pare that stretch by hand; or with the turn take "
            "a last hair only, the board clamped and the router in a carriage or a sled.",
        ),
        says(
            "Run the cutter along an offcut with a straight edge: the ledge reads {}, and the binding "
            "laid on it stands proud by {}. A wrong bearing shows here.",
            n.ledge_choice.ledge,
            n.ledge_choice.proud,
        ),
        ("router table", "knife", "edge tools"),
        (
            says("{}", n.ledge_choice.name),
            says("binding {}, purfling {}, together {}", n.binding_thickness, n.binding_purfling, n.core_inset),
        ),
        n.drawing_setup_ledge,
        (n.ledge_choice.ledge, n.ledge_choice.proud),
        on=stuff("board"),
    )


def _ledge_by_hand(title: str) -> Setup:
    return Setup(
        "ledge",
        title,
        6,
        (
            BigFigure(
                n.core_inset,
                "In from the finished edge, square to it",
                says("± {}", n.limit_tolerance_height),
                "marking gauge",
            ),
        ),
        (
            "No cutter with a bearing is listed: gauge the line from the finished edge, and plane or saw in to it.",
            "Work from tail to nut on both edges, so that the grain runs out downhill.",
        ),
        says("Lay the binding against the edge: with it the width at the zero line is {}.", n.nut_width),
        ("knife", "hand saw", "edge tools"),
        (says("binding {}, purfling {}", n.binding_thickness, n.binding_purfling),),
        n.drawing_setup_ledge,
        (n.core_inset,),
        on=stuff("board"),
        instead=("router table",),
    )
