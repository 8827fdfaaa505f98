"""Pages whose modules are imported when they are asked for, so that the bench's first page does not wait for all."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cache
from importlib import import_module
from pkgutil import iter_modules

from starlette.responses import Response

import gramil.bench.pages
from gramil.bench.open_instruments import OpenInstruments
from gramil.bench.page_request import PageRequest


@dataclass(frozen=True)
class Later:
    """A module of pages, to be imported when one of them is asked for. A page of it is a function as there."""

    module: str

    def __getattr__(self, page: str) -> Callable[[PageRequest, OpenInstruments], Response]:
        if page.startswith("_"):
            raise AttributeError(page)

        def answered(request: PageRequest, open_instruments: OpenInstruments) -> Response:
            response: Response = getattr(import_module(self.module), page)(request, open_instruments)
            return response

        return answered


@cache
def later_pages() -> Mapping[str, Later]:
    """Every module of pages by its name."""
    package = gramil.bench.pages
    return {each.name: Later(f"{package.__name__}.{each.name}") for each in iter_modules(package.__path__)}
