"""Cautions that only a whole plan shows, and what each task leaves in the walls. Source: 40 CFR 745.83 (S2)."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from budgetfix.brief.models import Brief, Hours, Person
from budgetfix.catalog.models import Catalog
from budgetfix.framing.frame import Framed
from budgetfix.optimize.problem import Option, Placed, Plan, Problem, Step
from budgetfix.outcome.tasks import cares_of, tasks
from budgetfix.remedies.candidate import Candidate, Work
from budgetfix.remedies.old_paint import BEYOND, MM2_PER_SQ_FT
from budgetfix.room.survey import Change

STEP = Work("scrape", 60, 60, 60, 60)


def scraped(id: str, feet: float, **more: Any) -> Candidate:
    """A candidate that scrapes so many square feet in room r."""
    one = Candidate(id, "declared", id, room="r", work=(STEP,), cares=("own",), paint_mm2=feet * MM2_PER_SQ_FT)
    return replace(one, **more)


def framed(*candidates: Candidate) -> Framed:
    """The candidates, framed as far as tasks ask."""
    options = tuple(Option(one.id, steps=tuple(Step(60, 1) for _ in one.work)) for one in candidates)
    return Framed(Problem(options=options), {one.id: one for one in candidates}, ())


def told(brief: Brief, *candidates: Candidate, sessions: tuple[int | None, ...]) -> list[bool]:
    """Whether each chosen candidate is told that its room's paint work is no minor repair."""
    placed = tuple(Placed(one.id, 0, at, ()) for one, at in zip(candidates, sessions, strict=True))
    plan = Plan(tuple(one.id for one in candidates), placed, 0, 0, 0, 0)
    found = cares_of(brief, framed(*candidates), plan)
    return [BEYOND in found[one.id] for one in candidates]


@pytest.mark.parametrize(("day", "wanted"), [(20, True), (29, True), (30, False), (45, False)])
def test_a_plan_adds_the_paint_of_a_room_up(day: int, wanted: bool) -> None:
    """S2: two jobs of 4 sq ft in one room, planned 20 days apart, are told; 30 days apart they are not."""
    hours = tuple(Hours(minutes=(240,), day=at, length_minutes=240) for at in (0, day))
    two = scraped("a", 4.0), scraped("b", 4.0)
    assert told(Brief(hours=hours), *two, sessions=(0, 1)) == [wanted, wanted]


def test_without_dates_all_paint_falls_together() -> None:
    """No list of hours: one day. What disturbs none is not told; a window of new size is told whatever its paint."""
    three = scraped("a", 4.0), scraped("b", 4.0), scraped("c", 0.0)
    assert told(Brief(hours=None), *three, sessions=(None,) * 3) == [True, True, False]
    assert told(Brief(hours=None), scraped("a", 6.0), sessions=(None,)) == [False]
    window = scraped("w", 0.5, changes=(Change("openings", "win", (("width", 1200.0),)),))
    assert told(Brief(hours=None), window, sessions=(None,)) == [True]


def test_who_goes_up_the_ladder_is_said_where_somebody_at_the_step_does_not() -> None:
    """Ben stays off the ladder: of a rod hung together it is Ann's; what each does alone needs no such word."""
    rod = replace(scraped("rod", 0.0), work=(replace(STEP, people=2),), hazards=("ladder", "drill"))
    people = (Person(name="ann"), Person(name="ben", refuses=("ladder",)))
    brief = Brief(people=people, hours=None)
    both = Plan(("rod",), (Placed("rod", 0, None, ("ann", "ben")),), 0, 0, 0, 0)
    alone = Plan(("rod",), (Placed("rod", 0, None, ("ann",)),), 0, 0, 0, 0)
    assert cares_of(brief, framed(rod), both)["rod"] == ("ann goes up the ladder; ben helps from the floor.", "own.")
    assert cares_of(brief, framed(rod), alone)["rod"] == ("own.",)
    assert cares_of(Brief(people=people[:1], hours=None), framed(rod), alone)["rod"] == ("own.",)
    three = Brief(people=(*people, Person(name="cleo", refuses=("ladder",))), hours=None)
    crew = Plan(("rod",), (Placed("rod", 0, None, ("ann", "ben", "cleo")),), 0, 0, 0, 0)
    assert cares_of(three, framed(rod), crew)["rod"][0] == "ann goes up the ladder; ben and cleo help from the floor."


def test_a_task_shows_once_what_it_leaves_and_always_what_to_mind() -> None:
    """A rod in two steps leaves plugs: said at the first; both carry the caution of the whole plan."""
    rod = scraped("rod", 7.0, work=(STEP, STEP), leaves="plugs")
    rug = scraped("rug", 0.0)
    placed = (Placed("rod", 0, None, ()), Placed("rod", 1, None, ()), Placed("rug", 0, None, ()))
    plan = Plan(("rod", "rug"), placed, 0, 0, 0, 0)
    found = tasks(Brief(hours=None), Catalog(), framed(rod, rug), plan, {})
    assert [(one.candidate, one.step, one.leaves) for one in found] == [
        ("rod", 1, "plugs"), ("rod", 2, ""), ("rug", 1, ""),
    ]  # fmt: skip
    assert [one.cares for one in found] == [("own.", BEYOND), ("own.", BEYOND), ("own.",)]


@pytest.mark.parametrize(
    ("care", "said"),
    [
        ("fill them, no sanding", "fill them, no sanding."),
        ("Mind the cat ", "Mind the cat."),
        ("Mind the cat.", "Mind the cat."),
        ("Mind the cat!", "Mind the cat!"),
        ("It says 'lift (together).'", "It says 'lift (together).'"),
        ("猫に注意。", "猫に注意。"),
    ],
)
def test_a_users_caution_ends_like_a_sentence(care: str, said: str) -> None:
    """Cautions are read one after the other: one without an end gets a full stop, one with its own keeps it."""
    one = scraped("a", 0.0, cares=(care, "Lift together."))
    plan = Plan(("a",), (Placed("a", 0, None, ()),), 0, 0, 0, 0)
    assert cares_of(Brief(hours=None), framed(one), plan)["a"] == (said, "Lift together.")
