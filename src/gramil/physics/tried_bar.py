"""A bar's stiffness along its length from what it does: tapped free, or bent on two supports under a weight.

Shear is not left out: wood along its grain is some sixteen times stiffer against stretch than against shear, so that a
short bar gives and swings noticeably more than bending alone would have it. Lengths in mm, moduli in MPa, forces in N,
masses in kg.
"""

import math
from dataclasses import dataclass

import numpy as np

from gramil.physics.arrays import FloatArray

SHEAR_SHARE = 5.0 / 6.0
"""What counts of a rectangle's area against shear."""
FREE_BAR = (4.7300407, 7.8532046, 10.9956078, 14.1371655)
"""Roots of cos x cosh x = 1: the wave numbers of a free bar times its length."""


@dataclass(frozen=True)
class Rod:
    """A bar of rectangular section: its length, its width, and its height in the direction in which it bends."""

    length: float
    width: float
    height: float


def deflection(rod: Rod, span: float, modulus: float, shear: float, force: float) -> float:
    """How far a bar on two supports `span` apart gives in the middle under a force there, its shear included."""
    bent = force * span**3 / (4.0 * modulus * rod.width * rod.height**3)
    return bent + force * span / (4.0 * SHEAR_SHARE * shear * rod.width * rod.height)


def shear_over_bending(rod: Rod, span: float, ratio: float) -> float:
    """What shear adds to bending in `deflection`, as a share, for a modulus over shear modulus: 1.2 (E/G) (h/L)^2."""
    return ratio * (rod.height / span) ** 2 / SHEAR_SHARE


def modulus_pushed(rod: Rod, span: float, force: float, given: float, ratio: float) -> float:
    """The modulus from how far it gave, for a modulus over shear modulus of `ratio`."""
    bare = force * span**3 / (4.0 * given * rod.width * rod.height**3)
    return bare * (1.0 + shear_over_bending(rod, span, ratio))


def modulus_tapped(rod: Rod, mass: float, frequency: float, ratio: float) -> float:
    """The modulus of a free bar from its lowest bending frequency, Hz: a bar of Timoshenko's."""
    density = mass / (rod.length * rod.width * rod.height)  # kg/mm3; kg, mm and s give a modulus in kPa
    slender = (2.0 * math.pi * frequency) ** 2 * 12.0 * density * rod.length**4 / rod.height**2 / FREE_BAR[0] ** 4
    return 1e-3 * slender * (FREE_BAR[0] ** 2 / wave_number_squared(rod.height / rod.length, ratio)) ** 2


def wave_number_squared(slenderness: float, ratio: float) -> float:
    """omega L^2 sqrt(density A / (E I)) of a free bar's lowest bending mode, by its height over its length.

    22.3733 for a slender one; less where shear and the section's turning count (Timoshenko 1921).
    """
    from scipy.optimize import brentq

    turning = slenderness**2 / 12.0
    shearing = turning * ratio / SHEAR_SHARE
    slender = FREE_BAR[0] ** 2
    # from below: shear only lowers a note, and the next mode is above
    places = np.linspace(0.2, 1.0 + 1e-9, 200) * slender
    signs = np.array([_free_ends(place, turning, shearing) for place in places])
    first = int(np.flatnonzero(np.sign(signs[1:]) != np.sign(signs[:-1]))[0])
    return float(brentq(_free_ends, places[first], places[first + 1], args=(turning, shearing), xtol=1e-12))


def _free_ends(number: float, turning: float, shearing: float) -> float:
    """What is nothing where a bar with free ends can swing, evenly about its middle.

    With w = cosh(p x) and cos(q x) for a length of 1 and x from -1/2 to 1/2: no couple and no shear force at the end.
    """
    square = number**2
    even, apart = square * (turning + shearing), square * (turning - shearing)
    root = math.sqrt(apart**2 + 4.0 * square)
    p, q = math.sqrt((root - even) / 2.0), math.sqrt((root + even) / 2.0)
    grow, turn = (p * p + square * shearing) / p, (q * q - square * shearing) / q
    couple = np.array([grow * p * math.cosh(p / 2.0), -turn * q * math.cos(q / 2.0)])
    force = np.array([(grow - p) * math.sinh(p / 2.0), (q - turn) * math.sin(q / 2.0)])
    return _cross(couple, force) / math.cosh(p / 2.0)


def _cross(one: FloatArray, other: FloatArray) -> float:
    return float(one[0] * other[1] - one[1] * other[0])
