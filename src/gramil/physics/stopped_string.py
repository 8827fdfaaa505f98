"""A string pressed to a stop: how far its pitch is from the intended one, in cents, and why.

Pressing makes the string longer than it was at rest, so its pull rises and its weight per length falls; it speaks
over a length that is not quite the intended one; and its stiffness counts for more on the shorter length. The
string is held in direction at nut and stop and free to turn at the saddle.

Source: M. B. Anderson and R. G. Beausoleil, "Classical guitar intonation and compensation: The well-tempered
guitar", J. Acoust. Soc. Am. 156(1), 683 (2024), in its exact form. Theirs is one plane of stops;
here each string has its own stops, each at its own place and height, so real heights enter.

Along each string x runs from the nut towards the saddle; heights are over any one straight line. All lengths in mm,
arrays of one row a string and one column a stop.
"""

import math
from dataclasses import dataclass, field, replace

import numpy as np
from numpy.typing import ArrayLike

from gramil.physics.arrays import FloatArray, floats
from gramil.physics.stiff_string import one_end_clamped_factor


@dataclass(frozen=True)
class StringPaths:
    """Where strings run. The ends have one figure a string, the rest one a string and stop; see `string_paths`.

    `end_slope` is how much higher the line lies on which the break points move, for each mm toward the saddle, one
    figure a string: 0, as in the source, for ends that keep their heights; the open string's own slope for ends that
    are filed and built so that it stays where it is over the stops.
    """

    nut_x: FloatArray
    nut_height: FloatArray
    saddle_x: FloatArray
    saddle_height: FloatArray
    stop_x: FloatArray
    stop_height: FloatArray
    ratio: FloatArray
    finger_offset: FloatArray
    finger_depth: FloatArray
    end_slope: FloatArray


@dataclass(frozen=True)
class StringStiffness:
    """How strings answer to stretching and bending, one figure a string.

    `stretch` is kappa = E A / T, the pull gained per pull there is and per unit of strain. `bending_radius` (mm) is
    the radius that resists bending, B_0 = sqrt(kappa) r / (2 L): a plain string's own, at least the core's if wound.
    `at_length` (mm) is the open length over which `stretch` holds where E does not change: tuned to the same pitch over
    a longer one, the string pulls more, and kappa falls with the square. 0, as in the source: kappa stays.
    """

    stretch: FloatArray
    bending_radius: FloatArray
    at_length: FloatArray = field(default_factory=lambda: np.zeros(1))


@dataclass(frozen=True)
class Deviation:
    """Cents by which stopped strings are sharp of the intended pitch, by cause; one row for each string, a column for
    each stop.
    """

    length: FloatArray
    density: FloatArray
    tension: FloatArray
    stiffness: FloatArray

    @property
    def total(self) -> FloatArray:
        """All causes together, cents."""
        return self.length + self.density + self.tension + self.stiffness


def string_paths(
    nut: tuple[ArrayLike, ArrayLike],
    saddle: tuple[ArrayLike, ArrayLike],
    stop: tuple[ArrayLike, ArrayLike],
    ratio: ArrayLike,
    finger_offset: ArrayLike = 0.0,
    finger_depth: ArrayLike = 0.0,
) -> StringPaths:
    """Paths from (x, height) of the nut's and saddle's break points and of the stops' tops.

    `nut` and `saddle` have one figure a string; `stop` one a string and stop, or one a stop. `ratio` is the
    frequency that a stop is meant to sound over the open string's. The finger presses `finger_offset` towards the
    nut from the stop, `finger_depth` lower than the straight line from the saddle over the stop would run on.
    A stop between finger and nut that the string might touch is left out, as in the source.
    Raises ValueError where a finger is not between nut and stop, or a stop not between nut and saddle.
    """
    ends = [np.atleast_1d(floats(each)) for each in (*nut, *saddle)]
    stops = [np.atleast_1d(floats(each)) for each in (*stop, ratio, finger_offset, finger_depth)]
    rows = np.broadcast_shapes(*(end.shape for end in ends))
    shape = np.broadcast_shapes((*rows, 1), *(each.shape for each in stops))
    ends = [np.broadcast_to(end, shape[:1]) for end in ends]
    paths = StringPaths(*[*ends, *(np.broadcast_to(each, shape) for each in stops), np.zeros(shape[:1])])
    _refuse_impossible(paths)
    return paths


def _refuse_impossible(paths: StringPaths) -> None:
    finger_x = paths.stop_x - paths.finger_offset
    if np.any(paths.finger_offset < 0.0) or np.any(finger_x <= paths.nut_x[:, None]):
        raise ValueError("a finger presses between the nut and its stop")
    if np.any(paths.stop_x >= paths.saddle_x[:, None]):
        raise ValueError("a stop lies between the nut and the saddle")


def moved(paths: StringPaths, nut_set_back: ArrayLike, saddle_set_back: ArrayLike) -> StringPaths:
    """The same strings with both break points moved outward, each mm a string; a nut moved to the stops is negative.

    Their heights follow `end_slope`.
    """
    nut_out, saddle_out = floats(nut_set_back), floats(saddle_set_back)
    return replace(
        paths,
        nut_x=paths.nut_x - nut_out,
        nut_height=paths.nut_height - paths.end_slope * nut_out,
        saddle_x=paths.saddle_x + saddle_out,
        saddle_height=paths.saddle_height + paths.end_slope * saddle_out,
    )


def open_length(paths: StringPaths) -> FloatArray:
    """Length of the open string between its break points, one figure a string."""
    return np.hypot(paths.saddle_x - paths.nut_x, paths.saddle_height - paths.nut_height)


def speaking_length(paths: StringPaths) -> FloatArray:
    """Length from saddle to stop, one figure a string and stop."""
    return np.hypot(paths.saddle_x[:, None] - paths.stop_x, paths.saddle_height[:, None] - paths.stop_height)


def held_length(paths: StringPaths) -> FloatArray:
    """Length from stop over the finger to the nut, one figure a string and stop."""
    slope = (paths.saddle_height[:, None] - paths.stop_height) / (paths.saddle_x[:, None] - paths.stop_x)
    fall = slope * paths.finger_offset + paths.finger_depth
    to_finger = np.hypot(paths.finger_offset, fall)
    to_nut = paths.stop_x - paths.finger_offset - paths.nut_x[:, None]
    return to_finger + np.hypot(to_nut, paths.stop_height - fall - paths.nut_height[:, None])


def stretch(paths: StringPaths) -> FloatArray:
    """Strain that pressing adds, `(speaking + held - open) / open`: a pure number a string and stop.

    The string is taken to be held at both break points; where it slides over them the stretch is shared with the
    lengths beyond, which a measured stretch stiffness accounts for.
    """
    at_rest = open_length(paths)[:, None]
    return (speaking_length(paths) + held_length(paths) - at_rest) / at_rest


def deviation(paths: StringPaths, strings: StringStiffness) -> Deviation:
    """Cents sharp of the intended ratio to the open string, by cause, one figure a string and stop."""
    at_rest, speaking, strain = open_length(paths)[:, None], speaking_length(paths), stretch(paths)
    pull = 1.0 + stretch_here(paths, strings)[:, None] * strain
    stiff_open = open_stiffness(paths, strings)[:, None]
    stiff_stopped = stiff_open * at_rest / (speaking * np.sqrt(pull))
    return Deviation(
        length=1200.0 * np.log2(at_rest / (paths.ratio * speaking)),
        # half of 1200: a note goes with the root of what pulls and of what weighs
        density=600.0 * np.log2(1.0 + strain),
        tension=600.0 * np.log2(pull),
        stiffness=1200.0 * np.log2(one_end_clamped_factor(stiff_stopped) / one_end_clamped_factor(stiff_open)),
    )


def open_stiffness(paths: StringPaths, strings: StringStiffness) -> FloatArray:
    """B_0 = sqrt(kappa) r / (2 L) of the open strings, one figure a string."""
    return np.sqrt(stretch_here(paths, strings)) * strings.bending_radius / (2.0 * open_length(paths))


def stretch_here(paths: StringPaths, strings: StringStiffness) -> FloatArray:
    """kappa of the strings over the open lengths that they have, one figure a string."""
    held = strings.at_length > 0.0
    return strings.stretch * np.where(held, strings.at_length / open_length(paths), 1.0) ** 2


def stretch_stiffness(modulus: ArrayLike, radius: ArrayLike, pull: ArrayLike) -> FloatArray:
    """kappa = `pi r^2 E / T`, a pure number: E in MPa, r in mm (of a wound string the core), T in N."""
    return math.pi * floats(radius) ** 2 * floats(modulus) / floats(pull)
