"""Abuses of the rules: each test is named for one trick that would buy points without a better room.

On measured rooms, through the real walk: what the room is worth is told by the same trees that the chooser asks, and
where a trick needs a choice the chooser is asked too. More of the same elsewhere: whole plans without traps in
`tests/pipeline/test_renter.py` (`test_no_trap`, `test_what_is_promised_is_found_again`), leaves against inspections in
`tests/framing/test_measured.py`, two things on one spot in `tests/room/test_overlaps.py` and
`tests/remedies/test_clashes.py`.
"""

from __future__ import annotations

import time
from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction

import pytest

from budgetfix.brief.models import BandChange, Brief, Hours
from budgetfix.catalog.models import Catalog
from budgetfix.framing.frame import Framed, Ground, frame, ground
from budgetfix.framing.measured import MeasuredTree, gone
from budgetfix.inspection.finding import Finding
from budgetfix.inspection.guard import too_much_worse
from budgetfix.inspection.inspect import Seen, look_again, look_at, look_at_all, shared_out
from budgetfix.inspection.judging import blocks, judges
from budgetfix.inspection.registry import RULES
from budgetfix.inspection.rule import Band, slope
from budgetfix.optimize import Growth, solve
from budgetfix.optimize.problem import Answer, Plan
from budgetfix.outcome.check import ClaimFails, checked
from budgetfix.remedies.candidate import Candidate, Work
from budgetfix.remedies.clashes import clashes
from budgetfix.room.items import Hung, Piece, Table
from budgetfix.room.overlaps import overlaps
from budgetfix.room.survey import Change, Survey
from tests.inspection.rooms import couple_bedroom, stager_bedroom
from tests.inspection.wall_rooms import couple_walls, renter_walls, stager_walls

ROOMS = (renter_walls, stager_walls, couple_walls, stager_bedroom, couple_bedroom)
BRIEF = Brief(hours=(Hours(minutes=(240,), day=0, length_minutes=240),))
F = Fraction


def base_of(survey: Survey, brief: Brief = BRIEF) -> Ground:
    """A room inspected with every rule that is on."""
    judged = judges(RULES, brief)
    return ground(survey, brief, Catalog(), (), judged, blocks(["r"], judged))


def doing(id: str, *changes: Change) -> Candidate:
    """Something that costs ten minutes and no money."""
    return Candidate(id=id, kind="declared", name=id, changes=changes, work=(Work(id, 10, 10, 10, 10),), own=False)


def away(survey: Survey, *tables: Table) -> tuple[Change, ...]:
    """Everything of these tables taken out of the room."""
    return tuple(Change(table, item.name, remove=True) for table in tables for item in survey.table(table))


def left_after(base: Ground, *changes: Change) -> tuple[Seen, ...]:
    """The room inspected again after some changes, block by block."""
    assert base.survey is not None
    after = base.survey.changed(changes)
    on = {judge.rule.slug: judge for judge in base.judged}
    return tuple(
        look_again(block, after, base.brief, before, gone(base.survey, after, block.room), on)
        for block, before in zip(base.blocks, base.seen, strict=True)
    )


def sums(seen: tuple[Seen, ...]) -> tuple[int, int]:
    """(hazard points, points)."""
    return (sum(one.hazards for one in seen), sum(one.points for one in seen))


def findings(seen: tuple[Seen, ...]) -> dict[str, Finding]:
    """Every finding by id."""
    return {one.id: one for block in seen for one in block.findings}


def framed(base: Ground, *candidates: Candidate) -> Framed:
    """One problem over these candidates; what clashes is found, never typed."""
    assert base.survey is not None
    return frame(base, candidates, clashes(base.survey, candidates))


def best(base: Ground, *candidates: Candidate) -> Plan:
    """What the chooser picks, proven and checked against a whole inspection of the changed room."""
    made = framed(base, *candidates)
    answer = solve(made.problem, seconds=60, clock=time.monotonic, growth=Growth(made.problem))
    assert isinstance(answer, Answer)
    assert answer.proven
    checked(base, made, answer.plan)
    return answer.plan


def tree(base: Ground, name: str, *candidates: Candidate) -> MeasuredTree:
    """The tree of one block."""
    return next(one for one in framed(base, *candidates).trees if one.block.name == name)


CARRIED_OUT: tuple[tuple[Table, ...], ...] = (
    ("rugs",), ("curtains",), ("pictures",), ("lights",), ("rugs", "curtains", "pictures", "lights")
)  # fmt: skip


@pytest.mark.parametrize("tables", CARRIED_OUT, ids="+".join)
@pytest.mark.parametrize("built", ROOMS, ids=lambda built: built.__name__)
def test_emptying_the_room_cures_nothing(built: Callable[[], Survey], tables: tuple[Table, ...]) -> None:
    """Rug, curtains, pictures, lamps carried out: not one fault that they had is gone, and no point is gained."""
    base = base_of(built())
    after = left_after(base, *away(built(), *tables))
    was, now = findings(base.seen), findings(after)
    cured = [id for id, one in was.items() if one.fault and not (id in now and now[id].fault)]
    assert cured == []
    assert sums(after)[1] >= sums(base.seen)[1]


@pytest.mark.parametrize("built", [renter_walls, couple_walls], ids=lambda built: built.__name__)
def test_the_chooser_does_not_empty_the_room(built: Callable[[], Survey]) -> None:
    """Offered a free evening of carrying out rugs, curtains and pictures, it rather sits down."""
    survey = built()
    tables: tuple[Table, ...] = ("rugs", "curtains", "pictures")
    out = [doing(change.item, change) for change in away(survey, *tables)]
    assert len(out) > 3
    plan = best(base_of(survey), *out)
    assert plan.chosen == ()
    assert (plan.hazards, plan.points) == sums(base_of(survey).seen)


def test_a_thing_may_go_where_something_else_is_there() -> None:
    """A second rug under the sofa, and the small one may go: the floor is not bare, so its faults are gone with it."""
    survey = renter_walls()
    large = survey.rugs[0].model_copy(
        update={"name": "large", "from_left": 900.0, "gap": 500.0, "width": 2300.0, "depth": 1600.0, "pad": True}
    )
    larger = survey.changed((Change("rugs", "large", add=large),))
    rid = left_after(base_of(larger), Change("rugs", "rug", remove=True))
    assert not [one for one in findings(rid).values() if one.subject == "rug"]
    bare = left_after(base_of(survey), Change("rugs", "rug", remove=True))
    assert [one.rule for one in findings(bare).values() if one.subject == "rug" and one.kept]


def test_a_bad_rug_under_a_new_name_is_no_fresh_start() -> None:
    """The small rug swapped for one as small: the floor is covered, but its faults are new ones that count from 0."""
    base = base_of(renter_walls())
    assert base.survey is not None
    again = base.survey.rugs[0].model_copy(update={"name": "another"})
    swap = doing("swap", Change("rugs", "rug", remove=True), Change("rugs", "another", add=again))
    assert best(base, swap).chosen == ()
    assert not tree(base, "rug size", swap).ask(frozenset({"swap"}), frozenset()).allowed


def test_switching_the_absence_rule_off_frees_nobody() -> None:
    """A brief that does not care about bare floors still keeps the points of a rug that is carried out."""
    change = BandChange(rule="floor-bare", switch=False)
    base = base_of(renter_walls(), replace_brief(bands=(change,)))
    rid = findings(left_after(base, Change("rugs", "rug", remove=True)))
    assert rid["rug-misses-seats/rug"].kept
    assert rid["rug-misses-seats/rug"].points > 0


LONGER = Change("curtains", "curtain", (("rod_height", 2390.0), ("rod_from_left", 750.0), ("rod_width", 1900.0),
                                        ("hem", 300.0)))  # fmt: skip
WITH_PANELS = Change("curtains", "curtain", (("rod_height", 2390.0), ("rod_from_left", 560.0), ("rod_width", 2280.0),
                                             ("panel_width", 2000.0), ("hem", 10.0), ("stack", None)))  # fmt: skip


def test_a_longer_rod_with_the_old_panels_is_not_paid() -> None:
    """The rod is right, the old cloth hangs 300 mm up: beyond glaring, dearer than before, and forbidden as well."""
    base, rod = base_of(renter_walls()), doing("rod", LONGER)
    window = tree(base, "window dressing", rod)
    before, after = window.look(frozenset()), window.look(frozenset({"rod"}))
    assert findings((after,))["hem-off-floor/win"].severity > 1
    assert after.points > before.points
    assert not window.ask(frozenset({"rod"}), frozenset()).allowed
    assert best(base, rod).chosen == ()


def without_heater() -> Survey:
    """The renter's room once the fan heater under the window has been carried out."""
    return renter_walls().changed((Change("furniture", "fan heater", remove=True),))


def test_a_longer_rod_with_its_panels_is_paid() -> None:
    """The same rod with cloth made for it cures the window: the trap is the old cloth, not the rod."""
    rods = doing("rod", LONGER), doing("rod and panels", WITH_PANELS)
    assert best(base_of(without_heater()), *rods).chosen == ("rod and panels",)


def test_a_cured_window_does_not_pay_for_cloth_at_a_heater() -> None:
    """With the fan heater where it is the new cloth hangs too near: no window is worth that, unless it goes too."""
    base, panels = base_of(renter_walls()), doing("panels", WITH_PANELS)
    heater = doing("heater", Change("furniture", "fan heater", remove=True))
    assert best(base, panels).chosen == ()
    assert best(base, heater, panels).chosen == ("heater", "panels")


def test_one_mistake_is_not_billed_three_times() -> None:
    """One window that is wrong in four ways: the worst counts whole, each other one third."""
    base = base_of(renter_walls())
    faults = [one for one in findings(base.seen).values() if one.family == "window dressing" and one.fault]
    assert len(faults) == 4
    worst, *others = sorted(faults, key=lambda one: (-one.raw, one.rule))
    assert worst.points == round(worst.raw)
    assert [one.points for one in others] == [round(one.raw / 3) for one in others]


def test_one_mistake_made_at_both_windows_is_billed_one_and_two_thirds() -> None:
    """The stager's two rods hang low: the second window counts two thirds, within the third of its family."""
    found = findings(base_of(stager_walls()).seen)
    rods = sorted((found[f"rod-too-narrow/win-{at}"] for at in (1, 2)), key=lambda one: (-one.raw, one.subject))
    for one, share in zip(rods, (F(1), F(2, 3)), strict=True):
        mates = [other for other in found.values() if other.family == one.family and other.subject == one.subject]
        first = min(mates, key=lambda other: (-other.raw, other.rule))
        assert one.points == round(one.raw * share * (1 if first is one else F(1, 3)))


@pytest.mark.parametrize("count", [1, 2, 3, 5])
def test_many_subjects_of_one_rule_count_less_each(count: int) -> None:
    """Loose cabinets in a row: 1, two thirds, and a third for every further one, hazards like any other points."""
    row = tuple(
        Piece(name=f"cabinet {at}", room="r", what="cabinet", wall="C", from_left=500.0 * at, width=480.0, depth=300.0,
              height=1900.0)
        for at in range(count)
    )  # fmt: skip
    bare = renter_walls().model_copy(update={"furniture": row})
    found = [one for one in findings(base_of(bare).seen).values() if one.rule == "tall-piece-loose"]
    raw = found[0].raw
    shares = [F(1), F(2, 3), F(1, 3), F(1, 3), F(1, 3)][:count]
    assert sorted((one.points for one in found), reverse=True) == [round(raw * share) for share in shares]


def test_splitting_a_fault_over_two_names_gains_nothing() -> None:
    """The order in which findings come does not matter, and points never exceed what each would be billed alone."""
    for built in ROOMS:
        for seen in base_of(built()).seen:
            assert shared_out(reversed(seen.findings)) == shared_out(seen.findings) == seen.findings
            assert all(one.points <= round(one.raw) for one in seen.findings)


BASKET = Piece(name="basket", room="r", what="basket", wall="D", from_left=3050.0, width=400.0, depth=400.0,
               height=450.0)  # fmt: skip


def test_two_pieces_on_one_spot_are_never_both_chosen() -> None:
    """A basket where another candidate slides the shoe cabinet to: the clash is found, so no plan holds both."""
    base = base_of(renter_walls())
    basket, slide = (
        doing("basket", Change("furniture", "basket", add=BASKET)),
        doing("slide", Change("furniture", "shoes", (("from_left", 3150.0),))),
    )
    options = {option.id: option for option in framed(base, basket, slide).problem.options}
    assert options["basket"].excludes == ("slide",)
    assert options["slide"].excludes == ("basket",)
    assert {"basket", "slide"} - set(best(base, basket, slide).chosen)


def test_two_pieces_on_one_spot_fail_the_run() -> None:
    """Had the clash been missed and every rule set free, the check after choosing would not let the plan through."""
    base = base_of(renter_walls(), replace_brief(may_worsen=tuple(rule.slug for rule in RULES)))
    assert base.survey is not None
    chest = Piece.model_validate({**dict(BASKET), "from_left": 3700.0})
    basket = doing("basket", Change("furniture", "basket", add=chest))
    assert overlaps(base.survey.changed(basket.changes), "r") == (("basket", "shoes"),)
    made = frame(base, (basket,), ())
    must = replace(made, problem=replace(made.problem, must=(("basket",),)))
    answer = solve(must.problem, seconds=60, clock=time.monotonic, growth=Growth(must.problem))
    assert isinstance(answer, Answer)
    with pytest.raises(ClaimFails, match="one spot"):
        checked(base, must, answer.plan)


@pytest.mark.parametrize(("value", "severity"), [(10.0, F(0)), (15.0, F(1, 2)), (20.0, F(1)), (30.0, F(2)),
                                                 (40.0, F(3)), (400.0, F(3))])  # fmt: skip
def test_severity_goes_on_rising_to_three(value: float, severity: Fraction) -> None:
    """Beyond glaring the bill still grows, so that nobody is paid for making a bad thing worse; at three it ends."""
    assert slope(value, Band(high=10.0, bad_high=20.0), "mm", metric=True) == severity


def test_no_finding_is_worse_than_three_times_glaring() -> None:
    """Everything in the invented rooms hung from the ceiling or sunk into the floor: three, and no more."""
    worst: set[Fraction] = set()
    for built in ROOMS:
        survey = built()
        for bottom in (0.0, 2200.0):
            hung = tuple(Hung.model_validate({**dict(one), "bottom": bottom}) for one in survey.pictures)
            wild = survey.model_copy(
                update={
                    "pictures": hung,
                    "curtains": tuple(c.model_copy(update={"hem": 900.0}) for c in survey.curtains),
                }
            )
            worst |= {one.severity for one in findings(base_of(wild).seen).values()}
    assert max(worst) == 3
    assert len([one for one in worst if one > 1]) > 3


def up(by: float) -> Candidate:
    """The renter's picture hung higher, from its gap of 250 mm over the sofa (its band ends there)."""
    return doing("up", Change("pictures", "art", (("bottom", 800.0 + 250.0 + by),)))


def test_a_fault_cannot_be_traded_for_a_worse_one() -> None:
    """Hung up to a quarter worse than it was it may be, a hair more and no plan holds it, unless the brief lets it."""
    survey = renter_walls().changed((Change("pictures", "art", (("bottom", 800.0 + 250.0),)),))
    base, loose = base_of(survey), base_of(survey, replace_brief(may_worsen=("art-off-height",)))
    was = findings(base.seen)["art-off-height/art"].severity
    quarter = 0.25 * (460.0 - 250.0)
    for by, allowed in ((quarter - 1.0, True), (quarter + 2.0, False)):
        art = tree(base, "picture group", up(by))
        assert (findings((art.look(frozenset({"up"})),))["art-off-height/art"].severity <= was + F(1, 4)) is allowed
        assert art.ask(frozenset({"up"}), frozenset()).allowed is allowed
    assert tree(loose, "picture group", up(quarter + 2.0)).ask(frozenset({"up"}), frozenset()).allowed


def replace_brief(**new: object) -> Brief:
    """The brief with other wishes."""
    return Brief.model_validate({**dict(BRIEF), **new})


def test_a_new_fault_counts_from_nothing() -> None:
    """A picture hung where there was none, at 2 m: no fault before, so a quarter is all that it may have."""
    base = base_of(renter_walls())
    high = Hung(name="new", room="r", wall="A", from_left=1500.0, width=300.0, height=200.0, bottom=2000.0)
    after = left_after(base, Change("pictures", "new", add=high))
    assert any(too_much_worse(one, other, ()) for one, other in zip(base.seen, after, strict=True))


def test_the_chooser_does_not_pay_for_one_fault_with_another() -> None:
    """A slide that brings the table into reach of the sofa and blocks the way is not taken, however many points."""
    survey = renter_walls()
    base = base_of(survey)
    block = Change("furniture", "table", (("from_left", 3000.0), ("gap", 100.0)))
    after = left_after(base, block)
    forbidden = any(too_much_worse(one, other, ()) for one, other in zip(base.seen, after, strict=True))
    assert forbidden
    assert best(base, doing("block the door", block)).chosen == ()


def test_hazards_are_not_bought_off_with_looks() -> None:
    """Hazards have no family, no profile reaches them, and they are counted apart from points."""
    for built in (renter_walls, stager_walls, couple_walls):
        living = findings(base_of(built()).seen)
        listing = findings(base_of(built(), replace_brief(profile="listing")).seen)
        hazards = {id: one for id, one in living.items() if one.safety}
        assert hazards
        assert all(one.family is None for one in hazards.values())
        assert {id: listing[id].raw for id in hazards} == {id: one.raw for id, one in hazards.items()}
        seen = look_at_all(base_of(built()).blocks, built(), BRIEF)
        assert sum(one.points for one in hazards.values()) == sums(seen)[0]


def test_hazards_come_first_unless_the_brief_says_otherwise() -> None:
    """One evening for one thing: strapping the bookcase goes before a window full of points, or after, if so wished."""
    strap = doing("strap", Change("furniture", "bookcase", (("fixed", True),)))
    window = doing("window", WITH_PANELS)
    short = (Hours(minutes=(10,), day=0, length_minutes=10),)
    first = base_of(without_heater(), replace_brief(hours=short))
    then = base_of(without_heater(), replace_brief(hours=short, hazards_first=False))
    assert best(first, strap, window).chosen == ("strap",)
    assert best(then, strap, window).chosen == ("window",)


def test_the_room_as_it_is_gains_nothing() -> None:
    """Nothing done: look again finds what look found, to the point."""
    for built in ROOMS:
        base = base_of(built())
        assert left_after(base) == tuple(look_at(block, built(), BRIEF) for block in base.blocks)
