"""Which piece serves what: against every assignment there is, and each rule for itself."""

import itertools
import random
import re
import tomllib
from collections.abc import Callable
from dataclasses import replace
from importlib.resources import files
from pathlib import Path

import pytest

from gramil.description.reading import parse_shop, read_shop
from gramil.description.records import Blank
from gramil.graph import Figures
from gramil.now.match import Matching, Stock, match, serves
from gramil.now.needs import Fit, MadePart, Need, fit, needs_of
from gramil.now.stock_on_hand import stock_of_shop
from gramil.prints.whole import figures_of_files, findings_of

EXAMPLES = Path(str(files("gramil") / "data" / "examples"))
BOARD = Need("Tarn", "board", "fretboard", "board", ("persimmon",), 450.0, 65.0, 7.0, 1, "quarter")


def piece(name: str, length: float, **more: object) -> Stock:
    values: dict[str, object] = {"width": 70.0, "thickness": 8.0, "grain": "quarter", **more}
    return Stock(name, "persimmon", length, **values)  # type: ignore[arg-type]


def taken(found: Matching) -> dict[str, str]:
    """What serves each instrument's board."""
    return {each.need.instrument: each.stock.name for each in found.served if each.stock}


@pytest.fixture(scope="module")
def tarn() -> Figures:
    return figures_of_files(EXAMPLES / "tarn.toml", EXAMPLES / "shop.toml")


def test_the_least_waste_serves() -> None:
    assert taken(match([BOARD], [piece("long", 520), piece("short", 460), piece("too short", 440)], {})) == {
        "Tarn": "short"
    }


def test_all_instruments_at_once_not_one_after_another() -> None:
    """The best piece for the first may be the only one for the second."""
    longer = replace(BOARD, instrument="Fell", length=455.0)
    stock = [piece("a", 456), piece("b", 452)]
    assert taken(match([BOARD, longer], stock, {})) == {"Fell": "a", "Tarn": "b"}


def test_the_assignment_wastes_least_of_all_there_are() -> None:
    needs = [
        replace(BOARD, instrument=name, length=length) for name, length in (("A", 430.0), ("B", 450.0), ("C", 470.0))
    ]
    stock = [piece(str(length), length) for length in (472.0, 500.0, 436.0, 455.0, 610.0)]
    found = match(needs, stock, {})

    def waste(order: tuple[Stock, ...]) -> float:
        if not all(serves(need, each) for need, each in zip(needs, order, strict=True)):
            return float("inf")
        return sum((each.length * 560 - need.volume) / need.volume for need, each in zip(needs, order, strict=True))

    best = min(itertools.permutations(stock, 3), key=waste)
    assert taken(found) == {need.instrument: each.name for need, each in zip(needs, best, strict=True)}


def test_what_nothing_serves_is_bought() -> None:
    found = match([BOARD, replace(BOARD, instrument="Fell")], [piece("one", 500)], {})
    assert len(found.served) == len(found.bought) == 1


@pytest.mark.parametrize(
    "other",
    [
        piece("narrow", 500, width=64.0),
        piece("thin", 500, thickness=6.9),
        replace(piece("other wood", 500), wood="ebony"),
        piece("promised", 500, owner="Fell"),
        piece("a bridge", 500, part="bridge"),
    ],
    ids=lambda each: each.name,
)
def test_what_does_not_serve(other: Stock) -> None:
    assert not serves(BOARD, other)
    assert match([BOARD], [other], {}).bought == (BOARD,)


def test_what_is_promised_is_taken_even_if_it_wastes() -> None:
    stock = [piece("kept", 900, owner="Tarn"), piece("short", 455)]
    assert taken(match([BOARD], stock, {})) == {"Tarn": "kept"}


def test_grain_and_moisture_speak_against_a_piece_and_are_told() -> None:
    flat = piece("flat", 451, grain="flat")
    assert taken(match([BOARD], [flat, piece("quarter", 500)], {})) == {"Tarn": "quarter"}
    damp, dry = piece("damp", 455, settled=False), piece("dry", 460, settled=True)
    assert taken(match([BOARD], [damp, dry], {})) == {"Tarn": "dry"}
    only = match([BOARD], [replace(flat, settled=False)], {}).served[0]
    assert only.remarks == ("it has not settled for gluing", "it is sawn flat, and quarter is wanted")


def test_a_size_that_is_not_noted_serves_only_what_it_is_kept_for() -> None:
    unknown = piece("billet", float("nan"))
    assert not serves(BOARD, unknown)
    assert serves(BOARD, replace(unknown, owner="Tarn", part="board"))


@pytest.mark.parametrize(
    "carve",
    ['wood = "walnut"', 'heel = "solid"', 'scarf = "one piece"\nwood = "mahogany"'],
    ids=["stacked", "solid", "one"],
)
def test_match_and_check_go_by_the_same_sizes(
    derive_text: Callable[..., Figures], text_of: Callable[[str], str], carve: str
) -> None:
    """Pieces at random about what is wanted: what serves the neck or the board by one serves it by the other."""
    text = f"{text_of('tarn')}\n[carve]\n{carve}\n"
    drawn, bare = random.Random(4), derive_text(text, text_of("shop"))
    wanted = {need.name: need for need in needs_of(bare, [])}
    answers = set()
    for name, verdict in (("neck", "plank_yields"), ("board", "blank_options")):
        need, wood = wanted[name], wanted[name].woods[0]
        for _ in range(60):
            sizes = [size * drawn.uniform(0.5, 2.2) for size in (need.length, need.width, need.thickness)]
            piece_wood = drawn.choice([wood, f"African {wood}", "elm"])
            stock = (Blank("piece", piece_wood, *sizes, 1),)
            checked = bool(replace(bare, base={**bare.base, "shop_blanks": stock}, known={})[verdict])
            assert serves(need, Stock("piece", piece_wood, *sizes)) == checked
            answers.add((name, checked))
    assert len(answers) == 4, "both ways, of both"


@pytest.mark.parametrize(("part", "verdict"), [("neck", "stock for the neck"), ("board", "blank")])
@pytest.mark.parametrize(
    ("sizes", "serves_it", "severity"),
    [
        ("thickness = 200\nwidth = 200\nlength = 2000", True, "fine"),
        ("thickness = 200\nwidth = 200\nlength = 100", False, None),
        ("thickness = 200", True, "not judged"),
    ],
)
def test_a_piece_that_is_no_blank_is_stock_to_both(
    derive_text: Callable[..., Figures],
    text_of: Callable[[str], str],
    part: str,
    verdict: str,
    sizes: str,
    serves_it: bool,
    severity: str | None,
) -> None:
    """Kept for the instrument: with its sizes it serves or not, without them match takes it and check asks for them."""
    wood = {"neck": "red maple", "board": "persimmon"}[part]
    own = f'[[piece]]\nname = "plank"\nwood = "{wood}"\npart = "{part}"\nfor = "Tarn"\n{sizes}\n\n'
    tables = re.split(r"^(?=\[)", text_of("shop"), flags=re.MULTILINE)
    shop = (
        "".join(each for each in tables if not each.startswith(("[[blank]]", "[[piece]]", "[air]", "[[place]]"))) + own
    )
    figures = derive_text(text_of("tarn"), shop)
    need = next(each for each in needs_of(figures, []) if each.part == part)
    (stock,) = stock_of_shop(parse_shop(shop).shop, {})
    assert serves(need, stock) == serves_it
    (found,) = [each for each in findings_of(figures) if each.name == verdict]
    assert (found.severity == severity) if severity else found.severity in ("stop", "note", "not judged")
    if severity:
        assert "plank" in str(found.says)


def test_every_size_that_is_asked_for_is_a_figure(tarn: Figures) -> None:
    """A number of its own would be a second home for one."""
    rows = tomllib.loads((files("gramil") / "data" / "needs.toml").read_text(encoding="utf-8"))["need"]
    sizes = [row[key] for row in rows.values() for key in ("length", "width", "thickness")]
    assert all(isinstance(size, str) and tarn.at(size) is not None for size in sizes)


def test_a_neck_comes_out_of_a_short_wide_piece_as_of_a_long_narrow_one(tarn: Figures) -> None:
    """The plank beside its heel's blocks, or one behind the other: the pieces and saw cuts added up by hand."""
    need = next(each for each in needs_of(tarn, []) if each.name == "neck")
    pieces, kerf = tarn["plank_pieces"], tarn["limit_rip_kerf"]
    whole = sum(each.length for each in pieces) + kerf * (len(pieces) - 1)
    assert need.length == pytest.approx(whole, abs=1e-9)
    width, thickness = pieces[0].width, pieces[0].thickness
    long = Stock("long", need.woods[0], whole, width, thickness)
    assert serves(need, long)
    assert not serves(need, replace(long, length=whole - 0.1))
    assert serves(need, replace(long, length=pieces[0].length, width=2 * width + kerf))
    assert serves(need, replace(long, length=pieces[0].length, thickness=2 * thickness + kerf))
    assert not serves(need, replace(long, length=pieces[0].length, width=2 * width))


SCALES = {"scale_bass": "630 mm", "scale_treble": "630 mm", "scale_frets": "19"}


def part(**figures: str) -> MadePart:
    return MadePart("board on the shelf", "slotted board", {**SCALES, **figures})


def test_a_made_board_of_the_right_scale_goes_first(tarn: Figures) -> None:
    found = fit(part(), tarn)
    assert found is not None
    assert (found.standing, found.off) == ("still right", ())
    matched = match([BOARD], [piece("short", 451)], {"Tarn": [found]})
    assert matched.served[0].fit == found
    assert "slotted" in found.done


def test_a_made_board_of_another_scale_is_lost(tarn: Figures) -> None:
    found = fit(part(scale_bass="648 mm"), tarn)
    assert found is not None
    assert found.standing == "lost"
    assert "18.00 mm too great" in found.off[0]


def test_bare_lengths_of_a_made_part_are_in_the_shop_s_unit(tarn: Figures) -> None:
    """630 mm are 24.803 in: as bare numbers they are right in a shop of either unit."""
    inch = replace(tarn, base={**tarn.base, "shop_units": "in"}, known={})
    for figures, scale in ((tarn, "630"), (inch, f"{630 / 25.4:.6f}")):
        found = fit(part(scale_bass=scale, scale_treble=scale), figures)
        assert found is not None
        assert found.standing == "still right"


def test_a_made_board_that_is_too_thick_can_be_reworked_and_is_not_taken_unasked(tarn: Figures) -> None:
    thick = f"{tarn['blank_thickness'] + 0.6:.3f} mm"
    found = fit(part(thickness=thick), tarn)
    assert found is not None
    assert found.standing == "rework"
    assert "Plane it thinner" in found.off[0]
    matched = match([BOARD], [piece("short", 451)], {"Tarn": [found]})
    assert taken(matched) == {"Tarn": "short"}
    assert matched.near == (("Tarn", found),)


def test_a_made_part_with_more_frets_can_be_cut_shorter_and_one_with_fewer_is_lost(tarn: Figures) -> None:
    more, fewer = fit(part(scale_frets="20"), tarn), fit(part(scale_frets="18"), tarn)
    assert more is not None
    assert fewer is not None
    assert (more.standing, fewer.standing) == ("rework", "lost")


def test_a_part_without_figures_or_of_an_unknown_kind(tarn: Figures) -> None:
    bare = fit(MadePart("board", "slotted board", {}), tarn)
    assert bare is not None
    assert bare.standing == "lost"
    assert fit(MadePart("case", "case", {}), tarn) is None


def test_a_made_part_goes_to_one_instrument_only() -> None:
    same = MadePart("board", "slotted board", SCALES)
    fits = {name: [Fit(same, "board", "still right", ())] for name in ("Tarn", "Fell")}
    found = match([BOARD, replace(BOARD, instrument="Fell")], [], fits)
    assert len(found.served) == len(found.bought) == 1


def test_needs_follow_what_is_done_and_what_is_known(tarn: Figures) -> None:
    names = [need.name for need in needs_of(tarn, [])]
    assert names.count("top") == names.count("sides") == 2
    assert "board" in names
    assert "board" not in [need.name for need in needs_of(tarn, ["thicknessed"])]


def test_pieces_of_the_bundled_shop() -> None:
    found = stock_of_shop(read_shop(EXAMPLES / "shop.toml").shop, {"persimmon 2": False})
    by_name = {each.name: each for each in found}
    assert sum(each.name == "hornbeam" for each in found) == 2
    assert (by_name["persimmon 2"].owner, by_name["persimmon 2"].settled) == ("Tarn", False)
    assert sum(each.name == "top 1" for each in found) == 2
