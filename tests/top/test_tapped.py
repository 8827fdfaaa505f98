"""A piece that was tapped or pushed takes a handbook's place, for this piece: worked by hand, and by a known board."""

from pathlib import Path

import pytest
from tests.in_process import gramil
from tests.top_of_tarn import EXAMPLES

from gramil import names as n
from gramil.description.reading import parse_shop, read_description, read_shop
from gramil.description.wood.timbers import tried
from gramil.prints.solved import with_top
from gramil.prints.whole import figures_of
from gramil.shop.shop_in_store import shop_description
from gramil.store.opening import open_store
from gramil.top.tapped import TriedWood, fitted

HEAD = '[[tapped]]\nname = "piece"\nwood = "Sitka spruce"\n'
BILLET = 'part = "brace"\nlength = 500\nwidth = 20\nthickness = 20\nmass = "86 g"\n'
BOARD = 'length = 560\nwidth = 210\nthickness = 3.2\nmass = "165 g"\n'
PUSH = 'span = 450\nweight = "2000 g"\ngiven = 0.28\n'


def found(rows: str, settled: float = 8.0) -> TriedWood:
    shop = parse_shop(f'gramil = 1\n[shop]\nname = "here"\nunits = "mm"\n{HEAD}{rows}', "typed").shop
    return fitted(tried(shop.tapped[0], shop), settled)


def test_a_push_by_hand() -> None:
    """F L^3 / (4 b h^3 w) (1 + 1.2 E/G (h/L)^2): 19.6133 N on 450 mm, E/G of Sitka spruce 1/0.061 (Wood Handbook)."""
    bent = 19.6133 * 450.0**3 / (4 * 20.0 * 20.0**3 * 0.28)
    by_hand = bent * (1 + 1.2 / 0.061 * (20 / 450) ** 2)
    piece = found(BILLET + PUSH)
    assert piece.known.timber.longitudinal == pytest.approx(by_hand, rel=1e-5)
    assert piece.known.timber.density == pytest.approx(86e-3 / (500 * 20 * 20) * 1e9)
    assert piece.shear_share == pytest.approx(1.2 / 0.061 * (20 / 450) ** 2)


def test_carried_from_a_damp_piece_to_the_air_for_gluing() -> None:
    """From 12 % to 8 %: 1.25^(4/13) stiffer, by the Wood Handbook's relation with a ratio from memory."""
    dry, damp = found(BILLET + PUSH, 12.0), found(BILLET + PUSH + "moisture = 12\n", 8.0)
    share = damp.known.timber.longitudinal / dry.known.timber.longitudinal
    assert share == pytest.approx(1.25 ** (4 / 13))
    assert damp.along_within > dry.along_within


def test_what_no_note_tells_keeps_a_handbooks_spread() -> None:
    piece = found(BOARD + "along = 60\ntwist = 29\n")
    assert piece.known.measured
    assert piece.along_within < 0.05
    assert piece.across_within > 0.2


@pytest.mark.parametrize(
    "rows",
    [
        BOARD.replace("165 g", "1650 g") + "along = 60\ntwist = 29\n",
        BOARD + "along = 92\nacross = 60\ntwist = 29\n",
        BOARD + "along = 60\nacross = 92\ntwist = 90\n",
        BILLET + PUSH.replace("0.28", "2.8"),
    ],
    ids=["wrong weight", "swapped notes", "another mode's note", "gave ten times as much"],
)
def test_what_fits_no_plate_is_told_and_not_used(rows: str) -> None:
    piece = found(rows)
    assert piece.faults
    assert not piece.known.measured
    assert piece.known.timber.longitudinal == pytest.approx(10800)


def test_the_piece_takes_the_handbooks_place_for_its_instrument_alone() -> None:
    shop = (EXAMPLES / "shop.toml").read_text("utf-8") + "\n" + HEAD + 'for = "Tarn"\n' + BILLET + PUSH
    description = read_description(str(EXAMPLES / "tarn.toml"))
    own = with_top(figures_of(description, parse_shop(shop, "shop")))
    usual = with_top(figures_of(description, read_shop(str(EXAMPLES / "shop.toml"))))
    assert own[n.fitted_braces].measured
    assert own[n.fitted_top] == usual[n.fitted_top]
    assert own[n.braced_top][0].bars[0].wood.longitudinal == pytest.approx(own[n.fitted_braces].timber.longitudinal)
    assert not usual[n.fitted_braces].measured


def test_the_command_keeps_it_and_refuses_what_cannot_be(tmp_path: Path) -> None:
    words = ["tap", "billet 3", "--wood", "Sitka spruce", "--part", "brace", "--length", "500mm", "--width", "20mm"]
    words += ["--thickness", "20mm", "--mass", "86 g", "--span", "450mm", "--weight", "2000 g", "--given"]
    gramil(tmp_path, "store", "new", "shop.gramil", "--shop", str(EXAMPLES / "shop.toml"))
    kept = gramil(tmp_path, *words, "0.28mm", "--for", "Tarn", "--store", "shop.gramil")
    assert kept.returncode == 0, kept.stderr
    assert "written down" in kept.stdout
    with open_store(tmp_path / "shop.gramil", to_read=True) as store:
        assert shop_description(store).shop.tapped[0].given == pytest.approx(0.28)
    refused = gramil(tmp_path, *words, "28mm")
    assert refused.returncode == 1
    assert "which no wood does" in refused.stdout
    few = gramil(tmp_path, *words[:-3])
    assert few.returncode == 2
    assert "a push is span, weight and given together" in few.stderr
