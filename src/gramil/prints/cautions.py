"""A sheet's cautions, put together from the tools used and the stuff worked."""

from collections.abc import Iterable, Iterator
from typing import Any

from gramil.description.cautions import DUST, MACHINE, NO_WOOD, TOOLS, WOOD_DUST, Tool
from gramil.description.records import Stuff
from gramil.formatter import Formatter
from gramil.reference import Ref


def caution_lines(by: Iterable[str], on: Iterable[Ref[Any]], formatter: Formatter) -> list[str]:
    """The lines, each once: every tool's, what holds at all machines, the dust of each stuff, doubts, and permits.

    `by` are names of tools, `on` references to stuffs. Raises KeyError for a tool that does not exist.
    """
    tools = [TOOLS[name] for name in dict.fromkeys(by)]
    stuffs = [stuff for each in dict.fromkeys(on) if (stuff := formatter.figures.at(each)).wood]
    return list(dict.fromkeys((*of_tools(tools), *_dust(tools, stuffs), *_asked(stuffs))))


def of_tools(tools: Iterable[Tool]) -> Iterator[str]:
    """Each tool's line, and the one for all machines if there is a machine among them."""
    known = tuple(tools)
    yield from (tool.caution for tool in known)
    if any(tool.powered for tool in known):
        yield MACHINE


def _dust(tools: Iterable[Tool], stuffs: Iterable[Stuff]) -> Iterator[str]:
    """One line for all that is cut or sanded, with equal advice given once."""
    if any(tool.dusty for tool in tools):
        known = tuple(stuffs)
        kinds = dict.fromkeys((stuff.wood, stuff.dust) for stuff in known)
        of_all = f"{WOOD_DUST} " if any(stuff.name not in NO_WOOD for stuff in known) else ""
        yield f"Dust. {''.join(f'{_capital(wood)}: {dust}. ' for wood, dust in kinds)}{of_all}{DUST}"


def _asked(stuffs: Iterable[Stuff]) -> Iterator[str]:
    for stuff in stuffs:
        yield from filter(None, (stuff.doubt, stuff.permit))


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]
