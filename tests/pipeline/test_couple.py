"""The couple's two rooms planned once: six sessions, two people, one of whom does not go up the ladder."""

from __future__ import annotations

import contextlib
from collections import Counter
from dataclasses import replace

import pytest

from budgetfix.brief.models import Brief, Person
from budgetfix.exports.plan_screen import plan_text
from budgetfix.framing.measured import in_order
from budgetfix.framing.options import ERRAND, loud, refusing
from budgetfix.remedies.candidate import Candidate, Work
from budgetfix.room.overlaps import overlaps
from tests.make_reports import said
from tests.practitioner import new_overlaps
from tests.scenarios import DEMO, job, room_with, run, theirs

pytestmark = [pytest.mark.xdist_group("couple"), pytest.mark.slow]
MINUTES = {"adult 1": (90, 150, 120, 150, 210, 150), "adult 2": (0, 150, 0, 150, 210, 150)}
NO_LADDER = "adult 2"


def test_it_is_proven_and_every_hazard_goes() -> None:
    """Ten hazards with a toddler in the house: cord, loose pieces, loose screen, heater, lead, rug, pinch. All go."""
    book = run("couple").book
    assert book.proven
    assert book.bound == book.improvement > book.points_before // 2
    assert (book.hazards_before, book.hazards_after) == (10, 0)


def test_money() -> None:
    """The lines add up, within 380.00; nobody is paid."""
    book = run("couple").book
    assert sum(line.line_minor for line in book.money) == book.spent_minor <= 38000
    assert {line.kind for line in book.money} == {"product"}


def test_what_it_is_for_each_of_them() -> None:
    """Both have a say: one gives up the wider bench, and neither would get more for half the money alone."""
    first, second = run("couple").book.sides
    assert (first.person, second.person) == ("adult 1", "adult 2")
    assert (second.gets, second.alone) == (second.alone, second.gets)
    assert 0.95 < first.gets / first.alone < 1
    assert any("Long low unit" in name for name in first.gives_up)
    for side in (first, second):
        assert side.half is None or side.half < side.gets


def test_nobody_works_longer_than_they_are_there() -> None:
    """By person and session; what takes both takes both at once."""
    used: Counter[tuple[str, int]] = Counter()
    for task in run("couple").book.tasks:
        assert len(task.who) == task.people
        used.update({(person, (task.session or 0) - 1): task.minutes for person in task.who})
    assert all(minutes <= MINUTES[person][session] for (person, session), minutes in used.items())


def test_goods_are_fetched_first() -> None:
    """The round of the two stores comes before anything that it fetches."""
    order = [task.candidate for task in run("couple").book.tasks]
    shops = {product.product: product.shop for product in job("couple").catalog.products}
    fetched = [one.id for one in run("couple").chosen if {shops[product] for product, _ in one.uses} & {"diy", "home"}]
    assert len(fetched) > 5
    assert all(order.index(id) > order.index(f"{ERRAND}shops") for id in fetched)


def test_nobody_drills_or_hammers_while_the_toddler_sleeps() -> None:
    """Saturday's nap is quiet: no strap, no rod, no nail in it; sweeping, sliding and shopping may be."""
    nap = [task.candidate for task in run("couple").book.tasks if task.session == 3]
    assert nap
    assert not [one.id for one in run("couple").chosen if one.id in nap and loud(one)]
    assert {"n03", "n06", "n10", "n12"} <= {id for id, one in run("couple").offer.items() if loud(one)}
    assert not {"n01", "n09", "n15"} & {id for id, one in run("couple").offer.items() if loud(one)}


def test_the_bedroom_is_slept_in_every_night() -> None:
    """Whatever is begun there on a day is finished on that day; the brief asks for it, and only of the bedroom."""
    days = {row.number: row.on for row in run("couple").book.sessions or ()}
    begun: dict[str, set[object]] = {}
    for task in run("couple").book.tasks:
        begun.setdefault(task.candidate, set()).add(days[task.session or 0])
    there = [one.id for one in run("couple").chosen if one.room == "bedroom"]
    assert {"n16", "n17", "n19"} <= set(there)
    assert all(len(begun[id]) == 1 for id in there)
    whole = job("couple").brief.whole_days
    assert whole is not None
    assert (whole.covers("bedroom"), whole.covers("living-dining")) == (True, False)


def test_who_goes_up_the_ladder() -> None:
    """Adult 2 is never alone at what takes a ladder, and holds the other end of a long rod from the floor."""
    up = {one.id for one in run("couple").chosen if "ladder" in (*one.tools, *one.hazards)}
    with_help = set()
    for task in run("couple").book.tasks:
        if task.candidate in up:
            assert task.who != (NO_LADDER,)
            with_help |= {task.candidate} if NO_LADDER in task.who else set()
    assert {"n03", "n05", "n17"} & with_help


def test_helping_is_not_climbing() -> None:
    """Who refuses the ladder or the drill may help, if somebody else does not; at lifting each pair of hands counts."""
    up = Candidate(id="rod", kind="longer-rod", name="rod", tools=("drill",), hazards=("ladder",))
    bed = Candidate(id="bed", kind="center-bed", name="bed", hazards=("lifting",))
    two, alone = Work("both", 10, 10, 10, 10, people=2), Work("one", 10, 10, 10, 10)
    couple = Brief(people=(Person(name="a"), Person(name="b", refuses=("ladder", "lifting"))))
    assert refusing(alone, up, couple) == ("b",)
    assert refusing(two, up, couple) == ()
    assert refusing(two, bed, couple) == ("b",)
    neither = Brief(people=(Person(name="a", refuses=("ladder",)), Person(name="b", refuses=("ladder",))))
    assert refusing(two, up, neither) == ("a", "b")


def test_of_three_enough_take_part_that_somebody_climbs() -> None:
    """Two of three stay off the ladder: the first of them helps at a step of two; at a step of three both do."""
    up = Candidate(id="rod", kind="longer-rod", name="rod", hazards=("ladder",))
    lifted = replace(up, hazards=("ladder", "lifting"))
    ann, ben, cleo = (Person(name=name, refuses=no) for name, no in (("a", ("ladder",)), ("b", ("ladder",)), ("c", ())))
    three = Brief(people=(ann, ben, cleo))
    step = [Work("up", 10, 10, 10, 10, people=count) for count in (1, 2, 3)]
    assert [refusing(one, up, three) for one in step] == [("a", "b"), ("b",), ()]
    never = Brief(people=(Person(name="a", refuses=("ladder", "lifting")), ben, cleo))
    assert refusing(step[1], lifted, never) == ("a",)


def test_what_is_needed_is_done_first() -> None:
    """The room changes in the order of ids, but what another remedy needs comes before it, whatever it is called."""
    base = theirs("couple")["n01"]
    row = {id: replace(base, id=id, needs=needs) for id, needs in (("a", ("c",)), ("b", ()), ("c", ("d",)), ("d", ()))}
    assert in_order(row, row) == ("b", "d", "c", "a")
    assert in_order(row, ("a", "b")) == ("a", "b")


def test_nothing_shares_a_spot() -> None:
    """Every remedy with what it needs leaves each thing its own spot."""
    before = room_with("couple", ())
    assert [overlaps(before, facts.room) for facts in before.rooms] == [(), ()]
    for id, one in theirs("couple").items():
        assert new_overlaps("couple", (id, *one.needs)) == [], id


def test_it_prints_in_80_columns() -> None:
    """What is found, and the plan, as the terminal shows them."""
    with contextlib.chdir(DEMO):
        found = said(["inspect", "couple"])
    assert max(len(line) for line in found.splitlines()) <= 80
    text = plan_text(run("couple").book, ("couple/plan.xlsx",))
    assert max(len(line) for line in text.splitlines()) <= 80
    assert "new: Front blocked (wardrobe)" in text


def test_layouts_are_offered_where_they_help_and_else_it_is_said() -> None:
    """The living-dining room has other layouts to pick one from; for the bedroom the plan says that none helps."""
    rooms = {one.room for one in run("couple").offer.values() if one.kind == "rearrange"}
    assert rooms == {"living-dining"}
    assert any(note.startswith("Bedroom: no other layout") for note in run("couple").book.notes)
    assert any(note.startswith("Living room: no other layout") for note in run("renter").book.notes)
