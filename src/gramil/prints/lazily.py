"""Values worked out one by one, only as far as they are asked for: drawings that differ mostly do so early."""

from collections.abc import Iterable, Iterator, Sequence
from itertools import zip_longest
from typing import Any, overload


class Lazily(Sequence[Any]):
    """Values that are worked out when first asked for, and kept; otherwise a list."""

    def __init__(self, values: Iterable[Any]) -> None:
        self._rest = iter(values)
        self._known: list[Any] = []

    def __iter__(self) -> Iterator[Any]:
        at = 0
        while True:
            if at == len(self._known):
                try:
                    self._known.append(next(self._rest))
                except StopIteration:
                    return
            yield self._known[at]
            at += 1

    def __len__(self) -> int:
        return sum(1 for _ in self)

    @overload
    def __getitem__(self, at: int) -> Any: ...
    @overload
    def __getitem__(self, at: slice) -> Sequence[Any]: ...
    def __getitem__(self, at: int | slice) -> Any:
        return tuple(self)[at]

    def __eq__(self, other: object) -> bool:
        if not isinstance(other, Lazily | list | tuple):
            return NotImplemented
        nothing = object()
        return all(one == another for one, another in zip_longest(self, other, fillvalue=nothing))

    def __repr__(self) -> str:
        return repr(list(self))

    __hash__ = None  # type: ignore[assignment]  # as a list has none
