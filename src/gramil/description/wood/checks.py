"""What must hold between a shop's places, pieces and woods beyond each key by itself."""

from collections.abc import Iterable, Iterator, Mapping
from itertools import pairwise
from typing import Any

from gramil.description.locate import Path
from gramil.description.problems import Problem, did_you_mean, nearest, quoted
from gramil.description.wood.own_woods import own_wood
from gramil.description.wood.tables import AirTable, PieceTable, PlaceTable, WoodTable
from gramil.faults import MakersFault
from gramil.wood.species import Species, find_species


def problems_of_wood(tables: Mapping[str, Any]) -> list[Problem]:
    """Every fault between the tables that could be read."""
    woods: tuple[WoodTable, ...] = tables.get("wood", ())
    places: tuple[PlaceTable, ...] | None = tables.get("place")
    own, found = _own(woods)
    for row, piece in enumerate(tables.get("piece", ())):
        found += _of_piece(("piece", row), piece, own, places)
    if places is not None:
        found += _of_places(places, tables.get("air"))
    return found


def _own(woods: Iterable[WoodTable]) -> tuple[dict[str, Species], list[Problem]]:
    own, found = {}, []
    for row, wood in enumerate(woods):
        try:
            own[wood.name] = own_wood(wood)
        except MakersFault as fault:
            found.append(_unknown(("wood", row, "like"), fault))
    return own, found


def _unknown(path: Path, fault: MakersFault) -> Problem:
    return Problem(path, fault.faults[0].what, "", fault.faults[0].remedy)


def _of_piece(
    path: Path, piece: PieceTable, own: Mapping[str, Species], places: Iterable[PlaceTable] | None
) -> list[Problem]:
    found = []
    try:
        find_species(piece.wood, own)
    except MakersFault as fault:
        found.append(_unknown((*path, "wood"), fault))
    if places is not None:
        names = [place.name for place in places]
        found += [
            problem
            for row, stay in enumerate(piece.lay)
            for problem in _named((*path, "lay", row, "place"), stay.place, names)
        ]
    return [*found, *_in_order(path, piece)]


def _named(path: Path, word: str | None, names: list[str]) -> Iterator[Problem]:
    if word is not None and word not in names:
        has = "the shop has " + (", ".join(map(quoted, names)) if names else "no place")
        yield Problem(path, f"read {quoted(word)}", has, did_you_mean(nearest(word, names)))


def _in_order(path: Path, piece: PieceTable) -> Iterator[Problem]:
    for row, stay in enumerate(piece.lay):
        if stay.ends is not None and stay.ends <= stay.begins:
            yield Problem((*path, "lay", row), "this stay ends before it begins", "", "mend from or until")
    for row, (stay, later) in enumerate(pairwise(piece.lay), 1):
        if later.begins <= stay.begins or (stay.ends is not None and stay.ends != later.begins):
            what = (
                f"this stay begins {later.begins:%Y-%m-%d %H:%M}, and the one before it {_span(stay.begins, stay.ends)}"
            )
            yield Problem((*path, "lay", row), what, "", "let each stay begin when the one before it ends")


def _span(begins: Any, ends: Any) -> str:
    return f"runs from {begins:%Y-%m-%d %H:%M}" + (f" to {ends:%Y-%m-%d %H:%M}" if ends else "")


def _of_places(places: tuple[PlaceTable, ...], air: AirTable | None) -> list[Problem]:
    names = [place.name for place in places]
    found = [
        problem
        for row, place in enumerate(places)
        for problem in _named(
            ("place", row, "air_from"), place.air_from, [name for name in names if name != place.name]
        )
    ]
    for key in ("gluing_place", "finishing_place"):
        found += _named(("air", key), getattr(air, key) if air else None, names)
    return found
