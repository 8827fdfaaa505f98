"""What cannot be described yet is refused by its name, with what is nearest: a key, a table, or a choice of words."""

from collections.abc import Callable

import pytest

from gramil.description.not_yet import NOT_YET, not_yet
from gramil.description.reading import parse_description
from gramil.faults import Fault, MakersFault

ASKED = (
    ("[carve]\nlaminations = 5\n", "laminated", "carve.wood"),
    ("[board]\nraised_end = 8\n", "raised", "board.beyond_last_fret"),
    ("[neck]\nvolute = true\n", "volute", "carve.scarf"),
    ("[volute]\nlength = 40\n", "volute", "carve.scarf"),
    ("[top]\nthickness_map = 'top.csv'\n", "map", "top.thickness"),
    ("[body]\ngraduations = [2.2, 2.6]\n", "map", "body.back_thickness"),
    ('[bridge]\nhold = "tailpiece"\n', "tailpiece", '"pins"'),
    ("[bridge]\nfloating = true\n", "tailpiece", '"tie block"'),
    ("[[course]]\nstrings = [1]\noutside = true\n", "beside the board", "[[course]]"),
)


@pytest.mark.parametrize(("lines", "name", "nearest"), ASKED)
def test_it_is_refused_by_its_name(lines: str, name: str, nearest: str, text_of: Callable[[str], str]) -> None:
    faults = refused(with_lines(text_of("tarn"), lines))
    told = next(each for each in faults if "cannot be described yet" in each.what)
    assert name in told.what
    assert nearest in told.remedy
    assert told.line is not None


def refused(text: str) -> tuple[Fault, ...]:
    with pytest.raises(MakersFault) as found:
        parse_description(text)
    return tuple(found.value.faults)


def with_lines(text: str, lines: str) -> str:
    """The lines in their table, or at the end where the file has none of that name."""
    head, body = lines.split("\n", 1)
    return text.replace(f"{head}\n", f"{head}\n{body}") if f"\n{head}\n" in text else f"{text}\n{lines}"


def test_each_of_them_has_words_of_its_own() -> None:
    words = [word for each in NOT_YET for word in each.words]
    assert len(words) == len(set(words))
    for each in NOT_YET:
        assert all(not_yet(word) == each for word in each.words)


@pytest.mark.parametrize("key", ["lenght", "thikness", "hold_behnd", "mapped", "outsider", "raise"])
def test_a_slip_of_the_pen_is_none_of_them(key: str) -> None:
    assert not_yet(key) is None
