"""Set-ups for the playing surface and the underside: arching and levelling."""

from gramil import names as n
from gramil.parts.records import BlockChoice
from gramil.quantities import Count, PerMm
from gramil.reference import Text, says
from gramil.setups.lines import stuff
from gramil.setups.setup import BigFigure, Setup, Table, skipped

OWNS = ("setup_",)


def setup_arch(
    board_curvature_nut: PerMm,
    board_curvature_end: PerMm,
    block_at_nut: BlockChoice,
) -> Setup:
    """Arch the playing surface: blocks, gauge cards, the order.

    Method: a cylinder has one radius; a cone one for each station, its radius straight between the ends.
    Source: common practice.
    """
    title = "Arch the playing surface"
    if not board_curvature_nut:
        return skipped("arch", title, 8, "the board is flat")
    cone = board_curvature_nut != board_curvature_end
    return Setup(
        "arch",
        title,
        8,
        (
            *_radii(cone),
            *_falls(),
            BigFigure(
                n.arching_edge_middle,
                says("Edge at fret {}, thick", n.station_middle_fret),
                says("± {}", n.limit_tolerance_height),
                "calipers",
            ),
        ),
        (
            "Draw the crest, and pencil the whole face.",
            "Plane facets first, high at the crest, down to the fall at either edge; check with the cards.",
            _block_order(cone),
            "Leave the pencil on the crest until the last strokes: what comes off there is missing under the frets.",
        ),
        says(
            "Calipers on both edges at fret {}: the two agree, each {} with the "
            "crest at {}. A crest off centre or a card at the wrong station shows here.",
            n.station_middle_fret,
            n.arching_edge_middle,
            n.thickness_before_levelling,
        ),
        ("edge tools", "sanding"),
        _blocks(cone) if block_at_nut.name != "none" else ("no sanding block is listed: plane to the gauge cards",),
        n.drawing_setup_arch,
        (n.arch_fall_at_nut_end, n.arching_fall_middle, n.arch_fall_at_tail_end),
        on=stuff("board", "board binding"),
    )


def _radii(cone: bool) -> tuple[BigFigure, ...]:
    near = says("± {}", n.limit_tolerance_radius)
    if not cone:
        return (BigFigure(n.arching_radius_nut, "Radius, all along", near, "gauge card"),)
    return (
        BigFigure(n.arching_radius_nut, "Radius at the nut", near, "gauge card"),
        BigFigure(n.arching_radius_end, "Radius at the tail end", near, "gauge card"),
    )


def _falls() -> tuple[BigFigure, ...]:
    near, tool = says("± {}", n.limit_tolerance_height), "straightedge on the crest, feeler"
    return (
        BigFigure(n.arch_fall_at_nut_end, "Fall at the edge, nut end", near, tool),
        BigFigure(n.arching_fall_middle, says("Fall at the edge, fret {}", n.station_middle_fret), near, tool),
        BigFigure(n.arch_fall_at_tail_end, "Fall at the edge, tail end", near, tool),
    )


def _block_order(cone: bool) -> str:
    if not cone:
        return "Block along the whole board, coarse to fine, straight along the centreline."
    return (
        "Work each block over its own third only, then blend with a straight beam held along the strings' lines: they "
        "spread toward the tail as the arch opens."
    )


def _blocks(cone: bool) -> tuple[Text, ...]:
    nut = says("block {}: off the arch by {} at the nut's edge", n.block_at_nut.name, n.block_at_nut.misfit)
    if not cone:
        return (nut + " (negative: it bears on the edges first)",)
    return (
        nut,
        says(
            "middle, radius {}: block {}, off by {}",
            n.arching_radius_middle,
            n.block_at_middle.name,
            n.block_at_middle.misfit,
        ),
        says(
            "tail end: block {}, off by {} (negative: it bears on the edges first)",
            n.block_at_end.name,
            n.block_at_end.misfit,
        ),
    )


def setup_level(
    board_level_underside: bool, board_curvature_nut: PerMm, station_middle_fret: Count, scale_frets: Count
) -> Setup:
    """Level the underside: what to plane off at each station, carried on the two edges.

    Method: the wedge is the difference of the arch's falls at the two ends.
    Source: common practice.
    """
    title = "Level the underside"
    if not board_level_underside:
        return skipped("level", title, 10, "the underside stays as it was planed")
    if not board_curvature_nut:
        return skipped("level", title, 10, "a flat board's edges are equal already")
    near, middle = says("± {}", n.limit_tolerance_height), station_middle_fret
    return Setup(
        "level",
        title,
        10,
        (
            BigFigure(
                n.thickness_to_plane[0], "Off the underside at the zero line", near, "calipers, before and after"
            ),
            BigFigure(n.thickness_to_plane[middle], says("Off at fret {}", n.station_middle_fret), near, "calipers"),
            BigFigure(n.thickness_to_plane[scale_frets], "Off at the last fret", near, "calipers"),
            BigFigure(n.thickness_wedge_angle, "The wedge; it belongs in the neck set", "", "worked out"),
            BigFigure(
                n.thickness_at_edge_treble[middle],
                says("Edge when done, fret {}", n.station_middle_fret),
                near,
                "calipers",
            ),
        ),
        (
            "Carry the board on its two edges with the crown hanging free: two rails, face down. Slots make it limp: "
            "support it along its whole length.",
            "Plane the underside parallel to the edges until they are of one thickness.",
            says("Measure what is left under the slots again: the least will be {}.", n.slot_left_least),
        ),
        says(
            "Calipers on one edge at the zero line and at the last fret: {} and {}. A board laid end "
            "for end shows twice the wedge here.",
            n.thickness_at_edge_treble[0],
            n.thickness_at_edge_treble[scale_frets],
        ),
        ("edge tools", "drum sander"),
        ("two rails of equal height, plane or thickness sander, calipers",),
        n.drawing_setup_level,
        (n.thickness_at_edge_treble[0], n.thickness_at_edge_treble[scale_frets]),
        (
            Table(
                "At each fret",
                (
                    ("plane off", n.thickness_to_plane),
                    ("crest then", n.thickness_at_crest),
                    ("edge then", n.thickness_at_edge_treble),
                    ("under slot", n.slot_left_least),
                ),
                tuple(range(scale_frets + 1)),
            ),
        ),
        box_near=near,
        on=stuff("board", "board binding"),
    )
