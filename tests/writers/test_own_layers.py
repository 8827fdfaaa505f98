"""A shop's own colours of layers, from its description to the files that a machine cuts by, read back."""

import xml.etree.ElementTree as ET
from importlib.resources import files
from io import StringIO

import ezdxf
import pytest

from gramil.description.reading import parse_description, parse_shop, read_shop
from gramil.faults import MakersFault
from gramil.formatter import Formatter
from gramil.layers import LAYERS, LayerInk
from gramil.pack import pack_makers
from gramil.prints.whole import figures_of
from gramil.shop.operations_file import usual_work
from gramil.writers.dxf import dxf_bytes
from gramil.writers.svg import svg_bytes

NS = "{http://www.w3.org/2000/svg}"
SHOP = 'gramil = 1\n[shop]\nname = "Trial"\nunits = "mm"\n'
SAID = (
    '[[layer]]\nname = "slots"\ncolour = "green"\nweight = "0.1 mm"\n'
    '[[layer]]\nname = "cut"\ncolour = 30\n'
    '[[layer]]\nname = "text"\ncolour = "#FE0101"\n'
)


def own_in(tmp_path, rows: str) -> tuple[LayerInk, ...]:
    file = tmp_path / "shop.toml"
    file.write_text(SHOP + rows, "utf-8")
    return tuple(LayerInk(**row.model_dump()) for row in read_shop(file).shop.layer)


def layers_in(data: bytes):
    return {each.dxf.name: each for each in ezdxf.read(StringIO(data.decode("utf-8"))).layers}


def test_dxf_stands_in_the_shops_colours(tmp_path, board, resolve):
    """Numbers of the index by the DXF reference: 3 is green; #FE0101 lies nearest to 1, which is #FF0000."""
    found = layers_in(dxf_bytes(board, resolve, own_in(tmp_path, SAID)))
    assert (found["slots"].color, found["slots"].dxf.lineweight) == (3, 9)  # 0.09 mm is the standard's nearest
    assert (found["cut"].color, found["cut"].dxf.lineweight) == (30, 25)
    assert (found["text"].color, found["text"].rgb) == (1, (254, 1, 1))
    for name in found.keys() & LAYERS.keys() - {"slots", "cut", "text"}:
        assert (found[name].color, found[name].rgb) == (LAYERS[name].colour, None)


def test_svg_to_cut_by_does_so_too(tmp_path, board, resolve):
    """The index's 30 is #ff7f00 in the palette that goes with it."""
    root = ET.fromstring(svg_bytes(board, resolve, own=own_in(tmp_path, SAID)))
    groups = {each.get("id"): each for each in root.iter(f"{NS}g")}
    assert (groups["slots"].get("stroke"), groups["slots"].get("stroke-width")) == ("#00ff00", "0.1")
    assert (groups["cut"].get("stroke"), groups["cut"].get("stroke-width")) == ("#ff7f00", "0.25")
    assert {each.get("fill") for each in groups["text"].iter(f"{NS}text")} == {"#fe0101"}
    assert groups["outline"].get("stroke") == "#1a1a1a"


def test_black_is_black_on_the_white_of_an_svg(tmp_path, board, resolve):
    own = own_in(tmp_path, '[[layer]]\nname = "slots"\ncolour = "black"\n')
    assert b'<g id="slots" class="layer" fill="none" stroke="#000000"' in svg_bytes(board, resolve, own=own)


def test_the_audit_still_finds_nothing(tmp_path, board, resolve):
    data = dxf_bytes(board, resolve, own_in(tmp_path, SAID))
    audit = ezdxf.read(StringIO(data.decode("utf-8"))).audit()
    assert not audit.errors
    assert not audit.fixes


@pytest.mark.parametrize(
    ("rows", "said"),
    [
        ('[[layer]]\nname = "slotz"\ncolour = "red"\n', "The nearest is slots"),
        ('[[layer]]\nname = "cut"\ncolour = "crimson"\n', "a number of the DXF standard from 1 to 255, or #rrggbb"),
        ('[[layer]]\nname = "cut"\ncolour = 256\n', "a number of the DXF standard from 1 to 255"),
        ('[[layer]]\nname = "cut"\ncolour = 0\n', "a number of the DXF standard from 1 to 255"),
        ('[[layer]]\nname = "cut"\ncolour = true\n', "a number of the DXF standard from 1 to 255"),
        ('[[layer]]\nname = "cut"\ncolour = "#12345"\n', "#rrggbb"),
        ('[[layer]]\nname = "cut"\ncolour = 1\nweight = "3 mm"\n', "2.11"),
        ('[[layer]]\nname = "cut"\ncolour = 1\n[[layer]]\nname = "cut"\ncolour = 2\n', "a second time"),
    ],
)
def test_what_cannot_be_is_refused_in_words(tmp_path, rows, said):
    with pytest.raises(MakersFault) as refused:
        own_in(tmp_path, rows)
    assert said in str(refused.value).replace('"', "")


def packed(more: str, *names: str) -> list[bytes]:
    """Files of the pack of *Tarn*, in the bundled shop with more written under it."""
    texts = {
        each: (files("gramil") / "data" / "examples" / f"{each}.toml").read_text("utf-8") for each in ("tarn", "shop")
    }
    figures = figures_of(parse_description(texts["tarn"], "tarn.toml"), parse_shop(texts["shop"] + more, "shop.toml"))
    makers = pack_makers(figures, Formatter(figures), usual_work(), "a4")
    return [makers[name]() for name in names]


def test_the_pack_to_cut_by_follows_the_shop_and_nothing_else_does():
    names = ("cut/board.dxf", "cut/board.svg", "read/section.svg")
    silent, said = packed("", *names), packed("\n" + SAID, *names)
    assert layers_in(silent[0])["slots"].color == 1
    assert layers_in(said[0])["slots"].color == 3
    assert b'id="slots" class="layer" fill="none" stroke="#1a1a1a" stroke-width="0.25"' in silent[1]
    assert b'id="slots" class="layer" fill="none" stroke="#00ff00" stroke-width="0.1"' in said[1]
    assert said[2] == silent[2]
