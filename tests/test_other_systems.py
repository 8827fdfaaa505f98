"""What differs on Windows and on a Mac, by simulation of the difference; each is tried both ways.

Elsewhere: code pages of a console and line ends of a pipe (`cli/test_streams.py`), locks and open files that refuse to
be replaced (`test_written_file.py`, `doorway/test_backup.py`), viewers and pagers (`cli/test_manners.py`), reserved
names (`test_file_names.py`). No such system was at hand.
"""

import io
import re
import socket
import sys
from pathlib import Path, PureWindowsPath

import click
import pikepdf
import pytest

from gramil.bench.serving import own_port
from gramil.cli import which_shop
from gramil.csv_text import named_rows
from gramil.description.reading import parse_description
from gramil.file_names import DEVICES, file_name
from gramil.typeset import typeset
from gramil.writers.files import write_files
from gramil.written_file import place_of

from .conftest import EXAMPLES
from .in_process import gramil

ROOT = Path(__file__).parents[1]


def test_a_port_in_use_is_not_shared(monkeypatch: pytest.MonkeyPatch) -> None:
    """Windows' option for a port that was just closed would give one port to two benches; it has another for that."""
    monkeypatch.delattr(socket, "SO_EXCLUSIVEADDRUSE", raising=False)
    assert own_port() == socket.SO_REUSEADDR
    monkeypatch.setattr(socket, "SO_EXCLUSIVEADDRUSE", -5, raising=False)
    assert own_port() == -5


@pytest.mark.parametrize(
    ("written", "known"),
    [
        (r"C:\Guitars\.tarn.toml.0123abcd.new", r"C:\Guitars\tarn.toml"),
        (r"\\shop\bench\.tarn.made.toml.lock", r"\\shop\bench\tarn.made.toml"),
        ("C:.tarn.toml.0123abcd.new", "C:.tarn.toml.0123abcd.new"),
        ("/Volumes/bench/.tarn.toml.0123abcd.new-journal", "/Volumes/bench/tarn.toml"),
    ],
)
def test_a_file_is_called_as_the_maker_calls_it_on_any_drive(written: str, known: str) -> None:
    assert place_of(written) == known


@pytest.mark.parametrize(
    "name", ["C:board.dxf", "C:/board.dxf", "//shop/bench/board.dxf", "cut\\..\\..\\board.dxf", "../b"]
)
def test_no_file_of_a_pack_leads_to_another_drive_or_folder(tmp_path: Path, name: str) -> None:
    with pytest.raises(ValueError, match="name"):
        write_files(tmp_path / "out", {name: b"x"})


def test_what_is_named_after_the_maker_s_words_is_a_file_on_windows() -> None:
    for name in (*DEVICES, "CON", "top: left", 'the "old" top', "a|b", "what?", "end.", "C:\\x"):
        made = file_name(name)
        assert not re.search(r'[<>:"/\\|?*\x00-\x1f]|[. ]$', made)
        assert not PureWindowsPath(f"{made}.csv").is_reserved() if sys.version_info < (3, 13) else made


def test_settings_lie_where_each_system_keeps_them(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.delenv("GRAMIL_SETTINGS", raising=False)
    monkeypatch.setenv("APPDATA", str(tmp_path / "Roaming"))
    monkeypatch.setenv("HOME", str(tmp_path))
    monkeypatch.delenv("XDG_CONFIG_HOME", raising=False)
    monkeypatch.setattr(click.utils, "WIN", True)
    assert which_shop.settings_file() == tmp_path / "Roaming" / "gramil" / "settings.toml"
    monkeypatch.setattr(click.utils, "WIN", False)
    monkeypatch.setattr(sys, "platform", "darwin")
    assert which_shop.settings_file() == tmp_path / "Library" / "Application Support" / "gramil" / "settings.toml"
    monkeypatch.setattr(sys, "platform", "linux")
    assert which_shop.settings_file() == tmp_path / ".config" / "gramil" / "settings.toml"


def as_windows_saves(text: str) -> str:
    return "\ufeff" + text.replace("\n", "\r\n")


def test_a_text_saved_by_windows_says_the_same(tmp_path: Path) -> None:
    """A mark at the beginning and two characters at each line's end: a description, a table, and what is noted."""
    plain = (EXAMPLES / "tarn.toml").read_text(encoding="utf-8")
    kept = tmp_path / "tarn.toml"
    kept.write_text(as_windows_saves(plain), encoding="utf-8", newline="")
    assert gramil(tmp_path, "dims", "tarn.toml").stdout
    assert (
        parse_description(plain.replace("\n", "\r\n"), "tarn.toml").instrument
        == parse_description(plain, "x").instrument
    )
    table = "fret,position\n1,35.4\n2,68.8\n"
    rows = [list(named_rows(each, "slots.csv", ["fret"])) for each in (table, as_windows_saves(table))]
    assert rows[0] == rows[1]


def test_what_is_begun_from_a_file_with_windows_line_ends_has_them_in_every_line(tmp_path: Path) -> None:
    text = as_windows_saves((EXAMPLES / "tarn.toml").read_text(encoding="utf-8"))
    (tmp_path / "tarn.toml").write_text(text, encoding="utf-8", newline="")
    begun = gramil(tmp_path, "new", "wren.toml", "--from", "tarn.toml", "--name", "Wren", "--usual")
    assert begun.returncode == 0, begun.stderr
    lines = (tmp_path / "wren.toml").read_bytes().split(b"\n")[:-1]
    assert [line for line in lines if not line.endswith(b"\r")] == []
    assert len(lines) > 50


def test_a_pdf_carries_its_letters_whatever_fonts_a_system_has() -> None:
    """The typesetter looks at no font of the system: only ours are in the file, whole as far as they are used."""
    sheet = {"wide": 210, "tall": 297, "times": 1}
    pdf = typeset("labels.typ", {"labels": [], "page": sheet})
    with pikepdf.open(io.BytesIO(pdf)) as document:
        fonts = [font for page in document.pages for font in page.Resources.get("/Font", {}).values()]
        assert fonts
        for font in fonts:
            assert re.fullmatch(r"/[A-Z]{6}\+B612(Mono)?-\w+", str(font.BaseFont))
            assert "/FontFile2" in font.DescendantFonts[0].FontDescriptor


def test_nobody_who_only_uses_it_needs_make() -> None:
    """Windows has no `make`: no command, message or tutorial says to run it; `gramil demo` is what `make demo` runs."""
    said = re.compile(r"`make \w|^make \w|run make", re.MULTILINE)
    pages = [*sorted((ROOT / "docs" / "tutorials").glob("*.md")), ROOT / "docs" / "installing.md"]
    assert [page.name for page in pages if said.search(page.read_text(encoding="utf-8"))] == []
    assert "gramil demo" in (ROOT / "Makefile").read_text(encoding="utf-8")
