"""Figures as pages show them: numbers large, units small."""

import pytest

from gramil.bench.templating import big


@pytest.mark.parametrize(
    ("text", "large", "small"),
    [
        ("9.5 mm", ["9.5"], [" mm"]),
        ("9 mm, 9.5 mm, 11.1 mm", ["9", "9.5", "11.1"], [" mm", " mm", " mm"]),
        ("0.23 to 1.22 mm", ["0.23 to 1.22"], [" mm"]),
        ("flat", ["flat"], [""]),
    ],
)
def test_every_number_of_a_list_is_as_large_as_the_first(text: str, large: list[str], small: list[str]) -> None:
    parts = str(big(text)).split('<b class="number">')[1:]
    assert [each.partition("</b>")[0] for each in parts] == large
    assert [each.partition('<span class="u">')[2].partition("</span>")[0] for each in parts] == small
