"""What is made, judged as a maker would: every operation has its figures or a reason, and verdicts worked by hand."""

from collections.abc import Iterator
from importlib.resources import files

import pytest

from gramil.address import Field, parse_address
from gramil.change.made import Judged, judge
from gramil.change.made_rows import Fixed, Operation, operations, passes, pieces
from gramil.change.made_words import lines, verdict_line
from gramil.change.whose_reading import later_in
from gramil.description.reading import parse_description, parse_shop, read_shop
from gramil.description.writing import set_key
from gramil.graph import Figures, Pin
from gramil.prints.whole import figures_of, whole_graph
from gramil.shop.made_file import Done, Made, Measured
from gramil.shop.operations import Operation as Work
from gramil.shop.operations import ordered
from gramil.shop.operations_file import usual_work

EXAMPLES = files("gramil") / "data" / "examples"
NAMES = ("tarn", "fell", "scree", "mere")
TARN = (EXAMPLES / "tarn.toml").read_text(encoding="utf-8")


def tarn(**changes: str) -> Figures:
    text = TARN
    for key, value in changes.items():
        text = set_key(text, key.replace("__", "."), value)
    return figures_of(parse_description(text), read_shop())


def after(*done: str, **changes: str) -> dict[str, Judged]:
    """How what was done by *Tarn* as drawn stands when keys of it change."""
    return {each.operation: each for each in judge(dict.fromkeys(done, tarn()), tarn(**changes))}


def verdict(operation: str, **changes: str) -> Judged:
    return after(operation, **changes)[operation]


def measured(operation: str, **readings: float) -> Judged:
    """How an operation on *Tarn* stands by what was measured at it; `_0` at the end of a name is the row."""
    pins = {_address(name): Pin(value, "today", operation) for name, value in readings.items()}
    drawn = tarn()
    (found,) = judge({operation: drawn.with_pins(pins)}, drawn)
    return found


def _address(name: str) -> str:
    stem, _, row = name.rpartition("_")
    return f"{stem}[{row}]" if row.isdecimal() else name


# ------------------------------------------------------------------------------------------------ the rows


def test_every_operation_says_what_it_fixes_or_why_it_fixes_nothing() -> None:
    assert set(operations()) == set(usual_work().operations)
    for name, row in operations().items():
        assert bool(row.fixes) != bool(row.reason), name
        assert row.what, name


def test_every_name_in_the_rows_is_known() -> None:
    graph = whole_graph()
    for name, row in operations().items():
        assert set(row.joins) <= set(pieces()), name
        assert row.piece == "" or row.piece in pieces(), name
        assert bool(row.joins) == bool(row.parted), name
        assert set(row.until) <= set(operations()), name
        for fixed in row.fixes:
            asked = [fixed.figure, fixed.lost_under, fixed.lost_over, fixed.play, fixed.play_over]
            for each in asked:
                assert not isinstance(each, str) or not each or each in graph.order, (name, each)
    for piece in pieces().values():
        assert set(piece.wood) <= set(graph.inputs)
        assert any(piece.name in (row.piece, *row.joins) for row in operations().values()), piece.name


@pytest.mark.parametrize("cut", ["before arching", "after arching"])
def test_what_is_judged_in_the_place_of_an_operation_comes_after_it(cut: str) -> None:
    names = list(ordered(usual_work(), {"slots.cut": cut}.get).operations)
    for name, row in operations().items():
        assert all(names.index(name) < names.index(each) for each in row.until), name


@pytest.fixture(scope="module")
def examples() -> dict[str, Figures]:
    shop = parse_shop((EXAMPLES / "shop.toml").read_text(encoding="utf-8"))
    texts = {name: (EXAMPLES / f"{name}.toml").read_text(encoding="utf-8") for name in NAMES}
    return {name: figures_of(parse_description(text, name), shop) for name, text in texts.items()}


def asked(work: Work, figures: Figures) -> Iterator[str]:
    """The addresses that an operation and its sheet ask to have measured."""
    yield from work.measure
    if work.sheet:
        page = "setup_" + work.sheet.replace("-", "_")
        yield from map(str, figures[page].boxes)


def of(row: Operation, address: str) -> Fixed | None:
    """The figure of a row that an address is of."""
    name, steps = parse_address(address)
    field = next((step.name for step in steps if isinstance(step, Field)), "")
    return next((each for each in row.fixes if (each.figure, each.field) == (name, field)), None)


@pytest.mark.parametrize("name", NAMES)
def test_every_figure_that_is_asked_to_be_measured_judges_its_operation(
    examples: dict[str, Figures], name: str
) -> None:
    """The operation's own, and those in the boxes of its sheet."""
    for work in usual_work().operations.values():
        missing = [each for each in asked(work, examples[name]) if of(operations()[work.name], each) is None]
        assert not missing, (work.name, missing)


@pytest.mark.parametrize("name", NAMES)
def test_what_is_measured_is_judged_in_both_directions(examples: dict[str, Figures], name: str) -> None:
    """Too little and too much, by twice what passes and a little."""
    drawn, judged = examples[name], 0
    for work in usual_work().operations.values():
        for address in dict.fromkeys(asked(work, drawn)):
            fixed, wanted = of(operations()[work.name], address), figure_at(drawn, address)
            assert fixed is not None
            if wanted is None or abs(wanted) == float("inf"):
                continue
            little, much = passes(fixed, drawn)
            for difference in (-2 * little - 0.5, 2 * much + 0.5):
                if abs(difference) == float("inf"):
                    continue
                found = by_reading(drawn, work.name, address, wanted + difference)
                assert found.standing != "still right", (work.name, address, difference)
                if parse_address(found.address)[0] == fixed.figure and found.address.endswith(fixed.field):
                    assert found.too == fixed.too[difference > 0], (work.name, address)
                judged += 1
    assert judged > 50


def figure_at(figures: Figures, address: str) -> float | None:
    """The number at an address, or nothing where the instrument has none there."""
    try:
        value = float(figures.at(address))
    except KeyError:
        return None
    return value if value == value else None


def by_reading(drawn: Figures, operation: str, address: str, value: float) -> Judged:
    (found,) = judge({operation: drawn.with_pins({address: Pin(value, "today", operation)})}, drawn)
    return found


# ------------------------------------------------------------------------------------------------ measured


@pytest.mark.parametrize(
    ("operation", "readings", "standing", "words"),
    [
        # 2.96 is drawn: the wire's 1.60 and 0.15 under it, the arch's 1.01 at the slot's end, 0.20 of crest to come off
        ("slotted", {"slot_depth_setting": 1.5}, "rework", "too shallow by 1.46 mm"),
        ("slotted", {"slot_depth_setting": 2.9}, "still right", ""),
        ("slotted", {"slot_depth_setting": 3.4}, "rework", "too deep by 0.44 mm"),
        ("slotted", {"slot_depth_setting": 77.0}, "lost", "too deep by 74.04 mm"),
        # the octave lies at half of 630 mm
        ("slotted", {"fret_position_12": 315.4}, "rework", "too far from the nut by 0.40 mm, fret 12"),
        # the bridge is 33 mm wide, 9 of them ahead of a saddle 3.08 past 630: 309.08 from the octave
        ("bridge_placed", {"bridge_front_from_octave": 306.08}, "rework", "too near the neck by 3.00 mm"),
        ("bridge_placed", {"bridge_front_from_octave": 31.08}, "rework", "too near the neck by 278.00 mm"),
        ("saddle_slot_cut", {"saddle_to_face_1": -0.6}, "rework", "or beside it by"),
        ("arched", {"board_thickness": 5.0}, "rework", "too thin by 1.30 mm"),
        ("arched", {"board_thickness": 2.0}, "lost", "too thin by 4.30 mm"),
        ("arched", {"board_thickness": 6.9}, "rework", "too thick by 0.60 mm"),
        ("thicknessed", {"blank_thickness": 6.3}, "rework", "too thin by 0.20 mm"),
        ("thicknessed", {"blank_thickness": 2.5}, "lost", "too thin by 4.00 mm"),
        ("thicknessed", {"blank_width": 70.0}, "still right", ""),
        ("thicknessed", {"blank_width": 62.0}, "rework", "too narrow by 3.76 mm"),
        ("thicknessed", {"blank_width": 58.0}, "lost", "too narrow by 7.76 mm"),
        ("bound", {"board_width_at_fret_0": 45.0}, "rework", "too narrow by 0.50 mm, fret 0"),
        ("bound", {"board_width_at_fret_0": 42.0}, "lost", "too narrow by 3.50 mm, fret 0"),
        ("nut_end_cut", {"board_nut_position": 0.3}, "rework", "too far down the board by 0.30 mm"),
        ("neck_profiled", {"neck_depth_first": 20.4}, "rework", "too slim at fret 1 by 0.60 mm"),
        ("neck_profiled", {"neck_depth_first": 18.0}, "lost", "too slim at fret 1 by 3.00 mm"),
        ("back_thicknessed", {"body_back_thickness": 2.2}, "lost", "too thin by 0.30 mm"),
        ("frets_levelled", {"crown_height": 0.9}, "rework", "crowns too low by 0.20 mm"),
    ],
)
def test_what_was_measured_is_judged(operation: str, readings: dict[str, float], standing: str, words: str) -> None:
    found = measured(operation, **readings)
    assert found.standing == standing
    assert words in verdict_line(found)


def test_a_few_slots_out_of_place_are_filled_and_many_are_lost() -> None:
    few = {f"fret_position_{fret}": float(tarn()["fret_position"][fret]) + 0.3 for fret in (5, 6, 7)}
    assert measured("slotted", **few).standing == "rework"
    many = few | {"fret_position_8": float(tarn()["fret_position"][8]) + 0.3}
    assert measured("slotted", **many).standing == "lost"


def test_a_reading_judges_its_own_operation_and_later_work_follows_it() -> None:
    """The board came out at 45.0 where it was bound: the neck that is carved to it is right, and so was its taper."""
    pins = {"board_width_at_fret[0]": Pin(45.0, "today", "bound")}
    drawn = tarn()
    made = dict.fromkeys(("slotted", "bound", "neck_profiled"), drawn.with_pins(pins))
    found = {each.operation: each.standing for each in judge(made, drawn)}
    assert found == {"slotted": "still right", "bound": "rework", "neck_profiled": "still right"}


def test_a_board_measured_when_it_is_arched_says_nothing_of_its_blank() -> None:
    """The blank is drawn 0.2 over the board; a board that came out thin was arched too far."""
    drawn = tarn(board__arch='"flat"')
    made = drawn.with_pins({"board_thickness": Pin(6.0, "today", "arched")})
    found = {each.operation: each.standing for each in judge(dict.fromkeys(("thicknessed", "levelled"), made), drawn)}
    assert found == {"levelled": "still right"}
    assert [each.standing for each in judge({"thicknessed": made}, drawn)] == ["still right"]


def test_what_is_read_apart_from_any_work_judges_the_last_that_it_is_of() -> None:
    """Slots read back after the cut are the slots', not the layout's lines."""
    drawn = tarn()
    made = drawn.with_pins({"fret_position[12]": Pin(315.4, "today", "slots_measured")})
    both = judge(dict.fromkeys(("tail_end_cut", "slotted", "slots_measured"), made), drawn)
    assert {each.operation: each.standing for each in both} == {"tail_end_cut": "still right", "slotted": "rework"}


def test_work_that_was_taken_up_by_later_work_is_not_judged() -> None:
    assert after("board_laid_out", scale__length="640")["board_laid_out"].standing == "rework"
    found = after("board_laid_out", "slotted", scale__length="640")
    assert (found["board_laid_out"].standing, found["board_laid_out"].along) == ("lost", True)
    assert "board_laid_out" not in after("board_laid_out", "slotted", scale__length="630.02")


# ------------------------------------------------------------------------------------------------ changed


@pytest.mark.parametrize(
    ("operation", "change", "standing"),
    [
        ("blocks_made", {"body__depth_neck": "94.4"}, "still right"),
        ("blocks_made", {"body__depth_neck": "90"}, "rework"),
        ("blocks_made", {"body__depth_neck": "99"}, "lost"),
        ("sides_thicknessed", {"body__wall": "1.9"}, "rework"),
        ("rod_slot_cut", {"scale__join": "14"}, "rework"),
        ("neck_joint_cut", {"scale__join": "14"}, "lost"),
        ("neck_joint_cut", {"scale__join": "12"}, "rework"),
        ("channels_cut", {"top_binding__thickness": "2.04"}, "still right"),
        ("channels_cut", {"top_binding__thickness": "2.3"}, "rework"),
        ("channels_cut", {"top_binding__thickness": "1.8"}, "rework"),  # another line, or the thicker binding after all
        ("binding_bent", {"top_binding__thickness": "1.8"}, "rework"),
        ("binding_bent", {"top_binding__thickness": "2.3"}, "lost"),
        ("back_bound", {"back_binding__height": "6.6"}, "rework"),
        ("back_bound", {"back_binding__height": "5"}, "rework"),  # left as it is, or routed off
        ("back_thicknessed", {"body__back_thickness": "2.2"}, "rework"),
        ("back_thicknessed", {"body__back_thickness": "2.8"}, "lost"),
        ("top_sawn", {"body__plate_allowance": "9"}, "still right"),
        ("markers_set", {"markers__frets": "[3, 5, 7, 9, 12, 15]"}, "rework"),
        ("head_drilled", {"head__tuners": '"upright"'}, "still right"),
        ("rod_slot_cut", {"neck__rod": '"none"'}, "rework"),
        ("slotted", {"scale__frets": "20"}, "rework"),  # one slot more, if the board is long enough
        ("tail_end_cut", {"scale__frets": "20"}, "lost"),
        ("tail_end_cut", {"scale__frets": "18"}, "rework"),
        ("bridge_glued", {"scale__length": "632"}, "rework"),
        ("strung", {"strings__gauges": "[0.011, 0.016, 0.024, 0.032, 0.042, 0.053]"}, "rework"),
        ("soundhole_cut", {"soundhole__centre": "170"}, "lost"),
        ("top_braces_glued", {"bridge__spread": "56"}, "still right"),
        # the octave moves by 5 mm, more than a slot can be filled and cut anew for all frets
        ("slotted", {"scale__length": "640"}, "lost"),
        ("fretted", {"wire__use": '"large"'}, "rework"),
    ],
)
def test_standings_by_hand(operation: str, change: dict[str, str], standing: str) -> None:
    assert verdict(operation, **change).standing == standing


BOARD = ("thicknessed", "slotted", "slots_measured", "nut_end_cut", "tail_end_cut", "tapered", "ledge_cut")


def test_a_board_whose_layout_is_lost_is_lost_as_a_whole() -> None:
    found = after(*BOARD, "neck_sawn", scale__length="625")
    assert {found[name].standing for name in BOARD} == {"lost"}
    assert {found[name].remedy for name in BOARD} == {"Begin a new board."}
    assert found["neck_sawn"].standing == "still right"  # a shorter neck is in it
    assert [name for name in BOARD if not found[name].along] == ["slotted"]


def test_a_binding_that_is_dropped_leaves_a_ledge_to_be_filled() -> None:
    found = after("tapered", "ledge_cut", binding__thickness="0")
    assert found["ledge_cut"].standing == "rework"
    assert "strips of the board's own wood" in found["ledge_cut"].remedy
    assert verdict_line(found["ledge_cut"]).startswith("too wide by 1.80 mm (1.80 mm, wanted 0.00 mm)")
    assert after("bound", binding__thickness="0")["bound"].standing == "rework"


def test_another_scale_is_laid_out_anew_while_nothing_is_cut() -> None:
    found = after("thicknessed", "board_laid_out", scale__length="625")
    assert found["board_laid_out"].standing == "rework"
    assert found["thicknessed"].standing == "still right"


@pytest.mark.parametrize(
    ("key", "wood", "lost"),
    [
        ("board__wood", "ebony", BOARD),
        ("carve__wood", "sapele", ("neck_sawn", "neck_blank_glued", "rod_slot_cut", "neck_profiled")),
        ("top__wood", "western red cedar", ("top_jointed", "top_thicknessed", "soundhole_cut")),
        ("body__side_wood", "maple", ("back_jointed", "back_thicknessed", "sides_thicknessed", "sides_bent")),
    ],
)
def test_a_piece_of_another_wood_is_lost(key: str, wood: str, lost: tuple[str, ...]) -> None:
    done = ("wood_chosen", "wood_weighed", *BOARD, "neck_sawn", "neck_blank_glued", "rod_slot_cut", "neck_profiled")
    done += ("top_jointed", "top_thicknessed", "soundhole_cut", "back_jointed", "back_thicknessed")
    done += ("sides_thicknessed", "sides_bent")
    found = after(*done, **{key: f'"{wood}"'})
    assert {name for name, each in found.items() if each.standing == "lost"} == set(lost)
    firsts = [each for each in found.values() if each.standing == "lost" and not each.along]
    assert len({each.piece for each in firsts}) == len(firsts)
    assert all(
        verdict_line(each).startswith("another wood (") and f"wanted {wood})" in verdict_line(each) for each in firsts
    )


def test_a_neck_that_is_carved_is_lost_when_its_join_moves() -> None:
    """From the 13th fret to the 12th: the heel stands 630 (2^(-12/12) - 2^(-13/12)) mm too far down, some 17.7."""
    heel = verdict("neck_profiled", scale__join="12")
    assert heel.standing == "lost"
    assert heel.remedy == "Begin a new neck."
    assert isinstance(heel.is_now, float)
    assert isinstance(heel.should_be, float)
    assert heel.is_now - heel.should_be == pytest.approx(630 * (2 ** (-12 / 12) - 2 ** (-13 / 12)))


def test_what_joins_a_lost_piece_is_parted_and_the_other_piece_stays() -> None:
    found = after("slotted", "neck_sawn", "board_glued", "neck_profiled", board__wood='"ebony"')
    assert found["board_glued"].standing == "rework"
    assert "Heat the board off" in found["board_glued"].remedy
    assert found["neck_profiled"].standing == found["neck_sawn"].standing == "still right"


def test_a_saw_of_another_kerf_changes_nothing_that_is_cut() -> None:
    shop = (EXAMPLES / "shop.toml").read_text(encoding="utf-8")
    assert "kerf = 0.58" in shop
    old, new = (
        figures_of(parse_description(TARN), parse_shop(text))
        for text in (shop, shop.replace("kerf = 0.58", "kerf = 0.55"))
    )
    assert old["saw_kerf"] != new["saw_kerf"]
    (found,) = judge({"slotted": old}, new)
    assert found.standing == "still right"


def test_a_dome_where_there_was_none_is_a_change() -> None:
    """From flat, whose radius is without end, to a dish: the rims must be sanded in it."""
    flat = tarn(top__radius='"flat"')
    (found,) = judge({"linings_glued_top": flat}, tarn())
    assert (found.address, found.standing) == ("top_radius", "rework")
    assert verdict_line(found) == "too flat (flat, wanted 7620.00 mm): sand the rim in the new dish"
    (same,) = judge({"linings_glued_top": flat}, tarn(top__radius='"flat"'))
    assert same.standing == "still right"


def test_a_strings_post_is_named_from_one() -> None:
    posts = {"head.posts_y": "[22.5, 19, 15.5, -15.5, -19, -22.5]", "head.posts_x": "[42, 80, 118, 118, 80, 42]"}
    before = later = TARN
    for key, value in posts.items():
        before, later = set_key(before, key, value), set_key(later, key, value.replace("80, 42]", "80, 45]"))
    old, new = (figures_of(parse_description(text), read_shop()) for text in (before, later))
    (found,) = judge({"head_drilled": old}, new)
    assert (found.address, found.standing) == ("head_posts_x[6]", "rework")
    assert verdict_line(found).startswith("too near the nut by 3.00 mm, string 6 (42.00 mm, wanted 45.00 mm)")


def test_another_number_of_frets_is_told_as_such() -> None:
    assert verdict_line(verdict("slotted", scale__frets="20")).startswith("19 frets, wanted 20: cut the slots")
    assert verdict_line(verdict("fretted", scale__frets="18")).startswith("19 frets, wanted 18: press the frets")


def test_a_brace_that_is_dropped_and_one_of_another_wood() -> None:
    dropped = TARN[: TARN.index('[[brace]]\nname = "back 4"')] + TARN[TARN.index("[bridge_plate]") :]
    new = figures_of(parse_description(dropped), read_shop())
    (found,) = judge({"back_braces_fitted": tarn()}, new)
    assert found.standing == "rework"
    assert verdict_line(found) == "4, wanted 3: shape the braces that are wanted more; leave the others over"
    other = TARN.replace('name = "back 4"', 'name = "back 4"\nwood = "maple"')
    (found,) = judge({"back_braces_fitted": tarn()}, figures_of(parse_description(other), read_shop()))
    assert verdict_line(found).startswith("another wood, back 4 (spruce, wanted maple): make that brace anew")


def test_what_is_told_names_each_loss_once_and_counts_what_goes_with_it() -> None:
    judged = tuple(after(*BOARD, "bridge_placed", scale__length="625").values())
    told = [(each.standing, line) for each, line in lines(judged)]
    assert [standing for standing, _ in told] == ["lost", "rework", "lost"]
    assert told[0][1].startswith("fret slots cut: too far from the nut by")
    assert told[0][1].endswith("begin a new board")
    assert told[2][1].startswith("with the board: board planed to thickness, slots measured, nut end cut")


def test_readings_of_the_arch_and_of_the_slots_are_in_the_order_of_the_cut(examples: dict[str, Figures]) -> None:
    """*Fell*'s slots are cut after arching, *Tarn*'s before: what its sheet had taken in is told by that."""
    fell, tarn = (later_in(usual_work(), examples[name]) for name in ("fell", "tarn"))
    assert "slotted" in fell["arched"]
    assert "arched" not in fell["slotted"]
    assert "arched" in tarn["slotted"]


def test_work_done_by_its_sheet_as_made_is_judged_by_that_sheet(examples: dict[str, Figures]) -> None:
    """The board came out 0.40 thin when it was arched; levelled 0.40 thinner than it was drawn it is as its sheet says,
    and levelled as it was drawn it would be too thick. A relief set anew is as wanted, whatever it was before."""
    drawn = examples["tarn"]
    thin = Pin(drawn["board_thickness"] - 0.4, "2026-01-05", "arched")
    crest = drawn["thickness_at_crest"][12]
    for value, standing in ((crest - 0.4, "still right"), (crest, "rework")):
        pins = {"board_thickness": thin, "thickness_at_crest[12]": Pin(value, "2026-01-09", "levelled")}
        found = {
            each.operation: each for each in judge(dict.fromkeys(("arched", "levelled"), drawn.with_pins(pins)), drawn)
        }
        assert found["levelled"].standing == standing, value
    relief = Pin(drawn["heights_relief"], "2026-03-01", "second_set_up").after(Pin(0.5, "2026-02-01", "relief_set"))
    made = drawn.with_pins({"heights_relief": relief})
    found = {each.operation: each for each in judge(dict.fromkeys(("relief_set", "second_set_up"), made), drawn)}
    assert found["second_set_up"].standing == "still right"


def test_a_width_read_before_the_binding_was_on_is_not_charged_to_the_neck() -> None:
    """Read at no operation: between tapering and binding it judges the taper, however much was done since; after the
    neck was carved it judges the neck; and read before any of them, the first of them."""
    drawn = tarn()
    narrow = float(drawn["board_width_at_fret"][0]) - 1.0
    done = ("tapered", "neck_profiled")
    for since, wrong in (("tapered", "tapered"), ("neck_profiled", "neck_profiled"), ("", "tapered")):
        made = drawn.with_pins({"board_width_at_fret[0]": Pin(narrow, "2026-01-05", since=since)})
        found = {each.operation: each.standing for each in judge(dict.fromkeys(done, made), drawn)}
        assert [name for name in done if found[name] != "still right"] == [wrong], since
    made = drawn.with_pins({"board_width_at_fret[0]": Pin(narrow, "2026-01-05", since="tapered")})
    found = {
        each.operation: each.standing for each in judge(dict.fromkeys(("tapered", "bound", *done[1:]), made), drawn)
    }
    assert set(found.values()) == {"still right"}


def test_a_record_says_what_was_done_when_a_figure_was_read_at_no_operation() -> None:
    """In a file by its order and days; in a store by the moments (`tests/shop`)."""
    noted = [
        Done("tapered", "2026-01-04"),
        Done("measured", "2026-01-05", measured=(Measured("board_thickness", 6.4),)),
    ]
    made = Made((*noted, Done("bound", "2026-01-06")))
    assert made.pins(tarn())["board_thickness"].since == "tapered"
    assert Made((noted[1],)).pins(tarn())["board_thickness"].since == ""
