"""The typesetter: a template and its data to a PDF, in a process of its own.

Typst keeps what it has set in memory, some 170 MB for a build book; in a process that ends with the page, a bench that
is open for weeks stays small.
"""

import json
import subprocess
import sys
from collections.abc import Mapping
from importlib.resources import as_file, files

from gramil.notice import NOTICE


def typeset(template: str, data: Mapping[str, object]) -> bytes:
    """The PDF of a template of this room with its data, which can be written as JSON; the same input gives the same
    bytes.

    Every template gets the text for the foot of each page, as `promise`.
    """
    here = files("gramil")
    with as_file(here / "sheets" / template) as file, as_file(here / "fonts") as fonts:
        command = [sys.executable, "-m", "gramil.sheets.typeset", str(file), str(fonts)]
        done = subprocess.run(
            command, input=json.dumps({**data, "promise": NOTICE}).encode(), capture_output=True, check=False
        )
    if done.returncode:
        raise RuntimeError(done.stderr.decode(errors="replace"))
    return done.stdout


def _main() -> None:
    import typst

    _, file, fonts = sys.argv
    inputs = {"data": sys.stdin.buffer.read().decode()}
    pdf = typst.compile(
        file, format="pdf", font_paths=[fonts], ignore_system_fonts=True, sys_inputs=inputs, timestamp=0
    )
    sys.stdout.buffer.write(pdf)


if __name__ == "__main__":
    _main()
