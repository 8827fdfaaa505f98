"""`gramil top`: the top under the strings, solved: what the pull does, how it swings, what a shaving does."""

import math
import re
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

import click

from gramil import names as n
from gramil.cli.json_option import json_option, write_answer
from gramil.cli.options import as_made_option, instrument_file, opened, shop_file, shop_of
from gramil.cli.store_options import refuse_two_shops, store_file
from gramil.cli.top_pushed import kept_push, with_push
from gramil.cli.verdicts import verdict
from gramil.decimals import signed
from gramil.faults import MakersFault
from gramil.findings.finding import Finding
from gramil.formatter import Formatter, formatter_of, shown
from gramil.graph import Figures
from gramil.measure import LengthUnit, show_change
from gramil.prints.whole import findings_of

if TYPE_CHECKING:
    from gramil.description.wood.tried_tables import FinishedTable
    from gramil.prints.top_rows import TopRow
    from gramil.top.advice import Advice

HEARD = re.compile(r"\s*(\d+)\s*=\s*(\d+(?:\.\d+)?)\s*(?:Hz)?\s*", re.IGNORECASE)
TURNED = re.compile(r"\s*(\d+(?:\.\d+)?)\s*(?:deg|degrees|°)?\s*", re.IGNORECASE)


@click.command()
@instrument_file
@shop_file
@store_file
@as_made_option
@click.option("--against", type=click.Path(path_type=Path), help="Another instrument's description, set beside it.")
@click.option("--like", metavar="NAME", help="A finished top of yours ([[finished]] of the shop), set beside it.")
@click.option("--back", is_flag=True, help="The back's modes as well, by the same code.")
@click.option("--push", metavar="WEIGHT", help='A weight laid on the strung guitar\'s saddle, "2000 g"; with --given.')
@click.option("--given", metavar="LENGTH", help="How far the saddle gave under it, by a dial gauge.")
@click.option("--turn", metavar="DEGREES", help="How far the bridge is to turn: says what to take off which brace.")
@click.option("--mode", metavar="NUMBER=HZ", help="What a mode is to sound (1=190): says what to take off which brace.")
@click.option(
    "--brace", "braces", multiple=True, metavar="NAME", help="The brace to shave for that; several are shaved alike."
)
@json_option
def command(
    file: Path,
    shop: Path | None,
    store: Path | None,
    made: bool,
    against: Path | None,
    like: str | None,
    back: bool,
    push: str | None,
    given: str | None,
    turn: str | None,
    mode: str | None,
    braces: tuple[str, ...],
    as_json: bool,
) -> None:
    """The top of the instrument in FILE under its strings, as a braced plate: elastic, at once, on a rigid rim.

    With a store, FILE (and what it is set against) is an instrument's name, the figures are as made, and a push is
    written down there.

    \b
    gramil top tarn.toml --shop shop.toml
    gramil top tarn.toml --against tarn-plan.toml
    gramil top tarn.toml --like "number 12" --shop shop.toml
    gramil top Tarn --store shop.gramil --push "2000 g" --given 0.16mm
    gramil top tarn.toml --turn 0.85
    gramil top tarn.toml --mode 1=190 --brace "X treble" --brace "X bass"
    """
    if turn and mode:
        raise click.UsageError("--turn or --mode, one at a time")
    asked = _turn(turn) if turn else _mode(mode) if mode else None
    refuse_two_shops(shop, store)
    if braces and not asked:
        raise click.UsageError("--brace goes with --turn or --mode")
    if like and against:
        raise click.UsageError("--like or --against, one at a time")
    if bool(push) != bool(given):
        raise click.UsageError("a push is --push and --given together")
    finished = _finished(like, shop, store) if like else None
    if finished is not None:
        against = _its_file(finished.instrument, shop, store)
    files = (file, against) if against is not None else (file,)
    tops = [_solvable(_figures(each, shop, store, made and each is file)) for each in files]
    if push and given:
        tops[0], row = with_push(tops[0], push, given)
        for line in kept_push(row, store):
            click.echo(line, err=as_json)
    advice = _advised(tops[0], braces, *asked) if asked else None
    if as_json:
        from gramil.answers.answer import whose
        from gramil.answers.top import TopAnswer, advice_answer, top_of

        carried_out = None if advice is None else advice_answer(advice)
        answer = TopAnswer(tuple(top_of(each, _verdicts(each)) for each in tops), carried_out)
        write_answer("top", [whose(each) for each in tops], answer)
        return
    for line in report(tops) if advice is None else advice_lines(advice, tops[0]):
        click.echo(line)
    for line in (*(back_lines(tops[0]) if back else ()), *(finished_lines(finished) if finished else ())):
        click.echo(line)


def _figures(file: Path, shop: Path | None, store: Path | None, made: bool) -> Figures:
    """The figures of an instrument in a file, or of that name in the store, as made."""
    if store is None:
        return opened(file, shop, made)[0]
    from gramil.change.in_store import figures_in_store
    from gramil.shop.instruments import instrument
    from gramil.store.opening import open_store

    with open_store(store, to_read=True) as record:
        return figures_in_store(record, instrument(record, str(file)))


def _finished(name: str, shop: Path | None, store: Path | None) -> "FinishedTable":
    """The finished top of that name. Raises MakersFault if the shop has none."""
    rows = shop_of(shop, store).finished
    found = next((each for each in rows if each.name == name), None)
    if found is None:
        named = ", ".join(each.name for each in rows) or "none"
        remedy = "write it down on the page of tools, or as [[finished]] in the shop's file"
        raise MakersFault.of(f'no finished top "{name}"', f"the shop's: {named}", remedy)
    return found


def _its_file(instrument: str, shop: Path | None, store: Path | None) -> Path:
    """The instrument's name in the store, or its description's file beside the shop's."""
    if store is not None or shop is None:
        return Path(instrument)
    beside = shop.parent / instrument
    return beside if beside.suffix == ".toml" else beside.with_name(f"{beside.name}.toml")


def back_lines(figures: Figures) -> Iterator[str]:
    """The back's modes."""
    yield click.style("THE BACK, on a rigid rim, nothing but the back moving", bold=True)
    for each in figures[n.rear_modes]:
        yield _row(each.name, [f"{each.hertz:.0f} Hz ± {each.within:.0f}; {each.least:.0f} to {each.most:.0f}"])
    yield from (f"  {line}" for line in figures[n.timber_back].told)


def finished_lines(row: "FinishedTable") -> Iterator[str]:
    """What was measured on a finished top, and what its maker says of it: worth more than any limit."""
    yield click.style(f"{row.name}, as it was measured", bold=True)
    yield f"  its bridge turned {'so far: ' + shown(row.turn, 'rad') if row.turn is not None else 'not measured'}"
    yield f"  its own lowest note, strung: {f'{row.first:.0f} Hz' if row.first is not None else 'not measured'}"
    if row.years is not None:
        yield f"  {row.years:g} years under the strings"
    if row.words:
        yield f"  {row.words}"


def _turn(written: str) -> tuple[float | None, int, float | None]:
    found = TURNED.fullmatch(written)
    if not found:
        raise click.BadParameter(f"{written!r} is not a number of degrees such as 0.85", param_hint="--turn")
    return math.radians(float(found[1])), 0, None


def _mode(written: str) -> tuple[float | None, int, float | None]:
    from gramil.top.braced import MODES

    found = HEARD.fullmatch(written)
    if not found or not 1 <= int(found[1]) <= MODES:
        raise click.BadParameter(
            f"{written!r} is not a mode's number from 1 to {MODES} and its frequency, such as 1=190",
            param_hint="--mode",
        )
    return None, int(found[1]) - 1, float(found[2])


def _solvable(figures: Figures) -> Figures:
    """The figures with the solved top among them. Raises MakersFault for one that cannot be solved."""
    from gramil.prints.solved import with_top

    found = with_top(figures)
    if not found[n.braced_top]:
        raise MakersFault.of(
            f"{found[n.instrument_name]}: no body is described",
            "a top is solved on its outline, with its braces and its bridge",
            "describe the body (`[body]`, `[[brace]]`)",
        )
    faults = [each.fault for each in (*found[n.braced_coarse], *found[n.braced_fine]) if each.fault is not None]
    if faults:
        raise MakersFault(faults[:1])
    return found


def _verdicts(figures: Figures) -> tuple[Finding, ...]:
    """The verdicts on the solved top alone."""
    graph = figures.graph
    own = {name for name, each in graph.dimensions.items() if each.part == "verdicts"}
    judged = {str(each.figure) for name in own for each in figures[name]}
    return tuple(each for each in findings_of(figures) if str(each.figure) in judged)


def report(tops: list[Figures]) -> Iterator[str]:
    """The top's figures, or two instruments' side by side, then modes, shavings, verdicts, and what is not said."""
    from gramil.prints.top_rows import NOT_SAID, PULLED, WITH_AIR, woods_in_words
    from gramil.top.pull import RIGID

    formatters = [formatter_of(each) for each in tops]
    yield click.style(f"{' against '.join(str(each[n.instrument_name]) for each in tops)}: {RIGID}", bold=True)
    for row in PULLED:
        yield _row(row.what, [_text(row, each) for each in formatters])
    yield click.style("MODES, nothing but the top moving", bold=True)
    yield from _modes(tops, formatters)
    for row in WITH_AIR:
        yield _row(row.what, [_text(row, each) for each in formatters])
    yield from _shavings(tops[0], formatters[0])
    yield from _placing(tops[0], formatters[0])
    yield click.style("VERDICTS, against settings of practice that have no source", bold=True)
    for figures, formatter in zip(tops, formatters, strict=True):
        if len(tops) > 1:
            yield f"  {figures[n.instrument_name]}"
        yield from (line for each in _verdicts(figures) for line in verdict(each, formatter))
    yield from _pushes(tops, formatters)
    yield from _rise(tops, formatters[0].first)
    for figures in tops:
        yield from (f"  {line}" for line in woods_in_words(figures))
    yield from (f"  {line}" for line in NOT_SAID)


def _pushes(tops: list[Figures], formatters: list[Formatter]) -> Iterator[str]:
    """Pushes on strung guitars, beside the same pushes solved."""
    from gramil.prints.top_rows import pushes_in_words

    lines = [line for pair in zip(tops, formatters, strict=True) for line in pushes_in_words(*pair)]
    if lines:
        yield click.style("PUSHED with a dial gauge, the rim held", bold=True)
    yield from (f"  {line}" for line in lines)


def _text(row: "TopRow", formatter: Formatter) -> str:
    from gramil.prints.top_rows import row_text

    return row_text(row, formatter)


def _row(what: str, texts: list[str]) -> str:
    return f"  {what:<48} " + "".join(f"{each:<46}" for each in texts).rstrip()


def _modes(tops: list[Figures], formatters: list[Formatter]) -> Iterator[str]:
    from gramil.prints.top_rows import picture_words

    for number, (mode, picture) in enumerate(zip(tops[0][n.mode_list], tops[0][n.mode_pictures], strict=True)):
        rows = [each[n.mode_list][number] for each in tops]
        texts = [f"{each.hertz:.0f} Hz ± {each.within:.0f}; {each.least:.0f} to {each.most:.0f}" for each in rows]
        yield _row(mode.name, texts)
        if len(tops) == 1:
            yield click.style(f"      {picture_words(picture, formatters[0])}", dim=True)


def _shavings(figures: Figures, formatter: Formatter) -> Iterator[str]:
    from gramil.prints.top_rows import shaving_rows

    unit = formatter.first
    yield click.style(f"FOR {shown(1.0, 'mm', unit)} OFF EACH, twins alike", bold=True)
    heads = ("bridge turns", "sinks", "rises", "1st mode", "2nd", "3rd", "it still has")
    yield f"  {'':<24}" + "".join(f"{each:>14}" for each in heads)
    for each in shaving_rows(figures):
        turned = f"{signed(math.degrees(each.turn), 3)}°"
        lengths = [show_change(value, unit) for value in (each.sink, each.rise)]
        modes = [f"{signed(value, 2)} Hz" for value in (each.first, each.second, each.third)]
        room = "" if math.isnan(each.room) else shown(each.room, "mm", unit)
        yield f"  {each.name:<24}" + "".join(f"{text:>14}" for text in (turned, *lengths, *modes, room))


def _rise(tops: list[Figures], unit: LengthUnit) -> Iterator[str]:
    """What the rise that the neck is set for would be by the other top, with the key to write."""
    from gramil.prints.top_rows import rise_in_words

    lines = [line for other in tops[1:] for line in rise_in_words(tops[0], other, unit)]
    if lines:
        yield click.style("THE RISE THAT THE NECK IS SET FOR, by the other", bold=True)
    yield from (f"  {line}" for line in lines)


def _placing(figures: Figures, formatter: Formatter) -> Iterator[str]:
    """What a brace's width and place do, for the braces that are not glued yet."""
    from gramil.prints.top_rows import BEFORE_GLUING, wider_and_aside

    step = shown(1.0, "mm", formatter.first)
    yield click.style(f"BEFORE THEY ARE GLUED: {step} wider, and {step} square to itself toward the tail", bold=True)
    yield f"  {'':<24}" + "".join(f"{each:>14}" for each in ("wider: turns", "1st mode", "moved: turns", "1st mode"))
    for each in figures[n.shaving_list]:
        yield f"  {each.name:<24}" + "".join(f"{text:>14}" for text in wider_and_aside(each))
    yield f"  {BEFORE_GLUING}"


def _advised(figures: Figures, braces: tuple[str, ...], turn: float | None, mode: int, hertz: float | None) -> "Advice":
    """What to take off for what is asked; without a brace named, of the one that needs least for it."""
    from gramil.top.advice import ShavingGoal, advised

    top, changes = figures[n.braced_final][0], figures[n.shaving_changes][0]
    asked = ShavingGoal(turn, mode, hertz)
    return advised(top, changes, braces or _strongest(figures, turn is not None, mode), asked)


def _strongest(figures: Figures, turns: bool, mode: int) -> tuple[str, ...]:
    """The brace, twins together, whose height moves what is asked for most."""
    changes = {each.name: each.higher for each in figures[n.shaving_changes][0].bars}

    def moved(names: tuple[str, ...]) -> float:
        own = [changes[each] for each in names if each in changes]
        return abs(sum(float(each.quantities[0] if turns else each.frequencies[mode]) for each in own))

    return max(figures[n.shaving_groups], key=moved)


def advice_lines(advice: "Advice", figures: Figures) -> Iterator[str]:
    """What to take off, what comes of it, and what else moves."""
    from gramil.top.pull import RIGID

    unit = formatter_of(figures).first
    way = f"take {_amount(advice.off, unit)} off" if advice.off > 0 else f"add {_amount(-advice.off, unit)} to"
    named = " and ".join(advice.braces)
    yield click.style(f"{way[:1].upper()}{way[1:]} {named}: solved again with it, {RIGID}", bold=True)
    yield f"  the derivative alone would say {_amount(abs(advice.by_first_order), unit)}"
    yield (
        f"  that leaves {_amount(advice.room - advice.off, unit)} to shave"
        if advice.off > 0
        else ("  what is glued and shaped already cannot be added to: choose the height before it is cut")
    )
    before, after = advice.before, advice.after
    yield f"  the bridge turns {math.degrees(before.turn):.2f}° -> {math.degrees(after.turn):.2f}°"
    for what, old, new in (("sinks", before.sink, after.sink), ("rises", before.rise, after.rise)):
        yield f"  {what} {_amount(old, unit)} -> {_amount(new, unit)}"
    for each in advice.modes:
        yield f"  {each.name:<8} {each.before:.1f} -> {each.after:.1f} Hz"
    yield from (f"  Heed: {line}." for line in advice.warnings)


def _amount(value: float, unit: LengthUnit) -> str:
    return shown(value, "mm", unit)
