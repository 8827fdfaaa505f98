"""Small things that a first week meets."""

import re
import shutil
from collections import defaultdict
from pathlib import Path

import pytest
from click.testing import CliRunner

from gramil.cli import gramil as program
from gramil.description.reading import read_description
from gramil.shop.operations_file import usual_work

from ..conftest import EXAMPLES
from ..in_process import gramil

AT = ("--at", "2026-01-19T09:00")


@pytest.fixture
def bench(tmp_path: Path) -> Path:
    for name in (
        "tarn.toml",
        "shop.toml",
        "shop-air-invented.csv",
        "house-air-invented.csv",
        "cupboard-air-invented.csv",
    ):
        shutil.copy(EXAMPLES / name, tmp_path)  # type: ignore[arg-type]  # a file of the package
    return tmp_path


def test_a_wrong_answer_is_asked_again_there(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The fifth answer is no length and the sixth no count; what was answered before and after is kept."""
    monkeypatch.chdir(tmp_path)
    answers = ["Heron", "mm", "right", "steel", "long", "641 mm", "many", "21", *[""] * 9]
    done = CliRunner().invoke(program, ["new", "heron.toml"], input="\n".join(answers) + "\n")
    assert done.exit_code == 0, done.output
    assert done.output.count("Scale length") == 2
    assert done.output.count("How many frets") == 2
    made = read_description(tmp_path / "heron.toml").instrument
    assert (made.instrument.name, made.scale.length, made.scale.frets) == ("Heron", 641.0, 21)


def test_so_is_one_about_a_shop(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A kerf of nothing, a day in words, a place twice, a thickness below nothing: each is said and asked again, and
    nothing that was answered is lost.
    """
    monkeypatch.chdir(tmp_path)
    answers = [
        *("Fen", "mm", "a4", "medium", "table saw", "", ""),
        *("-0.6", "0.61", "y", "62.4", "yesterday", "2026-10-14", "n"),
        *("shop, shop", "shop, loft", "p1", "persimmon", "520", "72", "-8.5", "8.5"),
        "none",
    ]
    done = CliRunner().invoke(program, ["new", "fen.toml", "--shop"], input="\n".join(answers) + "\n")
    assert done.exit_code == 0, done.output
    for said in ("more than 0", "year-month-day", 'read "shop" a second time', '"-8.5 mm"'):
        assert said in done.output
    assert "fen.toml:" not in done.output
    text = (tmp_path / "fen.toml").read_text(encoding="utf-8")
    assert text.startswith("#:schema ./shop.schema.json\n")
    for line in ('kerf = "0.61 mm"', "checked = 2026-10-14", 'name = "loft"', 'thickness = "8.5 mm"'):
        assert line in text


def test_so_is_one_about_a_guitar_that_came_in_or_that_is_begun_from_another(
    bench: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A length in words, more frets to the body than there are, the other's own name."""
    monkeypatch.chdir(bench)
    answers = ["Old", "mm", "right", "steel", "long", "641", "fourteen", "14", "19", "12", *[""] * 9]
    done = CliRunner().invoke(program, ["new", "old.toml", "--repair"], input="\n".join(answers) + "\n")
    assert done.exit_code == 0, done.output
    assert [done.output.count(each) for each in ("Scale length", "How many frets", "Fret at the body")] == [2, 2, 2]
    read = read_description(bench / "old.toml").instrument
    assert (read.scale.length, read.scale.frets, read.scale.join) == (641.0, 14, 12.0)
    answers = ["", "Wren", "", "long", "620 mm", *[""] * 9]
    done = CliRunner().invoke(program, ["new", "wren.toml", "--from", "tarn.toml"], input="\n".join(answers) + "\n")
    assert done.exit_code == 0, done.output
    assert "the name of the other" in done.output
    read = read_description(bench / "wren.toml").instrument
    assert (read.instrument.name, read.scale.length) == ("Wren", 620.0)


def test_lengths_are_asked_in_the_unit_that_was_answered(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    done = CliRunner().invoke(
        program, ["new", "heron.toml"], input="\n".join(["Heron", "in", "", "", "25.4", *[""] * 11])
    )
    assert done.exit_code == 0, done.output
    made = read_description(tmp_path / "heron.toml").instrument
    assert made.scale.length == pytest.approx(25.4 * 25.4)


def test_fanned_is_an_answer(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    answers = ["Heron", "mm", "", "", "fanned", "670 mm", "640 mm", "7", *[""] * 10]
    done = CliRunner().invoke(program, ["new", "heron.toml"], input="\n".join(answers) + "\n")
    assert done.exit_code == 0, done.output
    assert read_description(tmp_path / "heron.toml").instrument.scale.fanned


def test_a_backup_makes_the_folder(bench: Path) -> None:
    assert gramil(bench, "store", "new", "shop.gramil", "--shop", "shop.toml", "tarn.toml").returncode == 0
    done = gramil(bench, "store", "backup", "shop.gramil", "copies/monday/shop.gramil")
    assert done.returncode == 0, done.stderr
    assert gramil(bench, "store", "verify", "copies/monday/shop.gramil").returncode == 0


def test_operations_are_named_wherever_they_are_listed(bench: Path) -> None:
    """Every line that says what an operation is says its name too; new work and repairs may be said alike."""
    what = defaultdict[str, list[str]](list)
    for name, each in usual_work().operations.items():
        what[each.what].append(name)
    pages = [gramil(bench, *words, "tarn.toml", *AT).stdout for words in (("now", "--every"), ("weeks",))]
    for page in pages:
        text = re.sub(r"\s+", " ", page)
        told = [words for words in what if words in text]
        assert told
        assert all(any(f"[{name}]" in text for name in what[words]) for words in told)


def test_one_reading_is_told_as_one(bench: Path) -> None:
    shop = 'gramil = 1\n[shop]\nname = "x"\nunits = "mm"\n[[place]]\nname = "attic"\nreadings = [{ at = "%s", %s }]\n'
    reading = "temperature = 19, humidity = 45"
    (bench / "one.toml").write_text(shop % ("2026-01-19T08:00", reading), encoding="utf-8")
    told = gramil(bench, "air", "show", "--shop", "one.toml", "--now", "2026-01-19T09:00").stdout
    assert "one reading alone" in told
    assert "at a stretch" not in told


def test_the_readme_names_the_example_files() -> None:
    readme = (Path(__file__).parents[2] / "README.md").read_text(encoding="utf-8")
    for file in EXAMPLES.iterdir():
        if file.name.endswith(".toml") and file.name.count(".") == 1 and "plan" not in file.name:
            assert file.name in readme


def test_no_hint_names_an_install_of_gramil_from_elsewhere() -> None:
    """It is in no registry: what is said of installing names this folder, a wheel, or another library."""
    root = Path(__file__).parents[2]
    for path in (*(root / "src").rglob("*.py"), *root.glob("*.md"), *(root / "docs").glob("*.md")):
        assert not re.search(r"(pip|uv tool|pipx) install \"?gramil", path.read_text(encoding="utf-8")), path


MISSPELT = [
    (("turn", "bord.thickness", "tarn.toml", "--until", "slot_left_least=3"), "the nearest is board.thickness"),
    (("check", "Tran"), "no such instrument: Tran. The store has Tarn. The nearest is Tarn"),
    (("check", "tran.toml"), "tran.toml: cannot be read: there is no such file; the nearest is tarn.toml"),
    (("store", "return", "shop.gramil", "Tarn", "7"), "no revision 7. The last is 1"),
    (("air", "shp", "19", "45"), "no place called shp. The store has shop, house, cupboard. The nearest is shop"),
    (("top", "tarn.toml", "--brace", "X trebble"), "--brace goes with --turn or --mode"),
]


@pytest.fixture(scope="module")
def with_a_store(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("misspelt")
    for name in EXAMPLES.iterdir():
        if name.name == "tarn.toml" or name.name == "shop.toml" or name.name.endswith("-air-invented.csv"):
            shutil.copy(name, folder)  # type: ignore[arg-type]  # a file of the package
    assert gramil(folder, "store", "new", "shop.gramil", "--shop", "shop.toml", "tarn.toml").returncode == 0
    return folder


@pytest.mark.parametrize(
    ("words", "says"), MISSPELT, ids=lambda each: each if isinstance(each, str) else " ".join(each)
)
def test_what_is_misspelt_is_told_with_the_nearest_that_there_is(
    with_a_store: Path, words: tuple[str, ...], says: str
) -> None:
    told = gramil(with_a_store, *words)
    assert told.returncode == 2
    assert says in told.stderr
