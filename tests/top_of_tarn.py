"""*Tarn*'s solved top, worked out once for all tests that ask for it."""

from functools import cache
from importlib.resources import files

from gramil.graph import Figures
from gramil.prints import solved
from gramil.prints.whole import figures_of_files

EXAMPLES = files("gramil") / "data" / "examples"


@cache
def top_of_tarn() -> Figures:
    """The figures of *Tarn* in the demonstration shop, with those of its top."""
    return solved.with_top(figures_of_files(str(EXAMPLES / "tarn.toml"), str(EXAMPLES / "shop.toml")))
