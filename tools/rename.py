"""Renames a dimension everywhere: `make rename OLD=slot_need NEW=slot_depth_needed`.

Code, data, tests, docs and kept drawings; the changelog stays as it was written. Code is laid out anew, as a name of
another length breaks lines elsewhere; a line that is too long all the same is named. What is done by half the type
checker or the build names: parameters, references and addresses all go by the one name.
"""

import re
import subprocess
import sys
from collections.abc import Iterable
from pathlib import Path

from gramil.prints.whole import whole_graph

ROOT = Path(__file__).parent.parent
KEPT_AS_WRITTEN = ("CHANGELOG.md",)
TEXT = (".py", ".toml", ".md", ".json", ".txt", ".svg", ".html", ".js", ".typ", ".csv")


def refusal(old: str, new: str) -> str:
    """Why the one may not become the other; empty where it may."""
    graph = whole_graph()
    if old in graph.inputs:
        return f"{old} is a base value: it is named after its key in description/"
    if old not in graph.dimensions:
        return f"there is no dimension {old}"
    if new in graph.inputs or new in graph.dimensions:
        return f"{new} is there already"
    if not re.fullmatch(r"[a-z][a-z0-9_]*", new):
        return f"{new} is no name: small letters, figures and underscores"
    owner = sys.modules[graph.dimensions[old].function.__module__]
    nouns: tuple[str, ...] = owner.OWNS
    return "" if new.startswith(nouns) else f"{new} does not start with a noun of its module: {', '.join(nouns)}"


def tracked() -> list[Path]:
    """Every text file that git knows in the house."""
    listed = subprocess.run(["git", "ls-files"], cwd=ROOT, capture_output=True, text=True, check=True).stdout
    found = (ROOT / name for name in listed.splitlines() if name not in KEPT_AS_WRITTEN)
    return [path for path in found if path.suffix in TEXT and path.exists()]


def rename(old: str, new: str) -> list[Path]:
    """Put the new name in place of the old wherever it stands as a whole word; gives the files that changed."""
    word, found = re.compile(rf"(?<![A-Za-z0-9_]){re.escape(old)}(?![A-Za-z0-9_])"), []
    for path in tracked():
        text = path.read_text(encoding="utf-8")
        if (changed := word.sub(new, text)) != text:
            path.write_text(changed, encoding="utf-8")
            found.append(path)
    return found


def laid_out(paths: Iterable[Path]) -> list[str]:
    """Lay the code among these files out anew; gives what is left for the hand: `file:line:column: what`."""
    code = [str(path.relative_to(ROOT)) for path in paths if path.suffix == ".py"]
    if not code:
        return []
    ruff = (sys.executable, "-m", "ruff")
    subprocess.run([*ruff, "format", "--quiet", *code], cwd=ROOT, check=True)
    check = [*ruff, "check", "--quiet", "--output-format", "concise", *code]
    return subprocess.run(check, cwd=ROOT, capture_output=True, text=True, check=False).stdout.splitlines()


if __name__ == "__main__":
    if len(sys.argv) != 3:
        sys.exit("give OLD=... and NEW=...")
    if why := refusal(sys.argv[1], sys.argv[2]):
        sys.exit(why)
    changed = rename(sys.argv[1], sys.argv[2])
    for left in laid_out(changed):
        print(f"by hand: {left}")
    print(f"{len(changed)} files changed; now `make names docs keep test`")
