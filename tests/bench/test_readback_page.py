"""Readings typed on the bench and read back: slots, and the strung instrument."""

import httpx

TARN = "/instrument/1"


def position(fret: int) -> float:
    """Equal temperament from the nut line: 630 (1 - 2^(-n/12))."""
    return 630.0 * (1.0 - 2.0 ** (-fret / 12.0))


def test_slots_that_lie_right_and_slots_from_another_zero(demo: httpx.Client) -> None:
    """Each slot 0.3 mm too far says that the zero is off by 0.3 mm, and nothing else."""
    right = demo.get(f"{TARN}/slots-measured", params={f"fret.{n}": f"{position(n):.2f}" for n in range(1, 20)})
    assert right.status_code == 200
    assert "What it means</h2>" in right.text
    off = demo.get(f"{TARN}/slots-measured", params={f"fret.{n}": f"{position(n) + 0.3:.2f}" for n in range(1, 20)})
    assert "zero off by +0.30 mm" in off.text
    assert "zero off by" not in right.text


def test_inches_where_inches_are_shown_and_what_was_typed_stays(demo: httpx.Client) -> None:
    page = demo.get(f"{TARN}/slots-measured", params={"fret.12": "12.402 in", "fret.7": "209,53"}).text
    assert 'value="12.402 in"' in page
    assert "What it means</h2>" in page


def test_a_board_of_another_scale_is_one_question_with_its_answer(demo: httpx.Client) -> None:
    """640 mm where 630 is drawn: what all readings mean together is said once, and a second tap takes them all."""
    typed = {f"fret.{n}": f"{640.0 * (1.0 - 2.0 ** (-n / 12.0)):.2f}" for n in range(1, 20)}
    page = demo.get(f"{TARN}/slots-measured", params=typed)
    assert page.status_code == 422
    assert page.text.count("cut to a scale of 640.0") == 1
    assert "Pull that fret" not in page.text


def test_the_strung_instrument(demo: httpx.Client) -> None:
    """An octave 6 cents sharp wants its break point further back, toward the tail."""
    page = demo.get(f"{TARN}/set-up-measured", params={"cents@12.6": "6", "relief": "0,15"}).text
    assert "String 6" in page
    assert "toward the tail" in page
    flat = demo.get(f"{TARN}/set-up-measured", params={"cents@12.6": "-6"}).text
    assert "toward the nut" in flat


def test_nothing_typed_asks_and_rubbish_is_told(demo: httpx.Client) -> None:
    for name, field in (("slots-measured", "fret.1"), ("set-up-measured", "action.1")):
        empty = demo.get(f"{TARN}/{name}")
        assert empty.status_code == 200
        assert "What it means</h2>" not in empty.text
        answer = demo.get(f"{TARN}/{name}", params={field: "long"})
        assert answer.status_code == 422
        assert "long" in answer.text
