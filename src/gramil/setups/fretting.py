"""Set-ups for wire and markers, and the table that a caliper is read against."""

from gramil import names as n
from gramil.description.records import Saw
from gramil.in_shop_units import in_shop_units
from gramil.parts.records import WireFit
from gramil.quantities import Count, Mm, PerMm
from gramil.reference import says
from gramil.setups.lines import stuff
from gramil.setups.setup import BigFigure, Setup, Table, skipped

OWNS = ("setup_",)


def setup_wire(
    wire_fits: tuple[WireFit, ...],
    saw_main: Saw,
    slot_first: Count,
    scale_frets: Count,
    wire_nip_back: Mm,
    board_curvature_nut: PerMm,
) -> Setup:
    """Cut, bend and nip the wire for every fret; how it fits the kerf; whether there is enough.

    Method: each length is the fret's line and some over; the whole has a tenth to spare.
    Source: common practice.
    """
    row = next((number for number, fit in enumerate(wire_fits, 1) if fit.name == saw_main.name), 0)
    return Setup(
        "wire",
        "Wire schedule",
        11,
        (
            BigFigure(n.wire_total, "Wire for the board, some to spare", says("on hand: {}", n.wire_on_hand), "rule"),
            *_bends(board_curvature_nut, slot_first, scale_frets),
            *_nip(wire_nip_back),
            *_fit(row),
        ),
        (
            "Cut each fret from the table, and keep them in order on a numbered rack.",
            "Bend them a little tighter than the board: the ends go home first."
            if board_curvature_nut
            else "The board is flat: straighten the wire.",
            *_nip_step(wire_nip_back),
            "Press or hammer from the ends in; trim, then bevel.",
        ),
        "Press one scrap into the offcut from the slots and pull it out with pincers: it should need a firm pull, and "
        "the crown should have seated. A wrong wire shows here.",
        ("nippers", "fret press", "fret files"),
        (
            says(
                "wire {}: crown {} by {}, tang {}, over the beads {}",
                n.wire_name,
                n.wire_crown_width,
                n.wire_crown_height,
                n.wire_tang_thickness,
                n.wire_bead_thickness,
            ),
        ),
        n.drawing_setup_wire,
        (n.wire_tang_thickness, n.wire_bead_thickness, n.wire_tang_depth),
        (
            Table(
                "Each fret",
                (("cut", n.wire_cut), ("across the board", n.wire_line), ("bend to radius", n.wire_bend_radius)),
                tuple(range(slot_first, scale_frets + 1)),
            ),
        ),
        box_near=says("± {}", n.limit_tolerance_fit),
        on=stuff("board"),
    )


def _bends(curvature: float, first: int, last: int) -> tuple[BigFigure, ...]:
    if not curvature:
        return ()
    near, tool = says("± {}", n.limit_tolerance_radius), "radius card"
    return (
        BigFigure(n.wire_bend_radius[first], "Bend to, first fret", near, tool),
        BigFigure(n.wire_bend_radius[last], "Bend to, last fret", near, tool),
    )


def _nip(nip_back: float) -> tuple[BigFigure, ...]:
    if not nip_back:
        return ()
    return (
        BigFigure(n.wire_nip_back, "Nip the tang back, each end", says("± {}", n.limit_tolerance_height), "calipers"),
    )


def _nip_step(nip_back: float) -> tuple[str, ...]:
    if not nip_back:
        return ("The board is unbound: the tang runs right through.",)
    return ("Nip the tang back from where the finished edge will be; the crown runs over the binding.",)


def _fit(row: int) -> tuple[BigFigure, ...]:
    if not row:
        return ()
    return (
        BigFigure(
            n.wire_fits[row].gap,
            "Kerf less tang",
            says("{} to {}", n.limit_fit_tightest, n.limit_fit_loosest),
            "calipers, test cut",
        ),
        BigFigure(
            n.wire_fits[row].bite, "Each bead bites", says("{} or more", n.limit_bead_bite_caution), "worked out"
        ),
    )


OVER_A_ROD = ", and less than what is left over a rod's channel"


def setup_markers(
    markers_frets: tuple[int, ...], markers_double: tuple[int, ...], markers_face: bool, neck_rod: str, core_inset: Mm
) -> Setup:
    """Drill for the markers on the face and the dots on the bass edge.

    Method: half way between a fret and the one before it.
    Source: common practice.
    """
    title = "Markers"
    if not markers_frets:
        return skipped("markers", title, 12, "no fret carries a marker")
    if not markers_face:
        return skipped("markers", title, 12, "the dots are on the bass edge alone: see the side dots' own sheet")
    first = markers_frets[0]
    return Setup(
        "markers",
        title,
        12,
        (
            BigFigure(n.markers_diameter, "Hole in the face", "the marker pushes in by hand", "a marker"),
            BigFigure(n.markers_side_diameter, "Hole in the bass edge", "the dot pushes in by hand", "a dot"),
            BigFigure(
                n.marker_position[first],
                says("Zero line to the first, before fret {}", n.markers_frets[1]),
                says("± {}", n.limit_tolerance_outline),
                "rule",
            ),
            BigFigure(
                n.marker_side_depth[first],
                "Side dot below the face's edge, there",
                says("± {}", n.limit_tolerance_outline),
                "marking gauge",
            ),
        ),
        (
            "Mark each on the centreline from the zero line, from the table; prick the centre. A stop on the bit.",
            *(
                (says("Frets with two: {}. Each goes its own distance from the centreline.", n.markers_double),)
                if markers_double
                else ()
            ),
            f"Drill to less than the marker's thickness{OVER_A_ROD if neck_rod != 'none' else ''}.",
            "Side dots on the bass edge, in line with the face's" + ("; into the binding." if core_inset > 0 else "."),
        ),
        says(
            "Dividers set to half the gap between the two frets: the first mark, at {}, lies in the middle of it.",
            n.marker_position[first],
        ),
        ("drill press",),
        (says("brad-point bits {} and {}, depth stop, dividers", n.markers_diameter, n.markers_side_diameter),),
        n.drawing_setup_markers,
        (n.marker_position[first],),
        _marker_tables(markers_frets, markers_double),
        on=stuff("board", "board binding", "shell"),
    )


def _marker_tables(frets: tuple[int, ...], double: tuple[int, ...]) -> tuple[Table, ...]:
    columns = (("zero line to centre", n.marker_position), ("side dot below face", n.marker_side_depth))
    single = Table("Each marker", columns, frets)
    if not double:
        return (single,)
    return (single, Table("Frets with two", (("centreline to each", n.marker_offset),), double))


def setup_caliper(scale_frets: Count, station_fanned: bool, instrument_units: str) -> Setup:
    """The caliper table: every fret from the zero line, in both units.

    Method: the cumulative figures are for working; fret to fret is for checking only, since its errors add up.
    Source: common practice.
    """
    off = in_shop_units("a tenth of a millimetre", instrument_units)
    little = "a tenth" if instrument_units == "mm" else off
    columns = [
        ("from the zero line", n.fret_position),
        ("from the fret before", n.fret_step),
        (f"off by {little}", n.fret_cents_per_tenth),
    ]
    square = "Square to the centreline."
    fanned = "The frets fan: these are on the centreline; their ends are in the layout's table."
    return Setup(
        "caliper",
        "Caliper table",
        13,
        (),
        (
            "Work from the zero line. The distance from the fret before is for checking only: its errors add up.",
            "Read to a slot's centre, or to one named side of all of them. " + (fanned if station_fanned else square),
            f"The last column: what a slot {off} out of place does to its note.",
        ),
        says("The last fret, read in one go: {}. Calipers not set to nothing show here.", n.fret_position[scale_frets]),
        (),
        ("calipers, checked closed and on a known length",),
        None,
        (),
        (Table("On the centreline", tuple(columns), tuple(range(1, scale_frets + 1)), both_units=True),),
    )
