"""Equilibrium moisture, shrinkage and movement against the Wood Handbook.

Forest Products Laboratory, Wood Handbook: Wood as an Engineering Material, FPL-GTR-190 (2010) and FPL-GTR-282 (2021),
Madison, Wisconsin. Each table is named beside its figures, and so is what was read only in a transcription, or is from
memory.
"""

import pytest
from tests.published.read_values import rows

from gramil.wood.equilibrium import equilibrium_moisture
from gramil.wood.movement import coefficient_from_shrinkage
from gramil.wood.species import Species, load_species

MOISTURE = rows("wood_handbook", "equilibrium moisture")


@pytest.mark.parametrize("fahrenheit", sorted({row[0] for row in MOISTURE}))
def test_table_4_2_every_cell_that_was_read(fahrenheit: float) -> None:
    """The table's cells are rounded to a tenth, and from -1.1 to 54 C; the equation is its fit."""
    cells = [(humidity, moisture) for at, humidity, moisture in MOISTURE if at == fahrenheit]
    humidities, printed = zip(*cells, strict=True)
    assert equilibrium_moisture((fahrenheit - 32) / 1.8, list(humidities)) == pytest.approx(list(printed), abs=0.07)


def test_equation_4_5_at_its_ends() -> None:
    """Worked by hand from equation 4-5 at 20 C: 9.271 at 50 %, 28.8 at 100 %."""
    assert float(equilibrium_moisture(20.0, 50.0)) == pytest.approx(9.271, abs=1e-3)
    assert float(equilibrium_moisture(20.0, 100.0)) == pytest.approx(28.8, abs=0.05)


# Table 13-5: radial and tangential coefficients; tables 4-3 and 4-4: radial and tangential shrinkage.
IDENTITY_HOLDS = rows("wood_handbook", "movement and shrinkage, alike")
IDENTITY_FAILS = rows("wood_handbook", "movement and shrinkage, unlike")


def _woods() -> dict[str, Species]:
    return load_species()


@pytest.mark.parametrize(("name", "c_radial", "c_tangential", "s_radial", "s_tangential"), IDENTITY_HOLDS)
def test_coefficients_follow_from_shrinkage(
    name: str, c_radial: float, c_tangential: float, s_radial: float, s_tangential: float
) -> None:
    assert coefficient_from_shrinkage(s_radial) == pytest.approx(c_radial, abs=1.5e-5)
    assert coefficient_from_shrinkage(s_tangential) == pytest.approx(c_tangential, abs=1.5e-5)


@pytest.mark.parametrize(("name", "c_radial", "c_tangential", "s_radial", "s_tangential"), IDENTITY_FAILS)
def test_coefficients_that_must_not_be_derived(
    name: str, c_radial: float, c_tangential: float, s_radial: float, s_tangential: float
) -> None:
    """The handbook's two tables disagree for these woods; the data file must carry table 13-5 itself."""
    assert coefficient_from_shrinkage(s_radial) < 0.85 * c_radial
    assert coefficient_from_shrinkage(s_tangential) < 0.9 * c_tangential


@pytest.mark.parametrize(
    ("name", "c_radial", "c_tangential", "s_radial", "s_tangential"), IDENTITY_HOLDS + IDENTITY_FAILS
)
def test_the_data_file_is_the_handbook(
    name: str, c_radial: float, c_tangential: float, s_radial: float, s_tangential: float
) -> None:
    wood = _woods()[name]
    figures = (wood.movement_radial, wood.movement_tangential, wood.shrinkage_radial, wood.shrinkage_tangential)
    assert [figure and figure.value for figure in figures] == [c_radial, c_tangential, s_radial, s_tangential]
    assert all(figure and figure.flag != "derived" for figure in figures)


def test_black_locust_movement() -> None:
    """Table 13-5, read on the hosted page."""
    ((name, radial, tangential),) = rows("wood_handbook", "black locust")
    wood = _woods()[name]
    assert wood.movement_radial is not None
    assert wood.movement_tangential is not None
    assert (wood.movement_radial.value, wood.movement_tangential.value) == (radial, tangential)


def test_persimmon_shrinkage() -> None:
    """Table 4-3, read on the hosted page."""
    ((name, *shrinkage),) = rows("wood_handbook", "persimmon")
    wood = _woods()[name]
    found = (wood.shrinkage_radial, wood.shrinkage_tangential, wood.shrinkage_volumetric)
    assert [each and each.value for each in found] == shrinkage


@pytest.mark.parametrize(("name", "gravity", "million_psi"), rows("wood_handbook", "stiffness"))
def test_stiffness_and_density_are_the_handbook_s(name: str, gravity: float, million_psi: float) -> None:
    """1 psi is 6.894757 kPa; density at 12 % is 1.12 times specific gravity on the volume then. Rounded to 100 MPa."""
    wood = _woods()[name]
    assert wood.modulus is not None
    assert wood.density is not None
    assert wood.modulus.value == pytest.approx(million_psi * 6894.757, abs=70.0)
    assert wood.density.value == pytest.approx(gravity * 1120.0, abs=1.0)
