"""`gramil ready`: which work the wood and the air allow, what closes the rest, and when it opens."""

from collections.abc import Iterator
from datetime import datetime
from pathlib import Path

import click

from gramil.air.air_bands import band_limits
from gramil.air.air_of_places import Places, places_of
from gramil.air.pieces_now import Pieces, PieceUnknown, pieces_now
from gramil.air.readiness import InPlace, Readiness, gluing_band, gluing_humidity, readiness, when
from gramil.cli.json_option import json_option, write_answer
from gramil.cli.moments import now_option
from gramil.cli.now import wrapped
from gramil.cli.options import instrument_file, shop_itself
from gramil.file_names import file_name
from gramil.shop.made_file import made_beside, read_made
from gramil.shop.operations import needed
from gramil.shop.operations_file import lists_beside, work_with
from gramil.shop.wood_work import Closed, WoodAndAir, WorkNow, pieces_for, work_now
from gramil.wood.moisture import Range


@click.command()
@instrument_file
@shop_itself
@now_option
@json_option
@click.option("--plot", type=click.Path(path_type=Path), help="Also draw each piece's moisture into this folder.")
@click.option("--why", "reasons", is_flag=True, help="Say what each piece's figures rest on.")
def command(file: Path, shop: Path, now: datetime, as_json: bool, plot: Path | None, reasons: bool) -> None:
    """Which work on the instrument in FILE its wood and the shop's air allow now, and when the rest opens.

    \b
    gramil ready tarn.toml --shop shop.toml
    gramil ready tarn.toml --shop shop.toml --now 2026-01-19T09:00 --plot .
    """
    from gramil.description.reading import read_description, read_shop

    described = read_description(file)
    name, description = described.instrument.instrument.name, read_shop(shop)
    places = places_of(description)
    for fault in places.faults:
        click.echo(str(fault), err=True)
    band, humidity = gluing_band(description.shop, places, now), gluing_humidity(description.shop)
    pieces = pieces_now(description, places, now)
    whole = needed(work_with(lists_beside(shop, file)), described.instrument)
    bands = {each.name: band_limits(each, description.shop) for each in whole.bands.values()}
    done = _done(file)
    to_do = [each for key, each in whole.operations.items() if key not in done]
    work = work_now(name, to_do, WoodAndAir(places, pieces, bands, band, now, description.shop.shop.temperature))
    found = [readiness(each, places, now, band) for each in pieces_for(name, pieces)]
    if as_json:
        from gramil.answers.air import ready_answer
        from gramil.answers.answer import Whose

        answer = ready_answer(now, humidity, band, work, found, pieces)
        write_answer("ready", [Whose(name, None, "drawn")], answer)
    else:
        for line in (*_head(name, now, humidity, band), *_work(work, now), *_pieces(found, pieces, name, now, reasons)):
            click.echo(line)
    if plot is not None:
        for path in _draw(plot, found, places, now, band):
            click.echo(f"Drawn: {path}", err=as_json)


def _done(file: Path) -> tuple[str, ...]:
    """What is noted as done in the record beside the description."""
    record = made_beside(file)
    return read_made(record).operations if record.exists() else ()


def _head(name: str, now: datetime, humidity: tuple[float, float], band: tuple[float, float]) -> Iterator[str]:
    yield click.style(f"{name}, {now:%Y-%m-%d %H:%M}", bold=True)
    yield (
        f"For gluing: air of {humidity[0]:g} to {humidity[1]:g} %, and wood settled in it, "
        f"which is {band[0]:.1f} to {band[1]:.1f} % moisture here."
    )
    yield "Only wood and air are looked at, of work not noted as done; gramil now looks at the rest."


def _work(work: tuple[WorkNow, ...], now: datetime) -> Iterator[str]:
    """What is open, then what is not; work that waits for the same reasons is grouped."""
    yield ""
    together: dict[tuple[tuple[Closed, ...], tuple[Closed, ...]], list[WorkNow]] = {}
    for each in work:
        together.setdefault((each.closed, each.unknown), []).append(each)
    for (closed, unknown), group in sorted(together.items(), key=_state):
        head = _STATES[_state(((closed, unknown), group))]
        for each in group:
            yield f"{head:<12} {each.operation.what}   [{each.operation.name}]"
            head = ""
        reasons = [f"{_upper(reason.why)}: {reason.remedy}." for reason in (*closed, *unknown)]
        for words in filter(None, (*reasons, _opens(group[0].opens, closed, now))):
            yield wrapped(f"{'':15}{words}", 17)


_STATES = ("OPEN", "NOT JUDGED", "CLOSED")


def _state(group: tuple[tuple[tuple[Closed, ...], tuple[Closed, ...]], list[WorkNow]]) -> int:
    (closed, unknown), _ = group
    return 2 if closed else 1 if unknown else 0


def _opens(place: InPlace | None, closed: tuple[Closed, ...], now: datetime) -> str:
    """When the wood opens it; nothing if something else closes it for good."""
    if place is None:
        return ""
    also = ", in air that is right" if any(not each.piece for each in closed) else ""
    return f"Wood ready {when(place.ready, now)}{also}."


def _pieces(found: list[Readiness], pieces: Pieces, name: str, now: datetime, reasons: bool) -> Iterator[str]:
    yield ""
    yield f"{'piece':<16} {'wood':<18} {'mean':<20} {'middle':<8} {'faces':<12} lies in"
    for each in found:
        state, row = each.piece.state, each.piece.row
        faces = f"{state.faces[0].likely:.1f}, {state.faces[1].likely:.1f}"
        yield (
            f"{row.name:<16} {row.wood:<18} {_range(state.mean):<20} {state.centre.likely:<8.1f} {faces:<12} "
            f"{each.piece.place or 'not known'}"
        )
        yield f"    {_outlook(each, now)}"
        if reasons:
            yield from (f"      {word}" for word in state.assumptions)
    yield from (_unknown(each) for each in pieces.unknown if each.row.instrument in (None, name))


def _unknown(piece: PieceUnknown) -> str:
    return f"{piece.row.name:<16} {piece.row.wood:<18} not known: {piece.why}"


def _outlook(found: Readiness, now: datetime) -> str:
    """What happens to a piece where it lies, and where it would become ready."""
    here, best = found.here, found.best
    if found.settled and here is not None and here.ready.likely is not None:
        return "Settled, and stays so where it lies."
    words = "Settled. " if found.settled else ""
    if here is not None and here.ready.likely is None:
        words += f"Where it lies it goes to {here.ready.settles_at:.1f} %. "
    if best is None:
        return words + "No place of the shop makes it ready."
    if found.settled:
        return words + f"Keep it in the {best.place}."
    where = "Left where it lies" if best.place == found.piece.place else f"In the {best.place}"
    return words + f"{where}: ready {when(best.ready, now)}."


def _range(moisture: Range) -> str:
    return f"{moisture.likely:.1f} % ({moisture.least:.1f} to {moisture.most:.1f})"


def _upper(words: str) -> str:
    return words[:1].upper() + words[1:]


def _draw(
    folder: Path, found: list[Readiness], places: Places, now: datetime, band: tuple[float, float]
) -> Iterator[Path]:
    from gramil.writers.wood_charts import piece_svg

    folder.mkdir(parents=True, exist_ok=True)
    for each in found:
        path = folder / f"{file_name(each.piece.row.name)}-moisture.svg"
        path.write_text(piece_svg(each, places, now, band), encoding="utf-8", newline="\n")
        yield path
