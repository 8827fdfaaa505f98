"""Places, pieces and woods in a shop's description: what is read, and what is refused with what to write instead."""

from datetime import datetime

import pytest

from gramil.description.reading import parse_shop
from gramil.description.wood.own_woods import wood_of
from gramil.faults import MakersFault

HEAD = 'gramil = 1\n[shop]\nname = "shed"\nunits = "mm"\n'
PLACE = '[[place]]\nname = "shed"\nreadings = [{ at = 2026-01-19T08:00:00, temperature = "65 F", humidity = "45 %" }]\n'


def piece(more: str) -> str:
    return f'{HEAD}{PLACE}[[piece]]\nname = "a"\nwood = "sitka"\nthickness = 3\n{more}\n'


def test_a_place_and_a_piece() -> None:
    shop = parse_shop(piece('for = "Tarn"\nlay = [{ place = "shed", from = 2026-01-10 }]')).shop
    assert shop.place[0].readings[0].temperature == pytest.approx((65 - 32) / 1.8)
    assert shop.place[0].readings[0].humidity == 45.0
    assert shop.piece[0].instrument == "Tarn"
    assert shop.piece[0].lay[0].begins == datetime(2026, 1, 10)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        (HEAD + PLACE.replace('"45 %"', "0.45"), "write 45"),
        (HEAD + PLACE.replace('"45 %"', "145"), "0 to 100 %"),
        (HEAD + PLACE.replace('"65 F"', "68"), '"68 F"'),
        (HEAD + PLACE.replace("2026-01-19T08:00:00", '"19 Jan"'), "2026-01-12T08:30"),
        (HEAD + PLACE + 'log = "a.csv"\n', "not both"),
        (HEAD + PLACE + "air_changes = [2, 1]\n", "a least and a most"),
        (HEAD + PLACE + 'air_from = "hose"\n', "the shop has no place"),
        (HEAD + PLACE + '[air]\ngluing_place = "shd"\n', "nearest is shed"),
        (HEAD + PLACE + '[air]\nfinishing_place = "shd"\n', "nearest is shed"),
        (piece('lay = [{ place = "sehd", from = 2026-01-10 }]'), "nearest is shed"),
        (piece('lay = [{ place = "shed", from = 2026-01-10, until = 2026-01-09 }]'), "ends before it begins"),
        (
            piece('lay = [{ place = "shed", from = 2026-01-10 }, { place = "shed", from = 2026-01-09 }]'),
            "let each stay begin when the one before it ends",
        ),
        (piece("open_ends = true"), "need the piece's length"),
        (piece("moisture = 60"), "4 to 20 %"),
        (piece('weighings = [{ at = 2026-01-10, mass = "0 g" }]'), "more than 0 g"),
        (piece("").replace("sitka", "sitka sprce"), "Sitka spruce"),
        (HEAD + '[[wood]]\nname = "own"\n', "give like"),
        (HEAD + '[[wood]]\nname = "own"\nlike = "persimon"\n', "persimmon"),
    ],
)
def test_what_is_refused(text: str, said: str) -> None:
    with pytest.raises(MakersFault) as caught:
        parse_shop(text)
    assert said.lower() in str(caught.value).lower()


def test_a_wood_of_ones_own() -> None:
    shop = parse_shop(HEAD + '[[wood]]\nname = "hill oak"\ngroup = "hardwood"\nmovement_radial = 0.002\n').shop
    wood = wood_of("Hill Oak", shop)
    assert wood is not None
    radial = wood.movement("radial")
    assert radial is not None
    assert (radial.value, radial.flag) == (0.002, "measured")
    assert wood.movement("tangential") is None
    assert wood_of("moonwood", shop) is None
