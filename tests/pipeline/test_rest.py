"""What the rest of a job is made of, part by part: what is done, hours, goods, the van, marks of the files."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from fractions import Fraction
from pathlib import Path

import pytest

from budgetfix.brief.models import Brief, Errand, Hours, Person
from budgetfix.brief.van import Slot, Vans
from budgetfix.catalog.models import Catalog, Product, Tool
from budgetfix.framing.options import Scales, errands_of, first_session, goods_there, products, tools
from budgetfix.framing.rest import WHOLE_JOB, Rest
from budgetfix.outcome.book import Task
from budgetfix.outcome.since import Fact
from budgetfix.outcome.so_far import Planned, PlannedStep, Remembered, SoFar, StepBack
from budgetfix.pipeline.inputs import marks_of, minutes_of
from budgetfix.pipeline.rest import rest_of
from budgetfix.pipeline.rest_done import done_of, left_of
from budgetfix.pipeline.rest_facts import facts_of
from budgetfix.pipeline.rest_goods import without
from budgetfix.pipeline.rest_hours import hours_left, live_from, place_of, session_from
from budgetfix.pipeline.rest_money import Paid
from budgetfix.pipeline.rest_offer import rest_offer
from budgetfix.pipeline.rest_since import since
from budgetfix.pipeline.rest_van import HAS_BEEN, past_costs, van_left
from budgetfix.remedies.candidate import Candidate, Work
from tests.pipeline.listed_job import one_each, with_hours, write_job
from tests.pipeline.ticked import TODAY, back, plan_of, read_at, rest, wish


def step(id: str, number: int, session: int | None, minutes: int = 60, **more: object) -> PlannedStep:
    """A step of a candidate as it was planned, by one person."""
    task = Task(id, id, number, 2, session, "", minutes, minutes, minutes, minutes, 1)
    return PlannedStep(f"{id}#{number}", task, people=("1",), **more)  # type: ignore[arg-type]


def candidate(id: str, steps: int, needs: tuple[str, ...] = ()) -> Candidate:
    """A candidate with so many steps, each of which waits a session for the one before."""
    work = tuple(Work(f"step {at}", 60, 60, 60, 60, wait_sessions=int(at > 0)) for at in range(steps))
    return Candidate(id, "own", id, work=work, needs=needs)


def told(*steps: tuple[PlannedStep, bool], candidates: tuple[Candidate, ...]) -> SoFar:
    """A workbook with these steps, ticked or not."""
    return SoFar(
        Remembered(candidates=tuple(Planned(one) for one in candidates)),
        steps=tuple(StepBack(one, done) for one, done in steps),
    )


def undated(*minutes: int) -> Brief:
    """Sessions without dates, a day apart."""
    return Brief(hours=tuple(Hours(minutes=(long,), day=at, length_minutes=long) for at, long in enumerate(minutes)))


def test_done_and_begun() -> None:
    """All steps ticked: done, what it needs before it. Some: begun. None: neither. Errands are no candidates."""
    so_far = told(
        (step("b", 1, 1), True),
        (step("a", 1, 1), True),
        (step("c", 1, 1), True),
        (step("c", 2, 2), False),
        (step("errand:mill", 1, 1), True),
        candidates=(candidate("a", 1), candidate("b", 1, ("a",)), candidate("c", 2), candidate("d", 1)),
    )
    found = done_of(so_far)
    assert [one.candidate.id for one in found.done] == ["a", "b"]
    assert (found.begun_ids, found.numbers("c")) == (("c",), frozenset({1}))


def test_what_is_left_of_a_begun_remedy() -> None:
    """Its other steps; a wait on a step that is done is counted from its session, not from a step that is gone."""
    so_far = told((step("c", 1, 1), True), (step("c", 2, 2), False), candidates=(candidate("c", 3),))
    found = done_of(so_far)
    left = left_of(found.begun[0], found)
    assert [(one.text, one.wait_sessions) for one in left.work] == [("step 1", 0), ("step 2", 1)]


def test_sessions_that_are_over() -> None:
    """Without dates those before the last tick; with dates those before the day; sessions are found by their dates."""
    so_far = told((step("a", 1, 2), True), candidates=(candidate("a", 1),))
    brief = undated(60, 90, 60)
    assert live_from(so_far, brief, TODAY) == 1
    assert [one.minutes for one in hours_left(so_far, brief, 1) or ()] == [(0,), (30,), (60,)]
    dated = Brief(
        hours=tuple(Hours(minutes=(60,), day=at, length_minutes=60, on=date(2026, 6, at + 1)) for at in (5, 12))
    )
    assert [live_from(so_far, dated, date(2026, 6, day)) for day in (6, 7, 14)] == [0, 1, 2]
    assert place_of(step("a", 1, 1, on=date(2026, 6, 13)), dated) == 1
    assert place_of(step("a", 1, 1, on=date(2026, 6, 20)), dated) is None
    assert [session_from(None, day, brief) for day in (0, 2, 3)] == [0, 2, 3]


def test_framing_knows_what_is_in_hand() -> None:
    """No errand, no days for what was bought for a candidate; no more of what is sold out; hire that is paid."""
    lamp = Product(product="lamp", shop="mill", price_minor=100, lead_days=2)
    one = Candidate("a", "own", "a", uses=(("lamp", Fraction(1)),), work=(Work("", 5, 5, 5, 5),))
    brief, catalog, totals = undated(60, 60, 60), Catalog(products=(lamp,)), {"lamp": Fraction(1)}
    bought = Rest(in_hand=(("a", "lamp", 1),))
    assert goods_there(one, brief, catalog, totals) == 2
    assert goods_there(one, brief, catalog, totals, bought) == 1
    assert goods_there(one, brief, catalog, totals, Rest(day=1)) == 3
    assert first_session(1, brief, 1) == 2
    mill = (Errand(errand="mill", name="", shops=("mill",), minutes=5),)
    assert errands_of(one, catalog, mill, WHOLE_JOB) == ("errand:mill",)
    assert errands_of(one, catalog, mill, bought) == ()
    gone = Rest(sold_out=(("lamp", "it is sold out"),), prepaid=(("saw", 2),))
    assert [each.most for each in products(catalog, Scales({"lamp": 1}, {}), gone)] == [0]
    assert [each.prepaid for each in tools(Catalog(tools=(Tool(tool="saw", hire_minor=10),)), gone)] == [2]


def test_no_kind_finds_what_is_sold_out() -> None:
    """It loses its sort; a remedy that names it still finds it."""
    catalog = Catalog(products=(Product(product="rug", price_minor=1, what="rug"),))
    assert (without(catalog, ["rug"]).of("rug"), without(catalog, ["rug"]).product("rug").what) == ((), "")
    assert without(catalog, []) is catalog


def van(load: int = 100) -> tuple[Brief, Catalog]:
    """A van out on 4 June and back on 4 July; a sofa of 60 kg in stock."""
    out = Slot(on=date(2026, 6, 4), start_minute=540, end_minute=660, load_kg=Fraction(load), task="load")
    late = Slot(on=date(2026, 7, 4), start_minute=540, end_minute=660)
    sofa = Product(product="sofa", price_minor=1, stock=2, weight_kg=Fraction(60))
    return Brief(vans=Vans(out=out, back=late), people=(Person(name="1"),)), Catalog(products=(sofa,))


def test_a_van_that_has_been() -> None:
    """What it did not bring stays in the store; its loading and its price are over; the one to come is not."""
    brief, catalog = van()
    assert past_costs(brief, date(2026, 6, 4)) == frozenset()
    assert past_costs(brief, date(2026, 6, 5)) == {"Van out"}
    found = van_left(brief, catalog, Paid(), date(2026, 6, 5))
    assert found.brief.vans is not None
    assert (found.brief.vans.out, found.loaded) == (None, ("load",))
    assert found.brief.vans.back is not None
    assert (found.catalog.product("sofa").stock, found.catalog.product("sofa").elsewhere) == (0, HAS_BEEN)


def test_marks_tell_which_file_is_another_one(tmp_path: Path) -> None:
    """Money, hours and the day have words of their own; everything else in the brief is in its mark."""
    write_job(tmp_path, (10, 5), with_hours(one_each((10, 5), (1, 1)), (1, 1)), {"budget": 5, "hours": [1, 2]})
    job = read_at(tmp_path)
    other = replace(job, brief=Brief(**{**dict(job.brief), "budget_minor": 7, "hours": None, "ordered": None}))
    assert marks_of(job) == marks_of(other)
    assert minutes_of(job) == (60, 120)
    quiet = replace(job, brief=Brief(**{**dict(job.brief), "setup_minutes": 5}))
    assert [name for name, mark in marks_of(quiet) if (name, mark) not in marks_of(job)] == ["brief"]
    fewer = replace(job, faults=job.faults[:1])
    assert [name for name, mark in marks_of(fewer) if (name, mark) not in marks_of(job)] == ["faults"]


@pytest.mark.parametrize(("hours", "kind"), [([1, 3], "more hours"), ([1, 1], "fewer hours")])
def test_hours_that_were_changed_are_a_fact(tmp_path: Path, hours: list[int], kind: str) -> None:
    """The brief lists an hour more, or an hour less, than the plan was made with."""
    remedies = with_hours(one_each((10, 5), (1, 1)), (1, 1))
    write_job(tmp_path, (10, 5), remedies, {"budget": 5, "hours": [1, 2]})
    book = plan_of(read_at(tmp_path))
    write_job(tmp_path, (10, 5), remedies, {"budget": 5, "hours": hours})
    left = rest_of(read_at(tmp_path), back(book), TODAY)
    assert facts_of(left) == (Fact(kind, "", 60),)  # type: ignore[arg-type]


def test_the_offer_is_that_of_the_plan(tmp_path: Path) -> None:
    """The same ids, less what is done; and nothing is said of changes where there were none."""
    write_job(tmp_path, (10, 5), with_hours(one_each((10, 5), (1, 1)), (1, 1)), {"budget": 5, "hours": [1, 2]})
    job = read_at(tmp_path)
    book = plan_of(job)
    found = rest(job, back(book, done=("i1#1",)))
    seen = found.walked.seen.base
    assert list(rest_offer(seen, seen, found.left).offer.framed.candidates) == ["i2"]
    assert since(found.left, found.walked, wish(), ()).facts == ()
