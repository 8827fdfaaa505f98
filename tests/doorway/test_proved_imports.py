"""What `verify` would refuse is refused before anything is brought in; a store that cannot be written to is read."""

from datetime import datetime
from pathlib import Path

import pytest

from gramil.doorway.bringing_in import import_csv, import_files
from gramil.doorway.export import export_files
from gramil.doorway.verify import verify_open
from gramil.faults import MakersFault
from gramil.store.opening import Store, create_store, open_store
from gramil.store.writing import Hand, writing

HEAD = "gramil_store = 1\n"
HOSTILE = {
    "a whole number too large": HEAD + '[[setting]]\nkey = "shop.x"\nvalue = 9223372036854775808\n',
    "one far too large": HEAD + f'[[place]]\nid = {10**30}\nname = "bench"\n',
    "a float too large": HEAD
    + f'[[blank]]\nname = "top"\nwood = "spruce"\nlength = {10**400}\nwidth = 1\nthickness = 1\n',
    "a moment before all": HEAD + '[[change]]\nid = 1\nat = "0001-01-01T00:00:00+14:00"\nwho = ""\nwhat = "x"\n',
    "an instrument without a description": HEAD + '[[instrument]]\nid = 1\nname = "Tarn"\n',
    "a shop that is none": HEAD + '[[setting]]\nkey = "shop.units"\nvalue = "ell"\n',
}


@pytest.mark.parametrize("text", HOSTILE.values(), ids=HOSTILE)
def test_what_verify_would_refuse_is_not_brought_in(tmp_path: Path, now: datetime, text: str) -> None:
    with create_store(tmp_path / "shop.gramil") as store:
        before = export_files(store)
        with pytest.raises(MakersFault):
            import_files(store, {"store.toml": text}, Hand(now))
        assert export_files(store) == before
        assert verify_open(store) == ()


@pytest.mark.parametrize("cells", ["9223372036854775808", "1" * 5000, "-99999999999999999999"])
def test_whole_numbers_of_a_csv(store: Store, now: datetime, cells: str) -> None:
    with pytest.raises(MakersFault, match="whole number"):
        import_csv(
            store, "blank", f"name,wood,length,width,thickness,count\ntop,spruce,1,1,1,{cells}\n", "x.csv", Hand(now)
        )


def test_an_export_with_one_table_left_out_is_refused_or_sound(stocked: Store, tmp_path: Path, now: datetime) -> None:
    """Each table in turn: what is then brought in passes, and is sound, or nothing is."""
    whole = export_files(stocked)
    blocks = whole["store.toml"].split("\n[[")
    kinds = {each.split("]]")[0] for each in blocks[1:]}
    assert kinds == {"blank", "item", "setting"}
    for number, kind in enumerate(sorted(kinds)):
        text = "\n[[".join([blocks[0], *(each for each in blocks[1:] if not each.startswith(f"{kind}]]"))])
        with create_store(tmp_path / f"{number}.gramil") as fresh:
            try:
                import_files(fresh, {**whole, "store.toml": text + "\n"}, Hand(now))
            except MakersFault:
                assert fresh.rows("SELECT 1 FROM change") == []
            assert verify_open(fresh) == ()


def test_a_store_whose_folder_cannot_be_written_to_is_read(stocked: Store, now: datetime) -> None:
    """A folder stands where the file would have to be made that is shared by those who read."""
    path = stocked.path
    expected = export_files(stocked)
    stocked.close()
    assert not Path(f"{path}-wal").exists()
    Path(f"{path}-shm").mkdir()
    with open_store(path, to_read=True) as read:
        assert export_files(read) == expected
    with open_store(path) as opened:
        assert export_files(opened) == expected
        with pytest.raises(MakersFault, match="cannot be written to"), writing(opened, "no", Hand(now)):
            pass
