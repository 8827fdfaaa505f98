"""Wood from the command line, on the bundled example in its dry winter: what is open, what is closed, and why."""

from importlib.resources import as_file, files
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from gramil.cli import gramil

NOW = ("--now", "2026-01-19T09:00")


@pytest.fixture(scope="module")
def bench(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The example files in a folder of their own."""
    folder = tmp_path_factory.mktemp("bench")
    with as_file(files("gramil") / "data" / "examples") as examples:
        for file in examples.iterdir():
            (folder / file.name).write_bytes(file.read_bytes())
    return folder


def run(*words: str) -> Result:
    return CliRunner().invoke(gramil, list(words))


def ready(bench: Path, *more: str) -> str:
    done = run("ready", str(bench / "tarn.toml"), "--shop", str(bench / "shop.toml"), *NOW, *more)
    assert done.exit_code == 0, done.exception
    return done.output


def state_of(operation: str, told: str) -> str:
    """What is said of an operation: the word at the head of its own lines, or of the first of its group."""
    state = ""
    for line in told.splitlines():
        state = line[:12].strip() or state if line[:1].isupper() else state
        if f"[{operation}]" in line:
            return state
    raise AssertionError(f"{operation} is not told")


def test_the_dry_winter_closes_gluing_and_leaves_the_rest(bench: Path) -> None:
    """The shop stands near 27 %, too dry to glue in. The neck and the top have lain in the cupboard at 45 % for weeks,
    the board is still in the shop: so the neck may be shaped, and neither top glued nor board slotted."""
    told = ready(bench)
    assert state_of("neck_profiled", told) == "OPEN"
    for closed in ("top_braces_glued", "bound", "board_glued", "bridge_glued", "tapered", "sealed"):
        assert state_of(closed, told) == "CLOSED"
    assert "Wood ready 22 January" in told
    assert "too cold, 16 °C" in told  # finishing wants 18 to 28
    assert "The air of the shop is too dry" in told
    assert "Persimmon 2 is too dry" in told
    assert "lay it in the cupboard" in told


def test_when_the_shop_has_been_damped_the_settled_top_opens(bench: Path, tmp_path: Path) -> None:
    text = (bench / "shop.toml").read_text(encoding="utf-8")
    damped = "readings = [{ at = 2025-11-24, temperature = 17, humidity = 45 }]"
    (bench / "damped.toml").write_text(text.replace('log = "shop-air-invented.csv"', damped), encoding="utf-8")
    done = run("ready", str(bench / "tarn.toml"), "--shop", str(bench / "damped.toml"), *NOW)
    assert state_of("tapered", done.output) == "OPEN"
    assert state_of("bound", done.output) == "OPEN"
    assert state_of("top_glued", done.output) == "NOT JUDGED"  # the top has settled; of the sides nothing is listed
    assert state_of("back_jointed", done.output) == "CLOSED"  # it lies in the house, at 28 %


def test_ready_leaves_out_what_is_done_and_goes_by_own_lists(bench: Path, tmp_path: Path) -> None:
    """The record says that the top is jointed; a list of one's own says that the back's joint wants no band of air."""
    told = ready(bench)
    assert "[top_jointed]" not in told
    for file in bench.iterdir():
        (tmp_path / file.name).write_bytes(file.read_bytes())
    (tmp_path / "tarn.operations.toml").write_text('[operation.back_jointed]\nair = ""\nwood = []\n')
    assert "[back_jointed]" in told
    assert "[back_jointed]" not in ready(tmp_path)


def test_pictures_are_drawn_where_asked(bench: Path, tmp_path: Path) -> None:
    ready(bench, "--plot", str(tmp_path / "charts"))
    drawn = (tmp_path / "charts" / "brace-billet-moisture.svg").read_text(encoding="utf-8")
    assert drawn.startswith("<svg")
    assert "for gluing" in drawn
    assert "in the cupboard" in drawn


def test_findings_say_what_the_air_does(bench: Path) -> None:
    told = run("check", str(bench / "tarn.toml"), "--shop", str(bench / "shop.toml")).output
    assert "air for gluing: 2" in told
    assert "moisture of the board: 5." in told
    assert "Lay it in the cupboard: ready" in told


def test_readings_that_cannot_be_read_are_not_judged(bench: Path, tmp_path: Path) -> None:
    (tmp_path / "shop.toml").write_bytes((bench / "shop.toml").read_bytes())
    told = run("check", str(bench / "tarn.toml"), "--shop", str(tmp_path / "shop.toml")).output
    assert "air for gluing: not judged, because of the readings" in told
    assert ".." not in told
    assert "there is no such file" in told.lower()


def test_a_wood_with_its_sources(bench: Path) -> None:
    told = run("wood", "sitka", "--from-rh", "45", "--to-rh", "25", "--width", "100 mm").output
    assert "0.148 %" in told  # table 13-5: 0.00148 radial
    assert "Table 13-5" in told
    assert "from memory: check it" in told
    # 100 mm x 0.00148 x (8.5 - 5.4): handbook's table 4-2 at 21.1 C, near enough to the 20 C here
    assert "quartersawn -0.46 mm" in told
    assert "missing, and not guessed" in run("wood", "cocobolo").output


def test_bare_lengths_are_in_the_unit_that_is_shown(tmp_path: Path) -> None:
    """4 in are 101.6 mm, whether the shop's own unit says so or the one that is to be shown."""
    inches = run("wood", "persimmon", "--width", "101.6 mm", "--units", "in").output
    assert run("wood", "persimmon", "--width", "4", "--units", "in").output == inches
    shop = tmp_path / "inches.toml"
    shop.write_text('gramil = 1\n[shop]\nname = "inches"\nunits = "in"\n', encoding="utf-8")
    assert run("wood", "persimmon", "--width", "4", "--shop", str(shop)).output == inches
    glued = ("if-glued", "board", "--wood", "persimmon", "--rh", "60")
    sizes = ("--width", "50.8 mm", "--thickness", "6.35 mm", "--units", "in")
    told = run(*glued, *sizes).output
    assert run(*glued, "--width", "2", "--thickness", "1/4", "--units", "in").output == told
    assert run(*glued, "--width", "50.8", "--thickness", "6.35", "--units", "mm").output != told


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("wood", "rosewod"), "Nearest"),
        (("wood", "persimmon", "--from-rh", "0.45"), "write 45"),
        (("wood", "persimmon", "--from-rh", "145"), "0 to 100 %"),
        (("wood", "persimmon", "--width", "2 1/4"), "Give the unit"),
        (("if-glued", "top"), "moisture is not given"),
        (("if-glued", "board", "--rh", "45"), "the wood is not given"),
        (("if-glued", "top", "--rh", "45", "--moisture", "8"), "more than one way"),
        (("if-glued", "top", "--rh", "45", "--to", "sprce"), "Nearest"),
        (("if-glued", "top", "--moisture", "80"), "4 to 20 %"),
        (("if-glued", "top", "--piece", "lost"), "no piece called"),
        (("if-glued", "top", "--wood", "Sitka spruce", "--rh", "45", "--spacing", "0"), "more than 0"),
        (("wood", "persimmon", "--width", "-5 mm"), "0 or more"),
        (("wood", "persimmon", "--temperature", "nan"), "no number"),
        (("air", "show", "--shop", "shop.toml", "--days", "nan"), "no number"),
        (("cost", "tarn.toml", "--rate", "nan"), "no number"),
        (("done", "slotted", "tarn.toml", "--hours", "nan"), "no number"),
        (("ready", "tarn.toml", "--shop", "shop.toml", "--now", "9999-12-31T23:59"), "1900 and 2199"),
        (("wood", "persimmon", "--plot", "tarn.toml"), "does not end in .svg"),
    ],
)
def test_bad_input_says_what_to_write(words: tuple[str, ...], said: str) -> None:
    done = run(*words)
    assert said in str(done.exception) + done.output


def test_a_top_glued_damp_may_crack_and_one_settled_may_go() -> None:
    damp = run("if-glued", "top", "--wood", "Sitka spruce", "--rh", "65").output
    assert "DO THIS FIRST" in damp
    assert "radius of the dome" in damp
    fan = run("if-glued", "top", "--wood", "Sitka spruce", "--rh", "65", "--fan").output
    assert "radius of the dome" not in fan
    assert "dome: not judged" in fan
    settled = run("if-glued", "top", "--wood", "Sitka spruce", "--rh", "45", "--later", "45").output
    assert "GO:" in settled
    assert "assumed" in settled


def test_a_piece_of_the_shop_is_told_when(bench: Path) -> None:
    words = ("if-glued", "board", "--shop", str(bench / "shop.toml"), "--piece", "persimmon 2", *NOW)
    done = run(*words, "--binding", "1.8 mm")
    assert done.exit_code == 0, done.exception
    assert "WAIT" in done.output
    assert "Laid in the cupboard now: ready" in done.output
