"""Every drawing of the bundled instruments against the one that was kept, and looked at, when it last changed."""

import importlib.util
import re
from pathlib import Path

import pytest

HERE = Path(__file__).parent
NUMBER = re.compile(r"-?\d+(?:\.\d+)?(?:e-?\d+)?")


def keeping() -> dict[str, str]:
    specification = importlib.util.spec_from_file_location("keeping", HERE / "keeping.py")
    assert specification is not None
    assert specification.loader is not None
    module = importlib.util.module_from_spec(specification)
    specification.loader.exec_module(module)
    return dict(module.drawn())


def parted(text: str) -> tuple[list[str], list[float]]:
    """The words of a drawing, and its numbers."""
    return NUMBER.split(text), [float(each) for each in NUMBER.findall(text)]


def test_every_drawing_is_as_it_was_kept() -> None:
    drawn = keeping()
    kept = {file.name: file.read_text(encoding="utf-8") for file in (HERE / "kept").glob("*.svg")}
    assert drawn.keys() == kept.keys(), "run `make keep`, and look at what changed"
    for name, text in drawn.items():
        words, numbers = parted(text)
        kept_words, kept_numbers = parted(kept[name])
        assert words == kept_words, f"{name}: run `make keep`, and look at what changed"
        assert numbers == pytest.approx(kept_numbers, abs=2e-5), name
