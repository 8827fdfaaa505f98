"""The instruments on the bench: from descriptions with the records beside them, or from the store, in the same form."""

from collections import Counter
from collections.abc import Callable, Collection, Iterable, Iterator, Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass, field, replace
from datetime import datetime, time
from pathlib import Path

from gramil.air.air_in_store import places_in_store
from gramil.air.air_of_places import Places, places_of
from gramil.air.outlooks import Spell
from gramil.air.pieces_now import Pieces, pieces_now
from gramil.change.in_store import figures_in_store
from gramil.change.made import Judged, judge
from gramil.change.made_in_store import standing_in_store
from gramil.change.stops import measured_stops
from gramil.description.instrument import Instrument as InstrumentDescription
from gramil.description.reading import ShopDescription, parse_keys, read_description, read_shop
from gramil.faults import MakersFault
from gramil.graph import Figures
from gramil.measure import LengthUnit
from gramil.now.chances import ON_RECORD
from gramil.now.conditions import conditions, gluing_moisture, pieces_of, wood_now
from gramil.now.habits import NOTHING, Noted, noted_in
from gramil.now.match import Stock
from gramil.now.needs import MadePart, fit
from gramil.now.open_now import Conditions, InstrumentState, WoodNow
from gramil.now.own_jigs import Built, with_own_jigs, without_jigs_on_hand
from gramil.now.stock_on_hand import made_parts, stock_of_shop, stock_of_store
from gramil.now.wood_on_hand import without_wood
from gramil.prints.own_addresses import refuse, wrong_addresses
from gramil.prints.whole import figures_of
from gramil.shop.instruments import Instrument, instrument, instruments, revision
from gramil.shop.made_file import Made, made_beside, read_made
from gramil.shop.operations import Work, needed
from gramil.shop.operations_done import operations_done
from gramil.shop.operations_file import lists_beside, usual_work, work_with
from gramil.shop.own_operations import work_of
from gramil.shop.shop_in_store import shop_description
from gramil.store.opening import Store, reading

EVENING = time(18, 0)
"""A day without an hour counts from its evening: what was done then may have been done last."""


@dataclass(frozen=True)
class Bench:
    """Everything that `now` looks at: the shop's conditions and places, and the instruments.

    `faults` says, in words, what could not be read and is left out; `ratios` are hours noted over usual hours, one for
    each operation of any instrument whose hours are noted; `noted` is what the record says of days and spoiled parts.
    """

    shop: Conditions
    instruments: tuple[InstrumentState, ...]
    places: Places
    faults: tuple[str, ...]
    ratios: tuple[float, ...] = ()
    noted: Noted = NOTHING


@dataclass(frozen=True)
class _Read:
    """An instrument as read: its work, what was done when, which sheets are stale, and the verdicts on finished
    work.
    """

    name: str
    work: Work
    done: Mapping[str, datetime]
    stale: Mapping[str, str]
    judged: tuple[Judged, ...]
    unit: LengthUnit
    stops: tuple[str, ...] = ()
    lacking: Mapping[str, str] = field(default_factory=dict)
    described: InstrumentDescription | None = None


Judging = Callable[[Store, Instrument], tuple[Judged, ...]]
"""How what is made of an instrument of the store stands; raises MakersFault where it cannot be worked out."""
Figuring = Callable[[Store, Instrument], Figures]
"""The figures of an instrument of the store, as made; raises MakersFault where it cannot be worked out."""
Staling = Callable[[Store, Instrument], Mapping[str, str]]
"""Which of its sheets handed out are stale, by name, and why; raises MakersFault where it cannot be worked out."""


@dataclass(frozen=True)
class WorkedOut:
    """How what is said of an instrument of the store is worked out: functions, given by whoever has its figures at
    hand.
    """

    staling: Staling
    judging: Judging = standing_in_store
    figuring: Figuring = figures_in_store


def bench_of_files(
    files: Sequence[Path], shop: Path | None, now: datetime, said: Mapping[str, Sequence[Spell]] | None = None
) -> Bench:
    """The bench from files alone: descriptions, what is made beside each, and the shop's description.

    `now` is by the shop's own clock. Raises MakersFault for what is wrong in any of them.
    """
    described = read_shop(shop)
    read = [_from_file(file, shop, described) for file in files]
    refuse_namesakes(each.name for each in read)
    return _bench(read, described, places_of(described), now, said or {})


def bench_of_store(
    store: Store,
    now: datetime,
    by: WorkedOut,
    names: Sequence[str] = (),
    said: Mapping[str, Sequence[Spell]] | None = None,
    record_days: float = ON_RECORD,
) -> Bench:
    """The bench from the store: its open instruments, or those named; `now` has an offset from UTC."""
    with reading(store):
        described = shop_description(store)
        known = places_in_store(store, described, now, record_days)
        rows = chosen_in(store, names)
        others = tuple(_others(store, rows))
        on_hand, ratios, noted = _on_hand(store, described), tuple(_ratios(store)), noted_in(store)
        read, faults = [], []
        for each in rows:
            try:
                read.append(_from_store(store, each, now, by, on_hand))
            except MakersFault as fault:
                faults.append(f"{each.name}: {fault.faults[0]}")
    bench = _bench(read, described, known, now.replace(tzinfo=None), said or {}, others)
    return replace(bench, faults=(*faults, *bench.faults), ratios=ratios, noted=noted)


def work_to_pay(store: Store, owner: Instrument, described: InstrumentDescription) -> Work:
    """All the work of an instrument, done and to do, except the making of moulds and dishes that exist already."""
    work = needed(work_of(store, owner.id), described)
    done = frozenset(each.operation for each in operations_done(store, owner.id))
    one = Built(owner.name, described, work, done)
    return without_jigs_on_hand(one, tuple(_others(store, [owner])), shop_description(store).shop.jig)


def refuse_namesakes(names: Iterable[str]) -> None:
    """Raises MakersFault if two instruments have the same name: their work and wood could not be told apart."""
    twice = next((name for name, count in Counter(names).items() if count > 1), None)
    if twice is not None:
        raise MakersFault.of(f"two of the files are of an instrument called {twice}", "", "Name each once")


def chosen_in(store: Store, names: Sequence[str]) -> list[Instrument]:
    """The store's instruments of these names, or all open ones; raises MakersFault for a name that does not exist."""
    chosen = {instrument(store, name).name for name in names}
    return [each for each in instruments(store) if (each.name in chosen if names else each.standing == "open")]


def _from_file(file: Path, shop: Path | None, of_shop: ShopDescription) -> _Read:
    description = read_description(file)
    record = made_beside(file)
    made = read_made(record) if record.exists() else Made(())
    lists = lists_beside(shop, file)
    work = work_with(lists)
    refuse(fault for each in lists for fault in wrong_addresses(each))
    name = description.instrument.instrument.name
    unit = description.instrument.instrument.units
    figures = made.pinned(figures_of(description, of_shop))
    judged, stops = _judged(made, figures)
    lacking = _lacking(figures, made.operations, stock_of_shop(of_shop.shop, {}))
    needs = needed(work, description.instrument)
    return _Read(name, needs, done_in(made), {}, judged, unit, stops, lacking, description.instrument)


def _judged(made: Made, figures: Figures) -> tuple[tuple[Judged, ...], tuple[str, ...]]:
    """The verdicts on the recorded work by what was measured, and the stops that come of it; without measurements it
    counts as made as drawn.
    """
    if not any(each.measured for each in made.done):
        return (), ()
    return judge(dict.fromkeys(made.operations, figures), figures), measured_stops(figures)


def done_in(made: Made) -> dict[str, datetime]:
    """When each operation of a record was done; one without a day counts as done long ago."""
    return {each.operation: _moment(each.day) for each in made.done}


def _moment(day: str) -> datetime:
    if not day:
        return datetime.min.replace(year=1970)
    if len(day) == len("2026-11-02"):
        return datetime.combine(datetime.fromisoformat(day), EVENING)
    return datetime.fromisoformat(day).replace(tzinfo=None)


def _from_store(
    store: Store,
    owner: Instrument,
    now: datetime,
    by: WorkedOut,
    on_hand: tuple[Sequence[Stock], Sequence[MadePart]],
) -> _Read:
    """An instrument from the keys of its latest revision; whether its parts fit together is not checked here."""
    latest = revision(store, owner.id)
    chosen = parse_keys(latest.text, f"revision {latest.number}")
    moments = ((each.operation, datetime.fromisoformat(each.at)) for each in operations_done(store, owner.id))
    done = {operation: moment.astimezone(now.tzinfo).replace(tzinfo=None) for operation, moment in moments}
    try:
        judged, figures, stale = by.judging(store, owner), by.figuring(store, owner), by.staling(store, owner)
        stops, lacking = measured_stops(figures), _lacking(figures, done, *on_hand)
    except MakersFault:  # its faults are reported where its figures are shown
        judged, stops, stale, lacking = (), (), {}, {}
    work = needed(work_of(store, owner.id), chosen)
    return _Read(owner.name, work, done, stale, judged, chosen.instrument.units, stops, lacking, chosen)


def _ratios(store: Store) -> Iterator[float]:
    """Hours noted over usual hours, of every instrument, finished ones too."""
    for owner in instruments(store):
        usual = work_of(store, owner.id).operations
        for each in operations_done(store, owner.id):
            if each.hours and each.operation in usual and usual[each.operation].hands:
                yield each.hours * 60.0 / usual[each.operation].hands


def _on_hand(store: Store, described: ShopDescription) -> tuple[Sequence[Stock], Sequence[MadePart]]:
    """What the store has on hand, promised or not."""
    names = {each.id: each.name for each in instruments(store)}
    return stock_of_store(store, described.shop, names, {}), tuple(made_parts(store, names))


def _lacking(
    figures: Figures, done: Collection[str], stock: Sequence[Stock], parts: Sequence[MadePart] = ()
) -> Mapping[str, str]:
    fits = [found for part in parts if (found := fit(part, figures))]
    return without_wood(figures, done, stock, fits) if stock else {}


def _bench(
    read: Iterable[_Read],
    described: ShopDescription,
    known: Places,
    now: datetime,
    said: Mapping[str, Sequence[Spell]],
    others: Sequence[Built] = (),
) -> Bench:
    shop = conditions(described.shop, known, now, usual_work().bands, said)
    pieces = pieces_now(described, known, now) if described.shop.piece else Pieces((), ())
    band = gluing_moisture(shop.bands["gluing"], known, now)
    woods = {id(piece): wood_now(piece, known, now, band) for piece in pieces.known}
    own, counted = _own_jigs(list(read), described, others)
    shop = replace(shop, jigs={**shop.jigs, **counted})
    states = tuple(_state(each, pieces, woods, now) for each in own)
    unknown = [f"{each.row.name}: {each.why}" for each in pieces.unknown]
    return Bench(shop, states, known, (*map(str, known.faults), *unknown))


def _others(store: Store, rows: Sequence[Instrument]) -> Iterator[Built]:
    """The store's other instruments, finished ones too, without their work: only their moulds and dishes may serve."""
    known = {each.id for each in rows}
    for each in instruments(store):
        if each.id not in known:
            done = frozenset(one.operation for one in operations_done(store, each.id))
            with suppress(MakersFault):
                yield Built(each.name, parse_keys(revision(store, each.id).text, each.name), Work({}, {}), done)


def _own_jigs(
    read: Sequence[_Read], described: ShopDescription, others: Sequence[Built]
) -> tuple[list[_Read], Mapping[str, int]]:
    """The instruments as read, each with moulds, forms and dishes of its own; and how many there are of each."""
    built = [Built(each.name, each.described, each.work, frozenset(each.done)) for each in read if each.described]
    works, counted = with_own_jigs((*built, *others), described.shop.jig)
    by_name = {one.name: work for one, work in zip(built, works, strict=False)}
    return [replace(each, work=by_name.get(each.name, each.work)) for each in read], counted


def _state(each: _Read, pieces: Pieces, woods: Mapping[int, WoodNow], now: datetime) -> InstrumentState:
    done = {operation: moment for operation, moment in each.done.items() if moment <= now}
    kept = pieces_of(each.name, pieces)
    wood = {part: tuple(woods[id(piece)] for piece in own) for part, own in kept.items()}
    return InstrumentState(
        each.name, each.work, done, wood, each.stale, each.judged, each.unit, each.stops, each.lacking
    )
