"""What is open and what is closed: each reason for itself, on work small enough to see through."""

from collections.abc import Mapping
from datetime import datetime, timedelta

from gramil.air.air_bands import Limits
from gramil.air.outlooks import Spell
from gramil.now.air_now import PlaceNow
from gramil.now.open_now import Closed, Conditions, InstrumentNow, InstrumentState, WoodNow, day_of, open_now
from gramil.now.outlook import Outlook
from gramil.shop.operations import Operation, Work

NOW = datetime(2026, 1, 19, 9)
GLUING = Limits("for gluing", (40.0, 50.0), (12.0, 30.0))


def work(*operations: Operation) -> Work:
    return Work({each.name: each for each in operations}, {})


def operation(name: str, *after: str, **more: object) -> Operation:
    values: dict[str, object] = {"hands": 60, **more}
    return Operation(name=name, what=name.capitalize(), part="top", after=after, **values)  # type: ignore[arg-type]


def shop(*spells: tuple[float, float], old: bool = False, said: bool = True) -> Conditions:
    """Conditions with spells as hours from now and humidity."""
    outlook = Outlook(tuple(Spell(NOW + timedelta(hours=hours), 20.0, humidity) for hours, humidity in spells), said)
    place = PlaceNow("shop", NOW, 20.0, spells[0][1], (20.0, 60.0), outlook, old)
    return Conditions(NOW, {"gluing": GLUING}, {"shop": place}, "shop")


def one(state: InstrumentState, conditions: Conditions) -> InstrumentNow:
    return open_now([state], conditions)[0]


def closed(found: InstrumentNow) -> Mapping[str, Closed]:
    return {each.operation.name: each for each in found.closed}


def test_what_comes_before_closes_and_then_opens() -> None:
    chain = work(operation("saw"), operation("plane", "saw"))
    found = one(InstrumentState("A", chain, {}), shop((0, 45)))
    assert [each.operation.name for each in found.open] == ["saw"]
    assert closed(found)["plane"].by == "before"
    after = one(InstrumentState("A", chain, {"saw": NOW}), shop((0, 45)))
    assert [each.operation.name for each in after.open] == ["plane"]
    assert (after.done, after.all) == (1, 2)


def test_of_what_is_waited_for_only_the_last_steps_are_told() -> None:
    """A back waits for braces that are carved, and these for wood that was weighed: the wood is not named again."""
    weighed, braced, carved = operation("weighed"), operation("braced", "weighed"), operation("carved", "braced")
    rim, back = operation("rim"), operation("back", "weighed", "carved", "rim", hands=5)
    state = InstrumentState("A", work(weighed, braced, carved, rim, back), {})
    why = closed(one(state, shop((0, 45))))["back"].why
    assert why in ("first: carved (and 1 more)", "first: rim (and 1 more)")
    state = InstrumentState("A", work(weighed, braced, carved, rim, back), {"carved": NOW, "rim": NOW})
    assert closed(one(state, shop((0, 45))))["back"].why == "first: weighed"


def test_a_cure_closes_until_it_is_over() -> None:
    chain = work(operation("glue", clamp=12.0), operation("plane", "glue"))
    done = NOW - timedelta(hours=11)
    found = closed(one(InstrumentState("A", chain, {"glue": done}), shop((0, 45))))["plane"]
    assert (found.by, found.when) == ("cure", NOW + timedelta(hours=1))
    over = one(InstrumentState("A", chain, {"glue": NOW - timedelta(hours=12)}), shop((0, 45)))
    assert [each.operation.name for each in over.open] == ["plane"]


def test_dry_air_closes_gluing_and_nothing_else() -> None:
    both = work(operation("glue", air="gluing", air_hours=12.0), operation("saw"))
    found = one(InstrumentState("A", both, {}), shop((0, 26), (48, 44)))
    assert [each.operation.name for each in found.open] == ["saw"]
    air = closed(found)["glue"]
    assert (air.by, air.when) == ("air", NOW + timedelta(hours=48))
    assert "26 %" in air.why
    assert "40 to 50 %" in air.why


def test_air_must_last_as_long_as_the_glue_cures() -> None:
    glue = work(operation("glue", air="gluing", air_hours=12.0))
    state = InstrumentState("A", glue, {})
    assert closed(one(state, shop((0, 45), (12, 20))))["glue"].by == "air"  # an hour of work and 12 of cure: 13
    assert not closed(one(state, shop((0, 45), (13, 20))))


def test_a_spell_that_is_too_short_is_passed_over() -> None:
    glue = work(operation("glue", air="gluing", air_hours=12.0))
    found = closed(one(InstrumentState("A", glue, {}), shop((0, 20), (10, 45), (15, 20), (30, 45))))
    assert found["glue"].when == NOW + timedelta(hours=30)


def test_old_readings_close_and_say_so() -> None:
    glue = work(operation("glue", air="gluing"))
    found = closed(one(InstrumentState("A", glue, {}), shop((0, 45), old=True)))["glue"]
    assert found.by == "reading"
    assert "read it again" in found.why


def test_without_readings_gluing_is_closed_by_that() -> None:
    glue = work(operation("glue", air="gluing"))
    nothing = Conditions(NOW, {"gluing": GLUING})
    assert closed(one(InstrumentState("A", glue, {}), nothing))["glue"].by == "reading"


def test_air_that_will_turn_is_a_reason_to_glue_first() -> None:
    both = work(operation("saw"), operation("glue", air="gluing"))
    found = one(InstrumentState("A", both, {}), shop((0, 45), (30, 20)))
    assert found.open[0].operation.name == "glue"
    assert any("turns tomorrow" in reason for reason in found.open[0].prefer)


def test_unsettled_wood_closes_and_says_when() -> None:
    glue = work(operation("glue", wood=("top",)))
    likely = NOW + timedelta(days=2)
    pieces = {"top": (WoodNow("top 1", False, likely, "In the cupboard it is ready soon."),)}
    found = closed(one(InstrumentState("A", glue, {}, pieces), shop((0, 45))))["glue"]
    assert (found.by, found.when) == ("wood", likely)
    settled = {"top": (WoodNow("top 1", True),)}
    assert not closed(one(InstrumentState("A", glue, {}, settled), shop((0, 45))))


def test_a_piece_that_is_not_listed_is_not_judged_and_that_is_said() -> None:
    found = one(InstrumentState("A", work(operation("glue", wood=("top",))), {}), shop((0, 45)))
    assert "not judged" in found.open[0].remarks[0]


MOULD = work(
    operation("fit", takes=("mould",)),
    operation("close", "fit", frees=("mould",), clamp=12.0),
    operation("scrape", "close"),
)


def test_a_mould_is_held_from_fitting_to_closing() -> None:
    holder = InstrumentState("A", MOULD, {"fit": NOW - timedelta(days=3)})
    other = InstrumentState("B", MOULD, {})
    held, waits = open_now([holder, other], shop((0, 45)))
    assert closed(waits)["fit"].by == "jig"
    assert "A" in closed(waits)["fit"].why
    assert "frees the mould, which is waited for" in held.open[0].prefer


def test_a_mould_is_free_when_what_frees_it_has_cured() -> None:
    fit, other = NOW - timedelta(days=3), InstrumentState("B", MOULD, {})
    curing = InstrumentState("A", MOULD, {"fit": fit, "close": NOW - timedelta(hours=11)})
    free = InstrumentState("A", MOULD, {"fit": fit, "close": NOW - timedelta(hours=12)})
    assert closed(open_now([curing, other], shop((0, 45)))[1])["fit"].when == NOW + timedelta(hours=1)
    assert open_now([free, other], shop((0, 45)))[1].open[0].operation.name == "fit"


def test_two_moulds_serve_two() -> None:
    holder, other = InstrumentState("A", MOULD, {"fit": NOW}), InstrumentState("B", MOULD, {})
    two = Conditions(NOW, {"gluing": GLUING}, jigs={"mould": 2})
    assert open_now([holder, other], two)[1].open[0].operation.name == "fit"


def test_what_is_clamped_in_a_dish_keeps_it() -> None:
    dish = work(operation("brace", uses=("dish",), clamp=12.0))
    busy, other = InstrumentState("A", dish, {"brace": NOW - timedelta(hours=2)}), InstrumentState("B", dish, {})
    found = closed(open_now([busy, other], shop((0, 45)))[1])["brace"]
    assert (found.by, found.when) == ("jig", NOW + timedelta(hours=10))


def test_the_longest_way_counts_cures() -> None:
    both = work(operation("saw", hands=600), operation("glue", clamp=24.0), operation("end", "saw", "glue"))
    state = InstrumentState("A", both, {})
    assert state.way_to_go["glue"] == 60 + 24 * 60 + 60
    assert state.way_to_go["saw"] == 660


def test_a_stale_sheet_is_told() -> None:
    state = InstrumentState("A", work(operation("saw", sheet="slot")), {}, {}, {"slot": "the rail has changed"})
    assert one(state, shop((0, 45))).open[0].remarks == ("its sheet is stale: the rail has changed",)


def test_days_in_words() -> None:
    assert day_of(NOW.replace(hour=17), NOW) == "today 17:00"
    assert day_of(NOW + timedelta(days=1), NOW) == "tomorrow 09:00"
    assert day_of(NOW + timedelta(days=3), NOW) == "Thursday 09:00"
    assert day_of(NOW + timedelta(days=10), NOW) == "Thursday 29 January"
