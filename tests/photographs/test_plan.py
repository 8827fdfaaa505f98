"""A plan is photographed by reckoning, with its truth known, and traced from points laid near its outline."""

import re
from dataclasses import replace
from functools import cache

import cv2
import numpy as np
import pytest
from numpy.typing import NDArray
from tests.walks import these

from gramil.faults import MakersFault
from gramil.photographs.ground import KnownLength, Photograph
from gramil.photographs.keys import about_pictures
from gramil.photographs.picture_file import PictureRead, read_picture
from gramil.photographs.pieces import frame_middles, frame_piece, strips
from gramil.photographs.plan import Grounds, Laid, TracedPlan, TraceInputs, grounds, traced
from gramil.photographs.surety import out_of_place
from gramil.photographs.tags import corners

from .rendered import Scene, body, off_the_line, strips_round

Array = NDArray[np.float64]
SMALL = Scene(strips_round(), ((body(), 0.5),), size=(2000, 1500), focal=1800.0, distance=1150.0)
WAVES = ((0.011, 0.017, 0.4, 0.007, -0.013, 1.9), (-0.009, 0.012, 2.2, 0.015, 0.004, 5.0))
WAVED = {0.0: 0, 1.0: 1, 1.5: 0}
"""Which way the paper waves in each picture."""


def _laid(scene: Scene, seed: int = 1, off: float = 3.0, picture: int = 0) -> list[Laid]:
    """Points near the outline, up to so many mm beside it, as they are seen."""
    random = np.random.default_rng(seed)
    ring = body(24)
    angle, by = random.uniform(0, 2 * np.pi, len(ring)), off * random.uniform(0, 1, len(ring))
    near = ring + np.column_stack((np.cos(angle), np.sin(angle))) * by[:, None]
    return [Laid(float(x), float(y), picture) for x, y in scene.seen(near)]


@cache
def _traced(waving: float, which: int) -> tuple[Grounds, TracedPlan, Array]:
    """A photograph of the plan read from its JPEG; with it what each place is off, mm."""
    scene = replace(SMALL, waving=waving, wave=WAVES[which], seed=which)
    ground = grounds([read_picture(scene.jpeg())], TraceInputs(strips(), waving=waving))
    found = traced(ground, _laid(scene, which))
    return ground, found, off_the_line(found.line.points, body())


WAVING = [(0.0, 0.05, 0.15), (1.0, 0.15, 0.35), (1.5, 0.25, 0.8)]


@pytest.mark.parametrize(("waving", "rms", "most"), these(WAVING, WAVING[:2]))
def test_an_outline_comes_back(waving: float, rms: float, most: float) -> None:
    _, _, off = _traced(waving, WAVED[waving])
    assert np.sqrt((off**2).mean()) < rms
    assert np.abs(off).max() < most


@pytest.mark.parametrize("waving", these([0.0, 1.0, 1.5], [0.0, 1.0]))
def test_how_sure_it_is_is_told_rightly(waving: float) -> None:
    ground, found, off = _traced(waving, WAVED[waving])
    unsure = ground.unsure(found.line.points)
    assert (np.abs(off) < 2 * unsure).mean() > 0.9
    assert np.sqrt((unsure**2).mean()) < 3 * np.sqrt((off**2).mean())


def test_the_outline_is_long_and_wide_as_drawn() -> None:
    _, found, _ = _traced(0.0, 0)
    ring = body()
    assert found.outline.length == pytest.approx(np.ptp(ring[:, 0]), abs=0.25)
    assert found.outline.widest == pytest.approx(np.ptp(ring[:, 1]), abs=0.25)
    assert found.outline.asymmetry < 0.3
    assert found.told == ()


def test_tags_corners_are_where_they_are_and_where_the_vision_library_finds_them() -> None:
    """OpenCV's refined corners lie 0.28 px from the truth here, where nothing but a tag's own corner is dark."""
    ground, _, _ = _traced(0.0, 0)
    (picture,) = ground.each
    assert isinstance(picture, Photograph)
    grey = np.clip(np.round(picture.grey), 0, 255).astype(np.uint8)
    stop = (cv2.TERM_CRITERIA_EPS | cv2.TERM_CRITERIA_MAX_ITER, 100, 1e-4)
    ours, library, truth = [], [], []
    for tag in picture.tags:
        x, y, turn = SMALL.tags[tag.number]
        turned = np.array([(np.cos(turn), np.sin(turn)), (-np.sin(turn), np.cos(turn))])
        truth.append(SMALL.seen(corners(SMALL.side) @ turned + (x, y)))
        ours.append(tag.corners)
        start = np.ascontiguousarray(np.round(tag.corners)[:, None], dtype=np.float32)
        library.append(cv2.cornerSubPix(grey, start, (3, 3), (-1, -1), stop)[:, 0])
    assert len(ours) == len(SMALL.tags)
    assert np.sqrt(((np.array(ours) - np.array(truth)) ** 2).sum(axis=2).mean()) < 0.06
    assert np.sqrt(((np.array(ours) - np.array(library)) ** 2).sum(axis=2).mean()) < 0.35


def test_two_pictures_of_one_plan_are_solved_together() -> None:
    left = replace(SMALL, over=(-150.0, 0.0), tilt=(0.05, 0.1, 0.1), distance=850.0, seed=5)
    right = replace(SMALL, over=(150.0, 0.0), tilt=(-0.05, -0.1, -0.2), distance=850.0, seed=6)
    ground = grounds([PictureRead(left.grey()), PictureRead(right.grey())], TraceInputs(strips(), waving=0.0))
    ring = body()[::160]
    points = []
    for at in ring:
        scene, number = (left, 0) if at[0] < 0 else (right, 1)
        points.append(Laid(*scene.seen(at[None])[0].tolist(), number))
    found = traced(ground, points)
    assert np.sqrt((off_the_line(found.line.points, body()) ** 2).mean()) < 0.06


def test_a_plan_that_has_stretched_is_taken_back_by_two_known_lengths() -> None:
    drawn = body()
    scene = replace(SMALL, lines=((drawn * (1.003, 0.998), 0.5),))
    ends = scene.seen(np.array([(-200, 0), (200, 0), (0, -150), (0, 150)], dtype=float) * (1.003, 0.998))
    along, across = (
        KnownLength(tuple(ends[row]), tuple(ends[row + 1]), size) for row, size in ((0, 400.0), (2, 300.0))
    )
    picture = PictureRead(scene.grey())
    ground = grounds([picture], TraceInputs(strips(), (along, across), waving=0.0))
    points = [Laid(x, y) for x, y in scene.seen(drawn[::160] * (1.003, 0.998)).tolist()]
    off = off_the_line(traced(ground, points).line.points, drawn)
    assert np.sqrt((off**2).mean()) < 0.06
    with pytest.raises(MakersFault, match="contradict"):
        grounds([picture], TraceInputs(strips(), (along, replace(across, length=330.0))))


def test_a_line_beside_the_outline_is_told_and_a_gap_too() -> None:
    ring = body()
    out = np.column_stack(np.roll(ring, -1, axis=0) - np.roll(ring, 1, axis=0)).reshape(2, -1).T
    square = np.column_stack((out[:, 1], -out[:, 0])) / np.hypot(*out.T)[:, None]
    beside = (ring - 2.5 * square)[500:1100]
    whole = np.delete(ring, np.s_[2600:2690], axis=0)
    scene = replace(SMALL, lines=((whole, 0.5), (beside, 0.5)))
    told = " ".join(
        traced(grounds([PictureRead(scene.grey())], TraceInputs(strips(), waving=0.0)), _laid(scene, 3, off=0.5)).told
    )
    assert "Another line runs 2." in told
    assert "No ink" in told
    in_inches = grounds([PictureRead(scene.grey())], TraceInputs(strips(), waving=0.0, unit="in"))
    inches = traced(in_inches, _laid(scene, 3, off=0.5))
    assert len(inches.told) >= 2
    assert not [line for line in (*inches.told, *about_pictures(in_inches)) if re.search(r"\bmm\b|\bcm\b|milli", line)]


def test_of_two_lines_that_one_is_taken_along_which_the_points_were_laid() -> None:
    outer = body()
    run = np.roll(outer, -1, axis=0) - np.roll(outer, 1, axis=0)
    inner = outer - 3.0 * np.column_stack((run[:, 1], -run[:, 0])) / np.hypot(*run.T)[:, None]
    scene = replace(SMALL, lines=((outer, 0.5), (inner, 0.5)))
    ground = grounds([PictureRead(scene.grey())], TraceInputs(strips(), waving=0.0))
    for line in (outer, inner):
        laid = [Laid(x, y) for x, y in scene.seen(line[::160]).tolist()]
        assert np.sqrt((off_the_line(traced(ground, laid).line.points, line) ** 2).mean()) < 0.06


def test_points_are_pixels_of_the_file_however_small_it_is_held() -> None:
    ground, found, _ = _traced(0.0, 0)
    halved = Grounds(ground.each, (2,))
    laid = [replace(each, x=2 * each.x + 0.5, y=2 * each.y + 0.5) for each in _laid(SMALL)]
    assert np.allclose(halved.places(laid), ground.places(_laid(SMALL)))
    places = found.line.points[:3]
    assert np.allclose(halved.in_file(0, places), 2 * ground.in_file(0, places) + 0.5)


def test_a_tag_of_the_frame_that_lies_a_millimetre_off_is_named() -> None:
    moved = 13
    middles = frame_middles(640.0, 480.0)
    tags = {number: (x + (moved == number), y, 0.0) for number, (x, y) in middles.items()}
    scene = replace(SMALL, tags=tags, lines=())
    ground = grounds([PictureRead(scene.grey())], TraceInputs((frame_piece(640.0, 480.0),)))
    assert isinstance(ground.each[0], Photograph)
    assert out_of_place(ground.each[0].view.left_out)[:1] == (moved,)
    assert f"Tag {moved + 1} lies" in ground.each[0].told[0]


def _refused(scene_or_picture: Scene | PictureRead, match: str) -> None:
    picture = scene_or_picture if isinstance(scene_or_picture, PictureRead) else PictureRead(scene_or_picture.grey())
    with pytest.raises(MakersFault, match=match):
        grounds([picture], TraceInputs(strips()))


def _with_a_strip_printed_at(share: float) -> PictureRead:
    """A picture in which one strip of the four comes from a print of another scale."""
    first, second = (np.array(SMALL.tags[number]) for number in (4, 5))
    middle = (first + second) / 2
    other = {number: (*(middle + (each - middle) * share),) for number, each in ((4, first), (5, second))}
    rest = replace(SMALL, tags={number: SMALL.tags[number] for number in (0, 1, 2, 3, 6, 7)})
    alone = replace(SMALL, tags=other, side=SMALL.side * share, lines=(), noise=0.0).grey()
    blank = replace(SMALL, tags={}, lines=(), noise=0.0).grey()
    return PictureRead(rest.grey() * alone / blank)


@pytest.mark.parametrize(("share", "refused"), [(0.97, True), (0.985, False)])
def test_a_strip_of_another_print_is_told_or_refused(share: float, refused: bool) -> None:
    picture = _with_a_strip_printed_at(share)
    if refused:
        _refused(picture, "strips of different prints")
    else:
        assert "printed at different scales" in " ".join(grounds([picture], TraceInputs(strips())).each[0].told)


def test_a_burnt_out_picture_is_told_or_refused() -> None:
    light = SMALL.grey()
    _refused(PictureRead(np.clip(light * 1.6, 0, 255).astype(np.float32)), "burnt out over")
    flash = light.copy()
    flash[550:950, 750:1250] = 255.0
    assert "burnt out" in " ".join(grounds([PictureRead(flash)], TraceInputs(strips())).each[0].told)


def test_what_says_nothing_is_refused_with_what_to_do() -> None:
    bare = replace(SMALL, lines=())
    light = bare.grey()
    _refused(replace(bare, tags={}), "no printed tag")
    _refused(PictureRead(light[:, ::-1].copy()), "mirrored")
    _refused(replace(bare, tags={each: bare.tags[each] for each in (0, 1, 2)}), "only 3 tags")
    _refused(replace(bare, tags={0: (-300, 200, 0), 1: (-80, 200, 0), 2: (0, 210, 0), 3: (220, 210, 0)}), "on one side")
    _refused(replace(bare, blur=6.0), "blurred|no printed tag")
    _refused(PictureRead(np.full((1500, 2000), 255, dtype=np.float32)), "no printed tag")


def test_a_picture_that_was_bent_is_refused() -> None:
    light = replace(SMALL, lines=()).grey()
    rows, columns = np.meshgrid(np.arange(1500), np.arange(2000), indexing="ij")
    from scipy import ndimage

    bent = ndimage.map_coordinates(
        light, (rows + 9 * np.sin(columns / 130), columns + 9 * np.sin(rows / 110)), order=1, mode="nearest"
    )
    _refused(PictureRead(bent), "do not fit together")


def test_points_that_lie_nowhere_are_refused() -> None:
    ground, _, _ = _traced(0.0, 0)
    with pytest.raises(MakersFault, match="8 at the least"):
        traced(ground, [Laid(1, 1)] * 3)
    round_all = np.array([(np.cos(a), np.sin(a)) for a in np.arange(0, 6, 0.5)])
    with pytest.raises(MakersFault, match="outside picture 1"):
        traced(ground, [Laid(x, y) for x, y in 1000 + 980 * round_all])
    with pytest.raises(MakersFault, match="outside the strips"):
        traced(ground, [Laid(x, y) for x, y in (1000, 750) + (980, 730) * round_all])
    blank = [Laid(1000 + 60 * np.cos(a), 750 + 60 * np.sin(a)) for a in np.arange(0, 6.2, 0.4)]
    with pytest.raises(MakersFault, match="no line is found"):
        traced(ground, blank)


def test_a_flat_scan_goes_by_two_known_lengths() -> None:
    """A scanner that is 0.6 % out one way: 8 pixels to the millimetre along, 8.048 across."""
    ring = body()
    scale = np.array([4.0, 4.0 * 1.006])
    flat = Scene({}, ((ring, 0.5),), size=(2200, 1700))
    light = np.full((1700, 2200), 240, dtype=np.float32)
    pixels = ring * scale * (1, -1) + (1100, 850)
    from scipy import ndimage

    light[np.round(pixels[:, 1]).astype(int), np.round(pixels[:, 0]).astype(int)] = 0
    light = ndimage.gaussian_filter(ndimage.minimum_filter(light, 2), 0.7)
    ends = np.array([(-240, 0), (240, 0), (0, -180), (0, 180)]) * scale * (1, -1) + (1100, 850)
    along, across = (
        KnownLength(tuple(ends[row]), tuple(ends[row + 1]), size) for row, size in ((0, 480.0), (2, 360.0))
    )
    ground = grounds([PictureRead(light)], TraceInputs((), (along, across)))
    points = [Laid(x, y) for x, y in (pixels[::160] + flat.noise).tolist()]
    off = off_the_line(traced(ground, points).line.points, ring)
    assert np.sqrt((off**2).mean()) < 0.15
    with pytest.raises(MakersFault, match="two known lengths"):
        grounds([PictureRead(light)], TraceInputs((), (along,)))
