"""Papers: what is told as differing is exactly what differs in what the maker gets, over every key that is changed.

The oracle is what the maker is given, before and after (`as_given.py`); the lines that stand alike on every page (the
instrument's, the revision) and the name are left out. Only what hangs on the changed key is worked out and made again;
at some of the keys all of it is, which must give the same. At the gate an
eighteenth of *Tarn*'s keys is walked, and of the shop's.
"""

import re
import tomllib
from collections.abc import Callable, Container, Iterable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from typing import Any
from zlib import crc32

import pytest
from tests.walks import WHOLE, picked, these
from tests.worked_out_once import from_the_beginning

from gramil import names as n
from gramil.description.base import Base, base_values
from gramil.description.reading import Description, ShopDescription, parse_description, parse_shop
from gramil.faults import MakersFault
from gramil.findings.finding import in_words
from gramil.formatter import formatter_of
from gramil.graph import Figures
from gramil.prints import papers
from gramil.prints.papers import Paper, papers_that_differ
from gramil.prints.whole import air_of, dimensions_of, figures_of, findings_of, with_air
from gramil.shop.operations import Work, needed
from gramil.shop.operations_file import usual_work

from .as_given import Made, Noting, by_paper, given, moved, noting, pages_of
from .every_key import INSTRUMENT, SHOP, Change, changes
from .idle_keys import EVERYWHERE, IDLE

EXAMPLES = files("gramil") / "data" / "examples"
NUMBER = re.compile(r"(-?\d+(?:\.\d+)?)")
FRAME = re.compile(r'<svg [^>]*>|<g id="hatch".*?</g>', re.DOTALL)
"""What follows from the marks: the size of the sheet about them, and how many lines a hatch takes."""
ANEW = 8
"""At one key in so many everything is worked out from the beginning; at every one by `make walk`."""
PORTIONS = 3 if WHOLE else 18
"""In so many runs each walk is shared out: several processors can take them, and the gate takes one."""
HAIR = 0.00099
"""Coordinates, of three decimals and more, that differ by no more than this in mm are drawn alike."""
EVERY = ("tarn", "fell", "scree", "mere", "corrie")
WALKS = [(name, of, number) for name in EVERY for of in ("instrument", "shop") for number in range(PORTIONS)]
AT_THE_GATE = [("tarn", "instrument", 0), ("tarn", "shop", 1)]
THE_SHOP = (EXAMPLES / "shop.toml").read_text(encoding="utf-8")


def named(paper: Paper) -> str:
    """What a paper goes by among all of them: a sheet and a drawing may have one name."""
    return f"sheet {paper.name}" if paper.kind == "sheet" else paper.name


def drawn_alike(one: object, other: object) -> bool:
    """Whether two texts are the same but for coordinates that differ by less than a hair."""
    pieces, others = NUMBER.split(str(one)), NUMBER.split(str(other))
    if pieces[::2] != others[::2]:
        return False
    pairs = zip(pieces[1::2], others[1::2], strict=True)
    return all(a == b or (fine(a, b) and abs(float(a) - float(b)) <= HAIR) for a, b in pairs)


def fine(*numbers: str) -> bool:
    return any(len(number.partition(".")[2]) >= 3 for number in numbers)


def differing(old: dict[str, object], new: dict[str, object]) -> set[str]:
    return {name for name in {**old, **new} if otherwise(old.get(name), new.get(name))}


def otherwise(one: object, other: object) -> bool:
    """Whether a paper differs: its words by a letter, its drawing by more than a hair."""
    if one == other:
        return False
    if isinstance(one, tuple) and isinstance(other, tuple):
        return any(map(otherwise, one, other))
    if isinstance(one, str) and isinstance(other, str):
        return not drawn_alike(FRAME.sub("", one), FRAME.sub("", other))
    return one != other


def remembered(function: Callable[..., Any], old: Figures) -> Callable[..., Any]:
    """The function, keeping what it gives of the old state, which is the same at every key."""
    kept: dict[tuple[str, ...], Any] = {}

    def give(figures: Figures, *rest: Any) -> Any:
        key = tuple(each for each in rest if isinstance(each, str))
        if figures is not old or key not in kept:
            found = function(figures, *rest)
            return kept.setdefault(key, found) if figures is old else found
        return kept[key]

    return give


@dataclass(frozen=True)
class Tried:
    """One key changed: what would be printed otherwise, what is told so, and whether anything moved at all."""

    key: str
    what: str
    differs: frozenset[str]
    told: frozenset[str]
    moves: bool


@dataclass(frozen=True)
class Walk:
    """An example or its shop, the state before any change, and what was given and said then."""

    name: str
    of: str
    old: Noting
    work: Work
    before: dict[str, Made]
    said: list[tuple[str, ...]]

    def read(self, text: str) -> tuple[Description, ShopDescription] | None:
        """The instrument and the shop with another text in place of the one that is walked; None if it is refused."""
        try:
            if self.of == "shop":
                return description_of(self.name), parse_shop(text)
            return parse_description(text), the_shop()
        except MakersFault:
            return None

    def tried(self, change: Change, anew: bool) -> Tried | None:
        """One change; None if it is refused. With `anew` everything is also worked out and made from the beginning."""
        read = self.read(change.text)
        base = None if read is None else base_of(*read)
        if read is None or base is None:
            return None
        new = self.old.with_base(base.values, base.origins, base.lengths)
        told = set(map(named, papers_that_differ(self.old, new, self.work))) - {new[n.instrument_name]}
        differ = moved(self.old, new)
        after = given(new, self.work, self.before, differ)
        if anew:
            same_from_the_beginning(new, after, noting(from_the_beginning(figures_of(*read))), self.work)
        is_so = differing(by_paper(self.before, self.old), by_paper(after, new))
        moves = bool(is_so) or self.said != verdicts(new) or not differ.isdisjoint(dimensions_of(new))
        return Tried(change.key, change.what, frozenset(is_so), frozenset(told), moves)


def same_from_the_beginning(new: Noting, after: dict[str, Made], anew: Noting, work: Work) -> None:
    """That figures of which only some were worked out again, and papers likewise, are what all of them would be."""
    assert not moved(new, anew)
    assert by_paper(after, new) == by_paper(given(anew, work), anew)


def base_of(description: Description, shop: ShopDescription) -> Base | None:
    """What the graph starts from; None if the two do not fit together."""
    try:
        return with_air(base_values(description, shop), air_of(shop))
    except MakersFault:
        return None


@cache
def the_shop() -> ShopDescription:
    return parse_shop(THE_SHOP)


@cache
def description_of(name: str) -> Description:
    return parse_description(text_of(name))


@contextmanager
def walk(name: str, of: str) -> Iterator[Walk]:
    """The walk of an example; what is printed of the old state is made once, not again at every key."""
    old = noting(figures_of(description_of(name), the_shop()))
    work = needed(usual_work(), description_of(name).instrument)
    with pytest.MonkeyPatch.context() as patch:
        for each in ("one_print", "own_prints", "_front", "_order"):
            patch.setattr(papers, each, remembered(getattr(papers, each), old))
        patch.setattr(papers, "front_pages", pages_of)
        yield Walk(name, of, old, work, given(old, work), verdicts(old))


def walked(name: str, of: str, only: Container[str] | None = None) -> Iterator[Tried]:
    """Every key of an example, or of its shop, or `only` some, changed in turn; what the reader refuses is left out."""
    own, model = (text_of(name), INSTRUMENT) if of == "instrument" else (THE_SHOP, SHOP)
    with walk(name, of) as walking:
        for change in changes(tomllib.loads(own), model, only):
            tried = walking.tried(change, picked(change.what, ANEW))
            if tried is not None:
                yield tried


def verdicts(figures: Figures) -> list[tuple[str, ...]]:
    """Every verdict as it is told, with its limit."""
    formatter = formatter_of(figures)
    limits = ("" if each.limit is None else formatter.text(each.limit) for each in findings_of(figures))
    words = (in_words(each, formatter) for each in findings_of(figures))
    return [(told.name, told.severity, told.says, limit) for told, limit in zip(words, limits, strict=True)]


def text_of(name: str) -> str:
    return (EXAMPLES / f"{name}.toml").read_text(encoding="utf-8")


def idle(tried: Iterable[Tried]) -> set[str]:
    """The keys that were changed and moved nothing: no figure, no verdict, no paper."""
    found = [*tried]
    return {each.key for each in found} - {each.key for each in found if each.moves}


class Portion:
    """The keys that one run of several takes."""

    def __init__(self, number: int) -> None:
        self.number = number

    def __contains__(self, key: object) -> bool:
        return crc32(str(key).encode()) % PORTIONS == self.number


@pytest.mark.slow
@pytest.mark.parametrize(("name", "of", "number"), these(WALKS, AT_THE_GATE))
def test_what_differs_is_told_and_nothing_else(name: str, of: str, number: int) -> None:
    """And on *Tarn*, what changes nothing at all has its reason; where it begins to move something its row goes."""
    portion = Portion(number)
    tried = tuple(walked(name, of, portion))
    wrong = {each.what: (each.differs - each.told, each.told - each.differs) for each in tried}
    told = [f"{what}: untold {sorted(un)}, in vain {sorted(vain)}" for what, (un, vain) in wrong.items() if un or vain]
    assert len(tried) > 100 / PORTIONS
    assert not told, "\n".join(told)
    if name == "tarn":
        assert sorted(idle(tried)) == sorted(key for key in listed(of) if key in portion), (
            "moves nothing without a reason, or moves in spite of one"
        )


def listed(of: str) -> set[str]:
    """The keys of a description that are said to change nothing."""
    assert all(why for _, why in IDLE.values())
    return {key for key, (whose, _) in IDLE.items() if whose == of}


@pytest.mark.slow
@pytest.mark.skipif(not WHOLE, reason="the walk over all examples: make walk")
@pytest.mark.parametrize("of", ["instrument", "shop"])
def test_what_changes_nothing_on_any_example_says_so(of: str) -> None:
    """What *Tarn* does not have another example has; the rest are for what a description alone cannot show."""
    tried = [each for name in EVERY[1:] for each in walked(name, of, listed(of))]
    moved_elsewhere = {each.key for each in tried if each.moves}
    assert sorted(listed(of) - moved_elsewhere) == sorted(EVERYWHERE & listed(of))


def test_a_layers_own_ink_makes_the_files_stale_that_a_machine_cuts_by_and_no_paper() -> None:
    """The mould has the layer "cut" and the board has none."""
    shop = EXAMPLES.joinpath("shop.toml").read_text(encoding="utf-8")
    own = '[[layer]]\nname = "cut"\ncolour = "blue"\n'
    plain, blue = (figures_of(tarn_file(), parse_shop(f"{shop}\n{layer}")) for layer in ("", own))
    found = papers_that_differ(plain, blue)
    assert {each.kind for each in found} == {"cut file"}
    assert "mould" in {each.name for each in found}
    assert "board" not in {each.name for each in found}


@pytest.mark.parametrize(
    ("key", "stale", "as_it_was"), [("laser_kerf", "gauges", "mould"), ("router_kerf", "mould", "gauges")]
)
def test_a_kerf_alone_makes_what_its_machine_cuts_stale(key: str, stale: str, as_it_was: str) -> None:
    shop = EXAMPLES.joinpath("shop.toml").read_text(encoding="utf-8")
    assert "laser_kerf = 0.14" in shop
    new = "laser_kerf = 0.2" if key == "laser_kerf" else "laser_kerf = 0.14\nrouter_kerf = 0.4"
    before, after = (
        figures_of(tarn_file(), parse_shop(text)) for text in (shop, shop.replace("laser_kerf = 0.14", new))
    )
    names = {each.name for each in papers_that_differ(before, after) if each.kind == "template"}
    assert stale in names
    assert as_it_was not in names


def tarn_file() -> Description:
    return parse_description(EXAMPLES.joinpath("tarn.toml").read_text(encoding="utf-8"))
