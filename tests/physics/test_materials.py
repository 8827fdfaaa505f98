"""The materials table is whole: every figure has a source, a known flag and a likely size."""

from gramil.physics.materials import FLAGS, materials


def test_every_figure_has_a_source_and_a_flag() -> None:
    for material in materials().values():
        for figure in (*material.densities, *material.moduli):
            assert figure.source.strip(), material.key
            assert figure.flag in FLAGS, material.key
        if material.strength:
            assert material.strength.flag in FLAGS


def test_units_are_kilograms_per_cubic_metre_and_megapascals() -> None:
    for material in materials().values():
        assert all(900.0 < each.value < 22000.0 for each in material.densities), material.key
        assert 1000.0 < material.modulus_range[0] <= material.modulus <= material.modulus_range[1] < 500000.0, (
            material.key
        )


def test_steel_is_a_range() -> None:
    """190 GPa as handbooks give ASTM A228, 207 GPa in spring design: both from memory."""
    assert materials()["music_wire"].modulus_range == (190000.0, 207000.0)
    assert materials()["music_wire"].modulus == 198500.0


def test_a_value_taken_from_music_wire_is_known_no_better_than_there() -> None:
    flags = {each.value: each.flag for each in materials()["music_wire"].moduli}
    taken = [each for one in materials().values() for each in one.moduli if each.source == "as music wire"]
    assert taken
    assert not [each for each in taken if each.flag != flags[each.value]]
