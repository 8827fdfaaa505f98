"""The typesetter: a template and its data to a PDF, in a process of its own.

Typst keeps what it has set in memory, some 170 MB for a build book; in a process that ends with the page, a bench that
is open for weeks stays small.
"""

import json
import re
import subprocess
import sys
from collections.abc import Mapping
from importlib.resources import as_file, files

from gramil.notice import NOTICE

CATALOGUE = re.compile(rb"/ViewerPreferences<<.*?>>")
TRAILER = re.compile(rb"trailer\n<</Size (\d+)/Root (\d+) 0 R(.*)>>\nstartxref\n(\d+)\n%%EOF\s*\Z", re.DOTALL)


def typeset(template: str, data: Mapping[str, object]) -> bytes:
    """The PDF of a template among the sheets with its data, which can be written as JSON, to be printed at true scale.

    Every template gets the text for the foot of each page, as `promise`. The same input gives the same bytes.
    """
    here = files("gramil")
    with as_file(here / "sheets") as templates, as_file(here / "fonts") as fonts:
        command = [sys.executable, "-m", "gramil.typeset", str(templates / template), str(fonts)]
        done = subprocess.run(
            command, input=json.dumps({**data, "promise": NOTICE}).encode(), capture_output=True, check=False
        )
    if done.returncode:
        raise RuntimeError(done.stderr.decode(errors="replace"))
    return printed_unscaled(done.stdout)


def printed_unscaled(pdf: bytes) -> bytes:
    """The typesetter's file with one more instruction to the printing program, which the typesetter cannot give: print
    at 100 %.

    It is appended as the format prescribes: the catalogue again, where that lies, and where the table before it begins.
    Raises ValueError if the file is not as the typesetter writes it.
    """
    found = TRAILER.search(pdf)
    start = pdf.rfind(b"\n%s 0 obj\n" % found[2]) + 1 if found else 0
    if found is None or not start:
        raise ValueError("the typesetter's file does not end as it did")
    size, root, rest, before = found.groups()
    asked, end = b"/ViewerPreferences<</Direction/L2R/PrintScaling/None>>", pdf.index(b"endobj", start)
    catalogue, times = CATALOGUE.subn(asked, pdf[start:end])
    if times != 1:
        raise ValueError("the typesetter's catalogue holds no preferences")
    list_at = len(pdf) + 1 + len(catalogue) + len(b"endobj\n")
    entry = b"xref\n%s 1\n%010d 00000 n\r\n" % (root, len(pdf) + 1)
    trailer = b"trailer\n<</Size %s/Root %s 0 R%s/Prev %s>>\nstartxref\n%d\n%%%%EOF\n"
    return b"".join((pdf, b"\n", catalogue, b"endobj\n", entry, trailer % (size, root, rest, before, list_at)))


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
