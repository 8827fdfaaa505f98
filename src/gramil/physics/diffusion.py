"""Diffusion through the thickness of sheets, one or many at once, under air that changes from reading to reading.

In each layer the content is a polynomial through points that crowd toward the faces (Gauss-Lobatto points), joined at
the glue lines so that what leaves one layer enters the next. The equations are linear, so each sheet is decomposed
into its own modes once; between two readings, where the air runs in a straight line, every mode has an exact answer.
A step may therefore be ten minutes or a year: there is no error in time, only that of the points. What enters through
the faces is counted separately from what the sheet holds, so that the two can be compared.

Lengths in mm, times in s, diffusion in mm2/s (1e-10 m2/s is 1e-4 mm2/s), surface coefficients in mm/s. What diffuses is
a content (percent moisture, say) that is alike on the two sides of a glue line.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from numpy.typing import ArrayLike

from gramil.physics.arrays import FloatArray, floats
from gramil.physics.step_response import step_response

SEALED = 0.0
"""Surface coefficient of a face that lets nothing through."""
OPEN = math.inf
"""Surface coefficient of a face that follows its air at once."""
POINTS = 17
"""Points to a layer; odd, so that one lies in the middle."""
_ENDS = [0, -1]
_BLOCK = 512  # readings at a time: keeps the working arrays in the processor's cache


@dataclass(frozen=True)
class Layer:
    """One wood of a sheet: thickness (mm), diffusion (mm2/s), capacity (dry density, one unit throughout a sheet)."""

    thickness: float
    diffusion: float
    capacity: float = 1.0


@dataclass(frozen=True)
class Sheet:
    """Layers from the first face to the last, and how open each face is (mm/s; SEALED, OPEN, or between).

    A surface coefficient s means a flow of s times capacity times (air's content - surface's content).
    Raises ValueError for no layers, or for figures that are not positive.
    """

    layers: tuple[Layer, ...]
    first_face: float = OPEN
    last_face: float = OPEN

    def __post_init__(self) -> None:
        figures = [figure for layer in self.layers for figure in (layer.thickness, layer.diffusion, layer.capacity)]
        if not figures or min(figures) <= 0 or min(self.first_face, self.last_face) < 0:
            raise ValueError(
                "a sheet needs layers of thickness, diffusion and capacity above 0, and faces of 0 or more"
            )


@dataclass(frozen=True)
class Modes:
    """A sheet taken apart: contents at its points are shapes @ amplitudes + held @ the two faces' air.

    stores (points,): capacity times mm. middle (points,): reads the content at half thickness. rates (modes,): 1/s.
    drive (2, modes): how the air at each face feeds each mode. flow (2, modes) and flow_held (2, 2): what moves from
    each face inward for the amplitudes and for the air at faces that follow it at once.
    """

    stores: FloatArray
    middle: FloatArray
    rates: FloatArray
    shapes: FloatArray
    held: FloatArray
    drive: FloatArray
    flow: FloatArray
    flow_held: FloatArray


@dataclass(frozen=True)
class Course:
    """The state of each sheet at each reading; arrays are (readings, sheets), the faces' (readings, sheets, 2).

    mean is weighted by capacity; centre is at half thickness; taken_up (sheets, 2) is what came in through each face
    over the whole time, in content times capacity times mm; profiles has the contents at each sheet's points at the
    end, from which the next course can start.
    """

    mean: FloatArray
    centre: FloatArray
    faces: FloatArray
    taken_up: FloatArray
    profiles: tuple[FloatArray, ...]


@lru_cache(maxsize=1024)
def modes_of(sheet: Sheet, points: int = POINTS) -> Modes:
    """Take a sheet apart into its modes, with `points` to a layer (3 or more); the same sheet is taken apart once."""
    stores, stiffness, middle = _assembled(sheet, points)
    openness = np.array([sheet.first_face, sheet.last_face])
    follows = np.isinf(openness)
    conductance = np.where(follows, 0.0, openness) * np.array([sheet.layers[end].capacity for end in _ENDS])
    free = np.full(stores.size, True)
    free[_ENDS] = ~follows
    held = np.zeros((stores.size, 2))
    held[_ENDS, [0, 1]] = follows
    rates, shapes = _eigenmodes(stores, stiffness, conductance, free)
    drive = conductance[:, None] * shapes[_ENDS] - held.T @ stiffness @ shapes
    inward = stiffness[_ENDS]
    return Modes(stores, middle, rates, shapes, held, drive, inward @ shapes, inward @ held)


def course(sheets: Sequence[Modes], start: Sequence[ArrayLike], times: ArrayLike, air: ArrayLike) -> Course:
    """Follow sheets through their air from the first time to the last; row 0 is the start itself.

    start: each sheet's content, one figure or one a point. times: (readings,) in s, never falling; two alike let the
    air jump. air: what each face would come to, (readings,), (readings, sheets) or (readings, sheets, 2). The very
    surface of an OPEN face is at its air from row 0 on.
    Raises ValueError if times fall or shapes disagree.
    """
    clock, given = floats(times), _air_per_face(air, len(sheets))
    datum = float(given.mean()) if given.size else 0.0  # an even content stays; without it less is lost to rounding
    faces, steps = given - datum, np.diff(clock)
    check_rows(clock, faces)
    batch = _Batch.of(sheets)
    amplitudes = batch.amplitudes([floats(content) - datum for content in start])
    rows = [batch.read(amplitudes[None], faces[:1])]
    passed = np.zeros((len(sheets), 2))
    for begin in range(0, steps.size, _BLOCK):
        end = min(begin + _BLOCK, steps.size)
        track, inflow = batch.advance(amplitudes, steps[begin:end], faces[begin : end + 1])
        rows.append(batch.read(track, faces[begin + 1 : end + 1]))
        amplitudes, passed = track[-1], passed + inflow
    figures = np.concatenate(rows)
    taken_up = passed + batch.edge_stores * (figures[-1, :, 2:] - figures[0, :, 2:])
    profiles = tuple(profile + datum for profile in batch.profiles(amplitudes, faces[-1]))
    figures += datum
    return Course(figures[..., 0], figures[..., 1], figures[..., 2:], taken_up, profiles)


def _assembled(sheet: Sheet, points: int) -> tuple[FloatArray, FloatArray, FloatArray]:
    """Stores (points), the stiffness that moves content between them, and the weights that read the middle."""
    places, weights, slopes = _lobatto(points)
    size = len(sheet.layers) * (points - 1) + 1
    stores, stiffness = np.zeros(size), np.zeros((size, size))
    for row, layer in enumerate(sheet.layers):
        own = slice(row * (points - 1), row * (points - 1) + points)
        stores[own] += 0.5 * layer.thickness * layer.capacity * weights
        through = 2.0 * layer.diffusion * layer.capacity / layer.thickness
        stiffness[own, own] += through * (slopes.T * weights) @ slopes
    stiffness[np.diag_indices(size)] -= stiffness.sum(axis=1)  # an even content does not flow, to rounding
    return stores, stiffness, _middle(sheet, places)


@lru_cache
def _lobatto(points: int) -> tuple[FloatArray, FloatArray, FloatArray]:
    """Gauss-Lobatto points on -1 to 1, their weights, and the matrix that takes values at them to slopes at them."""
    order = points - 1
    highest = np.polynomial.Legendre.basis(order)
    places = np.concatenate([[-1.0], np.sort(highest.deriv().roots().real), [1.0]])
    values = highest(places)
    apart = np.subtract.outer(places, places)
    np.fill_diagonal(apart, 1.0)
    slopes = np.outer(values, 1.0 / values) / apart
    np.fill_diagonal(slopes, 0.0)
    np.fill_diagonal(slopes, -slopes.sum(axis=1))
    return places, 2.0 / (order * points * values**2), slopes


def _middle(sheet: Sheet, places: FloatArray) -> FloatArray:
    """Weights (all points of the sheet) that read the content at half thickness."""
    edges = np.concatenate([[0.0], np.cumsum([layer.thickness for layer in sheet.layers])])
    row = int(np.clip(np.searchsorted(edges, 0.5 * edges[-1]) - 1, 0, len(sheet.layers) - 1))
    local = 2.0 * (0.5 * edges[-1] - edges[row]) / sheet.layers[row].thickness - 1.0
    weights = np.zeros(len(sheet.layers) * (places.size - 1) + 1)
    for point, place in enumerate(places):
        others = np.delete(places, point)
        weights[row * (places.size - 1) + point] = np.prod((local - others) / (place - others))
    return weights


def _eigenmodes(
    stores: FloatArray, stiffness: FloatArray, conductance: FloatArray, free: np.typing.NDArray[np.bool_]
) -> tuple[FloatArray, FloatArray]:
    """Rates (1/s) and shapes (points, modes) of the modes of the points that do not follow the air at once."""
    joined = stiffness.copy()
    joined[_ENDS, _ENDS] += conductance
    roots = np.sqrt(stores[free])
    rates, vectors = np.linalg.eigh(joined[np.ix_(free, free)] / np.outer(roots, roots))
    if free.all() and not conductance.any():
        rates[0] = 0.0  # a sealed sheet keeps what it holds; rounding would let it leak
    shapes = np.zeros((stores.size, rates.size))
    shapes[free] = vectors / roots[:, None]
    return rates, shapes


def check_rows(times: FloatArray, air: FloatArray) -> None:
    """Raises ValueError if times fall, or there is not a row of air to each."""
    if times.size == 0 or air.shape[0] != times.size or (np.diff(times) < 0).any():
        raise ValueError("times must not fall, and there must be one row of air to each of them")


def _air_per_face(air: ArrayLike, sheets: int) -> FloatArray:
    """Air as (readings, sheets, 2)."""
    given = floats(air)
    while given.ndim < 3:
        given = given[..., None]
    return np.broadcast_to(given, (given.shape[0], sheets, 2))


@dataclass(frozen=True)
class _Batch:
    """Sheets side by side, padded with modes that stay at rest.

    rates (sheets, modes); drive (sheets, 2, modes); flow (sheets, modes, 2) and flow_held (sheets, 2, 2) as in Modes;
    figures (sheets, modes, 4) and figures_held (sheets, 2, 4) read mean, centre and both surfaces.
    """

    sheets: tuple[Modes, ...]
    rates: FloatArray
    drive: FloatArray
    flow: FloatArray
    flow_held: FloatArray
    figures: FloatArray
    figures_held: FloatArray
    edge_stores: FloatArray

    @staticmethod
    def of(sheets: Sequence[Modes]) -> "_Batch":
        count, most = len(sheets), max(modes.rates.size for modes in sheets)
        rates, drive, flow = np.zeros((count, most)), np.zeros((count, 2, most)), np.zeros((count, most, 2))
        figures, figures_held = np.zeros((count, most, 4)), np.zeros((count, 2, 4))
        for row, modes in enumerate(sheets):
            own, readers = modes.rates.size, _readers(modes)
            rates[row, :own], drive[row, :, :own], flow[row, :own] = modes.rates, modes.drive, modes.flow.T
            figures[row, :own], figures_held[row] = modes.shapes.T @ readers, modes.held.T @ readers
        flow_held = np.array([modes.flow_held.T for modes in sheets])
        edge_stores = np.array([modes.stores[_ENDS] for modes in sheets])
        return _Batch(tuple(sheets), rates, drive, flow, flow_held, figures, figures_held, edge_stores)

    def amplitudes(self, start: Sequence[ArrayLike]) -> FloatArray:
        """Amplitudes (sheets, modes) of each sheet's content, one figure or one a point."""
        result = np.zeros_like(self.rates)
        for row, (modes, content) in enumerate(zip(self.sheets, start, strict=True)):
            points = np.broadcast_to(floats(content), modes.stores.shape)
            result[row, : modes.rates.size] = modes.shapes.T @ (modes.stores * points)
        return result

    def profiles(self, amplitudes: FloatArray, air: FloatArray) -> tuple[FloatArray, ...]:
        """Contents at each sheet's points."""
        rows = zip(self.sheets, amplitudes, air, strict=True)
        return tuple(modes.shapes @ own[: modes.rates.size] + modes.held @ faces for modes, own, faces in rows)

    def read(self, track: FloatArray, air: FloatArray) -> FloatArray:
        """Mean, centre and both surfaces, (readings, sheets, 4), from amplitudes and the faces' air."""
        return _each(track, self.figures) + _each(air, self.figures_held)

    def advance(self, start: FloatArray, steps: FloatArray, air: FloatArray) -> tuple[FloatArray, FloatArray]:
        """Amplitudes after each step (steps, sheets, modes), and what moved inward from the faces (sheets, 2).

        air is (steps + 1, sheets, 2), straight between its rows.
        """
        lengths, which = np.unique(steps, return_inverse=True)
        span = lengths[:, None, None]
        decay, first, second, third = step_response(span * self.rates)
        push = _each(air, self.drive)
        before, change = push[:-1], np.diff(push, axis=0)
        track = _of_step(span * first, which) * before
        track += _of_step(span * second, which) * change
        last = start
        for row, kept in zip(track, np.broadcast_to(_of_step(decay, which), track.shape), strict=True):
            row += kept * last
            last = row
        earlier = np.concatenate([start[None], track[:-1]])
        parts = ((span * first, earlier), (span**2 * second, before), (span**2 * third, change))
        dwelt = np.sum([_summed(_of_step(weight, which), rows) for weight, rows in parts], axis=0)
        air_dwelt = 0.5 * steps[:, None, None] * (air[:-1] + air[1:])
        return track, (_each(dwelt[None], self.flow) + _each(air_dwelt.sum(axis=0, keepdims=True), self.flow_held))[0]


def _summed(weights: FloatArray, rows: FloatArray) -> FloatArray:
    """The sum of rows, each times its weights, over the first axis; one row of weights may serve all."""
    return floats(np.einsum("ijk,ijk->jk", np.broadcast_to(weights, rows.shape), rows))


def _of_step(table: FloatArray, which: np.typing.NDArray[np.intp]) -> FloatArray:
    """Rows of a table of step lengths for each step; one row serves all where all steps are alike."""
    return table if table.shape[0] == 1 else table[which]


def _readers(modes: Modes) -> FloatArray:
    """Columns (points, 4) that read mean, centre and both surfaces from the contents at the points."""
    ends = np.zeros((modes.stores.size, 2))
    ends[_ENDS, [0, 1]] = 1.0
    return np.column_stack([modes.stores / modes.stores.sum(), modes.middle, ends])


def _each(rows: FloatArray, matrices: FloatArray) -> FloatArray:
    """Every sheet's rows (readings, sheets, k) times its own matrix (sheets, k, m)."""
    product: FloatArray = np.matmul(rows.transpose(1, 0, 2), matrices).transpose(1, 0, 2)
    return product
