"""The woods' data: every figure has a source that exists, missing stays missing, and names are found."""

import tomllib
from dataclasses import fields
from importlib.resources import files

import pytest

from gramil.faults import MakersFault
from gramil.wood.permits import permit_of
from gramil.wood.species import (
    FLAGS,
    Published,
    Remark,
    Species,
    dust_of_every_wood,
    find_species,
    load_species,
    species_from_table,
    transport_of,
)
from gramil.wood.wood_words import is_wood

SOURCES = tomllib.loads((files("gramil") / "data" / "sources" / "wood.toml").read_text(encoding="utf-8"))


def _entries(wood: Species) -> list[Published | Remark]:
    values = [getattr(wood, field.name) for field in fields(wood)]
    return [value for value in values if isinstance(value, Published | Remark)]


def test_some_thirty_woods() -> None:
    assert len(load_species()) >= 30


@pytest.mark.parametrize("name", sorted(load_species()))
def test_every_figure_names_a_source_that_is_listed(name: str) -> None:
    for entry in (*_entries(load_species()[name]), dust_of_every_wood()):
        assert entry.source in SOURCES
        assert entry.flag in FLAGS


def test_every_source_says_what_it_is() -> None:
    for row in SOURCES.values():
        assert {"author", "title", "year", "table", "note", "flag"} == set(row)


@pytest.mark.parametrize("name", sorted(load_species()))
def test_figures_are_those_of_wood(name: str) -> None:
    """Ranges that any wood keeps: typing errors of a power of ten fall out."""
    wood = load_species()[name]
    ranges = {
        "density": (300, 1300),
        "modulus": (5000, 20000),
        "ratio_radial": (0.05, 0.25),
        "ratio_tangential": (0.02, 0.1),
        "strength_across": (1.0, 8.0),
        "shrinkage_radial": (2.0, 10.0),
        "shrinkage_tangential": (3.0, 13.0),
        "movement_radial": (0.001, 0.003),
        "movement_tangential": (0.0018, 0.0045),
    }
    for key, (low, high) in ranges.items():
        figure = getattr(wood, key)
        assert figure is None or low <= figure.value <= high, key
    for what in ("shrinkage", "movement"):
        radial, tangential = (getattr(wood, f"{what}_{way}") for way in ("radial", "tangential"))
        assert radial is None or radial.value < tangential.value


@pytest.mark.parametrize(
    ("written", "name"),
    [
        ("sitka", "Sitka spruce"),
        ("SITKA SPRUCE", "Sitka spruce"),
        ("Picea sitchensis", "Sitka spruce"),
        ("western red-cedar", "western redcedar"),
        ("walnut", "black walnut"),
        ("persimmon", "persimmon"),
        ("common_persimmon", "persimmon"),
        ("Dalbergia latifolia", "Indian rosewood"),
    ],
)
def test_woods_are_found_by_any_of_their_names(written: str, name: str) -> None:
    assert find_species(written).name == name


def test_an_unknown_wood_gets_the_nearest_names() -> None:
    with pytest.raises(MakersFault, match="persimmon"):
        find_species("persimon")
    with pytest.raises(MakersFault, match="no wood called"):
        find_species("zzzz")


def test_missing_is_missing() -> None:
    cocobolo = find_species("cocobolo")
    assert cocobolo.shrinkage_radial is None
    assert cocobolo.movement("radial") is None
    assert cocobolo.modulus_across("radial") is None
    assert "strength_across" in find_species("Indian rosewood").missing()


def test_a_tabled_coefficient_is_not_replaced_by_a_derived_one() -> None:
    cedar = find_species("western redcedar").movement("radial")
    assert cedar is not None
    assert (cedar.value, cedar.flag) == (0.00111, "transcribed")


def test_a_coefficient_from_shrinkage_says_so() -> None:
    """Indian rosewood, 2.7 % radial: 0.027/30 / (1 - 0.018) = 0.000916."""
    rosewood = find_species("Indian rosewood").movement("radial")
    assert rosewood is not None
    assert rosewood.value == pytest.approx(0.000916, abs=1e-6)
    assert rosewood.flag == "derived"


def test_modulus_across_by_hand() -> None:
    """Sitka, 0.078 x 10800 = 842 MPa."""
    across = find_species("sitka").modulus_across("radial")
    assert across is not None
    assert across.value == pytest.approx(842.4)


def test_the_maker_adds_and_overrides() -> None:
    table = {
        "name": "plum",
        "botanical": "Prunus domestica",
        "also": [],
        "uses": ["board"],
        "group": "dense hardwood",
        "density": {"value": 760.0, "source": "own scale", "flag": "measured"},
    }
    plum = species_from_table(table)
    assert find_species("Plum", {"plum": plum}) is plum


def test_ill_formed_woods_are_refused_with_what_to_write() -> None:
    usual: dict[str, object] = {"name": "plum", "botanical": "", "also": [], "uses": [], "group": "hardwood"}
    for odd in (
        {"densty": {"value": 700.0, "source": "own", "flag": "measured"}},
        {"density": {"value": 700.0}},
        {"density": {"value": 700.0, "source": "own", "flag": "sure"}},
    ):
        with pytest.raises(MakersFault):
            species_from_table({**usual, **odd})
    with pytest.raises(MakersFault, match="needs name"):
        species_from_table({"name": "plum"})


@pytest.mark.parametrize("group", ["softwood", "hardwood", "dense hardwood"])
def test_transport_runs_from_slow_to_fast(group: str) -> None:
    transport = transport_of(group)
    for spread in (transport.diffusion, transport.surface, transport.along):
        assert spread.slow.value < spread.fast.value
        assert {spread.slow.source, spread.fast.source} <= set(SOURCES)
    assert 1e-5 < transport.diffusion.slow.value < 2e-4


def test_dense_hardwood_is_not_called_published() -> None:
    assert {transport_of("dense hardwood").diffusion.slow.flag, transport_of("dense hardwood").diffusion.fast.flag} <= {
        "memory",
        "derived",
    }
    with pytest.raises(MakersFault, match="softwood"):
        transport_of("stone")


def test_no_name_under_which_protected_wood_is_sold_is_passed_over() -> None:
    """Names of the trade and of genera that are listed, by the published appendices as REFERENCES has them.

    Tulipwood is yellow-poplar to one seller and a Dalbergia to another: it had been told as not listed.
    """
    listed = ("Cuban mahogany", "Swietenia mahagoni", "Honduran rosewood", "Madagascar rosewood", "Amazon rosewood")
    for name in (*listed, "kingwood", "Brazilian tulipwood", "cocobolo, quartersawn"):
        assert permit_of(name).status == "listed", name
    for name in ("tulipwood", "granadillo", "Siamese rosewood", "Madagascar ebony", "Philippine mahogany"):
        assert permit_of(name).status == "ask", name
    for genus in ("Dalbergia", "Swietenia", "Khaya", "Cedrela", "Guibourtia", "Pterocarpus", "Diospyros"):
        for name in (f"{genus} spp.", f"{genus} sp.", f"{genus} quaedam", genus.lower()):
            assert permit_of(name).status in ("listed", "ask"), name
            assert "CITES" in permit_of(name).line, name
    for name in ("yellow-poplar", "Australian blackwood", "persimmon", "Diospyros virginiana", "sapele", "maple"):
        assert permit_of(name).status == "not listed", name
    assert not is_wood("imitation ebony")
