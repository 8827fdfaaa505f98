"""Scale tables as the open format has them."""

import math

import pytest

from gramil.description.board.scala_scale import equal_division, parse_scl


def test_ratios_cents_comments_and_trailing_words() -> None:
    scale = parse_scl("! just.scl\n!\nFive of just intonation\n 5\n!\n 9/8 a tone\n 5/4\n 701.9550 cents\n 5/3\n 2\n")
    assert scale.description == "Five of just intonation"
    # 1200 log2(9/8), log2(5/4) and log2(5/3) to five decimals: from memory
    assert scale.cents == pytest.approx((203.91000, 386.31371, 701.955, 884.35871, 1200.0), abs=5e-6)


def test_it_repeats_by_its_period() -> None:
    scale = parse_scl("x\n2\n3/2\n3/1\n")
    assert [scale.at(n) for n in range(5)] == pytest.approx([0, *(1200 * math.log2(r) for r in (1.5, 3, 4.5, 9))])


def test_equal_division() -> None:
    assert [equal_division(12).at(n) for n in (0, 1, 12, 13)] == [0, 100, 1200, 1300]
    assert equal_division(19).at(19) == 1200


@pytest.mark.parametrize(
    ("text", "line"),
    [
        ("", 1),
        ("x\n", 1),
        ("x\nmany\n", 2),
        ("x\n3\n2/1\n", 2),
        ("x\n1\nhigh\n", 3),
        ("x\n1\n1/0\n", 3),
        ("x\n2\n3/2\n100.\n", 4),
        ("x\n1\n1/1\n", 3),
        ("x\n1\n-3.\n", 3),
        ("x\n0\n", 2),
        ("x\n1\n.\n", 3),
    ],
)
def test_faults_have_a_line(text: str, line: int) -> None:
    with pytest.raises(ValueError, match=f"^line {line}:"):
        parse_scl(text)
