"""Files named after what the maker calls a thing: on every system a file, in its own folder."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gramil.file_names import file_name


@pytest.mark.parametrize(
    ("called", "name"),
    [
        ("top 1", "top-1"),
        ("brace billet", "brace-billet"),
        ("../../etc/passwd", "etc-passwd"),
        ("shelf: left", "shelf-left"),
        ("a\\b", "a-b"),
        ("Con", "Con-"),
        ("nul", "nul-"),
        ("com7", "com7-"),
        ("console", "console"),
        ("Bächle 木", "Bächle-木"),
        ("...", ""),
    ],
)
def test_a_name_becomes_a_file_s(called: str, name: str) -> None:
    assert file_name(called) == name


@given(st.text())
def test_no_name_leads_out_of_its_folder_or_holds_what_a_system_refuses(called: str) -> None:
    name = file_name(called)
    assert not re.search(r'[<>:"/\\|?*.\x00-\x1f ]', name)
    assert name.lower() not in {"con", "prn", "aux", "nul"}
