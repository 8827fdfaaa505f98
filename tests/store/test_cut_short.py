"""A store that is made, and one that is put back, cut short at every step on the disk: there is the old or the new."""

import os
import sys
from collections.abc import Callable
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

import pytest

from gramil.doorway.backup import backup, restore
from gramil.doorway.verify import verify
from gramil.store.opening import create_store, new_store, open_store
from gramil.store.writing import Hand, note, transaction

if sys.platform == "win32":
    pytest.skip("this system knows no forks", allow_module_level=True)

NOW = datetime(2026, 11, 2, 9, tzinfo=UTC)
STEPS = ("replace", "rename", "link", "unlink", "fsync")


def ended_at(count: int, act: Callable[[], object]) -> bool:
    """An act in a branch of this program that is gone, without a word, at its nth step; whether it got that far."""
    child = os.fork()
    if not child:
        done = [0]

        def counted(real: Callable[..., Any]) -> Callable[..., Any]:
            def step(*words: Any, **more: Any) -> Any:
                done[0] += 1
                if done[0] == count:
                    os._exit(9)
                return real(*words, **more)

            return step

        try:  # a branch that fails is never to go on as if it were the tests
            for name in STEPS:
                setattr(os, name, counted(getattr(os, name)))
            act()
            os._exit(0)
        finally:
            os._exit(1)
    return os.waitstatus_to_exitcode(os.waitpid(child, 0)[1]) == 9


def filled(path: Path, what: str) -> None:
    with new_store(path) as store, transaction(store):
        note(store, what, Hand(NOW, who=""))


def noted(path: Path) -> list[str]:
    with open_store(path, to_read=True) as store:
        return [what for (what,) in store.rows("SELECT what FROM change")]


def test_a_new_store_is_there_filled_or_not_at_all(tmp_path: Path) -> None:
    count = 1
    while True:
        path = tmp_path / f"{count}.gramil"
        if not ended_at(count, lambda path=path: filled(path, "filled")):  # type: ignore[misc]
            break
        if path.exists():
            assert noted(path) == ["filled"]
            path.unlink()
        filled(path, "again")
        assert noted(path) == ["again"]
        assert [each.name for each in tmp_path.iterdir() if each.name.startswith(".")] == []
        count += 1
    assert count > 2


def test_one_that_cannot_be_filled_leaves_nothing(tmp_path: Path) -> None:
    def fill() -> None:
        with new_store(tmp_path / "shop.gramil"):
            raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        fill()
    assert list(tmp_path.iterdir()) == []


def test_a_store_put_back_is_the_old_or_the_new(tmp_path: Path) -> None:
    filled(tmp_path / "saved.gramil", "saved")
    with open_store(tmp_path / "saved.gramil") as store:
        backup(store, tmp_path / "copy.gramil")
    count, found = 1, set()
    while True:
        folder = tmp_path / str(count)
        folder.mkdir()
        path = folder / "shop.gramil"
        filled(path, "old")
        if not ended_at(count, lambda path=path: restore(tmp_path / "copy.gramil", path, NOW)):  # type: ignore[misc]
            break
        assert verify(path) == ()
        found.add(*noted(path))
        for kept in folder.glob("shop.gramil.before-*"):
            kept.unlink()
        restore(tmp_path / "copy.gramil", path, NOW)
        assert noted(path) == ["saved"]
        assert [each.name for each in folder.iterdir() if each.name.startswith(".")] == []
        count += 1
    assert found == {"old", "saved"}


def test_an_empty_store_is_still_made(tmp_path: Path) -> None:
    create_store(tmp_path / "shop.gramil").close()
    assert verify(tmp_path / "shop.gramil") == ()
