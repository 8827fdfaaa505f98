"""A writer killed in mid-write, hundreds of times: what was acknowledged is there, whole, and the store is sound."""

import json
import subprocess
import sys
from pathlib import Path

from tests.walks import fewer

KILLS = fewer(300, 100)


def test_nothing_acknowledged_is_lost_to_a_killed_writer(tmp_path: Path) -> None:
    program = Path(__file__).with_name("killed_writer.py")
    command = [sys.executable, str(program), str(tmp_path / "shop.gramil"), str(KILLS), "7"]
    ended = subprocess.run(command, capture_output=True, text=True, check=False)
    assert ended.returncode == 0, ended.stderr
    found = json.loads(ended.stdout)
    assert found["kills"] == KILLS
    assert found["acknowledged"] > KILLS
    assert (found["lost"], found["from nowhere"], found["half"], found["verify"]) == ([], [], [], [])
    assert found["saved but not acknowledged"] <= KILLS
    assert found["not undone"] <= KILLS
