"""What is made stays right only of the wood that the description names, whichever part it is."""

from importlib.resources import files

import pytest

from gramil.change.made import Judged, judge
from gramil.change.made_rows import operations
from gramil.change.made_words import verdict_line
from gramil.description.base import INPUTS, keys_of
from gramil.description.reading import parse_description, read_shop
from gramil.description.writing import set_key
from gramil.graph import Figures
from gramil.prints.whole import figures_of

TARN = (files("gramil") / "data" / "examples" / "tarn.toml").read_text(encoding="utf-8")
NO_PART = {"top.brace_wood", "work.wood"}
"""What braces are only taken to be of, for what the dome does in other air; and whether the wood has settled."""
KEYS = sorted({key for name in INPUTS for key in keys_of(name) if key.endswith("wood")} - NO_PART)


def of_wood(key: str, wood: str) -> Figures:
    """*Tarn* with a key naming the wood of a part; of a list, of its first row."""
    if key == "brace.wood":
        return figures_of(
            parse_description(TARN.replace("[[brace]]\n", f'[[brace]]\nwood = "{wood}"\n', 1)), read_shop()
        )
    return figures_of(parse_description(set_key(with_bevel(key), key, wood)), read_shop())


def with_bevel(key: str) -> str:
    """*Tarn*, with the bevel whose veneer the key is of: it has none of its own."""
    table, text = key.partition(".")[0], TARN
    if table.endswith("_bevel"):
        for name, size in {"width": "30 mm", "drop": "10 mm", "length": "180 mm", "veneer": "0.6 mm"}.items():
            text = set_key(text, f"{table}.{name}", size)
    return text


def off(before: Figures, after: Figures) -> dict[str, Judged]:
    """What is no longer right if all work was done by the one, and the other is wanted."""
    judged = judge(dict.fromkeys(operations(), before), after)
    alone = [each for name in operations() for each in judge({name: before}, after)]
    return {each.operation: each for each in (*alone, *judged) if each.standing != "still right"}


@pytest.mark.parametrize("key", KEYS)
def test_a_part_of_another_wood_is_not_right(key: str) -> None:
    found = off(of_wood(key, "black walnut"), of_wood(key, "ebony"))
    assert any("another wood" in verdict_line(each) for each in found.values()), key
    assert "ebony" in " ".join(map(verdict_line, found.values()))


@pytest.mark.parametrize("key", ["bridge.wood", "body.linings_wood", "body.block_wood", "head.veneer_wood"])
def test_a_wood_that_is_only_now_named_is_not_another(key: str) -> None:
    unsaid = figures_of(parse_description(TARN), read_shop())
    assert off(unsaid, of_wood(key, "ebony")) == {}
    assert off(of_wood(key, "ebony"), unsaid) == {}


def test_a_glued_part_says_how_it_is_parted() -> None:
    """By hand: a bridge of another wood is made anew, the glued one heated off; a bound board is bound anew."""
    bridge, bound = (off(of_wood(key, "maple"), of_wood(key, "ebony")) for key in ("bridge.wood", "binding.wood"))
    assert (bridge["bridge_made"].standing, bridge["bridge_made"].remedy) == ("lost", "Make a new bridge.")
    assert verdict_line(bridge["bridge_glued"]) == "the bridge is lost: heat the bridge off, and glue the new one on"
    assert verdict_line(bound["bound"]) == (
        "another wood, board binding (maple, wanted ebony): rout the binding off, and glue on one of the other wood"
    )


def test_pieces_in_the_plural_are_lost() -> None:
    found = off(of_wood("body.side_wood", "maple"), of_wood("body.side_wood", "walnut"))
    assert "the sides are lost: take the top off" in " ".join(map(verdict_line, found.values()))
