"""What a command does not need is not loaded: the large libraries cost more than the figures."""

import subprocess
import sys
from importlib.resources import files

import pytest

EXAMPLES = files("gramil") / "data" / "examples"
LARGE = {"scipy", "ezdxf", "fontTools", "typst", "starlette", "uvicorn", "jinja2", "PIL", "pypdfium2"}
PROGRAM = """
import sys
from gramil.cli import main
sys.argv = ["gramil", *sys.argv[1:]]
try:
    main()
finally:
    print("loaded", *sorted({name.partition(".")[0] for name in sys.modules}), file=sys.stderr)
"""


@pytest.mark.parametrize("command", [["why", "slot_depth_setting"], ["check"], ["dims"], ["now"]])
def test_figures_in_words_load_no_large_library(command: list[str]) -> None:
    asked = [*command, str(EXAMPLES / "tarn.toml")]
    answered = subprocess.run([sys.executable, "-c", PROGRAM, *asked], capture_output=True, text=True, check=False)
    assert answered.stdout
    loaded = next(line for line in answered.stderr.splitlines() if line.startswith("loaded ")).split()
    assert "numpy" in loaded
    assert LARGE.isdisjoint(loaded)


def test_a_bench_that_is_opened_loads_what_it_serves_with_and_no_more() -> None:
    """The first page waits for all that its application imports: drawing files and solvers come when asked for."""
    program = "import sys, gramil.bench.application; print(*sorted({name.partition('.')[0] for name in sys.modules}))"
    loaded = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, check=True).stdout.split()
    assert "starlette" in loaded
    assert (LARGE - {"starlette", "uvicorn", "jinja2"}).isdisjoint(loaded)
