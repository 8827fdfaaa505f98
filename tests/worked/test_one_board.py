"""One whole fretboard worked by hand: 640 mm, 20 frets, bound, a cone, straight slots cut while the board is flat.

Every expected number below was worked from the formula beside it with an arbitrary-precision calculator, 40 digits
carried and 13 to 16 kept; none comes from the program.
"""

import math
from collections.abc import Callable

import numpy as np
import pytest

from gramil.graph import Figures

BOARD = """
gramil = 1
[instrument]
name = "Worked"
units = "mm"
[scale]
length = 640
frets = 20
join = 14
[nut]
width = 44
spread = 37
spacing = "equal gaps"
[bridge]
spread = 55
[board]
wood = "persimmon"
width = 54
width_at = "fret 12"
thickness = 6.2
beyond_last_fret = 10
arch = { nut = 300, end = 400 }
level_underside = false
[binding]
thickness = 1.6
purfling = 0.4
tail = true
[slots]
bottom = "straight"
cut = "before arching"
clearance = 0.15
crest_loss = 0.2
[wire]
name = "worked"
crown_width = 2.2
crown_height = 1.1
tang_thickness = 0.54
bead_thickness = 0.78
tang_depth = 1.5
[strings]
gauges = [0.012, 0.016, 0.024, 0.032, 0.042, 0.053]
"""
SHOP = """
gramil = 1
[shop]
name = "worked"
units = "mm"
template_pin = 4
pin_clearance = 0.03
laser_kerf = 0.15
[[saw]]
name = "saw"
kerf = 0.58
cuts = "face down"
[[jig]]
name = "rail"
for = "slots"
constant = 58.3
[[cutter]]
name = "ledge cutter"
diameter = 12.7
bearings = [8.5, 9.0, 11.1]
"""
EXACT = 1e-11
"""The last digits kept, in mm; the figures are some hundreds of mm."""


@pytest.fixture(scope="module")
def board(derive_text: Callable[..., Figures]) -> Figures:
    return derive_text(BOARD, SHOP)


@pytest.fixture(scope="module")
def levelled(derive_text: Callable[..., Figures]) -> Figures:
    return derive_text(BOARD.replace("level_underside = false", "level_underside = true"), SHOP)


def check(figures: Figures, address: str, expected: float) -> None:
    assert figures.at(address) == pytest.approx(expected, abs=EXACT, rel=0), address


# x_n = 640 (1 - 2^(-n/12)).  2^(-1/12) = 0.943874312681694, so x_1 = 640 x 0.056125687318306 = 35.9204398837.
POSITIONS = [
    0.0,
    35.92043988371616,
    69.82482039018284,
    101.8262942376227,
    132.0316633701762,
    160.5417353994619,
    187.4516600406096,
    212.851246665589,
    236.8252640336406,
    259.4537231991293,
    280.8121445410006,
    300.9718098050255,
    320.0,
    337.9602199418581,
    354.9124101950914,
    370.9131471188113,
    386.0158316850881,
    400.270867699731,
    413.7258300203048,
    426.4256233327945,
    438.4126320168203,
]


def test_positions(board: Figures) -> None:
    np.testing.assert_allclose(board["fret_position"], POSITIONS, rtol=0, atol=EXACT)
    check(board, "fret_step[1]", 35.92043988371616)
    check(board, "fret_step[12]", 320.0 - 300.9718098050255)
    # Half way between frets: (x_11 + x_12) / 2 = (300.9718098050 + 320) / 2, (x_6 + x_7) / 2.
    check(board, "marker_position[12]", 310.4859049025128)
    check(board, "marker_position[7]", 200.1514533530993)


def test_cents_for_a_tenth_of_a_millimetre(board: Figures) -> None:
    # 1200 / ln 2 x 0.1 / (640 - x): 173.1234049067 / 604.0795601163, / 320, / 201.5873679832.
    check(board, "fret_cents_per_tenth[1]", 0.2865904035444433)
    check(board, "fret_cents_per_tenth[12]", 0.5410106403333613)
    check(board, "fret_cents_per_tenth[20]", 0.8588008595911669)


def test_outline(board: Figures) -> None:
    # The sides grow by (54 - 44) / 320 = 0.03125 a mm; half taper = atan(0.03125 / 2) = 0.89517 degrees.
    check(board, "board_growth", 0.03125)
    check(board, "board_half_taper_angle", 0.01562372862047683)
    check(board, "board_taper_angle", 2 * 0.01562372862047683)
    # Tail end: 438.4126320168 + 10.  Widths: 44 + 0.03125 x.
    check(board, "board_tail_position", 448.4126320168203)
    check(board, "board_length", 448.4126320168203)
    check(board, "board_width_at_fret[1]", 45.12251374636613)
    check(board, "board_width_at_fret[7]", 50.65160145829966)
    check(board, "board_width_at_fret[12]", 54.0)
    check(board, "board_width_at_fret[20]", 57.70039475052563)
    check(board, "board_width_at_tail", 58.01289475052563)


def test_core(board: Figures) -> None:
    # Inset 1.6 + 0.4 = 2 square to the edge; square to the centreline 2 / cos(half taper) = 2 sqrt(1 + 0.015625^2).
    check(board, "core_inset", 2.0)
    check(board, "core_inset_across", 2.000244125725658)
    # Width less twice that: 44 - 4.0004882515 and so on.
    check(board, "core_width_at_fret[0]", 39.99951174854868)
    check(board, "core_width_at_fret[7]", 46.65111320684834)
    check(board, "core_width_at_fret[20]", 53.69990649907432)
    # The tail is bound too: 448.4126320168 - 2.
    check(board, "core_tail_position", 446.4126320168203)
    # Ledge (12.7 - 8.5) / 2 = 2.1 is too deep by 0.1; (12.7 - 9) / 2 = 1.85 leaves 0.15 proud; 11.1 leaves 1.2.
    assert board["ledge_choice"].bearing == 9.0
    check(board, "ledge_choice.ledge", 1.85)
    check(board, "ledge_choice.proud", 0.15)


def test_sagittas(board: Figures) -> None:
    # R = 300 + 100 x / 448.4126320168: at fret 1 308.0105771602, at fret 12 371.3628424250, at fret 20 397.7699111742.
    check(board, "arch_radius_at_fret[0]", 300.0)
    check(board, "arch_radius_at_fret[1]", 308.0105771601833)
    check(board, "arch_radius_at_fret[12]", 371.3628424250092)
    check(board, "arch_radius_at_fret[20]", 397.7699111742185)
    # R - sqrt(R^2 - y^2) at the finished edge: 300 - sqrt(300^2 - 22^2), 371.3628 - sqrt(371.3628^2 - 27^2) ...
    check(board, "arch_fall_at_edge_treble[0]", 0.8077541111735296)
    check(board, "arch_fall_at_edge_bass[1]", 0.8273983712862667)
    check(board, "arch_fall_at_edge_treble[12]", 0.9828203747071766)
    check(board, "arch_fall_at_edge_bass[20]", 1.047630041744099)
    # ... and at the core's: 300 - sqrt(300^2 - 19.9997558743^2), 397.7699 - sqrt(397.7699^2 - 26.8499532495^2).
    check(board, "arch_fall_at_core_treble[0]", 0.6673927468485285)
    check(board, "arch_fall_at_core_bass[7]", 0.7838079863898215)
    check(board, "arch_fall_at_core_treble[12]", 0.8424341608909082)
    check(board, "arch_fall_at_core_bass[20]", 0.9072368824134457)
    # At the tail end: 400 - sqrt(400^2 - 29.0064473753^2).
    check(board, "arch_fall_at_nut_end", 0.8077541111735296)
    check(board, "arch_fall_at_tail_end", 1.053103771108267)


def test_hump(board: Figures) -> None:
    # Under the treble string y = (37 + 18 x / 640) / 2: fall 0.5709599922 at x_0, 0.7654637839600 at x_20.  At fret 7
    # the chord is at 0.5709599922 + 0.1945037918 x 212.8512466656 / 438.4126320168 = 0.6653924322 and the fall is
    # 0.6653873867: the board stands 0.0000050455 mm over the chord.  The cone fits this spread all but exactly.
    check(board, "arch_fall_under_string[1, 0]", 0.5709599921877985)
    check(board, "arch_fall_under_string[1, 20]", 0.7654637839599397)
    check(board, "arch_hump[1]", 5.045512977627056e-6)


def test_depths(board: Figures) -> None:
    # Need 1.5 + 0.15; the greatest fall at a slot's end is fret 20's; set 1.65 + 0.9072368824 + 0.2 crest to come.
    check(board, "slot_need", 1.65)
    check(board, "slot_fall_greatest", 0.9072368824134457)
    check(board, "slot_depth_at_crest", 2.557236882413446)
    check(board, "slot_depth_setting", 2.757236882413446)
    # At the ends 2.5572368824 less the fall there.
    check(board, "slot_depth_at_end[1]", 1.870203235167215)
    check(board, "slot_depth_at_end[12]", 1.714802721522537)
    check(board, "slot_depth_at_end[20]", 1.65)
    # Left under a straight bottom: 6.2 - 2.5572368824, the same from crest to end, at every fret.
    for fret in range(1, 21):
        check(board, f"slot_left_at_crest[{fret}]", 3.642763117586554)
        check(board, f"slot_left_at_end[{fret}]", 3.642763117586554)


def test_edges_left_as_they_are(board: Figures) -> None:
    # 6.2 less the fall at the finished edge; from 5.3922458888 at the zero line to 5.1523699583 at fret 20.
    check(board, "thickness_wedge", 0.0)
    check(board, "thickness_at_edge_treble[0]", 5.39224588882647)
    check(board, "thickness_at_edge_bass[1]", 5.372601628713733)
    check(board, "thickness_at_edge_treble[12]", 5.217179625292823)
    check(board, "thickness_at_edge_bass[20]", 5.152369958255901)
    check(board, "thickness_edge_spread", 0.2398759305705697)


def test_edges_levelled(levelled: Figures) -> None:
    # Wedge: 1.0531037711 - 0.8077541112 over 448.4126320168, atan = 0.0313495 degrees.
    check(levelled, "thickness_wedge", 0.2453496599347375)
    check(levelled, "thickness_wedge_angle", 0.0005471514804286408)
    # Crest: 6.2 - 0.2453496599 (448.4126320168 - x) / 448.4126320168; what is planed off is the rest of 6.2.
    check(levelled, "thickness_at_crest[0]", 5.954650340065263)
    check(levelled, "thickness_at_crest[12]", 6.129738831274785)
    check(levelled, "thickness_at_crest[20]", 6.194528484649702)
    check(levelled, "thickness_before_levelling", 6.2)
    check(levelled, "thickness_to_plane[0]", 0.2453496599347375)
    check(levelled, "thickness_to_plane[7]", 0.1288877735886627)
    # Edges: crest less fall; 5.1468962289 at both ends, 0.029 thousandths more in the middle, for the fall is no line.
    check(levelled, "thickness_at_edge_treble[0]", 5.146896228891733)
    check(levelled, "thickness_at_edge_bass[7]", 5.14692521609985)
    check(levelled, "thickness_at_edge_treble[20]", 5.146898442905603)
    check(levelled, "thickness_edge_spread", 2.898720811726628e-5)
    # Left under the slots: crest less 2.5572368824, least at fret 1.
    check(levelled, "slot_left_at_crest[1]", 3.417067381473136)
    check(levelled, "slot_left_at_end[12]", 3.57250194886134)
    check(levelled, "slot_left_least[20]", 3.637291602236257)


def test_blank(board: Figures) -> None:
    # 448.4126320168 + 20 for pins of 4 mm (2.5 diameters an end), 58.0128947505 + 6, 6.2 + 0.2 crest to come.
    check(board, "blank_length", 468.4126320168203)
    check(board, "blank_width", 64.01289475052563)
    check(board, "blank_thickness", 6.4)


def test_wire(board: Figures) -> None:
    # A fret is as long as the board is wide; 2.5 mm over at each end; the sum of 20, 1049.5983551118 + 100, x 1.1.
    check(board, "wire_cut[1]", 50.12251374636613)
    check(board, "wire_cut[12]", 59.0)
    check(board, "wire_cut[20]", 62.70039475052563)
    check(board, "wire_total", 1264.558190622947)
    # Nipped back 2 + 0.4; bent to nine tenths of R; kerf 0.58 - 0.54, (0.78 - 0.58) / 2, 0.2 x (0.78 - 0.58).
    check(board, "wire_nip_back", 2.4)
    check(board, "wire_bend_radius[1]", 277.209519444165)
    check(board, "wire_bend_radius[20]", 357.9929200567966)
    check(board, 'wire_fits["saw"].gap', 0.04)
    check(board, 'wire_fits["saw"].bite', 0.1)
    check(board, 'wire_fits["saw"].wedge_least', 0.0)
    check(board, 'wire_fits["saw"].wedge_most', 0.04)


def test_template(board: Figures) -> None:
    # Notch n at x_n + 58.3; the nut end's at -0.58 / 2 + 58.3, so that the saw's side makes the nut's face.
    check(board, "template_notch[0]", 58.3)
    check(board, "template_notch[1]", 94.22043988371616)
    check(board, "template_notch[12]", 378.3)
    check(board, "template_notch[20]", 496.7126320168203)
    check(board, "template_nut_notch", 58.01)
    check(board, "template_notch_width", 4.03)
    # What calipers find on the template: from the nut end's notch, 378.3 - 58.01, and from the first pin, 58.01 + 6.
    check(board, "card_proof_octave", 320.29)
    check(board, "card_proof_pin", 64.01)


def test_strings(board: Figures) -> None:
    # Gauges 0.3048 0.4064 0.6096 0.8128 1.0668 1.3462; all air is 37 - 4.5466 + (0.3048 + 1.3462) / 2, a fifth each.
    for string in range(1, 6):
        check(board, f"string_gap_nut[{string}]", 6.65578)
    np.testing.assert_allclose(
        board["string_y_nut"], [18.5, 11.48862, 4.32484, -3.04214, -10.63772, -18.5], rtol=0, atol=EXACT
    )
    np.testing.assert_allclose(board["string_y_bridge"], [27.5, 16.5, 5.5, -5.5, -16.5, -27.5], rtol=0, atol=EXACT)
    # Margin: half the width less half the spread there less half the gauge: 22 - 18.5 - 0.1524, 27 - 23 - 0.6731.
    check(board, "string_margin_treble[0]", 3.3476)
    check(board, "string_margin_bass[0]", 2.8269)
    check(board, "string_margin_treble[12]", 3.8476)
    check(board, "string_margin_bass[12]", 3.3269)
    check(board, "string_margin_treble[20]", 4.032619737526282)
    check(board, "string_margin_bass[20]", 3.511919737526282)


def test_stiffness_kept(board: Figures) -> None:
    # At fret 12 the core is b = 49.9995117485 wide.  A straight slot leaves a rectangle:
    # b x 3.6427631176^3 / 12 = 49.9995117485 x 48.3384580016 / 12 = 201.4082748967 mm4.
    # Unslotted, the height is h(y) = 6.2 - 371.3628424250 + sqrt(371.3628424250^2 - y^2), |y| <= b / 2.  By quadrature
    # of h, h^2 / 2 and h^3 / 3 the area is 295.9629169244 mm2, the first moment 877.5256088383 mm3 and the second
    # 3475.1751560066 mm4, and about the centroid the second less the first squared over the area, 873.3248898673 mm4.
    # Kept: 201.4082748967 / 873.3248898673.
    check(board, "section_kept_straight[12]", 0.2306223917736369)


def test_angle_is_what_a_sled_is_set_to(board: Figures) -> None:
    assert math.degrees(board["board_half_taper_angle"]) == pytest.approx(0.8951737102110743, abs=1e-12)
