"""Money by date as phases: what may be spent by when, and when what is bought then can be there."""

from __future__ import annotations

from datetime import date
from fractions import Fraction

from budgetfix.brief.incomes import Income
from budgetfix.brief.models import Brief, Errand, FixedCost, Hours
from budgetfix.framing.frame import frame
from budgetfix.framing.purses import day_of, errands_by_id, phase_of, purses, round_id
from budgetfix.optimize.problem import Instalment
from budgetfix.remedies.fit import candidates
from tests.framing.small_jobs import listed_ground

JUNE, JULY, AUGUST = date(2026, 6, 1), date(2026, 7, 1), date(2026, 8, 1)
DAYS = (date(2026, 6, 6), date(2026, 7, 4), date(2026, 8, 8))
HOURS = tuple(Hours(minutes=(180,), day=(on - JUNE).days, length_minutes=180, on=on) for on in DAYS)
MONTHLY = tuple(Income(15000, on) for on in (JUNE, JULY, AUGUST))
MILL = Errand(errand="mill", name="To the mill", shops=("mill",), minutes=15)


def brief(incomes: tuple[Income, ...] = MONTHLY, hours: tuple[Hours, ...] | None = HOURS, **more: object) -> Brief:
    """A brief whose budget is what comes."""
    sum_ = sum(one.amount_minor for one in incomes)
    return Brief.model_validate({"budget_minor": sum_, "incomes": incomes, "hours": hours, "ordered": JUNE, **more})


def figures(found: Brief) -> list[tuple[int, int, int, int]]:
    """(come, held back, for remedies, first session) of each phase."""
    return [(one.come_minor, one.held_minor, one.remedies_minor, one.first_session) for one in purses(found)]


def test_three_months() -> None:
    """150 from the start, 300 from the second session, 450 from the third."""
    assert figures(brief()) == [(15000, 0, 15000, 0), (30000, 0, 30000, 1), (45000, 0, 45000, 2)]


def test_held_back_of_each_sum_and_fixed_costs_from_the_first() -> None:
    """A tenth and 5.00 of each sum, half up; a van of 20.00 from the first money on."""
    held = brief(
        contingency_minor=500, contingency_share=Fraction(1, 10), fixed=(FixedCost(name="van", cost_minor=2000),)
    )
    assert figures(held) == [(15000, 2000, 11000, 0), (30000, 3500, 24500, 1), (45000, 5000, 38000, 2)]


def test_no_more_is_held_back_than_has_come() -> None:
    """With 200.00 to be held back nothing of the first 150.00 is for remedies, and it is no debt."""
    assert figures(brief(contingency_minor=20000))[:2] == [(15000, 15000, 0, 0), (30000, 20000, 10000, 1)]


def test_before_the_first_money_there_is_none() -> None:
    """Ordered on 1 June, money from July on: a phase with nothing, without the van's cost, then July's."""
    later = brief(MONTHLY[1:], fixed=(FixedCost(name="van", cost_minor=2000),))
    assert figures(later) == [(0, 0, 0, 0), (15000, 0, 13000, 1), (30000, 0, 28000, 2)]


def test_what_came_before_the_order_is_there_at_once() -> None:
    """Ordered in July, June's and July's money are one; with all of it there, or without hours, there are no phases."""
    assert figures(brief(ordered=JULY)) == [(30000, 0, 30000, 0), (45000, 0, 45000, 2)]
    assert purses(brief(ordered=AUGUST)) == ()
    assert purses(brief(hours=None)) == ()
    assert purses(brief(incomes=())) == ()


def test_by_session() -> None:
    """Sessions by number, from 1; the first one's money is there at once."""
    undated = tuple(Hours(minutes=(180,), day=place, length_minutes=180) for place in range(3))
    found = brief((Income(100, session=1), Income(200, session=3)), undated)
    assert figures(found) == [(100, 0, 100, 0), (300, 0, 300, 2)]
    assert day_of(undated[2], found) == date(2026, 6, 3)
    assert [phase_of(purses(found), session) for session in range(3)] == [0, 0, 1]


def test_rounds_have_names_of_their_own() -> None:
    """A round of the shops for each phase; one where all money is there at once."""
    assert [round_id(MILL, phase) for phase in range(3)] == ["errand:mill", "errand:mill@2", "errand:mill@3"]
    assert list(errands_by_id(brief(errands=(MILL,)))) == ["errand:mill", "errand:mill@2", "errand:mill@3"]
    assert list(errands_by_id(brief(incomes=(), errands=(MILL,)))) == ["errand:mill"]


def test_options_in_phases() -> None:
    """What costs money has an arrival for each phase, what is fetched a round of each; what is free has neither."""
    base = listed_ground(brief(errands=(MILL,)))
    problem = frame(base, candidates(None, base.catalog, base.brief, ()), ()).problem
    assert problem.phases == (Instalment(15000, 0), Instalment(30000, 1), Instalment(45000, 2))
    options = {one.id: one for one in problem.options}
    assert options["paint"].arrivals == (0, 1, 2)
    assert options["paint"].rounds == (("errand:mill", "errand:mill@2", "errand:mill@3"),)
    assert options["paint"].needs == ()
    assert (options["sort"].arrivals, options["sort"].rounds) == ((), ())
    assert [options[id].first_session for id in options["paint"].rounds[0]] == [0, 1, 2]


def test_what_is_left_of_a_job_says_itself_what_is_held_back() -> None:
    """Of the first sum 7.00 though a tenth would be 15.00; of the last what the brief says, of which there is one sum."""
    said = (Income(15000, JUNE, held_minor=700), Income(15000, JULY, held_minor=1), Income(15000, AUGUST, held_minor=2))
    found = figures(brief(said, contingency_share=Fraction(1, 10)))
    assert [held for _, held, _, _ in found] == [700, 1, 4500]
    assert figures(brief((Income(500, JUNE, held_minor=700), *MONTHLY[1:])))[0] == (500, 500, 0, 0)
