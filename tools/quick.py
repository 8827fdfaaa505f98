"""The tests of the room one works in, in under a minute: `make quick`, or `make quick ROOM="parts physics"`.

Without a name, the rooms are those whose files differ from the last commit. What is marked `slow` is left out; the
house and its wiring are looked at each time. The whole is `make test`.
"""

import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parents[1]
ALWAYS = ("tests/test_house.py", "tests/test_wiring.py")


def rooms_changed() -> list[str]:
    """The rooms of every file that differs from the last commit, in src or in tests."""
    command = ["git", "status", "--porcelain", "--untracked-files=all", "--no-renames"]
    lines = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=True).stdout.splitlines()
    parts = [Path(line[3:].strip('"')).parts for line in lines]
    rooms = [each[2] for each in parts if each[:2] == ("src", "gramil") and len(each) > 2]
    return sorted({*rooms, *(each[1] for each in parts if each[:1] == ("tests",) and len(each) > 2)})


def tests_of(rooms: list[str]) -> list[str]:
    """The folders and files of tests for rooms; a file of no room has a test file of its name."""
    wanted = [ROOT / "tests" / room for room in rooms]
    files = [ROOT / "tests" / f"test_{Path(room).stem}.py" for room in rooms]
    return [str(path.relative_to(ROOT)) for path in (*wanted, *files) if path.exists()]


def main() -> int:
    """Run them; the exit code is pytest's."""
    rooms = sys.argv[1:] or rooms_changed()
    chosen = tests_of(rooms)
    print("rooms:", ", ".join(rooms) or "none has changed", flush=True)
    command = [sys.executable, "-m", "pytest", "-n", "auto", "-m", "not slow", *chosen, *ALWAYS]
    return subprocess.run(command, cwd=ROOT, check=False).returncode


if __name__ == "__main__":
    sys.exit(main())
