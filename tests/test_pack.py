"""The whole pack: every file in its order, whatever is set beside the rest."""

from importlib.resources import as_file, files
from threading import get_ident

import pytest

from gramil.faults import MakersFault
from gramil.formatter import Formatter
from gramil.graph import Pin
from gramil.pack import TYPESET, pack_makers, whole_pack
from gramil.prints.whole import figures_of_files
from gramil.shop.operations_file import usual_work


def test_the_files_come_in_their_order_and_what_is_typeset_is_made_beside_the_rest() -> None:
    makers = {name: lambda: str(get_ident()).encode() for name in ("board.dxf", *TYPESET, "findings.json")}
    pack = dict(whole_pack(makers))
    assert list(pack) == list(makers)
    here = str(get_ident()).encode()
    assert [name for name, thread in pack.items() if thread != here] == list(TYPESET)


@pytest.mark.parametrize("name", ["board.dxf", TYPESET[0]])
def test_a_makers_own_fault_comes_through(name: str) -> None:
    def refuse() -> bytes:
        raise MakersFault.of("is wrong")

    with pytest.raises(MakersFault):
        dict(whole_pack({"first": lambda: b"", name: refuse}))


def test_what_is_typeset_is_in_the_pack() -> None:
    with as_file(files("gramil") / "data" / "examples" / "scree.toml") as file:
        figures = figures_of_files(file)
    assert set(TYPESET) < set(pack_makers(figures, Formatter(figures), usual_work(), "a4"))


def test_templates_go_by_what_is_drawn_whatever_was_read() -> None:
    """The next board is cut by the same index template; what was made is among the dimensions."""
    with as_file(files("gramil") / "data" / "examples" / "tarn.toml") as file:
        drawn = figures_of_files(file)
    made = drawn.with_pins({"fret_position[12]": Pin(315.10, "today", "slotted")})
    was, now = (pack_makers(each, Formatter(each), usual_work(), "a4") for each in (drawn, made))
    for name in ("cut/index-template.dxf", "cut/index-template.svg", "cut/gauges.dxf"):
        assert was[name]() == now[name]()
    assert was["read/dimensions.csv"]() != now["read/dimensions.csv"]()


@pytest.mark.parametrize(("name", "hand"), [("scree", "left"), ("tarn", "right")])
def test_the_hand_stands_in_the_title_of_every_drawing(name: str, hand: str) -> None:
    """A file goes to a machine without the pack's pages: mirrored parts are told from it alone."""
    with as_file(files("gramil") / "data" / "examples") as examples:
        figures = figures_of_files(examples / f"{name}.toml", examples / "shop.toml")
    makers = pack_makers(figures, Formatter(figures), usual_work(), "a4")
    drawn = [each for each in makers if each.endswith(".svg") and "cents" not in each]
    assert len(drawn) > 12
    for each in drawn:
        assert f", {hand} hand</title>" in makers[each]().decode(), each
    assert f", fretboard, {hand} hand" in makers["cut/board.dxf"]().decode()
