"""The list of operations holds together, forgets nothing that it must not, and can be laid over."""

import itertools
from collections.abc import Mapping
from importlib.resources import files
from pathlib import Path

import pytest
from tests.walks import sample

from gramil import names as n
from gramil.change.made import operations as fixing
from gramil.description.board.tables import Arch
from gramil.description.instrument import Instrument
from gramil.description.reading import parse_description, read_description, read_shop
from gramil.faults import MakersFault
from gramil.formatter import Formatter
from gramil.prints.whole import figures_of, names_of
from gramil.shop.made_file import read_made
from gramil.shop.operations import Work, needed
from gramil.shop.operations_file import lists_beside, usual_work, work_with

EXAMPLES = files("gramil") / "data" / "examples"
NAMES = ("tarn", "fell", "scree")


def described(name: str) -> Instrument:
    return read_description(Path(str(EXAMPLES / f"{name}.toml"))).instrument


def work_of(name: str) -> Work:
    return needed(usual_work(), described(name))


def before(work: Work, name: str) -> set[str]:
    """Everything that comes before an operation, directly or not."""
    found, left = set(), [*work.operations[name].after]
    while left:
        each = left.pop()
        if each not in found:
            found.add(each)
            left += work.operations[each].after
    return found


def test_there_are_some_ninety_or_more_and_each_comes_after_what_is_before_it() -> None:
    assert len(usual_work().operations) >= 90
    for name in (*NAMES, "mere"):
        stands_in_order(work_of(name))


def stands_in_order(work: Work) -> None:
    """Nothing waits for what is not there or comes later, and nothing is left open that hangs on the instrument."""
    names = list(work.operations)
    for place, each in enumerate(work.operations.values()):
        assert all(names.index(before) < place for before in each.after), each.name
        assert not each.after_where, each.name


@pytest.mark.parametrize(
    ("first", "then"),
    [
        ("top_tested", "top_thicknessed"),  # plate thickness from measured stiffness
        ("rod_fitted", "board_glued"),  # rod before board
        ("board_registered", "board_glued"),  # board to neck register
        ("neck_fitted", "bridge_placed"),  # the bridge is placed after the neck is set
        ("fret_ends_dressed", "bridge_placed"),  # from the real nut and fret 12
        ("bridge_foot_fitted", "finish_masked"),  # foot matched, finish masked
        ("bridge_foot_fitted", "bridge_glued"),
        ("rim_domed_top", "channels_cut"),  # channels are cut on a rim that is domed
        ("frets_levelled", "action_set"),  # crown height lost feeds the action
        ("finish_measured", "finish_polished"),  # finish thickness and cure
        ("strung", "nut_slots_filed"),  # nut slots from measured clearance
        ("played_in", "second_set_up"),
    ],
)
def test_what_must_come_before_what(first: str, then: str) -> None:
    assert first in before(usual_work(), then)


def test_every_operation_that_fixes_figures_is_in_the_list() -> None:
    assert set(fixing()) <= set(usual_work().operations)


OF_A_THINNED_TOP = {"top_edge_thickness", "graduated_run"}
"""Figures that the example has not: its top is as thick all over."""


def test_sheets_and_figures_to_measure_are_on_the_graph() -> None:
    figures = figures_of(read_description(Path(str(EXAMPLES / "tarn.toml"))), read_shop())
    sheets = {figures[name].name for name in names_of(figures, "setup_")}
    for each in usual_work().operations.values():
        assert not each.sheet or each.sheet in sheets, each.name
        for address in each.measure:
            float(figures.at(address))
        for address in {*each.figures} - OF_A_THINNED_TOP:
            assert Formatter(figures).text(address) not in ("", "not known"), (each.name, address)


def test_what_is_taken_is_freed_later() -> None:
    work = usual_work()
    for each in work.operations.values():
        for kind in each.takes:
            assert [
                other
                for other in work.operations.values()
                if kind in other.frees and each.name in before(work, other.name)
            ]


def test_wood_is_named_as_pieces_are() -> None:
    parts = {"top", "back", "sides", "brace", "lining", "neck", "board", "bridge", "head", "other"}
    assert {part for each in usual_work().operations.values() for part in each.wood} <= parts


def test_glue_ups_fit_between_breakfast_and_noon() -> None:
    assert all(each.hands <= 180 for each in usual_work().operations.values() if each.one_go)


def test_what_an_instrument_does_not_need_is_left_out_with_a_reason() -> None:
    assert work_of("fell").left_out["bound"] == "the board is not bound"
    assert work_of("scree").left_out["index_template_made"].startswith("the frets fan")
    assert work_of("mere").left_out["pins_fitted"] == "the strings are tied to the bridge"
    assert work_of("mere").left_out["rod_slot_cut"] == "the neck has neither rod nor bars"
    assert "pins_fitted" in work_of("fell").operations
    assert "tie_block_bored" in before(work_of("mere"), "bridge_placed")
    assert work_of("fell").left_out["tie_block_bored"] == "pins hold the strings"
    assert "levelled" in work_of("tarn").left_out


def test_what_came_after_what_is_left_out_comes_after_what_was_before_it() -> None:
    assert work_of("fell").operations["markers_set"].after == ("tapered",)


def test_a_flat_board_is_not_arched() -> None:
    text = (EXAMPLES / "tarn.toml").read_text(encoding="utf-8")
    flat = text.replace('arch = { nut = "320 mm", end = "390 mm" }', 'arch = "flat"')
    assert "arched" in needed(usual_work(), parse_description(flat).instrument).left_out


@pytest.mark.parametrize("name", NAMES)
def test_the_examples_records_name_operations_in_an_order_that_can_be(name: str) -> None:
    work, done = work_of(name), read_made(Path(str(EXAMPLES / f"{name}.made.toml"))).done
    days = {each.operation: each.day for each in done}
    for each in done:
        for earlier in work.operations[each.operation].after:
            assert days[earlier] <= each.day, f"{each.operation} before {earlier}"


def test_own_rows_are_laid_over(tmp_path: Path) -> None:
    (tmp_path / "shop.operations.toml").write_text("[operation.slotted]\nhands = 33\n")
    own = '[operation.head_inlaid]\nwhat = "Inlay"\npart = "neck"\nafter = ["head_veneered"]\nhands = 240\n'
    (tmp_path / "tarn.operations.toml").write_text(own + '[operation.head_drilled]\nafter = ["head_inlaid"]\n')
    work = work_with(lists_beside(tmp_path / "shop.toml", tmp_path / "tarn.toml"))
    assert work.operations["slotted"].hands == 33
    assert work.operations["slotted"].what == usual_work().operations["slotted"].what
    assert work.operations["head_drilled"].after == ("head_inlaid",)


def test_leaving_out_bridges_the_gap() -> None:
    work = work_with([("own", "[operation.slots_measured]\nleave_out = true\n")])
    assert needed(work, described("tarn")).operations["nut_end_cut"].after == ("slotted",)


def before_it(name: str, then: str, **ways: str) -> set[str]:
    """Everything that comes before an operation on an example whose ways of work are these."""
    made = chosen(described(name), {f"work.{key}": value for key, value in ways.items()})
    return before(needed(usual_work(), made), then)


def test_new_wood_settles_before_any_of_it_is_cut() -> None:
    work = needed(usual_work(), chosen(described("tarn"), {"work.wood": "new"}))
    assert work.operations["wood_settled"].clamp >= 14 * 24
    for name in ("thicknessed", "neck_sawn", "top_jointed", "back_jointed", "sides_thicknessed", "blocks_made"):
        assert "wood_settled" in before(work, name), name
    assert work_of("tarn").left_out["wood_settled"] == "the wood has lain in the shop for weeks"


@pytest.mark.parametrize(
    ("first", "then"),
    [
        ("heel_capped", "back_bound"),
        ("scarf", "heel_glued"),
        ("neck_set", "fall_away_checked"),
        ("wire_cut", "fretted"),
        ("pins_fitted", "pins_slotted"),
        ("end_pin_fitted", "strung"),
        ("mould_made", "sides_bent"),
        ("side_form_made", "sides_bent"),
        ("top_dish_made", "top_braces_fitted"),
        ("back_dish_made", "rim_domed_back"),
        ("instrument_weighed", "played_in"),
        ("owner_told", "played_in"),
        ("plates_flushed", "binding_bent"),
        ("second_set_up", "handed_over"),
        ("finish_first_coats", "finish_second_coat"),
    ],
)
def test_what_a_maker_would_miss_stands_in_its_place(first: str, then: str) -> None:
    assert {"scarf": "neck_blank_glued"}.get(first, first) in before(work_of("tarn"), then)


def test_strips_are_glued_between_the_linings_before_them_or_not_at_all() -> None:
    assert "linings_glued_top" in before_it("tarn", "side_strips_glued")
    assert "side_strips_glued" in before_it("tarn", "linings_glued_top", side_strips="before the linings")
    assert "side_strips_glued" not in before_it("tarn", "rim_domed_top", side_strips="none")
    assert "linings_glued_top" in before_it("tarn", "rim_domed_top", side_strips="none")


def test_pores_are_filled_where_one_of_the_woods_has_open_ones() -> None:
    maple = {"body.side_wood": "sugar maple", "carve.wood": "maple"}
    assert "pores_filled" in needed(usual_work(), chosen(described("tarn"), maple)).left_out
    for key, wood in (("body.side_wood", "walnut"), ("carve.wood", "Spanish cedar")):
        assert "pores_filled" in needed(usual_work(), chosen(described("tarn"), {**maple, key: wood})).operations


TRADITION = [
    "heel_slotted",
    "body_built_on",
    "top_linings_set",
    "back_glued",
    "body_sanded",
    "board_glued",
    "neck_read",
    "bridge_glued",
    "strung",
]
"""Neck and foot, the top on it, sides into the slots, back, board, bridge: common practice, from memory."""


def test_the_body_is_built_on_the_neck() -> None:
    """Nylon's usual way: no joint to cut, no neck block, no rim that is domed and closed by itself."""
    work = needed(usual_work(), described("mere"))
    for first, then in itertools.pairwise(TRADITION):
        assert first in before(work, then), (first, then)
    assert "top_voiced" in before(work, "body_built_on")
    assert "tail_block_glued" in before(work, "back_glued")
    joined = {"neck_joint_cut", "neck_fitted", "neck_set", "neck_bolted", "blocks_glued", "rim_domed_top", "top_glued"}
    assert not joined & set(work.operations)


def test_what_a_body_built_on_its_neck_needs_is_no_work_of_another() -> None:
    """Nor does anything wait for it: a lining waits for no neck."""
    work = work_of("tarn")
    built_on = {"heel_slotted", "work_board_made", "body_built_on", "tail_block_made", "top_linings_set", "neck_read"}
    assert built_on <= set(work.left_out)
    assert not {"neck_squared", "top_voiced"} & before(work, "linings_glued_top")
    assert not {"neck_squared", "top_voiced"} & before(work, "linings_glued_back")


def test_shellac_is_rubbed_on_in_sessions_with_what_to_mind_of_spirit_and_pumice() -> None:
    work = needed(usual_work(), chosen(described("mere"), {"work.finish": "shellac"}))
    sessions = ["shellac_bodied", "shellac_second_session", "shellac_third_session", "shellac_cleared"]
    for first, then in itertools.pairwise(["sealed", "shellac_pores_filled", *sessions, "finish_measured", "strung"]):
        assert first in before(work, then), (first, then)
    assert all("spirit" in work.operations[name].by for name in ("shellac_pores_filled", *sessions))
    assert "pumice" in work.operations["shellac_pores_filled"].by
    assert {"pores_filled", "finish_first_coats", "finish_polished", "oil_first"} <= set(work.left_out)


def test_nylon_is_left_to_stretch_before_its_action_is_set() -> None:
    assert "strings_stretched" in before(work_of("mere"), "action_set")
    assert "strings_stretched" in work_of("tarn").left_out


def test_what_is_not_described_is_no_work() -> None:
    scree, mere = work_of("scree"), work_of("mere")
    bodily = {"top", "braces", "back", "mould", "form", "dishes", "rim", "blocks", "linings", "body", "binding"}
    assert not bodily & {each.part for each in scree.operations.values()}
    assert scree.left_out["top_jointed"] == "no body is described"
    assert mere.left_out["bridge_plate_glued"] == "no bridge plate is described"
    bare = described("tarn").model_copy(update={"rosette": (), "brace": ()})
    assert {"rosette_let_in", "top_braces_glued", "top_voiced"} <= set(needed(usual_work(), bare).left_out)


def test_slots_cut_after_arching_wait_for_the_arch() -> None:
    """Cut first, they would be too shallow in the end: the arch takes the ends of the slots away."""
    work = work_of("fell")
    assert "arched" in before(work, "slotted")
    assert {"nut_end_cut", "tail_end_cut", "tapered", "markers_set"} <= before(work, "slotted")
    assert {"board_laid_out", "index_template_made"} <= before(work, "nut_end_cut") & before(work, "tail_end_cut")
    assert {"slotted", "slots_measured"} <= before(work, "levelled")


def test_slots_cut_before_arching_are_what_the_ends_are_measured_from() -> None:
    work = work_of("tarn")
    for name in ("nut_end_cut", "tail_end_cut"):
        assert {"slotted", "slots_measured"} <= before(work, name)
    assert "slotted" in before(work, "arched")
    assert "arched" not in before(work, "slotted")


CHOICES: dict[str, tuple[object, ...]] = {
    "slots.cut": ("before arching", "after arching"),
    "slots.bottom": ("straight", "follows the arch"),
    "board.arch": (Arch(nut=400.0, end=400.0), Arch(nut="flat", end="flat")),
    "board.level_underside": (False, True),
    "binding.thickness": (0.0, 1.8),
    "markers.frets": ((), (5, 7)),
    "neck.rod": ("none", "two way"),
}
WAYS: dict[str, tuple[object, ...]] = {
    "work.neck_joint": ("glued", "bolted", "dowelled"),
    "instrument.build": ("neck to body", "on the neck"),
    "work.neck_set": ("after the finish", "before the finish"),
    "work.side_strips": ("between the linings", "before the linings", "none"),
    "work.finish": ("lacquer", "shellac", "oil"),
}
"""The same of how it is built: what is cut after the finish or before it, glued or bolted."""
"""Every key that what comes before an operation hangs on, by a condition or by what is left out, with its ways."""


def test_every_condition_on_what_comes_before_is_among_the_choices() -> None:
    keys = {key for each in usual_work().operations.values() for wait in each.after_where for key, _ in wait.when}
    assert keys
    assert keys <= {*CHOICES, *WAYS}


def chosen(instrument: Instrument, choices: Mapping[str, object]) -> Instrument:
    for key, value in choices.items():
        table, _, field = key.partition(".")
        changed = getattr(instrument, table).model_copy(update={field: value})
        instrument = instrument.model_copy(update={table: changed})
    return instrument


def test_however_it_is_built_nothing_goes_in_a_circle_and_all_is_finished_before_it_is_strung() -> None:
    for values in itertools.product(*WAYS.values()):
        ways = dict(zip(WAYS, values, strict=True))
        work = needed(usual_work(), chosen(described("tarn"), ways))
        stands_in_order(work)
        last = {"lacquer": "finish_polished", "shellac": "shellac_cleared", "oil": "oil_last"}[str(ways["work.finish"])]
        assert last in before(work, "strung")
        if ways["work.neck_joint"] in ("glued", "dowelled") and ways["instrument.build"] == "neck to body":
            first, then = last, "neck_set"
            if ways["work.neck_set"] == "before the finish":
                first, then = then, first
            assert first in before(work, then)
            assert then not in before(work, first)


@pytest.mark.parametrize("name", [*NAMES, "mere"])
def test_whatever_is_chosen_nothing_goes_in_a_circle(name: str) -> None:
    """At the gate one in six of all the ways to choose, others on each instrument."""
    for values in sample([*itertools.product(*CHOICES.values())], 6, lambda values: f"{name} {values}"):
        instrument = chosen(described(name), dict(zip(CHOICES, values, strict=True)))
        work = needed(usual_work(), instrument)
        stands_in_order(work)
        if "arched" in work.operations:
            first, then = ("slotted", "arched") if values[0] == "before arching" else ("arched", "slotted")
            assert first in before(work, then)
            assert then not in before(work, first)


OWN_WAIT = '[operation.slotted]\nafter = ["board_laid_out", { operation = "arched", "slots.cut" = "after arching" }]\n'


def test_an_own_list_may_say_on_which_instruments_one_waits_for_another() -> None:
    work = work_with([("own", OWN_WAIT)])
    assert needed(work, described("fell")).operations["slotted"].after == ("board_laid_out", "arched")
    assert needed(work, described("tarn")).operations["slotted"].after == ("board_laid_out",)


def test_two_conditions_must_both_hold_over_what_is_left_out_between() -> None:
    """The layout waits for the template on fanned boards, the slots for the layout where cut before arching."""
    own = (
        "[operation.board_laid_out]\nleave_out = true\n"
        'after = [{ operation = "index_template_made", differ = ["scale.bass", "scale.length"], '
        '"slots.cut" = "before arching" }]\n'
        '[operation.slotted]\nafter = [{ operation = "board_laid_out", "slots.cut" = "CUT" }]\n'
        "[operation.index_template_made]\nskipped = []\n"
    )
    for cut, found in (("before arching", ("index_template_made",)), ("after arching", ())):
        work = work_with([("own", own.replace("CUT", cut))])
        assert needed(work, described("scree")).operations["slotted"].after == found


def test_a_circle_that_some_instruments_close_is_told_for_those_with_its_line() -> None:
    """Ends that wait for the slots are right where they are cut first; where the arch comes first it is a circle."""
    work = work_with([("own.operations.toml", '\n[operation.nut_end_cut]\nafter = ["slots_measured"]\n')])
    stands_in_order(needed(work, described("tarn")))
    with pytest.raises(MakersFault, match="circle") as caught:
        needed(work, described("fell"))
    (fault,) = caught.value.faults
    assert (fault.file, fault.line, fault.where) == ("own.operations.toml", 3, "operation.nut_end_cut.after")
    assert "slots_measured before nut_end_cut" in fault.why


@pytest.mark.parametrize(
    ("text", "line", "told"),
    [
        ('[operation.slotted]\nafter = ["fretted"]', 2, "circle"),
        ('[operation.slotted]\nhands = 5\nafter = ["fretd"]', 3, "fretted"),
        ("[operation.slotted]\nhand = 4", 2, "hands"),
        ("[operation.slotted]\nhands = true", 2, "whole number"),
        ("[operation.slotted]\nhands = -1", 2, "0 or more"),
        ("[operation.slotted]\nclamp = nan", 2, "0 or more"),
        ("[operation.new]\nhands = 4", 1, "what is missing"),
        ("\n[operation.sloted]\nhands = 4", 2, "slotted"),
        ('[operation.slotted]\nair = "varnish"', 2, "gluing or finishing"),
        ('[operation.slotted]\nskipped = [{ "wire.use" = "medium" }]', 2, "why"),
        ('[operation.slotted]\nskipped = [{ differ = ["wire.use"], why = "it is" }]', 2, "why"),
        ("[operation.slotted]\nafter = [3]", 2, "in quotes"),
        ('[operation.slotted]\nafter = [{ operation = "arched" }]', 2, "not whole"),
        ('[operation.slotted]\nafter = [{ "slots.cut" = "after arching" }]', 2, "not whole"),
        (
            '[operation.slotted]\nafter = [{ operation = "arhced", "slots.cut" = "after arching" }]',
            2,
            "nearest is arched",
        ),
        ('[operation.slotted]\nafter = [{ operation = "arched", "slot.cut" = "after arching" }]', 2, "slots.cut"),
        ('[operation.slotted]\nafter = [{ operation = "arched", slots.cut = "after arching" }]', 2, "in quotes"),
        ('[operation.slotted]\nafter = [{ operation = "arched", "slots.cut" = "after" }]', 2, "before arching"),
        ('[operation.slotted]\nskipped = [{ "wire.used" = "medium", why = "it is" }]', 2, "wire.use"),
        ('[operation.slotted]\nskipped = [{ "markers.frets" = [5], why = "it is" }]', 2, "write []"),
        ('[operation.slotted]\nwood = ["bord"]', 2, "nearest is board"),
        ("[operations.slotted]\nhands = 4", 1, "[operation.NAME]"),
        ("operation = 3", 1, "tables"),
        ("[operation", 1, "not TOML"),
    ],
)
def test_faults_are_told_with_their_line(text: str, line: int, told: str) -> None:
    with pytest.raises(MakersFault) as caught:
        work_with([("own.operations.toml", text)])
    assert told in str(caught.value)
    assert [(fault.file, fault.line) for fault in caught.value.faults] == [("own.operations.toml", line)]


def test_a_circle_over_two_lists_is_told_where_one_of_them_closes_it() -> None:
    """The shop's list puts the markers after the arch, as it may; with the instrument's it goes in a circle."""
    shop = (
        "shop.operations.toml",
        '[operation.arched]\nafter = ["bound"]\n[operation.markers_set]\nafter = ["arched"]',
    )
    work_with([shop])
    with pytest.raises(MakersFault) as caught:
        work_with([shop, ("tarn.operations.toml", '\n[operation.bound]\nafter = ["markers_set"]')])
    (fault,) = caught.value.faults
    assert (fault.file, fault.line) in {
        ("shop.operations.toml", 2), ("shop.operations.toml", 4), ("tarn.operations.toml", 3)
    }  # fmt: skip
    circle = fault.why.split(" before ")
    assert circle[0] == circle[-1]
    assert set(circle) == {"arched", "bound", "markers_set"}
    after = {"arched": "bound", "markers_set": "arched", "bound": "markers_set"}
    assert all(after[later] == earlier for earlier, later in itertools.pairwise(circle))


def test_a_list_that_is_no_text_is_told(tmp_path: Path) -> None:
    (tmp_path / "shop.operations.toml").write_bytes(b"[operation.slotted]\nhands = \xff")
    with pytest.raises(MakersFault, match="UTF-8"):
        lists_beside(tmp_path / "shop.toml")


@pytest.mark.parametrize("name", ["tarn", "fell", "mere"])
def test_every_brace_is_measured_as_it_is_carved(name: str) -> None:
    """By its name, each of a pair too, on the plate that it is carved on."""
    figures, work = figures_of(read_description(Path(str(EXAMPLES / f"{name}.toml"))), read_shop()), work_of(name)
    for plate, operation in (("top", "top_voiced"), ("back", "back_braces_carved")):
        asked = work.operations[operation].measure
        braces = {
            f'brace_list["{each.name}"].height': each.height for each in figures[n.brace_list] if each.plate == plate
        }
        assert list(asked) == list(braces)
        assert {address: float(figures.at(address)) for address in asked} == braces


def test_braces_of_no_plate_are_refused() -> None:
    with pytest.raises(MakersFault, match="no braces are on the side"):
        work_with([("own.toml", '[operation.top_voiced]\nmeasure_braces = "side"\n')])


@pytest.mark.parametrize(("name", "last"), [("tarn", 6), ("corrie", 12)])
def test_action_and_the_saddles_slot_are_measured_under_both_outer_strings(name: str, last: int) -> None:
    """A saddle stands or lies aslant: one string alone does not tell."""
    operations = work_of(name).operations
    both = ("action_wanted[1]", f"action_wanted[{last}]")
    assert operations["action_set"].measure == both
    assert operations["second_set_up"].measure == ("heights_relief", *both)
    assert operations["saddle_slot_cut"].measure == ("saddle_to_face[1]", f"saddle_to_face[{last}]")
