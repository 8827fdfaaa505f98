"""Pages whose modules are imported when they are asked for."""

import sys
from importlib import import_module
from types import ModuleType

import pytest

from gramil.bench.application import GETS, POSTS
from gramil.bench.later_pages import Later, later_pages


def test_a_module_of_pages_is_imported_when_one_of_them_is_asked_for(monkeypatch: pytest.MonkeyPatch) -> None:
    pages = Later("pages_made_up")
    page = pages.stock  # nothing is imported yet: there is no such module
    made_up = ModuleType("pages_made_up")
    made_up.stock = lambda request, open_instruments: (request, open_instruments)  # type: ignore[attr-defined]
    monkeypatch.setitem(sys.modules, "pages_made_up", made_up)
    assert page("what was asked", "what is open") == ("what was asked", "what is open")  # type: ignore[arg-type, comparison-overlap]
    with pytest.raises(AttributeError):
        _ = pages._hidden


def test_every_address_has_its_page() -> None:
    modules = [import_module(each.module) for each in later_pages().values()]
    known = {name for module in modules for name, each in vars(module).items() if callable(each)}
    asked = {cell.cell_contents for _, page in (*GETS, *POSTS) for cell in page.__closure__ or ()}
    assert {each for each in asked if isinstance(each, str)} <= known
    assert len(asked) > 60
