"""What is lost closes what hangs on it, and nothing else; what is to be reworked is said before the next step."""

from datetime import datetime
from importlib.resources import files

from gramil.air.air_bands import Limits
from gramil.change.made import Judged, Standing
from gramil.description.reading import parse_description
from gramil.now.hours import read_hours
from gramil.now.lost_work import closed_by
from gramil.now.open_now import Conditions, InstrumentState, open_now
from gramil.now.plan import greedy_plan
from gramil.now.tasks import weeks_of
from gramil.shop.operations import Work, needed, without
from gramil.shop.operations_file import usual_work

TARN = (files("gramil") / "data" / "examples" / "tarn.toml").read_text(encoding="utf-8")
WORK = needed(usual_work(), parse_description(TARN).instrument)
NOW = datetime(2026, 1, 19, 9)
BANDS = {name: Limits(name, (40.0, 60.0), (12.0, 30.0)) for name in ("gluing", "finishing")}
BEFORE_THE_CUT = ("wood_chosen", "wood_weighed", "thicknessed", "board_laid_out", "index_template_made")


def judged(operation: str, standing: Standing, piece: str = "", along: bool = False) -> Judged:
    too = "too near the nut"
    return Judged(operation, operation, standing, "fret_position[12]", 325.0, 320.0, "", too, "", "mm", piece, along)


def closed(*found: Judged, done: tuple[str, ...] = (), work: Work | None = None) -> set[str]:
    whole = dict.fromkeys((*BEFORE_THE_CUT, *done), NOW)
    return set(closed_by(work or WORK, whole, found))


def test_a_lost_board_closes_the_way_to_the_bridge_and_leaves_the_neck_and_the_body() -> None:
    found = closed(judged("slotted", "lost", "the board"), done=("slotted",))
    assert {"slots_measured", "nut_end_cut", "tapered", "board_glued", "fretted", "bridge_placed", "strung"} <= found
    assert not {"neck_sawn", "rod_slot_cut", "sides_bent", "top_jointed", "back_bound", "bridge_made"} & found


def test_what_was_done_since_and_is_right_stands_between() -> None:
    """The slots of a template that is lost are cut: nothing more hangs on the template."""
    lost = judged("index_template_made", "lost", "the index template")
    assert "slotted" in closed(lost)
    assert not closed(lost, done=("slotted",)) & {"slots_measured", "nut_end_cut"}


def test_work_on_a_lost_piece_is_closed_whatever_comes_before_it() -> None:
    """The neck is carved and right; the board on it is lost, and is not trued."""
    done = ("slotted", "board_glued", "neck_profiled")
    found = closed(judged("slotted", "lost", "the board"), done=done)
    assert "board_trued" in found
    assert "neck_joint_cut" not in found


def test_an_own_list_without_what_was_lost_is_no_matter() -> None:
    work = without(WORK, {"slots_measured": "not here"})
    assert "nut_end_cut" in closed(judged("slotted", "lost", "the board"), done=("slotted",), work=work)


def test_it_is_told_as_closed_by_what_is_lost() -> None:
    lost = judged("slotted", "lost", "the board")
    done = dict.fromkeys((*BEFORE_THE_CUT, "slotted"), NOW)
    state = InstrumentState("Tarn", WORK, done, judged=(lost,))
    (one,) = open_now([state], Conditions(NOW, BANDS))
    why = {each.operation.name: (each.by, each.why) for each in one.closed}
    assert why["nut_end_cut"] == (
        "lost",
        "slotted: too near the nut by 5.00 mm (325.00 mm, wanted 320.00 mm) [fret_position[12]]",
    )
    assert "nut_end_cut" not in {each.operation.name for each in one.open}


def test_the_weeks_do_not_plan_what_hangs_on_it() -> None:
    done = dict.fromkeys((*BEFORE_THE_CUT, "slotted"), NOW)
    lost = InstrumentState("Tarn", WORK, done, judged=(judged("slotted", "lost", "the board"),))
    weeks = weeks_of([lost], Conditions(NOW, BANDS), read_hours("08:30-12:30 13:30-17:30", "mon-fri"), 14)
    planned = {weeks.tasks[place].operation.name for place in greedy_plan(weeks).starts}
    assert "neck_sawn" in planned
    assert not planned & {"slots_measured", "nut_end_cut", "tail_end_cut", "tapered"}
    right = InstrumentState("Tarn", WORK, done)
    weeks = weeks_of([right], Conditions(NOW, BANDS), read_hours("08:30-12:30 13:30-17:30", "mon-fri"), 14)
    assert "slots_measured" in {weeks.tasks[place].operation.name for place in greedy_plan(weeks).starts}


def test_what_is_to_be_reworked_is_said_first() -> None:
    rework = judged("slotted", "rework", "the board")
    done = dict.fromkeys((*BEFORE_THE_CUT, "slotted"), NOW)
    state = InstrumentState("Tarn", WORK, done, judged=(rework,))
    (one,) = open_now([state], Conditions(NOW, BANDS))
    (measuring,) = [each for each in one.open if each.operation.name == "slots_measured"]
    assert measuring.remarks[0].startswith("first: slotted: too near the nut by 5.00 mm")
