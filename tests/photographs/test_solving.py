"""What the solved camera and places tell: tags that lie elsewhere, pictures that are not whole."""

from dataclasses import replace

import numpy as np
import pytest
from tests.walks import these

from gramil.faults import MakersFault
from gramil.photographs.cropped import cropped
from gramil.photographs.pieces import frame_middles, frame_piece, strips
from gramil.photographs.solving import Picture, solved
from gramil.photographs.surety import off_when_left_out, out_of_place

from .rendered import Scene, strips_round
from .simulated import seen_tags

FRAME = frame_middles(640.0, 480.0)
CORNER_EDGE_AND_SIDE = (8, 9, 12)
PHONE = Scene(strips_round(), distance=1150.0)


@pytest.mark.parametrize("moved", these(sorted(FRAME), CORNER_EDGE_AND_SIDE))
def test_a_misplaced_tag_is_named_always(moved: int) -> None:
    """One of twelve, a millimetre off, each in another direction."""
    off = (float(np.cos(1.9 * moved)), float(np.sin(1.9 * moved)))
    tags = {
        number: (x + off[0] * (moved == number), y + off[1] * (moved == number), 0.0)
        for number, (x, y) in FRAME.items()
    }
    scene = replace(PHONE, tags=tags)
    found = seen_tags(scene, np.random.default_rng(moved))
    answer = solved([frame_piece(640.0, 480.0)], [Picture(scene.size, found)])
    assert out_of_place(off_when_left_out(answer)) == (moved,)


def _solved_of(tilt: tuple[float, float], cut: tuple[int, int], waving: float = 0.0) -> tuple[str, ...]:
    scene = replace(PHONE, tilt=(*tilt, 0.2), waving=waving)
    size = (scene.size[0] - cut[0], scene.size[1] - cut[1])
    return cropped(solved(strips(), [Picture(size, seen_tags(scene, np.random.default_rng(3), cut))]))


@pytest.mark.parametrize("waving", [0.0, 1.5])
@pytest.mark.parametrize("tilt", [(0.0, 0.0), (0.1, -0.08), (-0.12, 0.1), (0.05, 0.12)])
def test_a_whole_picture_is_not_called_cropped(tilt: tuple[float, float], waving: float) -> None:
    assert _solved_of(tilt, (0, 0), waving) == ()


@pytest.mark.parametrize("tilt", [(0.1, -0.08), (-0.12, 0.1), (0.05, 0.12)])
def test_a_cropped_picture_is_refused(tilt: tuple[float, float]) -> None:
    """A fifth cut off at the left and at the top."""
    with pytest.raises(MakersFault, match="cropped"):
        _solved_of(tilt, (600, 450))


def test_a_slightly_cropped_picture_is_told() -> None:
    assert "seems cropped" in " ".join(_solved_of((0.1, -0.08), (150, 0)))
