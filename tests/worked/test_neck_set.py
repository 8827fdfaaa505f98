"""One neck set worked by hand, from the action back to the heel.

The instrument: 640 mm scale, 20 frets, body at fret 12, flat board 6 mm thick, crowns 1.1 mm with 0.1 mm dressed off,
both outer strings alike. Action 2.2 mm at fret 12, 0.4 mm over a crown's height at the zero line, no relief. No string
is set back: fret 12 is half way.

1. Fret 12 is half way, 320 mm from nut and saddle. Strung, the string is 2 x 2.2 - 0.4 = 4.0 mm over its crowns at the
   saddle, and 4.0 + 1.0 = 5.0 mm over the crest plane.
2. Body and top give 0.7 mm at the action: 1.4 mm at the saddle. Before stringing it stands 5.0 - 1.4 = 3.6 mm.
3. The top is flat here and measured 2.5 mm over its rim at the saddle; the bridge is 9.0 mm thick, 3.3 mm of saddle is
   to show: the saddle's top stands 14.8 mm over the rim plane. The board's underside meets the rim at the join, so the
   crest stands 6.0 mm over it there: the saddle's top must be 8.8 mm above the crest's level at the join.
4. The angle: 320 sin a + 3.6 cos a = 8.8. With R = sqrt(320^2 + 3.6^2) = 320.02025: sin(a + p) = 8.8 / R = 0.02749826,
   a + p = 0.02750173; p = atan(3.6 / 320) = 0.01124953; a = 0.01625220 = 0.9312 degrees.
5. Straightedge on the dressed frets: it passes the saddle's place at 6.0 + 320 sin a + 1.0 cos a = 6 + 5.20048 +
   0.99987 = 12.20034 over the rim; the bridge's top is at 11.5: 0.70 mm over the bridge. (The saddle shows 3.3 mm, and
   its top stands 3.6 - 1.0 = 2.6 mm over the straightedge: 0.70 again.)
6. Heel 90 mm deep: a wedge of 90 tan a = 1.4628 mm at the cap.
7. Set already, and the straightedge passes only 0.2 mm over the bridge: sin(a' + q) = (11.7 - 6) / sqrt(320^2 + 1^2) =
   0.01781241, a' + q = 0.01781336, q = atan(1 / 320) = 0.00312499; a' = 0.01468837 = 0.8416 degrees. So 2.8 mm of
   saddle would show, 0.5 mm less; left at 3.3 mm the action would be half of that, 0.25 mm, too high; and
   90 tan(0.01625220 - 0.01468837) = 0.14075 mm is to come off the heel's cap.
"""

from collections.abc import Callable

import numpy as np
import pytest

from gramil.graph import Figures

INSTRUMENT = """
gramil = 1
[instrument]
name = "By hand"
units = "mm"
[scale]
length = 640
frets = 20
join = 12
[nut]
width = 44
spread = 36
[bridge]
spread = 54
thickness = 9
[saddle]
exposed = 3.3
set_back = [0, 0, 0, 0, 0, 0]
[board]
wood = "ebony"
width = 54
width_at = "fret 12"
thickness = 6
beyond_last_fret = 8
arch = "flat"
[wire]
name = "measured"
crown_width = 2.4
crown_height = 1.1
tang_thickness = 0.55
bead_thickness = 0.78
tang_depth = 1.6
[strings]
gauges = [0.012, 0.016, 0.024, 0.032, 0.042, 0.053]
[heights]
action_bass = 2.2
action_treble = 2.2
relief = 0
nut_over = "the zero line"
nut_bass = 0.4
nut_treble = 0.4
dressing_loss = 0.1
body_rise = 0.7
[top]
radius = "flat"
rise = 2.5
[neck]
heel_depth = 90
"""


@pytest.fixture
def by_hand(derive_text: Callable[..., Figures]) -> Figures:
    return derive_text(INSTRUMENT)


@pytest.fixture
def already_set(derive_text: Callable[..., Figures]) -> Figures:
    return derive_text(INSTRUMENT + "straightedge = 0.2\n")


def test_heights_at_the_saddle(by_hand: Figures) -> None:
    np.testing.assert_allclose(by_hand["height_over_chord"], 4.0, atol=1e-9)
    np.testing.assert_allclose(by_hand["height_at_saddle"], 5.0, atol=1e-9)
    np.testing.assert_allclose(by_hand["height_at_saddle_unloaded"], 3.6, atol=1e-9)


def test_the_angle_and_the_heel(by_hand: Figures) -> None:
    assert by_hand["neck_angle_target"] == pytest.approx(0.01625220, abs=5e-9)
    assert by_hand["heel_wedge"] == pytest.approx(1.4628, abs=5e-5)
    assert by_hand["neck_angle_made"] == by_hand["neck_angle_target"]
    assert by_hand["heel_wedge_to_take"] == 0


def test_the_straightedge(by_hand: Figures) -> None:
    assert by_hand["neck_set_straightedge"] == pytest.approx(0.70034, abs=1e-5)
    assert by_hand["neck_set_straightedge_on_board"] == pytest.approx(0.70034 - 0.99987, abs=1e-5)
    assert by_hand["neck_set_straightedge_over_top"] == pytest.approx(9.70034, abs=1e-5)
    np.testing.assert_allclose(by_hand["neck_set_exposed"], 3.3, atol=1e-9)
    np.testing.assert_allclose(by_hand["neck_set_over_top"], 12.3, atol=1e-9)
    np.testing.assert_allclose(by_hand["neck_set_action"], 2.2, atol=1e-9)


def test_a_neck_that_is_set_already(already_set: Figures) -> None:
    assert already_set["neck_angle_made"] == pytest.approx(0.01468837, abs=1e-8)
    np.testing.assert_allclose(already_set["neck_set_exposed"], 2.8, atol=1e-3)
    np.testing.assert_allclose(already_set["neck_set_action"], 2.2 + 0.25, atol=1e-3)
    assert already_set["heel_wedge_to_take"] == pytest.approx(0.14075, abs=5e-5)
