"""`gramil sheet`: the set-up sheet of one operation, by what is drawn or by what is made."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import datetime
from pathlib import Path

import click

from gramil import names as n
from gramil.answers.noted import SheetAnswer
from gramil.cli.json_option import answers_in_lines
from gramil.cli.last_list import TODAY
from gramil.cli.options import as_made_option, file_to_make, opened_with_work, shop_file, with_the_top
from gramil.cli.options import paper as paper_option
from gramil.cli.store_options import moment, moment_of, refuse_two_shops, store_file
from gramil.cli.which_shop import store_by_itself
from gramil.description.problems import did_you_mean, nearest
from gramil.faults import MakersFault
from gramil.file_names import file_name
from gramil.formatter import Formatter, formatter_of
from gramil.graph import Figures
from gramil.pack import sheet_paper, single_sheet
from gramil.sheets.own_sheet import every_sheet, sheet_named
from gramil.sheets.sheet import Sheet
from gramil.sheets.sheet_pages import made_lines
from gramil.shop.operations import Work
from gramil.store.opening import Store, open_store
from gramil.store.writing import Hand

OF_THE_TOP = ("top-under-strings", "voice-top")
"""The sheets of the solved top, which is worked out only when one of them is asked for."""
GIVEN = "Noted as given out, as it is printed."
NOT_GIVEN = "Not noted as given out: print it again when braces, top or strings have changed."


@click.command()
@click.argument("operation")
@click.argument("file", nargs=-1)
@shop_file
@store_file
@as_made_option
@moment
@file_to_make(
    "--out", ending=".pdf", what="The PDF to write; after instrument and operation, in this folder, if not given."
)
@paper_option("--paper", "Paper")
def command(
    operation: str,
    file: tuple[str, ...],
    shop: Path | None,
    store: Path | None,
    made: bool,
    at: str | None,
    out: Path | None,
    paper: str | None,
) -> tuple[SheetAnswer, ...]:
    """The sheet of OPERATION on the instrument in FILE. With a store, FILE is an instrument's name, the figures are
    as made, and the sheet counts as given out: when something else would be printed on it, `gramil now` says so.

    OPERATION may be numbers of the list that `gramil now` showed last, or `today` for all that it showed as open; then
    no FILE is named.

    As made, a sheet goes by what was measured before its operation; what was measured at it stands beside the setting.

    \b
    gramil sheet slotted tarn.toml --shop shop.toml --out slot.pdf
    gramil sheet slotted Tarn --store shop.gramil --out slot.pdf
    gramil sheet 3
    gramil sheet today
    """
    if operation.isdecimal() or operation == TODAY:
        with open_store(store_by_itself(store)) as record:
            found = _of_the_list(record, (operation, *file), out, paper, moment_of(at))
    elif len(file) != 1:
        raise click.UsageError("name the instrument, or a number of the list that gramil now showed")
    elif store is None or shop is not None:
        refuse_two_shops(shop, store)
        figures, _, work = opened_with_work(Path(file[0]), shop, made)
        figures = with_the_top(figures, operation in OF_THE_TOP)
        formatter = formatter_of(figures)
        place = out or sheet_file(str(figures[n.instrument_name]), operation)
        found = [_written(_sheet(figures, operation, work), operation, formatter, place, paper)]
    else:
        with open_store(store) as record:
            place = out or sheet_file(file[0], operation)
            found = [_given(record, file[0], operation, place, paper, moment_of(at))]
    for line in (line for each in found for line in _lines(each)):
        click.echo(line)
    if not found:
        click.echo("Nothing on that list has a sheet.")
    return tuple(found)


def _lines(told: SheetAnswer) -> Iterator[str]:
    """What is said of a sheet: where it is, what was measured, and whether it is handed out."""
    yield f"{told.title}: {told.path}"
    yield from (f"  {line}" for line in told.measured)
    if told.handed_out is not None:
        yield GIVEN if told.handed_out else NOT_GIVEN
    if told.hangs_on:
        yield told.hangs_on


def sheet_file(instrument: str, operation: str) -> Path:
    """What the file of a sheet is called if the maker does not say."""
    return Path(f"{file_name(f'{instrument}-{operation}')}.pdf")


def _of_the_list(
    store: Store, numbers: tuple[str, ...], out: Path | None, paper: str | None, now: datetime
) -> list[SheetAnswer]:
    """The sheets of lines that were shown last; of the whole list, those alone that have a sheet."""
    from gramil.cli.last_list import lines_meant, still_listed

    meant = [each for each in lines_meant(store, numbers) if each.sheet or numbers != (TODAY,)]
    if out is not None and len(meant) > 1:
        raise click.UsageError("several sheets do not go into one --out: leave it out")
    found = [
        _given(store, each.instrument, each.operation, out or sheet_file(each.instrument, each.operation), paper, now)
        for each in meant
    ]
    still_listed(store)
    return found


def _written(sheet: Sheet, operation: str, formatter: Formatter, out: Path, paper: str | None) -> SheetAnswer:
    """The sheet as a file, and the measured values of its figures."""
    setup = sheet.setup
    if setup.closed:
        raise MakersFault.of(f"{setup.title}: this instrument does not need it", formatter.filled(setup.closed))
    content = single_sheet(sheet, formatter, paper or sheet_paper(sheet.figures))
    out.write_bytes(content)
    name, measured = str(sheet.figures[n.instrument_name]), tuple(made_lines(sheet, formatter))
    return SheetAnswer(name, operation, setup.title, str(out), len(content), None, "", measured)


def _sheet(figures: Figures, operation: str, work: Work) -> Sheet:
    """The sheet of an operation, or the set-up of that name. Raises MakersFault if there is none."""
    found = sheet_named(operation, figures, work)
    if found is not None:
        return found
    what = f"there is no sheet for {operation}"
    if operation in work.operations:
        raise MakersFault.of(what, "nothing is set at it, and nothing to be minded")
    if operation in work.left_out:
        raise MakersFault.of(what, f"this instrument does not need it: {work.left_out[operation]}")
    near = nearest(operation, [*work.operations, *(sheet.setup.name for sheet in every_sheet(figures, work))])
    raise MakersFault.of(what, remedy=did_you_mean(near) or "see the work that gramil now --every lists")


def _given(store: Store, name: str, operation: str, out: Path, paper: str | None, now: datetime) -> SheetAnswer:
    """The sheet as a file, noted as given out; one of the solved top is not, since whether it still holds would take
    solving the top at every `gramil now`.
    """
    from gramil.acts.sheets import hand_out
    from gramil.change.in_store import figures_in_store, work_in_store
    from gramil.change.made_in_store import standing_in_store
    from gramil.now.lost_work import hangs_on
    from gramil.shop.instruments import instrument
    from gramil.shop.operations_done import operations_done

    owner = instrument(store, name)
    figures, work = with_the_top(figures_in_store(store, owner), operation in OF_THE_TOP), work_in_store(store, owner)
    sheet = _sheet(figures, operation, work)
    written = _written(sheet, operation, formatter_of(figures), out, paper)
    if operation in OF_THE_TOP:
        return replace(written, handed_out=False)
    hand_out(store, owner, [sheet], Hand(now))
    done = {each.operation: each for each in operations_done(store, owner.id)}
    judged = standing_in_store(store, owner)
    lost = hangs_on(operation, work, done, judged, formatter_of(figures).first)
    return replace(written, handed_out=True, hangs_on=lost)


answers_in_lines(command, "sheet")
