"""What is bought when, for a set that stands in its sessions; and the published case of two years' money."""

from __future__ import annotations

import time
from dataclasses import replace
from itertools import accumulate

import pytest

from budgetfix.optimize import buying, solve
from budgetfix.optimize.buying import billed
from budgetfix.optimize.facts import Facts
from budgetfix.optimize.phase_count import all_at_once, counted, phases_broken, spent_in
from budgetfix.optimize.phase_rows import spend_through
from budgetfix.optimize.problem import Answer, Instalment, Option, Placed, Problem, Product, Session, Shop, Step, Tool
from budgetfix.optimize.recount import SolverDisagrees
from tests.optimize.worlds import table_tree

DAYS = tuple(Session(day * 1440 + 540, day * 1440 + 720, (180,)) for day in (0, 30))


def two_months(most: tuple[int, int] = (400, 1000)) -> Problem:
    """A wall in the first month, a door that may be bought in either, a shelf without steps; paint is shared."""
    options = (
        Option("door", steps=(Step(30),), uses=(("paint", 3),), arrivals=(0, 1)),
        Option("shelf", cost_minor=50, arrivals=(0, 1)),
        Option("wall", steps=(Step(60),), uses=(("paint", 2),), tools=("drill",), arrivals=(0, 1)),
    )
    return Problem(
        options,
        products=(Product("paint", 200, 4, 0, "mill"),),
        tools=(Tool("drill", False, 150, 100),),
        shops=(Shop("mill", 30, None, 0, 1),),
        sessions=DAYS,
        phases=tuple(Instalment(minor, place) for place, minor in enumerate(most)),
    )


def at(**sessions: int) -> tuple[Placed, ...]:
    """Each option's one step in a session."""
    return tuple(Placed(id, 0, session, ("1",)) for id, session in sorted(sessions.items()))


ALL = ("door", "shelf", "wall")


def test_late_what_can_wait_early_what_takes_no_time() -> None:
    """The door's tin waits for its month; the drill is hired for one session; the shelf comes at once."""
    facts = Facts.of(two_months())
    found = billed(facts, ALL, at(door=1, wall=0))
    assert found is not None
    assert found.buys == (("door", 1), ("shelf", 0), ("wall", 0))
    assert (found.packs, found.bought, found.hired) == ((("paint", 2),), (), (("drill", 1),))
    assert spent_in(facts, ALL, at(door=1, wall=0), dict(found.buys), found.bought) == (380, 230)
    assert found.spent_minor == 610


def test_one_order_is_cheaper_where_the_money_is_there() -> None:
    """With 700 at once both tins come in one order, which saves a delivery; the shelf still comes at once."""
    found = billed(Facts.of(two_months((700, 1000))), ALL, at(door=1, wall=0))
    assert found is not None
    assert (found.buys, found.spent_minor) == ((("door", 0), ("shelf", 0), ("wall", 0)), 580)


def test_nothing_where_the_money_comes_too_late() -> None:
    """320 do not pay a tin, its delivery and a drill in the first month."""
    assert billed(Facts.of(two_months((320, 1000))), ALL, at(door=1, wall=0)) is None


@pytest.mark.parametrize(
    ("buys", "words"),
    [
        ({"door": 0, "shelf": 0, "wall": 0}, ("580 is spent by phase 0, and 400 has come",)),
        ({"door": 1, "shelf": 0, "wall": 1}, ("wall cannot be bought in phase 1",)),
        ({"door": 1, "wall": 0}, ("shelf cannot be bought in phase None",)),
    ],
)
def test_what_is_not_kept_is_told(buys: dict[str, int], words: tuple[str, ...]) -> None:
    """Money spent too early, a step before its money, nothing said of when."""
    facts = Facts.of(two_months())
    placed = at(door=1, wall=0)
    assert phases_broken(facts, ALL, placed, counted(facts, ALL, placed, buys, ())) == words


def test_all_at_once_needs_the_first_round() -> None:
    """Without phases one round is needed like anything else."""
    rug = Option("rug", arrivals=(0, 1), rounds=(("round", "round@2"),))
    plain = all_at_once(replace(two_months(), options=(rug,)))
    assert (plain.phases, plain.options[0].needs, plain.options[0].rounds) == ((), ("round",), ())


def test_spend_counts_all_that_is_bought() -> None:
    """The last phase's terms name every sort of money."""
    names = {name for _, name in spend_through(Facts.of(two_months()), 1)}
    assert {"q[paint]", "o[mill,0]", "o[mill,1]", "b[drill]", "u[drill,0]", "u[drill,1]", "x[shelf]"} <= names


def test_a_bill_that_the_solver_did_not_mean_is_not_handed_out(monkeypatch: pytest.MonkeyPatch) -> None:
    """Counted again, it must come to the same sum, and nothing may come too late: either alone is an error."""
    facts, placed = Facts.of(two_months()), at(door=1, wall=0)
    with monkeypatch.context() as other_sum:
        other_sum.setattr(buying, "counted", lambda *of: replace(counted(*of), spent_minor=611))
        with pytest.raises(SolverDisagrees, match="611 is spent, not 610"):
            billed(facts, ALL, placed)
    monkeypatch.setattr(buying, "phases_broken", lambda *_: ("the wall comes too late",))
    with pytest.raises(SolverDisagrees, match="the wall comes too late"):
        billed(facts, ALL, placed)


def test_two_years_of_money() -> None:
    """Nine projects with outlays in two years, 50 in the first and 20 more in the second: 1, 3, 4, 6 and 9 for 70.

    J. Lorie and L. Savage, Three Problems in Rationing Capital, Journal of Business 28, 1955; the whole-number optimum
    in H.M. Weingartner, Mathematical Programming and the Analysis of Capital Budgeting Problems, 1963 (data and value
    from memory). There what is left of the first year is lost; carried on, as money is here, it changes nothing: every
    subset was tried. An outlay is a purchase that can only be made in its year; a project is worth something with both.
    """
    values = (14, 17, 17, 15, 40, 12, 14, 10, 12)
    outlays = ((12, 54, 6, 6, 30, 6, 48, 36, 18), (3, 7, 6, 2, 35, 6, 4, 3, 3))
    options: list[Option] = []
    for year, row in enumerate(outlays):
        for number, outlay in enumerate(row, 1):
            last = None if year else 0
            options.append(
                Option(
                    f"p{number}y{year}", None, (Step(1),), outlay, (), (), (), (), (), year, last, arrivals=(year, 1)
                )
            )
    ones = tuple(sorted(options, key=lambda one: one.id))
    trees = tuple(
        table_tree(f"p{number}", ones, _worth(number, value), (f"p{number}y0", f"p{number}y1"))
        for number, value in enumerate(values, 1)
    )
    problem = Problem(ones, trees, sessions=DAYS, phases=(Instalment(50, 0), Instalment(70, 1)))
    answer = solve(problem, clock=time.monotonic)
    assert isinstance(answer, Answer)
    assert answer.proven
    assert sum(values) - answer.plan.points == 70
    assert answer.plan.chosen == tuple(f"p{number}y{year}" for number in (1, 3, 4, 6, 9) for year in (0, 1))
    spent = spent_in(Facts.of(problem), answer.plan.chosen, answer.plan.placed, dict(answer.plan.buys), ())
    assert tuple(accumulate(spent)) == (48, 68)


def _worth(number: int, value: int) -> dict[frozenset[str], tuple[int, int]]:
    """What remains of a project's value: nothing with both outlays, else all of it."""
    years = (f"p{number}y0", f"p{number}y1")
    none = {frozenset(some): (0, value) for some in ((), years[:1], years[1:])}
    return {**none, frozenset(years): (0, 0)}
