"""Records made by the house's own `dataclass` are what the standard library's are: one by one compared with those."""

import copy
import dataclasses
import pickle
from collections.abc import Callable
from dataclasses import FrozenInstanceError, asdict, field, fields, is_dataclass, replace
from functools import cached_property
from typing import Any

import numpy as np
import pytest

from gramil import frozen


def record(dataclass: Callable[..., Any]) -> Any:
    """A record with each kind of field, made by one of the two."""

    @dataclass(frozen=True)
    class Slot:
        """A slot."""

        fret: int
        depth: float = 1.6
        words: tuple[str, ...] = ()
        known: dict[str, int] = field(default_factory=dict, compare=False, repr=False)

        def __post_init__(self) -> None:
            if self.fret < 0:
                raise ValueError("frets count from 0")

        @cached_property
        def twice(self) -> float:
            """Twice the depth."""
            return 2 * self.depth

    return Slot


OURS, THEIRS = record(frozen.dataclass), record(dataclasses.dataclass)
GIVEN: tuple[tuple[tuple[Any, ...], dict[str, Any]], ...] = (
    ((7,), {}),
    ((7, 2.0, ("a", "b")), {}),
    ((), {"fret": 3, "known": {"a": 1}}),
)


@pytest.mark.parametrize(("values", "named"), GIVEN)
def test_a_record_holds_and_shows_the_same(values: tuple[Any, ...], named: dict[str, Any]) -> None:
    ours, theirs = OURS(*values, **named), THEIRS(*values, **named)
    assert (repr(ours), asdict(ours), hash(ours)) == (repr(theirs), asdict(theirs), hash(theirs))
    assert ours.twice == ours.twice == theirs.twice
    assert ours == replace(ours) == copy.deepcopy(ours)
    assert replace(ours, depth=9.0) != ours
    assert ours != theirs
    assert ours.known is not OURS(1).known


def test_a_record_is_one_to_the_standard_library() -> None:
    assert is_dataclass(OURS)
    assert [each.name for each in fields(OURS)] == [each.name for each in fields(THEIRS)]
    assert OURS.__match_args__ == THEIRS.__match_args__
    assert repr(OURS.__dataclass_params__) == repr(THEIRS.__dataclass_params__)


@pytest.mark.parametrize("made", [OURS, THEIRS])
def test_a_record_does_not_change_and_is_checked(made: Any) -> None:
    one = made(7)
    with pytest.raises(FrozenInstanceError, match="cannot assign to field 'fret'"):
        one.fret = 8
    with pytest.raises(FrozenInstanceError, match="cannot delete field 'fret'"):
        del one.fret
    with pytest.raises(FrozenInstanceError):
        one.another = 8
    with pytest.raises(TypeError, match="missing 1 required positional argument: 'fret'"):
        made()
    with pytest.raises(TypeError, match="unexpected keyword argument 'frets'"):
        made(frets=7)
    with pytest.raises(ValueError, match="count from 0"):
        made(-1)


@frozen.dataclass(frozen=True)
class Row:
    """A record of one field."""

    depths: Any


@frozen.dataclass(frozen=True)
class Longer(Row):
    """A record that adds to another."""

    more: int = 0


def test_one_field_compares_as_in_a_tuple_and_is_kept_through_pickling() -> None:
    """The same array is equal to itself; compared by itself it would give an array."""
    depths = np.array([1.0, 2.0])
    assert Row(depths) == Row(depths)
    assert pickle.loads(pickle.dumps(Row(3))) == Row(3)


def test_a_record_that_adds_to_another_and_those_of_other_kinds() -> None:
    assert (Longer(1), Longer(1, 2).more) == (Longer(1, 0), 2)
    assert Longer(1) != Row(1)
    with pytest.raises(FrozenInstanceError):
        Longer(1).more = 3  # type: ignore[misc]  # the mistake is the point

    @frozen.dataclass
    class Free:
        """One that may change."""

        count: int = 0

    free = Free()
    free.count = 2
    assert free == Free(2)


def test_a_method_of_its_own_stays() -> None:
    @frozen.dataclass(frozen=True)
    class Named:
        """A record that says itself what it is called."""

        name: str

        def __repr__(self) -> str:
            return self.name

    assert repr(Named("Tarn")) == "Tarn"
