"""The sheets for neck, nut and relief: which figures the hands need, as the instrument is made."""

from collections.abc import Callable

import pytest

from gramil.formatter import Formatter
from gramil.graph import Figures
from gramil.setups.setup import Setup, figures_on

Sheet = Callable[..., Setup]


@pytest.fixture
def tarn(derive_text: Callable[..., Figures], text_of: Callable[[str], str]) -> Callable[..., Figures]:
    """Tarn in the example shop with more tables at its end, a zero fret, or a shop without saws."""

    def make(more: str = "", zero_fret: bool = False, saws: bool = True) -> Figures:
        text, shop = text_of("tarn"), text_of("shop")
        if zero_fret:
            text = text.replace("zero_fret = false", "zero_fret = true")
        if not saws:
            head, _, rest = shop.partition("[[saw]]")
            shop = head + "[[cutter]]" + rest.partition("[[cutter]]")[2]
        return derive_text(text + more, shop)

    return make


def test_a_neck_not_set_yet_gets_its_wedge_from_square(tarn: Callable[..., Figures]) -> None:
    sheet = tarn()["setup_neck_set"]
    assert "heel_wedge" in [each.figure.address for each in sheet.figures]
    assert "neck_straightedge" not in [each.address for each in figures_on(sheet)]


def test_a_neck_that_is_set_gets_what_is_still_to_come_off(tarn: Callable[..., Figures]) -> None:
    figures = tarn("\n[neck]\nstraightedge = 1.1")
    sheet = figures["setup_neck_set"]
    assert "heel_wedge_to_take" in [each.figure.address for each in sheet.figures]
    assert any("passes 1.10 mm over the bridge" in Formatter(figures).filled(step) for step in sheet.steps)


def test_with_a_zero_fret_the_slots_only_guide(tarn: Callable[..., Figures]) -> None:
    figures = [each.figure.address for each in tarn(zero_fret=True)["setup_nut_slots"].figures]
    assert "limit_zero_fret_drop" in figures
    assert not any(address.startswith("nut_slot_over_first") for address in figures)


@pytest.mark.parametrize(
    ("rod", "words"),
    [("none", "the straightedge shows stays"), ("one way", "cannot put any in"), ("two way", "other way")],
)
def test_the_rod_says_what_it_can(tarn: Callable[..., Figures], rod: str, words: str) -> None:
    sheet = tarn(f'\n[neck]\nrod = "{rod}"')["setup_relief"]
    assert any(words in step for step in sheet.steps)


def test_what_is_not_known_is_left_off_the_sheet(tarn: Callable[..., Figures]) -> None:
    figures = tarn(saws=False)
    formatter = Formatter(figures)
    addresses = [each.address for each in figures_on(figures["setup_relief"])]
    assert "relief_predicted_most" not in addresses
    assert "not known" not in [formatter.text(address) for address in addresses]
    (much,), (little,) = figures["finding_relief_too_much"], figures["finding_relief_too_little"]
    assert (much.severity, little.severity) == ("not judged", "not judged")


def test_every_string_has_its_line(tarn: Callable[..., Figures]) -> None:
    figures = tarn()
    (table,) = figures["setup_nut_slots"].tables
    assert table.rows == (1, 2, 3, 4, 5, 6)
    for _, address in table.columns:
        assert figures.at(f"{address}[6]") == figures[address][5]
