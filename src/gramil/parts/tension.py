"""What each string weighs and pulls, how far it is from breaking, and how it answers to stretching and bending."""

import numpy as np
from numpy.typing import NDArray

from gramil.in_shop_units import POUND_FORCE
from gramil.physics.materials import Material, materials
from gramil.physics.stiff_string import disc_area, plain_density, tension, wound_density
from gramil.physics.stopped_string import stretch_stiffness
from gramil.physics.wire_strength import breaking_load, elongation
from gramil.quantities import GramPerM, Hertz, Mm, MPa, Newton, PerString, PerStringFret, Ratio

OWNS = ("string_",)

LARGEST_CORE = 0.8
"""Most of a string's diameter that an estimated core takes: thinner windings are not made."""


def string_length(
    string_scale_end_x: PerString[Mm],
    string_x: PerStringFret[Mm],
    string_y_bridge: PerString[Mm],
    string_y_nut: PerString[Mm],
) -> PerString[Mm]:
    """Each string's own scale, along the string from zero line to saddle, before any set-back.

    Formula: hypot(string_scale_end_x - string_x[:, 0], string_y_bridge - string_y_nut)
    Source: Pythagoras.
    """
    return np.hypot(string_scale_end_x - string_x[:, 0], string_y_bridge - string_y_nut)


def string_speaking_length(
    string_length: PerString[Mm], saddle_set_back: PerString[Mm], intonation_nut_forward: PerString[Mm]
) -> PerString[Mm]:
    """The length of each open string that sounds, from break point to break point; unknown, those on its own scale.

    Formula: string_length + nan_to_num(saddle_set_back) - nan_to_num(intonation_nut_forward)
    Source: common practice.
    """
    return string_length + np.nan_to_num(saddle_set_back) - np.nan_to_num(intonation_nut_forward)


def string_core(
    strings_gauges: PerString[Mm],
    strings_wound: PerString[Ratio],
    strings_cores: PerString[Mm],
    limit_core_least: Mm,
    limit_core_share: Ratio,
) -> PerString[Mm]:
    """Diameter of what bears the pull: a plain string whole, a wound one's core, estimated where it is not given.

    Formula: where(strings_wound == 0, strings_gauges, where(strings_cores > 0, strings_cores,
        minimum(limit_core_least + limit_core_share * strings_gauges, 0.8 * strings_gauges)))
    Source: common practice, from memory.
    """
    usual = np.minimum(limit_core_least + limit_core_share * strings_gauges, LARGEST_CORE * strings_gauges)
    return np.where(strings_wound == 0, strings_gauges, np.where(strings_cores > 0, strings_cores, usual))


def string_weight(
    strings_gauges: PerString[Mm],
    strings_weights: PerString[GramPerM],
    strings_wound: PerString[Ratio],
    string_core: PerString[Mm],
    strings_plain: str,
    strings_core: str,
    strings_wrap: str,
) -> PerString[GramPerM]:
    """What each string weighs for its length: off the packet, or from its gauge and what it is made of.

    Method: plain: density x pi d^2 / 4; wound: core, and round wire filling pi/4 of the ring round it: an estimate.
    Source: common practice.
    """
    plain = plain_density(strings_gauges, _material(strings_plain).density)
    core, wrap = _material(strings_core).density, _material(strings_wrap).density
    outside = np.where(strings_wound == 0, string_core * 2, strings_gauges)
    wound = wound_density(string_core, outside, core, wrap)
    return np.where(strings_weights > 0, strings_weights, np.where(strings_wound == 0, plain, wound))


def _material(name: str) -> Material:
    return materials()[name.replace(" ", "_")]


def string_pull(
    string_weight: PerString[GramPerM], string_speaking_length: PerString[Mm], strings_frequency: PerString[Hertz]
) -> PerString[Newton]:
    """What each string pulls when it sounds its pitch: weight x (2 x length x frequency) squared.

    Formula: string_weight * (2 * string_speaking_length * strings_frequency) ** 2 * 1e-9
    Source: fletcher_rossing
    """
    return tension(string_weight, string_speaking_length, strings_frequency)


def string_pull_on_scale(
    string_weight: PerString[GramPerM], string_length: PerString[Mm], strings_frequency: PerString[Hertz]
) -> PerString[Newton]:
    """What each string would pull over its bare scale: its stretch goes by this, since set-backs are sought by that.

    Formula: string_weight * (2 * string_length * strings_frequency) ** 2 * 1e-9
    Source: fletcher_rossing
    """
    return tension(string_weight, string_length, strings_frequency)


def string_pull_said(
    string_pull_total: Newton,
    strings_wound: PerString[Ratio],
    strings_weights: PerString[GramPerM],
    strings_frequency: PerString[Hertz],
    instrument_units: str,
) -> str:
    """What all strings pull, in words: about, and to ten newtons, where the weight of a wound string is estimated.

    Method: a wound string of which no weight is given is estimated from its core and its wrap. Without the strings'
    pitches there is no pull.
    Source: common practice.
    """
    if np.isnan(strings_frequency).any():
        return "not known without the strings' pitches"
    if np.isnan(string_pull_total):
        return "not known"
    estimated = bool(np.any((strings_wound > 0) & (strings_weights == 0)))
    pull, unit = (string_pull_total / POUND_FORCE, "lbf") if instrument_units == "in" else (string_pull_total, "N")
    return f"about {round(pull, -1):.0f} {unit}" if estimated else f"{pull:.1f} {unit}"


def string_pull_total(string_pull: PerString[Newton]) -> Newton:
    """What all strings pull together.

    Formula: sum(string_pull)
    Source: common practice.
    """
    return float(string_pull.sum())


def string_pull_ratio(string_pull: PerString[Newton]) -> Ratio:
    """How many times the weakest string's pull the strongest one's is.

    Formula: max(string_pull) / min(string_pull)
    Source: common practice.
    """
    return float(string_pull.max() / string_pull.min())


def string_stress(string_pull: PerString[Newton], string_core: PerString[Mm]) -> PerString[MPa]:
    """Stress in what bears the pull; of a wound string, in its core.

    Formula: string_pull / (pi * string_core ** 2 / 4)
    Source: common practice.
    """
    return string_pull / disc_area(string_core)


def string_stress_on_scale(string_pull_on_scale: PerString[Newton], string_core: PerString[Mm]) -> PerString[MPa]:
    """Stress over the bare scale in what bears the pull: what the stiffness of nylon goes by.

    Formula: string_pull_on_scale / (pi * string_core ** 2 / 4)
    Source: common practice.
    """
    return string_pull_on_scale / disc_area(string_core)


def string_breaking(
    strings_wound: PerString[Ratio], string_core: PerString[Mm], strings_plain: str, strings_core: str
) -> PerString[Newton]:
    """The pull at which each string (or its core) breaks; not known for a material without a published strength.

    Method: strength A / d^m of drawn wire times the section.
    Source: shigley_wire
    """
    laws = [_material(strings_core if wound else strings_plain).strength for wound in strings_wound]
    return np.array(
        [breaking_load(across, law) if law else np.nan for across, law in zip(string_core, laws, strict=True)],
        dtype=np.float64,
    )


def string_reserve(string_pull: PerString[Newton], string_breaking: PerString[Newton]) -> PerString[Ratio]:
    """The share of its strength that each string has left; at nothing it breaks.

    Source: shigley_wire
    """
    return 1 - string_pull / string_breaking


def string_modulus(string_modulus_least: PerString[MPa], string_modulus_most: PerString[MPa]) -> PerString[MPa]:
    """Stiffness of what each string's pull stretches, the middle of the published range.

    Formula: (string_modulus_least + string_modulus_most) / 2
    Source: data/materials.toml, figure by figure.
    """
    return (string_modulus_least + string_modulus_most) / 2


def string_modulus_least(
    strings_wound: PerString[Ratio], strings_plain: str, strings_core: str, string_stress_on_scale: PerString[MPa]
) -> PerString[MPa]:
    """Stiffness of what each string's pull stretches, the least published.

    Method: the plain string's material, or the core's; of nylon, which stiffens with its pull, its stretch x stress.
    Source: data/materials.toml, figure by figure.
    """
    return _moduli(strings_wound, strings_plain, strings_core, string_stress_on_scale)[:, 0]


def string_modulus_most(
    strings_wound: PerString[Ratio], strings_plain: str, strings_core: str, string_stress_on_scale: PerString[MPa]
) -> PerString[MPa]:
    """Stiffness of what each string's pull stretches, the most published.

    Method: the plain string's material, or the core's; of nylon, which stiffens with its pull, its stretch x stress.
    Source: data/materials.toml, figure by figure.
    """
    return _moduli(strings_wound, strings_plain, strings_core, string_stress_on_scale)[:, 1]


def _moduli(wound: PerString[Ratio], plain: str, core: str, stress: PerString[MPa]) -> NDArray[np.float64]:
    """Least and most, a row a string."""
    each = zip(wound, stress, strict=True)
    return np.array([_material(core if of_core else plain).modulus_tuned(float(pulled)) for of_core, pulled in each])


def string_elongation(
    string_pull: PerString[Newton],
    string_speaking_length: PerString[Mm],
    string_core: PerString[Mm],
    string_modulus: PerString[MPa],
) -> PerString[Mm]:
    """How much longer the speaking length of each string is drawn when it is tuned up; nylon creeps to more.

    Formula: string_pull * string_speaking_length / (string_modulus * pi * string_core ** 2 / 4)
    Source: Hooke's law.
    """
    return elongation(string_pull, string_speaking_length, string_core, string_modulus)


def string_stretch(
    strings_stretch: PerString[Ratio],
    string_modulus: PerString[MPa],
    string_core: PerString[Mm],
    string_pull_on_scale: PerString[Newton],
) -> PerString[Ratio]:
    """The share of its pull that each string gains for each unit of strain, over its bare scale: measured, or E A / T.

    Formula: where(strings_stretch > 0, strings_stretch,
        pi * string_core ** 2 / 4 * string_modulus / string_pull_on_scale)
    Source: anderson_beausoleil_2024
    """
    return np.where(
        strings_stretch > 0, strings_stretch, stretch_stiffness(string_modulus, string_core / 2, string_pull_on_scale)
    )


def string_stretch_least(
    strings_stretch: PerString[Ratio],
    string_modulus_least: PerString[MPa],
    string_core: PerString[Mm],
    string_pull_on_scale: PerString[Newton],
) -> PerString[Ratio]:
    """The share of its pull that each string gains for each unit of strain, with the least modulus published, where
    it was not measured.

    Formula: where(strings_stretch > 0, strings_stretch,
        pi * string_core ** 2 / 4 * string_modulus_least / string_pull_on_scale)
    Source: anderson_beausoleil_2024
    """
    return string_stretch(strings_stretch, string_modulus_least, string_core, string_pull_on_scale)


def string_stretch_most(
    strings_stretch: PerString[Ratio],
    string_modulus_most: PerString[MPa],
    string_core: PerString[Mm],
    string_pull_on_scale: PerString[Newton],
) -> PerString[Ratio]:
    """The share of its pull that each string gains for each unit of strain, with the greatest modulus published,
    where it was not measured.

    Formula: where(strings_stretch > 0, strings_stretch,
        pi * string_core ** 2 / 4 * string_modulus_most / string_pull_on_scale)
    Source: anderson_beausoleil_2024
    """
    return string_stretch(strings_stretch, string_modulus_most, string_core, string_pull_on_scale)


def string_stretch_length(
    strings_wound: PerString[Ratio], strings_plain: str, strings_core: str, string_length: PerString[Mm]
) -> PerString[Mm]:
    """The length over which each string's stretch holds; nothing for nylon, which stiffens with its pull.

    Tuned to the same pitch over a longer length, a string pulls more: the share that it gains falls with the square.
    Method: the bare scale where the material has a modulus of its own, else 0.
    Source: Hooke's law.
    """
    made_of = [_material(strings_core if wound else strings_plain) for wound in strings_wound]
    return string_length * np.array([not each.stretches for each in made_of])


def string_bending_radius(strings_bending: PerString[Mm], string_core: PerString[Mm]) -> PerString[Mm]:
    """Radius of what resists bending: a plain string's own, a wound one's core, or half the diameter that is given.

    Formula: where(strings_bending > 0, strings_bending, string_core) / 2
    Source: anderson_beausoleil_2024
    """
    return np.where(strings_bending > 0, strings_bending, string_core) / 2
