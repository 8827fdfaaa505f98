"""`gramil check` on an instrument of the store: its verdicts are those of the same shop and instrument as files."""

import re
from datetime import UTC, datetime
from pathlib import Path

from click.testing import CliRunner, Result

from gramil.air.places import Reading, add_reading, place
from gramil.cli import gramil
from gramil.faults import MakersFault
from gramil.store.opening import open_store
from gramil.store.writing import Hand

from ..conftest import EXAMPLES


def run(*words: str) -> Result:
    return CliRunner().invoke(gramil, list(words))


def filled(folder: Path) -> str:
    store = str(folder / "shop.gramil")
    made = run("store", "new", store, "--shop", str(EXAMPLES / "shop.toml"), str(EXAMPLES / "tarn.toml"))
    assert made.exit_code == 0, made.output
    return store


def without_files(output: str) -> str:
    """The lines less the files that limits come from: `(shop.toml:21)`."""
    return re.sub(r"\([^()]*:\d+\)", "()", output)


def test_store_and_files_give_the_same_verdicts(tmp_path: Path) -> None:
    """Both as made; the air is read from logs in the one case and from the store in the other: nothing else differs."""
    from_store = run("check", "Tarn", "--store", filled(tmp_path), "--fine")
    from_files = run("check", str(EXAMPLES / "tarn.toml"), "--shop", str(EXAMPLES / "shop.toml"), "--made", "--fine")
    assert without_files(from_store.output) == without_files(from_files.output)
    assert from_store.exit_code == from_files.exit_code
    assert "air_humidity" in from_store.output


def test_air_written_down_changes_the_verdict(tmp_path: Path) -> None:
    """45 % lies in the usual band for gluing; the example's winter does not."""
    store = filled(tmp_path)
    before = run("check", "Tarn", "--store", store, "--fine").output
    moment = datetime(2026, 11, 25, 9, 0, tzinfo=UTC)
    with open_store(Path(store)) as opened:
        add_reading(opened, place(opened, "shop").id, Reading(moment, 20.0, 45.0), Hand(moment))
    after = run("check", "Tarn", "--store", store, "--fine").output
    line = next(each for each in after.splitlines() if "[air_humidity]" in each)
    assert "45" in line
    assert line not in before


def test_an_instrument_that_is_not_there_is_told(tmp_path: Path) -> None:
    answer = run("check", "Moss", "--store", filled(tmp_path))
    assert isinstance(answer.exception, MakersFault)
    assert "Moss" in str(answer.exception)
