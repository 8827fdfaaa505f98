"""Which shop a command goes by where none is named: beside the instrument, then the environment's, then the set one."""

import shutil
from importlib.resources import files
from pathlib import Path

import pytest

from ..in_process import gramil

EXAMPLES = Path(str(files("gramil") / "data" / "examples"))


@pytest.fixture(autouse=True)
def nothing_set(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    for name in ("GRAMIL_SHOP", "GRAMIL_STORE"):
        monkeypatch.delenv(name, raising=False)
    monkeypatch.setenv("GRAMIL_SETTINGS", str(tmp_path / "settings.toml"))


@pytest.fixture
def alone(tmp_path: Path) -> Path:
    """A folder with an instrument and no shop."""
    folder = tmp_path / "alone"
    folder.mkdir()
    shutil.copy(EXAMPLES / "tarn.toml", folder)
    return folder


def test_the_shop_beside_the_instrument_is_used_and_said(alone: Path) -> None:
    shutil.copy(EXAMPLES / "shop.toml", alone)
    told = gramil(alone.parent, "dims", "alone/tarn.toml", "--csv")
    assert told.stderr.split() == ["shop:", str(Path("alone") / "shop.toml")]
    assert told.stdout == gramil(alone, "dims", "tarn.toml", "--shop", "shop.toml", "--csv").stdout


def test_a_shop_that_is_named_wins_and_is_not_said(alone: Path) -> None:
    shutil.copy(EXAMPLES / "shop.toml", alone / "other.toml")
    (alone / "shop.toml").write_text("this = is no shop", encoding="utf-8")
    told = gramil(alone, "check", "tarn.toml", "--shop", "other.toml")
    assert told.returncode == 0
    assert told.stderr == ""


@pytest.mark.parametrize("by", ["environment", "settings"])
def test_a_shop_that_is_set_is_used_where_none_lies_beside(
    alone: Path, monkeypatch: pytest.MonkeyPatch, by: str
) -> None:
    shutil.copy(EXAMPLES / "shop.toml", alone.parent / "ours.toml")
    if by == "environment":
        monkeypatch.setenv("GRAMIL_SHOP", str(alone.parent / "ours.toml"))
    else:
        (alone.parent / "settings.toml").write_text('shop = "ours.toml"\n', encoding="utf-8")
    told = gramil(alone, "dims", "tarn.toml", "--csv")
    assert "ours.toml" in told.stderr
    assert told.stdout == gramil(alone, "dims", "tarn.toml", "--shop", "../ours.toml", "--csv").stdout


def test_an_instrument_by_its_name_is_looked_for_in_the_store_that_is_set(
    alone: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    assert gramil(alone, "store", "new", "s.gramil", "tarn.toml").returncode == 0
    monkeypatch.setenv("GRAMIL_STORE", str(alone / "s.gramil"))
    told = gramil(alone, "check", "Tarn", "--json")
    assert "store: " in told.stderr
    assert told.stdout == gramil(alone, "check", "Tarn", "--store", "s.gramil", "--json").stdout
    assert "store" not in gramil(alone, "check", "tarn.toml", "--json").stderr


@pytest.mark.parametrize("text", ["shop = [", "colour = true", "shop = 3"])
def test_settings_that_are_none_are_told(alone: Path, text: str) -> None:
    (alone.parent / "settings.toml").write_text(text, encoding="utf-8")
    told = gramil(alone, "check", "tarn.toml")
    assert told.returncode == 2
    assert "settings.toml" in told.stderr
    assert "Traceback" not in told.stderr


def test_a_folder_of_instruments_is_a_shop(tmp_path: Path) -> None:
    """All that `*.toml` names: the shop and the records of what is made are no instruments, and are left out."""
    names = ("fell.toml", "scree.made.toml", "scree.toml", "shop.toml")
    for name in names:
        shutil.copy(EXAMPLES / name, tmp_path)
    for command in ("check", "now"):
        done = gramil(tmp_path, command, *names)
        assert done.returncode == 0, done.stderr
        assert done.stderr == "left out: scree.made.toml, shop.toml\nshop: shop.toml\n"
        assert done.stdout.lower().find("fell") < done.stdout.lower().find("scree")
    alone = gramil(tmp_path, "check", "shop.toml")
    assert (alone.returncode, "describes a shop" in alone.stderr) == (2, True)


def test_one_that_cannot_be_read_or_made_does_not_hide_the_others(tmp_path: Path) -> None:
    shutil.copy(EXAMPLES / "fell.toml", tmp_path)
    thin = (EXAMPLES / "tarn.toml").read_text(encoding="utf-8").replace("thickness = 6.3", "thickness = 3.6")
    (tmp_path / "thin.toml").write_text(thin, encoding="utf-8")
    (tmp_path / "torn.toml").write_text("[instrument\n", encoding="utf-8")
    assert gramil(tmp_path, "check", "fell.toml", "thin.toml").returncode == 1
    done = gramil(tmp_path, "check", "fell.toml", "torn.toml", "thin.toml")
    assert done.returncode == 2
    assert "torn.toml:1: is not TOML" in done.stderr
    assert "FELL\n" in done.stdout
    assert "\nTARN\nSTOP" in done.stdout
