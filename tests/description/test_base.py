"""Base values of a description: names, units, normalising, and where each came from."""

from importlib.resources import files

import numpy as np
import pytest

from gramil.description.base import INPUTS, Base, base_name, base_names, base_values, keys_of
from gramil.description.reading import parse_description, parse_shop, read_shop
from gramil.description.records import Station
from gramil.faults import MakersFault
from gramil.graph import derive
from gramil.quantities import Cents, Count, Mm, MPa, PerFret, PerMm, PerString, Ratio, axes_of
from gramil.wiring import build

TARN = (files("gramil") / "data" / "examples" / "tarn.toml").read_text(encoding="utf-8")
CONTRACT = {
    "instrument_name": str,
    "instrument_units": str,
    "instrument_handed": str,
    "scale_bass": Mm,
    "scale_treble": Mm,
    "scale_sideways": Mm,
    "scale_square_at": Ratio,
    "scale_frets": Count,
    "scale_join": Ratio,
    "scale_zero_fret": bool,
    "scale_cents": PerFret[Cents],
    "scale_square_at_cents": Cents,
    "nut_width": Mm,
    "nut_spread": Mm,
    "nut_spacing": str,
    "nut_set_forward": Mm,
    "bridge_spread": Mm,
    "board_wood": str,
    "board_width": Mm,
    "board_width_station": Station,
    "board_thickness": Mm,
    "board_beyond_last_fret": Mm,
    "board_curvature_nut": PerMm,
    "board_curvature_end": PerMm,
    "board_edge_nut_treble": Mm,
    "board_edge_nut_bass": Mm,
    "board_edge_tail_treble": Mm,
    "board_edge_tail_bass": Mm,
    "board_level_underside": bool,
    "board_modulus": MPa,
    "binding_thickness": Mm,
    "binding_purfling": Mm,
    "binding_tail": bool,
    "slots_bottom": str,
    "slots_cut": str,
    "slots_clearance": Mm,
    "slots_crest_loss": Mm,
    "wire_name": str,
    "wire_crown_width": Mm,
    "wire_crown_height": Mm,
    "wire_tang_thickness": Mm,
    "wire_bead_thickness": Mm,
    "wire_tang_depth": Mm,
    "wire_on_hand": Mm,
    "strings_gauges": PerString[Mm],
    "strings_count": Count,
    "markers_frets": tuple[int, ...],
    "markers_double": tuple[int, ...],
    "markers_diameter": Mm,
    "markers_side_diameter": Mm,
    "markers_face": bool,
    "neck_depth_first": Mm,
    "neck_depth_tenth": Mm,
    "neck_modulus": MPa,
    "shop_name": str,
    "shop_is_default": bool,
    "shop_template_pin": Mm,
    "shop_pin_clearance": Mm,
    "shop_pin_offset": Mm,
    "shop_laser_kerf": Mm,
    "shop_allowance_side": Mm,
    "shop_allowance_length": Mm,
    "limit_edge_margin": Mm,
    "limit_wire_spare": Ratio,
    "limit_string_error_cents": Cents,
}


def of(text: str, shop: str | None = None) -> Base:
    return base_values(parse_description(text, "tarn.toml"), parse_shop(shop, "shop.toml") if shop else read_shop())


def test_every_promised_name_has_its_unit() -> None:
    assert {name: INPUTS[name].annotation for name in CONTRACT} == CONTRACT
    assert all(each.what for each in INPUTS.values())


def test_every_input_has_a_value_and_an_origin() -> None:
    base = of(TARN)
    assert set(base.values) == set(base.origins) == set(INPUTS)
    for name, each in INPUTS.items():
        if axes := axes_of(each.annotation):
            assert base.values[name].shape == tuple(base.lengths[axis] for axis in axes)
    assert derive(build([], INPUTS), base.values, base.origins, lengths=base.lengths)["scale_cents"][12] == 1200


def test_tarn_as_it_is_written() -> None:
    values = of(TARN).values
    assert (values["scale_bass"], values["scale_treble"], values["scale_sideways"]) == (630.0, 630.0, 0.0)
    assert (values["scale_frets"], values["scale_join"], values["scale_square_at"]) == (19, 13.0, 0.0)
    assert values["board_curvature_nut"] == 1 / 320
    assert values["board_curvature_end"] == 1 / 390
    assert values["board_width_station"] == Station(12.0, 0.0)
    np.testing.assert_allclose(values["strings_gauges"], [0.3048, 0.4064, 0.6096, 0.8128, 1.0668, 1.3462], rtol=1e-12)
    np.testing.assert_array_equal(values["scale_cents"], np.arange(20) * 100.0)


def test_origins_name_file_and_line() -> None:
    origins = of(TARN).origins
    line = TARN.splitlines().index("thickness = 6.3                  # finished, at the crest, at the tail end") + 1
    assert str(origins["board_thickness"]) == f"tarn.toml:{line}"
    assert str(origins["scale_sideways"]).startswith("tarn.toml:")
    assert "common practice" in str(origins["slots_crest_loss"])
    assert "common practice" in str(origins["wire_crown_width"])
    assert "common practice" in str(origins["limit_under_slot"])


SHOP = """gramil = 1
[shop]
name = "x"
units = "in"
[[wire]]
name = "medium"
crown_width = 0.1
crown_height = 0.05
tang_thickness = 0.02
bead_thickness = 0.03
tang_depth = 0.06
on_hand = "6 m"
[[jig]]
name = "sled"
for = "slots"
constant = "-41.5 mm"
checked = 2026-11-02
[[block]]
name = "flat"
radius = "flat"
[limits]
under_slot = 0.1
wire_spare = 1.25
"""


def test_a_shop_gives_wire_jig_and_limits() -> None:
    base = of(TARN, SHOP)
    assert base.values["wire_crown_width"] == pytest.approx(2.54, abs=1e-12)
    assert base.values["wire_on_hand"] == 6000.0
    assert str(base.origins["wire_crown_width"]) == "shop.toml:7"
    assert base.values["shop_pin_offset"] == -41.5
    assert str(base.origins["shop_pin_offset"]) == "shop.toml:16"
    assert base.values["shop_jigs"][0].checked == "2026-11-02"
    assert base.values["limit_under_slot"] == pytest.approx(2.54, abs=1e-12)
    assert base.values["limit_wire_spare"] == 1.25
    assert base.values["shop_blocks"][0].curvature == 0.0
    assert not base.values["shop_is_default"]


def test_wire_measured_in_the_description() -> None:
    own = """name = "own"
crown_width = 2.3
crown_height = 1.1
tang_thickness = 0.5
bead_thickness = 0.7
tang_depth = 1.5"""
    text = TARN.replace('use = "medium"', own)
    base = of(text)
    assert (base.values["wire_name"], base.values["wire_tang_depth"]) == ("own", 1.5)
    assert str(base.origins["wire_tang_depth"]) == "tarn.toml:51"


def test_a_wire_that_the_shop_has_not() -> None:
    with pytest.raises(MakersFault) as raised:
        of(TARN.replace('use = "medium"', 'use = "meduim"'))
    (fault,) = raised.value.faults
    assert (fault.file, fault.line, fault.where) == ("tarn.toml", 46, "wire.use")
    assert "medium" in fault.remedy


def test_fanned_board_measures_along_the_outer_strings() -> None:
    values = of(TARN.replace("length = 630 ", "bass = 650\ntreble = 630 ")).values
    assert (values["scale_bass"], values["scale_treble"]) == (650.0, 630.0)
    assert values["scale_sideways"] == (56.5 - 38.5) / 2
    assert (values["scale_square_at"], values["scale_square_at_cents"]) == (7.0, 700.0)


def test_a_fractional_square_fret_interpolates_in_cents() -> None:
    values = of(TARN.replace("length = 630 ", "bass = 650\ntreble = 630\nsquare_at = 6.25 ")).values
    assert values["scale_square_at_cents"] == pytest.approx(625.0)


def test_keys_and_names_both_ways() -> None:
    assert base_name("board.thickness") == "board_thickness"
    assert base_name("neck.depth_at_1") == "neck_depth_first"
    assert base_names("board.arch") == ("board_curvature_nut", "board_curvature_end")
    assert base_name("limits.under_slot") == "limit_under_slot"
    assert keys_of("board_thickness") == ("board.thickness",)
    assert keys_of("scale_bass") == ("scale.bass", "scale.length")
    with pytest.raises(KeyError):
        base_name("board.thicknes")
