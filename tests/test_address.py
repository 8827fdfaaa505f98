"""Addresses: whatever a maker calls a brace or a saw, a reference to it leads back to it."""

from hypothesis import example, given
from hypothesis import strategies as st

from gramil import names as n
from gramil.address import Field, parse_address


@given(st.text(min_size=1, max_size=30).filter(lambda name: name != "<row>"))
@example("say \"so\" \\ 'yes'")
@example('14" saw')
@example("ends \\")
@example('\\"].height')
def test_any_name_is_found_again(name: str) -> None:
    assert parse_address(str(n.braces[name].height)) == ("braces", (name, Field("height")))


def test_as_a_maker_writes_it() -> None:
    for written in ('braces["X"].height', "braces['X'].height"):
        assert parse_address(written) == ("braces", ("X", Field("height")))
    assert parse_address("string_error[6, 12]") == ("string_error", (6, 12))
