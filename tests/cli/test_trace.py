"""`gramil trace`: a picture of a plan to keys of a description, and the strips that are laid round it."""

import re
import tomllib
from pathlib import Path

import numpy as np
import pytest
from PIL import Image

from gramil.shapes.outline_through import through_points

from ..in_process import gramil
from ..photographs.rendered import Scene, body, strips_round

SCENE = Scene(strips_round(), ((body(), 0.5),), size=(2000, 1500), focal=1800.0, distance=1150.0)


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    made = tmp_path_factory.mktemp("photographs")
    (made / "plan.jpg").write_bytes(SCENE.jpeg())
    places = "".join(f"{x:.1f},{y:.1f}\n" for x, y in SCENE.seen(body(24)).tolist())
    (made / "outline.csv").write_text(f"x,y\n{places}", encoding="utf-8")
    return made


@pytest.mark.slow
def test_a_photograph_becomes_the_body_of_a_description(folder: Path) -> None:
    done = gramil(folder, "trace", "plan.jpg", "--bar", "220 mm", "--points", "outline.csv", "--picture", "seen.png")
    assert done.returncode == 0, done.stderr
    assert "tags 1, 2, 3, 4, 5, 6, 7, 8" in done.stdout
    keys = done.stdout[done.stdout.index("[body]") : done.stdout.index("How the picture was read")]
    written = tomllib.loads(keys)["body"]
    outline = through_points(
        [tuple(each) for each in written["points"]], [row - 1 for row in written.get("corners", ())]
    )
    ring = body()
    assert outline.length == pytest.approx(np.ptp(ring[:, 0]), abs=0.3)
    half = outline.half.place(outline.half.sample(0.01, 1.0))
    assert 2 * half[:, 1].max() == pytest.approx(np.ptp(ring[:, 1]), abs=0.6)
    within = float(re.search(r"within ([\d.]+) mm", keys)[1])  # type: ignore[index]
    assert 0.02 < within < 1.0
    assert max(Image.open(folder / "seen.png").size) == 1600


def test_an_inch_description_gets_inches(folder: Path) -> None:
    done = gramil(folder, "trace", "plan.jpg", "--bar", "8.661 in", "--points", "outline.csv", "--unit", "in")
    points = tomllib.loads(done.stdout[done.stdout.index("[body]") :])["body"]["points"]
    assert max(x for x, _ in points) == pytest.approx(np.ptp(body()[:, 0]) / 25.4, abs=0.012)


def test_a_bar_that_is_no_print_of_it_is_refused(folder: Path) -> None:
    done = gramil(folder, "trace", "plan.jpg", "--bar", "195 mm")
    assert done.returncode == 2
    assert "Print it anew" in " ".join(done.stderr.split())


def test_the_strips_are_written_and_nothing_else_is_asked(folder: Path) -> None:
    done = gramil(folder, "trace", "--strips", "strips.pdf", "--paper", "letter")
    assert done.returncode == 0, done.stderr
    assert (folder / "strips.pdf").read_bytes().startswith(b"%PDF")
    wide = gramil(folder, "trace", "--strips", "frame.pdf", "--frame", "700 x 500 mm")
    assert wide.returncode == 0, wide.stderr


@pytest.mark.parametrize(
    ("content", "says"),
    [
        (b"", "not a kind of picture"),
        (b"\x00" * 5000, "not a kind of picture"),
        (b"%PDF-1.7 and so on", "cut short"),
        (b"\xff\xd8\xff\xe0 and nothing after it", "not a kind of picture|damaged"),
    ],
)
def test_what_is_no_picture_is_told_in_a_sentence(folder: Path, content: bytes, says: str) -> None:
    (folder / "other.jpg").write_bytes(content)
    done = gramil(folder, "trace", "other.jpg")
    assert done.returncode == 2
    assert re.search(says, done.stderr), done.stderr
    assert "Traceback" not in done.stderr


def test_a_picture_cut_short_is_told_and_one_that_lies_about_its_size(folder: Path) -> None:
    whole = (folder / "plan.jpg").read_bytes()
    (folder / "short.jpg").write_bytes(whole[: len(whole) // 2])
    done = gramil(folder, "trace", "short.jpg")
    assert done.returncode == 2
    assert "cut short or damaged" in done.stderr
    at = whole.index(b"\xff\xc0") + 5
    (folder / "lying.jpg").write_bytes(whole[:at] + b"\xff\xff\xff\xff" + whole[at + 4 :])
    done = gramil(folder, "trace", "lying.jpg")
    assert done.returncode == 2
    assert "megapixels" in done.stderr


def test_points_that_are_no_numbers_and_lengths_that_are_none(folder: Path) -> None:
    (folder / "bad.csv").write_text("x,y\n1,two\n", encoding="utf-8")
    done = gramil(folder, "trace", "plan.jpg", "--points", "bad.csv")
    assert done.returncode == 2
    assert "bad.csv:2" in done.stderr
    done = gramil(folder, "trace", "plan.jpg", "--known", "1,2,3,500 mm")
    assert done.returncode == 2
    assert "x,y,x,y,length" in done.stderr
