"""The command line: `gramil COMMAND`. Each command lives in a module of its own and is loaded when it is used."""

import atexit
import gc
import importlib
import os
import signal
import sys
from collections.abc import Mapping, Sequence
from types import FrameType

import click

from gramil import __version__
from gramil.cli.complete import ASK, answer
from gramil.cli.either_unit import in_either_unit
from gramil.cli.manners import colours, paged, settle_quiet
from gramil.cli.streams import nobody_reads_on, settle_streams

WIDE, HIGH = 80, 36
"""Letters a line and lines of what one screen shows of faults."""
STOPPED = 130
"""Exit status of a command that the maker stopped."""
COLLECT_AFTER = 200_000
"""New objects until unused ones are looked for: at the usual 700 a tenth of a short command goes by on looking."""
PLUGINS = ("PYDANTIC_DISABLE_PLUGINS", "__all__")
"""What reads descriptions looks for its plugins in every package that is installed; a command has none."""
COMMANDS: Mapping[str, tuple[str, str]] = {
    "new": ("gramil.cli.new", "Ask the few questions that matter and write a commented description."),
    "dims": ("gramil.cli.dims", "Every dimension, grouped by part."),
    "why": ("gramil.cli.why", "Why a dimension is what it is, and what hangs on it."),
    "check": ("gramil.cli.check", "Whether it can be made with what the shop has."),
    "pack": ("gramil.cli.pack", "Drawings, templates, set-up sheets and tables for the bench."),
    "book": ("gramil.cli.book", "The whole instrument on paper, as one book."),
    "shift": ("gramil.cli.shift", "What a change moves, and what made or drawn is no longer right."),
    "turn": ("gramil.cli.turn", "Turn an input until a figure is met."),
    "readback": ("gramil.cli.readback", "What measurements of finished work mean."),
    "air": ("gramil.cli.air", "The air of the shop's places: read a logger's file, see how it stands."),
    "wood": ("gramil.cli.wood", "What is known of a wood, and how it moves."),
    "ready": ("gramil.cli.ready", "Which work the wood and the air allow now, and when the rest opens."),
    "top": ("gramil.cli.top", "The top under the strings, solved: what it gives, how it swings, what a shaving does."),
    "tap": ("gramil.cli.tap", "A piece tapped or pushed: its own stiffness, in place of a handbook's."),
    "if-glued": ("gramil.cli.if_glued", "What gluing wood now, as it is, would cost later."),
    "bench": ("gramil.bench.command", "All of it in a browser, beside the vice."),
    "now": ("gramil.cli.now", "What can be done now on each instrument, and what closes the rest."),
    "weeks": ("gramil.cli.weeks", "The next weeks over all instruments, for one pair of hands."),
    "match": ("gramil.cli.match", "Which pieces on hand serve which needs, and what must be bought."),
    "done": ("gramil.cli.done", "Note an operation as done, and what a measurement means for the rest."),
    "day": ("gramil.cli.day", "Commands one after another, each without the word gramil."),
    "cost": ("gramil.cli.cost", "Hours and materials of an instrument, a plain total, a quote sheet."),
    "sheet": ("gramil.cli.sheet", "The set-up sheet of one operation."),
    "store": ("gramil.cli.store", "The shop's record in one file: make, fill, copy, prove, take back."),
    "trace": ("gramil.cli.trace", "The body's outline from a photograph of its plan, or from a flat scan."),
    "schema": ("gramil.cli.schema", "Lay the schemas for editors and programs into a folder."),
    "show": ("gramil.cli.show", "Open a drawing, or what was made, in the viewer that the system has."),
    "follow": ("gramil.cli.follow", "Derive and draw again whenever a description is saved; say what moved."),
    "completion": ("gramil.cli.completion", "Lines by which a shell completes gramil's words."),
    "demo": ("gramil.cli.demo", "Build the bundled instruments' packs."),
}
"""Command: its module and its one line of help, so that the list needs no module loaded."""


class Commands(click.Group):
    """A group that imports a command's module only when that command is run or asked for help."""

    def parse_args(self, ctx: click.Context, args: list[str]) -> list[str]:
        return super().parse_args(ctx, settle_quiet(ctx, args))

    def list_commands(self, ctx: click.Context) -> list[str]:
        return list(COMMANDS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        if cmd_name not in COMMANDS:
            return None
        module, short_help = COMMANDS[cmd_name]
        command: click.Command = in_either_unit(importlib.import_module(module).command)
        command.short_help = short_help
        return command

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        with formatter.section("Commands"):
            formatter.write_dl([(name, short_help) for name, (_, short_help) in COMMANDS.items()])

    def of_the_store(self, ctx: click.Context) -> tuple[str, ...]:
        """The commands of `gramil store`, before which the word store may be left out."""
        store = self.get_command(ctx, "store")
        return (
            tuple(each for each in store.list_commands(ctx) if each not in COMMANDS)
            if isinstance(store, click.Group)
            else ()
        )

    def resolve_command(
        self, ctx: click.Context, args: list[str]
    ) -> tuple[str | None, click.Command | None, list[str]]:
        if args and args[0] not in COMMANDS:
            of_the_store = self.of_the_store(ctx)
            if args[0] in of_the_store:
                return super().resolve_command(ctx, ["store", *args])
            from difflib import get_close_matches

            if near := get_close_matches(args[0], (*COMMANDS, *of_the_store), 1):
                ctx.fail(f"No command {args[0]!r}. Nearest: {near[0]}.")
        return super().resolve_command(ctx, args)


@click.group(cls=Commands, context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 100})
@click.version_option(__version__, message="gramil %(version)s")
@click.option("-q", "--quiet", is_flag=True, help="The answer alone, wherever it stands: no word of what was found.")
def gramil(quiet: bool) -> None:
    """One description of a guitar and one of the shop: every dimension, why it is so, whether it can be made,
    drawings to cut by and set-up sheets for the bench.

    \b
    gramil new tarn.toml --name Tarn --length "630 mm"
    gramil check tarn.toml --shop shop.toml
    gramil pack tarn.toml --shop shop.toml --out out
    """


in_either_unit(gramil)


def _cannot(error: OSError) -> str:
    """What the system refused to do with a file or folder, called by the name that the maker gave it."""
    from gramil.written_file import place_of

    named = place_of(str(error.filename)) if error.filename else "A file"
    return f"{named}: {error.strerror or error}. Name another place, or free this one."


def _on_a_screen(paragraphs: Sequence[str]) -> str:
    """As many faults as fit a screen, and how many more there are: they are mended a few at a time."""
    told, lines = list[str](), 0
    for each in paragraphs:
        lines += -(-len(each) // WIDE) + 1
        if told and lines > HIGH:
            break
        told.append(each)
    more = len(paragraphs) - len(told)
    return "\n\n".join([*told, *([f"And {more} more. Mend these first, then look again."] if more else [])])


def _heed_being_stopped() -> None:
    """When told to stop, or when its window is closed, a command ends as if interrupted, leaving nothing half made."""
    for name in ("SIGTERM", "SIGHUP"):
        number = getattr(signal, name, None)  # some systems have only one of these signals
        if number is not None and signal.getsignal(number) is signal.SIG_DFL:
            signal.signal(number, _stop)


def _stop(number: int, _: FrameType | None) -> None:
    sys.exit(128 + number)


def main() -> None:
    """Run the command line; what the maker can mend is said plainly on the error stream, with exit status 2."""
    gc.set_threshold(COLLECT_AFTER)
    atexit.register(gc.freeze)  # nothing is looked through for unused objects as the program ends: a fifth of its time
    os.environ.setdefault(*PLUGINS)
    settle_streams()
    _heed_being_stopped()
    if sys.argv[1:2] == [ASK]:
        answer(sys.argv[2:])
    elif (code := run()) is not None:
        sys.exit(code)


def run(words: Sequence[str] | None = None) -> str | int | None:
    """Run one command, the program's own words if none are given; what goes wrong is said on the error stream.

    The answer is the exit status with which it ended before its end, or None.
    """
    output, given = sys.stdout, None if words is None else list(words)
    try:
        with paged(sys.argv[1:] if given is None else given):
            gramil(args=given, standalone_mode=False, color=colours(os.environ))
    except click.ClickException as error:
        error.show()
        return error.exit_code
    except click.Abort:
        click.echo("Stopped.", err=True)
        return STOPPED
    except click.exceptions.Exit as stop:
        return stop.exit_code
    except SystemExit as stop:
        # click replaces a stream that nobody reads any more with another
        return 0 if sys.stdout is not output or nobody_reads_on(stop.__context__) else stop.code
    except OSError as error:
        if nobody_reads_on(error):
            sys.stderr.close()
            return 0
        click.echo(_cannot(error), err=True)
        return 2
    except Exception as error:
        from gramil.faults import MakersFault

        if not isinstance(error, MakersFault):
            raise
        click.echo(_on_a_screen(list(map(str, error.faults))), err=True)
        return 2
    return None
