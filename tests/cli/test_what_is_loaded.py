"""What a command does not need is not loaded: the large libraries cost more than the figures."""

import subprocess
import sys
from importlib.resources import files

EXAMPLES = files("gramil") / "data" / "examples"
LARGE = {"scipy", "ezdxf", "fontTools", "typst", "starlette", "uvicorn", "jinja2", "PIL", "pypdfium2"}
PROGRAM = """
import contextlib, io, sys
from gramil.cli import main
file, *commands = sys.argv[1:]
for command in commands:
    sys.argv = ["gramil", *command.split(), file]
    told = io.TextIOWrapper(io.BytesIO(), encoding="utf-8")
    with contextlib.suppress(SystemExit), contextlib.redirect_stdout(told):
        main()
    told.flush()
    print(command, bool(told.buffer.getvalue()), *{name.partition(".")[0] for name in sys.modules}, sep="|")
"""
COMMANDS = ("why slot_depth_setting", "check", "dims", "now")


def test_figures_in_words_load_no_large_library() -> None:
    """One command after another in one program: what one loads is there at its end, and at that of those after it."""
    asked = [sys.executable, "-c", PROGRAM, str(EXAMPLES / "tarn.toml"), *COMMANDS]
    rows = subprocess.run(asked, capture_output=True, text=True, check=True).stdout.splitlines()
    assert tuple(row.split("|")[0] for row in rows) == COMMANDS
    for row in rows:
        command, told, *loaded = row.split("|")
        assert told == "True", command
        assert "numpy" in loaded
        assert LARGE.isdisjoint(loaded), command


def test_a_bench_that_is_opened_loads_what_it_serves_with_and_no_more() -> None:
    """The first page waits for all that its application imports: drawing files and solvers come when asked for."""
    program = "import sys, gramil.bench.application; print(*sorted({name.partition('.')[0] for name in sys.modules}))"
    loaded = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, check=True).stdout.split()
    assert "starlette" in loaded
    assert (LARGE - {"starlette", "uvicorn", "jinja2"}).isdisjoint(loaded)
