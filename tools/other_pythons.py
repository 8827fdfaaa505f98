"""The other Pythons of this machine: they write the same packs to the byte, and pass the tests of a few rooms.

The whole suite runs on one Python; `make others` tries what could differ on the rest: arithmetic, reading and writing,
on the first bundled instrument, with `GRAMIL_OTHERS=all` on every one. A Python that is not here is told, and is no
failure.
"""

import os
import shutil
import subprocess
import sys
import tomllib
from collections.abc import Iterator, Mapping
from hashlib import sha256
from pathlib import Path
from tempfile import TemporaryDirectory

ROOT = Path(__file__).parents[1]
VERSIONS = ("3.12", "3.13")
TRIED = (
    "tests/test_measure.py",
    "tests/test_graph.py",
    "tests/test_written_file.py",
    "tests/parts/test_slots.py",
    "tests/cli/test_which_shop.py",
)
NEEDED = ("pytest", "hypothesis", "mpmath")
"""What these tests need beside the program, out of the extra `test`."""
OPTIONS = ("-o", "addopts=-q --strict-markers --import-mode=importlib -p no:cacheprovider")
"""As usual, without those of the parallel runner."""


def main() -> int:
    """Try each; the exit code is 1 if one of them differs or fails."""
    pythons = list(found())
    for version in VERSIONS:
        if version not in dict(pythons):
            print(f"Python {version} is not here", flush=True)
    if not pythons:
        return 0
    ours = packs(sys.executable)
    good = [alike(version, python, ours) for version, python in pythons]
    return int(not all(good))


def found() -> Iterator[tuple[str, str]]:
    """Version and program of each that is here, on the path or where pyenv keeps several."""
    for version in VERSIONS:
        kept = sorted(
            Path(os.environ.get("PYENV_ROOT", Path.home() / ".pyenv")).glob(f"versions/{version}*/bin/python")
        )
        for program in (shutil.which(f"python{version}"), *map(str, kept)):
            if program and _is(program, version):
                yield version, program
                break


def _is(program: str, version: str) -> bool:
    """Whether it runs, and is what its name says: a shim may lead nowhere."""
    asked = [program, "-c", "import sys, venv; print('%d.%d' % sys.version_info[:2])"]
    return subprocess.run(asked, capture_output=True, text=True, check=False).stdout.strip() == version


def alike(version: str, python: str, ours: Mapping[str, str]) -> bool:
    """Whether this Python writes the same packs and passes; what is not so is told."""
    own = str(_own(version, python))
    theirs = packs(own)
    differing = sorted(name for name in ours.keys() | theirs.keys() if ours.get(name) != theirs.get(name))
    told = f"differs in {', '.join(differing)}" if differing else f"{len(theirs)} files of packs are ours to the byte"
    print(f"Python {version}: {told}", flush=True)
    tested = subprocess.run([own, "-m", "pytest", *OPTIONS, *TRIED], cwd=ROOT, env=_around(), check=False)
    return tested.returncode == 0 and not differing


def _own(version: str, python: str) -> Path:
    """The Python of an environment of its own, with what the program and these tests need, pinned."""
    folder = ROOT / f".venv-{version}"
    program = folder / ("Scripts/python.exe" if os.name == "nt" else "bin/python")
    if not program.exists():
        subprocess.run([python, "-m", "venv", str(folder)], check=True)
    told = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    tests = [each for each in told["optional-dependencies"]["test"] if each.split(">=")[0] in NEEDED]
    pip = [str(program), "-m", "pip", "install", "--quiet", "--disable-pip-version-check", "-c", "constraints.txt"]
    subprocess.run([*pip, *told["dependencies"], *tests], cwd=ROOT, check=True)
    return program


def packs(python: str) -> Mapping[str, str]:
    """The digest of each file of the bundled instruments' packs, as this Python writes them."""
    with TemporaryDirectory() as folder:
        which = ["--all"] if os.environ.get("GRAMIL_OTHERS") == "all" else []
        command = [python, "-m", "gramil.cli", "demo", *which, "--out", folder]
        subprocess.run(command, cwd=ROOT, env=_around(), check=True, stdout=subprocess.DEVNULL)
        paths = sorted(path for path in Path(folder).rglob("*") if path.is_file())
        return {path.relative_to(folder).as_posix(): sha256(path.read_bytes()).hexdigest() for path in paths}


def _around() -> Mapping[str, str]:
    return {**os.environ, "PYTHONPATH": str(ROOT / "src")}


if __name__ == "__main__":
    sys.exit(main())
