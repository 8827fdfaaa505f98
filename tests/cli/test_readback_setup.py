"""`gramil readback setup`, run as the maker runs it."""

import subprocess
from importlib.resources import files
from pathlib import Path

import pytest

from ..in_process import gramil

READINGS = """string,what,value
1,cents@12,2.4
1,cents@5,1.5
1,cents@1,1.0
1,action,2.1
1,nut@1,0.45
1,saddle_height,3.0
6,action@12,2.1
,relief,0.15
"""


@pytest.fixture
def bench(tmp_path: Path) -> Path:
    """A folder with an example instrument and readings of it."""
    text = (files("gramil") / "data" / "examples" / "tarn.toml").read_text(encoding="utf-8")
    (tmp_path / "tarn.toml").write_text(text, encoding="utf-8")
    (tmp_path / "readings.csv").write_text(READINGS, encoding="utf-8")
    return tmp_path


def read_back(bench: Path) -> subprocess.CompletedProcess[str]:
    return gramil(bench, "readback", "setup", "tarn.toml", "readings.csv")


def test_each_string_gets_its_work(bench: Path) -> None:
    done = read_back(bench)
    assert done.returncode == 0, done.stderr
    said = done.stdout
    assert "leave the truss rod" in said
    first, sixth = said.split("String 1\n")[1].split("String 6\n")
    assert "action        2.10 mm, wanted 1.80 mm: take" in first
    assert "off the saddle" in first
    assert "0.36 mm a cent at the octave" in first
    assert "toward the tail" in first
    assert "±" in first
    assert "build the saddle up by 0.61 mm" in sixth, "0.3 mm too low at fret 12 is 0.3 x 635.4 / 315 where it breaks"
    assert "stretch" not in sixth


def test_faults_are_said_with_their_lines(bench: Path) -> None:
    (bench / "readings.csv").write_text(READINGS.replace("2.4", "sharp").replace("6,action", "9,action"))
    done = read_back(bench)
    assert done.returncode != 0
    assert "readings.csv:2" in done.stderr
    assert "readings.csv:8" in done.stderr
    assert "Traceback" not in done.stderr
